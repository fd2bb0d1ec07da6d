using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.Tests.Records;

/// <summary>Money a sold asset fetched is cash; the same money in income would be counted twice.</summary>
public class AssetSaleTests
{
    [Theory]
    [InlineData("2025-09-12", "other", "650.00", true)]
    [InlineData("2025-08-12", "other", "650.00", true)]
    [InlineData("2025-08-11", "other", "650.00", false)]
    [InlineData("2025-10-14", "other", "650.00", false)]
    [InlineData("2025-09-12", "other", "649.99", false)]
    [InlineData("2025-09-12", "shares", "650.00", false)]
    public void Income_OfTheSameAmountWithinAMonth_IsTold(string date, string channel, string amount, bool told)
    {
        string folder = TestFolders.Make(
            ("farm.csv", "setting,value\ninterest_percent,5\n"),
            ("crops.csv", "crop,unit\nKale,lb\n"),
            ("beds.csv", "bed,length_ft\nA,10\n"),
            ("channels.csv", "channel,kind\nStall,market\nother,other\nshares,share\n"),
            ("plantings.csv", "planting,crop,bed,bed_feet,in_bed\nK,Kale,A,10,2025-05-01\n"),
            ("harvests.csv", "date,planting,quantity\n2025-07-01,K,5\n"),
            ("sales.csv", "date,crop,channel,quantity,amount\n2025-07-01,Kale,Stall,5,10\n"),
            ("assets.csv", "asset,pool,in_service,cost,life_years,retired,sold_for\n"
                + "Tiller,general overhead,2018-05-01,2400.00,10,2025-09-12,650.00\n"),
            ("income.csv", $"date,channel,amount\n{date},{channel},{amount}\n"));

        Assert.Equal(told, FarmEconomics.Files.FarmFolder.Open(folder).Problems.Any(problem => problem.Code == "W207"));
    }
}
