namespace FarmEconomics.DemoFarm;

/// <summary>What draws on the grid and on the field panels by season. The panels run field pump and cold room, nothing else.</summary>
internal static class Loads
{
    /// <summary>A load: watts while it runs, hours a day, from and to within a year.</summary>
    public sealed record Load(
        string Name, string Pool, string User, decimal Watts, decimal Hours, (int Month, int Day) From, (int Month, int Day) To)
    {
        /// <summary>Hours a day in a year: the field pump ran longer in the dry summer of 2025.</summary>
        public decimal HoursIn(int year) => Name == FieldPump && year == 2025 ? Hours + 0.5m : Hours;

        /// <summary>Kilowatt-hours in a stretch of days.</summary>
        public decimal Kwh(DateOnly first, DateOnly last)
        {
            var from = new DateOnly(first.Year, From.Month, From.Day);
            var to = new DateOnly(first.Year, To.Month, To.Day);
            var days = (to < last ? to : last).DayNumber - (from > first ? from : first).DayNumber + 1;
            return days <= 0 ? 0m : Watts * HoursIn(first.Year) * days / 1000m;
        }
    }

    private const string FieldPump = "Field pump, irrigation";

    public static readonly IReadOnlyList<Load> All =
    [
        new("Cold room compressor, spring", Pools.Panels, Pools.ColdRoom, 780m, 4m, (4, 15), (5, 31)),
        new("Cold room compressor, summer", Pools.Panels, Pools.ColdRoom, 780m, 8.5m, (6, 1), (9, 15)),
        new("Cold room compressor, autumn", Pools.Panels, Pools.ColdRoom, 780m, 3.5m, (9, 16), (11, 10)),
        new(FieldPump, Pools.Panels, Pools.Water, 750m, 2.4m, (5, 10), (9, 25)),
        new("Boiler auger, fan and pump, winter", Pools.Grid, Pools.Boiler, 170m, 13m, (1, 1), (5, 10)),
        new("Boiler auger, fan and pump, autumn", Pools.Grid, Pools.Boiler, 170m, 10m, (10, 5), (12, 31)),
        new("House well pump, wash water", Pools.Grid, Pools.PackShed, 750m, 0.4m, (3, 1), (12, 20)),
        new("Wash line and spinner", Pools.Grid, Pools.PackShed, 600m, 0.9m, (3, 15), (12, 20)),
        new("Pack shed lights", Pools.Grid, Pools.PackShed, 90m, 3m, (1, 1), (12, 31)),
        new("Seedling house fans", Pools.Grid, Pools.SeedlingHouse, 140m, 6m, (2, 10), (6, 15)),
        new("Seedling house bottom heat", Pools.Grid, Pools.SeedlingHouse, 900m, 5m, (2, 20), (4, 30)),
        new("Warm house fans", Pools.Grid, Pools.WarmHouse, 160m, 7m, (3, 15), (10, 15)),
        new("Long tunnel inflation fan", Pools.Grid, Pools.TunnelOne, 30m, 24m, (1, 1), (12, 31)),
        new("Tray room lights, late winter", Pools.Grid, Pools.TrayRoom, 240m, 10m, (2, 20), (3, 31)),
        new("Tray room lights, light months", Pools.Grid, Pools.TrayRoom, 240m, 6m, (4, 1), (9, 30)),
        new("Tray room lights, late", Pools.Grid, Pools.TrayRoom, 240m, 9m, (10, 1), (12, 20)),
        new("Office and chargers", Pools.Grid, Pools.Overhead, 60m, 5m, (1, 1), (12, 31)),
        new("House", Pools.Grid, "household", 260m, 24m, (1, 1), (12, 31)),
    ];

    /// <summary>What the utility's meter counts in a month.</summary>
    public static decimal GridKwh(int year, int month)
    {
        var (first, last) = (new DateOnly(year, month, 1), new DateOnly(year, month, DateTime.DaysInMonth(year, month)));
        return All.Where(load => load.Pool == Pools.Grid).Sum(load => load.Kwh(first, last));
    }

    public static CsvTable Table(out IReadOnlyDictionary<int, decimal> kwhByYear)
    {
        var t = new CsvTable("load", "pool", "user", "watts", "hours_per_day", "from", "to");
        var sums = new Dictionary<int, decimal>();
        foreach (var year in new[] { 2023, 2024, 2025, 2026 })
        {
            foreach (var load in All)
            {
                var from = new DateOnly(year, load.From.Month, load.From.Day);
                var to = new DateOnly(year, load.To.Month, load.To.Day);
                to = to > FarmFacts.AsOf ? FarmFacts.AsOf : to;
                if (from > to)
                {
                    continue;
                }

                t.Add(load.Name, load.Pool, load.User, load.Watts, load.HoursIn(year), from, to);
                sums[year] = sums.GetValueOrDefault(year) + load.Kwh(from, to);
            }
        }

        kwhByYear = sums;
        return t;
    }
}
