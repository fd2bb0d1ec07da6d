using FarmEconomics.Budgets;
using Microsoft.Data.Analysis;

namespace FarmEconomics.Reports.Tables;

/// <summary>
/// The ledger of a season as a data frame: a row per posting, money and hours as numbers, names as text; to filter, group and join in a
/// notebook.
/// </summary>
public static class LedgerFrame
{
    internal const string Money = "Money";

    internal const string Fee = "Fee";

    /// <summary>The ledger.</summary>
    /// <param name="season">The season.</param>
    /// <returns>Columns Kind, Line, Crop, Planting, Channel, Shared cost, Stage, Money (cost, or value of a sale), Fee, Hours, Quantity,
    /// Estimated, Row.</returns>
    public static DataFrame Of(SeasonReview season)
    {
        ArgumentNullException.ThrowIfNull(season);
        List<Posting> all = [.. season.Postings];
        return new DataFrame(
            Text("Kind", posting => posting.Kind.ToString()),
            Text("Line", posting => posting.Line.Name()),
            Text("Crop", posting => posting.Planting?.Crop.Name),
            Text("Planting", posting => posting.Planting?.ToString()),
            Text("Channel", posting => posting.Channel?.Name),
            Text("Shared cost", posting => posting.Pool?.Name),
            Text("Stage", posting => posting.Stage?.ToString()),
            Number(Money, posting => posting.Amount.Amount),
            Number(Fee, posting => posting.Fee.Amount),
            Number("Hours", posting => posting.Hours),
            Number("Quantity", posting => posting.Quantity),
            new BooleanDataFrameColumn("Estimated", all.Select(posting => posting.Estimated)),
            Text("Row", posting => posting.Source?.Source.ToString()));

        StringDataFrameColumn Text(string name, Func<Posting, string?> of) => new(name, all.Select(of));

        DecimalDataFrameColumn Number(string name, Func<Posting, decimal> of) => new(name, all.Select(of));
    }
}
