namespace FarmEconomics.Records;

/// <summary>Bed-foot-days x water need.</summary>
internal sealed class WaterBasis() : BasisKind("water", "weighted bed-foot-days", "water")
{
    internal override void Weigh(IBasisWeights weights, Basis basis) =>
        weights.Each(planting => weights.BedFootDays(planting) is var days && days > 0m ? days * weights.WaterNeed(planting) : 0m);
}
