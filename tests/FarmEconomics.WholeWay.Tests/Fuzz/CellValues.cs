using System.Globalization;
using FarmEconomics.Records;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.WholeWay.Tests.Fuzz;

/// <summary>What a damaged cell may hold: texts of the wrong kind, and the least and greatest of the right one.</summary>
internal static class CellValues
{
    private static readonly string[] Numbers =
    [
        "0", "0.0001", "0.01", "0.5", "1", "1.0000000001", "2", "7", "12", "100", "100.0001", "365", "1000", "99999", "1000000",
        "100000000", "1000000000000", "-0.01", "-1", "-100", "-1000000", "",
    ];

    private static readonly string[] Dates =
    [
        "", "0001-01-01", "1899-12-31", "1990-01-01", "1996-02-29", "2019-12-31", "2022-01-01", "2023-12-31", "2024-01-01", "2024-02-29",
        "2024-12-31", "2025-01-01", "2025-06-15", "2025-12-31", "2026-01-01", "2026-12-31", "2030-07-01",
        "2099-12-31", "2100-01-01", "9999-12-31",
    ];

    private static readonly string[] Years = ["", "0", "1", "1990", "2022", "2023", "2024", "2025", "2026", "2099", "9999", "99999"];

    private static readonly string[] Nasty =
    [
        "", " ", "0", "-1", "1e5", "1e400", "NaN", "∞", "½", "7:30", "12/31/2024", "2024-13-40", "2024-02-30", "TRUE", "#REF!", "=1+1",
        "a;b", "\"", "a\nb", "\u202Eabc", "e\u0301", "\u00E9", "total", "Total", "household", "general overhead",
        "pack work", "wages", "yes", "no", "1,234.50", "1.234,50", "(5.00)", "$5", "5%", "10 lb", "<script>alert(1)</script>", "'", "`",
        "|", "*a*", "_", "{0}", "{", "[x](y)", "null", "\t", "\uFEFFx", "\uD83D\uDCA9", "\u0000",
        "79228162514264337593543950335", "-79228162514264337593543950336", "0.0000000001", "0.00000000000000000000000000001",
        "99999999999999999999999999999999999", new string('x', 300), new string('9', 60), "../../x", "a=b", "labor-hours:harvest",
        "measured", "crate-days", "bed_foot", "level-payment", "market", "share", "owner",
    ];

    /// <summary>A text of some other kind.</summary>
    internal static string Wrong(Random random) => Nasty[random.Next(Nasty.Length)];

    /// <summary>A value at the ends of what the column allows, or just beyond; sometimes one that stands elsewhere in the folder.</summary>
    internal static string Extreme(ColumnSchema? column, IReadOnlyList<RecordSheet> sheets, RecordSheet sheet, int at, Random random) =>
        column?.Type switch
        {
            null => Wrong(random),
            ColumnType.Date => random.Next(4) == 0 ? NearDay(sheet, at, random) : Of(Dates, random),
            ColumnType.Year => Of(Years, random),
            ColumnType.YesNo => Of(["", "yes", "no"], random),
            ColumnType.Choice => Of([.. column.Allowed, ""], random),
            ColumnType.Basis => Of([.. Basis.Allowed], random),
            ColumnType.Name or ColumnType.Text => Name(column, sheets, sheet, at, random),
            _ => Of(Numbers, random),
        };

    private static string Of(string[] values, Random random) => values[random.Next(values.Length)];

    private static string NearDay(RecordSheet sheet, int at, Random random)
    {
        string cell = sheet.Rows[random.Next(sheet.Rows.Count)][at];
        return DateOnly.TryParseExact(cell, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day)
            ? DateOnly.FromDayNumber(Math.Clamp(day.DayNumber + random.Next(-400, 400), 0, DateOnly.MaxValue.DayNumber)).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)
            : cell;
    }

    private static string Name(ColumnSchema column, IReadOnlyList<RecordSheet> sheets, RecordSheet sheet, int at, Random random)
    {
        RecordSheet from = random.Next(5) == 0
            ? sheets[random.Next(sheets.Count)]
            : sheets.FirstOrDefault(other => other.Table == column.RefersTo) ?? sheet;
        int cell = column.RefersTo is null && from == sheet ? at : 0;
        return from.Rows.Count == 0 || random.Next(8) == 0 ? "" : from.Rows[random.Next(from.Rows.Count)][cell];
    }
}
