namespace FarmEconomics.Records;

/// <summary>Bed-feet x days in bed.</summary>
internal sealed class BedFootDaysBasis() : BasisKind("bed-foot-days", "bed-foot-days", "length of bed and days in it")
{
    internal override void Weigh(IBasisWeights weights, Basis basis) => weights.Each(weights.BedFootDays);
}
