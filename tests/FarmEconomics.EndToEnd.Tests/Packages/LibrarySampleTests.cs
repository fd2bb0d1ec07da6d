using System.Text.RegularExpressions;
using FarmEconomics.EndToEnd.Tests.Support;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;

namespace FarmEconomics.EndToEnd.Tests.Packages;

/// <summary>The program of docs/library.md, compiled as it stands there and run on the demo farm.</summary>
public partial class LibrarySampleTests
{
    // What a new console project brings in by itself.
    private const string Implicit = "global using System; global using System.Collections.Generic; global using System.IO; global using System.Linq;";

    [Fact]
    public async Task Sample_CompilesAndNamesTheBestCrops()
    {
        string sample = Block().Match(await File.ReadAllTextAsync(Path.Combine(Repository.Root, "docs", "library.md"), TestContext.Current.CancellationToken)).Groups["code"].Value;
        Assert.Contains("FarmFolder.Open(\"demo-data\")", sample, StringComparison.Ordinal);

        using Scratch scratch = new();
        string program = scratch.File("LibrarySample.dll");
        Compile(sample, program);

        // In a process of its own: the console is one for all tests of a program, and a notebook running beside it takes what is written.
        ProgramRun run = await Tool.RunApartAsync(EntryPoint.TestProgram, Repository.Root, [EntryPoint.RunVerb, program]);

        Assert.True(run.ExitCode == 0, run.Error);
        Assert.Contains("Micro mix: 8.48 per bed-foot-week", run.Output, StringComparison.Ordinal);
        Assert.Contains("Proven: True", run.Output, StringComparison.Ordinal);
    }

    private static void Compile(string code, string file)
    {
        IEnumerable<MetadataReference> references = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator).Select(path => MetadataReference.CreateFromFile(path));
        CSharpCompilation compilation = CSharpCompilation.Create(
            "LibrarySample",
            [CSharpSyntaxTree.ParseText(Implicit), CSharpSyntaxTree.ParseText(code)],
            references,
            new CSharpCompilationOptions(OutputKind.ConsoleApplication, nullableContextOptions: NullableContextOptions.Enable));
        Microsoft.CodeAnalysis.Emit.EmitResult result = compilation.Emit(file);
        Assert.True(result.Success, string.Join("\n", result.Diagnostics));
        Assert.DoesNotContain(result.Diagnostics, one => one.Severity >= DiagnosticSeverity.Warning);
    }

    [GeneratedRegex(@"```csharp\n(?<code>.*?)```", RegexOptions.Singleline)]
    private static partial Regex Block();
}
