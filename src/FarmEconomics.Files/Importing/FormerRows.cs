using FarmEconomics.Records;

namespace FarmEconomics.Files.Importing;

/// <summary>Rows an earlier import made of a file and that are gone from it: what was corrected there would count twice.</summary>
internal static class FormerRows
{
    private const int MostTold = 5;

    /// <summary>Those of the days the file is about: an export of another month leaves the earlier one out, and rightly.</summary>
    /// <param name="former">The rows.</param>
    /// <param name="fields">The fields of the file's rows.</param>
    /// <param name="day">Which field is the day; -1: none.</param>
    public static IReadOnlyList<FormerRow> Within(IReadOnlyList<FormerRow> former, IEnumerable<IReadOnlyList<string>> fields, int day)
    {
        if (day < 0 || former.Count == 0)
        {
            return former;
        }

        string[] days = [.. fields.Select(row => row[day]).Where(text => DateOnly.TryParseExact(text, "yyyy-MM-dd", out _))
            .Order(StringComparer.Ordinal)];
        return [.. former.Where(row => days.Length > 0 && string.CompareOrdinal(row.Fields[day], days[0]) >= 0
            && string.CompareOrdinal(row.Fields[day], days[^1]) <= 0)];
    }

    /// <summary>What is said of them.</summary>
    public static IEnumerable<string> Told(IReadOnlyList<FormerRow> former, Notation notation)
    {
        if (former.Count > 0)
        {
            yield return notation.Text($"{former.Count:N0} {(former.Count == 1 ? "row" : "rows")} ")
                + $"that an earlier import of this file added {(former.Count == 1 ? "doesn't" : "don't")} stand in it any more: "
                + string.Join(", ", former.Take(MostTold).Select(row => $"{row.File} line {row.Line}"))
                + (former.Count > MostTold ? ", ..." : "")
                + ". What was corrected in the file counts twice until the former row is taken out of the records.";
        }
    }
}
