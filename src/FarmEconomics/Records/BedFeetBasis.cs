namespace FarmEconomics.Records;

/// <summary>Bed-feet planted.</summary>
internal sealed class BedFeetBasis() : BasisKind("bed-feet", "bed-feet", "length of bed")
{
    internal override void Weigh(IBasisWeights weights, Basis basis) => weights.Each(weights.BedFeet);
}
