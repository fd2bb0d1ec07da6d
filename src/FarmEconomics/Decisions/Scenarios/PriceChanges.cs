using FarmEconomics.Records;

namespace FarmEconomics.Decisions.Scenarios;

/// <summary>
/// A change of prices: the money of sales rows that carry any, and the list prices that value the goods that carry none. A price is per
/// unit of the crop; a row in another unit gets the price of that unit. Quantities stay, and so does what members of a share pay.
/// </summary>
internal static class PriceChanges
{
    internal static void Apply(RecordsCopy copy, ScenarioChange change)
    {
        FarmRecords records = copy.Original;
        Crop? crop = change.Scope == ScenarioScope.Crop ? records.Crop(change.Name!) : null;
        Channel? channel = change.Channel is null ? null : records.Channel(change.Channel);
        foreach (SaleRow row in records.Tables.Sales)
        {
            Channel through = records.Channel(row.Channel);
            if ((crop is null || records.Crop(row.Crop) == crop) && (channel is null || through == channel))
            {
                Sale(copy, row, through, records.Crop(row.Crop), change.Step);
            }
        }

        foreach (PriceRow row in records.Tables.Prices)
        {
            Channel? of = string.IsNullOrWhiteSpace(row.Channel) ? null : records.Channel(row.Channel);
            if (row.Reference != true && (crop is null || records.Crop(row.Crop) == crop) && (channel is null || of == channel))
            {
                copy.Set(row, PriceRow.PriceColumn, change.Step.IsPercent
                    ? copy.Value(row, PriceRow.PriceColumn) * change.Step.Factor
                    : change.Step.Number * records.Crop(row.Crop).ToBase(1m, row.Unit));
            }
        }
    }

    /// <summary>True for a row that carries money, or a value, of its own.</summary>
    internal static bool HasMoney(SaleRow row) => row.Amount is not null || row.UnitPrice is not null;

    private static void Sale(RecordsCopy copy, SaleRow row, Channel through, Crop crop, ScenarioStep step)
    {
        if (through.Kind is ChannelKind.Donation or ChannelKind.Waste)
        {
            return;
        }

        if (step.IsPercent)
        {
            if (copy.Value(row, SaleRow.AmountColumn) is not null || copy.Value(row, SaleRow.UnitPriceColumn) is not null)
            {
                copy.Scale(row, SaleRow.AmountColumn, step.Factor);
                copy.Scale(row, SaleRow.UnitPriceColumn, step.Factor);
            }

            return;
        }

        // A credit has no price, and goods of a share or the household's take their list price.
        if (row.Amount < 0m || row.Quantity <= 0m || (!HasMoney(row) && !through.IsPriced))
        {
            return;
        }

        copy.Set(row, SaleRow.UnitPriceColumn, step.Number * crop.ToBase(1m, row.Unit));
        copy.Set(row, SaleRow.AmountColumn, null);
    }
}
