using System.Collections.Concurrent;
using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Avoidable;

/// <summary>
/// The one answer to what goes when a crop goes (docs/methods.md, section 16): its charges of every driver that moves (length, bed time,
/// quantity, units sold), through the pools as reviewed; trips only with a whole channel; fixed cost never. Payments for shares stay, and
/// the boxes are refilled to what members paid for. Changes, verdicts, short-run break-even, floor prices and what-if all ask here. Source:
/// the relevant-cost rule of partial budgeting (a cost that is the same either way is left out).
/// </summary>
public sealed class AvoidableCost
{
    private readonly SeasonCosts costs;
    private readonly SeasonReview season;
    private readonly Lazy<BoxFiller> boxes;
    private readonly Lazy<ILookup<Crop, Disposition>> leavings;
    private readonly ConcurrentDictionary<Crop, CropSales> sales = [];
    private readonly ConcurrentDictionary<string, BoxesOfCrop> inBoxes = new(StringComparer.OrdinalIgnoreCase);
    private readonly ConcurrentDictionary<string, Departure> whole = new(StringComparer.OrdinalIgnoreCase);

    internal AvoidableCost(SeasonCosts costs)
    {
        this.costs = costs;
        season = costs.Season;
        Trips = new ChannelTrips(season);
        leavings = new(() => season.Trace.Dispositions.ToLookup(leaving => leaving.Crop));
        boxes = new(() => new BoxFiller(season, PackagingPerUnit()));
    }

    /// <summary>Trips of the season's channels.</summary>
    internal ChannelTrips Trips { get; }

    /// <summary>What goes when a crop isn't grown; worked out once.</summary>
    /// <param name="crop">The budget of a crop of the season.</param>
    /// <returns>What goes.</returns>
    public Departure Without(EnterpriseBudget crop)
    {
        ArgumentNullException.ThrowIfNull(crop);
        return whole.GetOrAdd(crop.Name, _ => Without([crop]));
    }

    /// <summary>
    /// What goes when several crops aren't grown, or a part of each. Together they may free the trips of a channel that none frees alone.
    /// </summary>
    /// <param name="crops">Budgets of crops of the season.</param>
    /// <param name="part">The part that goes, above 0 and at most 1.</param>
    /// <returns>What goes.</returns>
    public Departure Without(IReadOnlyList<EnterpriseBudget> crops, decimal part = 1m) => Without(crops, part, new HashSet<Crop>());

    /// <summary>The same where other crops are gone too that have no planting in the season: nothing of them can go into boxes.</summary>
    internal Departure Without(IReadOnlyList<EnterpriseBudget> crops, decimal part, IReadOnlySet<Crop> goneToo)
    {
        ArgumentNullException.ThrowIfNull(crops);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(part);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(part, 1m);
        HashSet<Crop> gone = [.. crops.Select(crop => crop.Crop!)];
        IReadOnlyList<TripSaving> trips = part == 1m ? Trips.Freed(gone) : [];
        return new Departure(
            crops, part, [.. crops.SelectMany(crop => ReturnsOf(crop, part))],
            [.. crops.SelectMany(crop => CostsOf(crop, part)), .. TripLines(trips)],
            trips, boxes.Value.Without(gone, part, goneToo));
    }

    /// <summary>A crop's part of the boxes, planting by planting; worked out once.</summary>
    internal BoxesOfCrop BoxesOf(EnterpriseBudget crop) => inBoxes.GetOrAdd(crop.Name, _ => new BoxesOfCrop(costs, crop));

    /// <summary>What a crop sold in all years on record, by channel and week; worked out once.</summary>
    internal CropSales SalesOf(Crop crop) => sales.GetOrAdd(crop, one => new CropSales(season, one, leavings.Value[one]));

    /// <summary>Avoidable costs of a crop, by name and kind, in proportion.</summary>
    internal IEnumerable<PartialBudgetLine> CostsOf(EnterpriseBudget crop, decimal part, Func<CostLine, bool>? which = null) =>
        costs.Of(crop).Where(line => Goes(line) && (which?.Invoke(line) ?? true))
            .GroupBy(line => (line.Name, Kind: KindOf(line.Stream)))
            .Select(group => new PartialBudgetLine(
                $"{crop.Name}: {group.Key.Name}",
                Rounded(group.Sum(line => line.Amount.Amount), part),
                group.Key.Kind
            ))
            .Where(line => line.Amount != Money.Zero)
            .OrderByDescending(line => line.Amount.Amount)
            .ThenBy(line => line.Name, StringComparer.Ordinal)
            .Concat(FeesOf(crop, part, which));

    /// <summary>
    /// Fees on what was sold outside the shares, and on nothing else: payments for shares stay, and so do the fees on them.
    /// </summary>
    internal Money SalesFees(EnterpriseBudget crop) =>
        Money.Sum(PartsOf(crop).Where(part => !IsInBox(part)).Select(part => part.Fee));

    /// <summary>Share payments that stand to a crop's credit, less the channels' fees on them.</summary>
    internal Money ShareNet(EnterpriseBudget crop) => Money.Sum(InBoxes(crop).Select(part => part.Amount - part.Fee));

    /// <summary>What of a crop's season went into boxes, whenever they went out.</summary>
    internal IEnumerable<DispositionPart> InBoxes(EnterpriseBudget crop) => PartsOf(crop).Where(IsInBox);

    private static bool IsInBox(DispositionPart part) => part.Disposition.Channel.Kind == ChannelKind.Share;

    private static bool Goes(CostLine line) => line.IsAvoidable && !line.IsFee;

    private static Means KindOf(CostStream stream) => stream switch
    {
        CostStream.HiredLabor => Means.HiredHours,
        CostStream.OwnerLabor => Means.OwnHours,
        CostStream.Ownership => Means.Value,
        _ => Means.Cash,
    };

    private static Money Rounded(decimal amount, decimal part) => Money.Rounded(amount * part);

    private IEnumerable<PartialBudgetLine> FeesOf(EnterpriseBudget crop, decimal part, Func<CostLine, bool>? which)
    {
        Money fees = Rounded(SalesFees(crop).Amount, part);
        return fees == Money.Zero || which is not null ? [] : [new PartialBudgetLine($"{crop.Name}: channel fees", fees)];
    }

    private static IEnumerable<PartialBudgetLine> TripLines(IReadOnlyList<TripSaving> trips) =>
        trips.Select(trip => new PartialBudgetLine($"{trip.Pool.Name}: trips no longer made", trip.Amount, KindOf(trip.Stream)));

    private static IEnumerable<PartialBudgetLine> ReturnsOf(EnterpriseBudget crop, decimal part)
    {
        BudgetSums sums = crop.Sums;
        (string What, Money Amount, Means Kind)[] lines =
        [
            ("sales", sums.Sales, Means.Cash),
            ("household use at list value", sums.Household, Means.Value),
            ("stock on hand", sums.ClosingStock, Means.Value),
        ];
        return lines
            .Select(line => new PartialBudgetLine($"{crop.Name}: {line.What}", Rounded(line.Amount.Amount, part), line.Kind))
            .Where(line => line.Amount != Money.Zero);
    }

    private IEnumerable<DispositionPart> PartsOf(EnterpriseBudget crop) =>
        season.PartsOf(crop.Crop!).Where(part => part.Enterprise is not null);

    private Dictionary<Crop, decimal> PackagingPerUnit() =>
        season
            .Crops.Where(crop => crop.Sums.Sold > 0m)
            .ToDictionary(
                crop => crop.Crop!,
                crop =>
                    costs.Of(crop).Where(line => Goes(line) && line.VariesWith == CostDriver.Units).Sum(line => line.Amount.Amount)
                    / crop.Sums.Sold
            );
}
