using CsCheck;
using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.Generators;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Decisions;

public class ChangeTests
{
    private static readonly long Farms = long.TryParse(Environment.GetEnvironmentVariable("FARMECONOMICS_FARMS"), out long farms) ? farms : 150;

    /// <summary>Beets carry their own cost but not their part of the rent; kale does well. Both under the same sky.</summary>
    private static FarmBuilder Farm(decimal beetPrice = 1.2m) => new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m }).AsOf("2025-12-31")
        .Bed("One").Bed("Two").Channel("stall", ChannelKind.Market).Worker("me", WorkerKind.Owner).Task("pick", Stage.Harvest)
        .Crop("Beets").Planting("B1", "Beets", "One", 100m, "2025-05-01", "2025-08-09").Pick("2025-07-01", "B1", 200m).Sell("2025-07-02", "Beets", "stall", 200m, price: beetPrice)
        .Crop("Kale").Planting("K1", "Kale", "Two", 100m, "2025-05-10", "2025-08-01").Pick("2025-07-01", "K1", 150m).Sell("2025-07-02", "Kale", "stall", 150m, price: 6m)
        .Work("2025-07-01", "me", 5m, "pick", crop: "Beets").Work("2025-07-01", "me", 6m, "pick", crop: "Kale")
        .Spend("2025-05-01", 30m, "seed", crop: "Beets").Spend("2025-03-01", 300m, "rent");

    private static ChangeJudge Judge(FarmBuilder farm) => new(SeasonCosts.Of(farm.Season(2025)));

    [Fact]
    public void Drop_CropThatCarriesItsOwnCostOnly_FullAndAvoidableDisagree()
    {
        ChangeAnswer answer = Judge(Farm()).Judge(new Change(ChangeKind.Drop, "beets"));

        // 240 of sales less 30 of seed and 100 of picking helps with 110; its part of the rent is 300 x 100 / 183 days = 163.93.
        Assert.Equal(-110m, answer.AvoidableChange.Amount);
        Assert.Equal(53.93m, answer.FullCostChange.Amount);
        Assert.True(answer.Disagree);
        MovedCost rent = Assert.Single(answer.Moved);
        Assert.Equal(163.93m, rent.Moved.Amount);
        Assert.Equal(("Kale", new Money(163.93m)), rent.Moves[0]);
        Assert.Equal(0m, answer.Crops.Single(crop => crop.Crop == "Beets").After.Amount);
        Assert.Equal(1428.6m, decimal.Round(answer.Freed.Sum(week => week.BedFootWeeks), 1));
        Assert.Equal(5m, answer.Freed.Sum(week => week.Hours));
        Fit fit = Assert.Single(answer.Fits);
        Assert.Equal(("Kale", 100m), (fit.Crop, fit.BedFeet));

        // Kale twice over sells beyond what the market took: 900 x (2^(1/2) - 1) for 120 of picking.
        Close.To(-110m + (900m * ((decimal)Math.Sqrt(2.0) - 1m)) - 120m, fit.Swap.NetChange.Amount, 0.01m);
        Assert.Null(answer.BestMix); // at today's price the market took no more
    }

    [Fact]
    public void Shrink_ByHalf_IsHalfOfDropping()
    {
        ChangeAnswer answer = Judge(Farm()).Judge(new Change(ChangeKind.Shrink, "Beets", 50m));

        Assert.Equal(-55m, answer.AvoidableChange.Amount);
        Close.To(-55m + (163.93m / 2m), answer.FullCostChange.Amount, 0.01m);
        Assert.Empty(answer.Fits);
        Assert.Throws<ArgumentException>(() => Judge(Farm()).Judge(new Change(ChangeKind.Shrink, "Beets", 101m)));
    }

    [Fact]
    public void Grow_BeyondWhatTheMarketTook_SellsByElasticityInSteps()
    {
        ChangeJudge judge = Judge(Farm());
        ChangeAnswer usual = judge.Judge(new Change(ChangeKind.Grow, "Kale", 50m));
        ChangeAnswer stiff = judge.Judge(new Change(ChangeKind.Grow, "Kale", 50m, Elasticity: 1m));

        // 150 lb were sold at 6; half as much again sells in steps to 1.1, 1.25 and 1.5 times, for 900 x (1.5^(1 - 1/2) - 1) in all; 60 of unpaid picking.
        Close.To((900m * ((decimal)Math.Sqrt(1.5) - 1m)) - 60m, usual.AvoidableChange.Amount, 0.01m);
        Assert.Equal((1m, 0m), (usual.BelowTodaysPrice, usual.NotTaken));

        // At an elasticity of 1 nothing sells beyond what the market took, and no best price is named.
        Assert.Equal(-60m, stiff.AvoidableChange.Amount);
        Assert.Equal(1m, stiff.NotTaken);
        Assert.Equal(0m, usual.Room); // beets hold the only other bed
        Assert.Equal(stiff.AvoidableChange, judge.Judge(new Change(ChangeKind.Grow, "Kale", 50m, Elasticity: -1m)).AvoidableChange);
        Assert.InRange(usual.TurnsAtElasticity.Value!.Value, 1.01m, 2m);
    }

    [Fact]
    public void Grow_UpToTheMostTheMarketTookNearThatWeek_SellsAtTodaysPrice()
    {
        FarmBuilder farm = Farm().Planting("K0", "Kale", "Two", 100m, "2024-05-10", "2024-08-01").Pick("2024-07-09", "K0", 225m).Sell("2024-07-09", "Kale", "stall", 225m, price: 6m);

        ChangeAnswer answer = Judge(farm).Judge(new Change(ChangeKind.Grow, "Kale", 50m, Elasticity: 1m));

        Assert.Equal(450m - 60m, answer.AvoidableChange.Amount);
        Assert.Equal((0m, 0m), (answer.BelowTodaysPrice, answer.NotTaken));
    }

    [Fact]
    public void Grow_BoxesAndHousehold_TakeNoMore()
    {
        FarmBuilder farm = Farm().Channel("home", ChannelKind.Household).Channel("boxes", ChannelKind.Share).Income("2025-05-01", "boxes", 300m)
            .Pick("2025-07-01", "K1", 100m).Sell("2025-07-02", "Kale", "home", 50m, price: 6m).Sell("2025-07-02", "Kale", "boxes", 50m, price: 6m);

        ChangeAnswer answer = Judge(farm).Judge(new Change(ChangeKind.Grow, "Kale", 100m, Elasticity: 1m));

        // 150 lb sold, 50 eaten, 50 in boxes: twice as much finds no buyer at all. No cash comes in; 120 of own picking goes.
        Assert.Equal(-120m, answer.AvoidableChange.Amount);
        Assert.Equal((0m, -120m), (answer.Means.Cash.Amount, answer.Means.OwnHoursValue.Amount));
        Assert.Equal(-6m, answer.Means.OwnHours);
    }

    [Fact]
    public void Drop_HiredHoursLoggedThatWeek_ComeOffFirst()
    {
        FarmBuilder farm = Farm().Worker("Bo", WorkerKind.Hired, 15m).Work("2025-07-02", "Bo", 3m, "pick", crop: "Kale");

        MeansChange means = Judge(farm).Judge(new Change(ChangeKind.Drop, "Beets")).Means;

        // 5 own hours at 20 were worked for beets; 3 hired ones of that week at 15 can be cut in their place.
        Assert.Equal((3m, 2m), (means.HiredHours, means.OwnHours));
        Assert.Equal((-240m + 30m + 45m, 55m, -110m), (means.Cash.Amount, means.OwnHoursValue.Amount, means.Net.Amount));
        Assert.Equal((240m - 30m - 45m) / 2m, means.PerOwnHour.Value);

        MeansChange paid = Judge(farm.With(settings => settings with { HiredHoursCanBeCut = false })).Judge(new Change(ChangeKind.Drop, "Beets")).Means;

        // Paid all the same, Bo takes over other work: the owner is freed of all 5.
        Assert.Equal((-240m + 30m, 0m), (paid.Cash.Amount, paid.Value.Amount));
        Assert.Equal((0m, 5m, 100m), (paid.HiredHours, paid.OwnHours, paid.OwnHoursValue.Amount));
    }

    [Fact]
    public void Grow_BeyondTheOwnLimit_TakesHiredHours()
    {
        FarmBuilder farm = Farm().Worker("Bo", WorkerKind.Hired, 15m).Work("2025-08-20", "Bo", 1m, "pick", crop: "Kale");
        farm.Limit("own labor", 13m, "hours a week");

        MeansChange means = Judge(farm).Judge(new Change(ChangeKind.Grow, "Kale", 100m, Elasticity: 1m)).Means;

        // 11 own hours were worked in the week of 30 June; kale twice over takes 6 more: 2 up to the limit, 4 hired at 15. In August 1 more by own hands, which are free then.
        Assert.Equal((-4m, -3m), (means.HiredHours, means.OwnHours));
        Assert.Equal((-60m, -135m), (means.Cash.Amount, means.Net.Amount));
    }

    [Fact]
    public void BestMix_TakesWhatTheMarketTookBefore_AndNoMore()
    {
        // Kale sold 225 lb in 2024 and 150 now: there is room for half as much again, 50 bed-feet, in the 100 that beets leave. Each stretch of bed is filled whole or not at all.
        FarmBuilder farm = Farm().Bed("Three").Planting("K0", "Kale", "Two", 100m, "2024-05-10", "2024-08-01").Pick("2024-07-09", "K0", 225m).Sell("2024-07-09", "Kale", "stall", 225m, price: 6m)
            .Planting("B2", "Beets", "Three", 50m, "2025-05-01", "2025-08-09");

        Mix? mix = Judge(farm).Judge(new Change(ChangeKind.Drop, "Beets")).BestMix;

        Assert.Equal([("Kale", 100m)], mix!.Crops);

        // 75 lb at 6 for 120 of picking; without beets 110 less.
        Assert.Equal(450m - 120m - 110m, mix.Change.Amount);
    }

    [Fact]
    public void Swap_ReplacementOutsideTheFreedTime_SaysSo()
    {
        FarmBuilder farm = Farm().Bed("Roof", structure: "tunnel").Crop("Basil").Planting("Ba", "Basil", "Roof", 50m, "2025-05-01", "2025-09-01").Pick("2025-08-01", "Ba", 10m).Sell("2025-08-02", "Basil", "stall", 10m, price: 9m);

        ChangeAnswer answer = Judge(farm).Judge(new Change(ChangeKind.Swap, "Beets", Replacement: "Basil"));

        Assert.True(answer.ReplacementDoesNotFit);
        Assert.Equal(100m, answer.FeetAdded);
        Assert.DoesNotContain(answer.Fits, fit => fit.Crop == "Basil");
    }

    [Fact]
    public void Grow_BeyondTheHoursOfAWeek_NamesTheWeek()
    {
        FarmBuilder farm = Farm();
        farm.Tables.Add<LimitRow>(new RowValues { ["limit"] = "labor", ["amount"] = 12m, ["unit"] = "hours a week", ["from"] = new DateOnly(2026, 5, 1), ["to"] = new DateOnly(2026, 10, 31) });
        farm.Tables.Add<LimitRow>(new RowValues { ["limit"] = "water", ["amount"] = 12m, ["unit"] = "gallons a day" });

        ChangeAnswer answer = Judge(farm).Judge(new Change(ChangeKind.Grow, "Kale", 100m));

        WeekBeyondLimit week = Assert.Single(answer.BeyondLimit);
        Assert.Equal((new DateOnly(2025, 6, 30), 17m, 12m), (week.Monday, week.Hours, week.Limit));
        Assert.Equal(["water"], answer.LimitsNotChecked);
    }

    [Theory]
    [InlineData(ChangeKind.Drop, "Beans", 0, null, null, "Beans has no planting in 2025")]
    [InlineData(ChangeKind.Grow, "Kale", 0, null, null, "bed-feet must be above 0")]
    [InlineData(ChangeKind.Swap, "Kale", 0, "kale", null, "its own place")]
    [InlineData(ChangeKind.Grow, "Kale", 10, null, 0, "elasticity of 0")]
    public void Judge_ChangeThatMakesNoSense_SaysWhy(ChangeKind kind, string crop, int feet, string? replacement, int? elasticity, string reason) =>
        Assert.Contains(reason, Assert.Throws<ArgumentException>(() => Judge(Farm()).Judge(new Change(kind, crop, feet, replacement, elasticity))).Message);

    [Fact]
    public void Judge_AnyChangeOfARandomFarm_MovesButNeverMakesSharedCost() => RandomFarm.Gen.Sample(
        farm =>
        {
            FarmReview review = farm.Farm.Review();
            foreach (SeasonReview season in review.CropYears.Select(year => review.Season(year)))
            {
                SeasonCosts costs = SeasonCosts.Of(season);
                ChangeJudge judge = new(costs);
                foreach (EnterpriseBudget crop in season.Crops.Where(crop => crop.Sums.BedFeet.Value > 0m).Take(3))
                {
                    decimal half = crop.Sums.BedFeet.Value / 2m;
                    foreach (Change change in new Change[] { new(ChangeKind.Drop, crop.Name), new(ChangeKind.Shrink, crop.Name, half), new(ChangeKind.Grow, crop.Name, half, Elasticity: 2m) })
                    {
                        ChangeAnswer answer = judge.Judge(change);
                        decimal freed = change.Kind == ChangeKind.Drop ? costs.Avoidable.Without(crop).Trips.Sum(trip => trip.Amount.Amount) : 0m;
                        Assert.Equal(-freed, answer.Moved.Sum(moved => moved.Moves.Sum(move => move.Change.Amount)));
                        Assert.Equal(0m, answer.SharesMoved.Sum(move => move.Change.Amount));

                        // The farm is poorer or richer by the partial budget and by nothing else: crops after less before, and what changes elsewhere.
                        Assert.Equal(answer.AvoidableChange.Amount, answer.Crops.Sum(one => one.After.Amount - one.Before.Amount) + answer.Elsewhere.Sum(line => line.Change.Amount));
                        Assert.Equal(answer.AvoidableChange.Amount, answer.Means.Net.Amount);
                    }

                    ChangeAnswer drop = judge.Judge(new Change(ChangeKind.Drop, crop.Name));
                    Assert.Equal(-crop.NetReturn.Amount, drop.FullCostChange.Amount);
                    Assert.Equal(0m, drop.Crops.Single(one => one.Crop == crop.Name).After.Amount);
                }
            }
        },
        iter: Farms, threads: 2, print: farm => farm.ToString());
}
