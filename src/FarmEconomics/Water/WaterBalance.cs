namespace FarmEconomics.Water;

/// <summary>
/// A sowing's balance of water with what was put on, day by day. It starts full on its first day. A day whose weather isn't known, or of
/// a week whose watering isn't, is taken as refilled, and nothing is told to have been missed on it.
/// </summary>
public sealed class WaterBalance
{
    private readonly RootZoneDay[] days;
    private readonly bool[] told;

    private WaterBalance(SowingWater sowing, WaterLog log, DateOnly end)
    {
        Sowing = sowing;
        int count = Math.Max(0, Math.Min(end.DayNumber, sowing.Span.End.DayNumber) - sowing.Span.From.DayNumber);
        (days, told) = (new RootZoneDay[count], new bool[count]);
        double depletion = 0;
        for (int i = 0; i < count; i++)
        {
            DateOnly day = sowing.Span.From.AddDays(i);
            told[i] = sowing.IsKnown(day) && !log.IsUnknown(sowing, day);
            days[i] = told[i] ? sowing.Next(day, depletion, log.On(sowing, day)) : default;
            depletion = days[i].After;
        }
    }

    /// <summary>The sowing.</summary>
    public SowingWater Sowing { get; }

    /// <summary>The days, from the sowing's first on.</summary>
    public IReadOnlyList<RootZoneDay> Days => days;

    /// <summary>What it missed on the days told, mm.</summary>
    public double MissedMm => Enumerable.Range(0, days.Length).Sum(Missed);

    /// <summary>Depletion on the evening of the last day, mm; 0 before the first.</summary>
    public double Depletion => days.Length > 0 ? days[^1].After : 0;

    /// <summary>Keeps the balance of a sowing.</summary>
    /// <param name="sowing">The sowing.</param>
    /// <param name="log">What was put on.</param>
    /// <param name="end">The first day that isn't looked at any more.</param>
    /// <returns>The balance.</returns>
    public static WaterBalance Of(SowingWater sowing, WaterLog log, DateOnly end)
    {
        ArgumentNullException.ThrowIfNull(sowing);
        ArgumentNullException.ThrowIfNull(log);
        return new WaterBalance(sowing, log, end);
    }

    /// <summary>True for a day that is told.</summary>
    /// <param name="index">Days since the first.</param>
    /// <returns>Whether weather and watering of it are known.</returns>
    public bool IsTold(int index) => told[index];

    /// <summary>What it missed on a day, mm; 0 on a day that isn't told.</summary>
    /// <param name="index">Days since the first.</param>
    /// <returns>mm.</returns>
    public double Missed(int index) => told[index] ? Sowing.Need(Sowing.Span.From.AddDays(index)) - days[index].Used : 0;
}
