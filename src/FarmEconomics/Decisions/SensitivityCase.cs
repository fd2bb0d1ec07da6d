using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions;

/// <summary>A sensitivity named beforehand: price, yield and all variable cost as one block, each by a fraction.</summary>
/// <param name="Name">Its name.</param>
/// <param name="PriceChange">-0.30 is a price 30 % lower; above -1.</param>
/// <param name="YieldChange">-0.20 is a crop 20 % smaller; above -1.</param>
/// <param name="VariableCostChange">0.20 is a variable cost 20 % higher; above -1.</param>
/// <param name="Source">Where the rule comes from.</param>
public sealed record SensitivityCase(string Name, decimal PriceChange, decimal YieldChange, decimal VariableCostChange, string Source)
{
    /// <summary>
    /// The pessimistic rule for vegetable budgets at its limits: price -30 %, production -20 %, variable cost +20 %, taken as a one-in-ten
    /// case. Source: University of Kentucky, 2001 Kentucky Commercial Vegetable Production Budget Updates (New Crop Opportunities Center).
    /// Of its optimistic rule only "production +10 %" could be read, so there is none here.
    /// </summary>
    public static SensitivityCase Pessimistic { get; } =
        new("pessimistic", -0.30m, -0.20m, 0.20m, "University of Kentucky, 2001 Kentucky Commercial Vegetable Production Budget Updates");

    /// <summary>Receipts under the scenario.</summary>
    /// <param name="receipts">Receipts as they were.</param>
    /// <returns>Receipts x (1 + price change) x (1 + yield change), to the cent.</returns>
    public Money Receipts(Money receipts) => Money.Rounded(receipts.Amount * (1m + PriceChange) * (1m + YieldChange));

    /// <summary>Variable cost under the scenario: the whole block by the one factor, whatever it varies with.</summary>
    /// <param name="cost">Variable cost as it was.</param>
    /// <returns>The cost, to the cent.</returns>
    public Money VariableCost(Money cost) => Money.Rounded(cost.Amount * (1m + VariableCostChange));

    /// <summary>Net return of a budget under the scenario; fixed cost stays.</summary>
    /// <param name="model">The model.</param>
    /// <returns>The money, to the cent.</returns>
    public Money NetReturn(SensitivityModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        Money stays = model.Cost(CostDriver.Fixed) + model.Cost(CostDriver.Trips);
        return Receipts(model.Output) - VariableCost(Money.Sum(model.Lines.Select(line => line.Amount)) - stays) - stays;
    }
}
