using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Tracing;
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
                "Gross margin = brought in less seed, supplies and selling, before labor. Return to labor = what an hour earned after all other costs, paid and unpaid hours alike. Left over = after every cost. "
                    + season.Settings.LengthUnit.Label("Bed-feet count every planting: a bed planted three times counts three times.")
            )
            .Opens();
    }

    /// <summary>Plantings in the order of their first row, with beds and dates; of one crop, or of all.</summary>
    public static ReportTable Plantings(SeasonReview season, string? crop = null)
    {
        LengthUnit length = season.Settings.LengthUnit;
        ReportTable table = new ReportTable(
            $"What each planting{(crop is null ? "" : $" of {crop}")} earned in {season.CropYear}",
            season.Notation
        )
            .Column("Planting")
            .Column("Beds")
            .Column("In bed", Look.Date)
            .Column("Out of bed", Look.Date)
            .Column(length.Label("Bed-feet"), Look.Quantity)
            .Column("Brought in", Look.WholeMoney, part: FigurePart.Output)
            .Column("Labor hours", Look.Hours, part: FigurePart.Labor)
            .Column("Gross margin", Look.Rate, per: length.Label("bed-foot"))
            .Column("Gross margin", Look.Rate, per: length.Label("bed-foot-week"))
            .Column("Gross margin", Look.Rate, per: "labor hour")
            .Column("Left over", Look.WholeMoney);
        foreach (EnterpriseBudget budget in season.Plantings.Where(budget => crop is null || IsCrop(budget, crop)))
        {
            IReadOnlyList<BedStay> stays = budget.Enterprises[0].Stays;
            table.Row(
                budget.Name,
                string.Join("; ", stays.Select(bed => bed.Bed.Name).Distinct()),
                stays.Min(bed => bed.In),
                stays.Max(bed => bed.Out),
                budget.Sums.BedFeet.Value,
                ReportCell.Of(budget.Line(BudgetLine.Output)),
                ReportCell.Known(budget.LaborHours.Value, budget.Known.Hours),
                budget.GrossMarginPerBedFoot,
                budget.GrossMarginPerBedFootWeek,
                budget.GrossMarginPerLaborHour,
                ReportCell.Of(budget.Line(BudgetLine.NetReturn))
            );
        }

        return table.Opens();
    }

    /// <summary>Crop groups, by output.</summary>
    public static ReportTable Groups(SeasonReview season) =>
        Budgets(
            season,
            $"What each group of crops earned in {season.CropYear}",
            "Group",
            season.Groups.OrderBy(budget => budget.Known.Value is not null).ThenByDescending(budget => budget.Output.Amount)
        );

    /// <summary>Beds, by gross margin per bed-foot; a planting in several beds is split by bed-foot-days.</summary>
    public static ReportTable Beds(SeasonReview season) =>
        Budgets(
            season,
            $"What each bed earned in {season.CropYear}",
            "Bed",
            season.Beds.OrderByDescending(budget => BudgetColumns.RankKey(budget.GrossMarginPerBedFoot))
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
    public static ReportTable Channels(SeasonReview season)
    {
        ReportTable table = new ReportTable($"What each channel brought in {season.CropYear}", season.Notation)
            .Column("Channel")
            .Column("Kind")
            .Column("Value of the produce", Look.WholeMoney)
            .Column("Fees", Look.WholeMoney)
            .Column("Direct costs", Look.WholeMoney)
            .Column("Hours naming it", Look.Hours)
            .Column("Gross margin", Look.WholeMoney)
            .Column("Gross margin", Look.Rate, per: "hour")
            .Note(
                "Costs and hours are those that name the channel; picking and packing stand with the crops. Household use stands at list value, donations and waste at 0."
            );
        foreach (ChannelResult channel in season.Channels.Where(channel => channel.Channel.Kind != ChannelKind.Other))
        {
            table.Row(
                channel.Channel.Name,
                channel.Channel.Kind.ToString().ToLowerInvariant(),
                ReportCell.Known(channel.QuantityValue, channel.Known.Value),
                ReportCell.Known(channel.Fees, channel.Known.Value ?? (channel.Fees == Money.Zero ? channel.Known.Costs : null)),
                ReportCell.Known(channel.DirectCosts, channel.Known.Costs),
                ReportCell.Known(channel.Hours.Value, channel.Known.Hours),
                ReportCell.Known(channel.Margin, channel.Known.NoGrossMargin),
                channel.MarginPerHour
            );
        }

        return table;
    }

    internal static bool IsCrop(EnterpriseBudget budget, string crop) =>
        string.Equals(budget.Enterprises[0].Crop.Name, crop.Trim(), StringComparison.OrdinalIgnoreCase);

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
