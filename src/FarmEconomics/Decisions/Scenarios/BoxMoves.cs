using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Avoidable;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Scenarios;

/// <summary>Moves produce into boxes: rows of the sales table shrink, and rows of the share come; what is bought in is paid for.</summary>
internal static class BoxMoves
{
    internal static void Apply(FarmReview review, RecordsCopy copy, IEnumerable<RefillItem> items, IReadOnlySet<Crop> gone)
    {
        List<RefillItem> all = [.. items];
        Hold(review, copy, [.. all.Select(item => item.Crop).OfType<Crop>().Where(crop => !gone.Contains(crop))]);
        foreach (RefillItem item in all)
        {
            if (item.Crop is not { } crop)
            {
                copy.Add(Bill(item.Day, item.Lost.Amount));
                continue;
            }

            copy.Add(new SaleRow { Date = item.Day, Crop = crop.Name, Channel = item.Share.Name, Quantity = item.Quantity, Amount = item.ListValue.Amount, Source = new SourceLine("boxes", 0) });
            if (item.From is { } part)
            {
                Shrink(copy, item, part.Leaving);
            }
        }
    }

    private static void Shrink(RecordsCopy copy, RefillItem item, Leaving leaving)
    {
        SaleRow row = copy.Change(leaving.Row);
        row.Quantity -= leaving.Row.Quantity * item.Quantity / leaving.Quantity;
        if (item.Source == RefillSource.Household)
        {
            row.Amount = (row.Amount ?? leaving.ListValue.Amount) - item.Lost.Amount;
        }
        else if (item.Source == RefillSource.Sold)
        {
            decimal before = row.Amount ?? leaving.Amount.Amount;
            decimal after = before - Money.Rounded(leaving.Amount.Amount * item.Quantity / leaving.Quantity).Amount;
            row.Amount = after;

            // The sale and its fee go, and with them the packaging: what is left of the loss.
            decimal packaging = before - Fee(before) - (after - Fee(after)) - item.Lost.Amount;
            copy.Add(Bill(item.Day, -packaging));
        }

        decimal Fee(decimal amount) => Money.Rounded(amount * (leaving.Channel.Row.FeePercent ?? 0m) / 100m).Amount;
    }

    private static ExpenseRow Bill(DateOnly day, decimal amount) => new() { Date = day, Amount = amount, Category = "supplies", Source = new SourceLine("boxes", 0) };

    /// <summary>Values that rest on what was sold stay as reviewed, though less is sold.</summary>
    private static void Hold(FarmReview review, RecordsCopy copy, HashSet<Crop> crops)
    {
        foreach (Leaving leaving in review.Trace.Leavings.Where(leaving => crops.Contains(leaving.Crop) && leaving is { Quantity: > 0m, ValueIncomplete: false } && leaving.Row.Amount is null))
        {
            if (leaving.Channel.Kind is ChannelKind.Household or ChannelKind.Share || (leaving.Channel.IsPriced && leaving.Row.UnitPrice is null))
            {
                copy.Change(leaving.Row).Amount = leaving.ListValue.Amount;
            }
        }
    }
}
