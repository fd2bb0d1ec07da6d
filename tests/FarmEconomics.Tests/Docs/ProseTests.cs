using System.Text.RegularExpressions;
using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.Tests.Docs;

/// <summary>Prose of the documents breaks by sentence, so that a change shows as the sentence it changes.</summary>
public partial class ProseTests
{
    // Written by tests and benchmarks from declarations and figures.
    private static readonly string[] Generated = ["records.md", "errors.md", "benchmarks.md", "advice.md"];

    public static TheoryData<string> Documents =>
    [
        .. Directory.GetFiles(Root, "*.md").Concat(Directory.GetFiles(Path.Combine(Root, "docs"), "*.md"))
            .Where(path => !Generated.Contains(Path.GetFileName(path)))
            .Select(path => Path.GetRelativePath(Root, path)).Order(StringComparer.Ordinal),
    ];

    private static string Root => TestFolders.Repository;

    [Theory]
    [MemberData(nameof(Documents))]
    public void Document_EachLineOfProse_HoldsOneSentence(string document)
    {
        string[] lines = File.ReadAllLines(Path.Combine(Root, document));
        bool code = false;
        List<string> found = [];
        for (int i = 0; i < lines.Length; i++)
        {
            code ^= lines[i].StartsWith("```", StringComparison.Ordinal);
            bool prose = !code && !lines[i].StartsWith('|') && !lines[i].StartsWith('#') && !lines[i].StartsWith("    ", StringComparison.Ordinal);
            if (prose && Boundary().IsMatch(Apart().Replace(lines[i], "x")))
            {
                found.Add($"{document}:{i + 1}: {lines[i]}");
            }
        }

        Assert.Empty(found);
    }

    [Theory]
    [InlineData("One sentence. Another one.", true)]
    [InlineData("One sentence (it says so. Really) and `a. B` and \"No. Yes\".", false)]
    [InlineData("What e.g. Kale earns.", false)]
    public void Boundary_BetweenSentences_IsSeen(string line, bool seen) => Assert.Equal(seen, Boundary().IsMatch(Apart().Replace(line, "x")));

    /// <summary>What is quoted, in parentheses or code stays with its sentence.</summary>
    [GeneratedRegex("`[^`]*`|\"[^\"]*\"|\\([^()]*\\)|\\[[^\\]]*\\]")]
    private static partial Regex Apart();

    [GeneratedRegex("(?<!^ *\\d+)(?<!\\b(?:e\\.g|i\\.e|vs|etc|No|approx|[A-Z]))[.!?][*_]* [A-Z]")]
    private static partial Regex Boundary();
}
