namespace FarmEconomics.DemoFarm;

/// <summary>The farm's own categories; the tax line is a label for whoever prepares the return.</summary>
internal static class Categories
{
    /// <summary>The class of each category.</summary>
    public static IReadOnlyDictionary<string, string> Classes() =>
        Table()
            .ToString()
            .Split('\n', StringSplitOptions.RemoveEmptyEntries)
            .Skip(1)
            .Select(line => line.Split(','))
            .ToDictionary(f => f[0], f => f[1]);

    public static CsvTable Table()
    {
        var t = new CsvTable("category", "class", "statement_line", "tax_line", "pool", "varies_with");
        t.Add("seed", "operating", "materials", "Seeds and plants", Pools.Seed, "length");
        t.Add("plants", "operating", "materials", "Seeds and plants", Pools.Seed, "length");
        t.Add("potting mix", "operating", "materials", "Supplies", Pools.Nursery, "length");
        t.Add("compost and minerals", "operating", "materials", "Fertilizers and lime", Pools.Fertility, "length");
        t.Add("row cover and twine", "operating", "materials", "Supplies", Pools.Fertility, "length");
        t.Add("packaging", "operating", "selling", "Supplies", Pools.Packaging, "quantity");
        t.Add("stall rent", "operating", "selling", "Rent or lease, other", null, "fixed");
        t.Add("market supplies", "operating", "selling", "Supplies", null, "units");
        t.Add("small tools", "operating", "infrastructure", "Supplies", Pools.Tools, "length");
        t.Add("repairs", "operating", "infrastructure", "Repairs and maintenance", Pools.Overhead, "fixed");
        t.Add("fuel", "operating", "selling", "Gasoline, fuel, and oil", Pools.Truck, "trips");
        t.Add("truck upkeep", "operating", "selling", "Car and truck expenses", Pools.Truck, "trips");
        t.Add("pellets", "operating", "infrastructure", "Utilities", Pools.Boiler, "fixed");
        t.Add("electricity", "operating", "infrastructure", "Utilities", Pools.Grid, "fixed");
        t.Add("propane", "operating", "infrastructure", "Utilities", Pools.WarmHouse, "fixed");
        t.Add("insurance", "operating", "overhead", "Insurance (other than health)", Pools.Overhead, "fixed");
        t.Add("certification and dues", "operating", "overhead", "Other expenses", Pools.Overhead, "fixed");
        t.Add("office and bookkeeping", "operating", "overhead", "Other expenses", Pools.Overhead, "fixed");
        t.Add("phone and internet", "operating", "overhead", "Utilities", Pools.Overhead, "fixed");
        t.Add("website and card reader", "operating", "selling", "Other expenses", null, "fixed");
        t.Add("ground rent", "operating", "overhead", "Rent or lease, other", Pools.Overhead, "fixed");
        t.Add("land tax", "operating", "overhead", "Taxes", Pools.Overhead, "fixed");
        t.Add("season loan interest", "operating", "overhead", "Interest, other", Pools.Overhead, "fixed");
        t.Add("wages", "labor", "labor", "Labor hired", null, null);
        t.Add("payroll taxes", "labor", "labor", "Taxes", null, null);
        t.Add("note interest", "interest", null, "Interest, other", null, null);
        t.Add("note principal", "principal", null, null, null, null);
        t.Add("season loan principal", "principal", null, null, null, null);
        t.Add("equipment", "capital", null, "Depreciation", null, null);
        t.Add("income tax", "tax", null, null, null, null);
        t.Add("self-employment tax", "tax", null, null, null, null);
        t.Add("household draw", "personal", null, null, null, null);
        return t;
    }
}
