using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Funding;

/// <summary>An asset's tax depreciation.</summary>
/// <param name="Asset">The asset.</param>
/// <param name="RecoveryYears">The class the user gave, in years; null: none given.</param>
/// <param name="Basis">(Cost - grant) x the farm's part, in currency.</param>
/// <param name="FirstYear">The tax year of the first amount.</param>
/// <param name="Amounts">One amount per tax year from the first on; empty without a class.</param>
public sealed record AssetDepreciation(AssetRow Asset, int? RecoveryYears, decimal Basis, int FirstYear, IReadOnlyList<decimal> Amounts)
{
    /// <summary>
    /// The amount of a tax year; 0 outside the schedule. Null without a class, while the asset could still carry some: one without a
    /// basis, one that came and went in the same tax year, one older than the longest class, and land carry none in any.
    /// </summary>
    /// <param name="year">The tax year.</param>
    /// <returns>The amount.</returns>
    public decimal? In(int year) =>
        year < FirstYear || Asset.Retired?.Year < year ? 0m
        : RecoveryYears is null ? CouldCarrySome(year) ? null : 0m
        : year - FirstYear < Amounts.Count ? Amounts[year - FirstYear] : 0m;

    private bool CouldCarrySome(int year) =>
        Basis > 0m && Asset.TaxKind != TaxKind.Land && Asset.Retired?.Year != FirstYear
        && year - FirstYear <= MacrsTable.RecoveryYears.Max();
}

/// <summary>
/// Tax depreciation of the assets table by MACRS, half-year convention, for the classes the user gave. Calendar tax years.
/// </summary>
public static class TaxDepreciation
{
    /// <summary>Works out every asset.</summary>
    /// <param name="assets">The assets.</param>
    /// <param name="classes">Recovery years by asset name.</param>
    /// <returns>One per asset, in the order of the table.</returns>
    /// <exception cref="ArgumentException">A class names no asset, or no recovery period of the table.</exception>
    public static IReadOnlyList<AssetDepreciation> Of(IReadOnlyList<AssetRow> assets, IReadOnlyDictionary<string, int> classes)
    {
        ArgumentNullException.ThrowIfNull(assets);
        ArgumentNullException.ThrowIfNull(classes);
        foreach ((string name, int years) in classes)
        {
            if (!assets.Any(asset => Same(asset.Asset, name)))
            {
                string? nearest = Records.Reading.NearestName.Find(name, assets.Select(asset => asset.Asset));
                throw new ArgumentException(
                    $"There is no asset \"{name}\" to give a depreciation class{(nearest is null ? "." : $"; did you mean {nearest}?")}",
                    nameof(classes)
                );
            }

            if (!MacrsTable.RecoveryYears.Contains(years))
            {
                throw new ArgumentException(
                    $"{name}: there is no class of {years} years; classes: {string.Join(", ", MacrsTable.RecoveryYears)} years.",
                    nameof(classes)
                );
            }
        }

        return
        [
            .. assets.Select(asset =>
                Of(asset, classes.Where(pair => Same(pair.Key, asset.Asset)).Select(pair => (int?)pair.Value).FirstOrDefault())
            ),
        ];
    }

    private static AssetDepreciation Of(AssetRow asset, int? years)
    {
        decimal basis = Math.Max(0m, Money.Rounded((asset.Cost - (asset.Grant ?? 0m)) * (asset.FarmPercent ?? 100m) / 100m).Amount);
        int first = asset.InService.Year;
        int? held = asset.Retired is { } retired ? retired.Year - first + 1 : null;

        // What comes and goes in the same tax year carries no depreciation (Publication 946, property placed in service and disposed of in
        // one year).
        IReadOnlyList<decimal> amounts = years is { } recovery ? MacrsTable.Schedule(basis, recovery, held) : [];
        return new AssetDepreciation(asset, years, basis, first, held == 1 ? [.. amounts.Select(_ => 0m)] : amounts);
    }

    private static bool Same(string left, string right) => left.Trim().Equals(right.Trim(), StringComparison.OrdinalIgnoreCase);
}
