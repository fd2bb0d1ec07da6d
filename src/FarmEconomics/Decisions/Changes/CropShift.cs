using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Changes;

/// <summary>One crop's part of a change: all of it goes, some goes, or more comes, in proportion to its bed-feet.</summary>
/// <param name="Model">The crop as it was.</param>
/// <param name="Growth">-1: all goes; -0.25: a quarter goes; 0.5: half as much again.</param>
/// <param name="PriceFactor">What the whole crop's price is multiplied by afterwards.</param>
internal sealed record CropShift(WhatIfModel Model, decimal Growth, decimal PriceFactor)
{
    /// <summary>Returns that come or go with the area, at the price afterwards.</summary>
    internal IEnumerable<PartialBudgetLine> Returns()
    {
        decimal part = Math.Abs(Growth) * PriceFactor;
        yield return new PartialBudgetLine($"{Model.Name}: sales, shares and stock", Money.Rounded(Model.MarketOutput.Amount * part));
        if (Model.Household != Money.Zero)
        {
            yield return new PartialBudgetLine($"{Model.Name}: household use at list value", Money.Rounded(Model.Household.Amount * part), NonCash: true);
        }
    }

    /// <summary>What the lower price takes from what was sold before.</summary>
    internal IEnumerable<PartialBudgetLine> Softened()
    {
        Money lost = Money.Rounded(Model.MarketOutput.Amount * (1m - PriceFactor));
        if (lost != Money.Zero)
        {
            yield return new PartialBudgetLine($"{Model.Name}: lower price on what was sold before", lost);
        }

        // No money changes hands for what the household eats, so its lower value is no cash lost.
        Money eaten = Money.Rounded(Model.Household.Amount * (1m - PriceFactor));
        if (eaten != Money.Zero)
        {
            yield return new PartialBudgetLine($"{Model.Name}: lower list value of what the household ate before", eaten, NonCash: true);
        }
    }

    /// <summary>The channels' fees, percentages of the sale, fall with the lower price; no other cost does.</summary>
    internal IEnumerable<PartialBudgetLine> SoftenedCosts()
    {
        Money saved = Money.Rounded(Model.Lines.Where(line => line.IsFee).Sum(line => line.Amount.Amount) * (1m - PriceFactor));
        if (saved != Money.Zero)
        {
            yield return new PartialBudgetLine($"{Model.Name}: fees of the lower price", saved);
        }
    }

    /// <summary>Avoidable costs that come or go, by name.</summary>
    internal IEnumerable<PartialBudgetLine> Costs() => Model.Lines.Where(line => line.IsAvoidable)
        .GroupBy(line => (line.Name, NonCash: line.Stream is CostStream.OwnerLabor or CostStream.Ownership))
        .Select(group => new PartialBudgetLine($"{Model.Name}: {group.Key.Name}", Money.Rounded(group.Sum(line => line.Amount.Amount * (line.IsFee ? PriceFactor : 1m)) * Math.Abs(Growth)), group.Key.NonCash))
        .Where(line => line.Amount != Money.Zero).OrderByDescending(line => line.Amount.Amount).ThenBy(line => line.Name, StringComparer.Ordinal);

    /// <summary>The part of the fixed cost that full costing would add or take away with the area.</summary>
    internal decimal FixedPart => Growth * Model.Cost(VariesWith.Nothing).Amount;
}
