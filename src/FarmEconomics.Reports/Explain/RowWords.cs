using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Explain;

/// <summary>A row of the records in a few words: its day and what it was.</summary>
internal static class RowWords
{
    /// <summary>A row's place, leading to where it can be changed.</summary>
    internal static ReportCell Place(SourceLine source) => ((ReportCell)source.ToString()).To(PageTarget.Record(source));

    internal static DateOnly? Day(IRecordRow row) => row switch
    {
        ExpenseRow expense => expense.Date,
        LaborRow labor => labor.Date,
        SaleRow sale => sale.Date,
        AssetRow asset => asset.InService,
        _ => null,
    };

    internal static string What(Charge charge, Notation notation) => charge.Origin switch
    {
        ExpenseRow expense => Join(expense.Category, expense.Payee, expense.Note),
        LaborRow labor => Join(labor.Task, labor.Worker, charge.Estimated ? "divided by time standards" : null),
        SaleRow sale => $"{(charge.IsFee ? "fee of " : "")}{sale.Channel}",
        AssetRow asset => Join(asset.Asset, "yearly cost of what was bought then"),
        BedRow bed => Join(bed.Bed, "its part of the charge for the farm's own land"),
        LaborStandardRow standard => notation.Text($"time standard: {standard.Minutes:0.##} minutes of "
            + $"{standard.Stage.ToString().ToLowerInvariant()} per {standard.Per.ToString().ToLowerInvariant()}, estimated"),
        TotalRow total => $"control total {total.Measure}: hours paid beyond those logged, estimated",
        _ => "",
    };

    internal static string Stream(CostStream stream) => stream switch
    {
        CostStream.Cash => "cash",
        CostStream.Ownership => "ownership",
        CostStream.HiredLabor => "hired labor",
        _ => "owner labor",
    };

    private static string Join(params string?[] words) =>
        string.Join(", ", words.Where(word => !string.IsNullOrWhiteSpace(word)).Select(word => word!.Trim()));
}
