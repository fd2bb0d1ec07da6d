using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Units;

namespace FarmEconomics.Reports.Season;

/// <summary>The tables of a season: what every crop, planting, group, bed, structure and channel earned.</summary>
public static class SeasonTables
{
    /// <summary>Crops ranked by gross margin per bed-foot-week, or by another rate.</summary>
    public static ReportTable CropRanking(SeasonReview season, Func<EnterpriseBudget, Result>? by = null)
    {
        Func<EnterpriseBudget, Result> key = by ?? (budget => budget.GrossMarginPerBedFootWeek);
        string order = by is null ? season.Settings.LengthUnit.Label(", best gross margin per bed-foot-week first") : "";
        return Budgets(
                season,
                $"What each crop earned in {season.CropYear}{order}",
                "Crop",
                season
                    .Crops.OrderByDescending(budget => BudgetColumns.RankKey(key(budget)))
                    .ThenBy(budget => budget.Name, StringComparer.Ordinal)
            )
            .Note(
                "Gross margin = brought in less seed, supplies and selling, before labor. "
                    + "Return to labor = what an hour earned after all other costs, paid and unpaid hours alike. "
                    + "Left over = after every cost. "
                    + season.Settings.LengthUnit.Label("Bed-feet count every planting: a bed planted three times counts three times.")
            )
            .Opens();
    }

    /// <summary>Crop groups, by output.</summary>
    public static ReportTable Groups(SeasonReview season) =>
        Budgets(
            season,
            $"What each group of crops earned in {season.CropYear}",
            "Group",
            season.Groups.OrderBy(budget => budget.Known.Value is not null).ThenByDescending(budget => budget.Output.Amount)
        );

    /// <summary>Structures and the open field, by output.</summary>
    public static ReportTable Structures(SeasonReview season) =>
        Budgets(
            season,
            $"What each structure earned in {season.CropYear}",
            "Structure",
            season.Structures.OrderBy(budget => budget.Known.Value is not null).ThenByDescending(budget => budget.Output.Amount)
        );

    /// <summary>Channels with what left through them and the costs and hours that name them.</summary>
    public static ReportTable Channels(SeasonReview season) =>
        new ReportTable($"What each channel brought in {season.CropYear}", season.Notation).Of<ChannelResult>()
            .Column("Channel", channel => channel.Channel.Name)
            .Column("Kind", channel => KindOf(season, channel.Channel))
            .Column("Value of the produce", Look.WholeMoney, channel => ReportCell.Known(channel.QuantityValue, channel.Known.Value))
            .Column("Fees", Look.WholeMoney,
                channel => ReportCell.Known(channel.Fees, channel.Known.Value ?? (channel.Fees == Money.Zero ? channel.Known.Costs : null)))
            .Column("Direct costs", Look.WholeMoney, channel => ReportCell.Known(channel.DirectCosts, channel.Known.Costs))
            .Column("Hours naming it", Look.Hours, channel => ReportCell.Known(channel.Hours.Value, channel.Known.Hours))
            .Column("Gross margin", Look.WholeMoney, channel => ReportCell.Known(channel.Margin, channel.Known.NoGrossMargin))
            .Column("Gross margin", Look.Rate, channel => channel.MarginPerHour, per: "hour")
            .Rows(season.Channels.Where(channel => channel.Channel.Kind != ChannelKind.Other))
            .Note(
                "Costs and hours are those that name the channel; picking and packing stand with the crops. "
                    + (season.Records.Has("channels")
                        ? "Household use stands at list value, donations and waste at 0."
                        : "Household use, donations and waste count as sold, since no channels.csv tells them apart.")
            );

    /// <summary>A channel's kind; blank where no table of channels tells it.</summary>
    internal static ReportCell KindOf(SeasonReview season, Channel channel) =>
        season.Records.Has("channels") ? channel.Kind.ToString().ToLowerInvariant() : ReportCell.Missing("no channels.csv tells the kind");

    private static ReportTable Budgets(SeasonReview season, string title, string what, IEnumerable<EnterpriseBudget> budgets)
    {
        ReportTable table = new ReportTable(title, season.Notation)
            .Column(what)
            .Column(season.Settings.LengthUnit.Label("Bed-feet"), Look.Quantity)
            .AddColumns(season);
        foreach (EnterpriseBudget budget in budgets)
        {
            table.Row([budget.Name, budget.Sums.BedFeet.Value, .. BudgetColumns.Cells(budget)]);
        }

        return table.Total(["All crops", season.Farm.Sums.BedFeet.Value, .. BudgetColumns.Cells(season.Farm)]);
    }
}
