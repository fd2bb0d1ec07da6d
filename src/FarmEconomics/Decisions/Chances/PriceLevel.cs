using System.Collections.Concurrent;
using FarmEconomics.Budgets;
using FarmEconomics.Records;

namespace FarmEconomics.Decisions.Chances;

/// <summary>
/// Brings sales of past seasons to the prices of a later one: times list price at the end of the later season / list price at the end of
/// theirs, of the same crop and channel (the one its values come from, if it
/// names one), else of the crop without a channel, else the farm's mean of such ratios by output. A list without a dated row says nothing
/// of how prices moved. Without any such list the money stays nominal.
/// </summary>
public sealed class PriceLevel
{
    private readonly FarmReview review;
    private readonly double? yearly;
    private readonly ILookup<(Crop Crop, string Channel), PriceRow> lists;
    private readonly ConcurrentDictionary<int, double?> farm = [];

    internal PriceLevel(FarmReview review, int cropYear, double? changePercent)
    {
        this.review = review;
        CropYear = cropYear;
        yearly = changePercent;
        lists = review.Records.Tables.Prices.Where(row => row.Reference != true && review.Records.FindCrop(row.Crop) is not null)
            .ToLookup(row => (review.Records.Crop(row.Crop), row.Channel?.Trim().ToUpperInvariant() ?? ""));
    }

    /// <summary>The crop year whose prices count.</summary>
    public int CropYear { get; }

    /// <summary>True where nothing tells how prices moved since a season, so that its money stays as it was.</summary>
    /// <param name="season">The season.</param>
    /// <returns>True for nominal money.</returns>
    public bool IsNominal(int season) => season != CropYear && yearly is null && OfFarm(season) is null;

    /// <summary>What money of a past season is multiplied by.</summary>
    /// <param name="crop">The crop sold.</param>
    /// <param name="channel">The channel it went through.</param>
    /// <param name="season">The past season.</param>
    /// <returns>The factor, above 0; 1 where <see cref="IsNominal"/>.</returns>
    public double Factor(Crop crop, Channel channel, int season)
    {
        ArgumentNullException.ThrowIfNull(crop);
        ArgumentNullException.ThrowIfNull(channel);
        if (season == CropYear)
        {
            return 1.0;
        }

        return yearly is { } percent ? Math.Pow(1.0 + (percent / 100.0), CropYear - season) : OfCrop(crop, channel, season)
            ?? OfFarm(season) ?? 1.0;
    }

    private double? OfCrop(Crop crop, Channel channel, int season)
    {
        string source = string.IsNullOrWhiteSpace(channel.Row.ValuesFrom) ? channel.Name : channel.Row.ValuesFrom.Trim();
        return Ratio(crop, source.ToUpperInvariant(), season) ?? Ratio(crop, "", season);
    }

    private double? OfFarm(int season) => farm.GetOrAdd(season, FindOfFarm);

    private double? FindOfFarm(int season)
    {
        double weights = 0.0;
        double sum = 0.0;
        foreach (EnterpriseBudget crop in review.Season(CropYear).Crops.Where(crop => crop.Output.Amount > 0m))
        {
            List<double> ratios =
                [.. lists.Where(list => list.Key.Crop == crop.Crop)
                .Select(list => Ratio(crop.Crop!, list.Key.Channel, season)).OfType<double>()];
            if (ratios.Count > 0)
            {
                weights += (double)crop.Output.Amount;
                sum += (double)crop.Output.Amount * ratios.Average();
            }
        }

        return weights > 0.0 ? sum / weights : null;
    }

    private double? Ratio(Crop crop, string channel, int season)
    {
        List<PriceRow> rows = [.. lists[(crop, channel)]];
        return rows.Exists(row => row.From is not null) && At(crop, rows, CropYear) is { } now
            && At(crop, rows, season) is > 0.0 and { } then ? now / then : null;
    }

    private double? At(Crop crop, List<PriceRow> rows, int season)
    {
        DateOnly last = review.Records.Settings.EndOf(season).AddDays(-1);
        List<PriceRow> listed = rows.FindAll(row => (row.From ?? DateOnly.MinValue) <= last);
        if (listed.Count == 0)
        {
            return null;
        }

        PriceRow newest = listed.MaxBy(row => (row.From ?? DateOnly.MinValue, row.Source.Line));
        return (double)(newest.Price / crop.ToBase(1m, newest.Unit));
    }
}
