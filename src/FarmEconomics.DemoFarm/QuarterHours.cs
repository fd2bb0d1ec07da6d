namespace FarmEconomics.DemoFarm;

/// <summary>
/// Minutes become the quarter hours people write down; what is left over waits for the next time, so that nothing is lost.
/// </summary>
internal sealed class QuarterHours
{
    private readonly Dictionary<string, decimal> waiting = [];

    public decimal Write(string key, decimal minutes)
    {
        var all = waiting.GetValueOrDefault(key) + minutes;
        var hours = Math.Floor(all / 15m) / 4m;
        waiting[key] = all - (hours * 60m);
        return hours;
    }
}
