namespace FarmEconomics.DemoFarm;

/// <summary>What lasts: buildings, machines, and the one thing retired and the one bought while the records run.</summary>
internal static class Assets
{
    public const string Washer = "Barrel root washer";
    public const decimal WasherCost = 2450m;
    public static readonly DateOnly WasherBought = new(2024, 6, 14);

    public const string Loan = "Panels and boiler note";

    public static CsvTable Table()
    {
        var t = new CsvTable(
            "asset", "pool", "in_service", "cost", "life_years", "salvage", "farm_percent", "grant", "repairs_percent", "insurance_tax_percent", "retired");
        void Add(string asset, string pool, DateOnly since, decimal cost, decimal life, decimal? salvage = null, decimal? farm = null, decimal? grant = null, decimal? repairs = null, DateOnly? retired = null) =>
            t.Add(asset, pool, since, CsvTable.Money(cost), life, salvage, farm, grant, repairs, null, retired);

        Add("Solar panels and mounts", Pools.Solar, new(2021, 9, 10), 13800m, 25m, grant: 4200m);
        Add("Battery bank and inverter", Pools.Solar, new(2021, 9, 10), 9600m, 12m, salvage: 600m);
        Add("Wood boiler and pipes", Pools.Boiler, new(2021, 10, 20), 9400m, 20m, salvage: 500m);
        Add("Seedling house", Pools.SeedlingHouse, new(2020, 3, 5), 6200m, 15m);
        Add("Pack shed", Pools.PackShed, new(2019, 6, 1), 11500m, 30m, repairs: 1m);
        Add("Drum washer, second-hand", Pools.PackShed, new(2018, 5, 1), 900m, 8m, salvage: 100m, retired: new(2024, 6, 20));
        Add(Washer, Pools.PackShed, WasherBought, WasherCost, 12m, salvage: 250m);
        Add("Salad spinner", Pools.PackShed, new(2022, 4, 12), 1100m, 10m);
        Add("Cold room box", Pools.ColdRoom, new(2020, 5, 4), 4300m, 15m);
        Add("Cold room compressor", Pools.ColdRoom, new(2020, 5, 4), 1700m, 10m);
        Add("Root cellar", Pools.RootCellar, new(2018, 10, 1), 5600m, 40m, repairs: 0.5m);
        Add("Well and pump", Pools.Water, new(2018, 5, 20), 7800m, 25m);
        Add("Sprinklers and pipe", Pools.Water, new(2021, 5, 1), 1500m, 8m);
        Add("Long tunnel", Pools.TunnelOne, new(2020, 4, 15), 7600m, 15m, salvage: 400m);
        Add("Ridge tunnel", Pools.TunnelTwo, new(2021, 8, 30), 8100m, 15m, salvage: 400m);
        Add("Warm house", Pools.WarmHouse, new(2022, 9, 15), 9800m, 15m, salvage: 500m);
        Add("Tray racks and lights", Pools.TrayRoom, new(2022, 11, 1), 1350m, 7m);
        Add("Hand tools, seeders, wheel hoes", Pools.Tools, new(2021, 3, 1), 3400m, 10m, salvage: 200m);
        Add("Truck", Pools.Truck, new(2021, 6, 1), 15500m, 10m, salvage: 4000m, farm: 60m);
        return t;
    }
}
