using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Records;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Answers;

/// <summary>The columns of the table of crops.</summary>
public enum SeasonCropColumn
{
    /// <summary>The crop.</summary>
    Crop,

    /// <summary>What it brought in, where costs aren't on record.</summary>
    BroughtIn,

    /// <summary>After every cost.</summary>
    LeftOver,

    /// <summary>Per bed-foot, where costs aren't on record.</summary>
    BedFoot,

    /// <summary>Gross margin per bed-foot-week; what came in where costs aren't on record.</summary>
    BedFootWeek,

    /// <summary>Gross margin per labor hour.</summary>
    Hour,

    /// <summary>Length planted.</summary>
    Length,
}

/// <summary>
/// Every crop by verdict: what was left over, and what its bed time and hours earned; where no costs are on record, what it brought in.
/// </summary>
internal static class SeasonCrops
{
    // The good news first; within each, who earned most.
    private static readonly Direction[] Shown =
    [
        Direction.Grow,
        Direction.Keep,
        Direction.Fix,
        Direction.TooClose,
        Direction.DropOrChange,
        Direction.Unknown,
    ];

    internal static TableBlock Of(ReviewedFarm farm)
    {
        SeasonReview season = farm.Season;
        bool salesAlone =
            season.Farm.Known.Value is null && season.Crops.All(crop => crop.Line(BudgetLine.GrossMargin).Missing is not null);
        ReportTable table = salesAlone ? Sales(season) : Earned(season);
        foreach (Direction direction in Shown)
        {
            List<Verdict> crops = [.. farm.Verdicts.Crops.Where(verdict => verdict.Direction == direction)
                .OrderByDescending(verdict => salesAlone ? verdict.Budget.OutputPerBedFootWeek.Value : verdict.Budget.NetReturn.Amount)];
            if (crops.Count == 0)
            {
                continue;
            }

            (string title, string words) = VerdictCards.Said(direction, crops);
            table.Group($"{title}: {crops.Count}", words);
            foreach (EnterpriseBudget crop in crops.Select(verdict => verdict.Budget))
            {
                ReportCell name = ((ReportCell)crop.Name).To(PageTarget.Crop(farm.Slugs[crop.Name]));
                if (salesAlone)
                {
                    table.Row(name, crop.Output.Amount, crop.OutputPerBedFoot, crop.OutputPerBedFootWeek, crop.Sums.BedFeet.Value);
                }
                else
                {
                    table.Row(
                        name,
                        ReportCell.Of(crop.Line(BudgetLine.NetReturn)),
                        crop.GrossMarginPerBedFootWeek,
                        crop.GrossMarginPerLaborHour,
                        crop.Sums.BedFeet.Value
                    );
                }
            }
        }

        return new TableBlock(SeasonBlock.Crops, Heading(season), table) { Rows = 0 };
    }

    private static ReportTable Earned(SeasonReview season)
    {
        LengthUnit length = season.Settings.LengthUnit;
        string margin = $"gross margin, {season.Notation.Sign}";
        return new ReportTable(
            "Left over is after every cost, your own hours included. The two middle columns are gross margin, "
                + "before labor and shared costs.",
            season.Notation)
            .Column("Crop").As(SeasonCropColumn.Crop)
            .Column("Left over", Look.WholeMoney).As(SeasonCropColumn.LeftOver).WithBar()
            .Column(length.Label("Bed-foot-week"), Look.Rate, unit: margin).As(SeasonCropColumn.BedFootWeek)
            .Column("Hour", Look.Rate, unit: margin).As(SeasonCropColumn.Hour)
            .Column("Length", Look.Count, unit: length.Label("bed-feet")).As(SeasonCropColumn.Length).HiddenOnPhone();
    }

    private static ReportTable Sales(SeasonReview season)
    {
        LengthUnit length = season.Settings.LengthUnit;
        string sign = season.Notation.Sign;
        return new ReportTable(
            $"What each crop brought in, before any cost: {season.Crops[0].Line(BudgetLine.GrossMargin).Missing}.",
            season.Notation
        )
            .Column("Crop")
            .As(SeasonCropColumn.Crop)
            .Column("Brought in", Look.WholeMoney)
            .As(SeasonCropColumn.BroughtIn)
            .WithBar()
            .Column(length.Label("Bed-foot"), Look.Rate, unit: sign)
            .As(SeasonCropColumn.BedFoot)
            .HiddenOnPhone()
            .Column(length.Label("Bed-foot-week"), Look.Rate, unit: sign)
            .As(SeasonCropColumn.BedFootWeek)
            .Column("Length", Look.Count, unit: length.Label("bed-feet"))
            .As(SeasonCropColumn.Length)
            .HiddenOnPhone();
    }

    private static string Heading(SeasonReview season)
    {
        int all = season.Crops.Count,
            known = season.Crops.Count(crop => crop.Line(BudgetLine.NetReturn).Missing is null),
            paid = season.Crops.Count(crop => crop.Line(BudgetLine.NetReturn).Missing is null && crop.NetReturn.Amount >= 0m);
        return known < all ? season.Notation.Count(all, "crop")
            : all == 1 ? $"{season.Crops[0].Name} {(paid == 1 ? "paid" : "didn't pay")} every cost"
            : paid == all ? $"All {all} crops paid every cost"
            : paid == 0 ? $"None of {all} crops paid every cost"
            : $"{all} crops: {paid} paid every cost, {all - paid} didn't";
    }
}
