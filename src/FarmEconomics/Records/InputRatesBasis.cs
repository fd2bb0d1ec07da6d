namespace FarmEconomics.Records;

/// <summary>Quantities x the weight the table of rates gives them.</summary>
internal sealed class InputRatesBasis() : BasisKind("input-rates", "weighted units", "what each planting takes")
{
    internal override void Weigh(IBasisWeights weights, Basis basis) => weights.AddRates();
}
