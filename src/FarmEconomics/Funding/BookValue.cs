using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Funding;

/// <summary>An asset in the farm's books on a day.</summary>
/// <param name="Asset">The asset.</param>
/// <param name="Cost">(Cost - grant) x the farm's part, in currency.</param>
/// <param name="Accumulated">Depreciation so far, in currency.</param>
public sealed record BookedAsset(AssetRow Asset, decimal Cost, decimal Accumulated)
{
    /// <summary>Cost less depreciation.</summary>
    public decimal Net => Cost - Accumulated;
}

/// <summary>
/// Book values at cost less straight-line depreciation over the asset's life down to its salvage value, month by month: the month of
/// in_service counts, that of retired doesn't, as in the ownership cost. The farm's part only; what a grant paid is no cost to the farm.
/// Source: the straight-line method of OpenStax, Principles of Accounting vol. 1, chapter 11. It is not tax depreciation.
/// </summary>
public static class BookValue
{
    /// <summary>An asset on a day.</summary>
    /// <param name="asset">The asset.</param>
    /// <param name="day">The end of this day counts.</param>
    /// <returns>Its book value; null when it isn't there.</returns>
    public static BookedAsset? On(AssetRow asset, DateOnly day)
    {
        if (asset.InService > day || asset.Retired <= day)
        {
            return null;
        }

        decimal cost = Cost(asset);
        return new BookedAsset(asset, cost, Accumulated(asset, day));
    }

    /// <summary>What the asset cost the farm.</summary>
    internal static decimal Cost(AssetRow asset) => FarmPart(asset, asset.Cost - (asset.Grant ?? 0m));

    /// <summary>The farm's part of money that has to do with the asset.</summary>
    internal static decimal FarmPart(AssetRow asset, decimal amount) =>
        Money.Rounded(amount * (asset.FarmPercent ?? 100m) / 100m).Amount;

    /// <summary>Depreciation of a year: from the end of one day to the end of another, up to the month it was retired in.</summary>
    internal static decimal Depreciation(AssetRow asset, DateOnly after, DateOnly until) =>
        Accumulated(asset, until) - Accumulated(asset, after);

    private static decimal Accumulated(AssetRow asset, DateOnly day)
    {
        // A month counts once its last day is over; the closing day of a year is one.
        int months = MonthNumber(day.AddDays(1)) - MonthNumber(asset.InService);
        if (asset.Retired is { } retired)
        {
            months = Math.Min(months, MonthNumber(retired) - MonthNumber(asset.InService));
        }

        decimal life = asset.LifeYears * 12m;
        decimal depreciable = Cost(asset) - FarmPart(asset, asset.Salvage ?? 0m);
        return months <= 0 || depreciable <= 0m ? 0m
            : months >= life ? depreciable
            : Money.Rounded(depreciable * months / life).Amount;
    }

    private static int MonthNumber(DateOnly date) => (date.Year * 12) + date.Month - 1;
}
