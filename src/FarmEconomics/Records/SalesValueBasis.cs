namespace FarmEconomics.Records;

/// <summary>Sales value.</summary>
internal sealed class SalesValueBasis() : BasisKind("sales-value", "sales value", "sales")
{
    internal override void Weigh(IBasisWeights weights, Basis basis) => weights.EachBySales();
}
