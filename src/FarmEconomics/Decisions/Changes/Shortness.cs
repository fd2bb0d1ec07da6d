using System.Collections.Concurrent;
using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tracing;

namespace FarmEconomics.Decisions.Changes;

/// <summary>What stands in the way of more of a crop.</summary>
public enum ShortOf
{
    /// <summary>Beds under its covers.</summary>
    Room,

    /// <summary>Hours of a week.</summary>
    Hours,

    /// <summary>Crates in its store.</summary>
    Store,
}

/// <summary>Says what a crop would run short of.</summary>
public interface IShortness
{
    /// <summary>Bed-feet more there is room for while the crop stands.</summary>
    /// <param name="crop">The crop's budget.</param>
    /// <returns>Bed-feet, 0 or more.</returns>
    decimal RoomFor(EnterpriseBudget crop);

    /// <summary>What so much more of a crop would run short of, beside room.</summary>
    /// <param name="crop">The crop's budget.</param>
    /// <param name="feet">Bed-feet more, above 0.</param>
    /// <returns>What is short; empty when nothing is.</returns>
    IReadOnlyList<ShortOf> Without(EnterpriseBudget crop, decimal feet);
}

/// <summary>From the records' limits and the use of beds, hours and crates as it was.</summary>
internal sealed class RecordedShortness(SeasonCosts costs, BedTime beds, LaborLimits limits) : IShortness
{
    private readonly ConcurrentDictionary<string, Dictionary<DateOnly, decimal>> crates = new(StringComparer.OrdinalIgnoreCase);

    public decimal RoomFor(EnterpriseBudget crop) => beds.RoomFor(crop);

    public IReadOnlyList<ShortOf> Without(EnterpriseBudget crop, decimal feet)
    {
        List<ShortOf> found = [];
        decimal growth = feet / crop.Sums.BedFeet.Value;
        Dictionary<DateOnly, decimal> hours = WeeklyUse.Of(costs, crop).ToDictionary(week => week.Monday, week => week.Hours * growth);
        if (limits.Beyond(hours).Count > 0)
        {
            found.Add(ShortOf.Hours);
        }

        if (crop.Crop!.Stores.Any(store => IsFull(store, crop.Crop, growth)))
        {
            found.Add(ShortOf.Store);
        }

        return found;
    }

    private bool IsFull(string store, Crop crop, decimal growth)
    {
        List<LimitRow> limits =
        [
            .. costs.Season.Records.Tables.Limits.Where(row => string.Equals(row.Limit.Trim(), store, StringComparison.OrdinalIgnoreCase)),
        ];
        if (limits.Count == 0)
        {
            return false;
        }

        Dictionary<DateOnly, decimal> held = crates.GetOrAdd(store, name => Held(name, _ => true));
        return Held(store, other => other == crop)
            .Any(day => day.Value > 0m
                && limits.Exists(row => LaborLimits.Holds(row, day.Key) && held[day.Key] + (day.Value * growth) > row.Amount));
    }

    /// <summary>Crates in a store by day, of crops whose crates are known.</summary>
    private Dictionary<DateOnly, decimal> Held(string store, Func<Crop, bool> which)
    {
        Dictionary<DateOnly, decimal> days = [];
        foreach (Lot lot in costs.Season.Lots.Where(lot => which(lot.Enterprise.Crop)))
        {
            Crop crop = lot.Enterprise.Crop;
            int named = crop.Stores.Count(name => string.Equals(name, store, StringComparison.OrdinalIgnoreCase));
            if (named == 0 || crop.Row.UnitsPerCrate is not { } perCrate || perCrate <= 0m)
            {
                continue;
            }

            foreach (Holding part in Holding.Of(lot, costs.Season.Records.AsOf))
            {
                for (int day = 0; day < part.Days; day++)
                {
                    DateOnly at = lot.Date.AddDays(day);
                    days[at] = days.GetValueOrDefault(at) + (part.Quantity / perCrate * named / crop.Stores.Count);
                }
            }
        }

        return days;
    }
}
