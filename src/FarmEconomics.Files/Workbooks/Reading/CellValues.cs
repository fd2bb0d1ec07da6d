using System.Globalization;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Workbooks.Reading;

/// <summary>A cell as it stands in the sheet.</summary>
internal readonly record struct RawCell(int Column, string? Type, int Style, string? Value, bool HasFormula)
{
    public bool IsBlank => string.IsNullOrWhiteSpace(Value) && !HasFormula;
}

/// <summary>What is known of a column of a sheet that is no table of the farm.</summary>
/// <param name="Name">Its heading, or its letters.</param>
/// <param name="Mark">The decimal mark its numbers are written with.</param>
/// <param name="CountsDays">True where its numbers are days, without a look that says so.</param>
internal readonly record struct SheetColumn(string Name, char Mark = '.', bool CountsDays = false);

/// <summary>Turns cells into the text a grower would write in a CSV file.</summary>
internal sealed class CellValues(List<string> strings, CellLooks looks, bool date1904, Func<ColumnSchema?, char> markOf)
{
    private const double LastDay = 2958465;
    private const double SecondsOfDay = 86400;

    /// <summary>The text of a cell in a column.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="column">The column, or null when it isn't known (above and in the heading row).</param>
    /// <param name="fault">What is wrong with the cell, or null.</param>
    public string Text(RawCell cell, ColumnSchema? column, out string? fault)
    {
        fault = null;
        if (cell.Value is null)
        {
            fault = cell.HasFormula ? "holds a formula whose value the workbook does not carry" : null;
            return "";
        }

        switch (cell.Type)
        {
            case "s":
                if (int.TryParse(cell.Value, out int at) && at >= 0 && at < strings.Count)
                {
                    return strings[at];
                }

                fault = "refers to a text the workbook does not hold";
                return "";
            case "inlineStr" or "str":
                return cell.Value;
            case "b":
                return cell.Value is "1" or "true" ? "yes" : "no";
            case "e":
                fault = $"holds a formula that came to {cell.Value}";
                return cell.Value;
            case "d":
                return cell.Value.EndsWith("T00:00:00", StringComparison.Ordinal) ? cell.Value[..10] : cell.Value;
            default:
                return Number(cell, column);
        }
    }

    private string Number(RawCell cell, ColumnSchema? column)
    {
        if (!double.TryParse(cell.Value, NumberStyles.Float, CultureInfo.InvariantCulture, out double number))
        {
            return cell.Value!;
        }

        NumberLook look = looks.Of(cell.Style);
        string? shown =
            look == NumberLook.Day || column?.Type == ColumnType.Date ? Day(number)
            : look is NumberLook.Plain or NumberLook.Percent ? null
            : Time(number, look);
        if (shown is not null)
        {
            return shown;
        }

        // 6.5% is kept as 0.065, and a column of percentages holds 6.5 for it; so does a setting, whose column holds any text.
        bool percent = look == NumberLook.Percent && column?.Type is ColumnType.Percent or ColumnType.Text;
        number *= percent ? 100 : 1;

        // A spreadsheet keeps 15 digits; what a double has beyond them (1.1000000000000001) nobody entered.
        string text = Math.Abs(number) < 1e15 && Math.Abs(number) >= 1e-12
            ? ((decimal)number).ToString("0.###############", CultureInfo.InvariantCulture)
            : number == 0 ? "0" : number.ToString("R", CultureInfo.InvariantCulture);
        return text.Replace('.', markOf(column)) + (percent ? "%" : "");
    }

    // As it is shown: 7:30 is seven and a half hours in a column of hours, and no number elsewhere. A time that goes beyond a day and isn't
    // shown so holds more than one sees: it is written as the day and time it is, which no column of hours takes.
    private string? Time(double days, NumberLook look)
    {
        double seconds = Math.Round(days * SecondsOfDay);
        if (seconds < 0 || days > LastDay)
        {
            return null;
        }

        if (look != NumberLook.Duration && seconds >= SecondsOfDay)
        {
            return Day(days);
        }

        long whole = (long)seconds;
        (long hours, long minutes, long left) = (whole / 3600, whole / 60 % 60, whole % 60);
        string half = look != NumberLook.Clock ? "" : hours < 12 ? " AM" : " PM";
        hours = half.Length > 0 ? ((hours + 11) % 12) + 1 : hours;
        return $"{hours}:{TwoDigits(minutes)}{(left == 0 ? "" : $":{TwoDigits(left)}")}{half}";

        static string TwoDigits(long number) => number.ToString("00", CultureInfo.InvariantCulture);
    }

    private string? Day(double serial)
    {
        // The 1900 calendar of spreadsheets has a 29th of February 1900, which is number 60.
        if (!date1904 && (serial is < 1 or (>= 60 and < 61)))
        {
            return null;
        }

        if (serial is < 0 or > LastDay)
        {
            return null;
        }

        DateTime start = date1904 ? new DateTime(1904, 1, 1) : serial < 60 ? new DateTime(1899, 12, 31) : new DateTime(1899, 12, 30);
        DateTime moment = start.AddDays(Math.Floor(serial));
        double part = serial - Math.Floor(serial);
        return part < 1e-9
            ? moment.ToString("yyyy-MM-dd")
            : moment.AddSeconds(Math.Round(part * SecondsOfDay)).ToString("yyyy-MM-dd HH:mm:ss");
    }
}
