using System.Globalization;
using FarmEconomics.Files.Importing.Sources;
using FarmEconomics.Records;
using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Importing;

/// <summary>How one column of a table is filled.</summary>
internal sealed class ImportFilling
{
    // A break noted as a plain number above this is one of minutes: nobody rests five hours.
    private const decimal LongestBreak = 4m;

    private static readonly HashSet<string> Dittos = new(["\"", "''", "〃", "do.", "ditto", "”", "\"\""], StringComparer.OrdinalIgnoreCase);

    private readonly ImportRow? main;
    private readonly List<(ImportCondition When, string Becomes)> rules;
    private readonly string[] formats;
    private readonly char farmMark;

    public ImportFilling(ColumnSchema column, ImportRow? main, IReadOnlyList<ImportRow> rules, char farmMark)
    {
        Column = column;
        this.main = main;
        this.farmMark = farmMark;
        formats = ImportWords.Of(main?.Format);
        this.rules = [.. rules.Select(row => (new ImportCondition(row, Mark), row.Becomes ?? ""))];
        Source = main?.SourceColumn;
        Headings =
        [
            .. new[] { Source, ImportWords.After(formats, ImportWords.Until), ImportWords.After(formats, ImportWords.Less) }
                .Concat(ImportWords.AllAfter(formats, ImportWords.Plus)).Concat(this.rules.Select(rule => rule.When.Source))
                .OfType<string>(),
        ];
    }

    public ColumnSchema Column { get; }

    /// <summary>The heading it is filled from; null for a constant, or what rules alone fill.</summary>
    public string? Source { get; }

    /// <summary>All headings it looks under.</summary>
    public IReadOnlyList<string> Headings { get; }

    /// <summary>The decimal mark of the source.</summary>
    public char Mark => ImportWords.Has(formats, ImportWords.DecimalComma) ? ',' : '.';

    /// <summary>The form its days are written in; null where the mapping says none.</summary>
    public string? DayForm => Array.Find(formats, DateForms.IsForm);

    /// <summary>True where the source's numbers are days as spreadsheets count them.</summary>
    public bool CountsDays => Column.Type == ColumnType.Date && ImportWords.Has(formats, ImportWords.Serial);

    /// <summary>True when it is filled by rules and nothing else.</summary>
    public bool IsRuled => main is null && rules.Count > 0;

    /// <summary>True when money paid stands below 0 and what is above is left out.</summary>
    public bool PaidBelow => Source is not null && ImportWords.Has(formats, ImportWords.PaidBelow);

    /// <summary>True where a blank means the same as above.</summary>
    public bool GoesOn => Source is not null && ImportWords.Has(formats, ImportWords.SameAsAbove);

    /// <summary>What the source says there, in the row converted last or above it.</summary>
    public string Above { get; private set; } = "";

    public void BeginAnew() => Above = "";

    public string Value(Func<string, string> source, ImportNotes notes)
    {
        string text = Source is null ? main?.Constant ?? "" : source(Source).Trim();
        if (GoesOn)
        {
            notes.FromAbove += text.Length == 0 && Above.Length > 0 ? 1 : 0;
            text = text.Length == 0 || Dittos.Contains(text) ? Above : text;
            Above = text;
        }

        foreach ((ImportCondition when, string becomes) in rules)
        {
            if ((when.Source ?? Source) is { } heading && when.Holds(heading == Source ? text : source(heading)))
            {
                return becomes;
            }
        }

        // What can't be read stays as it is, and is reported as any other bad field.
        return Source is null || text.Length == 0 ? text : Column.Type switch
        {
            ColumnType.Date => Date(text, source),
            ColumnType.Hours => Hours(text, source, notes),
            ColumnType.Number or ColumnType.Money or ColumnType.Price or ColumnType.Rate or ColumnType.Percent => Number(text, notes),
            _ => Words(text),
        };
    }

    private string Words(string text) =>
        ImportWords.Has(formats, ImportWords.Unit) ? (QuantityText.TryRead(text, Mark, out NotedQuantity quantity) ? quantity.Unit : "")
        : ImportWords.Has(formats, ImportWords.InParentheses) ? HeadingWords.InParentheses(text)
        : ImportWords.Has(formats, ImportWords.BeforeParentheses) ? HeadingWords.BeforeParentheses(text)
        : text;

    private string Date(string text, Func<string, string> source)
    {
        foreach (string? format in formats.Where(DateForms.IsForm).Append(null))
        {
            if (DateForms.TryRead(text, format, out DateOnly date))
            {
                return Moved(date, source).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
            }
        }

        return text;
    }

    // Days of a week that is known by one of its days.
    private DateOnly Moved(DateOnly date, Func<string, string> source)
    {
        int days = Days(ImportWords.PlusDays) - Days(ImportWords.LessDays);
        if (ImportWords.Has(formats, ImportWords.Weekday) && WeekDays.Of(source(ImportWords.Heading)) is { } weekday)
        {
            days += ((int)weekday - (int)date.AddDays(days).DayOfWeek + 7) % 7;
        }

        return date.AddDays(days);

        int Days(string word) =>
            int.TryParse(ImportWords.After(formats, word), NumberStyles.None, CultureInfo.InvariantCulture, out int said)
                ? Math.Min(said, 366)
                : 0;
    }

    private string Hours(string text, Func<string, string> source, ImportNotes notes)
    {
        string? why = null;
        decimal hours;
        if (ImportWords.After(formats, ImportWords.Until) is { } until)
        {
            why = ClockText.Between(text, source(until), out hours);
        }
        else if (ImportWords.Has(formats, ImportWords.Punches)
            && (ClockText.Times(text).Length > 0 || ClockText.Minutes(text) is not null))
        {
            why = ClockText.Punches(text, out hours);
        }
        else if (!HoursText.TryRead(text, Mark, out hours))
        {
            if (CellKinds.Read(text, Mark) is not { } number)
            {
                return text;
            }

            why = OfNumber(number, out hours);
        }

        why ??= Further(source, ref hours);
        why ??= Break(source, ref hours);
        if (why is not null)
        {
            notes.Faults.Add((Column.Name, why));
            return text;
        }

        return Written(hours, "0.####################");
    }

    private string? OfNumber(decimal number, out decimal hours)
    {
        hours = ImportWords.Has(formats, ImportWords.DayPart) ? ClockText.OfDayPart(number) : number;
        return ImportWords.Has(formats, ImportWords.HoursMinutes) ? ClockText.OfHoursAndMinutes(number, out hours) : null;
    }

    // Overtime beside the regular hours.
    private string? Further(Func<string, string> source, ref decimal hours)
    {
        foreach (string text in ImportWords.AllAfter(formats, ImportWords.Plus).Select(heading => source(heading).Trim())
            .Where(text => text.Length > 0 && !QuantityText.IsNothing(text)))
        {
            if (!HoursText.TryRead(text, Mark, out decimal more))
            {
                if (CellKinds.Read(text, Mark) is not { } number)
                {
                    return $"can't be worked out: the further hours \"{text}\" are no time";
                }

                more = number;
            }

            hours += more;
        }

        return null;
    }

    private string? Break(Func<string, string> source, ref decimal hours)
    {
        if (ImportWords.After(formats, ImportWords.Less) is not { } heading || source(heading).Trim() is not { Length: > 0 } text)
        {
            return null;
        }

        if (!HoursText.TryRead(text, Mark, out decimal rest))
        {
            if (CellKinds.Read(text, Mark) is not { } number)
            {
                return $"can't be worked out: the break \"{text}\" is no time";
            }

            rest = number > LongestBreak ? decimal.Round(number / 60m, 10) : number;
        }

        hours -= rest;
        return null;
    }

    private string Number(string text, ImportNotes notes)
    {
        decimal? read = CellKinds.Read(Column.Type == ColumnType.Percent ? text.TrimEnd('%') : text, Mark);
        if (read is null && ImportWords.Has(formats, ImportWords.Quantity) && QuantityText.TryRead(text, Mark, out NotedQuantity quantity))
        {
            read = quantity.Amount;
            notes.Estimates += quantity.IsEstimate ? 1 : 0;
        }

        if (read is not { } value)
        {
            return text;
        }

        value = ImportWords.Has(formats, ImportWords.Absolute) ? Math.Abs(value) : IsTurned ? -value : value;
        if (ImportWords.Has(formats, ImportWords.Round))
        {
            decimal whole = decimal.Round(value, Column.MaxDecimals, MidpointRounding.AwayFromZero);
            notes.Rounded += whole != value ? 1 : 0;
            notes.RoundedBy += whole - value;
            value = whole;
        }

        return Written(value, Column.IsMoney ? "0.00##################" : "0.####################");
    }

    private bool IsTurned => ImportWords.Has(formats, ImportWords.Negative) || ImportWords.Has(formats, ImportWords.PaidBelow);

    private string Written(decimal value, string format) => value.ToString(format, CultureInfo.InvariantCulture).Replace('.', farmMark);
}
