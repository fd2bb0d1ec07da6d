using FarmEconomics.Records;
using FarmEconomics.Records.Completeness;
using Xunit;

namespace FarmEconomics.Tests.Records;

public class ControlTotalsTests
{
    private static readonly DateOnly May = new(2025, 5, 10);

    [Theory]
    [InlineData("sales", "amount", 86.25)]
    [InlineData("sales", "quantity", 49)]
    [InlineData("harvests", "quantity", 12)]
    [InlineData("expenses", "amount", 40)]
    [InlineData("income", "amount", 500)]
    [InlineData("labor", "hours", 7.5)]
    [InlineData("labor", "hours:harvest", 3)]
    [InlineData("loads", "kWh", 12)]
    [InlineData("use", "kWh", 30)]
    public void Of_EachMeasure_AddsUpWhatTheRowsHold(string table, string measure, double expected)
    {
        RecordTables tables = Tables(new TotalRow { Table = table, Measure = measure, Amount = (decimal)expected, From = new(2025, 1, 1), To = new(2025, 12, 31) });

        ControlTotal total = Assert.Single(ControlTotals.Of(tables, new FarmSettings()));

        Assert.Equal((decimal)expected, total.Found);
        Assert.True(total.IsMet);
    }

    [Theory]
    [InlineData(100, 14, true)]
    [InlineData(100, 13.75, true)]
    [InlineData(100, 13.74, false)]
    public void IsMet_Tolerance_IncludesItsEdge(double amount, double tolerance, bool met)
    {
        RecordTables tables = Tables(new TotalRow { Table = "sales", Measure = "amount", Amount = (decimal)amount, Tolerance = (decimal)tolerance, From = new(2025, 1, 1), To = new(2025, 12, 31) });

        Assert.Equal(met, ControlTotals.Of(tables, new FarmSettings()).Single().IsMet);
    }

    [Fact]
    public void Of_TableThatIsNotThere_IsNotAvailableAndNotZero()
    {
        RecordTables tables = Tables(new TotalRow { Table = "labor", Measure = "hours", Amount = 1m });
        tables.Present.Remove("labor");

        ControlTotal total = ControlTotals.Of(tables, new FarmSettings()).Single();

        Assert.Null(total.Found);
        Assert.Null(total.IsMet);
        Assert.Equal("there is no table labor", total.NotAvailable);
    }

    [Fact]
    public void IsMet_HoursThatStandardsFillUp_OnlyTooManyMissIt()
    {
        RecordTables tables = Tables(new TotalRow { Table = "labor", Measure = "hours:harvest", Amount = 10m }, new TotalRow { Table = "labor", Measure = "hours:harvest", Amount = 2m });
        tables.LaborStandards.Add(new LaborStandardRow { Crop = "lettuce", Stage = Stage.Harvest, Minutes = 1m });

        Assert.Equal([true, false], ControlTotals.Of(tables, new FarmSettings()).Select(total => total.IsMet!.Value));
    }

    // By hand: sales 1.5 x 40 = 60, and 26.25; the row of 2026 is outside the year; one case is 4 heads.
    private static RecordTables Tables(params TotalRow[] totals)
    {
        var tables = new RecordTables
        {
            Units = [new UnitRow { Crop = "lettuce", Unit = "case", BaseUnits = 4m }],
            Sales =
            [
                new SaleRow { Date = May, Crop = "lettuce", Channel = "market", Quantity = 40m, UnitPrice = 1.5m },
                new SaleRow { Date = May, Crop = "lettuce", Channel = "market", Quantity = 2m, Unit = "case", Amount = 26.25m },
                new SaleRow { Date = May, Crop = "lettuce", Channel = "compost", Quantity = 1m },
                new SaleRow { Date = May.AddYears(1), Crop = "lettuce", Channel = "market", Quantity = 7m, Amount = 9m },
            ],
            Harvests = [new HarvestRow { Date = May, Crop = "lettuce", Quantity = 4m }, new HarvestRow { Date = May, Crop = "lettuce", Quantity = 2m, Unit = "case" }],
            Income = [new IncomeRow { Date = May, Channel = "shares", Amount = 500m }],
            Expenses = [new ExpenseRow { Date = May, Amount = 50m, Category = "seed", FarmPercent = 50m }, new ExpenseRow { Date = May, Amount = -10m, Category = "seed" }],
            Labor = [new LaborRow { Date = May, Worker = "Ada", Task = "harvest", Hours = 3m }, new LaborRow { Date = May, Worker = "Ada", Task = "office", Hours = 4.5m }],
            Tasks = [new TaskRow { Task = "office", Stage = Stage.Overhead }],

            // 100 W x 12 h x 10 days = 12 kWh; the days of 2024 don't count.
            Loads = [new LoadRow { Load = "fan", Pool = "power", User = "lettuce", Watts = 100m, HoursPerDay = 12m, From = new(2024, 12, 22), To = new(2025, 1, 10) }],
            Use = [new UseRow { Pool = "power", User = "lettuce", Quantity = 30m, CropYear = 2025 }, new UseRow { Pool = "power", User = "lettuce", Quantity = 8m, CropYear = 2024 }],
            Totals = [.. totals],
        };
        tables.Present.UnionWith(["sales", "harvests", "income", "expenses", "labor", "loads", "use"]);
        return tables;
    }
}
