using FarmEconomics.Files.Importing.Sources;
using FarmEconomics.Records;

namespace FarmEconomics.Files.Importing.Drafts;

/// <summary>Units told by the item's own name, where no column holds any: five of "Salad mix bag" are five bags, not five pounds.</summary>
internal static class ItemUnits
{
    /// <summary>A rule for each unit an item's name ends with, the one with most rows first.</summary>
    public static IEnumerable<DraftRow> Rows(SourceColumns columns, RecordTables? records)
    {
        if (columns.Of(ColumnRole.Crop) is not { } crop)
        {
            yield break;
        }

        HashSet<string> crops = Set(records?.Crops.Select(row => row.Crop.Trim()) ?? []);
        HashSet<string> units = Set(
            (records?.Crops.Select(row => row.Unit.Trim()) ?? [])
                .Concat(records?.Units.Select(row => row.Unit.Trim()) ?? [])
                .Concat(UnitNames.All)
        );
        foreach (
            IGrouping<string, string> unit in crop
                .Values.Where(item => !crops.Contains(item))
                .Select(item => (item, Last: Last(item)))
                .Where(pair => units.Contains(pair.Last))
                .GroupBy(pair => pair.Last, pair => pair.item, StringComparer.OrdinalIgnoreCase)
                .OrderByDescending(group => group.Count())
        )
        {
            string ending = unit.First()[..^1].EndsWith(unit.Key, StringComparison.OrdinalIgnoreCase) ? $"* ({unit.Key})" : $"* {unit.Key}";
            yield return new DraftRow("unit", crop.Heading)
            {
                When = ending,
                Match = "pattern",
                Becomes = unit.Key,
                Note = $"? {unit.First()} is counted so, by its name",
            };
        }
    }

    /// <summary>An item and the unit its name ends with, one of them: "Kale bunches" is Kale by the bunch; else null.</summary>
    public static (string Item, string Unit)? Split(string item)
    {
        string last = item.Trim().Split(' ')[^1];
        string name = item.Trim()[..^last.Length].TrimEnd();
        if (name.Length == 0 || !UnitNames.IsOne(last))
        {
            return null;
        }

        string one = last.TrimEnd('s', 'S');
        string[] singular = [one.TrimEnd('e', 'E'), one, last];
        return (name, singular.First(UnitNames.IsOne).ToLowerInvariant());
    }

    private static string Last(string item)
    {
        string inside = HeadingWords.InParentheses(item);
        return inside.Length > 0 ? inside : item.Contains(' ', StringComparison.Ordinal) ? item.Trim().Split(' ')[^1] : "";
    }

    private static HashSet<string> Set(IEnumerable<string> names) => new(names, StringComparer.OrdinalIgnoreCase);
}
