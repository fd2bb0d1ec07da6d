using FarmEconomics.Budgets;
using FarmEconomics.Budgets.Completeness;
using FarmEconomics.Files;
using FarmEconomics.Records.Completeness;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Completeness;

/// <summary>Tables of the completeness review: the gaps with what each changes, values far from their kind, control totals.</summary>
public static class CompletenessTables
{
    /// <summary>Values far from the median of their kind.</summary>
    public static ReportTable FarFromTheirKind(SeasonReview season)
    {
        ReportTable table = new ReportTable($"Each entry of {season.CropYear} that is far from the usual", season.Notation).Of<Outlier>()
            .Column("What", outlier => outlier.What)
            .Column("Value", Look.Quantity, outlier => outlier.Value)
            .Column("Usually", Look.Quantity, outlier => outlier.Median)
            .Column("of how many", Look.Count, outlier => outlier.Count)
            .Column("Money it would change", Look.Money,
                outlier => ReportCell.Known(outlier.Money ?? 0m, outlier.Money is null ? "the row carries no money" : null))
            .Column("Row", outlier => outlier.Source.ToString())
            .Rows(Outliers.Of(season.Records.Tables, season.Settings.StartOf(season.CropYear), season.Settings.EndOf(season.CropYear)));
        return table.Rows.Count == 0 ? table.Note("None.") : table;
    }

    /// <summary>Control totals beside what the records hold.</summary>
    public static ReportTable Totals(FarmFolder farm)
    {
        ArgumentNullException.ThrowIfNull(farm);
        ReportTable table = new ReportTable("Control totals", farm.Notation)
            .Column("Total")
            .Column("From", Look.Date)
            .Column("To", Look.Date)
            .Column("Records hold", Look.Quantity)
            .Column("Should be", Look.Quantity)
            .Column("Difference", Look.Quantity)
            .Column("Met");
        foreach (ControlTotal total in ControlTotals.Of(farm.Reading.Tables, farm.Reading.FarmSettings))
        {
            ReportCell missing = ReportCell.Missing(total.NotAvailable ?? "");
            table.Row(
                $"{total.Row.Table.Trim()} {total.Row.Measure.Trim()}",
                total.Row.From is { } from ? (ReportCell)from : "first record",
                total.Row.To is { } to ? (ReportCell)to : "last record",
                total.Found is { } found ? found : missing,
                total.Row.Amount,
                total.Difference is { } difference ? difference : missing,
                total.IsMet switch
                {
                    null => "",
                    true when total.FilledByStandards && total.Difference < 0m => "filled up by standards",
                    true => "yes",
                    _ => "no",
                }
            );
        }

        return table.Rows.Count == 0 ? table.Note("No totals are kept: nothing outside the records vouches for them.") : table;
    }
}
