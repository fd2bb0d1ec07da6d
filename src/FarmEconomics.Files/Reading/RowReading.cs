using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Reading;

/// <summary>The record being read, for its problems: its place, its columns and where to report.</summary>
internal sealed class RowReading(FarmSettings settings, string file, ColumnSchema?[] columns, List<Problem> problems)
{
    private const int LongestShown = 200;
    private const int LongestNumber = 120;

    private int firstProblem;

    public FarmSettings Settings { get; } = settings;

    public SourceLine Source { get; private set; }

    public bool InError { get; private set; }

    /// <summary>Where the problems of the row start in the list.</summary>
    public int FirstProblem => firstProblem;

    public ColumnSchema ColumnAt(int index) => columns[index]!;

    /// <summary>The column's name as the farm's unit has it.</summary>
    public string NameAt(int index) => ColumnAt(index).NameFor(Settings.LengthUnit);

    /// <summary>A text as a message quotes it: a long one shortened, so that a fault never fills the screen.</summary>
    public static string Shown(string text) => text.Length <= LongestShown ? text : text[..LongestShown] + "...";

    public void StartRow(int line)
    {
        Source = new SourceLine(file, line);
        firstProblem = problems.Count;
        InError = false;
    }

    public void Report(string code, int index, string message, string? offending, string? nearest = null) =>
        Report(code, ColumnAt(index).Name, message, offending, nearest);

    public void Report(string code, string? column, string message, string? offending, string? nearest = null)
    {
        problems.Add(
            ProblemCatalog.Make(
                code,
                Source,
                column,
                message,
                code == ProblemCodes.TooManyFields || offending is null ? offending : Shown(offending),
                nearest
            )
        );
        InError = true;
    }

    public void ReportIfRequired(int index)
    {
        if (ColumnAt(index).Required)
        {
            Report(ProblemCodes.BlankValue, index, $"{NameAt(index)} is blank.", null);
        }
    }

    public void ReportNoneOf(IReadOnlyList<string> oneOf) =>
        Report(ProblemCodes.NoneOf, oneOf[0], $"The row names no {string.Join(" and no ", oneOf)}.", null);

    /// <summary>Tells what is wrong with a field that could not be read, or is out of its range.</summary>
    /// <param name="index">The field.</param>
    /// <param name="bytes">As it stands in the file.</param>
    /// <param name="text">As text.</param>
    /// <param name="value">What could be read of it, or null.</param>
    public void Report(int index, ReadOnlySpan<byte> bytes, string text, object? value)
    {
        ColumnSchema column = ColumnAt(index);
        switch (column.Type)
        {
            case ColumnType.Text or ColumnType.Name or ColumnType.Basis:
                ReportText(index, bytes, text);
                break;
            case ColumnType.Date when value is DateOnly day:
                Report(
                    ProblemCodes.DateOutside,
                    index,
                    $"{NameAt(index)} {day:yyyy-MM-dd} is before {ColumnSchema.FirstYear} or after {ColumnSchema.LastYear}.",
                    $"{day:yyyy-MM-dd}"
                );
                break;
            case ColumnType.Date:
                Report(ProblemCodes.NotADate, index,
                    $"{NameAt(index)} is not a date: \"{Shown(text)}\" (expected a day written as "
                        + $"2025-06-30{(Settings.DateFormat is { } format ? $", or as {format}" : "")}).", text);
                break;
            case ColumnType.Year:
                Report(
                    ProblemCodes.NotAYear,
                    index,
                    $"{NameAt(index)} must be a year from {ColumnSchema.FirstYear} to {ColumnSchema.LastYear}, not \"{Shown(text)}\".",
                    text
                );
                break;
            case ColumnType.YesNo:
                Report(ProblemCodes.NotYesNo, index, $"{NameAt(index)} must be yes or no, not \"{Shown(text)}\".", text);
                break;
            case ColumnType.Choice:
                ReportWord(index, text, column.Allowed);
                break;
            default:
                ReportNumber(index, text, (decimal?)value);
                break;
        }
    }

    private void ReportText(int index, ReadOnlySpan<byte> bytes, string text)
    {
        ColumnSchema column = ColumnAt(index);
        if (UnusualText.Is(bytes))
        {
            if (UnusualText.FaultOf(column, bytes, text) is { } fault)
            {
                Report(fault.Code, index, $"{NameAt(index)} {fault.Message}", text);
            }

            text = UnusualText.Composed(column, text);
        }

        if (text.Length > column.MaxLength)
        {
            Report(
                ProblemCodes.TextTooLong,
                index,
                Settings.Notation.Text(
                    $"{NameAt(index)} has {text.Length:N0} letters, at most {column.MaxLength:N0} are read: \"{Shown(text)}\"."
                ),
                text
            );
        }

        if (column.Type == ColumnType.Basis && !Basis.TryParse(Settings.LengthUnit.Documented(text), out _))
        {
            ReportWord(index, text, Basis.Allowed);
        }
    }

    private void ReportWord(int index, string text, IReadOnlyList<string> allowed)
    {
        string[] words = [.. allowed.Select(word => Settings.LengthUnit.Label(word))];
        Report(
            ProblemCodes.UnknownWord,
            index,
            $"{NameAt(index)} can't be \"{Shown(text)}\"; allowed: {string.Join(", ", words)}.",
            text,
            NearestName.Find(text, words)
        );
    }

    private void ReportNumber(int index, string text, decimal? value)
    {
        ColumnSchema column = ColumnAt(index);
        if (value is { } number)
        {
            ReportRange(index, column.Range!, number);
            return;
        }

        NumberFault fault =
            text.Length > LongestNumber ? NumberFault.NotANumber : NumberText.Read(text, column, Settings.DecimalMark, out _);
        (string code, string message) = fault switch
        {
            NumberFault.TooManyDecimals => (
                ProblemCodes.TooManyDecimals,
                $"{NameAt(index)} has more than {column.MaxDecimals} decimals: \"{Shown(text)}\"."
            ),
            NumberFault.TooLarge => (ProblemCodes.NumberTooLarge, $"{NameAt(index)} is too large: \"{Shown(text)}\"."),
            _ when column.Type == ColumnType.Hours => (ProblemCodes.NotANumber,
                $"{NameAt(index)} is not a number of hours: \"{Shown(text)}\" (write 7{Settings.DecimalMark}5 or 7:30)."),
            _ => (ProblemCodes.NotANumber, $"{NameAt(index)} is not a number: \"{Shown(text)}\" (the decimal mark is "
                + $"{(Settings.DecimalMark == '.' ? "a point" : "a comma")})."),
        };
        Report(code, index, message, text);
    }

    private void ReportRange(int index, NumberRange range, decimal value)
    {
        Notation notation = Settings.Notation;
        string code = ColumnAt(index).Type == ColumnType.Percent ? ProblemCodes.PercentRange
            : value <= 0m && range.Low >= 0m ? ProblemCodes.NotPositive
            : ProblemCodes.NumberOutOfRange;
        string wrong = code != ProblemCodes.NotPositive ? notation.Text($"must be {range}, not {value}")
            : range.Holds(0m) ? notation.Text($"can't be negative: {value}") : notation.Text($"must be above 0, not {value}");
        Report(code, index, $"{NameAt(index)} {wrong}.", notation.Text($"{value}"));
    }

    /// <summary>Tells all problems of the row what money stands in it; unknown when what makes the money can't be read.</summary>
    public void AddMoney(IRecordRow? row)
    {
        // What makes the money of a row can't be read: then it isn't known.
        bool known =
            row is not null
            && !IsBad(row.Home.Schema.Money)
            && (row is not SaleRow { Amount: null } || (!IsBad("quantity") && !IsBad("unit_price")));
        decimal? money = known ? RowMoney.Of(row!) : null;
        for (int i = firstProblem; money is not null && i < problems.Count; i++)
        {
            problems[i] = problems[i] with { Money = money };
        }
    }

    private bool IsBad(string? column) => problems.FindIndex(firstProblem, problem => problem.Column == column && column is not null) >= 0;
}
