using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Reports.Explain;

/// <summary>Output opened to the sales rows that drew on the crop's lots.</summary>
internal static class OutputSection
{
    /// <param name="season">The season.</param>
    /// <param name="budget">The budget of a crop or a planting.</param>
    internal static ExplainSection Of(SeasonReview season, EnterpriseBudget budget)
    {
        HashSet<Enterprise> own = budget.Enterprises.ToHashSet();
        List<Row> rows = season
            .PartsOf(budget.Crop!)
            .Where(part => part.Enterprise is { } enterprise && own.Contains(enterprise))
            .GroupBy(part => part.Disposition)
            .Select(parts => new Row(parts.Key, parts.Sum(part => part.Quantity), Money.Sum(parts.Select(Value))))
            .ToList();
        string sentence = $"{budget.Name} brought in {season.Notation.InWords(budget.Output.Amount, Look.Money)} from "
            + $"{season.Notation.Count(rows.Count, "row")}. "
            + "A row that drew on lots of other plantings too stands here with its part. "
            + "Rows of a share channel carry their part of the share payments, by list value.";
        IReadOnlyList<ReportTable> tables = [Channels(season, budget, rows), All(season, budget, rows)];
        return new ExplainSection("Brought in", null, budget.Output, budget.Output, Money.Zero, [sentence], tables);
    }

    private sealed record Row(Disposition Disposition, decimal Quantity, Money Value);

    private static ReportTable Channels(SeasonReview season, EnterpriseBudget budget, List<Row> rows)
    {
        ReportTable channels = new ReportTable("By channel", season.Notation)
            .Of<IGrouping<Channel, Row>>()
            .Column("Channel", channel => channel.Key.Name)
            .Column("Rows", Look.Count, channel => channel.Count())
            .Column("Quantity", Look.Quantity, channel => channel.Sum(row => row.Quantity), budget.Crop!.Unit)
            .Column("Value", Look.Money, channel => Money.Sum(channel.Select(row => row.Value)))
            .Rows(rows.GroupBy(row => row.Disposition.Channel).OrderBy(group => group.Key.Index));
        decimal quantity = rows.Sum(row => row.Quantity);
        Money stock = budget.Sums.ClosingStock;
        if (stock != Money.Zero)
        {
            channels.Row($"on hand at {Looks.Day(season.Records.AsOf)}, no cash", 0, budget.Sums.OnHand, stock);
            quantity += budget.Sums.OnHand;
        }

        return channels.Total("All channels", rows.Count, quantity, Money.Sum(rows.Select(row => row.Value)) + stock);
    }

    private static ReportTable All(SeasonReview season, EnterpriseBudget budget, List<Row> rows) =>
        new ReportTable("Rows", season.Notation)
            .Of<Row>()
            .Column("Row", row => RowWords.Place(row.Disposition.Row.Source))
            .Column("Day", Look.Date, row => row.Disposition.Row.Date)
            .Column("Channel", row => row.Disposition.Channel.Name)
            .Column("Quantity", Look.Quantity, row => row.Quantity, budget.Crop!.Unit)
            .Column("Value", Look.Money, row => row.Disposition.ValueIncomplete
                ? ReportCell.Missing("no list price is known for it; it counts as 0")
                : row.Value)
            .Rows(rows)
            .Total("All rows", "", "", rows.Sum(row => row.Quantity), Money.Sum(rows.Select(row => row.Value)));

    private static Money Value(DispositionPart part) =>
        part.Disposition.Channel.Kind == ChannelKind.Household ? part.ListValue : part.Amount;
}
