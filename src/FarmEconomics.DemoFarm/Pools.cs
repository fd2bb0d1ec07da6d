namespace FarmEconomics.DemoFarm;

/// <summary>The names of the shared costs.</summary>
internal static class Pools
{
    public const string Panels = "field panels";
    public const string Grid = "grid power";
    public const string Boiler = "pellet boiler";
    public const string SeedlingHouse = "seedling house";
    public const string PackShed = "pack shed";
    public const string ColdRoom = "cold room";
    public const string RootCellar = "root cellar";
    public const string Water = "well and sprinklers";
    public const string TunnelOne = "long tunnel";
    public const string TunnelTwo = "ridge tunnel";
    public const string WarmHouse = "warm house";
    public const string TrayRoom = "tray room";
    public const string Tools = "small tools";
    public const string Truck = "truck";
    public const string Overhead = "general overhead";
    public const string Seed = "seed and plants";
    public const string Fertility = "fertility and crop supplies";
    public const string Packaging = "packaging";
    public const string Nursery = "nursery supplies";

    /// <summary>Forty-pound bags of pellets the boiler burns in a year, by who gets the heat.</summary>
    public static IEnumerable<(string User, decimal Bags)> Pellets(int year)
    {
        var cold = year switch
        {
            2023 => 1.04m,
            2024 => 0.95m,
            2025 => 1m,
            _ => 0.28m,
        };
        foreach (
            var (user, bags) in new[]
            {
                (SeedlingHouse, 168m),
                (WarmHouse, 138m),
                (PackShed, 36m),
                (Grid, 10m),
                (TrayRoom, 44m),
                ("household", 104m),
            }
        )
        {
            yield return (user, Math.Round(bags * cold, MidpointRounding.AwayFromZero));
        }
    }

    public static CsvTable Table()
    {
        var t = new CsvTable("pool", "basis", "statement_line", "structure", "capacity", "varies_with");
        // Two and a half kilowatts of panels lying nearly flat: what they give from April to November, when pump and cold room can use it.
        t.Add(Panels, "measured", "infrastructure", null, 2450m, "fixed");
        t.Add(Grid, "measured", "infrastructure", null, null, "fixed");
        t.Add(Boiler, "measured", "infrastructure", null, 700m, "fixed");
        t.Add(SeedlingHouse, "tray-days", "infrastructure", null, null, "fixed");
        t.Add(PackShed, "quantity-crates", "infrastructure", null, null, "fixed");
        t.Add(ColdRoom, "crate-days", "infrastructure", null, null, "fixed");
        t.Add(RootCellar, "crate-days", "infrastructure", null, null, "fixed");
        t.Add(Water, "water", "infrastructure", null, null, "length");
        t.Add(TunnelOne, "bed-foot-days", "infrastructure", Beds.TunnelOne, null, "fixed");
        t.Add(TunnelTwo, "bed-foot-days", "infrastructure", Beds.TunnelTwo, null, "fixed");
        t.Add(WarmHouse, "bed-foot-days", "infrastructure", Beds.WarmHouse, null, "fixed");
        t.Add(TrayRoom, "bed-foot-days", "infrastructure", Beds.Rack, null, "fixed");
        t.Add(Tools, "labor-hours", "infrastructure", null, null, "length");
        // A van drives to market whatever is in it: its cost goes when a way of selling ends, not with one crop.
        t.Add(Truck, "sales-value", "selling", null, null, "trips");
        t.Add(Seed, "input-rates", "materials", null, null, "length");
        t.Add(Nursery, "tray-days", "materials", null, null, "length");
        t.Add(Fertility, "bed-feet", "materials", null, null, "length");
        t.Add(Packaging, "input-rates", "selling", null, null, "quantity");
        t.Add(Overhead, "bed-foot-days", "overhead", null, null, "fixed");
        return t;
    }

    public static CsvTable Use()
    {
        var t = new CsvTable("pool", "user", "quantity", "crop_year");
        foreach (var year in new[] { 2023, 2024, 2025, 2026 })
        {
            foreach (var (user, bags) in Pellets(year))
            {
                t.Add(Boiler, user, bags, year);
            }

            // The household keeps its own potatoes, apples and jars in the cellar: fifteen crates over the winter months.
            t.Add(RootCellar, "household", year == 2026 ? 850m : 2700m, year);
        }

        return t;
    }
}
