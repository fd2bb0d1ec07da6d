namespace FarmEconomics.Records;

/// <summary>Days on which something was picked.</summary>
/// <remarks>
/// For work that a batch takes, large or small: setting up and cleaning the washing line, a trip to the far beds.
/// A batch-level cost driver: R. Cooper and R. S. Kaplan, Profit Priorities from Activity-Based Costing, Harvard Business Review 69(3),
/// 1991 (from memory).
/// </remarks>
internal sealed class HarvestDaysBasis() : BasisKind("harvest-days", "harvest-days", "days of harvest")
{
    internal override void Weigh(IBasisWeights weights, Basis basis) => weights.Each(weights.HarvestDays);
}
