using System.Reflection;
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

        // Where the demo farm is depends on where one stands; nothing else of the sample is touched.
        string here = sample.Replace("\"demo-data\"", SymbolDisplay.FormatLiteral(ManyFarms.Demo, quote: true), StringComparison.Ordinal);
        Assembly program = Compile(here);
        TextWriter before = Console.Out;
        using StringWriter said = new();
        Console.SetOut(said);
        object? code;
        try
        {
            code = program.EntryPoint!.Invoke(null, [Array.Empty<string>()]);
        }
        finally
        {
            Console.SetOut(before);
        }

        Assert.Equal(0, code);
        Assert.Contains("Micro mix: 8.48 per bed-foot-week", said.ToString(), StringComparison.Ordinal);
        Assert.Contains("Proven: True", said.ToString(), StringComparison.Ordinal);
    }

    private static Assembly Compile(string code)
    {
        IEnumerable<MetadataReference> references = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator).Select(path => MetadataReference.CreateFromFile(path));
        CSharpCompilation compilation = CSharpCompilation.Create(
            "LibrarySample",
            [CSharpSyntaxTree.ParseText(Implicit), CSharpSyntaxTree.ParseText(code)],
            references,
            new CSharpCompilationOptions(OutputKind.ConsoleApplication, nullableContextOptions: NullableContextOptions.Enable));
        using MemoryStream assembly = new();
        Microsoft.CodeAnalysis.Emit.EmitResult result = compilation.Emit(assembly);
        Assert.True(result.Success, string.Join("\n", result.Diagnostics));
        Assert.DoesNotContain(result.Diagnostics, one => one.Severity >= DiagnosticSeverity.Warning);
        return Assembly.Load(assembly.ToArray());
    }

    [GeneratedRegex(@"```csharp\n(?<code>.*?)```", RegexOptions.Singleline)]
    private static partial Regex Block();
}
