using System.Globalization;

namespace FarmEconomics.Recount.Tests;

/// <summary>
/// Holds every row and column of the program's result tables against the recount. Money, counts and names must be equal; rates, hours and
/// quantities, which the tables round to 4 decimals, must lie within half of the last one.
/// </summary>
internal sealed class Comparison
{
    /// <summary>The compared tables with the columns that name a row.</summary>
    private static readonly Dictionary<string, string[]> Keys = new()
    {
        ["crops"] = ["crop"],
        ["plantings"] = ["planting"],
        ["pools"] = ["pool"],
        ["charges"] = ["pool", "crop"],
        ["channels"] = ["channel"],
        ["statement"] = ["line"],
    };

    private readonly List<string> differences = [];

    /// <summary>Compared fields by table.</summary>
    internal Dictionary<string, int> Fields { get; } = Keys.Keys.Append("reconciliation").ToDictionary(table => table, _ => 0);

    internal IReadOnlyList<string> Differences => differences;

    /// <summary>All compared fields.</summary>
    internal int Compared => Fields.Values.Sum();

    internal static Comparison Of(Reviewed reviewed, Recount recount, IEnumerable<int> years)
    {
        Comparison comparison = new();
        foreach (int year in years)
        {
            Dictionary<string, List<Dictionary<string, object?>>> tables = reviewed.Tables(year, [.. Keys.Keys, "reconciliation"]);
            foreach ((string table, string[] keys) in Keys)
            {
                comparison.Compare(table, year, keys, tables[table], recount.Table(table + "_result", year));
            }

            comparison.CompareProof(year, tables["reconciliation"], recount.Table("proof_result", year));
        }

        return comparison;
    }

    /// <summary>Fails with the first differences.</summary>
    internal void AssertEqual() => Assert.True(
        differences.Count == 0, $"{differences.Count} differences (the program / the recount), the first:{Environment.NewLine}{string.Join(Environment.NewLine, differences.Take(40))}");

    private static bool Same(string? text, object? value) => value switch
    {
        null => text is null,
        decimal money => Number(text) is { } number && number == money,
        double exact => Number(text) is { } number && Math.Abs((double)number - exact) <= 0.00005 + (1e-9 * Math.Max(1, Math.Abs(exact))),
        _ => text == Convert.ToString(value, CultureInfo.InvariantCulture),
    };

    private static decimal? Number(string? text) => text is null ? null : decimal.Parse(text, CultureInfo.InvariantCulture);

    private static string Shown(object? value) => Convert.ToString(value, CultureInfo.InvariantCulture) is { Length: > 0 } text ? text : "not available";

    internal void Compare(
        string table,
        int year,
        string[] keys,
        List<Dictionary<string, object?>> theirs,
        List<Dictionary<string, object?>> ours
    )
    {
        string Name(Dictionary<string, object?> row) => string.Join(", ", keys.Select(key => row[key]));
        Dictionary<string, Dictionary<string, object?>> recounted = ours.ToDictionary(Name);
        foreach (Dictionary<string, object?> row in theirs)
        {
            if (!recounted.Remove(Name(row), out Dictionary<string, object?>? own))
            {
                differences.Add($"{table} {year} {Name(row)}: not in the recount");
                continue;
            }

            foreach ((string column, object? text) in row)
            {
                Fields[table] = Fields.GetValueOrDefault(table) + 1;
                if (!own.TryGetValue(column, out object? value))
                {
                    differences.Add($"{table} {year}: the recount has no column {column}");
                }
                else if (!Same((string?)text, value))
                {
                    differences.Add($"{table} {year} {Name(row)} {column}: {Shown(text)} / {Shown(value)}");
                }
            }
        }

        differences.AddRange(recounted.Keys.Select(name => $"{table} {year} {name}: only in the recount"));
    }

    /// <summary>The proof's left sides, told by the beginning of the check's name; quantities stand there with two decimals.</summary>
    private void CompareProof(int year, List<Dictionary<string, object?>> theirs, List<Dictionary<string, object?>> ours)
    {
        foreach (Dictionary<string, object?> own in ours)
        {
            List<Dictionary<string, object?>> checks = theirs.FindAll(row => ((string)row["check"]!).StartsWith((string)own["starts"]!, StringComparison.Ordinal));
            Fields["reconciliation"]++;
            double left = Convert.ToDouble(own["left"], CultureInfo.InvariantCulture);
            if (checks.Count != 1 || Math.Abs((double)Number((string?)checks[0]["left"])! - left) > 0.005 + 1e-7)
            {
                differences.Add($"reconciliation {year} {own["starts"]}: {Shown(checks.Count == 1 ? checks[0]["left"] : null)} / {Shown(left)}");
            }
        }
    }
}
