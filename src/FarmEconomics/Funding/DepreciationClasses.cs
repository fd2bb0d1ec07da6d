using FarmEconomics.Records;

namespace FarmEconomics.Funding;

/// <summary>
/// The recovery period usual for what an asset is, a suggestion for a tax preparer to confirm. IRS Publication 946 (2025), Appendix B, and
/// Publication 225, Table 7-1, as transcribed in the tests (macrs-farm-classes); solar from the published policy pages named there,
/// contested for what came into service after 2024.
/// </summary>
public static class DepreciationClasses
{
    /// <summary>The suggested period.</summary>
    /// <param name="kind">What the asset is for tax.</param>
    /// <returns>Recovery years of MACRS; null for land, which carries no depreciation.</returns>
    public static int? Suggested(TaxKind kind) => kind switch
    {
        TaxKind.NewMachinery or TaxKind.Vehicle or TaxKind.Computer or TaxKind.Solar => 5,
        TaxKind.UsedMachinery or TaxKind.Fence or TaxKind.Furniture => 7,
        TaxKind.Greenhouse or TaxKind.TreesAndVines => 10,
        TaxKind.LandImprovement => 15,
        TaxKind.Building => 20,
        _ => null,
    };

    /// <summary>The classes that count: those given, and where the assumptions say so the suggested ones.</summary>
    /// <param name="records">The records.</param>
    /// <param name="assumptions">What is given.</param>
    /// <returns>Recovery years by asset name.</returns>
    public static IReadOnlyDictionary<string, int> Of(FarmRecords records, FundingAssumptions assumptions)
    {
        ArgumentNullException.ThrowIfNull(records);
        ArgumentNullException.ThrowIfNull(assumptions);
        Dictionary<string, int> classes = new(StringComparer.OrdinalIgnoreCase);
        foreach ((string asset, int years) in assumptions.Classes)
        {
            classes[asset.Trim()] = years;
        }

        if (assumptions.Tax.ClassUse == ClassUse.Suggested)
        {
            foreach (AssetRow asset in records.Tables.Assets)
            {
                if (asset.TaxKind is { } kind && Suggested(kind) is { } years)
                {
                    classes.TryAdd(asset.Asset.Trim(), years);
                }
            }
        }

        return classes;
    }
}
