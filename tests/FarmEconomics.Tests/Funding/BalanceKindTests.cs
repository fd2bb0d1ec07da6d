using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using Xunit;

namespace FarmEconomics.Tests.Funding;

public class BalanceKindTests
{
    [Fact]
    public void At_ItemsAreTakenByTheirKind_NotByTheirName()
    {
        BalanceSheet sheet = Sheet(("Envelope in the drawer", BalanceClass.CurrentAsset, 50m, BalanceItem.Cash), ("Cash box, empty, for sale", BalanceClass.CurrentAsset, 20m, null),
            ("Notebook maker's bill", BalanceClass.CurrentLiability, 5m, null), ("Aunt", BalanceClass.CurrentLiability, 100m, BalanceItem.Debt), ("Bank", BalanceClass.LongTermLiability, 900m, null));

        Assert.Equal((50m, 20m, 5m, 1000m), (sheet.Cash, sheet.CostOf(BalanceKind.Inventory), sheet.CostOf(BalanceKind.Payable), sheet.CostOf(BalanceKind.Debt)));
    }

    [Fact]
    public void At_NothingSaidToBeCash_CashIsNotKnown()
    {
        Assert.Null(Sheet(("Cash and checking", BalanceClass.CurrentAsset, 50m, null)).Cash);
        Assert.Equal(0m, Sheet(("Checking", BalanceClass.CurrentAsset, 0m, BalanceItem.Cash)).Cash);
    }

    /// <summary>Bookkeepers date a year's opening sheet January 1: it tells the end of December 31. One of January 2 doesn't.</summary>
    [Theory]
    [InlineData("2026-01-01", true)]
    [InlineData("2026-01-02", false)]
    [InlineData("2025-12-01", true)]
    [InlineData("2025-11-30", false)]
    public void At_SheetOfTheDayAfter_TellsTheEndOfTheYear(string day, bool found)
    {
        RecordTables tables = new();
        tables.Present.Add("balances");
        tables.Add<BalanceRow>(new RowValues
        {
            ["date"] = DateOnly.ParseExact(day, "yyyy-MM-dd"),
            ["item"] = "Checking",
            ["class"] = BalanceClass.CurrentAsset,
            ["amount"] = 50m,
            ["kind"] = BalanceItem.Cash,
        });
        FarmRecords records = FarmRecords.Link(tables, new FarmSettings { AsOf = new DateOnly(2026, 3, 1) });
        Assert.Equal(found ? 50m : null, BalanceSheet.At(records, new DateOnly(2025, 12, 31))?.Cash);
    }

    /// <summary>The truck was listed three days before the bank: without its day it would be gone without a word.</summary>
    [Fact]
    public void At_RowsOfAnotherDayNearby_AreNamed()
    {
        RecordTables tables = new();
        tables.Present.Add("balances");
        foreach ((string day, string item) in new[] { ("2025-11-30", "Old"), ("2025-12-28", "Truck"), ("2025-12-31", "Bank") })
        {
            tables.Add<BalanceRow>(new RowValues
            {
                ["date"] = DateOnly.ParseExact(day, "yyyy-MM-dd"),
                ["item"] = item,
                ["class"] = BalanceClass.CurrentAsset,
                ["amount"] = 50m,
            });
        }

        FarmRecords records = FarmRecords.Link(tables, new FarmSettings { AsOf = new DateOnly(2026, 3, 1) });
        BalanceSheet sheet = BalanceSheet.At(records, new DateOnly(2025, 12, 31))!;

        Assert.Equal("Bank", Assert.Single(sheet.Lines).Item);
        Assert.Equal([new DateOnly(2025, 12, 28)], sheet.OtherDays);
    }

    private static BalanceSheet Sheet(params (string Item, BalanceClass Class, decimal Amount, BalanceItem? Kind)[] rows)
    {
        RecordTables tables = new();
        tables.Present.Add("balances");
        foreach ((string item, BalanceClass stands, decimal amount, BalanceItem? kind) in rows)
        {
            tables.Add<BalanceRow>(new RowValues { ["date"] = new DateOnly(2025, 12, 31), ["item"] = item, ["class"] = stands, ["amount"] = amount, ["kind"] = kind });
        }

        return BalanceSheet.At(FarmRecords.Link(tables, new FarmSettings { AsOf = new DateOnly(2025, 12, 31) }), new DateOnly(2025, 12, 31))!;
    }
}
