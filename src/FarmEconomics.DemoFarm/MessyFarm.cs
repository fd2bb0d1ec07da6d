using System.Text.RegularExpressions;

namespace FarmEconomics.DemoFarm;

/// <summary>
/// The same farm as somebody in a hurry keeps it: names written several ways, dates as the spreadsheet shows them, currency signs, rows
/// entered twice, a total under the table. With the proposed aliases and without the doubled rows it comes to the same review.
/// </summary>
public static partial class MessyFarm
{
    private const int EveryDouble = 997;
    private const int EveryMisspelling = 23;

    private static readonly Dictionary<string, string> Misspelled = new()
    {
        ["Head lettuce"] = "Head lettce",
        ["Salad mix"] = "Salad Mixx",
        ["Saturday Market"] = "Saturday Mkt",
        ["Juniper Shop"] = "Juniper Shoppe",
        ["Maren"] = "Marren",
        ["Wash and pack"] = "Wash & pack",
    };

    /// <summary>All tables, by file name, as the text that is written.</summary>
    public static IReadOnlyDictionary<string, string> Generate()
    {
        Dictionary<string, string> tables = new(
            DemoFarmGenerator
                .Generate()
                .Where(table => !table.Key.StartsWith("plan", StringComparison.Ordinal) || table.Key == "plantings.csv")
        );
        tables["farm.csv"] += "date_format,MM/DD/YYYY\n";
        tables["sales.csv"] =
            Doubled(Misspell(Dates(Money(tables["sales.csv"], 5)))).Replace("unit_price", "Unit Price", StringComparison.Ordinal)
            + "\nTotal,,,,,,\n\nPrices before May 2023 from memory.,,,,,,\n";
        tables["harvests.csv"] = "\uFEFF" + Misspell(Dates(tables["harvests.csv"]));
        tables["labor.csv"] = Misspell(Dates(tables["labor.csv"]))
            .Replace("date,worker,hours,task", "DATE,Worker,Hours,Task", StringComparison.Ordinal);
        tables["expenses.csv"] = Dates(Money(tables["expenses.csv"], 1));
        tables["plantings.csv"] = Dates(tables["plantings.csv"]).Replace("bed_feet", "Bed Feet", StringComparison.Ordinal);
        return tables;
    }

    [GeneratedRegex(@"\b(\d{4})-(\d{2})-(\d{2})(?=,|$)", RegexOptions.Multiline)]
    private static partial Regex IsoDate();

    private static string Dates(string table) =>
        IsoDate().Replace(table, match => $"{match.Groups[2].Value}/{match.Groups[3].Value}/{match.Groups[1].Value}");

    private static string Misspell(string table)
    {
        string[] lines = table.Split('\n');
        for (int i = EveryMisspelling; i < lines.Length; i += EveryMisspelling)
        {
            lines[i] = string.Join(',', lines[i].Split(',').Select(field => Misspelled.GetValueOrDefault(field, field)));
        }

        return string.Join('\n', lines);
    }

    private static string Money(string table, int column)
    {
        string[] lines = table.Split('\n');
        for (int i = 1; i < lines.Length; i += 2)
        {
            string[] fields = lines[i].Split(',');
            bool plain =
                !lines[i].Contains('"', StringComparison.Ordinal)
                && fields.Length > column
                && fields[column].Length > 0
                && char.IsAsciiDigit(fields[column][0]);
            if (plain)
            {
                fields[column] = "$" + fields[column];
                lines[i] = string.Join(',', fields);
            }
        }

        return string.Join('\n', lines);
    }

    private static string Doubled(string table) =>
        string.Join('\n', table.Split('\n').SelectMany((line, i) => i > 0 && i % EveryDouble == 0 ? new[] { line, line } : [line]));
}
