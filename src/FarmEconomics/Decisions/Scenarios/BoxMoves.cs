using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Avoidable;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
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
                copy.Add<ExpenseRow>(Bill(item.Day, item.Lost.Amount));
                continue;
            }

            copy.Add<SaleRow>(new()
            {
                ["date"] = item.Day,
                ["crop"] = crop.Name,
                ["channel"] = item.Share.Name,
                ["quantity"] = item.Quantity,
                ["amount"] = item.ListValue.Amount,
                Source = new SourceLine("boxes", 0),
            });
            if (item.From is { } part)
            {
                Shrink(copy, item, part.Disposition);
            }
        }
    }

    private static void Shrink(RecordsCopy copy, RefillItem item, Disposition leaving)
    {
        SaleRow row = leaving.Row;
        decimal? amount = copy.Value(row, SaleRow.AmountColumn);
        copy.Set(row, SaleRow.QuantityColumn, copy.Value(row, SaleRow.QuantityColumn) - (row.Quantity * item.Quantity / leaving.Quantity));
        if (item.Source == RefillSource.Household)
        {
            copy.Set(row, SaleRow.AmountColumn, (amount ?? leaving.ListValue.Amount) - item.Lost.Amount);
        }
        else if (item.Source == RefillSource.Sold)
        {
            decimal before = amount ?? leaving.Amount.Amount;
            decimal after = before - Money.Rounded(leaving.Amount.Amount * item.Quantity / leaving.Quantity).Amount;
            copy.Set(row, SaleRow.AmountColumn, after);

            // The sale and its fee go, and with them the packaging: what is left of the loss.
            decimal packaging = before - Fee(before) - (after - Fee(after)) - item.Lost.Amount;
            copy.Add<ExpenseRow>(Bill(item.Day, -packaging));
        }

        decimal Fee(decimal amount) => Money.Rounded(amount * (leaving.Channel.Row.FeePercent ?? 0m) / 100m).Amount;
    }

    private static RowValues Bill(DateOnly day, decimal amount) =>
        new() { ["date"] = day, ["amount"] = amount, ["category"] = "supplies", Source = new SourceLine("boxes", 0) };

    /// <summary>
    /// Values that rest on what was sold stay as reviewed, though less is sold. What a list price values isn't touched: with an amount of
    /// its own it would give a price to sales that have none.
    /// </summary>
    private static void Hold(FarmReview review, RecordsCopy copy, HashSet<Crop> crops)
    {
        foreach (
            Disposition leaving in review.Trace.Dispositions.Where(leaving =>
                crops.Contains(leaving.Crop) && leaving is { Quantity: > 0m, ValueIncomplete: false } && leaving.Row.Amount is null
            )
        )
        {
            if (review.Trace.Valuer.Prices.IsListed(leaving.Crop, leaving.Channel, leaving.Date))
            {
                continue;
            }

            if (
                leaving.Channel.Kind is ChannelKind.Household or ChannelKind.Share
                || (leaving.Channel.IsPriced && leaving.Row.UnitPrice is null)
            )
            {
                copy.Set(leaving.Row, SaleRow.AmountColumn, leaving.ListValue.Amount);
            }
        }
    }
}
