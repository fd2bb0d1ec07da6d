using static FarmEconomics.Records.ExpenseClass;
using static FarmEconomics.Records.StatementLine;
using static FarmEconomics.Records.VariesWith;

namespace FarmEconomics.Records;

/// <summary>
/// The tasks, pools and categories shipped with the program. A grower's row of the same name takes the place of the one here.
/// Besides the pools here every channel has one of its own, under the channel's name (basis: its sales value).
/// </summary>
public static class Defaults
{
    /// <summary>The pool for materials bought without a crop.</summary>
    public const string Seed = "seed and plants";

    /// <summary>The pool for fertility and supplies in the field.</summary>
    public const string Fertility = "fertility and crop supplies";

    /// <summary>The pool for packaging.</summary>
    public const string Packaging = "packaging";

    /// <summary>The pool for selling cost that names no channel.</summary>
    public const string SellingGeneral = "selling general";

    /// <summary>The pool for hired labor money in a crop year without hired hours.</summary>
    public const string UnloggedLabor = "unlogged labor";

    /// <summary>The pool for everything for the farm as a whole.</summary>
    public const string GeneralOverhead = "general overhead";

    private static readonly SourceLine BuiltIn = new("built-in", 0);

    /// <summary>Tasks: the six stages by name, and the usual words for the work in them.</summary>
    public static IReadOnlyList<TaskRow> Tasks { get; } =
    [
        .. Of(Stage.Nursery, "nursery", "seeding", "sowing trays", "potting up", "propagation"),
        .. Of(Stage.Grow, "grow", "bed preparation", "planting", "transplanting", "direct sowing", "weeding", "watering", "irrigation", "trellising", "pruning", "pest control", "cleanup"),
        .. Of(Stage.Harvest, "harvest", "picking", "harvesting"),
        .. Of(Stage.Pack, "pack", "washing", "packing", "sorting"),
        .. Of(Stage.Sell, "sell", "market", "delivery", "selling"),
        .. Of(Stage.Overhead, "overhead", "office", "maintenance", "meetings", "repairs"),
    ];

    /// <summary>Pools with their basis and line; METHODS: shared costs.</summary>
    public static IReadOnlyList<PoolRow> Pools { get; } =
    [
        Pool(Seed, "input-rates, else bed-feet", Materials, Area),
        Pool(Fertility, "bed-feet", Materials, Area),
        Pool(Packaging, "input-rates, else quantity-crates", Selling, Quantity),
        Pool(SellingGeneral, "sales-value", Selling, VariesWith.Sales),
        Pool("nursery work", "tray-days, else bed-feet", StatementLine.Labor, Area),
        Pool("grow work", "bed-foot-days", StatementLine.Labor, Area),
        Pool("harvest work", "quantity-crates", StatementLine.Labor, Quantity),
        Pool("pack work", "quantity-crates", StatementLine.Labor, Quantity),
        Pool("sell work", "sales-value", StatementLine.Labor, VariesWith.Sales),
        Pool(UnloggedLabor, "bed-foot-days", StatementLine.Labor, Area),
        Pool(GeneralOverhead, "bed-foot-days", Overhead, Nothing),
    ];

    /// <summary>
    /// Categories under the names growers use. Tax lines carry the labels of part II of Schedule F (Form 1040), farm expenses
    /// (Internal Revenue Service); line numbers change from year to year and are left out.
    /// </summary>
    public static IReadOnlyList<CategoryRow> Categories { get; } =
    [
        Category("seed", Operating, Materials, "Seeds and plants", Seed, Area),
        Category("seeds", Operating, Materials, "Seeds and plants", Seed, Area),
        Category("plants", Operating, Materials, "Seeds and plants", Seed, Area),
        Category("seedlings", Operating, Materials, "Seeds and plants", Seed, Area),
        Category("potting mix", Operating, Materials, "Supplies", Seed, Area),
        Category("trays and pots", Operating, Materials, "Supplies", Seed, Area),
        Category("compost", Operating, Materials, "Fertilizers and lime", Fertility, Area),
        Category("fertilizer", Operating, Materials, "Fertilizers and lime", Fertility, Area),
        Category("lime", Operating, Materials, "Fertilizers and lime", Fertility, Area),
        Category("soil amendments", Operating, Materials, "Fertilizers and lime", Fertility, Area),
        Category("cover crop seed", Operating, Materials, "Seeds and plants", Fertility, Area),
        Category("soil tests", Operating, Materials, "Other expenses", Fertility, Area),
        Category("row cover and mulch", Operating, Materials, "Supplies", Fertility, Area),
        Category("row cover", Operating, Materials, "Supplies", Fertility, Area),
        Category("mulch", Operating, Materials, "Supplies", Fertility, Area),
        Category("trellis", Operating, Materials, "Supplies", Fertility, Area),
        Category("irrigation supplies", Operating, Materials, "Supplies", Fertility, Area),
        Category("crop supplies", Operating, Materials, "Supplies", Fertility, Area),
        Category("pest control", Operating, Materials, "Chemicals", Fertility, Area),
        Category("custom work", Operating, Materials, "Custom hire (machine work)", Fertility, Area),
        Category("packaging", Operating, Selling, "Supplies", Packaging, Quantity),
        Category("boxes and bags", Operating, Selling, "Supplies", Packaging, Quantity),
        Category("market fees", Operating, Selling, "Other expenses", SellingGeneral, Nothing),
        Category("card fees", Operating, Selling, "Other expenses", SellingGeneral, VariesWith.Sales),
        Category("advertising", Operating, Selling, "Other expenses", SellingGeneral, Nothing),
        Category("delivery", Operating, Selling, "Freight and trucking", SellingGeneral, VariesWith.Sales),
        Category("freight", Operating, Materials, "Freight and trucking", GeneralOverhead, Nothing),
        Category("storage", Operating, Selling, "Storage and warehousing", GeneralOverhead, Nothing),
        Category("fuel", Operating, Materials, "Gasoline, fuel, and oil", GeneralOverhead, Nothing),
        Category("vehicle", Operating, Overhead, "Car and truck expenses", GeneralOverhead, Nothing),
        Category("repairs", Operating, Overhead, "Repairs and maintenance", GeneralOverhead, Nothing),
        Category("tools", Operating, Overhead, "Supplies", GeneralOverhead, Nothing),
        Category("supplies", Operating, Materials, "Supplies", GeneralOverhead, Nothing),
        Category("utilities", Operating, Infrastructure, "Utilities", GeneralOverhead, Nothing),
        Category("electricity", Operating, Infrastructure, "Utilities", GeneralOverhead, Nothing),
        Category("water", Operating, Infrastructure, "Utilities", GeneralOverhead, Nothing),
        Category("heating fuel", Operating, Infrastructure, "Gasoline, fuel, and oil", GeneralOverhead, Nothing),
        Category("insurance", Operating, Overhead, "Insurance (other than health)", GeneralOverhead, Nothing),
        Category("rent", Operating, Overhead, "Rent or lease: other (land, animals, etc.)", GeneralOverhead, Nothing),
        Category("equipment rental", Operating, Overhead, "Rent or lease: vehicles, machinery, equipment", GeneralOverhead, Nothing),
        Category("property tax", Operating, Overhead, "Taxes", GeneralOverhead, Nothing),
        Category("office", Operating, Overhead, "Other expenses", GeneralOverhead, Nothing),
        Category("phone and internet", Operating, Overhead, "Utilities", GeneralOverhead, Nothing),
        Category("software", Operating, Overhead, "Other expenses", GeneralOverhead, Nothing),
        Category("professional fees", Operating, Overhead, "Other expenses", GeneralOverhead, Nothing),
        Category("certification", Operating, Overhead, "Other expenses", GeneralOverhead, Nothing),
        Category("dues and training", Operating, Overhead, "Other expenses", GeneralOverhead, Nothing),
        Category("operating loan interest", Operating, Overhead, "Interest: other", GeneralOverhead, Nothing),
        Category("wages", ExpenseClass.Labor, StatementLine.Labor, "Labor hired (less employment credits)", null, null),
        Category("payroll taxes", ExpenseClass.Labor, StatementLine.Labor, "Taxes", null, null),
        Category("workers compensation", ExpenseClass.Labor, StatementLine.Labor, "Insurance (other than health)", null, null),
        Category("employee benefits", ExpenseClass.Labor, StatementLine.Labor, "Employee benefit programs", null, null),
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

    /// <summary>The shipped tasks with the grower's in place of those of the same name.</summary>
    /// <param name="rows">The grower's rows.</param>
    /// <returns>The tasks that hold, the grower's first.</returns>
    public static IReadOnlyList<TaskRow> WithTasks(IEnumerable<TaskRow> rows) => Merge(rows, Tasks, row => row.Task);

    /// <summary>The shipped pools with the grower's in place of those of the same name.</summary>
    /// <param name="rows">The grower's rows.</param>
    /// <returns>The pools that hold, the grower's first.</returns>
    public static IReadOnlyList<PoolRow> WithPools(IEnumerable<PoolRow> rows) => Merge(rows, Pools, row => row.Pool);

    /// <summary>The shipped categories with the grower's in place of those of the same name.</summary>
    /// <param name="rows">The grower's rows.</param>
    /// <returns>The categories that hold, the grower's first.</returns>
    public static IReadOnlyList<CategoryRow> WithCategories(IEnumerable<CategoryRow> rows) => Merge(rows, Categories, row => row.Category);

    private static List<T> Merge<T>(IEnumerable<T> rows, IReadOnlyList<T> shipped, Func<T, string> name)
    {
        var merged = new List<T>(rows);
        var own = merged.Select(row => name(row).Trim()).ToHashSet(StringComparer.OrdinalIgnoreCase);
        merged.AddRange(shipped.Where(row => !own.Contains(name(row))));
        return merged;
    }

    private static IEnumerable<TaskRow> Of(Stage stage, params string[] names) =>
        names.Select(name => new TaskRow { Task = name, Stage = stage, Source = BuiltIn });

    private static PoolRow Pool(string name, string basis, StatementLine line, VariesWith variesWith) =>
        new() { Pool = name, Basis = basis, StatementLine = line, VariesWith = variesWith, Source = BuiltIn };

    private static CategoryRow Category(string name, ExpenseClass kind, StatementLine? line, string? taxLine, string? pool, VariesWith? variesWith) =>
        new() { Category = name, Class = kind, StatementLine = line, TaxLine = taxLine, Pool = pool, VariesWith = variesWith, Source = BuiltIn };
}
