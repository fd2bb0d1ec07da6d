using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Avoidable;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Changes;

/// <summary>What goes and what comes.</summary>
internal sealed record ChangeParts
{
    /// <summary>What goes; null: nothing.</summary>
    internal Departure? Gone { get; init; }

    /// <summary>The crop there is more of; null: none.</summary>
    internal EnterpriseBudget? Grown { get; init; }

    /// <summary>Bed-feet more of it.</summary>
    internal decimal Feet { get; init; }

    /// <summary>Bed-feet more of it that are there already by other changes: the market takes what comes after them.</summary>
    internal decimal FeetBefore { get; init; }

    /// <summary>In every channel; null: each channel's own.</summary>
    internal decimal? Elasticity { get; init; }
}

/// <summary>A change worked out: its partial budget, and where what stays lands.</summary>
internal sealed class ChangeOutcome
{
    private readonly SeasonCosts costs;
    private readonly SeasonReview season;
    private readonly ChangeParts parts;
    private readonly CropGrowth? growth;
    private readonly Lazy<List<MovedCost>> moved;
    private readonly Lazy<List<(string To, Money Change)>> shares;

    internal ChangeOutcome(SeasonCosts costs, ChangeParts parts, CropGrowth? growth)
    {
        this.costs = costs;
        season = costs.Season;
        this.parts = parts;
        this.growth = growth;
        moved = new(Move);
        shares = new(MoveShares);
    }

    /// <summary>How much more is grown: 0.5 is half as much again.</summary>
    internal decimal Growth => growth?.Growth(parts.Feet) ?? 0m;

    internal MoreSold More => growth?.Sold(parts.Feet, parts.FeetBefore) ?? default;

    /// <summary>The part of what is grown more that goes below today's price, and the part nobody takes, stock on hand among it.</summary>
    internal (decimal BelowToday, decimal NotTaken) Market
    {
        get
        {
            MoreSold more = More;
            (decimal onHand, decimal left, _) = growth?.OnHand(parts.Feet, parts.FeetBefore) ?? default;
            decimal sold = more.Quantity + onHand, notTaken = more.NotSold + left;
            return (
                Result.Of(more.BelowToday + onHand, sold, "none").Value ?? 0m,
                Result.Of(notTaken, sold + notTaken, "none").Value ?? 0m);
        }
    }

    internal IReadOnlyList<MovedCost> Moved => moved.Value;

    internal IReadOnlyList<(string To, Money Change)> SharesMoved => shares.Value;

    /// <summary>Full cost: the crop's whole net return goes; what is grown more brings its part of fixed cost and trips along.</summary>
    internal Money FullCostChange
    {
        get
        {
            decimal gone = -(parts.Gone?.Crops.Sum(crop => crop.NetReturn.Amount) ?? 0m) * (parts.Gone?.Part ?? 0m);
            decimal more = growth is null
                ? 0m
                : Change(growth.Returns(parts.Feet, parts.FeetBefore), growth.Costs(parts.Feet, parts.FeetBefore)).Amount
                    - (Growth * costs.Of(parts.Grown!).Where(line => !line.IsAvoidable).Sum(line => line.Amount.Amount));
            return Money.Rounded(gone + more);
        }
    }

    /// <summary>What changes outside the crops.</summary>
    internal IReadOnlyList<(string What, Money Change)> Elsewhere
    {
        get
        {
            IEnumerable<(string, Money)> cost = Moved
                .SelectMany(one => one.Moves)
                .Where(move => season.FindBudget(move.To) is null)
                .Select(move => ($"cost that ends with {move.To}", -move.Change));
            IEnumerable<(string, Money)> paid = SharesMoved
                .Where(move => season.FindBudget(move.To) is null)
                .Select(move => (move.To, move.Change));
            IEnumerable<(string, Money)> filled = Refilled()
                .Where(item => item.Crop is null || season.FindBudget(item.Crop.Name) is null)
                .Select(item =>
                    (item.Crop is null ? "bought in for the boxes" : $"{item.Crop.Name} of another year in the boxes", -item.Lost)
                );
            return
            [
                .. cost.Concat(paid)
                    .Concat(filled)
                    .GroupBy(line => line.Item1, StringComparer.OrdinalIgnoreCase)
                    .Select(group => (group.Key, Money.Sum(group.Select(line => line.Item2))))
                    .Where(line => line.Item2 != Money.Zero),
            ];
        }
    }

    internal PartialBudget Budget() =>
        new(
            growth is null ? [] : [.. growth.Returns(parts.Feet, parts.FeetBefore)],
            parts.Gone?.Costs ?? [],
            [
                .. growth?.Costs(parts.Feet, parts.FeetBefore) ?? [],
                .. RefillLines(RefillSource.BoughtIn, "bought in for the boxes", Means.Cash),
            ],
            [
                .. parts.Gone?.Returns ?? [],
                .. RefillLines(
                    RefillSource.Sold,
                    "put into the boxes instead of being sold, at the price less fee and packaging",
                    Means.Cash
                ),
                .. RefillLines(RefillSource.Household, "put into the boxes instead of being eaten at home", Means.Value),
            ]
        );

    /// <summary>
    /// Net return of each crop before and after. What the others don't explain is the grown crop's own, or the dropped one's.
    /// </summary>
    internal List<(string Crop, Money Before, Money After)> After(PartialBudget partial)
    {
        Dictionary<string, Money> changes = season.Crops.ToDictionary(crop => crop.Name, _ => Money.Zero, StringComparer.OrdinalIgnoreCase);
        void Add(string to, Money change)
        {
            if (changes.TryGetValue(to, out Money before))
            {
                changes[to] = before + change;
            }
        }

        foreach ((string to, Money change) in Moved.SelectMany(cost => cost.Moves))
        {
            Add(to, -change);
        }

        foreach ((string to, Money change) in SharesMoved)
        {
            Add(to, change);
        }

        foreach (RefillItem item in Refilled().Where(item => item.Crop is not null))
        {
            Add(item.Crop!.Name, -item.Lost);
        }

        if (parts.Gone is { Part: 1m } gone)
        {
            foreach (EnterpriseBudget crop in gone.Crops)
            {
                changes[crop.Name] = -crop.NetReturn;
            }
        }

        string own = parts.Grown?.Name ?? parts.Gone!.Crops[0].Name;
        changes[own] += partial.NetChange - Money.Sum(changes.Values) - Money.Sum(Elsewhere.Select(line => line.Change));
        return season.Crops.Select(crop => (crop.Name, crop.NetReturn, crop.NetReturn + changes[crop.Name])).ToList();
    }

    private IReadOnlyList<RefillItem> Refilled() => parts.Gone?.Refill.Items ?? [];

    private static Money Change(IEnumerable<PartialBudgetLine> returns, IEnumerable<PartialBudgetLine> costs) =>
        PartialBudget.Sum(returns) - PartialBudget.Sum(costs);

    private IEnumerable<PartialBudgetLine> RefillLines(RefillSource source, string what, Means kind) =>
        Refilled()
            .Where(item => item.Source == source)
            .GroupBy(item => item.Crop?.Name)
            .Select(group => new PartialBudgetLine(
                group.Key is null ? what : $"{group.Key}: {what}",
                Money.Sum(group.Select(item => item.Lost)),
                kind
            ))
            .Where(line => line.Amount != Money.Zero)
            .OrderByDescending(line => line.Amount.Amount);

    private List<MovedCost> Move()
    {
        Dictionary<Enterprise, decimal> factors = [];
        foreach (Enterprise enterprise in parts.Gone?.Crops.SelectMany(crop => crop.Enterprises) ?? [])
        {
            factors[enterprise] = 1m - parts.Gone!.Part;
        }

        foreach (Enterprise enterprise in parts.Grown?.Enterprises ?? [])
        {
            factors[enterprise] = 1m + Growth;
        }

        List<MovedCost> again = new SharingAgain(season, factors, parts.Gone?.Trips ?? []).Moved;
        foreach (EnterpriseBudget crop in parts.Gone is { Part: 1m } ? parts.Gone.Crops : [])
        {
            Money named = Money.Sum(costs.Of(crop).Where(line => line.Pool is null && !line.IsAvoidable).Select(line => line.Amount));
            if (named != Money.Zero)
            {
                again.Add(new MovedCost(null, [("not assigned", named), (crop.Name, -named)]));
            }
        }

        return again;
    }

    /// <summary>Payments for shares go to what else is in those boxes, by list value.</summary>
    private List<(string To, Money Change)> MoveShares()
    {
        const string NoBoxes = "payments for shares without boxes";
        List<EnterpriseBudget> gone = parts.Gone is { Part: 1m } whole ? [.. whole.Crops] : [];
        List<EnterpriseBudget> others = [.. season.Crops.Except(gone)];
        Dictionary<string, Money> changes = gone.ToDictionary(crop => crop.Name, crop => -costs.Avoidable.ShareNet(crop));
        foreach (
            IGrouping<(Channel, int), DispositionPart> boxes in gone.SelectMany(costs.Avoidable.InBoxes).GroupBy(BoxesOf)
        )
        {
            List<(string To, decimal Weight)> inThem = others.ConvertAll(crop => (crop.Name, ListValueIn(boxes.Key, crop.Crop!)));
            if (inThem.Sum(other => other.Weight) <= 0m)
            {
                inThem.Add((NoBoxes, 1m));
            }

            Money paid = Money.Sum(boxes.Select(part => part.Amount - part.Fee));
            Money[] split = LargestRemainder.Split(paid, inThem.ConvertAll(other => other.Weight));
            for (int i = 0; i < split.Length; i++)
            {
                changes[inThem[i].To] = changes.GetValueOrDefault(inThem[i].To) + split[i];
            }
        }

        return
        [
            .. others
                .Select(crop => crop.Name)
                .Append(NoBoxes)
                .Concat(gone.Select(crop => crop.Name))
                .Select(to => (to, changes.GetValueOrDefault(to)))
                .Where(move => move.Item2 != Money.Zero),
        ];
    }

    private static (Channel, int) BoxesOf(DispositionPart part) => (part.Disposition.Channel, part.Disposition.Window);

    private decimal ListValueIn((Channel, int) boxes, Crop crop) =>
        season.PartsOf(crop).Where(part => BoxesOf(part) == boxes).Sum(part => Math.Max(0m, part.ListValue.Amount));
}
