using System.Reflection;
using System.Text;
using FarmEconomics.NotebookKit;
using FarmEconomics.Notebooks;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Tests.Files;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Emit;

namespace FarmEconomics.Tests.Fuzz;

/// <summary>What the cells of a notebook find in place of the kit: records that are open already.</summary>
public sealed class OpenedKit(OpenFarm farm)
{
    public OpenFarm Open(string records, string settings = "", bool skipBadRows = false, bool evenWithErrors = false) => farm;
}

/// <summary>A notebook's cells as one method of this process: the same code, without a kernel, so that it runs in milliseconds.</summary>
/// <param name="Name">The notebook.</param>
/// <param name="Parameters">Its parameters.</param>
/// <param name="Run">Runs all cells; what a cell shows goes to the last argument.</param>
internal sealed record NotebookScript(
    string Name, IReadOnlyList<ReportField> Parameters, Action<OpenFarm, IReadOnlyDictionary<string, object>, Action<object>> Run)
{
    // What a notebook knows without a using of its own.
    private const string Implicit = "using System; using System.Collections.Generic; using System.IO; using System.Linq; using System.Text; using System.Threading.Tasks;\n";

    private static readonly Lazy<IReadOnlyList<NotebookScript>> Compiled = new(Compile);

    internal static IReadOnlyList<NotebookScript> All => Compiled.Value;

    private static IReadOnlyList<NotebookScript> Compile()
    {
        string[] paths = [.. Directory.GetFiles(Path.Combine(TestFolders.Repository, "notebooks"), "*.ipynb")
            .Order(StringComparer.Ordinal)];
        NotebookDocument[] notebooks = [.. paths.Select(path => NotebookDocument.Load(path))];
        IEnumerable<MetadataReference> references = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator)
            .Select(path => MetadataReference.CreateFromFile(path));
        CSharpCompilation compilation = CSharpCompilation.Create(
            "NotebookScripts", notebooks.Select((notebook, i) => CSharpSyntaxTree.ParseText(ClassOf(notebook, i))), references,
                new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary));
        using MemoryStream bytes = new();
        EmitResult result = compilation.Emit(bytes);
        if (!result.Success)
        {
            throw new InvalidOperationException(string.Join('\n', result.Diagnostics.Where(one =>
                one.Severity == DiagnosticSeverity.Error)));
        }

        Assembly assembly = Assembly.Load(bytes.ToArray());
        return [.. notebooks.Select((notebook, i) => new NotebookScript(Path.GetFileName(paths[i]), NotebookParameter.Of(notebook),
            assembly.GetType($"Notebook{i}")!.GetMethod("Run")!
            .CreateDelegate<Action<OpenFarm, IReadOnlyDictionary<string, object>, Action<object>>>()))];
    }

    private static string ClassOf(NotebookDocument notebook, int number)
    {
        StringBuilder usings = new(Implicit);
        StringBuilder body = new();
        foreach (NotebookCell cell in notebook.Cells.Where(cell => cell.IsCode))
        {
            CompilationUnitSyntax unit = CSharpSyntaxTree.ParseText(cell.Source, new CSharpParseOptions(kind: SourceCodeKind.Script))
                .GetCompilationUnitRoot();
            usings.Append(unit.Usings.ToString()).Append('\n');
            foreach (MemberDeclarationSyntax member in unit.Members)
            {
                body.Append(member is GlobalStatementSyntax { Statement: ExpressionStatementSyntax { SemicolonToken.IsMissing: true } shown } ? $"Show({shown.Expression});\n"
                    : cell.Tags.Contains(NotebookParameters.Tag) && member is FieldDeclarationSyntax field ? Given(field.Declaration)
                    : member.ToFullString() + "\n");
            }
        }

        return $"{usings}public static class Notebook{number} {{ public static void Run(FarmEconomics.NotebookKit.OpenFarm opened, IReadOnlyDictionary<string, object> given, Action<object> Show)\n"
            + $"{{ var Kit = new {typeof(OpenedKit).FullName}(opened);\n{body}}} }}";
    }

    private static string Given(VariableDeclarationSyntax declared) =>
        $"{declared.Type} {declared.Variables[0].Identifier} = ({declared.Type})given[\"{declared.Variables[0].Identifier}\"];\n";
}
