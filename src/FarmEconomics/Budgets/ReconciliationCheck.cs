namespace FarmEconomics.Budgets;

/// <summary>One proof that nothing was lost: two sums worked out by different ways.</summary>
/// <param name="Check">What is compared.</param>
/// <param name="Left">The records' side.</param>
/// <param name="Right">The results' side.</param>
public sealed record ReconciliationCheck(string Check, decimal Left, decimal Right)
{
    /// <summary>
    /// Left less right; 0 when nothing was lost. Hours and quantities to 4 decimals, since shares of them are not rounded.
    /// </summary>
    public decimal Difference => decimal.Round(Left - Right, 4, MidpointRounding.AwayFromZero);

    /// <summary>True when nothing was lost.</summary>
    public bool Holds => Difference == 0m;
}
