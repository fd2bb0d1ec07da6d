using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Records.Checks;

/// <summary>Checks of pools, use, loads, assets, limits and totals.</summary>
internal static class SharedCostChecks
{
    private const string Household = "household";
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

    public static IEnumerable<RecordCheck> All { get; } =
    [
        new TableCheck("pools serve structures that are there", StructuresAreThere),
        new RowChecks<PoolRow>("pools", tables => tables.Pools,
            ("capacity makes sense", (context, row) => context.AboveZero(row, "capacity", row.Capacity))),
        new RowChecks<UseRow>("use", tables => tables.Use,
            ("pool is known", (context, row) => context.PoolNames.Check(context, row, "pool", row.Pool)),
            ("user is known", (context, row) => User(context, row, row.User)),
            ("quantity makes sense", (context, row) => context.AtLeastZero(row, "quantity", row.Quantity)),
            ("year is one of the records", (context, row) => context.InYears(row, "crop_year", row.CropYear))),
        new RowChecks<LoadRow>("loads", tables => tables.Loads,
            ("pool is known", (context, row) => context.PoolNames.Check(context, row, "pool", row.Pool)),
            ("user is known", (context, row) => User(context, row, row.User)),
            ("numbers make sense", LoadNumbers),
            ("dates make sense", (context, row) => Period(context, row, row.From, row.To))),
        new RowChecks<AssetRow>("assets", tables => tables.Assets,
            ("pool is known", (context, row) => context.PoolNames.Check(context, row, "pool", row.Pool)),
            ("numbers make sense", AssetNumbers),
            ("dates make sense", (context, row) =>
            {
                _ = context.InCalendar(row, "in_service", row.InService, YearsCovered.EarliestAsset) & context.InCalendar(row, "retired", row.Retired)
                    && context.InOrder(ProblemCodes.EndBeforeStart, row, "retired", row.Retired, "in_service", row.InService, sameDayFits: true);
            })),
        new RowChecks<LimitRow>("limits", tables => tables.Limits,
            ("amount makes sense", (context, row) => context.AtLeastZero(row, "amount", row.Amount)),
            ("dates make sense", (context, row) => Period(context, row, row.From, row.To))),
        new RowChecks<TotalRow>("totals", tables => tables.Totals,
            ("table and measure are known", Total),
            ("tolerance makes sense", (context, row) => context.AtLeastZero(row, "tolerance", row.Tolerance)),
            ("dates make sense", (context, row) => Period(context, row, row.From, row.To))),
    ];

    private static void StructuresAreThere(CheckContext context)
    {
        if (context.HasRowsInError("beds") || !context.BedNames.Checkable)
        {
            return;
        }

        NameIndex structures = StructureNames(context);
        foreach (PoolRow row in context.Tables.Pools)
        {
            structures.Check(context, row, "structure", row.Structure);
        }
    }

    internal static NameIndex StructureNames(CheckContext context)
    {
        var structures = new NameIndex(ProblemCodes.UnknownStructure, "structure", "in beds.csv", !context.HasRowsInError("beds") && context.BedNames.Checkable, null);
        structures.AddRange(context.Tables.Beds.Select(bed => bed.Structure));
        return structures;
    }

    private static void User(CheckContext context, IRecordRow row, string user)
    {
        NameIndex[] indexes = [context.PoolNames, context.CropNames, context.PlantingNames];
        if (user.Trim().Equals(Household, StringComparison.OrdinalIgnoreCase) || indexes.Any(index => !index.Checkable || index.Contains(user)))
        {
            return;
        }

        context.Report(ProblemCodes.UnknownUser, row, "user", $"There is no pool, crop or planting \"{user}\".", user,
            NearestName.Find(user, indexes.SelectMany(index => index.Names).Append(Household)));
    }

    private static void LoadNumbers(CheckContext context, LoadRow row)
    {
        context.AtLeastZero(row, "watts", row.Watts);
        if (row.HoursPerDay is < 0m or > 24m)
        {
            context.Report(ProblemCodes.NotPositive, row, "hours_per_day", context.Notation.Text($"hours_per_day must be from 0 to 24, not {row.HoursPerDay}."), context.Notation.Text($"{row.HoursPerDay}"));
        }
    }

    private static void AssetNumbers(CheckContext context, AssetRow row)
    {
        context.AtLeastZero(row, "cost", row.Cost);
        context.AboveZero(row, "life_years", row.LifeYears);
        context.AtLeastZero(row, "salvage", row.Salvage);
        context.AtLeastZero(row, "grant", row.Grant);
        context.Percent(row, "farm_percent", row.FarmPercent);
        context.Percent(row, "repairs_percent", row.RepairsPercent);
        context.Percent(row, "insurance_tax_percent", row.InsuranceTaxPercent);
    }

    private static void Period(CheckContext context, IRecordRow row, DateOnly? from, DateOnly? to)
    {
        _ = context.InCalendar(row, "from", from) & context.InCalendar(row, "to", to)
            && context.InOrder(ProblemCodes.EndBeforeStart, row, "to", to, "from", from, sameDayFits: true);
    }

    private static void Total(CheckContext context, TotalRow row)
    {
        if (!Measures.TryGetValue(row.Table.Trim(), out string[]? measures))
        {
            context.Report(ProblemCodes.UnknownTotal, row, "table", $"No total is kept of \"{row.Table}\".", row.Table, NearestName.Find(row.Table, Measures.Keys));
        }
        else if (!measures.Contains(row.Measure.Trim(), StringComparer.OrdinalIgnoreCase))
        {
            context.Report(ProblemCodes.UnknownTotal, row, "measure", $"{row.Table} has no measure \"{row.Measure}\"; it has {string.Join(", ", measures)}.", row.Measure,
                NearestName.Find(row.Measure, measures));
        }
    }
}
