namespace FarmEconomics.DemoFarm;

/// <summary>Equipment and buildings.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Pool">The pool it serves.</param>
/// <param name="Since">In service from.</param>
/// <param name="Cost">What it cost, US dollars.</param>
/// <param name="Life">Years it lasts.</param>
internal sealed record Asset(string Name, string Pool, DateOnly Since, decimal Cost, decimal Life)
{
    public decimal? Salvage { get; init; }

    public decimal? FarmPercent { get; init; }

    public decimal? Grant { get; init; }

    public decimal? Repairs { get; init; }

    public DateOnly? Retired { get; init; }

    /// <summary>The task it is for.</summary>
    public string? Task { get; init; }

    /// <summary>What it is for tax.</summary>
    public string Tax { get; init; } = "new-machinery";

    /// <summary>The farm's part of a year's straight-line depreciation; nothing before it stands or after it is gone.</summary>
    public decimal Depreciation(int year) =>
        Since.Year > year || Since.Year + Life < year || Retired?.Year <= year
            ? 0m
            : (Cost - (Grant ?? 0m) - (Salvage ?? 0m)) / Life * (FarmPercent ?? 100m) / 100m;
}

/// <summary>Buildings, machines, and the one thing retired and the one bought while the records run.</summary>
internal static class Assets
{
    public const string Washer = "Barrel root washer";
    public const decimal WasherCost = 2450m;
    public static readonly DateOnly WasherBought = new(2024, 6, 14);

    public const string Loan = "Boiler and panels note";
    public const string LoanFor = "Pellet boiler, hopper and pipes";

    public static readonly IReadOnlyList<Asset> All =
    [
        new("Field panels and mounts", Pools.Panels, new(2021, 9, 10), 5600m, 25m) { Grant = 1700m, Tax = "solar" },
        new("Panel battery and inverter", Pools.Panels, new(2021, 9, 10), 4100m, 12m) { Salvage = 300m, Tax = "solar" },
        new("Grid service and wiring", Pools.Grid, new(2019, 6, 1), 3400m, 30m) { Tax = "building" },
        new("Backup battery", Pools.Grid, new(2022, 2, 15), 2200m, 10m) { Salvage = 150m },
        new(LoanFor, Pools.Boiler, new(2021, 10, 20), 10900m, 20m) { Salvage = 600m },
        new("Seedling house", Pools.SeedlingHouse, new(2020, 3, 5), 6200m, 15m) { Tax = "greenhouse" },
        new("Pack shed", Pools.PackShed, new(2019, 6, 1), 11500m, 30m) { Repairs = 1m, Tax = "building" },
        new("Drum washer, second-hand", Pools.PackShed, new(2018, 5, 1), 900m, 8m)
        {
            Salvage = 100m,
            Retired = new(2024, 6, 20),
            Tax = "used-machinery",
        },
        new(Washer, Pools.PackShed, WasherBought, WasherCost, 12m) { Salvage = 250m, Task = "Wash and pack" },
        new("Salad spinner", Pools.PackShed, new(2022, 4, 12), 1100m, 10m),
        new("Cold room box", Pools.ColdRoom, new(2020, 5, 4), 4300m, 15m) { Tax = "building" },
        new("Cold room compressor", Pools.ColdRoom, new(2020, 5, 4), 1700m, 10m),
        new("Root cellar", Pools.RootCellar, new(2018, 10, 1), 5600m, 40m) { Repairs = 0.5m, Tax = "building" },
        new("Well and field pump", Pools.Water, new(2018, 5, 20), 7800m, 25m) { Tax = "land-improvement" },
        new("Sprinklers, drip lines and pipe", Pools.Water, new(2021, 5, 1), 1900m, 8m),
        new("Long tunnel", Pools.TunnelOne, new(2020, 4, 15), 7600m, 15m) { Salvage = 400m, Tax = "greenhouse" },
        new("Ridge tunnel", Pools.TunnelTwo, new(2021, 8, 30), 8100m, 15m) { Salvage = 400m, Tax = "greenhouse" },
        new("Warm house", Pools.WarmHouse, new(2022, 9, 15), 9800m, 15m) { Salvage = 500m, Tax = "greenhouse" },
        new("Tray racks and lights", Pools.TrayRoom, new(2022, 11, 1), 1350m, 7m),
        new("Hand tools, seeders, wheel hoes", Pools.Tools, new(2021, 3, 1), 3400m, 10m) { Salvage = 200m },
        new("Truck", Pools.Truck, new(2021, 6, 1), 15500m, 10m) { Salvage = 4000m, FarmPercent = 60m, Tax = "vehicle" },
    ];

    public static CsvTable Table()
    {
        var t = new CsvTable(
            "asset", "pool", "in_service", "cost", "life_years", "salvage", "farm_percent", "grant", "repairs_percent",
            "insurance_tax_percent", "retired", "tax_kind", "task");
        foreach (var a in All)
        {
            t.Add(
                a.Name,
                a.Pool,
                a.Since,
                CsvTable.Money(a.Cost),
                a.Life,
                a.Salvage,
                a.FarmPercent,
                a.Grant,
                a.Repairs,
                null,
                a.Retired,
                a.Tax,
                a.Task
            );
        }

        return t;
    }
}
