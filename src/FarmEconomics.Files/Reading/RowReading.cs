using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Reading;

/// <summary>
/// What the converters need to know of the row being read: its place, its columns and where to report. Converters are created by
/// generated code without arguments, so the one of the thread is current while a file is read.
/// </summary>
internal sealed class RowReading(FarmSettings settings, string file, ColumnSchema?[] columns, List<Problem> problems)
{
    private const int LongestShown = 200;

    [ThreadStatic]
    private static RowReading? _current;

    private int _firstProblem;

    public static RowReading Current => _current ?? throw new InvalidOperationException("No row is being read.");

    public FarmSettings Settings { get; } = settings;

    public SourceLine Source { get; private set; }

    public bool InError { get; private set; }

    /// <summary>Where the problems of the row start in the list.</summary>
    public int FirstProblem => _firstProblem;

    public ColumnSchema ColumnAt(int index) => columns[index]!;

    /// <summary>The column's name as the farm's unit has it.</summary>
    public string NameAt(int index) => ColumnAt(index).NameFor(Settings.LengthUnit);

    /// <summary>A text as a message quotes it: a long one shortened, so that a fault never fills the screen.</summary>
    public static string Shown(string text) => text.Length <= LongestShown ? text : text[..LongestShown] + "...";

    public void Enter() => _current = this;

    public static void Leave() => _current = null;

    public void StartRow(int line)
    {
        Source = new SourceLine(file, line);
        _firstProblem = problems.Count;
        InError = false;
    }

    public void Report(string code, int index, string message, string? offending, string? nearest = null) =>
        Report(code, ColumnAt(index).Name, message, offending, nearest);

    public void Report(string code, string? column, string message, string? offending, string? nearest = null)
    {
        problems.Add(ProblemCatalog.Make(code, Source, column, message, code == ProblemCodes.TooManyFields || offending is null ? offending : Shown(offending), nearest));
        InError = true;
    }

    public void ReportIfRequired(int index)
    {
        if (ColumnAt(index).Required)
        {
            Report(ProblemCodes.BlankValue, index, $"{NameAt(index)} is blank.", null);
        }
    }

    public void ReportWord(int index, string text, IReadOnlyList<string> allowed) =>
        ReportWordOf(index, text, [.. allowed.Select(word => Settings.LengthUnit.Label(word))]);

    private void ReportWordOf(int index, string text, string[] allowed) =>
        Report(ProblemCodes.UnknownWord, index, $"{NameAt(index)} can't be \"{Shown(text)}\"; allowed: {string.Join(", ", allowed)}.", text, NearestName.Find(text, allowed));

    public void ReportNumber(int index, NumberFault fault, string text)
    {
        ColumnSchema column = ColumnAt(index);
        (string code, string message) = fault switch
        {
            NumberFault.TooManyDecimals => (ProblemCodes.TooManyDecimals, $"{NameAt(index)} has more than {column.MaxDecimals} decimals: \"{Shown(text)}\"."),
            NumberFault.TooLarge => (ProblemCodes.NumberTooLarge, $"{NameAt(index)} is too large: \"{Shown(text)}\"."),
            _ when column.Type == ColumnType.Hours => (ProblemCodes.NotANumber,
                $"{NameAt(index)} is not a number of hours: \"{Shown(text)}\" (write 7{Settings.DecimalMark}5 or 7:30)."),
            _ => (ProblemCodes.NotANumber, $"{NameAt(index)} is not a number: \"{Shown(text)}\" (the decimal mark is {(Settings.DecimalMark == '.' ? "a point" : "a comma")})."),
        };
        Report(code, index, message, text);
    }

    public void ReportRange(int index, NumberRange range, decimal value)
    {
        Notation notation = Settings.Notation;
        string code = ColumnAt(index).Type == ColumnType.Percent ? ProblemCodes.PercentRange
            : value <= 0m && range.Low >= 0m ? ProblemCodes.NotPositive
            : ProblemCodes.NumberOutOfRange;
        string wrong = code != ProblemCodes.NotPositive ? notation.Text($"must be {range}, not {value}")
            : range.Holds(0m) ? notation.Text($"can't be negative: {value}") : notation.Text($"must be above 0, not {value}");
        Report(code, index, $"{NameAt(index)} {wrong}.", notation.Text($"{value}"));
    }

    public void ReportCalendar(int index, DateOnly date) =>
        Report(ProblemCodes.DateOutside, index, $"{NameAt(index)} {date:yyyy-MM-dd} is before {ColumnSchema.FirstYear} or after {ColumnSchema.LastYear}.", $"{date:yyyy-MM-dd}");

    public void ReportDate(int index, string text) =>
        Report(ProblemCodes.NotADate, index,
            $"{NameAt(index)} is not a date: \"{Shown(text)}\" (expected a day written as 2025-06-30{(Settings.DateFormat is { } format ? $", or as {format}" : "")}).", text);

    /// <summary>Tells all problems of the row what money stands in it; unknown when what makes the money can't be read.</summary>
    public void AddMoney(IRecordRow? row)
    {
        decimal? money = row is null || IsBad("amount") || IsBad("cost") || IsBad("principal") || (row is SaleRow { Amount: null } && (IsBad("quantity") || IsBad("unit_price")))
            ? null
            : RowMoney.Of(row);
        for (int i = _firstProblem; money is not null && i < problems.Count; i++)
        {
            problems[i] = problems[i] with { Money = money };
        }
    }

    private bool IsBad(string column) => problems.FindIndex(_firstProblem, problem => problem.Column == column) >= 0;
}
