using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Avoidable;

/// <summary>Trip money a pool no longer spends.</summary>
/// <param name="Pool">The pool.</param>
/// <param name="Stream">The kind of money.</param>
/// <param name="Amount">The money, in whole cents.</param>
public sealed record TripSaving(Pool Pool, CostStream Stream, Money Amount);

/// <summary>
/// Trips of a season: a trip is a date on which something left through a channel. All of a channel's trips stay while anything leaves
/// through it, and go when nothing does. A channel's own pool goes with its trips; a pool of trips that serves all channels (a truck) by
/// the part of the trips that go.
/// </summary>
internal sealed class ChannelTrips
{
    private readonly Dictionary<Channel, HashSet<DateOnly>> dates = [];
    private readonly Dictionary<Channel, HashSet<Crop>> crops = [];
    private readonly HashSet<Channel> prepaid;
    private readonly List<TripSaving> costs = [];

    internal ChannelTrips(SeasonReview season)
    {
        foreach (Disposition leaving in season.Dispositions.Where(leaving => leaving.Quantity > 0m))
        {
            if (!dates.TryGetValue(leaving.Channel, out HashSet<DateOnly>? days))
            {
                dates[leaving.Channel] = days = [];
                crops[leaving.Channel] = [];
            }

            days.Add(leaving.Row.Date);
            crops[leaving.Channel].Add(leaving.Crop);
        }

        // Boxes that are paid for go out whatever is grown: what is missing in them is bought in.
        prepaid = [.. season.Trace.ShareIncome.Where(paid => paid.Key.Window == season.CropYear && paid.Value.Amount > 0m)
            .Select(paid => paid.Key.Channel)];
        foreach (IGrouping<PoolStream, PoolCharge> stream in season.Pools.SelectMany(pool => pool.Charges).GroupBy(charge => charge.Source))
        {
            Money trips = Money.Sum(stream.Select(charge => SeasonCosts.ByBehavior(charge)[(int)CostDriver.Trips]));
            if (trips != Money.Zero)
            {
                costs.Add(new TripSaving(stream.Key.Pool, stream.Key.Stream, trips));
            }
        }
    }

    /// <summary>The part of a pool's trips that go when some crops aren't grown at all, 0 to 1.</summary>
    internal decimal PartFreed(Pool pool, IReadOnlySet<Crop> gone)
    {
        (int freed, int all) = TripsFreed(pool, gone);
        return (decimal)freed / all;
    }

    /// <summary>What is no longer spent when some crops aren't grown at all.</summary>
    internal IReadOnlyList<TripSaving> Freed(IReadOnlySet<Crop> gone) =>
    [
        .. costs.Select(cost => cost with { Amount = MoneyFreed(cost, gone) })
            .Where(cost => cost.Amount != Money.Zero),
    ];

    private Money MoneyFreed(TripSaving cost, IReadOnlySet<Crop> gone)
    {
        (int freed, int all) = TripsFreed(cost.Pool, gone);
        return ((Fraction)cost.Amount.Amount * (decimal)freed / (decimal)all).ToMoney();
    }

    // Of one that serves a channel all or none.
    private (int Freed, int All) TripsFreed(Pool pool, IReadOnlySet<Crop> gone)
    {
        if (pool.Channel is { } channel)
        {
            return (Ends(channel, gone) ? 1 : 0, 1);
        }

        List<Channel> selling = [.. dates.Keys.Where(one => one.IsSold)];
        int all = selling.Sum(one => dates[one].Count);
        return all == 0 ? (0, 1) : (selling.Where(one => Ends(one, gone)).Sum(one => dates[one].Count), all);
    }

    private bool Ends(Channel channel, IReadOnlySet<Crop> gone) =>
        crops.TryGetValue(channel, out HashSet<Crop>? sold) && sold.IsSubsetOf(gone) && !prepaid.Contains(channel);
}
