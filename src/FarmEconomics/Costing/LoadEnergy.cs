using FarmEconomics.Records;

namespace FarmEconomics.Costing;

/// <summary>Energy of an electrical load.</summary>
public static class LoadEnergy
{
    /// <summary>kWh = watts x hours a day x days / 1000, over the days of the load that lie in a span, both ends included.</summary>
    /// <param name="row">The load.</param>
    /// <param name="from">First day of the span.</param>
    /// <param name="last">Last day of the span.</param>
    /// <returns>kWh, at least 0.</returns>
    public static decimal KilowattHours(LoadRow row, DateOnly from, DateOnly last) => row.KilowattHours(from, last);
}
