using FarmEconomics.Records;
using FarmEconomics.Tracing;

namespace FarmEconomics.Costing;

/// <summary>A part of a lot that was held for the same time, from the day it was picked.</summary>
/// <param name="Quantity">Quantity in the crop's unit.</param>
/// <param name="Days">Days held; 0 when it was sold or used on the day it was picked.</param>
public readonly record struct Holding(decimal Quantity, int Days)
{
    /// <summary>
    /// How long each part of a lot was held: up to the day it was sold or used; what never was, up to the day it stopped keeping or the
    /// closing date.
    /// </summary>
    /// <param name="lot">The lot.</param>
    /// <param name="closing">The closing date.</param>
    /// <returns>Its parts; their quantities sum to the lot's.</returns>
    public static IEnumerable<Holding> Of(Lot lot, DateOnly closing)
    {
        foreach (DispositionPart part in lot.Draws)
        {
            yield return new Holding(part.Quantity, part.DaysHeld!.Value);
        }

        yield return new Holding(lot.Remaining, lot.DaysKept(closing));
    }
}

/// <summary>Where a crop lies: only in the stores it names; several stores share equally.</summary>
internal static class CrateDays
{
    /// <summary>
    /// The part of a crop that lies in a store: all of it in the only store there is, else equal parts in those it names; null when it
    /// names none of several.
    /// </summary>
    internal static decimal? ShareIn(Pool pool, Crop crop, int crateDayPools) =>
        crop.Stores.Count == 0 ? crateDayPools > 1 ? null : crateDayPools
            : (decimal)crop.Stores.Count(store => string.Equals(store, pool.Name, StringComparison.OrdinalIgnoreCase)) / crop.Stores.Count;
}
