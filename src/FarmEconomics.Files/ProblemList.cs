using FarmEconomics.Files.Places;
using FarmEconomics.Files.Results;
using FarmEconomics.Records;

namespace FarmEconomics.Files;

/// <summary>Writes problems as a table that a spreadsheet opens, a row each.</summary>
public static class ProblemList
{
    /// <summary>Writes the list.</summary>
    /// <param name="problems">The problems, located by <see cref="ProblemLocator"/>.</param>
    /// <param name="path">A file that isn't there yet.</param>
    /// <exception cref="IOException">There is such a file, or no folder for it.</exception>
    /// <exception cref="UnauthorizedAccessException">Nothing may be written there.</exception>
    public static void Write(IEnumerable<Problem> problems, string path)
    {
        ArgumentNullException.ThrowIfNull(problems);
        Take(path);
        using CsvTable table = new(path, null, "severity", "code", "file", "line", "position", "column", "message", "row", "did_you_mean",
            "fix", "money", "further_rows");
        foreach (Problem problem in problems)
        {
            table.Text(problem.Severity == Severity.Error ? "error" : "warning").Text(problem.Code).Text(problem.Source.File)
                .Whole(problem.Source.Line == 0 ? null : problem.Source.Line).Whole(problem.Position == 0 ? null : problem.Position)
                .Text(problem.Column).Text(problem.Message).Text(problem.Row).Text(problem.Nearest).Text(problem.Hint)
                .Money(problem.Money).Whole(problem.Further == 0 ? null : problem.Further).End();
        }
    }

    // Taken, so that no file that is there is written over.
    private static void Take(string path)
    {
        try
        {
            using FileStream taken = new(path, FileMode.CreateNew);
        }
        catch (UnauthorizedAccessException denied)
        {
            throw FolderPlace.Denied(path, denied);
        }
        catch (DirectoryNotFoundException fault)
        {
            throw new IOException($"There is no folder for {path}.", fault);
        }
    }
}
