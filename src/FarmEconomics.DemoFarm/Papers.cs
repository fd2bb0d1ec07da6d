namespace FarmEconomics.DemoFarm;

/// <summary>The small tables: settings, channels, limits, balance sheet, funding request, standards, control totals.</summary>
internal static class Papers
{
    private const decimal MarketFee = 6m;
    private const decimal CardFee = 3m;

    public static CsvTable Farm()
    {
        var t = new CsvTable("setting", "value");
        t.Add("farm_name", FarmFacts.FarmName);
        t.Add("currency", "USD");
        t.Add("crop_year_start", "01-01");
        t.Add("owner_wage", "16");
        t.Add("payroll_burden_percent", "9.75");
        t.Add("interest_percent", "5");
        t.Add("standard_bed_width_in", Beds.Width);
        t.Add("as_of", FarmFacts.AsOf);
        SolarLogger.AddSettings(t);
        return t;
    }

    public static CsvTable Channels()
    {
        var t = new CsvTable("channel", "kind", "fee_percent", "values_from");
        t.Add(FarmFacts.Market, "market", MarketFee, null);
        t.Add(FarmFacts.MarketTwo, "market", null, FarmFacts.Market);
        t.Add(FarmFacts.Share, "share", null, FarmFacts.Market);
        t.Add(FarmFacts.Shop, "wholesale", null, null);
        t.Add(FarmFacts.Schools, "wholesale", null, null);
        t.Add(FarmFacts.Pickup, "stand", CardFee, FarmFacts.Market);
        t.Add(FarmFacts.Household, "household", null, FarmFacts.Market);
        t.Add(FarmFacts.Donation, "donation", null, FarmFacts.Market);
        t.Add(FarmFacts.Compost, "waste", null, FarmFacts.Market);
        t.Add(FarmFacts.Workshops, "other", null, null);
        return t;
    }

    /// <summary>What the channel keeps of a sale, to the cent.</summary>
    public static decimal Fee(SalesBook.Sale sale)
    {
        var percent = sale.Channel switch { FarmFacts.Market => MarketFee, FarmFacts.Pickup => CardFee, _ => 0m };
        return Math.Round((sale.Money ?? 0m) * percent / 100m, 2, MidpointRounding.AwayFromZero);
    }

    public static CsvTable Tasks()
    {
        var t = new CsvTable("task", "stage", "pool");
        t.Add("Sow trays", "nursery", null);
        t.Add("Water seedlings", "nursery", Pools.SeedlingHouse);
        t.Add("Prepare and sow", "grow", null);
        t.Add("Transplant", "grow", null);
        t.Add("Weed", "grow", null);
        t.Add("Trellis and prune", "grow", null);
        t.Add("Water trays", "grow", null);
        t.Add("Put beds to rest", "grow", null);
        t.Add("Move sprinklers", "grow", null);
        t.Add("Harvest", "harvest", null);
        t.Add("Wash and pack", "pack", null);
        t.Add("Market day", "sell", null);
        t.Add("Fill and hand out boxes", "sell", null);
        t.Add("Deliver", "sell", null);
        t.Add("Pack orders", "sell", null);
        t.Add("Fill the hopper", "overhead", Pools.Boiler);
        t.Add("Clear snow", "overhead", null);
        t.Add("Mend and maintain", "overhead", null);
        t.Add("Office", "overhead", Pools.Overhead);
        return t;
    }

    /// <summary>Minutes per bed-foot a crop's bed work should take: what crop-less hours of bed work are divided by.</summary>
    public static CsvTable Standards()
    {
        var t = new CsvTable("crop", "stage", "minutes", "per");
        foreach (var crop in CropList.All.Where(c => !c.Perennial))
        {
            t.Add(crop.Name, "grow", crop.GrowMinutes, "bed_foot");
        }

        return t;
    }

    public static CsvTable InputRates()
    {
        var t = new CsvTable("pool", "crop", "rate", "per");
        foreach (var crop in CropList.All.Where(c => c.Seed > 0m && c.Group != "microgreens" && c.Name is not ("Garlic" or "Potatoes")))
        {
            t.Add(Pools.Seed, crop.Name, crop.Seed, "bed_foot");
        }

        foreach (var crop in CropList.All)
        {
            t.Add(Pools.Packaging, crop.Name, crop.Packing, "unit");
        }

        return t;
    }

    public static CsvTable Limits()
    {
        var t = new CsvTable("limit", "amount", "unit", "from", "to");
        t.Add("labor", 120m, "hours a week", new DateOnly(2026, 5, 1), new DateOnly(2026, 10, 31));
        t.Add("labor", 50m, "hours a week", new DateOnly(2026, 11, 1), new DateOnly(2027, 4, 30));
        t.Add("water", 4200m, "gallons a day", null, null);
        t.Add("cold room", 110m, "crates", null, null);
        t.Add("root cellar", 140m, "crates", null, null);
        t.Add("sprinklers", 12m, "sprinklers at once", null, null);
        t.Add("watering", 6m, "hours a day", null, null);
        t.Add("seedling house", 220m, "trays", null, null);
        return t;
    }

    public static CsvTable Balances(CashWalk cash)
    {
        var t = new CsvTable("date", "item", "class", "amount", "kind");
        var (before, day) = (new DateOnly(2024, 12, 31), new DateOnly(2025, 12, 31));
        AddSheet(t, before, new(cash.At(before) - 612.50m, 4150m, 612.50m, 710m, 43900m, 22400m, 486.10m));
        AddSheet(t, day, new(cash.At(day) - 738m - PlannedGaps.CashWithoutReceipt, 4420m, 738m, 755m, 40900m, 19800m, 522.35m));
        return t;
    }

    private sealed record Held(
        decimal Cash, decimal Stock, decimal OwedToUs, decimal Supplies, decimal Buildings, decimal Machines, decimal Bills);

    private static void AddSheet(CsvTable t, DateOnly day, Held held)
    {
        var owed = LoanBook.OwedOn(day);
        var due = owed - LoanBook.OwedOn(day.AddYears(1));
        var ahead = Incomes.All().Where(l => l.Date <= day && l.CropYear == day.Year + 1).Sum(l => l.Amount);
        Add("Cash and checking", "current-asset", held.Cash, "cash");
        Add("Shop and schools, unpaid invoices", "current-asset", held.OwedToUs, "invoices");
        Add("Stored crops", "current-asset", held.Stock, "inventory");
        Add("Seed, mix and boxes on hand", "current-asset", held.Supplies, "supplies");
        Add("Tools, truck, washers, batteries", "intermediate-asset", held.Machines, "in-assets");
        Add("Buildings, tunnels, well, panels", "long-term-asset", held.Buildings, "in-assets");
        Add("Land", "long-term-asset", 38000m, "beside-assets");
        Add("Bills unpaid", "current-liability", held.Bills, "bills");
        Add("Shares paid ahead", "current-liability", ahead, "paid-ahead");
        Add("Note, due within a year", "current-liability", due, "debt");
        Add("Note, due later", "long-term-liability", owed - due, "debt");

        void Add(string item, string stands, decimal amount, string kind) => t.Add(day, item, stands, CsvTable.Money(amount), kind);
    }

    public static CsvTable Funding()
    {
        var t = new CsvTable("project", "item", "object_class", "amount", "funder_percent", "in_kind", "quarter", "note");
        const string Project = "Larger cold room";
        t.Add(Project, "Insulated panels and door", "supplies", "4850.00", 75m, null, "2", "doubles the crates it holds");
        t.Add(Project, "Compressor and controller", "equipment", "5400.00", 75m, null, "2", "runs from the field panels");
        t.Add(Project, "Electrician", "contractual", "1350.00", 75m, null, "2", null);
        t.Add(Project, "Slab and drain", "construction", "2100.00", 50m, null, "1", null);
        t.Add(Project, "Owners' work, 60 hours at 16", "personnel", "960.00", 0m, "yes", "1", "our match");
        t.Add(Project, "Results shown at the guild's winter meeting", "travel", "140.00", 100m, null, "4", null);
        return t;
    }
}
