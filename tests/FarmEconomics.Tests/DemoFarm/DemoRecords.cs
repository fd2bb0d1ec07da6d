namespace FarmEconomics.Tests.DemoFarm;

/// <summary>The demo farm's tables as written, with the few joins the checks need.</summary>
internal sealed class DemoRecords
{
    public static readonly int[] Years = [2023, 2024, 2025];
    public static readonly DateOnly AsOf = new(2026, 2, 28);

    private readonly Dictionary<(string Crop, string Unit), decimal> units;

    public DemoRecords()
    {
        Crops = PlainCsv.Demo("crops").ToDictionary(r => r["crop"]);
        units = PlainCsv.Demo("units").ToDictionary(r => (r["crop"], r["unit"]), r => r.Number("base_units"));
        FirstPick = Harvests.Where(h => h["planting"].Length > 0).GroupBy(h => h["planting"]).ToDictionary(g => g.Key, g => g.Min(h => h.Date("date"))!.Value);
        LastPick = Harvests.Where(h => h["planting"].Length > 0).GroupBy(h => h["planting"]).ToDictionary(g => g.Key, g => g.Max(h => h.Date("date"))!.Value);
        ChannelKind = PlainCsv.Demo("channels").ToDictionary(r => r["channel"], r => r["kind"]);
        Stage = PlainCsv.Demo("tasks").ToDictionary(r => r["task"], r => r["stage"]);
    }

    public Dictionary<string, Dictionary<string, string>> Crops { get; }

    public Dictionary<string, DateOnly> FirstPick { get; }

    public Dictionary<string, DateOnly> LastPick { get; }

    public Dictionary<string, string> ChannelKind { get; }

    public Dictionary<string, string> Stage { get; }

    public IReadOnlyList<Dictionary<string, string>> Beds { get; } = PlainCsv.Demo("beds");

    public IReadOnlyList<Dictionary<string, string>> Plantings { get; } = PlainCsv.Demo("plantings");

    public IReadOnlyList<Dictionary<string, string>> Harvests { get; } = PlainCsv.Demo("harvests");

    public IReadOnlyList<Dictionary<string, string>> Sales { get; } = PlainCsv.Demo("sales");

    public IReadOnlyList<Dictionary<string, string>> Labor { get; } = PlainCsv.Demo("labor");

    public IReadOnlyList<Dictionary<string, string>> Expenses { get; } = PlainCsv.Demo("expenses");

    public IReadOnlyList<Dictionary<string, string>> Income { get; } = PlainCsv.Demo("income");

    /// <summary>Acres of beds with their paths, at five feet from center to center; trays on shelves take none.</summary>
    public decimal Acres => Beds.Where(b => !b["bed"].StartsWith("Shelf", StringComparison.Ordinal)).Sum(b => b.Number("length_ft")) * 5m / 43_560m;

    public bool Perennial(string crop) => Crops[crop]["perennial"] == "yes";

    /// <summary>A sale's quantity in the crop's own unit.</summary>
    public decimal Quantity(Dictionary<string, string> sale)
    {
        var (crop, unit) = (sale["crop"], sale["unit"]);
        return sale.Number("quantity") * (unit.Length == 0 || unit == Crops[crop]["unit"] ? 1m : units[(crop, unit)]);
    }

    public static decimal Money(Dictionary<string, string> sale) =>
        sale["amount"].Length > 0 ? sale.Number("amount") : Math.Round(sale.Number("quantity") * sale.Number("unit_price"), 2, MidpointRounding.AwayFromZero);

    /// <summary>The crop year a planting counts in; null for a perennial.</summary>
    public int? CropYear(Dictionary<string, string> planting) =>
        Perennial(planting["crop"]) ? null
        : planting["crop_year"].Length > 0 ? (int)planting.Number("crop_year")
        : FirstPick.TryGetValue(planting["planting"], out var first) ? first.Year : planting.Date("in_bed")!.Value.Year;

    /// <summary>The day a planting's bed is free.</summary>
    public DateOnly Out(Dictionary<string, string> planting) =>
        planting.Date("out_of_bed")
        ?? (!Perennial(planting["crop"]) && LastPick.TryGetValue(planting["planting"], out var last) ? last.AddDays(1) : AsOf.AddDays(1));

    public decimal Feet(string crop, int year) =>
        Plantings.Where(p => p["crop"] == crop && (CropYear(p) ?? year) == year).Sum(p => p.Number("bed_feet"));

    public static bool InYear(Dictionary<string, string> row, int year) => row.Date("date")!.Value.Year == year;
}
