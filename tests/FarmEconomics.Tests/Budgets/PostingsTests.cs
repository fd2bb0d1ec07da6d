using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Budgets;

/// <summary>The ledger of a season: every budget is a sum of its postings.</summary>
public class PostingsTests
{
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { InterestPercent = 5m, OwnerWage = 20m }).Crop("beets").Crop("kale").Bed("one").Bed("two")
        .Planting("b", "beets", "one", 10, "2025-05-01", "2025-07-15").Planting("k", "kale", "two", 10, "2025-05-01", "2025-07-15")
        .Channel("market", ChannelKind.Market, 10).Channel("house", ChannelKind.Household).Pick("2025-07-01", "b", 100).Pick("2025-07-01", "k", 100).Price("kale", 2m)
        .Sell("2025-07-01", "beets", "market", 90, 3).Sell("2025-07-02", "beets", "market", 15, 3).Sell("2025-07-01", "kale", "house", 40)
        .Pool("room", "bed-feet").Asset("cooler", "room", "2025-01-01", 1000, 10).Worker("Al", WorkerKind.Hired, 10).Worker("Di", WorkerKind.Owner)
        .Work("2025-06-01", "Al", 2, "grow", crop: "beets").Work("2025-06-01", "Di", 3, "grow").Spend("2025-05-01", 30, "seed", crop: "beets").Spend("2025-05-01", 31, "seed").AsOf("2025-12-31");

    [Fact]
    public void Postings_OfAPlantingAndLine_SumToItsBudget()
    {
        SeasonReview season = Farm().Season(2025);
        season.AssertProven();
        foreach (EnterpriseBudget planting in season.Plantings)
        {
            foreach (BudgetLine line in BudgetLines.All.Where(line => !line.IsTotal()))
            {
                decimal sum = season.Postings.Of(planting.Enterprises[0], line).Sum(posting => posting.Line == line ? posting.Amount.Amount : posting.Fee.Amount);
                Assert.Equal((planting.Name, line, planting.Line(line).Amount.Amount), (planting.Name, line, sum));
            }

            Assert.Equal(planting.LaborHours.Value + planting.Sums.OverheadHours, season.Postings.Where(posting => posting.Planting == planting.Enterprises[0]).Sum(posting => posting.Hours));
        }
    }

    [Fact]
    public void GroupBy_Channel_AddsUpWhatWentThroughIt()
    {
        SeasonReview season = Farm().Season(2025);
        Assert.Equal(
            [("market", 315m, 31.5m, 105m), ("house", 80m, 0m, 40m)],
            season.Postings.GroupBy(posting => posting.Channel?.Name ?? "").Where(sum => sum.Key.Length > 0).Select(sum => (sum.Key, sum.Amount.Amount, sum.Fee.Amount, sum.Quantity)).OrderByDescending(sum => sum.Item2));
        Assert.All(season.Postings.Where(posting => posting.Kind == PostingKind.Entry), posting => Assert.NotNull(posting.Source));
        Assert.Contains(season.Postings, posting => posting is { Kind: PostingKind.Charge, Stream: CostStream.Ownership } && posting.Amount != Money.Zero);
    }

    [Fact]
    public void Postings_OfPools_HoldWhatTheyPassOn()
    {
        SeasonReview season = Farm().Season(2025);
        foreach (PoolResult pool in season.Pools)
        {
            Assert.Equal(pool.Total.Amount, season.Postings.Where(posting => posting.Kind == PostingKind.Entry && posting.Pool == pool.Pool).Sum(posting => posting.Amount.Amount));
            Assert.Equal(pool.Total.Amount, season.Postings.Where(posting => posting.Kind == PostingKind.Charge && posting.Pool == pool.Pool).Sum(posting => posting.Amount.Amount));
            Assert.Equal(pool.Hours, season.Postings.Where(posting => posting.Kind == PostingKind.Charge && posting.Pool == pool.Pool).Sum(posting => posting.Hours));
        }
    }
}
