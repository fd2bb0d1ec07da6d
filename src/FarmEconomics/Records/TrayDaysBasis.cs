namespace FarmEconomics.Records;

/// <summary>Trays x days from sowing to bed.</summary>
internal sealed class TrayDaysBasis() : BasisKind("tray-days", "tray-days", "trays and days")
{
    internal override void Weigh(IBasisWeights weights, Basis basis) => weights.Each(weights.TrayDays);
}
