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
        List<PickedCrop> crops =
        [
            .. enterprises.GroupBy(enterprise => enterprise.Crop)
                .Select(crop => new PickedCrop(
                    crop.Key,
                    (double)crop.Sum(enterprise => enterprise.Harvested),
                    (double)crop.Sum(enterprise => enterprise.SalesValue.Amount)))
                .Where(crop => crop.Picked > 0d && crop.Value > 0d),
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
        foreach (PickedCrop crop in crops.Where(crop => !IsKnown(crop.Crop)))
        {
            estimated[crop.Crop] = (decimal)Math.Clamp(crop.Picked / (median * crop.Value), Smallest, Largest);
        }
    }

    internal static bool IsKnown(Crop crop) => crop.Row.UnitsPerCrate > 0m;

    /// <summary>Units that fill a crate; null when nothing tells.</summary>
    internal decimal? Of(Crop crop) => IsKnown(crop) ? crop.Row.UnitsPerCrate : estimated.TryGetValue(crop, out decimal size) ? size : null;

    // A class: lists of it are compiled ahead of time, which those of a tuple are not.
    private sealed record PickedCrop(Crop Crop, double Picked, double Value);
}
