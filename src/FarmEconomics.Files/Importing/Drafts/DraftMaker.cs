using FarmEconomics.Files.Importing.Sources;
using FarmEconomics.Records;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Importing.Drafts;

/// <summary>Drafts the rows of a mapping.</summary>
internal sealed partial class DraftMaker(string table, SourceColumns columns, SourceBlock block)
{
    private const decimal HoursOfDay = 24m;

    // What people write above the columns of a list of plantings. Common practice, no source.
    private static readonly (string Column, string[] Words)[] PlantingWords =
    [
        ("bed_feet", ["feet", "ft", "bed ft", "bed feet", "length ft", "row feet", "length"]),
        ("bed_meters", ["meters", "metres", "m", "bed m", "bed meters", "length m", "row meters", "length"]),
        ("out_of_bed", ["out", "removed", "pulled", "end", "cleared", "finished"]),
        ("sown", ["sown", "seeded", "sowing date", "seeding date", "sow date", "seed date", "date sown", "date seeded"]),
        ("in_bed", ["in", "planted", "transplanted", "planting date", "date planted", "transplant date", "date transplanted", "planted out",
            "set out", "date set out"]),
    ];

    private readonly List<DraftRow> rows = [];

    /// <summary>True for a heading of a list of plantings.</summary>
    public static bool IsOfPlantings(string heading) =>
        Array.Exists(PlantingWords, pair => pair.Words.Contains(HeadingWords.Plain(heading)));

    public RecordsReading? Records { get; init; }

    public DatesWritten Dates { get; init; }

    private LengthUnit Length => Records?.FarmSettings.LengthUnit ?? LengthUnit.Ft;

    private char FarmMark => Records?.FarmSettings.DecimalMark ?? '.';

    private bool IsWide => columns.Spread.Count > 0;

    public IReadOnlyList<DraftRow> Rows()
    {
        Date();
        switch (table)
        {
            case "harvests":
                Crop();
                Quantity();
                break;
            case "sales":
                Crop();
                Channel();
                Quantity();
                SaleMoney();
                break;
            case "expenses":
                Expense();
                break;
            case "labor":
                Worker();
                Hours();
                Task();
                break;
            default:
                ByName();
                break;
        }

        SourceId();
        LeftOut();
        return [.. rows.Select(row => row is { Column: { } column, Source: null, Constant: "?" }
            ? row with { Instead = [.. Unused().SelectMany(source => Filled(column, source))] } : row)];
    }

    // What no heading tells may stand in any column that nothing is read from.
    private IEnumerable<SourceColumn> Unused() => columns.All.Where(source => source.Values.Count > 0 && !columns.Spread.Contains(source)
        && rows.TrueForAll(row => row.Source != source.Heading));

    // The rows that fill a column from one of the file; none where what stands there can't be meant.
    private IEnumerable<DraftRow> Filled(string name, SourceColumn source)
    {
        switch (RecordSchema.Find(table)!.FindAny(name)?.Type)
        {
            case ColumnType.Date:
                DraftRow day = OfDays(source) with { Column = name };
                return !source.IsDay ? [] : day.Forms.Length == 0 ? [day]
                    : day.Forms.Select((form, at) => day with { Format = form, Readings = [], Note = day.Readings[at] });
            case null or ColumnType.Text or ColumnType.Name or ColumnType.Choice or ColumnType.YesNo:
                return [new DraftRow(name, source.Heading) { Format = Ditto(source), Note = Distinct(source) }];
            default:
                return source.IsNumber
                    ? [new DraftRow(name, source.Heading) { Format = Comma(source), Note = $"such as {source.First}" }] : [];
        }
    }

    private void Date()
    {
        if (table == "plantings")
        {
            InBed();
            return;
        }

        // Of a table without a day of its own another column may hold one, and is asked for.
        if (RecordSchema.Find(table)!.Find("date") is null)
        {
            return;
        }

        if (columns.DaysAcross)
        {
            rows.Add(OfDays(ImportWords.Heading, [.. columns.Spread.Select(column => column.Heading)]));
        }
        else if (table == "labor" && Week())
        {
            return;
        }
        else if ((columns.Of(ColumnRole.Date) ?? columns.Of(ColumnRole.SecondDate) ?? columns.All
            .FirstOrDefault(column => column.IsDay && !columns.Spread.Contains(column))) is { } date)
        {
            rows.Add(GoingOn(date, OfDays(date)));
        }
        else
        {
            rows.Add(new DraftRow("date", null) { Constant = "?", Note = "? the file has no day: one for all rows, such as 2025-03-01" });
        }
    }

    // The day a planting was set in its bed. Where no heading says it, another day is taken, and somebody has to look.
    private void InBed()
    {
        SourceColumn? told = Named("in_bed") ?? columns.Of(ColumnRole.Date);
        SourceColumn? other = columns.All.FirstOrDefault(column => column.IsDay
            && !Array.Exists(PlantingWords, pair => IsNamed(column, pair.Column)));
        if ((told ?? other ?? Named("sown")) is { } day)
        {
            DraftRow row = GoingOn(day, OfDays(day));
            string? why = told is not null ? null : other is not null ? "taken for the day it was set in the bed"
                : "no column says when it was set in the bed: right for what was sown there";
            rows.Add(row with { Column = "in_bed", Note = why is null ? row.Note : $"? {row.Note?.TrimStart('?', ' ')}; {why}" });
        }
    }

    private SourceColumn? Named(string name) => columns.All.FirstOrDefault(column => IsNamed(column, name));

    private static bool IsNamed(SourceColumn column, string name) => HeadingKey.Of(column.Heading) == HeadingKey.Of(name)
        || Array.Exists(PlantingWords, pair => pair.Column == name && pair.Words.Contains(HeadingWords.Plain(column.Heading)));

    private void Crop()
    {
        if (columns.Of(ColumnRole.Crop) is { } crop)
        {
            rows.Add(OfNames("crop", crop));
        }
        else if (IsWide && !columns.DaysAcross && !columns.WeekDaysAcross)
        {
            bool units = columns.Spread.Any(column => HeadingWords.InParentheses(column.Heading).Length > 0);
            rows.Add(new DraftRow("crop", ImportWords.Heading)
            {
                Format = units ? ImportWords.BeforeParentheses : null,
                Note = $"the {columns.Spread.Count} headings, such as {columns.Spread[0].Heading}"
            });
        }
        else if (columns.All.FirstOrDefault(column => column.IsText && column.Role is null) is { } text)
        {
            rows.Add(new DraftRow("crop", text.Heading) { Note = "? the only column of words; " + Distinct(text) });
        }
        else
        {
            rows.Add(new DraftRow("crop", null) { Constant = "?", Note = "? no column of crops is seen" });
        }
    }

    private void Channel()
    {
        if (columns.Of(ColumnRole.Channel) is { IsText: true } channel)
        {
            rows.Add(OfNames("channel", channel));
            return;
        }

        if (columns.All.FirstOrDefault(column => column is { At: < 0, Role: null, IsText: true }) is { } above)
        {
            rows.Add(new DraftRow("channel", above.Heading) { Note = $"? what stands above: {Distinct(above)}" });
            return;
        }

        string[] known = [.. Records?.Tables.Channels.Where(row => row.Kind is ChannelKind.Market or ChannelKind.Stand)
            .Select(row => row.Channel.Trim()) ?? []];
        rows.Add(known.Length == 1
            ? new DraftRow("channel", null) { Constant = known[0], Note = "? your one market or stand" }
            : new DraftRow("channel", null)
            {
                Constant = "?",
                Note = $"? where was this sold? {(known.Length == 0 ? "A name of channels.csv" : string.Join(", ", known))}"
            });
    }

    private void Quantity()
    {
        if (IsWide)
        {
            WideQuantity();
        }
        else if (columns.Of(ColumnRole.Quantity) is { } quantity)
        {
            bool units = quantity.Has(CellKind.Quantity);
            rows.Add(new DraftRow("quantity", quantity.Heading)
            {
                Format = Joined(units ? ImportWords.Quantity : null, Comma(quantity)),
                Note = $"such as {quantity.First}"
            });
            UnitOf(quantity, units);
            if (table == "harvests")
            {
                Nothing(quantity.Heading, quantity.Values, QuantityText.IsNothing, "nothing was picked");
            }
        }
        else
        {
            rows.Add(new DraftRow("quantity", null) { Constant = "?", Note = "? no column of quantities is seen" });
        }
    }

    private void WideQuantity()
    {
        bool noted = columns.Spread.Any(column => column.Has(CellKind.Quantity));
        string? comma = columns.Spread.Any(column => column.Mark(FarmMark) == ',') ? ImportWords.DecimalComma : null;
        rows.Add(new DraftRow("quantity", ImportWords.Cell)
        {
            Format = Joined(noted ? ImportWords.Quantity : null, comma),
            Note = !noted ? "blank cells are nothing" : "numbers with their unit, such as "
                + columns.Spread.SelectMany(column => column.Values).First(text => CellKinds.Of(text) == CellKind.Quantity)
        });
        if (noted)
        {
            rows.Add(new DraftRow("unit", ImportWords.Cell) { Format = ImportWords.Unit, Note = "the unit beside the number" });
        }
        else if (columns.Of(ColumnRole.Unit) is { IsText: true } unit)
        {
            rows.Add(new DraftRow("unit", unit.Heading) { Note = Distinct(unit) });
        }
        else if (columns.Spread.Any(column => HeadingWords.InParentheses(column.Heading).Length > 0))
        {
            rows.Add(new DraftRow("unit", ImportWords.Heading)
            {
                Format = ImportWords.InParentheses,
                Note = $"what stands in parentheses: {HeadingWords.InParentheses(columns.Spread[0].Heading)}"
            });
        }

        Nothing(ImportWords.Cell, columns.Spread.SelectMany(column => column.Values), QuantityText.IsNothing, "nothing that day");
    }

    // Words that say there was nothing; any other word in the place of a number holds its row back.
    private void Nothing(string source, IEnumerable<string> values, Func<string, bool> says, string note) =>
        rows.AddRange(values.Where(says).Distinct(StringComparer.OrdinalIgnoreCase)
            .Select(word => new DraftRow(null, source) { When = word, Note = note }));

    private void UnitOf(SourceColumn quantity, bool units)
    {
        if (columns.Of(ColumnRole.Unit) is { IsText: true } unit)
        {
            rows.Add(new DraftRow("unit", unit.Heading) { Note = Distinct(unit) });
        }
        else if (units)
        {
            rows.Add(new DraftRow("unit", quantity.Heading)
            {
                Format = Joined(ImportWords.Unit, Comma(quantity)),
                Note = "the unit beside the number"
            });
        }
        else if (HeadingWords.UnitOf(quantity.Heading) is { Length: > 0 } stated)
        {
            string known = UnitNames.AsKnown(stated, UnitNames.OnRecord(Records?.Tables));
            rows.Add(new DraftRow("unit", null) { Constant = known, Note = "what the heading says" });
        }
        else if (columns.All.FirstOrDefault(column => column.Role == ColumnRole.Unit && column.Values.Count > 0) is { } some)
        {
            rows.Add(new DraftRow("unit", some.Heading) { Note = "? blank where the row has none" });
        }
        else
        {
            rows.AddRange(ItemUnits.Rows(columns, Records?.Tables));
        }
    }

    private void ByName()
    {
        TableSchema schema = RecordSchema.Find(table)!;
        foreach (ColumnSchema column in schema.Columns
            .Where(column => column.Type != ColumnType.Date || rows.TrueForAll(row => row.Column != column.Name)))
        {
            string name = column.NameFor(Length);
            SourceColumn? source = columns.All.FirstOrDefault(known => HeadingKey.Of(known.Heading) == HeadingKey.Of(name))
                ?? (table == "plantings" ? Named(name) : null)
                ?? (column.RefersTo == "crops" || column.Name == "crop" ? columns.Of(ColumnRole.Crop) : column.RefersTo == "beds"
                    || column.Name == "bed" ? columns.Of(ColumnRole.Bed) ?? Where()
                    : column.Name == "variety" ? columns.Of(ColumnRole.Variety)
                    : column.Name == "amount" ? columns.Of(ColumnRole.Amount)
                    : null);
            if (source is not null && column.Type == ColumnType.Date)
            {
                rows.Add(OfDays(source) with { Column = name });
            }
            else if (source is not null)
            {
                rows.Add(new DraftRow(name, source.Heading) { Format = ByNameComma(column, source), Note = Distinct(source) });
            }
            else if (column.Required && rows.TrueForAll(row => row.Column != name))
            {
                rows.Add(new DraftRow(name, null) { Constant = "?", Note = $"? {Length.Label(column.Description)}" });
            }
        }
    }

    private string? ByNameComma(ColumnSchema column, SourceColumn source) =>
        column.Type is ColumnType.Text or ColumnType.Name or ColumnType.Choice or ColumnType.YesNo or ColumnType.Date ? null
        : Comma(source);

    // Where a planting stands is a bed; "where" of other lists is who was sold to.
    private SourceColumn? Where() => table != "plantings" ? null
        : columns.All.FirstOrDefault(column => HeadingWords.Plain(column.Heading) == "where");

    private void SourceId()
    {
        if (columns.Of(ColumnRole.SourceId) is { } id && !IsWide && id.Values.Count > 0 && id.Values
            .All(text => text.Any(char.IsAsciiDigit)))
        {
            rows.Add(new DraftRow(ImportColumns.Id,
                id.Heading)
            { Note = "the file's own number of the row: it is added once, whatever else changes" });
        }
    }

    // In a wide table what is no value and isn't used would be taken for one.
    private void LeftOut()
    {
        foreach (SourceColumn column in columns.All.Where(column => IsWide && column.At >= 0 && !columns.Spread.Contains(column)
            && rows.TrueForAll(row => row.Source != column.Heading)))
        {
            rows.Add(new DraftRow(null, column.Heading)
            {
                Note = column.Role == ColumnRole.Total ? "totals: compared, not read"
                : "not used"
            });
        }
    }

    private string? Comma(SourceColumn column) => column.Mark(FarmMark) == ',' ? ImportWords.DecimalComma : null;

    private string? Round(SourceColumn column, int decimals) =>
        column.Values.Any(text => CellKinds.Read(text, column.Mark(FarmMark)) is { } value && decimal.Round(value, decimals) != value)
            ? ImportWords.Round : null;

    private static string? Ditto(SourceColumn column) => column.Values
        .Any(text => text is "\"" or "''" or "〃" or "”" || text.Equals("ditto", StringComparison.OrdinalIgnoreCase))
        ? ImportWords.SameAsAbove : null;

    private DraftRow OfDays(SourceColumn column) => OfDays(column.Heading, column.Values);

    private DraftRow OfDays(string source, IReadOnlyList<string> values) =>
        DraftDates.Row(source, values, Records?.FarmSettings.DateFormat, Dates, block.Year);

    private DraftRow OfNames(string name, SourceColumn column) =>
        GoingOn(column, new DraftRow(name, column.Heading) { Format = Ditto(column), Note = Distinct(column) });

    // Blanks read as the same as above are shown as worth a look.
    private DraftRow GoingOn(SourceColumn column, DraftRow row) => columns.BlanksGoingOn(column) is > 0 and var blank
        ? row with
        {
            Format = ImportWords.Has(ImportWords.Of(row.Format), ImportWords.SameAsAbove) ? row.Format
                : Joined(row.Format, ImportWords.SameAsAbove),
            Note = $"? {row.Note?.TrimStart('?', ' ')}; blank in {blank} {(blank == 1 ? "row" : "rows")}: read as the same as above",
        }
        : row;

    private static string Distinct(SourceColumn column)
    {
        string[] distinct = [.. column.Values.Distinct(StringComparer.OrdinalIgnoreCase)];
        return distinct.Length == 0 ? "blank throughout" : distinct.Length <= 3 ? string.Join(", ", distinct)
            : $"{distinct.Length} different ones: {string.Join(", ", distinct.Take(3))}, ...";
    }

    private static string? Joined(params string?[] words) => string.Join(';', words.OfType<string>()) is { Length: > 0 } joined ? joined
        : null;
}
