namespace FarmEconomics.Records;

/// <summary>Crates picked.</summary>
internal sealed class QuantityCratesBasis() : BasisKind("quantity-crates", "crates", "crates")
{
    internal override void Weigh(IBasisWeights weights, Basis basis) => weights.EachInCrates(weights.Harvested);
}
