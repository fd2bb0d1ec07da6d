using static FarmEconomics.Records.CostDriver;
using static FarmEconomics.Records.ExpenseClass;
using static FarmEconomics.Records.StatementLine;

namespace FarmEconomics.Records;

/// <summary>
/// The tasks, pools and categories shipped with the program. A grower's row of the same name takes the place of the one here.
/// Besides the pools here every channel has one of its own (basis: its sales value). What a pool falls back on when its basis has
/// no weights stands in <see cref="DefaultPools"/>.
/// </summary>
public static class Defaults
{
    private const string Seed = "seed and plants";
    private const string Fertility = "fertility and crop supplies";
    private const string Packaging = "packaging";
    private const string SellingGeneral = "selling general";

    /// <summary>Where what is shipped with the program stands: in no file of the farm.</summary>
    internal static readonly SourceLine Place = new("built-in", 0);
    private static readonly RecordTables BuiltIn = new();

    /// <summary>Tasks: the six stages by name, and the usual words for the work in them.</summary>
    public static IReadOnlyList<TaskRow> Tasks { get; } =
    [
        .. Of(Stage.Nursery, "nursery", "seeding", "sowing trays", "potting up", "propagation"),
        .. Of(
            Stage.Grow,
            "grow",
            "bed preparation",
            "planting",
            "transplanting",
            "direct sowing",
            "weeding",
            "watering",
            "irrigation",
            "trellising",
            "pruning",
            "pest control",
            "cleanup"
        ),
        .. Of(Stage.Harvest, "harvest", "picking", "harvesting"),
        .. Of(Stage.Pack, "pack", "washing", "packing", "sorting"),
        .. Of(Stage.Sell, "sell", "market", "delivery", "selling"),
        .. Of(Stage.Overhead, "overhead", "office", "maintenance", "meetings", "repairs"),
    ];

    /// <summary>Pools with their basis and line.</summary>
    public static IReadOnlyList<PoolRow> Pools { get; } =
    [
        Pool(Seed, "input-rates", Materials, Length),
        Pool(Fertility, "bed-feet", Materials, Length),
        Pool(Packaging, "input-rates", Selling, Quantity),
        Pool(SellingGeneral, "sales-value", Selling, CostDriver.Units),
        Pool("nursery work", "tray-days", StatementLine.Labor, Length),
        Pool("grow work", "bed-foot-days", StatementLine.Labor, Length),
        Pool("harvest work", "quantity-crates", StatementLine.Labor, Quantity),
        Pool("pack work", "quantity-crates", StatementLine.Labor, Quantity),
        Pool("sell work", "sales-value", StatementLine.Labor, Trips),
        Pool(DefaultPools.UnloggedLabor, "bed-foot-days", StatementLine.Labor, Length),
        Pool(DefaultPools.GeneralOverhead, "bed-foot-days", Overhead, Fixed),
        Pool(DefaultPools.Land, "bed-foot-days", Overhead, Fixed),
    ];

    /// <summary>
    /// Categories under the names growers use. Tax lines carry the labels of part II of Schedule F (Form 1040), farm expenses
    /// (Internal Revenue Service); line numbers change from year to year and are left out.
    /// </summary>
    public static IReadOnlyList<CategoryRow> Categories { get; } =
    [
        Category("seed", Operating, Materials, "Seeds and plants", Seed, Length),
        Category("seeds", Operating, Materials, "Seeds and plants", Seed, Length),
        Category("plants", Operating, Materials, "Seeds and plants", Seed, Length),
        Category("seedlings", Operating, Materials, "Seeds and plants", Seed, Length),
        Category("potting mix", Operating, Materials, "Supplies", Seed, Length),
        Category("trays and pots", Operating, Materials, "Supplies", Seed, Length),
        Category("compost", Operating, Materials, "Fertilizers and lime", Fertility, Length),
        Category("fertilizer", Operating, Materials, "Fertilizers and lime", Fertility, Length),
        Category("lime", Operating, Materials, "Fertilizers and lime", Fertility, Length),
        Category("soil amendments", Operating, Materials, "Fertilizers and lime", Fertility, Length),
        Category("cover crop seed", Operating, Materials, "Seeds and plants", Fertility, Length),
        Category("soil tests", Operating, Materials, "Other expenses", Fertility, Length),
        Category("row cover and mulch", Operating, Materials, "Supplies", Fertility, Length),
        Category("row cover", Operating, Materials, "Supplies", Fertility, Length),
        Category("mulch", Operating, Materials, "Supplies", Fertility, Length),
        Category("trellis", Operating, Materials, "Supplies", Fertility, Length),
        Category("irrigation supplies", Operating, Materials, "Supplies", Fertility, Length),
        Category("crop supplies", Operating, Materials, "Supplies", Fertility, Length),
        Category("pest control", Operating, Materials, "Chemicals", Fertility, Length),
        Category("custom work", Operating, Materials, "Custom hire (machine work)", Fertility, Length),
        Category("packaging", Operating, Selling, "Supplies", Packaging, Quantity),
        Category("boxes and bags", Operating, Selling, "Supplies", Packaging, Quantity),
        Category("market fees", Operating, Selling, "Other expenses", SellingGeneral, Fixed),
        Category("card fees", Operating, Selling, "Other expenses", SellingGeneral, CostDriver.Units),
        Category("advertising", Operating, Selling, "Other expenses", SellingGeneral, Fixed),
        Category("delivery", Operating, Selling, "Freight and trucking", SellingGeneral, CostDriver.Units),
        Category("freight", Operating, Materials, "Freight and trucking", DefaultPools.GeneralOverhead, Fixed),
        Category("storage", Operating, Selling, "Storage and warehousing", DefaultPools.GeneralOverhead, Fixed),
        Category("fuel", Operating, Materials, "Gasoline, fuel, and oil", DefaultPools.GeneralOverhead, Fixed),
        Category("vehicle", Operating, Overhead, "Car and truck expenses", DefaultPools.GeneralOverhead, Fixed),
        Category("repairs", Operating, Overhead, "Repairs and maintenance", DefaultPools.GeneralOverhead, Fixed),
        Category("tools", Operating, Overhead, "Supplies", DefaultPools.GeneralOverhead, Fixed),
        Category("supplies", Operating, Materials, "Supplies", DefaultPools.GeneralOverhead, Fixed),
        Category("utilities", Operating, Infrastructure, "Utilities", DefaultPools.GeneralOverhead, Fixed),
        Category("electricity", Operating, Infrastructure, "Utilities", DefaultPools.GeneralOverhead, Fixed),
        Category("water", Operating, Infrastructure, "Utilities", DefaultPools.GeneralOverhead, Fixed),
        Category("heating fuel", Operating, Infrastructure, "Gasoline, fuel, and oil", DefaultPools.GeneralOverhead, Fixed),
        Category("insurance", Operating, Overhead, "Insurance (other than health)", DefaultPools.GeneralOverhead, Fixed),
        Category("rent", Operating, Overhead, "Rent or lease: other (land, animals, etc.)", DefaultPools.GeneralOverhead, Fixed),
        Category(
            "equipment rental",
            Operating,
            Overhead,
            "Rent or lease: vehicles, machinery, equipment",
            DefaultPools.GeneralOverhead,
            Fixed
        ),
        Category("property tax", Operating, Overhead, "Taxes", DefaultPools.GeneralOverhead, Fixed),
        Category("office", Operating, Overhead, "Other expenses", DefaultPools.GeneralOverhead, Fixed),
        Category("phone and internet", Operating, Overhead, "Utilities", DefaultPools.GeneralOverhead, Fixed),
        Category("software", Operating, Overhead, "Other expenses", DefaultPools.GeneralOverhead, Fixed),
        Category("professional fees", Operating, Overhead, "Other expenses", DefaultPools.GeneralOverhead, Fixed),
        Category("certification", Operating, Overhead, "Other expenses", DefaultPools.GeneralOverhead, Fixed),
        Category("dues and training", Operating, Overhead, "Other expenses", DefaultPools.GeneralOverhead, Fixed),
        Category("operating loan interest", Operating, Overhead, "Interest: other", DefaultPools.GeneralOverhead, Fixed),
        Category("wages", ExpenseClass.Labor, StatementLine.Labor, "Labor hired (less employment credits)", null, null),
        Category("payroll taxes", LaborBurden, StatementLine.Labor, "Taxes", null, null),
        Category("workers compensation", LaborBurden, StatementLine.Labor, "Insurance (other than health)", null, null),
        Category("employee benefits", LaborBurden, StatementLine.Labor, "Employee benefit programs", null, null),
        Category("equipment", Capital, null, "Depreciation and section 179 expense", null, null),
        Category("buildings", Capital, null, "Depreciation and section 179 expense", null, null),
        Category("land", Capital, null, null, null, null),
        Category("loan interest", Interest, null, "Interest: other", null, null),
        Category("mortgage interest", Interest, null, "Interest: mortgage (paid to banks, etc.)", null, null),
        Category("loan principal", Principal, null, null, null, null),
        Category("income tax", Tax, null, null, null, null),
        Category("self-employment tax", Tax, null, null, null, null),
        Category("household draw", Personal, null, null, null, null),
    ];

    private static IEnumerable<TaskRow> Of(Stage stage, params string[] names) =>
        names.Select(name => BuiltIn.Add<TaskRow>(new() { ["task"] = name, ["stage"] = stage, Source = Place }));

    private static PoolRow Pool(string name, string basis, StatementLine line, CostDriver variesWith) => BuiltIn.Add<PoolRow>(
        new() { ["pool"] = name, ["basis"] = basis, ["statement_line"] = line, ["varies_with"] = variesWith, Source = Place });

    private static CategoryRow Category(
        string name,
        ExpenseClass kind,
        StatementLine? line,
        string? taxLine,
        string? pool,
        CostDriver? variesWith
    ) =>
        BuiltIn.Add<CategoryRow>(
            new()
            {
                ["category"] = name,
                ["class"] = kind,
                ["statement_line"] = line,
                ["tax_line"] = taxLine,
                ["pool"] = pool,
                ["varies_with"] = variesWith,
                Source = Place,
            }
        );
}
