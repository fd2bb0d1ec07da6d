using FarmEconomics.Files.Importing.Drafts;
using FarmEconomics.Files.Importing.Sources;
using FarmEconomics.Records;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Start;

/// <summary>
/// The first rows of a farm's tables, drafted from the names in its raw files: crops with their units, units that convert exactly,
/// channels, workers, beds. Names that
/// look alike are kept apart and told, never joined in silence.
/// </summary>
public sealed class FirstTables
{
    // What one of a unit is in another; NIST Handbook 44, appendix C (avoirdupois pound = 453.59237 g exactly), and the dozen.
    private static readonly (string[] Names, decimal Grams)[] Weights =
    [
        (["g", "gram", "grams"], 1m), (["kg", "kilo", "kilos", "kilogram", "kilograms"], 1000m), (["oz", "ounce", "ounces"], 28.349523125m),
            (["lb", "lbs", "pound", "pounds"], 453.59237m),
    ];

    private static readonly string[] Dozens = ["doz", "dozen", "dz"];

    // Common practice, no source: words in the name of a place goods go to.
    private static readonly (string Word, ChannelKind Kind)[] Kinds =
    [
        ("market", ChannelKind.Market), ("stand", ChannelKind.Stand), ("csa", ChannelKind.Share), ("share", ChannelKind.Share),
            ("box", ChannelKind.Share), ("house", ChannelKind.Household), ("home", ChannelKind.Household),
            ("kitchen table", ChannelKind.Household),
        ("food bank", ChannelKind.Donation), ("food shelf", ChannelKind.Donation), ("donat", ChannelKind.Donation),
            ("pantry", ChannelKind.Donation), ("compost", ChannelKind.Waste), ("waste", ChannelKind.Waste),
    ];

    private readonly Dictionary<string, FirstRows> tables = new(StringComparer.Ordinal);
    private readonly List<string> remarks = [];

    private FirstTables(IReadOnlyList<SourceNames> sources)
    {
        // What was picked or planted names the crops; an item of a register is only a crop when nothing else names any.
        SourceNames[] fields = [.. sources.Where(source => source.Table is "harvests" or "plantings")];
        Crops(fields.Length > 0 ? fields : [.. sources], sources.SelectMany(source => source.Rows).ToLookup(
            row => Bare(row.GetValueOrDefault("crop") ?? ""), row => row.GetValueOrDefault("unit"), StringComparer.OrdinalIgnoreCase));
        Table("channels", ["channel", "kind"], Names(sources, "channel").Select(name => new[] { name, Words.Of(KindOf(name)) }));
        Table("workers", ["worker", "kind", "wage"], Names(sources, "worker").Select(name => new[] { name, "hired", "" }));
        Table(
            "beds",
            ["bed", "length_ft"],
            Names([.. sources.Where(source => source.Table == "plantings")], "bed").Select(name => new[] { name, "" })
        );
        Say(
            tables.ContainsKey("crops"),
            "crops.csv: put how many days each keeps under storage_days; left blank, what isn't sold counts as on hand to the year's end."
        );
        Say(
            tables.ContainsKey("workers"),
            "workers.csv: everybody is written as hired; put owner for yourself, and wages where you know them."
        );
        Say(tables.ContainsKey("beds"), "beds.csv: put the length of each bed, or of all beds of a field together.");
        Say(
            tables.ContainsKey("channels"),
            "channels.csv: the kinds are guessed from the names; what isn't told by its name is wholesale."
        );
    }

    /// <summary>The drafted tables by name, as CSV with lengths in feet and decimal points.</summary>
    public IReadOnlyDictionary<string, string> Files => FilesFor(new FarmSettings());

    /// <summary>The drafted tables by name.</summary>
    internal IReadOnlyDictionary<string, FirstRows> Tables => tables;

    /// <summary>The drafted tables by name, as CSV in the ways of a farm: its unit of length, its decimal mark.</summary>
    /// <param name="farm">The farm's settings.</param>
    /// <returns>The texts of the files.</returns>
    public IReadOnlyDictionary<string, string> FilesFor(FarmSettings farm)
    {
        ArgumentNullException.ThrowIfNull(farm);
        string separator = RecordsTemplate.Separator(farm).ToString();
        return tables.ToDictionary(
            table => table.Key,
            table =>
                string.Concat(
                    table
                        .Value.For(table.Key, farm)
                        .Select(row => string.Join(separator, row.Select(field => CsvField.Of(field, separator))) + "\n")
                )
        );
    }

    /// <summary>What the grower should look at, a sentence each.</summary>
    public IReadOnlyList<string> Remarks => remarks;

    /// <summary>Drafts tables.</summary>
    /// <param name="paths">The raw files; a mapping beside one (FILE.map.csv) is used.</param>
    /// <returns>The tables.</returns>
    /// <exception cref="IOException">A file can't be read.</exception>
    /// <exception cref="ArgumentException">What a file holds can't be told.</exception>
    public static FirstTables From(IEnumerable<string> paths)
    {
        ArgumentNullException.ThrowIfNull(paths);
        List<SourceNames> told = [];
        List<string> untold = [];
        string[] all = [.. paths];
        foreach (string path in all)
        {
            try
            {
                told.AddRange(SourceNames.AllOf(path));
            }
            catch (UntoldTableException fault) when (all.Length > 1)
            {
                untold.Add($"{Path.GetFileName(path)}: nothing is drafted from it. {fault.Message.TrimEnd('.')} when you import it.");
            }
        }

        var tables = new FirstTables(told);
        tables.remarks.AddRange(untold);
        return tables;
    }

    private static IEnumerable<string> Names(IEnumerable<SourceNames> sources, string column) =>
        sources.SelectMany(source => source.Rows).Select(row => row.GetValueOrDefault(column)).OfType<string>()
            .GroupBy(name => name, StringComparer.OrdinalIgnoreCase)
            .Select(group => group.GroupBy(name => name, StringComparer.Ordinal).MaxBy(same => same.Count())!.Key)
                .Order(StringComparer.OrdinalIgnoreCase);

    // A register's "Kale bunch" tells what Kale is counted in.
    private static string Bare(string item) => ItemUnits.Split(item)?.Item ?? item;

    private static ChannelKind KindOf(string name) =>
        Array.FindIndex(Kinds, kind => name.Contains(kind.Word, StringComparison.OrdinalIgnoreCase)) is >= 0 and var at ? Kinds[at].Kind
        : ChannelKind.Wholesale;

    /// <summary>How many of one unit another holds, where that is exact; null where it depends on the crop.</summary>
    private static decimal? Exact(string unit, string of)
    {
        // 1/2 lb is half of a pound.
        if (QuantityText.TryRead(unit, '.', out NotedQuantity sized) && sized is { Amount: > 0m, Unit.Length: > 0 })
        {
            // A bag of 3 lb holds them.
            string inside = sized.Unit.Split(' ')[0];
            return inside.Equals(of, StringComparison.OrdinalIgnoreCase) ? sized.Amount : sized.Amount * Exact(inside, of);
        }

        decimal? one = Grams(unit);
        decimal? other = Grams(of);
        return one / other is { } ratio ? decimal.Round(ratio, 10) : other is null
            && Dozens.Contains(unit, StringComparer.OrdinalIgnoreCase) ? 12m : null;
    }

    private static decimal? Grams(string unit) => Array
        .Find(Weights, weight => weight.Names.Contains(unit, StringComparer.OrdinalIgnoreCase)) is { Names: not null } known ? known.Grams
        : null;

    /// <param name="sources">What names the crops.</param>
    /// <param name="sold">Units by crop wherever one is named: what it is sold by stands in units.csv where its own is another.</param>
    private void Crops(SourceNames[] sources, ILookup<string, string?> sold)
    {
        List<string[]> crops = [];
        List<string[]> units = [];
        List<string> unknown = [];
        List<string> open = [];
        (string Crop, string? Unit)[] named = [.. sources.SelectMany(source => source.Rows)
            .Where(row => row.ContainsKey("crop")).Select(row => (row["crop"], row.GetValueOrDefault("unit")))];
        foreach (IGrouping<string, (string Crop, string? Unit)> crop in ByUnit(named)
            .GroupBy(row => row.Crop, StringComparer.OrdinalIgnoreCase).OrderBy(group => group.Key, StringComparer.OrdinalIgnoreCase))
        {
            string name = crop.GroupBy(row => row.Crop, StringComparer.Ordinal).MaxBy(same => same.Count())!.Key;
            string[] seen = Seen(MostFirst(crop.Select(row => row.Unit)), MostFirst(sold[name]));
            string own = seen.Length > 0 ? seen[0] : "each";
            crops.Add([name, own, ""]);
            if (seen.Length == 0)
            {
                unknown.Add(name);
            }

            units.AddRange(seen.Skip(1).Where(unit => Exact(unit, own) is not null)
                .Select(unit => new[] { name, unit, Written(Exact(unit, own)!.Value) }));
            open.AddRange(seen.Skip(1).Where(unit => Exact(unit, own) is null)
                .Select(unit => $"{name}: how many {own} is 1 {UnitNames.One(unit)}?"));
        }

        Table("crops", ["crop", "unit", "storage_days"], crops);
        Table("units", ["crop", "unit", "base_units"], units);
        Say(unknown.Count > 0, $"crops.csv: no unit is seen for {List(unknown)}; each is written, put lb, bunch or what you count.");
        open.ForEach(question => remarks.Add("units.csv: " + question));
        string[] names = [.. crops.Select(row => row[0])];
        foreach (string name in names
            .Where(name => names.Any(other => other.Length < name.Length && (name.Equals(other + "s", StringComparison.OrdinalIgnoreCase)
            || name.Equals(other + "es", StringComparison.OrdinalIgnoreCase)))))
        {
            remarks.Add($"crops.csv: {name} and its singular are both there; if they are one, take one out and put it into aliases.csv.");
        }
    }

    // "bunch" of a register is "bunches" of a picking sheet.
    private static string[] Seen(string[] picked, string[] sold) =>
        [.. picked.Concat(sold.Select(unit => UnitNames.AsKnown(unit, picked))).Distinct(StringComparer.OrdinalIgnoreCase)];

    private static string[] MostFirst(IEnumerable<string?> units) => [.. units.OfType<string>()
        .GroupBy(unit => unit, StringComparer.OrdinalIgnoreCase).OrderByDescending(group => group.Count()).Select(group => group.Key)];

    /// <summary>A crop that is only named with its unit ("Kale bunches", over a column) is the crop, counted so; told.</summary>
    private IEnumerable<(string Crop, string? Unit)> ByUnit((string Crop, string? Unit)[] named)
    {
        List<string> split = [];
        foreach ((string crop, string? unit) in named)
        {
            (string Item, string Unit)? own = ItemUnits.Split(crop) is { } item && (unit is null
                || UnitNames.AsKnown(unit, [item.Unit]).Equals(item.Unit, StringComparison.OrdinalIgnoreCase)) ? item : null;
            if (own is not null && !split.Contains(crop))
            {
                split.Add(crop);
            }

            yield return own is { } counted ? counted : (crop, unit);
        }

        Say(split.Count > 0, $"crops.csv: {List(split)}: what stands at the end is taken for the unit.");
    }

    private void Table(string table, string[] headings, IEnumerable<string[]> rows)
    {
        string[][] all = [.. rows];
        if (all.Length > 0 || table == "units")
        {
            tables.Add(table, new FirstRows(headings, all));
        }
    }

    private void Say(bool holds, string sentence)
    {
        if (holds)
        {
            remarks.Add(sentence);
        }
    }

    private static string Written(decimal number) => number.ToString("0.##########", System.Globalization.CultureInfo.InvariantCulture);

    private static string List(List<string> names) => names.Count <= 4 ? string.Join(", ", names)
        : $"{string.Join(", ", names.Take(4))} and others";
}

/// <summary>The first rows of a table: its headings as a farm that measures in feet has them, numbers with a decimal point.</summary>
internal sealed record FirstRows(string[] Headings, IReadOnlyList<string[]> Rows)
{
    /// <summary>Headings and rows in the ways of a farm.</summary>
    public IEnumerable<string[]> For(string table, FarmSettings farm)
    {
        ColumnSchema[] columns = [.. Headings.Select(heading => RecordSchema.Find(table)!.Find(heading)!)];
        yield return [.. columns.Select(column => column.NameFor(farm.LengthUnit))];
        foreach (string[] row in Rows)
        {
            yield return
            [
                .. row.Select((field, at) => columns[at].Type == ColumnType.Number ? field.Replace('.', farm.DecimalMark) : field),
            ];
        }
    }
}
