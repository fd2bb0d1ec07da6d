using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Storage;
using Xunit;

namespace FarmEconomics.Tests.Records;

public class RecordChecksTests
{
    private static readonly DateOnly April = new(2025, 4, 1);

    [Fact]
    public void Run_BedOverfullTwice_WarnsOncePerStretchWithDayAndNames()
    {
        RecordTables tables = Tables();
        Add<PlantingRow>(tables, Planting("L1", 60, April, April.AddDays(30), 2), Planting("L2", 60, April.AddDays(10), April.AddDays(40), 3), Planting("L3", 40, April.AddDays(30), April.AddDays(50), 4), Planting("L4", 70, April.AddDays(45), April.AddDays(60), 5));

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
        Add<PlantingRow>(tables, Planting("L1", 100, April, April.AddDays(30), 2), Planting("L2", 100, April.AddDays(30), April.AddDays(60), 3));

        Assert.Empty(RecordChecks.Run(tables, new FarmSettings()));
    }

    [Fact]
    public void Run_HarvestOfACropOnly_IsMeasuredByItsFirstPlanting()
    {
        RecordTables tables = Tables();
        tables.Add<PlantingRow>(Planting("L1", 50, April, null, 2));
        Add<HarvestRow>(tables, Harvest(April.AddDays(-1), 2), Harvest(April, 3), Harvest(April.AddDays(400), 4));

        Problem problem = Assert.Single(RecordChecks.Run(tables, new FarmSettings()));

        Assert.Equal(("E223", 2), (problem.Code, problem.Source.Line));
    }

    [Fact]
    public void Run_MistypedPlantingDate_IsReportedOnceAndNotInItsHarvests()
    {
        RecordTables tables = Tables();
        Add<PlantingRow>(tables, Planting("L1", 50, April, null, 2), Planting("L2", 50, April.AddYears(20), null, 3));
        Add<HarvestRow>(tables, Harvest(April.AddDays(30), 2, "L1"), Harvest(April.AddDays(40), 3, "L2"));

        Problem problem = Assert.Single(RecordChecks.Run(tables, new FarmSettings()));

        Assert.Equal(("E230", "plantings.csv:3"), (problem.Code, problem.Source.ToString()));
    }

    [Fact]
    public void Run_PerennialPlantedLongAgo_IsFine()
    {
        RecordTables tables = Tables();
        CropRow.PerennialColumn.Set(tables.Crops.Table, 0, true);
        Add<PlantingRow>(tables, Planting("L1", 50, new DateOnly(2009, 4, 1), null, 2), Planting("L2", 20, April, null, 3));
        Add<HarvestRow>(tables, Harvest(April, 2), Harvest(April.AddDays(1), 3));

        Assert.Empty(RecordChecks.Run(tables, new FarmSettings()));
    }

    [Fact]
    public void Run_NamesInOtherCaseAndWithBlanks_AreKnown()
    {
        RecordTables tables = Tables();
        tables.Add<PlantingRow>(Planting(" l1 ", 50, April, null, 2));
        tables.Add<HarvestRow>(Harvest(April, 2, "L1 "));
        HarvestRow.CropColumn.Set(tables.Harvests.Table, 0, "LETTUCE");

        Assert.Empty(RecordChecks.Run(tables, new FarmSettings()));
    }

    [Fact]
    public void Run_OptionalTablesMissing_DoesNotCallTheirNamesUnknown()
    {
        RecordTables tables = Tables();
        tables.Add<PlantingRow>(Planting("L1", 50, April, null, 2));
        tables.Add<SaleRow>(new RowValues { ["date"] = April, ["crop"] = "lettuce", ["channel"] = "anything", ["quantity"] = 1m, Source = new SourceLine("sales.csv", 2) });
        tables.Add<LaborRow>(new RowValues { ["date"] = April, ["worker"] = "anyone", ["task"] = "Weeding", ["hours"] = 2m, Source = new SourceLine("labor.csv", 2) });

        Assert.Empty(RecordChecks.Run(tables, new FarmSettings()));
    }

    [Theory]
    [InlineData(16, 0)]
    [InlineData(16.25, 1)]
    public void Run_HoursOfADay_WarnAboveSixteen(double hours, int expected)
    {
        RecordTables tables = Tables();
        tables.Add<PlantingRow>(Planting("L1", 50, April, null, 2));
        Add<LaborRow>(tables, Labor("Ada", 8m, 2), Labor("ada", (decimal)hours - 8m, 3), Labor("Ben", 8m, 4));

        Assert.Equal(expected, RecordChecks.Run(tables, new FarmSettings()).Count(problem => problem.Code == "W203"));
    }

    [Fact]
    public void Defaults_EveryReference_IsKnown()
    {
        RecordTables tables = Tables();
        Copy(tables.Tasks, Defaults.Tasks);
        Copy(tables.Pools, Defaults.Pools);
        Copy(tables.Categories, Defaults.Categories);

        Assert.Empty(RecordChecks.Run(tables, new FarmSettings()));
        Assert.All(Defaults.Categories, category => Assert.Equal(category.Class == ExpenseClass.Operating, category.Pool is not null));
    }

    private static RowValues Labor(string worker, decimal hours, int line) =>
        new() { ["date"] = April, ["worker"] = worker, ["task"] = "harvest", ["hours"] = hours, Source = new SourceLine("labor.csv", line) };

    private static RowValues Harvest(DateOnly date, int line, string? planting = null) =>
        new() { ["date"] = date, ["crop"] = planting is null ? "lettuce" : null, ["planting"] = planting, ["quantity"] = 1m, Source = new SourceLine("harvests.csv", line) };

    private static RowValues Planting(string name, decimal feet, DateOnly inBed, DateOnly? outOfBed, int line) =>
        new() { ["planting"] = name, ["crop"] = "lettuce", ["bed"] = "A1", ["bed_feet"] = feet, ["in_bed"] = inBed, ["out_of_bed"] = outOfBed, Source = new SourceLine("plantings.csv", line) };

    private static void Add<T>(RecordTables tables, params RowValues[] rows)
        where T : struct, IRecordRow<T>
    {
        foreach (RowValues row in rows)
        {
            tables.Add<T>(row);
        }
    }

    private static void Copy<T>(Rows<T> to, IEnumerable<T> from)
        where T : struct, IRecordRow<T>
    {
        foreach (T row in from)
        {
            int at = to.Table.Add(row.Source);
            Array.ForEach(T.Schema.Stored, column => column.Set(to.Table, at, column.Get(row.Home, row.Index)));
        }
    }

    private static RecordTables Tables()
    {
        var tables = new RecordTables();
        tables.Add<CropRow>(new() { ["crop"] = "lettuce", ["unit"] = "head", Source = new SourceLine("crops.csv", 2) });
        tables.Add<BedRow>(new() { ["bed"] = "A1", ["length_ft"] = 100m, Source = new SourceLine("beds.csv", 2) });
        tables.Present.UnionWith(["crops", "beds", "plantings", "harvests", "sales"]);
        return tables;
    }
}
