using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Records.Completeness;

/// <summary>A control total beside what the records hold.</summary>
/// <param name="Row">The total as the grower entered it.</param>
/// <param name="Found">What the records add up to, or null when they can't be added up.</param>
/// <param name="NotAvailable">Why not, or null.</param>
/// <param name="FilledByStandards">True for hours of a stage that time standards fill up to the total: fewer logged hours are no
/// fault.</param>
public sealed record ControlTotal(TotalRow Row, decimal? Found, string? NotAvailable, bool FilledByStandards)
{
    /// <summary>Found less the total; null when nothing could be added up.</summary>
    public decimal? Difference => Found - Row.Amount;

    /// <summary>True when the difference is within the tolerance, or filled up by standards; null when not known.</summary>
    public bool? IsMet => Difference is { } difference
        ? Math.Abs(difference) <= (Row.Tolerance ?? 0m) || (FilledByStandards && difference < 0m)
        : null;
}

/// <summary>Compares the records with totals known from elsewhere: the payslips, the bank, the meter.</summary>
public static class ControlTotals
{
    /// <summary>
    /// Every total beside what the records hold over its days, both ends included. Money of <c>expenses</c> is the whole amount, whatever
    /// part of it is the farm's; sales without money count 0; quantities are in each crop's own unit; kWh of <c>loads</c> are those of the
    /// days that lie in the span; rows of <c>use</c> count when their crop year starts in the span, those without one always.
    /// </summary>
    /// <param name="tables">The tables as read.</param>
    /// <param name="settings">The farm's settings.</param>
    /// <returns>One entry per row of <c>totals</c> whose table and measure are known, in file order.</returns>
    public static IReadOnlyList<ControlTotal> Of(RecordTables tables, FarmSettings settings)
    {
        ArgumentNullException.ThrowIfNull(tables);
        ArgumentNullException.ThrowIfNull(settings);
        return [.. tables.Totals.Select(row => Compare(tables, settings, row)).OfType<ControlTotal>()];
    }

    private static ControlTotal? Compare(RecordTables tables, FarmSettings settings, TotalRow row)
    {
        string table = row.Table.Trim().ToLowerInvariant();
        string measure = row.Measure.Replace(" ", "", StringComparison.Ordinal).ToLowerInvariant();
        string? unread = !tables.Present.Contains(table) ? $"there is no table {table}"
            : tables.Unreadable.Contains(table) ? $"the table {table} can't be read"
            : null;
        if (unread is not null)
        {
            return new ControlTotal(row, null, unread, false);
        }

        bool filled = StageOf(measure) is { } stage && tables.LaborStandards.Exists(standard => standard.Stage == stage);
        return Sum(tables, settings, row, table, measure) is { } found ? new ControlTotal(row, found, null, filled) : null;
    }

    private static decimal? Sum(RecordTables tables, FarmSettings settings, TotalRow row, string table, string measure)
    {
        DateOnly from = row.From ?? DateOnly.MinValue;
        DateOnly to = row.To ?? DateOnly.MaxValue;
        bool In(DateOnly date) => date >= from && date <= to;
        return (table, measure) switch
        {
            ("sales", "amount") => tables.Sales.Where(sale => In(sale.Date)).Sum(sale => RowMoney.Of(sale) ?? 0m),
            ("sales", "quantity") => tables
                .Sales.Where(sale => In(sale.Date))
                .Sum(sale => InCropUnit(tables, sale.Crop, sale.Unit, sale.Quantity)),
            ("harvests", "quantity") => Picked(tables, In),
            ("income", "amount") => tables.Income.Where(line => In(line.Date)).Sum(line => line.Amount),
            ("expenses", "amount") => tables.Expenses.Where(line => In(line.Date)).Sum(line => line.Amount),
            ("use", "quantity" or "kwh") => tables
                .Use.Where(use => use.CropYear is not { } year || In(settings.StartOf(year)))
                .Sum(use => use.Quantity),
            ("loads", "kwh") => tables.Loads.Sum(load => load.KilowattHours(from, to)),
            ("labor", "hours") => tables.Labor.Where(work => In(work.Date)).Sum(work => work.Hours),
            _ when table == "labor" && StageOf(measure) is { } stage => HoursOf(tables, stage, In),
            _ => null,
        };
    }

    private static Stage? StageOf(string measure) =>
        measure.StartsWith("hours:", StringComparison.Ordinal) && Words.TryParse(measure["hours:".Length..], out Stage stage)
            ? stage
            : null;

    private static decimal HoursOf(RecordTables tables, Stage stage, Func<DateOnly, bool> within)
    {
        Dictionary<string, Stage> stages = new(StringComparer.OrdinalIgnoreCase);
        foreach (TaskRow task in Defaults.Tasks.Concat(tables.Tasks))
        {
            stages[task.Task.Trim()] = task.Stage;
        }

        return tables
            .Labor.Where(work => within(work.Date) && stages.TryGetValue(work.Task.Trim(), out Stage of) && of == stage)
            .Sum(work => work.Hours);
    }

    private static decimal Picked(RecordTables tables, Func<DateOnly, bool> within)
    {
        Dictionary<string, string> crops = new(StringComparer.OrdinalIgnoreCase);
        foreach (PlantingRow planting in tables.Plantings)
        {
            crops.TryAdd(planting.Planting.Trim(), planting.Crop);
        }

        return tables
            .Harvests.Where(pick => within(pick.Date))
            .Sum(pick =>
                InCropUnit(tables, pick.Crop ?? crops.GetValueOrDefault(pick.Planting?.Trim() ?? "", ""), pick.Unit, pick.Quantity)
            );
    }

    private static decimal InCropUnit(RecordTables tables, string crop, string? unit, decimal quantity)
    {
        if (unit is null)
        {
            return quantity;
        }

        UnitRow? row = tables.Units.Find(known => Same(known.Crop, crop) && Same(known.Unit, unit));
        return quantity * (row?.BaseUnits ?? 1m);
    }

    private static bool Same(string left, string right) => left.Trim().Equals(right.Trim(), StringComparison.OrdinalIgnoreCase);
}
