using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Budgets;

/// <summary>Which seasons of a perennial bear, how many there are, and what each takes of what establishing it cost.</summary>
public class EstablishmentByHandTests
{
    /// <summary>1,000 over 4 seasons without interest are 250 each: (100 + 250) / 50 units + 2 a unit.</summary>
    [Fact]
    public void BreakEvenPrice_CoversTheSeasonAndItsPart() =>
        Assert.Equal(9m, new Establishment(1000m, 0m, 4m).BreakEvenPrice(100m, 2m, 50m));

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    public void BreakEvenPrice_OfNoYield_IsRefused(int yield) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new Establishment(1000m, 0m, 4m).BreakEvenPrice(100m, 2m, yield));

    [Fact]
    public void WithInterest_BelowZero_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Establishment.WithInterest([1m], -0.1m));

    /// <summary>
    /// 300 of plants in 2021; it bore in 2022 and 2024, and its bed was cleared in 2024: from the first to the last that bore are 3
    /// seasons, 100 each without interest, whatever the crop's bearing_years say.
    /// </summary>
    [Fact]
    public void Cleared_TheSeasonsFromTheFirstToTheLastThatBoreShareIt()
    {
        FarmBuilder farm = Berries(bears: 10m, established: null).Planting("b", "berries", "one", 20, "2021-05-01", "2024-11-01")
            .Spend("2021-05-01", 300m, "plants", planting: "b");
        FarmReview review = Picked(farm, 2022, 2024).AsOf("2025-12-31").Review();

        Assert.Equal(3m, Account(review, 2022).BearingYears.Value);
        Assert.Equal([-300m, 100m, 100m, 100m], Enumerable.Range(2021, 4).Select(year => LineOf(review, year)));
    }

    /// <summary>
    /// Bought in bearing: 31 a bed-foot x 20 bed-feet = 620. Picked in its first crop year and the next, then cleared: 2 seasons, 310 each,
    /// a fixed cost.
    /// </summary>
    [Fact]
    public void Cleared_ThatBoreInItsFirstYear_CountsFromThere()
    {
        FarmBuilder farm = Berries(bears: 10m, established: 31m).Planting("b", "berries", "one", 20, "2023-05-01", "2024-11-01");
        FarmReview review = Picked(farm, 2023, 2024).AsOf("2025-12-31").Review();

        Assert.Equal((2023, 620m), (Account(review, 2023).FirstBearingYear, Account(review, 2023).EstablishmentCost.Value));
        Assert.Equal([310m, 310m], [LineOf(review, 2023), LineOf(review, 2024)]);
        Assert.Equal(310m, review.Season(2023).Plantings[0].Sums.CostByBehavior[(int)CostDriver.Fixed]);
        review.Season(2023).AssertProven();
    }

    /// <summary>
    /// 8 bed-feet were cleared, 12 stand still: it isn't cleared, and 620 go by the crop's 10 bearing years.
    /// </summary>
    [Fact]
    public void StandingInOneOfItsBeds_IsNotCleared()
    {
        FarmBuilder farm = Berries(bears: 10m, established: 31m).Bed("two").Planting("b", "berries", "one", 8, "2023-05-01", "2024-11-01")
            .Planting("b", "berries", "two", 12, "2023-05-01");
        Assert.Equal(62m, LineOf(Picked(farm, 2023, 2024).AsOf("2025-12-31").Review(), 2023));
    }

    /// <summary>Cleared on the closing date: it bore 2 seasons, 310 each, of which the second counts its 11 months begun.</summary>
    [Fact]
    public void Cleared_OnTheClosingDate_IsCleared()
    {
        FarmBuilder farm = Berries(bears: 10m, established: 31m).Planting("b", "berries", "one", 20, "2023-05-01", "2024-11-01");
        FarmReview review = Picked(farm, 2023, 2024).AsOf("2024-11-01").Review();
        Assert.Equal([310m, 284.17m], [LineOf(review, 2023), LineOf(review, 2024)]);
    }

    /// <summary>5 lb were sold in 2022, of which no row says that they were picked: they grew on it, so it bore.</summary>
    [Fact]
    public void SoldBeyondWhatWasPicked_ItBore()
    {
        FarmBuilder farm = Berries(bears: 4m, established: null).Planting("b", "berries", "one", 20, "2021-05-01")
            .Spend("2021-05-01", 300m, "plants", planting: "b").Sell("2022-07-02", "berries", "market", 5, 2m);
        FarmReview review = Picked(farm, 2023).AsOf("2023-12-31").Review();

        Assert.Equal(2022, Account(review, 2022).FirstBearingYear);
        Assert.Equal([-300m, 75m, 75m], Enumerable.Range(2021, 3).Select(year => LineOf(review, year)));
    }

    [Fact]
    public void NotYetBearing_CarriesItsCostAndSaysSo()
    {
        FarmReview review = Berries(bears: 4m, established: null).Planting("b", "berries", "one", 20, "2022-05-01")
            .Spend("2022-05-01", 300m, "plants", planting: "b").Spend("2023-05-01", 40m, "mulch", planting: "b")
            .AsOf("2023-12-31").Review();

        Assert.Null(Account(review, 2022).FirstBearingYear);
        Assert.Equal("it hasn't borne yet", Account(review, 2022).EstablishmentCost.Reason);
        Assert.Equal([-300m, -40m], [LineOf(review, 2022), LineOf(review, 2023)]);
    }

    [Fact]
    public void BoreWhenTheRecordsBegin_WithoutItsCost_SaysWhatToGive()
    {
        FarmBuilder farm = Berries(bears: 4m, established: null).Planting("b", "berries", "one", 20, "2023-05-01");
        Assert.Equal(
            "the records begin after it was established; give establishment_cost in crops",
            Account(Picked(farm, 2023).AsOf("2023-12-31").Review(), 2023).EstablishmentCost.Reason
        );
    }

    /// <summary>
    /// It bears 2 seasons: what they take can't be told without interest_percent, but a third one takes nothing, and that is known.
    /// </summary>
    [Fact]
    public void AfterItsBearingSeasons_NothingIsTakenWhateverTheInterest()
    {
        FarmBuilder farm = Berries(bears: 2m, established: 31m).Planting("b", "berries", "one", 20, "2023-05-01")
            .With(settings => settings with { InterestPercent = null });
        FarmReview review = Picked(farm, 2023, 2024, 2025).AsOf("2025-12-31").Review();
        Assert.Equal([null, null, 0m], Enumerable.Range(2023, 3).Select(year => LineOf(review, year)));
    }

    private static FarmBuilder Berries(decimal? bears, decimal? established) =>
        new FarmBuilder(new FarmSettings { InterestPercent = 0m, UnpaidHours = UnpaidHours.None }).Perennial("berries", bears, established)
            .Bed("one").Channel("market", ChannelKind.Market);

    private static FarmBuilder Picked(FarmBuilder farm, params int[] years)
    {
        foreach (int year in years)
        {
            farm.Pick($"{year}-07-01", "b", 10).Sell($"{year}-07-01", "berries", "market", 10, 2m).Spend($"{year}-06-01", 1m, "mulch");
        }

        return farm;
    }

    private static StandAccount Account(FarmReview review, int year)
    {
        SeasonReview season = review.Season(year);
        return season.StandOf(season.Plantings[0].Enterprises[0].Planting);
    }

    private static decimal? LineOf(FarmReview review, int year) =>
        review.Season(year).FindBudget("berries")!.Line(BudgetLine.Establishment).Value;
}
