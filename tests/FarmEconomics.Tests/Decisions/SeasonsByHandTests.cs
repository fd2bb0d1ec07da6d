using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Decisions;

/// <summary>
/// What a crop added in an earlier season, at the prices, wages and length of this one (docs/methods.md, section 17), on paper.
/// </summary>
public class SeasonsByHandTests
{
    /// <summary>
    /// 2024, 100 feet: 100 lb through the stall at a list price of 2 that is 3 now, less 10%: 180 x 1.5 = 270. 20 lb to a shop without list
    /// prices for 36, and 10 eaten, worth 20: by the farm's rise of 1.5, 54 and 30. Seed 30 a tenth dearer now: 33. 5 hired hours at 15,
    /// now 20: 100; 2 own at 10, now 20: 40. 181 for 100 feet is 90.50 for this year's 50. 2025: 60 lb x 3 less 10%, seed 20, 3 hired and 1
    /// own hour at 20: 62.
    /// </summary>
    [Fact]
    public void EarlierSeason_IsToldAtTodaysPricesWagesAndLength()
    {
        FarmReview review = Farm().Review();
        Verdict kale = Verdicts.Of(review, SeasonCosts.Of(review.Season(2025))).Crops.Single();
        Assert.Equal([(2024, 90.50m), (2025, 62m)], kale.Seasons.Select(season => (season.CropYear, season.Contribution.Amount)));
        Assert.Equal(76.25m, kale.Mean.Amount);
    }

    /// <summary>Without a list price of today nothing says by how much prices rose: 180 + 36 + 20 - 33 - 140 = 63, half of it.</summary>
    [Fact]
    public void EarlierSeason_WithoutListPrices_IsToldAtItsOwn()
    {
        FarmReview review = Farm().Without<PriceRow>(price => price.From == FarmBuilder.Day("2024-01-01")).Review();
        Assert.Equal(31.50m, Verdicts.Of(review, SeasonCosts.Of(review.Season(2025))).Crops.Single().Seasons[0].Contribution.Amount);
    }

    /// <summary>
    /// 25 of payroll taxes in 2024 make an hour then cost (75 + 25) / 5 = 20, what one costs now: the 5 hours are told at 100 as before,
    /// not at 100 x 20 / 15.
    /// </summary>
    [Fact]
    public void EarlierSeason_WithPayrollTaxes_IsToldAtWhatAnHourCostWithThem()
    {
        FarmReview review = Farm().Category("payroll taxes", ExpenseClass.LaborBurden).Spend("2024-08-01", 25m, "payroll taxes").Review();
        Assert.Equal(90.50m, Verdicts.Of(review, SeasonCosts.Of(review.Season(2025))).Crops.Single().Seasons[0].Contribution.Amount);
    }

    /// <summary>
    /// Kale added 70 and 90 at 100 of output: 10 above its mean and below, 2 x 10^2 / 100^2 over one degree of freedom. Chard, thrown
    /// out in both its seasons, has no output to tell a spread in parts of, and beets of one season have no spread.
    /// </summary>
    [Fact]
    public void Spread_IsToldOfCropsWithOutputAndTwoSeasons()
    {
        static SeasonContribution Season(int year, decimal added, decimal output) => new(year, new Money(added)) { Output = output };
        SeasonContribution[] kale = [Season(2024, 70m, 100m), Season(2025, 90m, 100m)], beets = [Season(2025, 40m, 100m)];
        SeasonContribution[] chard = [Season(2024, -30m, 0m), Season(2025, -50m, 0m)];
        Assert.Equal(0.02m, CropSeasons.PooledVariance([kale, chard, beets]));
        Assert.Null(CropSeasons.PooledVariance([chard, beets]));
    }

    private static FarmBuilder Farm() => new FarmBuilder(
            new FarmSettings
            {
                OwnerWage = 20m,
                InterestPercent = 5m,
                PriceChangePercent = 10m,
            }
        ).AsOf("2025-12-31").Bed("One").Channel("stall", ChannelKind.Market, fee: 10m).Channel("shop", ChannelKind.Wholesale)
            .Channel("table", ChannelKind.Household).Worker("me", WorkerKind.Owner, 10m)
            .Worker("me", WorkerKind.Owner, 20m, from: "2025-01-01").Worker("Bo", WorkerKind.Hired, 15m)
            .Worker("Bo", WorkerKind.Hired, 20m, from: "2025-01-01").Crop("Kale").Price("Kale", 2m, "stall", from: "2024-01-01")
            .Price("Kale", 3m, "stall", from: "2025-01-01").Planting("K24", "Kale", "One", 100m, "2024-05-01", "2024-08-01")
            .Pick("2024-07-01", "K24", 130m).Sell("2024-07-01", "Kale", "stall", 100m, price: 2m)
            .Sell("2024-07-01", "Kale", "shop", 20m, price: 1.8m).Sell("2024-07-01", "Kale", "table", 10m, price: 2m)
            .Spend("2024-05-01", 30m, "seed", planting: "K24").Work("2024-07-01", "Bo", 5m, "harvest", planting: "K24")
            .Work("2024-07-01", "me", 2m, "harvest", planting: "K24").Planting("K25", "Kale", "One", 50m, "2025-05-01", "2025-08-01")
            .Pick("2025-07-01", "K25", 60m).Sell("2025-07-01", "Kale", "stall", 60m, price: 3m)
            .Spend("2025-05-01", 20m, "seed", planting: "K25").Work("2025-07-01", "Bo", 3m, "harvest", planting: "K25")
            .Work("2025-07-01", "me", 1m, "harvest", planting: "K25");
}
