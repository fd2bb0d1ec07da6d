namespace FarmEconomics.Records;

/// <summary>What an electrical load draws.</summary>
public static class LoadUse
{
    /// <summary>kWh = watts x hours a day x days / 1000, over the days of the load that lie in a span, both ends included.</summary>
    /// <param name="row">The load.</param>
    /// <param name="from">First day of the span.</param>
    /// <param name="last">Last day of the span.</param>
    /// <returns>kWh, at least 0.</returns>
    public static decimal KilowattHours(this LoadRow row, DateOnly from, DateOnly last)
    {
        DateOnly start = row.From > from ? row.From : from;
        DateOnly end = row.To < last ? row.To : last;
        return row.Watts * row.HoursPerDay * Math.Max(0, end.DayNumber - start.DayNumber + 1) / 1000m;
    }
}
