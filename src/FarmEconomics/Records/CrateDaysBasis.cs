namespace FarmEconomics.Records;

/// <summary>Crates x days held in the store.</summary>
internal sealed class CrateDaysBasis() : BasisKind("crate-days", "crate-days", "crates and days held")
{
    internal override void Weigh(IBasisWeights weights, Basis basis) => weights.EachInCrates(weights.UnitDays);
}
