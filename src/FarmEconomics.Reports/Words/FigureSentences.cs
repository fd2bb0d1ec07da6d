using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Plots;
using FarmEconomics.Reports.Tables;

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

        decimal standard = season.Settings.StandardBedWidthIn;
        decimal bedFeet = BedMap.BedsOf(season).Sum(bed => bed.LengthFt * ((bed.WidthIn ?? standard) / standard));
        decimal planted = season.Farm.Sums.BedFeet.Value;
        string times = season.Notation.Number(bedFeet > 0m ? planted / bedFeet : 0m, Look.Quantity);
        string used = shares.Count == 1 ? season.Notation.Text($"The beds were used {shares[0].Share * 100:0}% of the year. ")
            : season.Notation.Text($"{Phrase.Bold(shares[0].Place)} was used most, {shares[0].Share * 100:0}% of the year; "
                + $"{Phrase.Bold(shares[^1].Place)} least, {shares[^1].Share * 100:0}%. ");
        return new Prose(used
            + season.Notation.Text($"The crops of {season.CropYear} took {season.Notation.Number(planted, Look.Count)} bed-feet "
                + $"where there are {season.Notation.Number(bedFeet, Look.Count)}: "
                + $"{times} {Phrase.Noun(times, "planting")} a foot."));
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
        return new Prose($"{busiest:MMMM} was the busiest month, {season.Notation.Number(named + other, Look.Hours)} hours, "
            + $"of which {Phrase.Percent(named / (named + other))} name a crop or planting. "
            + (silent.Count == 0 ? "Every month has hours." : $"No hours are written down for {Phrase.List(silent)}."));
    }
}
