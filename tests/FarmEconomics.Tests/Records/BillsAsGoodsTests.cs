using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.Tests.Records;

/// <summary>
/// What a customer owes stands in sales already; as goods on hand it is earned twice (revenue is recognized when earned; OpenStax,
/// Principles of Accounting vol. 1, chapter 4, from memory). Told where the farm's own channels or sales show it: no English is read.
/// </summary>
public class BillsAsGoodsTests
{
    [Theory]
    [InlineData("Grocer", "inventory", "999.00", true)]
    [InlineData("grocer: unpaid", "inventory", "999.00", true)]
    [InlineData("Grocer owes", "", "999.00", true)] // blank is inventory
    [InlineData("Grocer owes", "invoices", "999.00", false)]
    [InlineData("Groceries on the shelf", "inventory", "999.00", false)]
    [InlineData("Market stock", "inventory", "999.00", false)] // who pays at once owes nothing
    [InlineData("Money to come", "inventory", "150.00", true)] // December 18
    [InlineData("Money to come", "inventory", "250.00", true)] // December 4 and 18
    [InlineData("Money to come", "inventory", "100.00", false)] // December 4 alone: what came after would have been paid first
    [InlineData("Money to come", "inventory", "650.00", false)] // and July's 400, long paid
    [InlineData("Stored crops", "inventory", "70.00", false)] // the market's
    public void Goods_NamedForACustomerOrAsMuchAsOneTook_AreToldAsUnpaidBills(string item, string kind, string amount, bool told)
    {
        string folder = TestFolders.Make(
            ("crops.csv", "crop,unit\nBeets,lb\n"),
            ("beds.csv", "bed,length_ft\nA,10\n"),
            ("channels.csv", "channel,kind\nGrocer,wholesale\nMarket,market\n"),
            ("plantings.csv", "planting,crop,bed,bed_feet,in_bed\nB,Beets,A,10,2025-05-01\n"),
            ("harvests.csv", "date,planting,quantity\n2025-07-01,B,50\n"),
            ("sales.csv", "date,crop,channel,quantity,unit_price,amount\n2025-07-01,Beets,Grocer,8,50,\n2025-12-04,Beets,Grocer,2,,100\n"
                + "2025-12-18,Beets,grocer,1,50,\n2025-12-18,Beets,Grocer,2,50,\n2025-12-20,Beets,Market,1,70,\n"),
            ("balances.csv", $"date,item,class,amount,kind\n2025-12-31,{item},current-asset,{amount},{kind}\n"));

        Assert.Equal(told, FarmEconomics.Files.FarmFolder.Open(folder).Problems.Any(problem => problem.Code == "W210"));
    }
}
