namespace FarmEconomics.Records;

/// <summary>Direct hours, all stages or one.</summary>
internal sealed class LaborHoursBasis() : BasisKind("labor-hours", "hours", "hours")
{
    public override bool TakesStage => true;

    internal override void Weigh(IBasisWeights weights, Basis basis) => weights.AddHours(basis.Stage);
}
