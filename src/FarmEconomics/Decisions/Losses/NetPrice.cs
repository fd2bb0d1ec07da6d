using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;

namespace FarmEconomics.Decisions.Losses;

/// <summary>
/// What a unit of a crop brings net of packing and fees: average price, less the channels' fees on it, less packing. Packing = hours of
/// stage pack at what an hour of the crop cost, over the units picked,
/// and the selling costs that vary with quantity (bags, boxes, labels), over the units sold.
/// </summary>
internal sealed class NetPrice
{
    internal NetPrice(SeasonCosts costs, EnterpriseBudget crop)
    {
        WhyUnknown = crop.AveragePrice.Reason ?? crop.Known.Costs ?? crop.Known.Hours ?? crop.Known.LaborCost ?? crop.Known.OwnerLabor;
        if (WhyUnknown is not null)
        {
            return;
        }

        BudgetSums sums = crop.Sums;
        Price = crop.AveragePrice.Value!.Value;
        FeePerUnit = sums.SoldFees.Amount / sums.Sold;
        decimal hour = crop.LaborHours.Value > 0m ? crop.LaborCost.Amount / crop.LaborHours.Value : 0m;
        decimal packing = sums.Harvested > 0m ? sums.HoursByStage[(int)Stage.Pack] * hour / sums.Harvested : 0m;
        decimal packaging = costs.Of(crop).Where(IsPackaging).Sum(line => line.Amount.Amount) / sums.Sold;
        PackingPerUnit = packing + packaging;
    }

    /// <summary>Why a unit has no price; null where it has one.</summary>
    internal string? WhyUnknown { get; }

    internal decimal Price { get; }

    internal decimal FeePerUnit { get; }

    internal decimal PackingPerUnit { get; }

    private static bool IsPackaging(CostLine line) =>
        line is { Line: BudgetLine.Selling, VariesWith: CostDriver.Quantity, IsFee: false, Stream: CostStream.Cash };
}
