using FarmEconomics.Records;
using FarmEconomics.Tracing;

namespace FarmEconomics.Costing;

/// <summary>
/// How many units of each crop fill a crate in one crop year: its units_per_crate, else estimated. The crops picked that year that say it
/// hold so many crates per unit of sales value; the median of that, times a crop's sales value, is how many crates it is taken to fill.
/// </summary>
internal sealed class CrateSizes
{
    // Values of checked records stay far inside; made-up ones may not, and a decimal holds no more.
    private const double Smallest = 1e-12;
    private const double Largest = 1e12;

    private readonly Dictionary<Crop, decimal> estimated = [];

    internal CrateSizes(IReadOnlyList<Enterprise> enterprises)
    {
        List<(Crop Crop, double Picked, double Value)> crops =
        [
            .. enterprises
                .GroupBy(enterprise => enterprise.Crop)
                .Select(crop =>
                    (
                        crop.Key,
                        (double)crop.Sum(enterprise => enterprise.Harvested),
                        (double)crop.Sum(enterprise => enterprise.SalesValue.Amount)
                    )
                )
                .Where(crop => crop.Item2 > 0d && crop.Item3 > 0d),
        ];
        double[] perValue =
        [
            .. crops
                .Where(crop => IsKnown(crop.Crop))
                .Select(crop => crop.Picked / (double)crop.Crop.Row.UnitsPerCrate!.Value / crop.Value)
                .Order(),
        ];
        if (perValue.Length == 0)
        {
            return;
        }

        double median = (perValue[(perValue.Length - 1) / 2] + perValue[perValue.Length / 2]) / 2d;
        foreach ((Crop crop, double picked, double value) in crops.Where(crop => !IsKnown(crop.Crop)))
        {
            estimated[crop] = (decimal)Math.Clamp(picked / (median * value), Smallest, Largest);
        }
    }

    internal static bool IsKnown(Crop crop) => crop.Row.UnitsPerCrate > 0m;

    /// <summary>Units that fill a crate; null when nothing tells.</summary>
    internal decimal? Of(Crop crop) => IsKnown(crop) ? crop.Row.UnitsPerCrate : estimated.TryGetValue(crop, out decimal size) ? size : null;
}
