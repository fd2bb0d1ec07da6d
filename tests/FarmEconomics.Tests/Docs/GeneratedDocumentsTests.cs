using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.Tests.Docs;

public class GeneratedDocumentsTests
{
    [Fact]
    public void RecordsDocument_Generated_IsWhatStandsInDocs() => Compare("records.md", RecordsDocument.Write());

    [Fact]
    public void ErrorsDocument_Generated_IsWhatStandsInDocs() => Compare("errors.md", ErrorsDocument.Write());

    [Fact]
    public void ArchitectureDocument_Generated_IsWhatStandsInDocs() => Compare("architecture.md", ArchitectureDocument.Write());

    [Fact]
    public void LicensesDocument_Generated_IsWhatStandsInDocs() => Compare("licenses.md", LicensesDocument.Write());

    private static void Compare(string name, string text)
    {
        string path = Path.Combine(TestFolders.Repository, "docs", name);
        if (TestFolders.Rewrite)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, text);
        }

        Assert.True(File.Exists(path), $"docs/{name} is missing: run the tests with {TestFolders.RewriteVariable}=1.");
        Assert.Equal(File.ReadAllText(path), text);
    }
}
