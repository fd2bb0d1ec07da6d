using FarmEconomics.Planning;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// What given lengths are worth season by season, and which seasons a plan is made for, on <see cref="SmallFarm"/>, by hand.
/// </summary>
public class ScoresByHandTests
{
    /// <summary>
    /// 100 feet of A, packaging 0.1 a unit sold. Week 0 takes 50 hours: 10 own at 0.5, 20 hired at 2, 20 beyond at three times that: 165.
    /// Week 5 takes 4 own ones whatever is grown, 2. Picking takes 0.02 a unit: 100 x 4.9 - 200 - 165 - 2 - 1 = 122; at a yield of 0.8 and
    /// a price of 1.5 of the mean 80 x (7.5 - 0.1) - 200 - 165 - 2 - 0.8 = 224.2. The same where the beds were free before the year began.
    /// </summary>
    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    public void Scores_OfLengths_HoldTheirHoursWeekByWeek(int inBed)
    {
        PlanModel farm = SmallFarm.Of();
        farm = farm with
        {
            Sowings =
            [
                farm.Sowings[0] with { Week = inBed, WeeksInBed = 1, Hours = SmallFarm.At((0, 0.5)) },
                farm.Sowings[1] with { Week = inBed, WeeksInBed = 1 },
            ],
            Crops = [farm.Crops[0] with { SoldCost = 0.1, HandlingHours = 0.02 }, farm.Crops[1]],
            Hours = new PlanHours(SmallFarm.Weekly(10.0), SmallFarm.Weekly(20.0), SmallFarm.At((5, 4.0)), 0.5, 2.0),
        };
        PlanSeason[] seasons = [new(0.5, [1.0, 1.0], [1.0, 1.0]), new(0.5, [0.8, 1.0], [1.5, 1.0])];
        Programs.Near([122.0, 224.2], SeasonScores.Of(farm, Programs.Solver, [100.0, 0.0], seasons), 1e-6);
    }

    /// <summary>
    /// 100 of A picked in week 20 and 100 in week 21, kept for a week, all sold in week 21: 120 at 5 and 80 at 4, less 200.
    /// </summary>
    [Fact]
    public void Scores_OfWhatIsKept_SellItWithWhatIsFresh()
    {
        PlanModel farm = SmallFarm.Of();
        PlanStep[] steps = [new("shop", 120.0, 5.0, 0.0), new("market", 90.0, 4.0, 0.0)];
        farm = farm with
        {
            Sowings = [farm.Sowings[0] with { Yield = SmallFarm.At((20, 1.0), (21, 1.0)) }, farm.Sowings[1]],
            Crops =
            [
                farm.Crops[0] with { Keeps = 2, Steps = [.. farm.Crops[0].Steps.Select((_, week) => week == 21 ? steps : [])] },
                farm.Crops[1],
            ],
        };
        Programs.Near([720.0], SeasonScores.Of(farm, Programs.Solver, [100.0, 0.0], [PlanSeason.Mean(2)]), 1e-6);
    }

    /// <summary>
    /// 100 feet of A take 200 units of water in week 15; the soil holds 50, 100 are put on, and the 50 missed cost 1.20 each, whatever the
    /// season: 500 - 200 - 60, at half more for A 750 - 200 - 60.
    /// </summary>
    [Fact]
    public void Scores_OfLengthsThatGoDry_LoseWhatTheyMiss()
    {
        PlanModel farm = SmallFarm.Of() with
        {
            Water = new PlanWater
            {
                Limit = [.. Enumerable.Range(0, PlanModel.Weeks).Select(week => week == 15 ? 100.0 : double.PositiveInfinity)],
                Need = [SmallFarm.At((15, 2.0)), SmallFarm.Weekly(0.0)],
                Soil = [0.5, 0.5],
                LostPerUnit = [1.2, 0.0],
            },
        };
        PlanSeason[] seasons = [new(0.5, [1.0, 1.0], [1.0, 1.0]), new(0.5, [1.0, 1.0], [1.5, 1.0])];
        Programs.Near([240.0, 490.0], SeasonScores.Of(farm, Programs.Solver, [100.0, 0.0], seasons), 1e-6);
    }

    /// <summary>
    /// 60 feet of A give 30 in each of two weeks, 20 of which go at 5, the rest at 3; 40 of B go at 3. Over 90 seasons A's yield rises by
    /// 0.004 of the mean and B's price falls by 0.007. A's harvest counts 60 units at 4 on the mean, 0.96 more each season, B's 40 at 3,
    /// 0.84 less: the first season is the worst, the last the best. Solved are those in the middle of each twentieth of all and of the
    /// worst three tenths: exact, 2 x (100 + (30 y - 20) x 3) + 120 p - 140 = 240 - 0.12 i. The others are told by their prices, which for
    /// B, sold in part of what the market takes, are off. Of 40 seasons all are solved.
    /// </summary>
    [Fact]
    public void Scores_OfManySeasons_AreSolvedInTheMiddleOfEachTwentieth()
    {
        PlanModel farm = SmallFarm.Of();
        PlanStep[] steps = [new("shop", 20.0, 5.0, 0.0), new("market", 1000.0, 3.0, 0.0)];
        farm = farm with
        {
            Sowings = [farm.Sowings[0] with { Yield = SmallFarm.At((20, 0.5), (21, 0.5)) }, farm.Sowings[1]],
            Crops = [farm.Crops[0] with { Steps = [.. farm.Crops[0].Steps.Select(_ => steps)] }, farm.Crops[1]],
        };
        PlanSeason[] seasons =
        [
            .. Enumerable.Range(0, 90).Select(i => new PlanSeason(1.0 / 90.0, [0.8 + (0.004 * i), 1.0], [1.0, 1.3 - (0.007 * i)])),
        ];
        double[] told = SeasonScores.Of(farm, Programs.Solver, [60.0, 40.0], seasons);

        // The middles of twentieths of 90 lie at 2.25 + 4.5 k, those of 27 at 0.675 + 1.35 k.
        int[] ofAll = [2, 6, 11, 15, 20, 24, 29, 33, 38, 42, 47, 51, 56, 60, 65, 69, 74, 78, 83, 87];
        int[] ofWorst = [0, 2, 3, 4, 6, 7, 8, 10, 11, 12, 14, 15, 16, 18, 19, 20, 22, 23, 24, 26];
        Assert.Equal(
            ofAll.Union(ofWorst).Order(),
            Enumerable.Range(0, 90).Where(i => Math.Abs(told[i] - (240.0 - (0.12 * i))) < 1e-6)
        );
        Programs.Near(
            [.. Enumerable.Range(0, 40).Select(i => 240.0 - (0.12 * i))],
            SeasonScores.Of(farm, Programs.Solver, [60.0, 40.0], seasons[..40]),
            1e-6
        );
    }

    /// <summary>Four seasons are few enough to be taken as they are, whatever their mean.</summary>
    [Fact]
    public void Chosen_OfAsManyAsArePlannedFor_AreAllAsTheyAre()
    {
        PlanSeason[] seasons = [.. new[] { 0.4, 0.9, 1.0, 1.2 }.Select(yield => Season(0.25, yield, 1.0))];
        Assert.Equal(seasons, Plans(SmallFarm.Of(), seasons).Chosen);
    }

    /// <summary>
    /// 60 A bring 300, 40 B 120. Seasons 0 and 1 are 120 x 0.2 = 24 apart, 2 and 3 are 300 x 0.15 = 45. Four of five, each leaving least of
    /// what the others are off by their chance: 0 (1 off 24, 2 off 252, 3 off 297, 4 off 420), then 2, 4 and 3, as 0.15 x 45 is more than
    /// 0.2 x 24; 1 counts with 0. Means 0.9375 and 0.96.
    /// </summary>
    [Fact]
    public void Chosen_AreApartByWhatTheCropsBring()
    {
        CarefulPlans plans = Plans(
            SmallFarm.Of(aTakes: 60.0),
            [
                Season(0.2, 1.0, 1.0, 1.0),
                Season(0.2, 1.0, 1.0, 1.2),
                Season(0.25, 0.4, 1.0, 0.4),
                Season(0.15, 0.25, 1.0, 0.4),
                Season(0.2, 2.0, 1.0, 2.0),
            ]
        );
        Programs.Near([0.4, 0.25, 0.2, 0.15], [.. plans.Chosen.Select(season => season.Chance)], 1e-9);
        double[] yields = [1.0 / 0.9375, 0.4 / 0.9375, 2.0 / 0.9375, 0.25 / 0.9375];
        Programs.Near(yields, [.. plans.Chosen.Select(season => season.Yield[0])], 1e-9);
        Programs.Near([1.0 / 0.96, 0.4 / 0.96], [.. plans.Chosen.Take(2).Select(season => season.Yield[1])], 1e-9);
    }

    /// <summary>
    /// A at 0.8 of its yield and 1.25 of its price brings what it does on the mean, 500; so season 1 counts with 0. Then 4, 1,000 off; 2
    /// and 3 are 250 and 450 below, 0.3 x 250 the more. Mean 0.4 x 1 + 0.2 x 3 + 0.3 x 0.5 + 0.1 x 0.1 = 1.16. B gives nothing in any.
    /// </summary>
    [Fact]
    public void Chosen_BringYieldTimesPrice()
    {
        CarefulPlans plans = Plans(
            SmallFarm.Of(),
            [
                Season(0.2, 1.0, 1.0, 0.0),
                Season(0.2, 0.8, 1.25, 0.0),
                Season(0.3, 0.5, 1.0, 0.0),
                Season(0.1, 0.1, 1.0, 0.0),
                Season(0.2, 3.0, 1.0, 0.0),
            ]
        );
        Programs.Near([0.4, 0.2, 0.3, 0.1], [.. plans.Chosen.Select(season => season.Chance)], 1e-9);
        double[] yields = [1.0 / 1.16, 3.0 / 1.16, 0.5 / 1.16, 0.1 / 1.16];
        Programs.Near(yields, [.. plans.Chosen.Select(season => season.Yield[0])], 1e-9);
        Assert.All(plans.Chosen, season => Assert.Equal(0.0, season.Yield[1]));
    }

    /// <summary>Where no plan keeps within the limits there are this year's lengths alone.</summary>
    [Fact]
    public void Plans_WithoutABestMix_AreThisYears()
    {
        PlanModel farm = SmallFarm.Of();
        farm = farm with { Crops = [farm.Crops[0] with { Wish = (200.0, double.PositiveInfinity) }, farm.Crops[1]] };
        CarefulPlans plans = CarefulPlans.Of(BestMix.Of(farm, Programs.Solver), Programs.Solver, [Season(1.0, 1.0, 1.0)]);
        CarefulPlan today = Assert.Single(plans.Plans);
        Assert.Equal(PlanStance.Today, today.Stance);
        Programs.Near([275.0], today.Seasons, 1e-6);
    }

    private static CarefulPlans Plans(PlanModel farm, PlanSeason[] seasons) =>
        CarefulPlans.Of(BestMix.Of(farm, Programs.Solver), Programs.Solver, seasons, [PlanStance.MeanSeason]);

    private static PlanSeason Season(double chance, double yield, double price, double yieldB = 1.0) =>
        new(chance, [yield, yieldB], [price, 1.0]);
}
