using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Units;
using Xunit;
using static FarmEconomics.Tests.Decisions.VerdictFarm;

namespace FarmEconomics.Tests.Decisions;

/// <summary>What a grower is told to drop, change, grow, fix or keep, each figure on paper (docs/methods.md, section 17).</summary>
public class VerdictsByHandTests
{
    private static FarmBuilder BeetsAndKale(int[] beets, params int[] kale)
    {
        FarmBuilder farm = Crop(Crop(Farm(), "Beets", 1m), "Kale", 4m);
        Array.ForEach(beets, year => Grow(farm, "Beets", year, 100m, 1m));
        return Kale(farm, kale);
    }

    /// <summary>
    /// Beets: 100 - 30 - 2 = 68 every season. Their 100 feet would carry 200 lb of kale; the stall took 200 lb once, 100 now: 100 more at
    /// 4, then 100 at 4 x 200 x (1.5^0.5 - 1) = 179.80, less 60 of seed and 4 for 0.2 hours: 515.80, 447.80 more than beets, 449.80 of it
    /// cash. So beets would have to add 447.80 more: 4.478 a pound, or at 98 for all of the yield 545.80 / 98 of it. Kale grows in their
    /// place.
    /// </summary>
    [Fact]
    public void CropThatAddsMore_TakesTheOthersPlace()
    {
        Verdicts verdicts = Judge(BeetsAndKale(Years, Years));
        Assert.Equal(["Kale", "Beets"], verdicts.Crops.Select(verdict => verdict.Budget.Name));
        Verdict beets = Named(verdicts, "Beets"), kale = Named(verdicts, "Kale");

        Assert.Equal((Direction.DropOrChange, 68m, 0m), (beets.Direction, beets.Mean.Amount, beets.Noise.Amount));
        Assert.Equal([68m, 68m, 68m], beets.Seasons.Select(season => season.Contribution.Amount));
        Assert.Equal([("Kale", 100m)], beets.BetterMix!.Crops);
        MeansChange mix = beets.WithMix!;
        Assert.Equal((449.80m, -0.1m, -2m), (mix.Cash.Amount, mix.OwnHours, mix.OwnHoursValue.Amount));
        Assert.Equal((mix, false), (beets.Advised, beets.LowersCash));
        Assert.Equal(4.478m, beets.Needs.Price.Value);
        Close.To((545.80m / 98m) - 1m, beets.Needs.Yield.Value!.Value, 1e-9m);
        Assert.Equal("hours alone don't change it", beets.Needs.Hours.Reason);
        Assert.Equal("no value of an own hour turns it", beets.TurnsAtWage.Reason);
        Assert.Null(beets.More);

        Assert.Equal((Direction.Grow, 368m), (kale.Direction, kale.Mean.Amount));
        Assert.Equal([("Beets", 100m)], kale.InPlaceOf);
        Assert.Null(kale.More);
        Assert.Equal(kale.Without, kale.Advised);
        Assert.False(kale.LowersCash);
        Assert.Empty(beets.InPlaceOf);
        Assert.Equal((68m / beets.Budget.BedFootWeeks.Value, 0m), (beets.NetPerBedFootWeek.Value, beets.HoursByRule.Value));
    }

    /// <summary>Two seasons on record are enough to change a crop for another, one isn't.</summary>
    [Fact]
    public void CropOfOneSeason_IsNotChangedForAnother()
    {
        Assert.Equal(Direction.DropOrChange, Named(Judge(BeetsAndKale([2024, 2025], 2024, 2025)), "Beets").Direction);
        Verdict once = Named(Judge(BeetsAndKale([2025], Years)), "Beets");
        Assert.Null(once.BetterMix);
        Assert.NotEqual(Direction.DropOrChange, once.Direction);
    }

    /// <summary>
    /// Chard adds 60 - 32 = 28 every season. Beets bring 150 a hundred feet, for dear seed twice, then 150 - 32 = 118. Both stand where
    /// kale could, whose market is taken once: beets, which add less a bed-foot-week on the mean, go first.
    /// </summary>
    private static FarmBuilder ThreeCrops(decimal beetsBefore, decimal kaleBefore = 200m)
    {
        FarmBuilder farm = Crop(Crop(Crop(Farm(), "Chard", 0.6m), "Beets", 1m), "Kale", 4m);
        foreach (int year in Years)
        {
            Grow(farm, "Chard", year, 100m, 0.6m);
            decimal feet = year == 2023 ? 200m : 100m;
            Grow(farm, "Beets", year, 1.5m * feet, 1m, feet, (year == 2025 ? 0.3m : beetsBefore) * feet, 0.001m * feet);
        }

        return Kale(farm, kaleBefore, Years);
    }

    /// <summary>
    /// Where the stall took 500 lb once, kale takes both places: 200 lb more at 4 less 64 for the one, and as much again for the other.
    /// </summary>
    [Fact]
    public void MarketForMore_IsSharedOutOneAfterTheOther()
    {
        Verdicts verdicts = Judge(ThreeCrops(1.82m, 500m));
        Assert.Equal(736m - 118m, Named(verdicts, "Beets").WithMix!.Net.Amount);
        Assert.Equal(736m - 28m, Named(verdicts, "Chard").WithMix!.Net.Amount);
        Assert.Equal([("Beets", 100m), ("Chard", 100m)], Named(verdicts, "Kale").InPlaceOf);
    }

    /// <summary>
    /// Seed of 1.82 a foot leaves -34 a hundred feet twice, then 118: mean 16.67. Squares 2 x 50.67^2 + 101.33^2 over 150^2, with nothing
    /// of chard and kale, over 6: 0.1141; noise of a crop: its output x the root of a third of that.
    /// </summary>
    [Fact]
    public void MarketIsTakenOnce_AndACropThatGoesTakesNoPlace()
    {
        Verdicts verdicts = Judge(ThreeCrops(1.82m));
        Verdict beets = Named(verdicts, "Beets"), chard = Named(verdicts, "Chard"), kale = Named(verdicts, "Kale");
        double variance = ((2.0 * 50.6666667 * 50.6666667) + (101.3333333 * 101.3333333)) / (150.0 * 150.0) / 6.0;

        Assert.Equal([-34m, -34m, 118m], beets.Seasons.Select(season => season.Contribution.Amount));
        Assert.Equal(16.67m, beets.Mean.Amount);
        Close.To((decimal)(150.0 * Math.Sqrt(variance / 3.0)), beets.Noise.Amount, 0.006m);
        Close.To((decimal)(60.0 * Math.Sqrt(variance / 3.0)), chard.Noise.Amount, 0.006m);
        Close.To((decimal)(400.0 * Math.Sqrt(variance / 3.0)), kale.Noise.Amount, 0.006m);

        // Kale in place of beets brings 515.80 - 118. For chard nothing is left of the market, and beets, which would add 118, go.
        Assert.Equal([("Kale", 100m)], beets.BetterMix!.Crops);
        Assert.Equal(397.80m, beets.WithMix!.Net.Amount);
        Assert.Null(chard.BetterMix);
        Assert.Equal((Direction.Keep, 28m), (chard.Direction, chard.Mean.Amount));
        Assert.Equal([("Beets", 100m)], kale.InPlaceOf);
    }

    /// <summary>
    /// What beets add counts by the mean: 397.80 and 118 - 16.67 make 499.13. To beat are the noise of beets, 29.25, that of twice the
    /// kale, 156.02, and a part of beets' 150 that may be 2.09 and not 2.10.
    /// </summary>
    [Theory]
    [InlineData(2.09, true)]
    [InlineData(2.10, false)]
    public void OtherCrops_AreToldBeyondTheNoiseOfBothAndAPartOfTheOutput(double share, bool told)
    {
        Verdicts verdicts = Judge(ThreeCrops(1.82m), new VerdictSettings { MixShare = (decimal)share });
        Assert.Equal(told, Named(verdicts, "Beets").BetterMix is not null);
    }

    /// <summary>
    /// Beets sell for 81 less 30 and ten own hours, which bring 51 in cash; kale in their place 40 a hundred feet, at the cost of none.
    /// Worth 189 more with own hours at 20, but 11 less in cash: not told. Of 65 lb kale bring 5 more in cash as well, of 70 none;
    /// they do where beets sold for 61 twice before, 37.67 in cash on the mean. What ten hours earn is told by the mean as well.
    /// </summary>
    [Theory]
    [InlineData(81, 81, 5.1, false)]
    [InlineData(65, 65, 3.5, true)]
    [InlineData(61, 81, 3.767, true)]
    [InlineData(70, 70, 4, false)]
    public void OtherCropsThatAddOnlyFreedHours_AreNotTold(int before, int now, double wage, bool told)
    {
        FarmBuilder farm = Crop(Crop(Farm(), "Beets", 1m), "Kale", 1m);
        foreach (int year in Years)
        {
            Grow(farm, "Beets", year, year == 2025 ? now : before, 1m, hours: 10m);
            decimal feet = year == 2023 ? 300m : 50m;
            Grow(farm, "Kale", year, 0.7m * feet, 1m, feet, 0.3m * feet, 0m);
        }

        Verdict beets = Named(Judge(farm.Without<LaborRow>(row => row.Hours == 0m)), "Beets");
        Assert.Equal(told, beets.BetterMix is not null);
        Assert.Equal(told ? Direction.DropOrChange : Direction.Fix, beets.Direction);
        Assert.Equal((decimal)wage, beets.TurnsAtWage.Value);
    }

    /// <summary>
    /// Beets with a neighbor that never varies, in a tunnel, so that neither fits the other's bed: 30 of seed, 5 hours at 20.
    /// </summary>
    private static Verdict Beets(decimal[] pounds, string worker = "Bo", decimal rent = 0m, decimal spare = 0m)
    {
        FarmBuilder farm = Crop(Crop(Farm(), "Beets", 1m, 100m + spare), "Kale", 4m, structure: "tunnel");
        for (int i = 0; i < pounds.Length; i++)
        {
            int year = 2026 - pounds.Length + i;
            Grow(farm, "Beets", year, pounds[i], 1m, hours: 5m, worker: worker);
            Grow(farm, "Kale", year, 100m, 4m, hours: 0m);
            farm = rent > 0m ? farm.Spend($"{year}-03-01", rent, "rent") : farm;
        }

        return Named(Judge(farm.Without<LaborRow>(row => row.Hours == 0m)), "Beets");
    }

    /// <summary>Pounds less 130: a loss needs two seasons below 0, the last among them, and a mean below minus the noise.</summary>
    [Fact]
    public void Loss_NeedsTwoSeasonsAndTheLast()
    {
        // 5, -109, -110: mean -71.33, squares 8,740.67 over 20^2 and 4, a third of it: noise 27.
        Verdict two = Beets([135m, 21m, 20m]);
        Assert.Equal((Direction.DropOrChange, -71.33m), (two.Direction, two.Mean.Amount));
        Close.To((decimal)Math.Sqrt(8740.6667 / 4.0 / 3.0), two.Noise.Amount, 0.006m);

        // 71.33 more on 20 lb; no more yield helps where a pound costs 5 to pick.
        Close.To(71.33m / 20m, two.Needs.Price.Value!.Value, 1e-9m);

        // 0 and -110: just one below. -110, -110 and 0: not the last.
        Assert.Equal(Direction.Fix, Beets([130m, 20m]).Direction);
        Verdict last = Beets([20m, 20m, 130m]);
        Assert.Equal((Direction.Fix, -73.33m), (last.Direction, last.Mean.Amount));

        // The last season met its cost in full; what is missing is missing on the mean: 73.33 on 130 lb, or 3.67 of 5 hours at 20.
        Assert.Equal(0m, last.Budget.NetReturn.Amount);
        Close.To(73.33m / 130m, last.Needs.Price.Value!.Value, 1e-9m);
        Close.To(73.33m / 20m, last.Needs.Hours.Value!.Value, 1e-9m);
    }

    /// <summary>Sold for just the seed, own hours apart: a loss of 100 at their value, at any value above nothing.</summary>
    [Fact]
    public void LossOfOwnHoursAlone_TurnsAtNothing()
    {
        Verdict beets = Beets([30m, 30m, 30m], "me");
        Assert.Equal((Direction.Fix, -100m, 0m), (beets.Direction, beets.Mean.Amount, beets.TurnsAtWage.Value));
    }

    /// <summary>
    /// 81 lb to the shop at 1, less 30 and 5 own hours, lose 49; the stall took 40 lb at 3 once, so 20 feet more would bring 48.60 less 6
    /// and 20. A crop that loses is to be fixed, not grown.
    /// </summary>
    [Fact]
    public void LossAtTheValueOfOwnHours_IsFixedBeforeItIsGrown()
    {
        FarmBuilder farm = Crop(Farm(), "Beets", 3m, 160m);
        Grow(farm, "Beets", 2023, 40m, 3m, hours: 5m);
        foreach (int year in new[] { 2024, 2025 })
        {
            string name = $"Beets{year}";
            farm.Planting(name, "Beets", "Beets", 100m, $"{year}-05-01", $"{year}-08-01").Pick($"{year}-07-01", name, 81m)
                .Sell($"{year}-07-01", "Beets", "shop", 81m, price: 1m)
                .Work($"{year}-07-01", "me", 5m, "harvest", planting: name).Spend($"{year}-05-01", 30m, "seed", planting: name);
        }

        Verdict beets = Named(Judge(farm), "Beets");
        Assert.Equal([-10m, -49m, -49m], beets.Seasons.Select(season => season.Contribution.Amount));
        Assert.Equal(22.60m, beets.More!.Means.Net.Amount);

        // 36 lost on the mean, of which 100 are the hours: 64 for five of them.
        Assert.Equal((Direction.Fix, 12.8m), (beets.Direction, beets.TurnsAtWage.Value));
    }

    /// <summary>Nothing added in any season is too close to call; 71 that the rent takes in full is kept.</summary>
    [Fact]
    public void CropThatCarriesJustItsCost_IsKept_AndOneThatAddsNothingIsTooClose()
    {
        Assert.Equal(Direction.TooClose, Beets([130m, 130m, 130m]).Direction);
        Verdict kept = Beets([200m, 202m, 201m], rent: 142m);
        Assert.Equal((Direction.Keep, 0m), (kept.Direction, kept.Budget.NetReturn.Amount));
        Assert.Equal("hours alone don't change it", kept.Needs.Hours.Reason);
        Assert.Equal("no value of an own hour turns it", kept.TurnsAtWage.Reason);
    }

    /// <summary>
    /// 520 lb sold in 2024: 20 feet more bring 40.20 less 6 and 20, 14.20. 70, 390, 71 vary by 75.31, a fifth of it 15.06: not beyond the
    /// noise. With 400 lb it is 47.02, a fifth 9.40.
    /// </summary>
    [Theory]
    [InlineData(520, 75.31, false)]
    [InlineData(400, 47.02, true)]
    public void More_IsToldBeyondItsPartOfTheNoise(int pounds, double noise, bool told)
    {
        Verdict beets = Beets([200m, pounds, 201m], spare: 60m);
        Close.To((decimal)noise, beets.Noise.Amount, 0.01m);
        Assert.Equal((20m, 14.20m, 60m), (beets.More!.BedFeet, beets.More.Means.Net.Amount, beets.Room));
        Assert.Equal(told ? Direction.Grow : Direction.Keep, beets.Direction);
        Assert.Equal(told ? beets.More.Means : beets.Without, beets.Advised);
    }

    /// <summary>
    /// 100 lost, 130 and 71: mean 33.67, squares 28,540.67 over 4, a third of it: noise 48.77, a fifth of it 9.75. 20 feet more brought
    /// 14.20 as the last season went, but that season lay 37.33 above the mean, a fifth of it 7.47: 6.73 is not beyond the noise.
    /// </summary>
    [Fact]
    public void More_IsNotToldForOneLuckySeason()
    {
        Verdict beets = Beets([30m, 260m, 201m], spare: 60m);
        Assert.Equal((33.67m, 14.20m), (beets.Mean.Amount, beets.More!.Means.Net.Amount));
        Close.To(48.77m, beets.Noise.Amount, 0.006m);
        Assert.Equal(Direction.TooClose, beets.Direction);
    }

    /// <summary>
    /// 60 lb less 30 of seed bring 30; with five hired hours at 20 they lose 70 every season. Where those hours are paid all the same,
    /// dropping beets would lose the 30: a loss to be fixed, and told as one of paid hours.
    /// </summary>
    [Theory]
    [InlineData(true, Direction.DropOrChange)]
    [InlineData(false, Direction.Fix)]
    public void LossOfHoursThatArePaidAllTheSame_IsNotDropped(bool canBeCut, Direction direction)
    {
        FarmBuilder farm = Crop(Farm(), "Beets", 1m).With(settings => settings with { HiredHoursCanBeCut = canBeCut });
        Array.ForEach(Years, year => Grow(farm, "Beets", year, 60m, 1m, hours: 5m, worker: "Bo"));
        Verdict beets = Named(Judge(farm), "Beets");
        Assert.Equal((direction, -70m), (beets.Direction, beets.Mean.Amount));
        Assert.Equal(canBeCut ? (70m, 0m) : (-30m, 100m), (beets.Without.Cash.Amount, beets.Without.PaidAnyway.Amount));
        Assert.Equal(!canBeCut, beets.LosesPaidHoursOnly);
    }

    /// <summary>
    /// 0.2 hours of picking in that week; kale in the beds of beets takes 0.2 for the 0.1 it frees. Against 0.2 hours a week that is more
    /// than there are, and the verdict says so.
    /// </summary>
    [Theory]
    [InlineData(0.2, 1)]
    [InlineData(0.3, 0)]
    public void OtherCrops_ThatNeedMoreHoursThanThereAre_SaySo(double limit, int weeks)
    {
        Verdict beets = Named(Judge(BeetsAndKale(Years, Years).Limit("labor", (decimal)limit, "hours a week")), "Beets");
        Assert.Equal([("Kale", 100m)], beets.BetterMix!.Crops);
        Assert.Equal(weeks, beets.BeyondLimit.Count);
        Assert.Equal(weeks == 0 ? [] : [0.3m], beets.BeyondLimit.Select(week => week.Hours));
    }

    /// <summary>Room for less than a fifth more is what is tried.</summary>
    [Fact]
    public void More_IsAsFarAsThereIsRoom() => Assert.Equal(12m, Beets([200m, 260m, 201m], spare: 12m).More!.BedFeet);

    /// <summary>What is advised lowers cash only where it is advised: dropping, changing, or growing what was tried.</summary>
    [Fact]
    public void LowersCash_IsOfWhatIsAdvised()
    {
        Verdict beets = Beets([200m, 202m, 201m]);
        MeansChange less = new(new Money(-1m), 0m, 0m, Money.Zero, Money.Zero), even = less with { Cash = Money.Zero };
        GrowthTried more = new(20m, less, Result.Known(2m), []);
        Assert.False((beets with { Without = less, Direction = Direction.Keep }).LowersCash);
        Assert.True((beets with { Without = less, Direction = Direction.DropOrChange }).LowersCash);
        Assert.False((beets with { Without = even, Direction = Direction.DropOrChange }).LowersCash);
        Assert.True((beets with { Without = even, WithMix = less, Direction = Direction.DropOrChange }).LowersCash);
        Assert.True((beets with { Without = even, More = more, Direction = Direction.Grow }).LowersCash);
        Assert.False((beets with { Without = less, More = null, Direction = Direction.Grow }).LowersCash);
        Assert.False((beets with { Without = less, More = more, Direction = Direction.Fix }).LowersCash);
        Assert.Equal(less, (beets with { Without = less, More = null, Direction = Direction.Grow }).Advised);
    }
}
