using System.Text;
using FarmEconomics.Files.Inputs;
using FarmEconomics.Records;

namespace FarmEconomics.Files;

/// <summary>Writes a problem as a grower reads it.</summary>
public static class ProblemText
{
    private const string Indent = "    ";

    /// <summary>
    /// <c>path:line:column: error CODE: message</c>, then the row, the nearest known name and how to fix it, each on a line of its
    /// own where there is one. A fault of a whole file has no line and column. In a workbook the path is <c>records.xlsx!sheet</c>, the
    /// line is the row of the sheet and the column its letters.
    /// </summary>
    /// <param name="problem">The problem, located by <see cref="ProblemLocator"/>.</param>
    /// <param name="notation">How the farm writes numbers.</param>
    /// <param name="folder">The folder to put before the file's name, or the workbook; empty for none.</param>
    /// <returns>The text, without a line break at the end.</returns>
    public static string Format(Problem problem, Notation notation, string folder = "")
    {
        ArgumentNullException.ThrowIfNull(problem);
        bool isOption = problem.Source.File.StartsWith("--", StringComparison.Ordinal);
        bool isSheet = SheetPlace.IsSheet(problem.Source.File);
        string before = isSheet ? Path.GetDirectoryName(folder) ?? "" : folder;
        string path = isOption || before.Length == 0 ? problem.Source.File : Path.Combine(before, problem.Source.File);
        string place = path + PositionIn(problem);
        var text = new StringBuilder();
        // No row of the farm's holds it: a place would send the reader to a file that isn't there.
        text.Append(problem.Source == Defaults.Place ? "" : $"{place}: ")
            .Append(problem.Severity == Severity.Error ? "error " : "warning ")
            .Append(problem.Code)
            .Append(": ")
            .Append(OneLine(problem.Message));
        if (!string.IsNullOrEmpty(problem.Row))
        {
            text.Append('\n').Append(Indent).Append(OneLine(problem.Row));
        }

        if (problem.Nearest is not null)
        {
            text.Append('\n').Append(Indent).Append("did you mean: ").Append(problem.Nearest);
        }

        text.Append('\n').Append(Indent).Append("fix: ").Append(problem.Hint);
        return (
            problem.Further == 0
                ? text
                : text.Append('\n').Append(Indent).Append(notation.Text($"and {problem.Further:N0} further rows with the same fault"))
        ).ToString();
    }

    /// <summary>The place without the folder.</summary>
    internal static string PlaceIn(Problem problem) => problem.Source.File + PositionIn(problem);

    private static string PositionIn(Problem problem)
    {
        int position = Math.Max(1, problem.Position);
        return problem.Source.Line == 0
            ? ""
            : $":{problem.Source.Line}:{(SheetPlace.IsSheet(problem.Source.File) ? SheetPlace.Letters(position) : position)}";
    }

    private static string OneLine(string text) => text.ReplaceLineEndings("\u21B5");
}
