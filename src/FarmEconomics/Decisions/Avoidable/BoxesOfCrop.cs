using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tracing;

namespace FarmEconomics.Decisions.Avoidable;

/// <summary>
/// Boxes without a crop: payments stay, and what is in them must be filled again. Each planting has its part of that by the list value of
/// what it put into them.
/// </summary>
internal sealed class BoxesOfCrop
{
    private readonly ILookup<Enterprise, DispositionPart> parts;
    private readonly decimal refill;
    private readonly decimal listValue;

    internal BoxesOfCrop(SeasonCosts costs, EnterpriseBudget crop)
    {
        parts = costs
            .Season.PartsOf(crop.Crop!)
            .Where(part => part.Enterprise is not null && part.Disposition.Channel.Kind == ChannelKind.Share)
            .ToLookup(part => part.Enterprise!);
        refill = parts.Count == 0 ? 0m : costs.Avoidable.Without(crop).Refill.Total.Amount;
        listValue = parts.Sum(group => group.Sum(Value));
    }

    /// <summary>Filling the planting's part of the boxes again, less what of the payments, after fees, stands to its credit.</summary>
    internal decimal MoreThanPaid(Enterprise planting)
    {
        decimal again = listValue > 0m ? refill * parts[planting].Sum(Value) / listValue : 0m;
        return again - parts[planting].Sum(part => (part.Amount - part.Fee).Amount);
    }

    private static decimal Value(DispositionPart part) => Math.Max(0m, part.ListValue.Amount);
}
