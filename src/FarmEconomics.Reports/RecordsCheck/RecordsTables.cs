using FarmEconomics.Budgets;
using FarmEconomics.Files;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Tracing;

namespace FarmEconomics.Reports.RecordsCheck;

/// <summary>What was read, what is wrong with it and what is missing.</summary>
public static class RecordsTables
{
    /// <summary>Every file with its rows, and the days it covers where it has dates.</summary>
    public static ReportTable FilesRead(FarmFolder farm)
    {
        ReportTable table = new ReportTable("What was read", farm.Notation)
            .Column("Table")
            .Column("File")
            .Column("Rows", Look.Count)
            .Column("of which in error", Look.Count)
            .Column("First day", Look.Date)
            .Column("Last day", Look.Date);
        foreach (FileCount file in farm.Reading.Files)
        {
            List<DateOnly> days = DaysOf(farm.Reading.Tables, file.Table).ToList();
            table.Row(
                file.Table,
                file.File,
                file.RowsInFile,
                file.RowsInError,
                days.Count > 0 ? days.Min() : "",
                days.Count > 0 ? days.Max() : ""
            );
        }

        return table.Note("Blank days: the table has no dates.");
    }

    /// <summary>Tables that aren't there, each with what can't be said without it.</summary>
    public static ReportTable Missing(FarmFolder farm)
    {
        ReportTable table = new ReportTable("What is missing and what it costs", farm.Notation)
            .Column("Table")
            .Column("What can't be said without it");
        foreach (MissingTable missing in farm.Reading.MissingTables)
        {
            table.Row($"{missing.Table}.csv", missing.Consequence);
        }

        return farm.Reading.MissingTables.Count == 0 ? table.Note("Nothing: every table is there.") : table;
    }

    /// <summary>Rows dated after the closing date: counted, not used.</summary>
    public static ReportTable AfterAsOf(FarmRecords records)
    {
        ReportTable table = new ReportTable($"Rows dated after the last day used, {Looks.Day(records.AsOf)}", records.Settings.Notation)
            .Column("Table")
            .Column("Rows left out", Look.Count);
        foreach ((string name, int rows) in records.RowsAfterAsOf.OrderBy(pair => pair.Key, StringComparer.Ordinal))
        {
            table.Row(name, rows);
        }

        return records.RowsAfterAsOf.Count == 0 ? table.Note("None.") : table;
    }

    /// <summary>The crop year month by month: a month with harvests and no hours, or sales and no harvests, shows at a glance.</summary>
    public static ReportTable ByMonth(SeasonReview season)
    {
        FarmRecords records = season.Records;
        DateOnly from = season.Settings.StartOf(season.CropYear);
        ReportTable table = new ReportTable($"What was written down in {season.CropYear}, month by month", season.Notation)
            .Column("Month")
            .Column("Harvest rows", Look.Count)
            .Column("Rows of sales and other use", Look.Count)
            .Column("Sales", Look.WholeMoney)
            .Column("Labor rows", Look.Count)
            .Column("Hours", Look.Hours)
            .Column("of which naming a crop or planting", Look.Percent)
            .Column("Rows of the books", Look.Count)
            .Column("Expenses", Look.WholeMoney);
        for (DateOnly month = from; month < season.Settings.EndOf(season.CropYear); month = month.AddMonths(1))
        {
            DateOnly next = month.AddMonths(1);
            bool In(DateOnly day) => day >= month && day < next;
            List<LaborRow> labor = records.Labor.Where(row => In(row.Date)).ToList();
            List<ExpenseRow> books = records.Expenses.Where(row => In(row.Date)).ToList();
            List<Disposition> left = season.Dispositions.Where(disposition => In(disposition.Row.Date)).ToList();
            decimal hours = labor.Sum(row => row.Hours);
            decimal named = labor
                .Where(row => !string.IsNullOrWhiteSpace(row.Crop) || !string.IsNullOrWhiteSpace(row.Planting))
                .Sum(row => row.Hours);
            table.Row(
                month.ToString("MMM yyyy"),
                records.Harvests.Count(row => In(row.Date)),
                left.Count,
                left.Where(disposition => disposition.Channel.IsPriced).Sum(disposition => disposition.Amount.Amount),
                records.Has("labor") ? labor.Count : ReportCell.Missing("no labor.csv"),
                records.Has("labor") ? hours : ReportCell.Missing("no labor.csv"),
                Units.Result.Of(named, hours, "no hours in the month"),
                records.Has("expenses") ? books.Count : ReportCell.Missing("no expenses.csv"),
                records.Has("expenses") ? books.Sum(row => row.Amount) : ReportCell.Missing("no expenses.csv")
            );
        }

        return table;
    }

    /// <summary>Rows left out because they are in error, with their money.</summary>
    public static ReportTable Skipped(FarmFolder farm)
    {
        Notation notation = farm.Notation;
        ReportTable table = new ReportTable("Rows in error that were left out", notation)
            .Column("Row")
            .Column("Money in it", Look.Money)
            .Column("Why");
        foreach (SkippedRow row in farm.Skipped)
        {
            table.Row(row.Source.ToString(), row.Money is { } money ? money : "", row.Why);
        }

        return farm.Skipped.Count == 0 ? table.Note("None.") : table;
    }

    private static IEnumerable<DateOnly> DaysOf(RecordTables tables, string table)
    {
        RecordTable rows = tables.Of(RecordSchema.Find(table)!);
        var day = (DayColumn?)Array.Find(rows.Schema.Stored, column => column.Schema.Name == rows.Schema.Day);
        return day is null ? [] : Enumerable.Range(0, rows.Count).Select(row => day.Of(rows, row));
    }
}
