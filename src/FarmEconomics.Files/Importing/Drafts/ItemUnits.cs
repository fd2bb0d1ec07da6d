using System.Text.RegularExpressions;
using FarmEconomics.Files.Importing.Sources;
using FarmEconomics.Records;

namespace FarmEconomics.Files.Importing.Drafts;

/// <summary>Units told by the item's own name, where no column holds any: five of "Salad mix bag" are five bags, not five pounds; five
/// of "Salad mix 1/2 lb" are five half pounds.</summary>
internal static partial class ItemUnits
{
    /// <summary>A rule for each unit an item's name ends with: those with a size first, since the first that holds is taken, then the one
    /// with most rows.</summary>
    public static IEnumerable<DraftRow> Rows(SourceColumns columns, RecordTables? records)
    {
        if (columns.Of(ColumnRole.Crop) is not { } crop)
        {
            yield break;
        }

        HashSet<string> crops = Set(records?.Crops.Select(row => row.Crop.Trim()) ?? []);
        string[] known = UnitNames.OnRecord(records);
        HashSet<string> units = Set([.. known, .. UnitNames.All]);
        (string Item, Match? Sized)[] items =
            [.. crop.Values.Where(item => !crops.Contains(item)).Select(item => (item, Sized(item, units.Contains)))];

        foreach ((string item, Match? sized) in items.Where(pair => pair.Sized is not null).DistinctBy(pair => pair.Sized!.Value)
            .OrderByDescending(pair => pair.Sized!.Length))
        {
            yield return OfSize(crop.Heading, item, sized!);
        }

        foreach (IGrouping<string, string> unit in items.Where(pair => pair.Sized is null)
            .Select(pair => (pair.Item, Last: Last(pair.Item)))
            .Where(pair => units.Contains(pair.Last))
            .GroupBy(pair => pair.Last, pair => pair.Item, StringComparer.OrdinalIgnoreCase)
            .OrderByDescending(group => group.Count()))
        {
            string ending = unit.First()[..^1].EndsWith(unit.Key, StringComparison.OrdinalIgnoreCase) ? $"* ({unit.Key})" : $"* {unit.Key}";
            yield return new DraftRow("unit", crop.Heading)
            {
                When = ending,
                Match = "pattern",
                Becomes = UnitNames.AsKnown(unit.Key, known),
                Note = $"? {unit.First()} is counted so, by its name",
            };
        }
    }

    /// <summary>An item and the unit its name ends with, one of them: "Kale bunches" is Kale by the bunch; else null.</summary>
    public static (string Item, string Unit)? Split(string item)
    {
        if (Sized(item, UnitNames.IsOne) is { } sized)
        {
            return item.Trim()[..sized.Index].TrimEnd(' ', ',', '-') is { Length: > 0 } crop
                ? (crop, sized.Groups["whole"].Value.ToLowerInvariant()) : null;
        }

        string last = Last(item);
        string name = HeadingWords.InParentheses(item).Length > 0 ? HeadingWords.BeforeParentheses(item)
            : item.Trim()[..^last.Length].TrimEnd(' ', ',', '-');
        if (name.Length == 0 || !UnitNames.IsOne(last))
        {
            return null;
        }

        return (name, UnitNames.One(last).ToLowerInvariant());
    }

    // The size as a pattern of its own: "* 5 oz" is no "15 oz".
    private static DraftRow OfSize(string heading, string item, Match sized) => new("unit", heading)
    {
        When = $"*{sized.Value}",
        Match = "pattern",
        Becomes = sized.Groups["whole"].Value,
        Note = $"? {item} is sold by the {sized.Groups["whole"].Value}; how much of the crop's own unit that is stands in units.csv",
    };

    // A size with its unit at the end of a name: 1/2 lb, 5oz, (0.25 lb), 3 lb bag; a single one of a unit is the unit.
    private static Match? Sized(string item, Func<string, bool> isUnit) =>
        Size().Match(item.Trim()) is { Success: true } match && isUnit(match.Groups["unit"].Value)
            && (match.Groups["in"] is { Success: true } container ? isUnit(container.Value) : match.Groups["size"].Value is not "1")
            ? match : null;

    private static string Last(string item)
    {
        string inside = HeadingWords.InParentheses(item);
        return inside.Length > 0 ? inside : item.Contains(' ', StringComparison.Ordinal) ? item.Trim().Split(' ')[^1] : "";
    }

    private static HashSet<string> Set(IEnumerable<string> names) => new(names, StringComparer.OrdinalIgnoreCase);

    [GeneratedRegex(
        @"[\s,(-](?<whole>(?<size>[0-9]+[ -][0-9]+/[0-9]+|[0-9]+/[0-9]+|[0-9]*[½¼¾⅓⅔⅛⅜⅝⅞]|[0-9]*[.,]?[0-9]+)[ -]?(?<unit>\p{L}+)"
            + @"(\.?[ -](?<in>\p{L}+))?)\.?\)?$",
        RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant)]
    private static partial Regex Size();
}
