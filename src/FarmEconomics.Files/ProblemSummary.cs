using FarmEconomics.Records;
using FarmEconomics.Records.Checks;

namespace FarmEconomics.Files;

/// <summary>
/// Tells problems by their cause, in an order a person can follow: a cause once, with how many rows have it, where the first is, and its
/// fix.
/// </summary>
public static class ProblemSummary
{
    /// <summary>How many causes fit a screen of 24 lines.</summary>
    public const int OnAScreen = 7;

    private const string Indent = "    ";
    private const int LongestLine = 200;

    /// <summary>The summary, line by line.</summary>
    /// <param name="problems">The problems, located by <see cref="ProblemLocator"/>.</param>
    /// <param name="folder">The records; their full path is told once.</param>
    /// <param name="notation">How the farm writes numbers.</param>
    /// <param name="everyKind">True: beyond a screen each further cause has a line; false: only their number is told.</param>
    /// <returns>Lines; none when there is no problem.</returns>
    public static IEnumerable<string> Lines(IEnumerable<Problem> problems, string folder, Notation notation, bool everyKind = false)
    {
        IReadOnlyList<ProblemCause> causes = ProblemCause.Of(problems);
        if (causes.Count == 0)
        {
            yield break;
        }

        yield return $"In {Path.GetFullPath(folder)}:";
        foreach (string line in causes.Take(OnAScreen).SelectMany(cause => Lines(cause, notation)))
        {
            yield return Clip(line);
        }

        ProblemCause[] further = [.. causes.Skip(OnAScreen)];
        if (further.Length == 0)
        {
            yield break;
        }

        int rows = further.Sum(cause => cause.Count);
        yield return notation.Text($"... and {further.Length:N0} more kinds of problems, in {rows:N0} {(rows == 1 ? "place" : "places")}")
            + (everyKind ? ":" : ".");
        foreach (ProblemCause cause in everyKind ? further : [])
        {
            yield return Clip(Indent + Kind(cause, notation));
        }
    }

    /// <summary>True when the summary leaves rows out.</summary>
    /// <param name="problems">The problems.</param>
    /// <returns>Whether there is more to see than it tells.</returns>
    public static bool LeavesOut(IEnumerable<Problem> problems)
    {
        IReadOnlyList<ProblemCause> causes = ProblemCause.Of(problems);
        return causes.Count > OnAScreen || causes.Any(cause => cause.Count > 1);
    }

    private static IEnumerable<string> Lines(ProblemCause cause, Notation notation)
    {
        Problem first = cause.First;
        string message = first.Message.ReplaceLineEndings("\u21B5");
        yield return Kind(cause, notation);
        if (!SaysAll(cause))
        {
            yield return Indent + message;
        }
        else if (cause.Count == 1 && !string.IsNullOrEmpty(first.Row))
        {
            yield return Indent + first.Row.ReplaceLineEndings("\u21B5");
        }

        yield return Indent + Fix(cause);
    }

    private static bool SaysAll(ProblemCause cause) => cause.Count == 1 || cause.IsOfName;

    private static string Kind(ProblemCause cause, Notation notation)
    {
        Problem first = cause.First;
        string severity = first.Severity == Severity.Error ? "error" : "warning";
        string what = SaysAll(cause) ? first.Message.ReplaceLineEndings("\u21B5").TrimEnd('.') : ProblemCatalog.Get(first.Code).Title;
        return $"{severity} {first.Code}: {what}{(first.Source == Defaults.Place ? "" : $": {Where(cause, notation)}")}"
            + $"{Money(cause, notation)}.";
    }

    private static string Where(ProblemCause cause, Notation notation)
    {
        string place = ProblemText.PlaceIn(cause.First);
        if (cause.Count == 1)
        {
            return place;
        }

        string files = cause.Files.Count switch
        {
            1 => cause.Files[0],
            2 => $"{cause.Files[0]} and {cause.Files[1]}",
            var count => $"{cause.Files[0]} and {count - 1} other files",
        };
        int rows = cause.Problems.Select(problem => (problem.Source.File, problem.Source.Line)).Distinct().Count()
            + cause.Problems.Sum(problem => problem.Further);
        return rows == 1
            ? notation.Text($"{cause.Count:N0} times at {place}")
            : notation.Text($"{rows:N0} rows in {files}, first at {place}");
    }

    private static string Money(ProblemCause cause, Notation notation) => cause.First.Severity == Severity.Error && cause.Money != 0m
        ? notation.Text($", with {notation.Prefix}{cause.Money:#,0.00} of money in {(cause.Count == 1 ? "it" : "them")}") : "";

    private static string Fix(ProblemCause cause)
    {
        if (cause.Alias is { } alias)
        {
            return $"did you mean {alias.Name}? One line in aliases.csv fixes {(cause.Count == 1 ? "it" : "all")}: {AliasFile.Line(alias)}";
        }

        return (cause.First.Nearest is { } nearest ? $"did you mean {nearest}? " : "") + $"fix: {cause.First.Hint}";
    }

    private static string Clip(string line) => line.Length <= LongestLine ? line : string.Concat(line.AsSpan(0, LongestLine - 4), " ...");
}
