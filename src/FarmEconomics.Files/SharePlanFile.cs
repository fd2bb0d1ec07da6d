using System.Globalization;
using CsvHelper;
using FarmEconomics.Files.Inputs;
using FarmEconomics.Files.Reading;
using FarmEconomics.Pricing;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files;

/// <summary>
/// A plan of next season's boxes: a CSV file with the columns <c>week</c>, <c>crop</c>, <c>quantity</c> and, if need be, <c>unit</c>.
/// </summary>
public static class SharePlanFile
{
    /// <summary>Weeks of seven days that begin within a year: a plan is of one.</summary>
    private const int MostWeeks = 53;

    private static readonly string[] Columns = ["week", "crop", "quantity", "unit"];

    /// <summary>Reads a plan.</summary>
    /// <param name="path">The file; it is only read.</param>
    /// <returns>What one full box is to hold, line by line.</returns>
    /// <exception cref="FileNotFoundException">There is no such file.</exception>
    /// <exception cref="FormatException">Lines that can't be read, all of them, each with file, line and what was expected.</exception>
    public static IReadOnlyList<PlannedItem> Read(string path)
    {
        PlainFile.RequireGiven(path);
        List<PlannedItem> items = [];
        List<string> faults = [];
        int[]? places = null;
        using CsvReader reader = CsvReader.FromFile(path, TableFile.Options(path) with { HasHeader = false });
        while (reader.Read())
        {
            if (places is null)
            {
                string[] headings = reader.Current.ToArray();
                places = Array.ConvertAll(Columns, column => Array.FindIndex(headings, heading => HeadingKey.Of(heading) == column));
                faults.AddRange(Columns.Take(3).Where((_, i) => places[i] < 0).Select(column => $"{path}:{reader.LineNumber}: "
                    + $"the column {column} is missing; a plan has week, crop, quantity and, if need be, unit."));
                if (faults.Count > 0)
                {
                    break;
                }

                continue;
            }

            string[] texts = Array.ConvertAll(places, place =>
                place >= 0 && place < reader.FieldCount ? (reader.GetString(place) ?? "").Trim() : ""
            );
            if (Array.Exists(texts, text => text.Length > 0) && FaultOf(texts, items) is { } expected)
            {
                faults.Add($"{path}:{reader.LineNumber}: {expected}.");
            }
        }

        return faults.Count > 0 ? throw new FormatException(string.Join('\n', faults))
            : items.Count > 0 ? items
            : throw new FormatException($"{path}: the plan holds no line.");
    }

    /// <summary>Adds a line to the items, or tells what is wrong with it.</summary>
    private static string? FaultOf(string[] texts, List<PlannedItem> items)
    {
        bool week = int.TryParse(texts[0], NumberStyles.None, CultureInfo.InvariantCulture, out int number)
            && number is > 0 and <= MostWeeks;
        bool quantity = decimal.TryParse(texts[2], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal amount)
            && amount > 0m;
        if (week && quantity && texts[1].Length > 0)
        {
            items.Add(new PlannedItem(number, texts[1], amount, texts[3].Length == 0 ? null : texts[3]));
            return null;
        }

        return !week ? $"a week from 1 to {MostWeeks} was expected, not '{texts[0]}'"
            : !quantity ? $"a quantity above 0 with a decimal point was expected, not '{texts[2]}'"
            : "the crop is missing";
    }
}
