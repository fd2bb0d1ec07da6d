using FarmEconomics.Records;
using FarmEconomics.Records.Completeness;
using FarmEconomics.Records.Storage;
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
        RecordTables tables = Tables(new RowValues { ["table"] = table, ["measure"] = measure, ["amount"] = (decimal)expected, ["from"] = new DateOnly(2025, 1, 1), ["to"] = new DateOnly(2025, 12, 31) });

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
        RecordTables tables = Tables(new RowValues { ["table"] = "sales", ["measure"] = "amount", ["amount"] = (decimal)amount, ["tolerance"] = (decimal)tolerance, ["from"] = new DateOnly(2025, 1, 1), ["to"] = new DateOnly(2025, 12, 31) });

        Assert.Equal(met, ControlTotals.Of(tables, new FarmSettings()).Single().IsMet);
    }

    [Fact]
    public void Of_TableThatIsNotThere_IsNotAvailableAndNotZero()
    {
        RecordTables tables = Tables(new RowValues { ["table"] = "labor", ["measure"] = "hours", ["amount"] = 1m });
        tables.Present.Remove("labor");

        ControlTotal total = ControlTotals.Of(tables, new FarmSettings()).Single();

        Assert.Null(total.Found);
        Assert.Null(total.IsMet);
        Assert.Equal("there is no table labor", total.NotAvailable);
    }

    [Fact]
    public void IsMet_HoursThatStandardsFillUp_OnlyTooManyMissIt()
    {
        RecordTables tables = Tables(new RowValues { ["table"] = "labor", ["measure"] = "hours:harvest", ["amount"] = 10m }, new RowValues { ["table"] = "labor", ["measure"] = "hours:harvest", ["amount"] = 2m });
        tables.Add<LaborStandardRow>(new RowValues { ["crop"] = "lettuce", ["stage"] = Stage.Harvest, ["minutes"] = 1m });

        Assert.Equal([true, false], ControlTotals.Of(tables, new FarmSettings()).Select(total => total.IsMet!.Value));
    }

    // By hand: sales 1.5 x 40 = 60, and 26.25; the row of 2026 is outside the year; one case is 4 heads.
    private static RecordTables Tables(params RowValues[] totals)
    {
        var tables = new RecordTables();
        tables.Add<UnitRow>(new RowValues { ["crop"] = "lettuce", ["unit"] = "case", ["base_units"] = 4m });
        tables.Add<SaleRow>(new RowValues { ["date"] = May, ["crop"] = "lettuce", ["channel"] = "market", ["quantity"] = 40m, ["unit_price"] = 1.5m });
        tables.Add<SaleRow>(new RowValues { ["date"] = May, ["crop"] = "lettuce", ["channel"] = "market", ["quantity"] = 2m, ["unit"] = "case", ["amount"] = 26.25m });
        tables.Add<SaleRow>(new RowValues { ["date"] = May, ["crop"] = "lettuce", ["channel"] = "compost", ["quantity"] = 1m });
        tables.Add<SaleRow>(new RowValues { ["date"] = May.AddYears(1), ["crop"] = "lettuce", ["channel"] = "market", ["quantity"] = 7m, ["amount"] = 9m });
        tables.Add<HarvestRow>(new RowValues { ["date"] = May, ["crop"] = "lettuce", ["quantity"] = 4m });
        tables.Add<HarvestRow>(new RowValues { ["date"] = May, ["crop"] = "lettuce", ["quantity"] = 2m, ["unit"] = "case" });
        tables.Add<IncomeRow>(new RowValues { ["date"] = May, ["channel"] = "shares", ["amount"] = 500m });
        tables.Add<ExpenseRow>(new RowValues { ["date"] = May, ["amount"] = 50m, ["category"] = "seed", ["farm_percent"] = 50m });
        tables.Add<ExpenseRow>(new RowValues { ["date"] = May, ["amount"] = -10m, ["category"] = "seed" });
        tables.Add<LaborRow>(new RowValues { ["date"] = May, ["worker"] = "Ada", ["task"] = "harvest", ["hours"] = 3m });
        tables.Add<LaborRow>(new RowValues { ["date"] = May, ["worker"] = "Ada", ["task"] = "office", ["hours"] = 4.5m });
        tables.Add<TaskRow>(new RowValues { ["task"] = "office", ["stage"] = Stage.Overhead });
        // 100 W x 12 h x 10 days = 12 kWh; the days of 2024 don't count.
        tables.Add<LoadRow>(new RowValues { ["load"] = "fan", ["pool"] = "power", ["user"] = "lettuce", ["watts"] = 100m, ["hours_per_day"] = 12m, ["from"] = new DateOnly(2024, 12, 22), ["to"] = new DateOnly(2025, 1, 10) });
        tables.Add<UseRow>(new RowValues { ["pool"] = "power", ["user"] = "lettuce", ["quantity"] = 30m, ["crop_year"] = 2025 });
        tables.Add<UseRow>(new RowValues { ["pool"] = "power", ["user"] = "lettuce", ["quantity"] = 8m, ["crop_year"] = 2024 });
        foreach (RowValues total in totals)
        {
            tables.Add<TotalRow>(total);
        }

        tables.Present.UnionWith(["sales", "harvests", "income", "expenses", "labor", "loads", "use"]);
        return tables;
    }
}
