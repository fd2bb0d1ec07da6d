using FarmEconomics.Files.Importing.Sources;

namespace FarmEconomics.Files.Importing.Drafts;

/// <summary>The columns of a source with what each is likely to hold.</summary>
internal sealed class SourceColumns
{
    private const int FewestSpread = 3;
    private const int FewestBlank = 5;
    private readonly List<SourceColumn> all;
    private readonly SourceBlock block;
    private readonly int? year;

    /// <summary>True where no heading names them.</summary>
    public bool AreNumbered { get; }

    public SourceColumns(SourceBlock block)
    {
        all = [.. Enumerable.Range(0, block.Segments[0].Headings.Length).Where(at => block.Segments[0].Headings[at].Length > 0)
            .Select(at => new SourceColumn(block, at))];
        AreNumbered = block.IsWithoutHeadings;
        this.block = block;
        year = block.Year;
        if (AreNumbered)
        {
            Guess(block);
        }

        all.AddRange(SourceColumn.Above(block)
            .Where(above => above.Role is null || !all.Exists(column => column.Role == above.Role && column.Values.Count > 0)));
        OutAndIn();
        DaysAbove();
        Spread = FindSpread();
        if (Spread.Count == 0)
        {
            TimesWorked();
            ReadTotals();
        }

        WordsOfSeveralMeanings();
    }

    private void WordsOfSeveralMeanings()
    {
        // What was picked is an amount, too: "15 lb" is no money.
        if (!Has(ColumnRole.Quantity) && Has(ColumnRole.Crop) && Of(ColumnRole.Amount) is { } noted
            && noted.Has(CellKind.Quantity) && !noted.Has(CellKind.Money))
        {
            noted.Role = ColumnRole.Quantity;
        }

        // "What" is a task on a time sheet and a crop on a list of what was sold, picked or planted.
        if (!Has(ColumnRole.Crop) && Of(ColumnRole.Task) is { } what
            && (Has(ColumnRole.Quantity) || Has(ColumnRole.Amount) || AreOfPlantings) && !Has(ColumnRole.Hours) && !Has(ColumnRole.ClockIn))
        {
            what.Role = ColumnRole.Crop;
        }

        // "Name" is who worked on a time sheet, and the item on a register's list.
        if (!Has(ColumnRole.Crop) && Of(ColumnRole.Worker) is { } name && HeadingWords.Plain(name.Heading) == "name"
            && Has(ColumnRole.Quantity) && Has(ColumnRole.Amount) && !Has(ColumnRole.Hours) && !Has(ColumnRole.ClockIn))
        {
            name.Role = ColumnRole.Crop;
        }
    }

    public IReadOnlyList<SourceColumn> All => all;

    /// <summary>The columns of a wide table whose values are rows of their own; empty for a long table.</summary>
    public IReadOnlyList<SourceColumn> Spread { get; }

    /// <summary>True when the headings of a wide table are days.</summary>
    public bool DaysAcross => Spread.Count > 0 && Spread.All(NamesADay);

    /// <summary>True when the headings of a wide table are days of the week.</summary>
    public bool WeekDaysAcross => Spread.Count > 0 && Spread.All(column => WeekDays.Of(column.Heading) is not null);

    /// <summary>The column of a role; of several the one whose heading is the likeliest, filled ones first.</summary>
    public SourceColumn? Of(ColumnRole role) => all.Where(column => column.Role == role && !Spread.Contains(column))
        .OrderBy(column => column.Values.Count == 0).ThenBy(column => HeadingWords.RankOf(column.Heading)).ThenBy(column => column.At)
            .FirstOrDefault();

    public bool Has(ColumnRole role) => Of(role) is not null;

    // "In" and "Out" of a bank's list are those of a list of plantings, too.
    private bool AreOfPlantings => all.Count(column => column.Role is null && DraftMaker.IsOfPlantings(column.Heading)) > 1;

    /// <summary>How many cells of a column are blank because the one above goes on: merged cells, or a day written once for all that was
    /// picked on it; 0 where they may mean something else.</summary>
    public int BlanksGoingOn(SourceColumn column)
    {
        int[] own = Blanks(column);
        int[] days = Of(ColumnRole.Date) is { } date ? Blanks(date) : [];

        // No day and no crop is no record; no customer may be a sale at the market, and says so only together with the day.
        bool goesOn = column.Role is ColumnRole.Date or ColumnRole.Crop
            ? own.Length * FewestBlank >= block.Rows.Count() || (days.Length > 0 && own.SequenceEqual(days) && IsShared(days))
            : own.SequenceEqual(days);
        return goesOn ? own.Length : 0;
    }

    // Merged cells leave the day blank and with it who bought, or who worked.
    private bool IsShared(int[] days) => new[] { ColumnRole.Channel, ColumnRole.Worker, ColumnRole.Crop, ColumnRole.SourceId }
        .Any(role => Of(role) is { } other && Blanks(other).SequenceEqual(days));

    // Lines whose cell is blank; none where the first of a part is, or where the row holds no number.
    private int[] Blanks(SourceColumn column)
    {
        List<int> lines = [];
        foreach (SourceSegment part in column.At < 0 ? [] : block.Segments)
        {
            int at = part.Column(column.Heading);
            SourceCells[] blank = [.. part.Rows.Where(row => row.At(at).Length == 0)];
            if (blank.Length > 0 && (blank[0] == part.Rows[0] || !Array.TrueForAll(blank, HasMeasure)))
            {
                return [];
            }

            lines.AddRange(blank.Select(row => row.Line));
        }

        return [.. lines];
    }

    private bool HasMeasure(SourceCells row) =>
        all.Exists(column => column.At >= 0 && column.IsMeasure && CellKinds.IsNumber(row.At(column.At)));

    // A picking sheet says its year once, on top.
    private bool NamesADay(SourceColumn column) => IsDay(column.Heading);

    private bool IsDay(string text) => DateForms.IsDay(text) || (year is { } known && DateForms.IsDayOf(known, text));

    // Each part of the file may have its day on top.
    private void DaysAbove()
    {
        bool dated = all.Exists(column => column.At >= 0 && (column.IsDay || (column.Values.Count > 0
            && column.Role is ColumnRole.Date or ColumnRole.SecondDate or ColumnRole.PeriodEnd)));
        if (!dated && all.Find(column => column.At < 0 && column.Role is null && column.Values.All(IsDay)) is { } days)
        {
            days.Role = ColumnRole.Date;
        }
    }

    // A register's file has a time of day there, a time sheet "7:30-12".
    private void TimesWorked()
    {
        if (!Has(ColumnRole.Hours) && all.Find(column => column.Role is null or ColumnRole.Ignored && column.Values.Count > 0
            && column.Values.Count(ClockText.IsPunches) * 2 > column.Values.Count) is { } times)
        {
            times.Role = ColumnRole.Hours;
        }
    }

    // "Payment" may be how, and is no amount then. "Out" is money paid in a bank's file, a day in a list of plantings, a time on a time
    // sheet.
    private void OutAndIn()
    {
        foreach (SourceColumn column in all.Where(column => column.Role is ColumnRole.MoneyOut or ColumnRole.MoneyIn or ColumnRole.Amount))
        {
            column.Role = column.IsDay || (column.Role == ColumnRole.Amount && column.IsText) ? null
                : !column.IsTime ? column.Role
                : column.Role == ColumnRole.MoneyIn ? ColumnRole.ClockIn
                : column.Role == ColumnRole.MoneyOut ? ColumnRole.ClockOut
                : column.Role;
        }
    }

    // Days across are a time sheet or a picking list by day; otherwise at least three columns of measures with headings no program knows,
    // beside a day.
    private List<SourceColumn> FindSpread()
    {
        SourceColumn[] days = [.. all.Where(NamesADay)];
        if (days.Length >= 2)
        {
            return [.. days];
        }

        List<SourceColumn> measures = [.. all.Where(column => column.Role is null && column.IsSpread)];
        bool dated = all.Exists(column => column.Role is ColumnRole.Date or ColumnRole.PeriodEnd
            && (column.IsDay || column.Values.Count(DateForms.LacksAYear) * 2 > column.Values.Count));
        bool isLong = all.Exists(column =>
            column.Role is ColumnRole.Quantity or ColumnRole.Amount or ColumnRole.MoneyOut or ColumnRole.Hours or ColumnRole.ClockIn
            && column.IsMeasure);
        // Beside a total, or a week, two are enough: the hours of two people.
        bool told = all.Exists(column =>
            column.Role is ColumnRole.Total or ColumnRole.PeriodEnd || HeadingWords.BeginsAWeek(column.Heading)
        );
        return dated && !isLong && measures.Count(column => column.Values.Count > 0) >= (told ? FewestSpread - 1 : FewestSpread)
            ? measures
            : [];
    }

    // A column of totals tells a wide table's sums; in a long one it is what the row comes to: money of a sale, hours of a day.
    private void ReadTotals()
    {
        SourceColumn[] totals = [.. all.Where(column => column.Role == ColumnRole.Total && column.IsMeasure
            && !HeadingWords.Plain(column.Heading).StartsWith("sub", StringComparison.Ordinal))];
        if (totals.Length == 0)
        {
            return;
        }

        SourceColumn total = totals[^1];
        bool onlyRegular = Of(ColumnRole.Hours) is not { } hours
            || HeadingWords.Plain(hours.Heading).StartsWith("regular", StringComparison.Ordinal);
        if ((Has(ColumnRole.Worker) || Has(ColumnRole.ClockIn)) && !total.IsInCents && onlyRegular)
        {
            total.Role = ColumnRole.Hours;
            all.ForEach(column => column.Role = column != total && column.Role == ColumnRole.Hours ? null : column.Role);
        }
        else if (!Has(ColumnRole.Amount) && !Has(ColumnRole.MoneyOut) && !Has(ColumnRole.Hours) && total.IsNumber
            && (total.IsInCents || Has(ColumnRole.UnitPrice) || Has(ColumnRole.Channel)))
        {
            total.Role = ColumnRole.Amount;
        }
        else if (Has(ColumnRole.Crop) && !Has(ColumnRole.Quantity) && !total.IsInCents)
        {
            total.Role = ColumnRole.Quantity;
        }
    }

    // A file without headings: what stands in a column tells what it is.
    private void Guess(SourceBlock block)
    {
        all.ForEach(column => column.Role = ColumnRole.Ignored);
        SourceColumn[] days = [.. all.Where(column => column.IsDay)];
        if (days.Length > 0)
        {
            days[0].Role = ColumnRole.Date;
        }

        SourceColumn[] numbers = [.. all.Where(column => column.IsNumber && !column.IsDay && column.Values
            .Any(text => CellKinds.Read(text, column.Mark('.')) is { } value && value % 1m != 0m))];
        int rows = block.Rows.Count();
        (SourceColumn Out, SourceColumn In)? pair = numbers.SelectMany((one, at) => numbers.Skip(at + 1).Select(other => (one, other)))
            .Where(two => two.one.Values.Count + two.other.Values.Count == rows && block.Rows
                .All(row => (row.At(two.one.At).Length > 0) != (row.At(two.other.At).Length > 0)))
            .Cast<(SourceColumn, SourceColumn)?>().FirstOrDefault();
        if (pair is { } found)
        {
            (found.Out.Role, found.In.Role) = (ColumnRole.MoneyOut, ColumnRole.MoneyIn);
        }
        else if (numbers.FirstOrDefault(column => column.Values.Any(text => CellKinds.Read(text, column.Mark('.')) < 0m)) is { } signed)
        {
            signed.Role = ColumnRole.Amount;
        }
        else if (numbers.Length > 0)
        {
            numbers[0].Role = ColumnRole.Amount;
        }

        if (all.Where(column => column.IsText).MaxBy(column => column.Values.Distinct().Count() * 100
            + column.Values.Average(text => text.Length)) is { } text)
        {
            text.Role = ColumnRole.Payee;
            Noted(text);
        }
    }

    // Noted quantities, "12 bu", are no money.
    private void Noted(SourceColumn text)
    {
        if (!all.Exists(column => column.Role is ColumnRole.Amount or ColumnRole.MoneyOut)
            && all.Find(column => column.IsMeasure && column.Has(CellKind.Quantity)) is { } noted)
        {
            (text.Role, noted.Role) = (ColumnRole.Crop, ColumnRole.Quantity);
        }
    }
}

/// <summary>Tells what table a source is for.</summary>
internal static class TableGuess
{
    // What members pay is income. Common practice, no source.
    private static readonly string[] MemberWords = ["member", "members", "member name", "shareholder", "subscriber", "share", "share type"];
    private static readonly string[] WorkWords = ["hour", "time sheet", "timesheet", "time-sheet", "labor", "crew", "payroll"];

    /// <summary>The table.</summary>
    /// <exception cref="ArgumentException">It can't be told.</exception>
    public static string Of(SourceColumns columns, RecordsReading? records, string name)
    {
        bool money = columns.Has(ColumnRole.Amount) || columns.Has(ColumnRole.UnitPrice) || columns.Has(ColumnRole.MoneyOut);
        bool quantity = columns.Of(ColumnRole.Quantity) is { HasMeasure: true };
        if (columns.Spread.Count > 0)
        {
            return OfWide(columns, records, name);
        }

        return columns.Has(ColumnRole.Hours) || columns.Has(ColumnRole.ClockIn)
            || (columns.Has(ColumnRole.GrossHours) && columns.Has(ColumnRole.Worker)) ? "labor"
            : columns.Has(ColumnRole.Crop) && quantity ? (money ? "sales" : columns.Has(ColumnRole.Bed)
                && columns.Of(ColumnRole.Quantity)!.Heading.Contains("seed", StringComparison.OrdinalIgnoreCase) ? "plantings" : "harvests")
            : columns.Has(ColumnRole.Crop) && money && columns.Has(ColumnRole.Date) && !columns.Has(ColumnRole.Payee) ? "sales"
            : money && !columns.Has(ColumnRole.Payee) && columns.All.Any(column => MemberWords.Contains(HeadingWords.Plain(column.Heading)))
                ? "income"
            : money && columns.All.Any(column => column.IsText) ? "expenses"
            : columns.Has(ColumnRole.Crop) && (columns.Has(ColumnRole.Bed)
                || columns.All.Count(column => DraftMaker.IsOfPlantings(column.Heading)) > 1) ? "plantings"
            : throw Untold(columns);
    }

    private static ArgumentException Untold(SourceColumns columns)
    {
        string headings = columns.AreNumbered ? "The file has no headings that tell what it holds; "
            : $"What the file holds can't be told from its headings "
                + $"({string.Join(", ", columns.All.Take(8).Select(column => column.Heading))}); ";
        string[] days = [.. columns.All.Select(column => column.Heading).Where(DateForms.LacksAYear)];
        return days is [var first, _, ..]
            ? new ArgumentException($"{headings}\"{first}\" is no whole day: put the year into the file's name, or write such headings "
                + "with it, 6/2/2025 (all of them where they run over New Year); a week as the day it begins.")
            : new UntoldTableException($"{headings}say what its rows are.");
    }

    private static string OfWide(SourceColumns columns, RecordsReading? records, string name)
    {
        HashSet<string> workers = new(records?.Tables.Workers.Select(row => row.Worker.Trim()) ?? [], StringComparer.OrdinalIgnoreCase);
        bool times = columns.Spread.Any(column => column.Values.Any(text => text.Contains(':', StringComparison.Ordinal)));
        bool money = columns.Spread.Any(column => column.Has(CellKind.Money));

        // Who picked may be named with what was picked.
        HashSet<string> crops = new(records?.Tables.Crops.Select(row => row.Crop.Trim()) ?? [], StringComparer.OrdinalIgnoreCase);
        bool produce = columns.Spread.Any(column => column.Has(CellKind.Quantity)
            || crops.Contains(HeadingWords.BeforeParentheses(column.Heading)));
        return times || (columns.Has(ColumnRole.Worker) && !produce) || columns.Spread.Any(column => workers.Contains(column.Heading))
            || Array.Exists(WorkWords, word => name.Contains(word, StringComparison.OrdinalIgnoreCase)) ? "labor"
            : money ? "sales" : "harvests";
    }
}
