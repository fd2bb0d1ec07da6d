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
        Assert.Equal(-110m + 900m - 120m, fit.Swap.NetChange.Amount);
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
    public void Grow_WithElasticity_LowersThePriceOfAllThatIsSold()
    {
        ChangeJudge judge = Judge(Farm());
        ChangeAnswer firm = judge.Judge(new Change(ChangeKind.Grow, "Kale", 100m));
        ChangeAnswer soft = judge.Judge(new Change(ChangeKind.Grow, "Kale", 100m, Elasticity: 1m));

        // Elasticity 1: twice the quantity at half the price brings in what it did before; only the picking is added.
        Assert.Equal(900m - 120m, firm.AvoidableChange.Amount);
        Close.To(-120m, soft.AvoidableChange.Amount, 0.01m);
        Close.To(0.5m, soft.PriceFactor, 0.0000001m);
        Assert.Equal(0m, firm.Room); // beets hold the only other bed
        Assert.Equal(soft.AvoidableChange, judge.Judge(new Change(ChangeKind.Grow, "Kale", 100m, Elasticity: -1m)).AvoidableChange);
    }

    [Fact]
    public void Grow_WithElasticity_LowerValueOfWhatTheHouseholdEatsIsNoCash()
    {
        FarmBuilder farm = Farm().Channel("home", ChannelKind.Household).Pick("2025-07-01", "K1", 50m).Sell("2025-07-02", "Kale", "home", 50m, price: 6m);

        PartialBudget budget = Judge(farm).Judge(new Change(ChangeKind.Grow, "Kale", 100m, Elasticity: 1m)).Partial;

        // Sales and what was eaten bring in what they did before; 120 of unpaid picking is added, and no cash at all moves.
        Assert.Equal(-120m, decimal.Round(budget.NetChange.Amount, 1));
        Assert.Equal(0m, decimal.Round(budget.CashChange.Amount, 1));
        Assert.Equal([false, true], budget.ReducedReturns.Select(line => line.NonCash));
        Assert.Equal([450m, 150m], budget.ReducedReturns.Select(line => decimal.Round(line.Amount.Amount, 1)));
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
                ChangeJudge judge = new(SeasonCosts.Of(season));
                foreach (EnterpriseBudget crop in season.Crops.Where(crop => crop.Sums.BedFeet.Value > 0m).Take(3))
                {
                    decimal half = crop.Sums.BedFeet.Value / 2m;
                    foreach (Change change in new Change[] { new(ChangeKind.Drop, crop.Name), new(ChangeKind.Shrink, crop.Name, half), new(ChangeKind.Grow, crop.Name, half, Elasticity: 2m) })
                    {
                        ChangeAnswer answer = judge.Judge(change);
                        Assert.All(answer.Moved, moved => Assert.Equal(0m, moved.Moves.Sum(move => move.Change.Amount)));

                        // The farm is poorer or richer by the partial budget and by nothing else: crops after, less what moved off them, less crops before.
                        decimal off = answer.MovedInAll.Where(move => season.Crops.All(one => !string.Equals(one.Name, move.To, StringComparison.OrdinalIgnoreCase))).Sum(move => move.Change.Amount);
                        Assert.Equal(answer.AvoidableChange.Amount, answer.Crops.Sum(one => one.After.Amount - one.Before.Amount) - off);
                    }

                    ChangeAnswer drop = judge.Judge(new Change(ChangeKind.Drop, crop.Name));
                    Assert.Equal(-crop.NetReturn.Amount, drop.FullCostChange.Amount);
                    Assert.Equal(0m, drop.Crops.Single(one => one.Crop == crop.Name).After.Amount);
                }
            }
        },
        iter: Farms, threads: 2, print: farm => farm.ToString());
}
