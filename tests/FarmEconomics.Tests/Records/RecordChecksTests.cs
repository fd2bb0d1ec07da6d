using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using Xunit;

namespace FarmEconomics.Tests.Records;

public class RecordChecksTests
{
    private static readonly DateOnly April = new(2025, 4, 1);

    [Fact]
    public void Run_BedOverfullTwice_WarnsOncePerStretchWithDayAndNames()
    {
        RecordTables tables = Tables();
        tables.Plantings.AddRange(
            [Planting("L1", 60, April, April.AddDays(30), 2), Planting("L2", 60, April.AddDays(10), April.AddDays(40), 3), Planting("L3", 40, April.AddDays(30), April.AddDays(50), 4), Planting("L4", 70, April.AddDays(45), April.AddDays(60), 5)]);

        IReadOnlyList<Problem> problems = RecordChecks.Run(tables, new FarmSettings());

        Assert.All(problems, problem => Assert.Equal("W201", problem.Code));
        Assert.Equal([3, 5], problems.Select(problem => problem.Source.Line));
        Assert.Equal("Bed A1 is 100 ft long, but from 2025-04-11 on up to 120 ft are planted: L1, L2.", problems[0].Message);
        Assert.Equal("Bed A1 is 100 ft long, but from 2025-05-16 on up to 110 ft are planted: L3, L4.", problems[1].Message);
    }

    [Fact]
    public void Run_BedFreedAndPlantedOnTheSameDay_IsNotOverfull()
    {
        RecordTables tables = Tables();
        tables.Plantings.AddRange([Planting("L1", 100, April, April.AddDays(30), 2), Planting("L2", 100, April.AddDays(30), April.AddDays(60), 3)]);

        Assert.Empty(RecordChecks.Run(tables, new FarmSettings()));
    }

    [Fact]
    public void Run_HarvestOfACropOnly_IsMeasuredByItsFirstPlanting()
    {
        RecordTables tables = Tables();
        tables.Plantings.Add(Planting("L1", 50, April, null, 2));
        tables.Harvests.AddRange([Harvest(April.AddDays(-1), 2), Harvest(April, 3), Harvest(April.AddDays(400), 4)]);

        Problem problem = Assert.Single(RecordChecks.Run(tables, new FarmSettings()));

        Assert.Equal(("E223", 2), (problem.Code, problem.Source.Line));
    }

    [Fact]
    public void Run_MistypedPlantingDate_IsReportedOnceAndNotInItsHarvests()
    {
        RecordTables tables = Tables();
        tables.Plantings.AddRange([Planting("L1", 50, April, null, 2), Planting("L2", 50, April.AddYears(20), null, 3)]);
        tables.Harvests.AddRange([Harvest(April.AddDays(30), 2, "L1"), Harvest(April.AddDays(40), 3, "L2")]);

        Problem problem = Assert.Single(RecordChecks.Run(tables, new FarmSettings()));

        Assert.Equal(("E230", "plantings.csv:3"), (problem.Code, problem.Source.ToString()));
    }

    [Fact]
    public void Run_PerennialPlantedLongAgo_IsFine()
    {
        RecordTables tables = Tables();
        tables.Crops[0].Perennial = true;
        tables.Plantings.AddRange([Planting("L1", 50, new DateOnly(2009, 4, 1), null, 2), Planting("L2", 20, April, null, 3)]);
        tables.Harvests.AddRange([Harvest(April, 2), Harvest(April.AddDays(1), 3)]);

        Assert.Empty(RecordChecks.Run(tables, new FarmSettings()));
    }

    [Fact]
    public void Run_NamesInOtherCaseAndWithBlanks_AreKnown()
    {
        RecordTables tables = Tables();
        tables.Plantings.Add(Planting(" l1 ", 50, April, null, 2));
        tables.Harvests.Add(Harvest(April, 2, "L1 "));
        tables.Harvests[0].Crop = "LETTUCE";

        Assert.Empty(RecordChecks.Run(tables, new FarmSettings()));
    }

    [Fact]
    public void Run_OptionalTablesMissing_DoesNotCallTheirNamesUnknown()
    {
        RecordTables tables = Tables();
        tables.Plantings.Add(Planting("L1", 50, April, null, 2));
        tables.Sales.Add(new SaleRow { Date = April, Crop = "lettuce", Channel = "anything", Quantity = 1m, Source = new("sales.csv", 2) });
        tables.Labor.Add(new LaborRow { Date = April, Worker = "anyone", Task = "Weeding", Hours = 2m, Source = new("labor.csv", 2) });

        Assert.Empty(RecordChecks.Run(tables, new FarmSettings()));
    }

    [Theory]
    [InlineData(16, 0)]
    [InlineData(16.25, 1)]
    public void Run_HoursOfADay_WarnAboveSixteen(double hours, int expected)
    {
        RecordTables tables = Tables();
        tables.Plantings.Add(Planting("L1", 50, April, null, 2));
        tables.Labor.AddRange([Labor("Ada", 8m, 2), Labor("ada", (decimal)hours - 8m, 3), Labor("Ben", 8m, 4)]);

        Assert.Equal(expected, RecordChecks.Run(tables, new FarmSettings()).Count(problem => problem.Code == "W203"));
    }

    [Fact]
    public void Defaults_EveryReference_IsKnown()
    {
        RecordTables tables = Tables();
        tables.Tasks.AddRange(Defaults.Tasks);
        tables.Pools.AddRange(Defaults.Pools);
        tables.Categories.AddRange(Defaults.Categories);

        Assert.Empty(RecordChecks.Run(tables, new FarmSettings()));
        Assert.All(Defaults.Categories, category => Assert.Equal(category.Class == ExpenseClass.Operating, category.Pool is not null));
    }

    private static LaborRow Labor(string worker, decimal hours, int line) =>
        new() { Date = April, Worker = worker, Task = "harvest", Hours = hours, Source = new("labor.csv", line) };

    private static HarvestRow Harvest(DateOnly date, int line, string? planting = null) =>
        new() { Date = date, Crop = planting is null ? "lettuce" : null, Planting = planting, Quantity = 1m, Source = new("harvests.csv", line) };

    private static PlantingRow Planting(string name, decimal feet, DateOnly inBed, DateOnly? outOfBed, int line) =>
        new() { Planting = name, Crop = "lettuce", Bed = "A1", BedFeet = feet, InBed = inBed, OutOfBed = outOfBed, Source = new("plantings.csv", line) };

    private static RecordTables Tables()
    {
        var tables = new RecordTables
        {
            Crops = [new CropRow { Crop = "lettuce", Unit = "head", Source = new("crops.csv", 2) }],
            Beds = [new BedRow { Bed = "A1", LengthFt = 100m, Source = new("beds.csv", 2) }],
        };
        tables.Present.UnionWith(["crops", "beds", "plantings", "harvests", "sales"]);
        return tables;
    }
}
