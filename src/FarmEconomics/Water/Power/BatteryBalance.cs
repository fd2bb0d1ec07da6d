namespace FarmEconomics.Water.Power;

/// <summary>A battery with what charges it, day by day.</summary>
/// <param name="UsableKwh">What may be drawn of a full battery, kWh.</param>
/// <param name="ChargeEfficiency">What is stored of what goes in, above 0 to 1; nothing is lost on the way out.</param>
/// <param name="GeneratorKwhPerDay">What a generator can make in a day, kWh; 0 without one.</param>
public sealed record Battery(double UsableKwh, double ChargeEfficiency, double GeneratorKwhPerDay = 0);

/// <summary>A day of electricity, kWh.</summary>
/// <param name="Load">What was wanted.</param>
/// <param name="Made">What panels made.</param>
/// <param name="Direct">Of that, used at once.</param>
/// <param name="FromBattery">Drawn from the battery.</param>
/// <param name="Stored">What the battery took in, after the loss of charging.</param>
/// <param name="ChargeLoss">Lost in charging.</param>
/// <param name="Spilled">Made and of no use: the battery was full.</param>
/// <param name="Generated">Made by the generator.</param>
/// <param name="Short">Wanted and not there.</param>
/// <param name="Held">In the battery at the end of the day, above what may not be drawn.</param>
public readonly record struct PowerDay(
    double Load, double Made, double Direct, double FromBattery, double Stored, double ChargeLoss, double Spilled, double Generated,
        double Short, double Held)
{
    /// <summary>Not covered by sun and battery: generated or short.</summary>
    public double Missing => Generated + Short;
}

/// <summary>
/// The daily balance of panels and battery: panels serve the load first, then the battery does, then a generator; what panels make beyond
/// the load charges the battery, and above full it is spilled. Whole days, no hours: what a battery must carry through the night within a
/// day isn't seen. Serving at once is the optimum of the day-by-day linear program that lets as little as can be go short, since a kWh
/// kept back serves no more later.
/// </summary>
public static class BatteryBalance
{
    /// <summary>Runs the days.</summary>
    /// <param name="loads">Load by day, kWh.</param>
    /// <param name="made">What panels made by day, kWh; as many days.</param>
    /// <param name="battery">The battery on each day: its size may differ for a trial.</param>
    /// <returns>The days; the battery is full before the first.</returns>
    public static PowerDay[] Run(IReadOnlyList<double> loads, IReadOnlyList<double> made, Func<int, Battery> battery)
    {
        ArgumentNullException.ThrowIfNull(loads);
        ArgumentNullException.ThrowIfNull(made);
        ArgumentNullException.ThrowIfNull(battery);
        PowerDay[] days = new PowerDay[loads.Count];
        double held = days.Length > 0 ? battery(0).UsableKwh : 0;
        for (int i = 0; i < days.Length; i++)
        {
            days[i] = Day(loads[i], made[i], held, battery(i));
            held = days[i].Held;
        }

        return days;
    }

    private static PowerDay Day(double load, double made, double held, Battery battery)
    {
        double dropped = Math.Max(0, held - battery.UsableKwh);
        held -= dropped;
        double direct = Math.Min(load, made);
        double drawn = Math.Min(load - direct, held);
        double stored = Math.Min((made - direct) * battery.ChargeEfficiency, battery.UsableKwh - held + drawn);
        double taken = stored / battery.ChargeEfficiency;
        double missing = load - direct - drawn;
        double generated = Math.Min(missing, battery.GeneratorKwhPerDay);
        return new PowerDay(load, made, direct, drawn, stored, taken - stored, made - direct - taken
            + dropped, generated, missing - generated,
            held - drawn + stored);
    }
}
