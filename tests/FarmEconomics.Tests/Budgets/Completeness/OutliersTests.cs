using FarmEconomics.Budgets.Completeness;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using Xunit;

namespace FarmEconomics.Tests.Budgets.Completeness;

public class OutliersTests
{
    private static readonly DateOnly May = new(2025, 5, 1);

    [Fact]
    public void Of_OnePriceTenTimesTheOthers_IsFoundWithTheMoneyInIt()
    {
        // Median 3.00; the slip is 30.00 for 2 units: 54.00 too much.
        RecordTables tables = Sales(3m, 3m, 3.25m, 3m, 2.75m, 3m, 3m, 30m);

        Outlier outlier = Assert.Single(Outliers.Of(tables, May, May.AddMonths(1)));

        Assert.Equal((30m, 3m, 8, 54m), (outlier.Value, outlier.Median, outlier.Count, outlier.Money));
        Assert.Equal(9, outlier.Source.Line);
    }

    [Fact]
    public void Of_PriceRaisedByATenth_IsNone() => Assert.Empty(Outliers.Of(Sales(3m, 3m, 3m, 3m, 3m, 3m, 3m, 3.3m), May, May.AddMonths(1)));

    // By hand: ln 2 apart from a median with the least spread ln 1.05 is 0.6745 x 0.6931 / 0.04879 = 9.58.
    [Fact]
    public void Of_Score_IsTheModifiedZScoreOfTheLogarithms() =>
        Assert.Equal(9.58, Assert.Single(Outliers.Of(Sales(3m, 3m, 3m, 3m, 3m, 3m, 3m, 6m), May, May.AddMonths(1))).Score, 2);

    [Fact]
    public void Of_FewValues_IsNone() => Assert.Empty(Outliers.Of(Sales(3m, 3m, 30m), May, May.AddMonths(1)));

    private static RecordTables Sales(params decimal[] prices)
    {
        RecordTables tables = new();
        for (int i = 0; i < prices.Length; i++)
        {
            tables.Add<SaleRow>(new RowValues { ["date"] = May.AddDays(i), ["crop"] = "kale", ["channel"] = "market", ["quantity"] = 2m, ["unit_price"] = prices[i], Source = new SourceLine("sales.csv", i + 2) });
        }

        return tables;
    }
}
