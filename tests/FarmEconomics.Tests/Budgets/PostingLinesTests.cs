using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Budgets;

/// <summary>On which line each posting of the ledger stands, and with how much.</summary>
public class PostingLinesTests
{
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { InterestPercent = 0m, OwnerWage = 5m }).Crop("beets")
        .Crop("kale").Bed("bed").Planting("b", "beets", "bed", 10, "2025-05-01", "2025-06-30").Channel("market", ChannelKind.Market)
        .Worker("Al", WorkerKind.Hired, 10).Pick("2025-06-20", "b", 100).AsOf("2025-07-10");

    /// <summary>
    /// Of beets at a list price of 2: 40 lb in boxes that brought 30 of share income, 10 eaten worth 20, 50 sold at 3. Kale was never
    /// planted, but 4 lb of it brought 8.
    /// </summary>
    [Fact]
    public void Sales_StandOnTheLineOfTheirChannelWithWhatTheyBrought()
    {
        SeasonReview season = Farm().Channel("box", ChannelKind.Share).Channel("house", ChannelKind.Household).Price("beets", 2m)
            .Income("2025-06-20", "box", 30).Sell("2025-06-20", "beets", "box", 40).Sell("2025-06-20", "beets", "house", 10)
            .Sell("2025-06-20", "beets", "market", 50, 3m).Sell("2025-06-21", "kale", "market", 4, 2m).Season(2025);
        Assert.Equal(
            [
                (BudgetLine.HouseholdUse, "b", null, 20m, 10m), (BudgetLine.Sales, null, Unallocated.NotAssigned, 8m, 4m),
                (BudgetLine.Sales, "b", null, 150m, 50m), (BudgetLine.ShareIncome, "b", null, 30m, 40m),
            ],
            season.Postings.Where(posting => posting.Kind == PostingKind.Sale)
                .Select(sale => (sale.Line, sale.Planting?.Planting.Name, sale.Unallocated, sale.Amount.Amount, sale.Quantity))
                .OrderBy(sale => sale.Line.ToString(), StringComparer.Ordinal).ThenBy(sale => sale.Quantity)
        );
    }

    /// <summary>On hand are 100 lb of beets at a list price of 2, and 4 lb of chard, worth nobody knows what, but no lettuce.</summary>
    [Fact]
    public void Stock_IsPostedWhereSomethingIsOnHandAlsoWithoutAPrice()
    {
        SeasonReview season = Farm().Crop("chard").Crop("lettuce").Planting("c", "chard", "bed", 10, "2025-05-01", "2025-06-30")
            .Planting("l", "lettuce", "bed", 10, "2025-05-01", "2025-06-30").Pick("2025-06-20", "c", 4).Pick("2025-06-20", "l", 6)
            .Sell("2025-06-20", "lettuce", "market", 6, 1m).Price("beets", 2m).Season(2025);
        Assert.Equal(
            [("b", 200m, 100m), ("c", 0m, 4m)],
            season.Postings.Where(posting => posting.Kind == PostingKind.Stock)
                .Select(stock => (stock.Planting!.Planting.Name, stock.Amount.Amount, stock.Quantity))
        );
    }

    /// <summary>Hours of the barn, an overhead pool, stand on overhead, those of the shed on labor.</summary>
    [Fact]
    public void HoursOfPools_StandOnLaborButThoseOfOverheadPoolsOnOverhead()
    {
        SeasonReview season = Farm().Pool("barn", "bed-feet", StatementLine.Overhead).Pool("shed", "bed-feet")
            .Work("2025-06-01", "Al", 2, "pack", pool: "shed").Work("2025-06-01", "Al", 3, "pack", pool: "barn").Season(2025);
        Assert.Equal(
            [("barn", BudgetLine.Overhead, 3m), ("shed", BudgetLine.Labor, 2m)],
            season.Postings.Where(posting => posting is { Kind: PostingKind.Charge, Hours: > 0m })
                .Select(posting => (posting.Pool!.Name, posting.Line, posting.Hours))
                .OrderBy(posting => posting.Name, StringComparer.Ordinal)
        );
    }

    /// <summary>2 h and 3 h at 10 on the beets: 5 h, 50.</summary>
    [Fact]
    public void GroupBy_AddsUpHoursAndMoney()
    {
        SeasonReview season = Farm().Work("2025-06-01", "Al", 2, "grow", crop: "beets").Work("2025-06-08", "Al", 3, "grow", crop: "beets")
            .Season(2025);
        PostingSum<Stage> sum = Assert.Single(
            season.Postings.GroupBy(posting => posting.Stage ?? Stage.Overhead), sum => sum.Key == Stage.Grow
        );
        Assert.Equal((5m, 50m), (sum.Hours, sum.Amount.Amount));
    }

    /// <summary>Costs first, then what was sold: the same one by one as from first to last.</summary>
    [Fact]
    public void EachPosting_IsFoundAtItsPlace()
    {
        SeasonReview season = Farm().Spend("2025-05-01", 12, "seed", crop: "beets").Spend("2025-05-01", 7, "seed", crop: "beets")
            .Sell("2025-06-20", "beets", "market", 50, 3m).Sell("2025-06-21", "beets", "market", 20, 3m).Season(2025);
        Assert.Equal(
            season.Postings.Select(posting => (posting.Kind, posting.Line, posting.Amount, posting.Quantity)),
            Enumerable.Range(0, season.Postings.Count).Select(at => season.Postings[at])
                .Select(posting => (posting.Kind, posting.Line, posting.Amount, posting.Quantity))
        );
        Assert.Equal((PostingKind.Sale, 20m), (season.Postings[^1].Kind, season.Postings[^1].Quantity));
    }
}
