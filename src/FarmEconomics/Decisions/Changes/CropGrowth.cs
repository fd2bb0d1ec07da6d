using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Avoidable;
using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Changes;

/// <summary>More of a crop: what the channels take of it, and what it costs. Payments for shares and household use don't grow.</summary>
internal sealed class CropGrowth
{
    private readonly AvoidableCost costs;
    private readonly EnterpriseBudget crop;
    private readonly ChannelDemand demand;
    private readonly decimal ofBeds;
    private readonly decimal ofUnits;
    private readonly decimal onHandElasticity;
    private readonly bool everSold;

    // Mixes are tried by the hundred, most of them at lengths another has tried before.
    private readonly Dictionary<decimal, decimal> gainsToday = [];

    internal CropGrowth(SeasonCosts costs, EnterpriseBudget crop, decimal? elasticity)
    {
        this.costs = costs.Avoidable;
        this.crop = crop;
        onHandElasticity = Math.Abs(elasticity ?? MarketTerms.UsualElasticity);
        everSold = costs.Avoidable.SalesOf(crop.Crop!).Channels.Count > 0;
        demand = new ChannelDemand(costs.Season, crop.Crop!, costs.Avoidable.SalesOf(crop.Crop!), elasticity);
        foreach (CostLine line in costs.Of(crop).Where(line => line.IsAvoidable && !line.IsFee))
        {
            _ = line.VariesWith == CostDriver.Units ? ofUnits += line.Amount.Amount : ofBeds += line.Amount.Amount;
        }
    }

    private CropGrowth(CropGrowth same, decimal? elasticity)
    {
        (costs, crop, ofBeds, ofUnits, everSold) = (same.costs, same.crop, same.ofBeds, same.ofUnits, same.everSold);
        demand = same.demand.At(elasticity);
        onHandElasticity = Math.Abs(elasticity ?? MarketTerms.UsualElasticity);
    }

    /// <summary>The same crop at another elasticity.</summary>
    internal CropGrowth At(decimal? elasticity) => new(this, elasticity);

    /// <summary>Half as much again is 0.5.</summary>
    internal decimal Growth(decimal feet) => feet / crop.Sums.BedFeet.Value;

    /// <summary>What so many bed-feet more sell, after others that are there already.</summary>
    internal MoreSold Sold(decimal feet, decimal before = 0m) =>
        demand.Of(Growth(before + feet)) - demand.Of(Growth(before));

    /// <summary>What so many bed-feet more add to the farm's net return, beyond what channels took before by elasticity;
    /// unrounded.</summary>
    /// <param name="feet">Bed-feet more.</param>
    internal decimal Gain(decimal feet) => GainOf(feet, todaysPriceOnly: false);

    /// <summary>The same as far as channels took as much before, at today's price; worked out once for a length.</summary>
    /// <param name="feet">Bed-feet more.</param>
    internal decimal GainToday(decimal feet)
    {
        if (!gainsToday.TryGetValue(feet, out decimal gain))
        {
            gainsToday[feet] = gain = GainOf(feet, todaysPriceOnly: true);
        }

        return gain;
    }

    private decimal GainOf(decimal feet, bool todaysPriceOnly)
    {
        decimal growth = Growth(feet);
        MoreSold more = demand.Of(growth, todaysPriceOnly);
        decimal onHand = todaysPriceOnly ? 0m : OnHand(feet, 0m).Worth;
        return more.Amount - more.Fees + onHand - (ofBeds * growth) - (ofUnits * UnitsPart(more));
    }

    /// <summary>
    /// What is more on hand at the closing date, and what it is worth; it goes below today's price. Nobody is known to take more of what no
    /// channel ever took.
    /// </summary>
    /// <param name="feet">Bed-feet more.</param>
    /// <param name="before">Bed-feet more that are there already.</param>
    internal (decimal Units, decimal NotTaken, decimal Worth) OnHand(decimal feet, decimal before)
    {
        (decimal taken, decimal worth) = everSold ? ChannelDemand.MoreOnHand(Growth(before + feet), onHandElasticity) : default;
        (decimal earlier, decimal worthEarlier) = everSold ? ChannelDemand.MoreOnHand(Growth(before), onHandElasticity) : default;
        decimal units = crop.Sums.OnHand;
        return (
            units * (taken - earlier),
            units * (Growth(feet) - (taken - earlier)),
            crop.Sums.ClosingStock.Amount * (worth - worthEarlier));
    }

    internal IEnumerable<PartialBudgetLine> Returns(decimal feet, decimal before)
    {
        PartialBudgetLine[] lines =
        [
            new($"{crop.Name}: more sales", Money.Rounded(Sold(feet, before).Amount)),
            new($"{crop.Name}: more stock on hand", Money.Rounded(OnHand(feet, before).Worth), Means.Value),
        ];
        return lines.Where(line => line.Amount != Money.Zero);
    }

    internal IEnumerable<PartialBudgetLine> Costs(decimal feet, decimal before)
    {
        MoreSold more = Sold(feet, before);
        Money fees = Money.Rounded(more.Fees);
        return costs.CostsOf(crop, Growth(feet), line => line.VariesWith != CostDriver.Units)
            .Concat(costs.CostsOf(crop, UnitsPart(more), line => line.VariesWith == CostDriver.Units))
            .Concat(fees == Money.Zero ? [] : [new PartialBudgetLine($"{crop.Name}: channel fees", fees)]);
    }

    private decimal UnitsPart(MoreSold more) => crop.Sums.Sold > 0m ? more.Quantity / crop.Sums.Sold : 0m;
}
