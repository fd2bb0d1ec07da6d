using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records.Checks;

/// <summary>The money that stands in a row, so that a skipped row's money can be told.</summary>
public static class RowMoney
{
    /// <summary>The money of a row, in the column its table declares; of a sale without an amount its price times its quantity.</summary>
    /// <param name="row">The row, read as far as it could be.</param>
    /// <returns>The amount in the farm's currency, or null when the row carries none.</returns>
    public static decimal? Of(IRecordRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        return ColumnOf(row)?.Maybe(row.Home, row.Index)
            ?? (
                row is SaleRow { UnitPrice: { } price, Quantity: var quantity }
                    ? Math.Round(price * quantity, 2, MidpointRounding.AwayFromZero)
                    : null
            );
    }

    private static NumberColumn? ColumnOf(IRecordRow row) =>
        (NumberColumn?)Array.Find(row.Home.Schema.Stored, column => column.Schema.Name == row.Home.Schema.Money);
}
