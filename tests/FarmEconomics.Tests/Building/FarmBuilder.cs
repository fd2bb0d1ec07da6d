using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Building;

/// <summary>Writes small farms into tests in a few readable lines; every row gets the file and line it would have on disk.</summary>
internal sealed class FarmBuilder
{
    private readonly Dictionary<string, int> lines = [];

    internal FarmBuilder(FarmSettings? settings = null) => Settings = settings ?? new FarmSettings();

    internal RecordTables Tables { get; private set; } = new();

    internal FarmSettings Settings { get; set; }

    internal static DateOnly Day(string iso) => DateOnly.ParseExact(iso, "yyyy-MM-dd");

    internal FarmBuilder With(Func<FarmSettings, FarmSettings> change)
    {
        Settings = change(Settings);
        return this;
    }

    internal FarmBuilder AsOf(string day) => With(settings => settings with { AsOf = Day(day) });

    internal FarmBuilder Crop(
        string crop,
        string unit = "lb",
        decimal? storageDays = 365,
        decimal? perCrate = null,
        string? store = null,
        decimal? water = null,
        bool perennial = false,
        string? group = null,
        decimal? bears = null,
        decimal? established = null
    ) =>
        Add<CropRow>(
            new RowValues
            {
                ["crop"] = crop,
                ["unit"] = unit,
                ["storage_days"] = storageDays,
                ["units_per_crate"] = perCrate,
                ["store"] = store,
                ["water_need"] = water,
                ["perennial"] = perennial,
                ["group"] = group,
                ["bearing_years"] = bears,
                ["establishment_cost"] = established,
            }
        );

    internal FarmBuilder Perennial(string crop, decimal? bearingYears = null, decimal? establishmentCost = null) =>
        Add<CropRow>(new RowValues { ["crop"] = crop, ["unit"] = "lb", ["storage_days"] = 365m, ["perennial"] = true, ["bearing_years"] = bearingYears, ["establishment_cost"] = establishmentCost });

    internal FarmBuilder Unit(string crop, string unit, decimal baseUnits) =>
        Add<UnitRow>(new RowValues { ["crop"] = crop, ["unit"] = unit, ["base_units"] = baseUnits });

    internal FarmBuilder Bed(string bed, decimal length = 100, decimal? width = null, string? structure = null) =>
        Add<BedRow>(new RowValues { ["bed"] = bed, ["length_ft"] = length, ["width_in"] = width, ["structure"] = structure });

    internal FarmBuilder Planting(string planting, string crop, string bed, decimal feet, string inBed, string? outOfBed = null, string? sown = null, decimal? trays = null, int? cropYear = null) =>
        Add<PlantingRow>(new RowValues
        {
            ["planting"] = planting,
            ["crop"] = crop,
            ["bed"] = bed,
            ["bed_feet"] = feet,
            ["in_bed"] = Day(inBed),
            ["out_of_bed"] = Maybe(outOfBed),
            ["sown"] = Maybe(sown),
            ["trays"] = trays,
            ["crop_year"] = cropYear,
        });

    /// <summary>A harvest of a planting.</summary>
    internal FarmBuilder Pick(string date, string planting, decimal quantity, string? unit = null, decimal? culled = null) =>
        Add<HarvestRow>(new RowValues { ["date"] = Day(date), ["planting"] = planting, ["quantity"] = quantity, ["unit"] = unit, ["culled"] = culled });

    /// <summary>A harvest that names only the crop.</summary>
    internal FarmBuilder PickCrop(string date, string crop, decimal quantity, decimal? culled = null) =>
        Add<HarvestRow>(new RowValues { ["date"] = Day(date), ["crop"] = crop, ["quantity"] = quantity, ["culled"] = culled });

    internal FarmBuilder Channel(string channel, ChannelKind kind, decimal? fee = null, string? valuesFrom = null) =>
        Add<ChannelRow>(new RowValues { ["channel"] = channel, ["kind"] = kind, ["fee_percent"] = fee, ["values_from"] = valuesFrom });

    internal FarmBuilder Sell(string date, string crop, string channel, decimal quantity, decimal? price = null, decimal? amount = null, string? planting = null, string? unit = null) =>
        Add<SaleRow>(new RowValues { ["date"] = Day(date), ["crop"] = crop, ["channel"] = channel, ["quantity"] = quantity, ["unit_price"] = price, ["amount"] = amount, ["planting"] = planting, ["unit"] = unit });

    internal FarmBuilder Price(string crop, decimal price, string? channel = null, string? from = null, bool? reference = null, string? unit = null) =>
        Add<PriceRow>(new RowValues { ["crop"] = crop, ["price"] = price, ["channel"] = channel, ["from"] = Maybe(from), ["reference"] = reference, ["unit"] = unit });

    internal FarmBuilder Income(string date, string channel, decimal amount, int? cropYear = null) =>
        Add<IncomeRow>(new RowValues { ["date"] = Day(date), ["channel"] = channel, ["amount"] = amount, ["crop_year"] = cropYear });

    internal FarmBuilder Work(string date, string worker, decimal hours, string task, string? crop = null, string? planting = null, string? channel = null, string? pool = null) =>
        Add<LaborRow>(new RowValues { ["date"] = Day(date), ["worker"] = worker, ["hours"] = hours, ["task"] = task, ["crop"] = crop, ["planting"] = planting, ["channel"] = channel, ["pool"] = pool });

    internal FarmBuilder Worker(string worker, WorkerKind kind, decimal? wage = null, string? from = null) =>
        Add<WorkerRow>(new RowValues { ["worker"] = worker, ["kind"] = kind, ["wage"] = wage, ["from"] = Maybe(from) });

    internal FarmBuilder Task(string task, Stage stage, string? pool = null) =>
        Add<TaskRow>(new RowValues { ["task"] = task, ["stage"] = stage, ["pool"] = pool });

    internal FarmBuilder Standard(string crop, Stage stage, decimal minutes, RatePer per) =>
        Add<LaborStandardRow>(new RowValues { ["crop"] = crop, ["stage"] = stage, ["minutes"] = minutes, ["per"] = per });

    internal FarmBuilder Total(string table, string measure, decimal amount, string? from = null, string? to = null) =>
        Add<TotalRow>(new RowValues { ["table"] = table, ["measure"] = measure, ["amount"] = amount, ["from"] = Maybe(from), ["to"] = Maybe(to) });

    internal FarmBuilder Spend(string date, decimal amount, string category, string? crop = null, string? planting = null, string? channel = null, string? pool = null, decimal? farmPercent = null, int? cropYear = null) =>
        Add<ExpenseRow>(new RowValues
        {
            ["date"] = Day(date),
            ["amount"] = amount,
            ["category"] = category,
            ["crop"] = crop,
            ["planting"] = planting,
            ["channel"] = channel,
            ["pool"] = pool,
            ["farm_percent"] = farmPercent,
            ["crop_year"] = cropYear,
        });

    internal FarmBuilder Category(string category, ExpenseClass kind, StatementLine? line = null, string? pool = null, CostDriver? varies = null, string? taxLine = null) =>
        Add<CategoryRow>(new RowValues { ["category"] = category, ["class"] = kind, ["statement_line"] = line, ["pool"] = pool, ["varies_with"] = varies, ["tax_line"] = taxLine });

    internal FarmBuilder Pool(string pool, string basis, StatementLine line = StatementLine.Infrastructure, string? structure = null, decimal? capacity = null, CostDriver? varies = null) =>
        Add<PoolRow>(new RowValues { ["pool"] = pool, ["basis"] = basis, ["statement_line"] = line, ["structure"] = structure, ["capacity"] = capacity, ["varies_with"] = varies });

    internal FarmBuilder Use(string pool, string user, decimal quantity, int? cropYear = null) =>
        Add<UseRow>(new RowValues { ["pool"] = pool, ["user"] = user, ["quantity"] = quantity, ["crop_year"] = cropYear });

    internal FarmBuilder Load(string load, string pool, string user, decimal watts, decimal hoursPerDay, string from, string to) =>
        Add<LoadRow>(new RowValues { ["load"] = load, ["pool"] = pool, ["user"] = user, ["watts"] = watts, ["hours_per_day"] = hoursPerDay, ["from"] = Day(from), ["to"] = Day(to) });

    internal FarmBuilder Rate(string pool, string crop, decimal rate, RatePer per) =>
        Add<InputRateRow>(new RowValues { ["pool"] = pool, ["crop"] = crop, ["rate"] = rate, ["per"] = per });

    internal FarmBuilder Asset(string asset, string pool, string inService, decimal cost, decimal life, decimal? salvage = null, decimal? farmPercent = null, decimal? grant = null, decimal? repairs = null, decimal? insuranceTax = null, string? retired = null) =>
        Add<AssetRow>(new RowValues
        {
            ["asset"] = asset,
            ["pool"] = pool,
            ["in_service"] = Day(inService),
            ["cost"] = cost,
            ["life_years"] = life,
            ["salvage"] = salvage,
            ["farm_percent"] = farmPercent,
            ["grant"] = grant,
            ["repairs_percent"] = repairs,
            ["insurance_tax_percent"] = insuranceTax,
            ["retired"] = Maybe(retired),
        });

    internal FarmBuilder Limit(string limit, decimal amount, string? unit = null, string? from = null, string? to = null) =>
        Add<LimitRow>(new RowValues { ["limit"] = limit, ["amount"] = amount, ["unit"] = unit, ["from"] = Maybe(from), ["to"] = Maybe(to) });

    internal FarmBuilder Loan(
        string loan,
        decimal principal,
        decimal percent,
        decimal years,
        decimal paymentsPerYear,
        string firstPayment,
        Repayment repayment
    ) =>
        Add<LoanRow>(new RowValues
        {
            ["loan"] = loan,
            ["principal"] = principal,
            ["annual_percent"] = percent,
            ["years"] = years,
            ["payments_per_year"] = paymentsPerYear,
            ["first_payment"] = Day(firstPayment),
            ["repayment"] = repayment,
        });

    internal FarmBuilder Balance(string date, string item, BalanceClass stands, decimal amount, BalanceItem? kind = null) =>
        Add<BalanceRow>(new RowValues { ["date"] = Day(date), ["item"] = item, ["class"] = stands, ["amount"] = amount, ["kind"] = kind });

    /// <summary>Takes all rows out of a table, which is there still.</summary>
    internal FarmBuilder Empty(string name)
    {
        Tables = Tables.With(table => table.Schema.Name == name ? table.Where(_ => false) : table);
        return this;
    }

    /// <summary>Takes rows out of a table, which is there still.</summary>
    internal FarmBuilder Without<T>(Predicate<T> goes)
        where T : struct, IRecordRow<T>
    {
        Tables = Tables.With(table => table.Schema == T.Schema ? table.Where(row => !goes(T.At(table, row))) : table);
        return this;
    }

    /// <summary>Adds a row of another farm, with its place.</summary>
    internal FarmBuilder Take(IRecordRow row)
    {
        RecordTable table = Tables.Of(row.Home.Schema);
        int at = table.Add(row.Source);
        Array.ForEach(table.Schema.Stored, column => column.Set(table, at, column.Get(row.Home, row.Index)));
        return this;
    }

    /// <summary>Gives a cell another value.</summary>
    internal FarmBuilder Set(IRecordRow row, Column column, object? value)
    {
        column.Set(Tables.Of(row.Home.Schema), row.Index, value);
        return this;
    }

    // Linked records are sealed; a test may go on building.
    internal FarmRecords Link() => FarmRecords.Link(Tables.Copy(), Settings);

    internal FarmReview Review() => FarmReview.Of(Link());

    internal SeasonReview Season(int year) => Review().Season(year);

    private static DateOnly? Maybe(string? iso) => iso is null ? null : Day(iso);

    internal FarmBuilder Add<T>(RowValues row)
        where T : struct, IRecordRow<T>
    {
        string name = T.Schema.Name;
        int line = lines.GetValueOrDefault(name, 1) + 1;
        lines[name] = line;
        row.Source = new SourceLine($"{name}.csv", line);
        Tables.Add<T>(row);
        return this;
    }
}

/// <summary>Short ways to read a season in assertions.</summary>
internal static class SeasonReading
{
    internal static EnterpriseBudget CropNamed(this SeasonReview season, string crop) => season.Crops.Single(budget => budget.Name == crop);

    internal static EnterpriseBudget PlantingNamed(this SeasonReview season, string planting) => season.Plantings.Single(budget => budget.Name == planting);

    internal static PoolResult PoolNamed(this SeasonReview season, string pool) => season.Pools.Single(result => result.Pool.Name == pool);

    /// <summary>What a pool of origin charged a planting, all streams.</summary>
    internal static decimal Charged(this PoolResult pool, string planting) =>
        pool.Charges.Where(charge => charge.Enterprise?.Planting.Name == planting).Sum(charge => charge.Amount.Amount);

    internal static IReadOnlyList<string> Codes(this SeasonReview season) => season.Problems.Select(problem => problem.Code).ToList();

    internal static void AssertProven(this SeasonReview season) =>
        Assert.All(season.Reconciliation, check => Assert.True(check.Holds, $"{season.CropYear}: {check.Check}: {check.Left} against {check.Right}"));

    internal static Money Dollars(decimal amount) => new(amount);
}
