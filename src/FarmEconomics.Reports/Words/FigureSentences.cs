using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Plots;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Reports.Words;

/// <summary>A sentence below each figure that reads a number off it.</summary>
public static class FigureSentences
{
    /// <summary>Below the bed-time figure.</summary>
    public static Prose BedTime(SeasonReview season)
    {
        List<(string Place, double Share)> shares = BedYear.Shares(season).OrderByDescending(place => place.Share).ToList();
        if (shares.Count == 0)
        {
            return new Prose("No beds to read off.");
        }

        decimal bedFeet = season.Records.Tables.Beds.Sum(bed => bed.LengthFt);
        decimal planted = season.Farm.Sums.BedFeet.Value;
        return new Prose(season.Notation.Text($"{Phrase.Bold(shares[0].Place)} was used most, {shares[0].Share * 100:0}% of the year; {Phrase.Bold(shares[^1].Place)} least, {shares[^1].Share * 100:0}%. ")
            + season.Notation.Text($"The crops of {season.CropYear} took {season.Notation.Number(planted, Look.Count)} bed-feet on {season.Notation.Number(bedFeet, Look.Count)} feet of bed: {season.Notation.Number(bedFeet > 0m ? planted / bedFeet : 0m, Look.Quantity)} plantings a foot."));
    }

    /// <summary>Below the hours by month: the busiest month, and months without a log.</summary>
    public static Prose HoursByMonth(SeasonReview season)
    {
        List<(DateOnly Month, decimal Named, decimal Other)> months = RecordsPlots.Months(season);
        if (season.Known.Hours is { } why || months.Sum(month => month.Named + month.Other) <= 0m)
        {
            return new Prose($"Hours by month are not available ({season.Known.Hours ?? "no hours"}).");
        }

        (DateOnly busiest, decimal named, decimal other) = months.MaxBy(month => month.Named + month.Other);
        List<string> silent = months.Where(month => month.Named + month.Other == 0m).Select(month => month.Month.ToString("MMMM")).ToList();
        return new Prose($"{busiest:MMMM} was the busiest month, {season.Notation.Number(named + other, Look.Hours)} hours, of which {Phrase.Percent(named / (named + other))} name a crop or planting. "
            + (silent.Count == 0 ? "Every month has hours." : $"No hours are written down for {Phrase.List(silent)}."));
    }

    /// <summary>Below the scatter: where the largest crops stand.</summary>
    public static Prose Quarters(SeasonReview season)
    {
        if (season.Farm.GrossMarginPerBedFootWeek.Value is not { } perWeek || season.Farm.GrossMarginPerLaborHour.Value is not { } perHour)
        {
            return new Prose($"The figure is not available ({season.Farm.GrossMarginPerLaborHour.Reason ?? season.Farm.GrossMarginPerBedFootWeek.Reason}).");
        }

        Notation notation = season.Notation;
        List<EnterpriseBudget> both = season
            .Crops.Where(crop => crop.GrossMarginPerBedFootWeek.Value > perWeek && crop.GrossMarginPerLaborHour.Value > perHour)
            .OrderByDescending(crop => crop.Output.Amount)
            .ToList();
        List<EnterpriseBudget> neither = season
            .Crops.Where(crop => crop.GrossMarginPerBedFootWeek.Value < perWeek && crop.GrossMarginPerLaborHour.Value < perHour)
            .OrderBy(crop => crop.GrossMarginPerLaborHour.Value)
            .ToList();
        return new Prose(
            season.Notation.Text(
                $"The farm's average is {notation.InWords(perWeek, Look.Rate)} per bed-foot-week and {notation.InWords(perHour, Look.Rate)} per hour. "
            )
                + $"{Phrase.Sentence(notation.Count(both.Count, "crop"))} beat both, the largest {Names(both)}; {notation.Count(neither.Count, "crop")} beat neither, the poorest per hour {Names(neither)}."
        );
    }

    /// <summary>Below the price figure: what the crop sold for, by channel.</summary>
    public static Prose PriceAndYield(SeasonReview season, string crop)
    {
        EnterpriseBudget? budget = season.FindBudget(crop);
        if (budget?.Crop is not { } found)
        {
            return new Prose($"{Prose.Text(crop)} has no planting in {season.CropYear}.");
        }

        Notation notation = season.Notation;
        List<(string Channel, decimal Price, decimal Quantity)> channels = season
            .PartsOf(found)
            .Where(part =>
                part.Enterprise is not null && part.Disposition.Channel.IsPriced && part.Quantity > 0m && part.Amount != Money.Zero
            )
            .GroupBy(part => part.Disposition.Channel.Name)
            .Select(group =>
                (
                    group.Key,
                    group.Sum((DispositionPart part) => part.Amount.Amount) / group.Sum(part => part.Quantity),
                    group.Sum(part => part.Quantity)
                )
            )
            .OrderByDescending(channel => channel.Item2)
            .ToList();
        string yield = budget.YieldPerBedFoot.Value is { } perFoot
            ? season.Notation.Text($"{notation.Number(perFoot, Look.Rate)} {Prose.Text(found.Unit)} per bed-foot")
            : $"yield not available ({budget.YieldPerBedFoot.Reason})";
        return new Prose(
            $"{Phrase.Bold(found.Name)} gave {yield}"
                + (
                    channels.Count == 0
                        ? "; no sale of it carries a price."
                        : $" and sold for {Phrase.List(channels.ConvertAll(channel => $"{notation.InWords(channel.Price, Look.Rate)} per {Prose.Text(found.Unit)} through {Prose.Text(channel.Channel)} ({notation.Number(channel.Quantity, Look.Quantity)} {Prose.Text(found.Unit)})"))}."
                )
        );
    }

    private static string Names(List<EnterpriseBudget> crops) => Phrase.List(crops.Take(3).Select(crop => Phrase.Bold(crop.Name)).ToList());
}
