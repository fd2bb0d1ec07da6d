namespace FarmEconomics.Records.Checks;

/// <summary>The money that stands in a row, so that a skipped row's money can be told.</summary>
public static class RowMoney
{
    /// <summary>The money of a row.</summary>
    /// <param name="row">The row, read as far as it could be.</param>
    /// <returns>The amount in the farm's currency, or null when the row carries none.</returns>
    public static decimal? Of(IRecordRow row) => row switch
    {
        SaleRow { Amount: { } amount } => amount,
        SaleRow { UnitPrice: { } price, Quantity: var quantity } => Math.Round(price * quantity, 2, MidpointRounding.AwayFromZero),
        IncomeRow income => income.Amount,
        ExpenseRow expense => expense.Amount,
        LoanRow loan => loan.Principal,
        BalanceRow balance => balance.Amount,
        FundingRow funding => funding.Amount,
        AssetRow asset => asset.Cost,
        _ => null,
    };
}
