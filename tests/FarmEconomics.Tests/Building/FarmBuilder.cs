using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Building;

/// <summary>Writes small farms into tests in a few readable lines; every row gets the file and line it would have on disk.</summary>
internal sealed class FarmBuilder
{
    private readonly Dictionary<string, int> lines = [];

    internal FarmBuilder(FarmSettings? settings = null) => Settings = settings ?? new FarmSettings();

    internal RecordTables Tables { get; } = new();

    internal FarmSettings Settings { get; set; }

    internal static DateOnly Day(string iso) => DateOnly.ParseExact(iso, "yyyy-MM-dd");

    internal FarmBuilder With(Func<FarmSettings, FarmSettings> change)
    {
        Settings = change(Settings);
        return this;
    }

    internal FarmBuilder AsOf(string day) => With(settings => settings with { AsOf = Day(day) });

    internal FarmBuilder Crop(string crop, string unit = "lb", decimal? storageDays = 365, decimal? perCrate = null, string? store = null, decimal? water = null, bool perennial = false, string? group = null) =>
        Add(Tables.Crops, "crops", new CropRow { Crop = crop, Unit = unit, StorageDays = storageDays, UnitsPerCrate = perCrate, Store = store, WaterNeed = water, Perennial = perennial, Group = group });

    internal FarmBuilder Unit(string crop, string unit, decimal baseUnits) =>
        Add(Tables.Units, "units", new UnitRow { Crop = crop, Unit = unit, BaseUnits = baseUnits });

    internal FarmBuilder Bed(string bed, decimal length = 100, decimal? width = null, string? structure = null) =>
        Add(Tables.Beds, "beds", new BedRow { Bed = bed, LengthFt = length, WidthIn = width, Structure = structure });

    internal FarmBuilder Planting(string planting, string crop, string bed, decimal feet, string inBed, string? outOfBed = null, string? sown = null, decimal? trays = null, int? cropYear = null) =>
        Add(Tables.Plantings, "plantings", new PlantingRow
        {
            Planting = planting,
            Crop = crop,
            Bed = bed,
            BedFeet = feet,
            InBed = Day(inBed),
            OutOfBed = Maybe(outOfBed),
            Sown = Maybe(sown),
            Trays = trays,
            CropYear = cropYear,
        });

    /// <summary>A harvest of a planting.</summary>
    internal FarmBuilder Pick(string date, string planting, decimal quantity, string? unit = null, decimal? culled = null) =>
        Add(Tables.Harvests, "harvests", new HarvestRow { Date = Day(date), Planting = planting, Quantity = quantity, Unit = unit, Culled = culled });

    /// <summary>A harvest that names only the crop.</summary>
    internal FarmBuilder PickCrop(string date, string crop, decimal quantity, decimal? culled = null) =>
        Add(Tables.Harvests, "harvests", new HarvestRow { Date = Day(date), Crop = crop, Quantity = quantity, Culled = culled });

    internal FarmBuilder Channel(string channel, ChannelKind kind, decimal? fee = null, string? valuesFrom = null) =>
        Add(Tables.Channels, "channels", new ChannelRow { Channel = channel, Kind = kind, FeePercent = fee, ValuesFrom = valuesFrom });

    internal FarmBuilder Sell(string date, string crop, string channel, decimal quantity, decimal? price = null, decimal? amount = null, string? planting = null, string? unit = null) =>
        Add(Tables.Sales, "sales", new SaleRow { Date = Day(date), Crop = crop, Channel = channel, Quantity = quantity, UnitPrice = price, Amount = amount, Planting = planting, Unit = unit });

    internal FarmBuilder Price(string crop, decimal price, string? channel = null, string? from = null, bool? reference = null, string? unit = null) =>
        Add(Tables.Prices, "prices", new PriceRow { Crop = crop, Price = price, Channel = channel, From = Maybe(from), Reference = reference, Unit = unit });

    internal FarmBuilder Income(string date, string channel, decimal amount, int? cropYear = null) =>
        Add(Tables.Income, "income", new IncomeRow { Date = Day(date), Channel = channel, Amount = amount, CropYear = cropYear });

    internal FarmBuilder Work(string date, string worker, decimal hours, string task, string? crop = null, string? planting = null, string? channel = null, string? pool = null) =>
        Add(Tables.Labor, "labor", new LaborRow { Date = Day(date), Worker = worker, Hours = hours, Task = task, Crop = crop, Planting = planting, Channel = channel, Pool = pool });

    internal FarmBuilder Worker(string worker, WorkerKind kind, decimal? wage = null, string? from = null) =>
        Add(Tables.Workers, "workers", new WorkerRow { Worker = worker, Kind = kind, Wage = wage, From = Maybe(from) });

    internal FarmBuilder Task(string task, Stage stage, string? pool = null) =>
        Add(Tables.Tasks, "tasks", new TaskRow { Task = task, Stage = stage, Pool = pool });

    internal FarmBuilder Standard(string crop, Stage stage, decimal minutes, RatePer per) =>
        Add(Tables.LaborStandards, "labor_standards", new LaborStandardRow { Crop = crop, Stage = stage, Minutes = minutes, Per = per });

    internal FarmBuilder Total(string table, string measure, decimal amount, string? from = null, string? to = null) =>
        Add(Tables.Totals, "totals", new TotalRow { Table = table, Measure = measure, Amount = amount, From = Maybe(from), To = Maybe(to) });

    internal FarmBuilder Spend(string date, decimal amount, string category, string? crop = null, string? planting = null, string? channel = null, string? pool = null, decimal? farmPercent = null, int? cropYear = null) =>
        Add(Tables.Expenses, "expenses", new ExpenseRow
        {
            Date = Day(date),
            Amount = amount,
            Category = category,
            Crop = crop,
            Planting = planting,
            Channel = channel,
            Pool = pool,
            FarmPercent = farmPercent,
            CropYear = cropYear,
        });

    internal FarmBuilder Category(string category, ExpenseClass kind, StatementLine? line = null, string? pool = null, VariesWith? varies = null, string? taxLine = null) =>
        Add(Tables.Categories, "categories", new CategoryRow { Category = category, Class = kind, StatementLine = line, Pool = pool, VariesWith = varies, TaxLine = taxLine });

    internal FarmBuilder Pool(string pool, string basis, StatementLine line = StatementLine.Infrastructure, string? structure = null, decimal? capacity = null, VariesWith? varies = null) =>
        Add(Tables.Pools, "pools", new PoolRow { Pool = pool, Basis = basis, StatementLine = line, Structure = structure, Capacity = capacity, VariesWith = varies });

    internal FarmBuilder Use(string pool, string user, decimal quantity, int? cropYear = null) =>
        Add(Tables.Use, "use", new UseRow { Pool = pool, User = user, Quantity = quantity, CropYear = cropYear });

    internal FarmBuilder Load(string load, string pool, string user, decimal watts, decimal hoursPerDay, string from, string to) =>
        Add(Tables.Loads, "loads", new LoadRow { Load = load, Pool = pool, User = user, Watts = watts, HoursPerDay = hoursPerDay, From = Day(from), To = Day(to) });

    internal FarmBuilder Rate(string pool, string crop, decimal rate, RatePer per) =>
        Add(Tables.InputRates, "input_rates", new InputRateRow { Pool = pool, Crop = crop, Rate = rate, Per = per });

    internal FarmBuilder Asset(string asset, string pool, string inService, decimal cost, decimal life, decimal? salvage = null, decimal? farmPercent = null, decimal? grant = null, decimal? repairs = null, decimal? insuranceTax = null, string? retired = null) =>
        Add(Tables.Assets, "assets", new AssetRow
        {
            Asset = asset,
            Pool = pool,
            InService = Day(inService),
            Cost = cost,
            LifeYears = life,
            Salvage = salvage,
            FarmPercent = farmPercent,
            Grant = grant,
            RepairsPercent = repairs,
            InsuranceTaxPercent = insuranceTax,
            Retired = Maybe(retired),
        });

    internal FarmBuilder Limit(string limit, decimal amount, string? unit = null, string? from = null, string? to = null) =>
        Add(Tables.Limits, "limits", new LimitRow { Limit = limit, Amount = amount, Unit = unit, From = Maybe(from), To = Maybe(to) });

    internal FarmRecords Link() => FarmRecords.Link(Tables, Settings);

    internal FarmReview Review() => FarmReview.Of(Link());

    internal SeasonReview Season(int year) => Review().Season(year);

    private static DateOnly? Maybe(string? iso) => iso is null ? null : Day(iso);

    private FarmBuilder Add<T>(List<T> table, string name, T row)
        where T : RecordRow
    {
        int line = lines.GetValueOrDefault(name, 1) + 1;
        lines[name] = line;
        row.Source = new SourceLine($"{name}.csv", line);
        table.Add(row);
        Tables.Present.Add(name);
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
