using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions;

/// <summary>The states of verdicts, on small farms of several seasons (docs/methods.md, section 17).</summary>
public class VerdictTests
{
    private static readonly int[] Years = [2023, 2024, 2025];

    /// <summary>Beets and kale for some seasons, sold at list price; seed 30 and 5 own hours of picking at 20 each; other beds stand between, so that neither fits the other's.</summary>
    private static FarmBuilder Farm(decimal[] beets, decimal rent = 0m, string worker = "me", decimal spare = 0m)
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m }).AsOf("2025-12-31")
            .Bed("One", 100m + spare).Bed("Roof", structure: "tunnel").Channel("stall", ChannelKind.Market).Worker("me", WorkerKind.Owner).Worker("Bo", WorkerKind.Hired, 20m)
            .Crop("Beets").Crop("Kale").Price("Beets", 1m, "stall").Price("Kale", 4m, "stall");
        for (int i = Years.Length - beets.Length; i < Years.Length; i++)
        {
            int year = Years[i];
            decimal pounds = beets[i - (Years.Length - beets.Length)];
            farm.Planting($"B{year}", "Beets", "One", 100m, $"{year}-05-01", $"{year}-08-01").Pick($"{year}-07-01", $"B{year}", pounds).Sell($"{year}-07-01", "Beets", "stall", pounds, price: 1m)
                .Planting($"K{year}", "Kale", "Roof", 100m, $"{year}-05-01", $"{year}-08-01").Pick($"{year}-07-01", $"K{year}", 200m).Sell($"{year}-07-01", "Kale", "stall", 200m, price: 4m)
                .Work($"{year}-07-01", worker, 5m, "harvest", planting: $"B{year}").Spend($"{year}-05-01", 30m, "seed", planting: $"B{year}").Spend($"{year}-05-01", 30m, "seed", planting: $"K{year}");
            if (rent > 0m)
            {
                farm.Spend($"{year}-03-01", rent, "rent");
            }
        }

        return farm;
    }

    private static Verdict Beets(FarmBuilder farm) => Named("Beets", farm);

    private static Verdict Named(string crop, FarmBuilder farm)
    {
        FarmReview review = farm.Review();
        return Verdicts.Of(review, SeasonCosts.Of(review.Season(2025))).Crops.Single(verdict => verdict.Budget.Name == crop);
    }

    [Fact]
    public void LossesBeyondTheNoise_InCashToo_AreDropOrChange()
    {
        Verdict verdict = Beets(Farm([20m, 22m, 21m], worker: "Bo"));

        // 21 of sales less 30 of seed and 100 of hired picking.
        Assert.Equal(Direction.DropOrChange, verdict.Direction);
        Assert.Equal([-110m, -108m, -109m], verdict.Seasons.Select(season => season.Contribution.Amount));
        Assert.Equal((-109m, 109m), (verdict.Mean.Amount, verdict.Without.Cash.Amount));
        Assert.Equal(109m / 21m, verdict.Needs.Price.Value);
        Assert.False(verdict.LowersCash);
    }

    [Fact]
    public void OneBadSeason_IsNotDropped()
    {
        Verdict verdict = Beets(Farm([180m, 185m, 21m], worker: "Bo"));

        Assert.NotEqual(Direction.DropOrChange, verdict.Direction);
        Assert.True(verdict.Seasons[^1].Contribution.Amount < 0m);
    }

    [Fact]
    public void OneSeasonOnRecord_IsNeverDropped() => Assert.NotEqual(Direction.DropOrChange, Beets(Farm([20m], worker: "Bo")).Direction);

    [Fact]
    public void LossAtTheValueOfOwnHoursOnly_IsFixWithTheWageAtWhichItTurns()
    {
        Verdict verdict = Beets(Farm([80m, 82m, 81m]));

        // 81 of sales less 30 of seed leaves 51 for 5 own hours: it pays while an hour counts for less than 10.20.
        Assert.Equal(Direction.Fix, verdict.Direction);
        Assert.Equal(10.2m, verdict.TurnsAtWage.Value);
        Assert.Equal((-51m, 5m), (verdict.Without.Cash.Amount, verdict.Without.OwnHours));
    }

    [Fact]
    public void MeanWithinTheNoise_IsTooCloseToCall()
    {
        Verdict verdict = Beets(Farm([60m, 240m, 120m]));

        Assert.Equal(Direction.TooClose, verdict.Direction);
        Assert.True(Math.Abs(verdict.Mean.Amount) <= verdict.Noise.Amount);

        // By hand: within crops the squares are those of the beets alone, over two crops of three seasons each.
        decimal mean = (-70m + 110m - 10m) / 3m;
        decimal squares = ((-70m - mean) * (-70m - mean)) + ((110m - mean) * (110m - mean)) + ((-10m - mean) * (-10m - mean));
        Close.To((decimal)Math.Sqrt((double)(squares / 4m / 3m)), verdict.Noise.Amount, 0.005m);
    }

    [Fact]
    public void ShortOfFullCostButHelpful_IsFix_AndEarningItIsKeep()
    {
        Assert.Equal(Direction.Fix, Beets(Farm([200m, 202m, 201m], rent: 900m)).Direction);
        Assert.Equal(Direction.Keep, Beets(Farm([200m, 202m, 201m])).Direction);
    }

    [Fact]
    public void RoomAndAMarketThatTookMoreBefore_IsGrow_AndAFullMarketIsNot()
    {
        // In 2024 the stall took 260 at list price; 201 are sold now, and 20 bed-feet more bring 40.20 for 6 of seed and 20 of picking.
        Verdict grows = Beets(Farm([200m, 260m, 201m], worker: "Bo", spare: 60m));
        Assert.Equal(20m, grows.More!.BedFeet);
        Close.To(40.2m - 26m, grows.More.Means.Net.Amount, 0.01m);
        Assert.Equal(60m, grows.Room);
        Assert.Equal(grows.More.Means.Net.Amount > grows.Noise.Amount * 0.2m ? Direction.Grow : Direction.Keep, grows.Direction);

        Verdict full = Beets(Farm([200m, 202m, 204m], worker: "Bo", spare: 60m));
        Assert.Equal(Direction.Keep, full.Direction);
        Assert.Null(Beets(Farm([200m, 260m, 201m])).More); // no room
    }

    /// <summary>
    /// Beets bring 100 lb at 1 for 30 of seed and 0.1 own hours in each season: 68. Kale in another open bed brings 100 lb at its price, for as much, and the stall took 200 lb of it in 2023.
    /// </summary>
    private static FarmBuilder TwoOpenBeds(decimal kalePrice, bool perennial = false, bool perennialKale = false)
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m }).AsOf("2025-12-31")
            .Bed("One").Bed("Two").Channel("stall", ChannelKind.Market).Worker("me", WorkerKind.Owner).Worker("Bo", WorkerKind.Hired, 20m)
            .Crop("Beets", perennial: perennial).Crop("Kale", perennial: perennialKale).Price("Beets", 1m, "stall").Price("Kale", kalePrice, "stall");
        foreach (int year in Years)
        {
            decimal kale = year == 2023 ? 200m : 100m;
            farm.Planting($"B{year}", "Beets", "One", 100m, $"{year}-05-01", $"{year}-08-01").Pick($"{year}-07-01", $"B{year}", 100m).Sell($"{year}-07-01", "Beets", "stall", 100m, price: 1m)
                .Planting($"K{year}", "Kale", "Two", kale / 2m, $"{year}-05-01", $"{year}-08-01").Pick($"{year}-07-01", $"K{year}", kale).Sell($"{year}-07-01", "Kale", "stall", kale, price: kalePrice)
                .Work($"{year}-07-01", "me", 0.1m, "harvest", planting: $"B{year}").Work($"{year}-07-01", "me", 0.001m * kale, "harvest", planting: $"K{year}")
                .Spend($"{year}-05-01", 30m, "seed", planting: $"B{year}").Spend($"{year}-05-01", 0.3m * kale, "seed", planting: $"K{year}");
        }

        return farm;
    }

    [Fact]
    public void OtherCropsThatAddMore_AreTold_ByMoreThanTheNoiseAndTheShareOfOutputOnly()
    {
        // Nothing varies a bed-foot, so there is no noise. 100 bed-feet more of kale would be 200 lb; the stall took 200 lb at list before: 100 more sell at list, the rest below.
        Verdict much = Beets(TwoOpenBeds(4m));
        Assert.Equal(Direction.DropOrChange, much.Direction);
        Assert.Equal("Kale", Assert.Single(much.BetterMix!.Crops).Crop);
        Assert.True(much.WithMix!.Net.Amount > much.Noise.Amount + (0.15m * 100m));

        // At each price: told where what it adds is above 15 more than the noise, and nowhere else; some are told without the share only.
        int withoutShareOnly = 0;
        for (decimal price = 0.9m; price <= 2m; price += 0.02m)
        {
            FarmReview review = TwoOpenBeds(price).Review();
            SeasonCosts costs = SeasonCosts.Of(review.Season(2025));
            Verdict Told(VerdictSettings? settings) => Verdicts.Of(review, costs, settings).Crops.Single(verdict => verdict.Budget.Name == "Beets");
            Verdict without = Told(new VerdictSettings { MixShare = 0m });
            bool told = Told(null).BetterMix is not null;
            withoutShareOnly += without.BetterMix is not null && !told ? 1 : 0;
            Assert.True(!told || without.WithMix!.Net.Amount > 15m);
            Assert.True(told || without.WithMix is not { } mix || mix.Net.Amount <= 15m + (2m * without.Noise.Amount));
        }

        Assert.True(withoutShareOnly > 0);
    }

    [Fact]
    public void Perennial_IsNeverChangedForOtherCrops()
    {
        Verdict verdict = Beets(TwoOpenBeds(4m, perennial: true));

        Assert.Null(verdict.BetterMix);
        Assert.DoesNotContain(verdict.Direction, new[] { Direction.DropOrChange, Direction.Unknown });
        Assert.NotNull(Beets(TwoOpenBeds(4m)).BetterMix);
    }

    [Fact]
    public void Perennial_IsNeverPutInAnothersPlace_NorToldToGrow()
    {
        Assert.Equal(Direction.Grow, Named("Kale", TwoOpenBeds(4m)).Direction);

        FarmBuilder farm = TwoOpenBeds(4m, perennialKale: true);
        Assert.Null(Named("Beets", farm).BetterMix);
        Assert.NotEqual(Direction.Grow, Named("Kale", farm).Direction);
    }

    [Fact]
    public void ListPriceThatRose_RaisesPastSales()
    {
        FarmBuilder farm = Farm([200m, 200m, 200m]).Price("Beets", 2m, "stall", "2025-01-01");
        foreach (SaleRow row in farm.Tables.Sales.Where(row => row.Crop == "Beets" && row.Date.Year == 2025).ToList())
        {
            farm.Set(row, SaleRow.UnitPriceColumn, 2m);
        }

        // 400 at today's price in each season, less 30 and 100.
        Assert.Equal([270m, 270m, 270m], Beets(farm).Seasons.Select(season => season.Contribution.Amount));
    }
}
