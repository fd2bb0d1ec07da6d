using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Records.Checks;

/// <summary>Checks of pools, use, loads, assets, limits and totals.</summary>
internal static class SharedCostChecks
{
    internal const string Household = "household";
    private const string HoursOfStage = "hours:";

    private static readonly Dictionary<string, string[]> Measures = new(StringComparer.OrdinalIgnoreCase)
    {
        ["sales"] = ["amount", "quantity"],
        ["income"] = ["amount"],
        ["expenses"] = ["amount"],
        ["harvests"] = ["quantity"],
        ["use"] = ["quantity", "kWh"],
        ["loads"] = ["kWh"],
        ["labor"] = ["hours", .. Words.All<Stage>().Select(stage => HoursOfStage + stage)],
    };

    public static IEnumerable<RecordCheck> OfPools => [new TableCheck("pools serve structures that are there", StructuresAreThere)];

    public static IEnumerable<RecordCheck> OfUse =>
    [
        new RowChecks<UseRow>(
            ("user is known", (context, row) => User(context, row, row.User)),
            ("year is one of the records", (context, row) => context.InYears(row, "crop_year", row.CropYear))),
    ];

    public static IEnumerable<RecordCheck> OfLoads =>
    [
        new RowChecks<LoadRow>(
            ("user is known", (context, row) => User(context, row, row.User)),
            ("dates make sense", (context, row) => Period(context, row, row.From, row.To))),
    ];

    public static IEnumerable<RecordCheck> OfAssets =>
        [
            new RowChecks<AssetRow>(
                ("dates make sense", (context, row) =>
                    context.InOrder(
                        ProblemCodes.EndBeforeStart,
                        row,
                        "retired",
                        row.Retired,
                        "in_service",
                        row.InService,
                        sameDayFits: true
                    )
                ),
                ("money fits the asset", AssetMoney)
            ),
            new TableCheck("a sale of an asset stands once", SalesStandOnce),
            new TableCheck("a grant for an asset stands once", GrantsStandOnce),
        ];

    public static IEnumerable<RecordCheck> OfLimits =>
        [new RowChecks<LimitRow>(("dates make sense", (context, row) => Period(context, row, row.From, row.To)))];

    public static IEnumerable<RecordCheck> OfTotals =>
    [
        new RowChecks<TotalRow>(
            ("table and measure are known", Total),
            ("dates make sense", (context, row) => Period(context, row, row.From, row.To))),
        TotalsMet.Check,
    ];

    private static void AssetMoney(CheckContext context, AssetRow row)
    {
        if (row.Grant is { } grant && grant > row.Cost)
        {
            context.Report(
                ProblemCodes.AssetMoney,
                row,
                "grant",
                context.Notation.Text($"The grant, {grant:#,##0.00}, is greater than the cost, {row.Cost:#,##0.00}."),
                context.Notation.Text($"{grant}")
            );
        }

        if (row.Salvage is { } salvage && salvage > row.Cost)
        {
            context.Report(
                ProblemCodes.SalvageAboveCost,
                row,
                "salvage",
                context.Notation.Text($"It is to fetch {salvage:#,##0.00} at the end and cost {row.Cost:#,##0.00}."),
                context.Notation.Text($"{salvage}")
            );
        }

        if (row is { SoldFor: { } fetched, Retired: null })
        {
            context.Report(
                ProblemCodes.AssetMoney,
                row,
                "sold_for",
                context.Notation.Text($"It fetched {fetched:#,##0.00}, but retired doesn't say when."),
                context.Notation.Text($"{fetched}")
            );
        }
    }

    /// <summary>A month is our own bound: the buyer may have paid before or after the asset went.</summary>
    private const int DaysAroundSale = 31;

    /// <summary>Our own bound: a funder often pays back what was spent, months after the work.</summary>
    private const int DaysAroundGrant = 366;

    private static void SalesStandOnce(CheckContext context)
    {
        foreach (AssetRow row in context.Tables.Assets)
        {
            if (row is { SoldFor: { } fetched, Retired: { } sold } && CameIn(context, fetched, sold, DaysAroundSale) is { } day)
            {
                context.Report(
                    ProblemCodes.SaleTwice,
                    row,
                    "sold_for",
                    context.Notation.Text($"It fetched {fetched:#,##0.00}, and as much came in as other income on {day:yyyy-MM-dd}."),
                    context.Notation.Text($"{fetched}")
                );
            }
        }
    }

    private static void GrantsStandOnce(CheckContext context)
    {
        foreach (AssetRow row in context.Tables.Assets)
        {
            if (row.Grant is { } grant && CameIn(context, grant, row.InService, DaysAroundGrant) is { } day)
            {
                context.Report(
                    ProblemCodes.GrantTwice,
                    row,
                    "grant",
                    context.Notation.Text(
                        $"A grant paid {grant:#,##0.00} of it, and as much came in as other income on {day:yyyy-MM-dd}."),
                    context.Notation.Text($"{grant}")
                );
            }
        }
    }

    /// <summary>The first day on file on which so much came in as other income about a day; null: on none, or it is nothing.</summary>
    private static DateOnly? CameIn(CheckContext context, decimal amount, DateOnly about, int daysAround)
    {
        if (amount > 0m)
        {
            foreach (IncomeRow income in context.Tables.Income)
            {
                if (income.Amount == amount
                    && context.Channel(income.Channel) is { Kind: ChannelKind.Other }
                    && Math.Abs(income.Date.DayNumber - about.DayNumber) <= daysAround)
                {
                    return income.Date;
                }
            }
        }

        return null;
    }

    private static void StructuresAreThere(CheckContext context)
    {
        if (context.HasRowsInError("beds") || !context.BedNames.Checkable)
        {
            return;
        }

        foreach (PoolRow row in context.Tables.Pools)
        {
            context.StructureNames.Check(context, row, "structure", row.Structure);
        }
    }

    internal static NameIndex StructureNames(CheckContext context)
    {
        var structures = new NameIndex(
            ProblemCodes.UnknownStructure,
            "structure",
            "in beds.csv",
            !context.HasRowsInError("beds") && context.BedNames.Checkable,
            null
        );
        structures.AddRange(context.Tables.Beds.Select(bed => bed.Structure));
        return structures;
    }

    private static void User(CheckContext context, IRecordRow row, string user)
    {
        NameIndex[] indexes = [context.PoolNames, context.CropNames, context.PlantingNames];
        if (
            user.Trim().Equals(Household, StringComparison.OrdinalIgnoreCase)
            || indexes.Any(index => !index.Checkable || index.Contains(user))
        )
        {
            return;
        }

        context.Report(ProblemCodes.UnknownUser, row, "user", $"There is no pool, crop or planting \"{user}\".", user,
            context.Search.Find(user, context.UserNames));
    }

    private static void Period(CheckContext context, IRecordRow row, DateOnly? from, DateOnly? to) =>
        context.InOrder(ProblemCodes.EndBeforeStart, row, "to", to, "from", from, sameDayFits: true);

    private static void Total(CheckContext context, TotalRow row)
    {
        if (!Measures.TryGetValue(row.Table.Trim(), out string[]? measures))
        {
            context.Report(
                ProblemCodes.UnknownTotal,
                row,
                "table",
                $"No total is kept of \"{row.Table}\".",
                row.Table,
                NearestName.Find(row.Table, Measures.Keys)
            );
        }
        else if (!measures.Contains(row.Measure.Trim(), StringComparer.OrdinalIgnoreCase))
        {
            context.Report(
                ProblemCodes.UnknownTotal,
                row,
                "measure",
                $"{row.Table} has no measure \"{row.Measure}\"; it has {string.Join(", ", measures)}.",
                row.Measure,
                NearestName.Find(row.Measure, measures)
            );
        }
    }
}
