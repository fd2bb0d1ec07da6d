namespace FarmEconomics.ProvingGround.World;

/// <summary>
/// What a channel takes of a crop in an ordinary week. Up to q0 it sells at list price. Beyond, the price of the whole week's quantity
/// falls along a demand curve of constant elasticity: x = q / q0 units bring q0 p R(x) with R(x) = x^(1 - 1/e), dimensionless. Source:
/// the definition of the price elasticity of demand (OpenStax, Principles of Economics, ch. 5), integrated.
/// </summary>
/// <param name="Price">List price in this channel, $ a unit.</param>
/// <param name="Units">q0, units a week in an ordinary week.</param>
/// <param name="Elasticity">e, by size; at 1 and less nothing more is worth selling.</param>
/// <param name="MostTimes">x at which another unit no longer brings what picking, packing and packaging it cost; 1 to 2.5.</param>
internal sealed record Demand(double Price, double Units, double Elasticity, double MostTimes)
{
    /// <summary>Ends of the steps beyond q0, in times q0.</summary>
    internal static readonly double[] Ends = [1.0, 1.25, 1.6, 2.0, 2.5];

    /// <summary>R(x): revenue in units of q0 times list price; x itself up to 1.</summary>
    internal static double Revenue(double times, double elasticity) =>
        times <= 1.0 ? times : elasticity <= 1.0 ? 1.0 : Math.Pow(times, 1.0 - (1.0 / elasticity));

    /// <summary>What a unit of the step from a to b times q0 adds, as a part of list price: (R(b) - R(a)) / (b - a).</summary>
    internal static double Step(double from, double to, double elasticity) =>
        (Revenue(to, elasticity) - Revenue(from, elasticity)) / (to - from);
}
