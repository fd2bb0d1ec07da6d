using FarmEconomics.Budgets.Completeness;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Budgets.Completeness;

/// <summary>What is missing from a season's records, each gap by itself, with the money it touches and the row to look at.</summary>
public class GapTests
{
    // A season without a gap: 100 picked and sold at 2, growing and picking logged, seed in the books.
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { InterestPercent = 0m, OwnerWage = 10m }).Crop("beets", storageDays: 300).Bed("bed").Channel("market", ChannelKind.Market).Worker("Al", WorkerKind.Hired, 10).Worker("Di", WorkerKind.Owner)
        .Planting("b", "beets", "bed", 10, "2025-05-01", "2025-08-01").Pick("2025-07-01", "b", 100).Sell("2025-07-01", "beets", "market", 100, 2).Work("2025-06-01", "Al", 2, "grow", crop: "beets").Work("2025-07-01", "Al", 1, "harvest", crop: "beets")
        .Spend("2025-05-01", 20, "seed").AsOf("2025-12-31");

    private static IReadOnlyList<RecordGap> Gaps(FarmBuilder farm) => CompletenessReview.Gaps(farm.Season(2025));

    private static (string What, decimal Money) Only(FarmBuilder farm) => Assert.Single(Gaps(farm).Select(gap => (gap.What, gap.Money)));

    [Fact]
    public void WholeRecords_HaveNoGap() => Assert.Empty(Gaps(Farm()));

    /// <summary>Corn bought in for the stand: no planting takes its money, by a guess or otherwise.</summary>
    [Fact]
    public void SoldWithoutAPlanting_IsSaidToStandWithNoCrop()
    {
        RecordGap gap = Assert.Single(Gaps(Farm().Crop("corn", storageDays: 5).Sell("2025-08-01", "corn", "market", 60, 1)));
        Assert.Equal((60m, "corn has no planting that year: the money stands with no crop."), (gap.Money, gap.Changes));
    }

    [Fact]
    public void WithoutChannels_WhatWasEatenAndGivenAwayCountsAsSold()
    {
        FarmBuilder farm = Farm();
        farm.Tables.Present.Remove("channels");
        Assert.Equal(("What kind each channel is isn't known: no channels.csv.", 200m), Only(farm));
    }

    [Fact]
    public void WithoutBooks_CostsAreAGapOfAllTheOutput()
    {
        FarmBuilder farm = Farm();
        farm.Empty("expenses");
        farm.Tables.Present.Remove("expenses");
        Assert.Equal(("Costs are not known: no expense records.", 200m), Only(farm));
    }

    [Fact]
    public void WithoutLabor_HoursAreAGapAndTheirCostIsNotToldBeside()
    {
        FarmBuilder farm = Farm();
        farm.Empty("labor");
        farm.Tables.Present.Remove("labor");
        Assert.Equal(("Hours are not known: no labor records.", 200m), Only(farm));
    }

    /// <summary>
    /// Wages of 30 tell what hired labor cost; that unpaid hours carry no value goes without saying where no hours are known.
    /// </summary>
    [Fact]
    public void WagesWithoutALog_AreTheGapOfHoursAlone()
    {
        FarmBuilder farm = Farm().Spend("2025-07-31", 30, "wages");
        farm.Empty("labor");
        farm.Tables.Present.Remove("labor");
        Assert.NotNull(farm.Season(2025).Known.OwnerLabor);
        Assert.Equal(("Hours are not known: no labor records.", 200m), Only(farm));
    }

    [Fact]
    public void HoursWithoutAWage_AreAGap() => Assert.Equal(("The cost of labor is not known: hired hours without a wage and no wages in the books.", 200m), Only(Farm().Work("2025-07-02", "Who", 1, "grow", crop: "beets")));

    [Fact]
    public void OwnersWithoutAWage_AreAGap() =>
        Assert.Equal(("Unpaid hours carry no value: no owner_wage among the settings.", 200m), Only(Farm().With(settings => settings with { OwnerWage = null }).Work("2025-07-02", "Di", 1, "grow", crop: "beets")));

    [Fact]
    public void AssetsWithoutInterest_AreAGap() => Assert.Equal(
        ("The cost of owning equipment and buildings is not known: no interest_percent among the settings.", 200m),
        Only(Farm().With(settings => settings with { InterestPercent = null }).Pool("room", "bed-feet").Asset("cooler", "room", "2025-01-01", 1000, 10)));

    [Fact]
    public void SoldBeyondWhatWasPicked_IsToldByCropWithItsWeeksAndMoney()
    {
        // June 30 is a Monday: July 1 and 6 lie in its week, July 7 in the next.
        FarmBuilder farm = Farm().Sell("2025-07-01", "beets", "market", 5, 2).Sell("2025-07-06", "beets", "market", 1, 2);
        Assert.Equal(("6 lb of beets left in a week with nothing picked to draw on.", 12m), Only(farm));
        Assert.Equal(new SourceLine("sales.csv", 3), Gaps(farm)[0].First);
        Assert.Equal(("7 lb of beets left in 2 weeks with nothing picked to draw on.", 14m), Only(farm.Sell("2025-07-07", "beets", "market", 1, 2)));
    }

    [Fact]
    public void CreditWithoutGoods_IsNoGap() => Assert.Empty(Gaps(Farm().Sell("2025-07-05", "beets", "market", 0, amount: -3)));

    [Fact]
    public void CropWithoutAnHourOfItsOwn_IsAGapOfItsOutput()
    {
        FarmBuilder farm = Farm().Crop("kale").Planting("k", "kale", "bed", 10, "2025-05-01", "2025-08-01").Pick("2025-07-01", "k", 10).Sell("2025-07-01", "kale", "market", 10, 3);
        Assert.Equal(("No hour is logged to kale or a planting of it.", 30m), Only(farm));

        // Hours of a pool, or of a standard, are not its own.
        Assert.Equal(("No hour is logged to kale or a planting of it.", 30m), Only(farm.Work("2025-07-01", "Al", 5, "pack").Standard("kale", Stage.Grow, 60, RatePer.Planting)));
        Assert.Empty(Gaps(farm.Work("2025-07-01", "Al", 50, "harvest", planting: "k")));
    }

    [Fact]
    public void HoursThatNameNothing_SpreadByAStandard_AreNotLoggedToACrop()
    {
        FarmBuilder farm = Farm().Crop("kale").Planting("k", "kale", "bed", 10, "2025-05-01", "2025-08-01").Pick("2025-07-01", "k", 10).Sell("2025-07-01", "kale", "market", 10, 3).Work("2025-07-01", "Al", 5, "pack").Standard("kale", Stage.Pack, 60, RatePer.Planting);
        Assert.Equal(5m, farm.Season(2025).CropNamed("kale").LaborHours.Value);
        Assert.Equal(("No hour is logged to kale or a planting of it.", 30m), Only(farm));
    }

    [Fact]
    public void MoreThanHalfOfTheHoursByStandards_IsAGap()
    {
        // 3 h are logged; packing by the standard adds 3 h, which is just half, or 4.
        Assert.Empty(Gaps(Farm().Standard("beets", Stage.Pack, 180, RatePer.Planting)));
        (string what, decimal money) = Only(Farm().Standard("beets", Stage.Pack, 540, RatePer.Planting));
        Assert.Equal(200m, money);
        Assert.Contains("75", what, StringComparison.Ordinal); // 9 of 12 h
        Assert.Contains("estimated by time standards", what, StringComparison.Ordinal);
    }

    [Fact]
    public void MonthWithHarvestsButNoHours_IsAGapOfItsSales()
    {
        FarmBuilder farm = Farm().Pick("2025-08-31", "b", 10).Sell("2025-08-01", "beets", "market", 0, amount: 1).Sell("2025-08-31", "beets", "market", 10, 4).Sell("2025-09-01", "beets", "market", 0, amount: 9);
        Assert.Equal(("There are harvests but no hours from 2025-08-01 on for a month.", 41m), Only(farm));
        Assert.Equal(new SourceLine("harvests.csv", 3), Gaps(farm)[0].First);
        Assert.Empty(Gaps(farm.Work("2025-08-01", "Al", 1, "office")));
    }

    [Fact]
    public void MonthWithoutHours_OfAnotherYear_IsNotThisYears() =>
        Assert.Empty(Gaps(Farm().Planting("old", "beets", "bed", 10, "2024-05-01", "2024-08-01").Pick("2024-12-31", "old", 1).Sell("2024-12-31", "beets", "market", 1, 1)
            .Pick("2026-01-01", "b", 1).AsOf("2026-03-31")));

    [Fact]
    public void ControlTotalNotMet_IsAGapOfTheDifferenceWhereItIsMoney()
    {
        FarmBuilder farm = Farm().Total("sales", " Amount ", 230, "2025-01-01", "2025-12-31");
        Assert.Equal(("The control total of sales Amount is 230, the records hold 200.", 30m), Only(farm));
        Assert.Equal(new SourceLine("totals.csv", 2), Gaps(farm)[0].First);
        Assert.Contains("in no figure", Gaps(farm)[0].Changes, StringComparison.Ordinal);
        Assert.Contains("shared out", Gaps(Farm().Total("sales", "quantity", 90))[0].Changes, StringComparison.Ordinal);
        Assert.Equal(("The control total of sales quantity is 90, the records hold 100.", 0m), Only(Farm().Total("sales", "quantity", 90)));
        Assert.Empty(Gaps(Farm().Total("sales", "amount", 200)));
        Assert.Empty(Gaps(Farm().Total("loads", "kwh", 200)));
    }

    [Theory]
    [InlineData("2024-01-01", "2024-12-31", false)]
    [InlineData("2024-01-01", "2025-01-01", true)]
    [InlineData("2025-12-31", "2026-12-31", true)]
    [InlineData("2026-01-01", "2026-12-31", false)]
    [InlineData(null, "2024-12-31", false)]
    [InlineData("2026-01-01", null, false)]
    [InlineData(null, null, true)]
    public void ControlTotal_IsOfTheSeasonItsDaysTouch(string? from, string? to, bool told) => Assert.Equal(told ? 1 : 0, Gaps(Farm().Total("sales", "amount", 999, from, to)).Count);

    [Fact]
    public void PriceFarFromTheOthers_IsAGapOfWhatItWouldChange()
    {
        FarmBuilder farm = Farm().Pick("2025-07-10", "b", 100);
        for (int i = 0; i < 8; i++)
        {
            farm.Sell("2025-07-11", "beets", "market", 1, 2);
        }

        Assert.Equal(("The price of beets through market is 20; the median of 10 is 2.", 18m), Only(farm.Sell("2025-07-12", "beets", "market", 1, 20)));
    }

    [Fact]
    public void HoursFarFromTheOthers_AreNoGapBecauseTheyCarryNoMoney()
    {
        FarmBuilder farm = Farm();
        for (int i = 0; i < 9; i++)
        {
            farm.Work("2025-07-01", "Al", i < 8 ? 1 : 50, "wash", crop: "beets").Task("wash", Stage.Pack);
        }

        Assert.Empty(Gaps(farm));
    }

    [Fact]
    public void WorstGap_StandsFirst() => Assert.Equal(
        [200m + 12m, 30m, 12m],
        Gaps(Farm().With(settings => settings with { OwnerWage = null }).Work("2025-07-02", "Di", 1, "grow", crop: "beets").Sell("2025-07-01", "beets", "market", 6, 2).Total("sales", "amount", 242)).Select(gap => gap.Money));

    [Fact]
    public void Nothing_IsRefused() => Assert.Throws<ArgumentNullException>(() => CompletenessReview.Gaps(null!));
}
