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
        string unit = budget.Crop!.Unit;
        List<(Disposition Disposition, decimal Quantity, Money Value)> rows = season
            .PartsOf(budget.Crop!)
            .Where(part => part.Enterprise is { } enterprise && own.Contains(enterprise))
            .GroupBy(part => part.Disposition)
            .Select(disposition => (disposition.Key, disposition.Sum(part => part.Quantity), Money.Sum(disposition.Select(Value))))
            .ToList();
        ReportTable channels = new ReportTable("By channel", season.Notation)
            .Column("Channel")
            .Column("Rows", Look.Count)
            .Column("Quantity", Look.Quantity, unit)
            .Column("Value", Look.Money);
        foreach (
            IGrouping<Channel, (Disposition Disposition, decimal Quantity, Money Value)> channel in rows.GroupBy(row =>
                    row.Disposition.Channel
                )
                .OrderBy(group => group.Key.Index)
        )
        {
            channels.Row(channel.Key.Name, channel.Count(), channel.Sum(row => row.Quantity), Money.Sum(channel.Select(row => row.Value)));
        }

        if (budget.Sums.ClosingStock != Money.Zero)
        {
            channels.Row($"on hand at {Looks.Day(season.Records.AsOf)}, no cash", 0, budget.Sums.OnHand, budget.Sums.ClosingStock);
        }

        channels.Total(
            "All channels",
            rows.Count,
            rows.Sum(row => row.Quantity) + (budget.Sums.ClosingStock != Money.Zero ? budget.Sums.OnHand : 0m),
            Money.Sum(rows.Select(row => row.Value)) + budget.Sums.ClosingStock
        );
        ReportTable all = new ReportTable("Rows", season.Notation)
            .Column("Row")
            .Column("Day", Look.Date)
            .Column("Channel")
            .Column("Quantity", Look.Quantity, unit)
            .Column("Value", Look.Money);
        foreach ((Disposition disposition, decimal quantity, Money value) in rows)
        {
            all.Row(
                RowWords.Place(disposition.Row.Source),
                disposition.Row.Date,
                disposition.Channel.Name,
                quantity,
                disposition.ValueIncomplete ? ReportCell.Missing("no list price is known for it; it counts as 0") : value
            );
        }

        all.Total("All rows", "", "", rows.Sum(row => row.Quantity), Money.Sum(rows.Select(row => row.Value)));
        string sentence = $"{budget.Name} brought in {season.Notation.InWords(budget.Output.Amount, Look.Money)} from {season.Notation.Count(rows.Count, "row")}. "
            + "A row that drew on lots of other plantings too stands here with its part. Rows of a share channel carry their part of the share payments, by list value.";
        return new ExplainSection("Brought in", null, budget.Output, budget.Output, Money.Zero, [sentence], [channels, all]);
    }

    private static Money Value(DispositionPart part) =>
        part.Disposition.Channel.Kind == ChannelKind.Household ? part.ListValue : part.Amount;
}
