namespace FarmEconomics.Records;

/// <summary>The use and loads tables only.</summary>
internal sealed class MeasuredBasis() : BasisKind("measured", "measured units", "measured use")
{
    internal override void Weigh(IBasisWeights weights, Basis basis)
    {
        // What was measured is added to every basis.
    }
}
