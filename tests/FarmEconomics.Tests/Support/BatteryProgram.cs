using FarmEconomics.Water.Power;

namespace FarmEconomics.Tests.Support;

/// <summary>
/// The day-by-day linear program of a battery: the most load that sun and battery can serve, with nothing kept back by rule.
/// </summary>
internal static class BatteryProgram
{
    private const int Kinds = 4;

    /// <summary>Columns by day: used at once, into the battery, out of it, held at the end.</summary>
    internal static SmallProgram MostServed(double[] load, double[] made, Battery battery)
    {
        int days = load.Length;
        List<(double[] Row, double Limit)> limits = [];
        for (int day = 0; day < days; day++)
        {
            (int direct, int into, int from, int held) = (day * Kinds, (day * Kinds) + 1, (day * Kinds) + 2, (day * Kinds) + 3);
            limits.Add((Row(days, (direct, 1), (from, 1)), load[day]));
            limits.Add((Row(days, (direct, 1), (into, 1)), made[day]));
            limits.Add((Row(days, (held, 1)), battery.UsableKwh));
            limits.Add(day == 0
                ? (Row(days, (held, 1), (from, 1), (into, -battery.ChargeEfficiency)), battery.UsableKwh)
                : (Row(days, (held, 1), (from, 1), (into, -battery.ChargeEfficiency), (held - Kinds, -1)), 0));
        }

        return SmallProgram.Maximize([.. Enumerable.Range(0, days * Kinds).Select(i => i % Kinds is 0 or 2 ? 1.0 : 0.0)], limits);
    }

    private static double[] Row(int days, params (int Column, double Cell)[] cells)
    {
        double[] row = new double[days * Kinds];
        Array.ForEach(cells, cell => row[cell.Column] = cell.Cell);
        return row;
    }
}
