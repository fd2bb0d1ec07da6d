using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Changes;

/// <summary>Changes of a small farm (<see cref="ChangeFarm"/>), every figure on paper (docs/methods.md, section 16).</summary>
public class ChangeByHandTests
{
    /// <summary>
    /// Sales of 300 and the household's 30 go, fees of 30, seed and 5 h are saved. The first boxes held 130 and are to hold 100: of the 60
    /// missing, kale takes 15 lb up to the 35 it once had, 30 worth, which would have sold for 1.80 a pound; 30 are bought in at 80%.
    /// </summary>
    [Fact]
    public void Drop_Beets_IsThePartialBudgetOnPaper()
    {
        ChangeAnswer answer = ChangeFarm.Judge(ChangeFarm.Build()).Judge(new Change(ChangeKind.Drop, " beets "));
        Assert.Equal("Drop Beets", answer.Change.Title);
        Assert.Empty(answer.Partial.AddedReturns);
        Assert.Equal(
            [("Beets: picking, owner labor", 100m), ("Beets: seed", 30m), ("Beets: channel fees", 30m)],
            answer.Partial.ReducedCosts.Lines()
        );
        Assert.Equal([("bought in for the boxes", 24m)], answer.Partial.AddedCosts.Lines());
        Assert.Equal(
            [
                ("Beets: sales", 300m),
                ("Beets: household use at list value", 30m),
                ("Kale: put into the boxes instead of being sold, at the price less fee and packaging", 27m),
            ],
            answer.Partial.ReducedReturns.Lines()
        );
        Assert.Equal((160m, 381m, -221m), (answer.Partial.Positive.Amount, answer.Partial.Negative.Amount, answer.AvoidableChange.Amount));
        Assert.Equal(new MeansChange(new Money(-291m), 0m, 5m, new Money(-30m), new Money(100m)), answer.Means);
        Assert.Equal((-82.20m, false, 100m, 0m), (answer.FullCostChange.Amount, answer.Disagree, answer.FeetGone, answer.FeetAdded));
        Assert.Equal(
            (0m, 0m, false, null, "nothing more is grown"),
            (answer.BelowTodaysPrice, answer.NotTaken, answer.ReplacementDoesNotFit, answer.Room, answer.TurnsAtElasticity.Reason)
        );
        Assert.Equal([15m, 0m], answer.Refill.Items.Select(item => item.Quantity));
        Assert.Equal((null, true, null), (answer.WhyUnknown, answer.CropsUnknown.Count == 0, answer.BestMix));
    }

    /// <summary>
    /// Rent and stall move to the others by bed-foot-days and sales; 25 of the cooler are unused capacity, and the insurance of their own
    /// ends with nobody. Members' 88.20 stand to kale. Kale -21.20 - 50 - 36 + 88.20 - 27, leeks -45 - 50.
    /// </summary>
    [Fact]
    public void Drop_Beets_MovesWhatStays()
    {
        ChangeAnswer answer = ChangeFarm.Judge(ChangeFarm.Build()).Judge(new Change(ChangeKind.Drop, "Beets"));
        Assert.Equal(
            [
                ": not assigned 15.00, Beets -15.00",
                "cooler: unused capacity 25.00, Beets -25.00",
                "general overhead: Kale 50.00, Leeks 50.00, Beets -100.00",
                "stall (channel): Kale 36.00, Beets -36.00",
            ],
            answer.Moves()
        );
        Assert.Equal(100m, answer.Moved.Single(one => one.Pool?.Name == "general overhead").Moved.Amount);
        Assert.Equal([("Kale", 88.20m), ("Beets", -88.20m)], answer.SharesMoved.Amounts());
        Assert.Equal([("Beets", 82.20m, 0m), ("Kale", -21.20m, -46m), ("Leeks", -45m, -95m)], answer.Nets());
        Assert.Equal(
            [("bought in for the boxes", -24m), ("cost that ends with not assigned", -15m), ("cost that ends with unused capacity", -25m)],
            answer.Elsewhere.Amounts().Order()
        );
    }

    /// <summary>
    /// Kale uses two thirds of a wash line at half its capacity, leeks one: 0.50 of office hours and 0.20 of weeding are 0.70, 0.47 to kale
    /// and 0.23 to leeks, of which 0.34 and 0.16 are fixed. Beets have no part in it: not a cent of it moves when they go, though 0.50 at
    /// once would split into 0.33 and 0.17.
    /// </summary>
    [Fact]
    public void Drop_MovesNothingOfAPoolTheCropDoesNotUse()
    {
        FarmBuilder farm = ChangeFarm.Build().Pool("wash line", "measured", capacity: 6m).Task("office", Stage.Overhead)
            .Use("wash line", "Kale", 2m, 2025).Use("wash line", "Leeks", 1m, 2025)
            .Work("2025-06-01", "me", 0.025m, "office", pool: "wash line").Work("2025-06-02", "me", 0.01m, "weeding", pool: "wash line");
        Assert.Equal(
            [0.47m, 0.23m],
            new[] { "K", "L" }.Select(planting => farm.Season(2025).PoolNamed("wash line").Charged(planting)));
        ChangeAnswer answer = ChangeFarm.Judge(farm).Judge(new Change(ChangeKind.Drop, "Beets"));
        Assert.DoesNotContain(answer.Moved, one => one.Pool?.Name == "wash line");
    }

    /// <summary>
    /// Kale has half of a tunnel that 100 a year are put aside for, and nobody the rest. Twice the kale takes all of it: the 50 of unused
    /// capacity move onto kale.
    /// </summary>
    [Fact]
    public void Grow_IntoUnusedCapacity_MovesItOntoTheCrop()
    {
        FarmBuilder farm = ChangeFarm.Build().Pool("tunnel", "measured", capacity: 200m).Use("tunnel", "Kale", 100m, 2025)
            .Asset("hoops", "tunnel", "2025-01-01", 1000m, 10m);
        ChangeAnswer answer = ChangeFarm.Judge(farm).Judge(new Change(ChangeKind.Grow, "Kale", 100m));
        Assert.Contains("tunnel: Kale 50.00, unused capacity -50.00", answer.Moves());
    }

    /// <summary>
    /// Leeks are all the shop sells: its 30 go with them and move to nobody. 160 go, 10 + 40 + 30 are saved. Nothing of them is in boxes.
    /// </summary>
    [Fact]
    public void Drop_OfAllAChannelSells_SavesItsTrips()
    {
        ChangeAnswer answer = ChangeFarm.Judge(ChangeFarm.Build()).Judge(new Change(ChangeKind.Drop, "Leeks"));
        Assert.Equal(
            [("Leeks: picking, owner labor", 40m), ("Leeks: seed", 10m), ("shop (channel): trips no longer made", 30m)],
            answer.Partial.ReducedCosts.Lines()
        );
        Assert.Equal((-80m, 45m, true), (answer.AvoidableChange.Amount, answer.FullCostChange.Amount, answer.Disagree));
        Assert.Equal(
            [
                "cooler: unused capacity 25.00, Leeks -25.00",
                "general overhead: Beets 50.00, Kale 50.00, Leeks -100.00",
                "shop (channel): Leeks -30.00",
            ],
            answer.Moves()
        );
        Assert.Empty(answer.SharesMoved);
        Assert.Equal([("Beets", 82.20m, 32.20m), ("Kale", -21.20m, -71.20m), ("Leeks", -45m, 0m)], answer.Nets());
    }

    /// <summary>
    /// Half of what goes and is saved; in the boxes 15 are missing: 7.5 lb of kale. Rent by 50 : 100 : 100, the stall by 150 : 200, of the
    /// cooler 12.50 more unused. Payments and trips stay. What is left of beets' 82.20: -165 + 80 and 40 + 10.29 + 12.50 less to carry.
    /// </summary>
    [Fact]
    public void Shrink_Beets_IsHalf()
    {
        ChangeAnswer answer = ChangeFarm.Judge(ChangeFarm.Build()).Judge(new Change(ChangeKind.Shrink, "Beets", 50m));
        Assert.Equal("Shrink Beets by 50 bed-feet", answer.Change.Title);
        Assert.Equal((80m, 178.50m), (answer.Partial.Positive.Amount, answer.Partial.Negative.Amount));
        Assert.Equal(-98.50m, answer.AvoidableChange.Amount);
        Assert.Equal((-41.10m, 50m, 0m), (answer.FullCostChange.Amount, answer.FeetGone, answer.FeetAdded));
        Assert.Equal(
            [
                "cooler: unused capacity 12.50, Beets -12.50",
                "general overhead: Kale 20.00, Leeks 20.00, Beets -40.00",
                "stall (channel): Kale 10.29, Beets -10.29",
            ],
            answer.Moves()
        );
        Assert.Empty(answer.SharesMoved);
        Assert.Empty(answer.Fits);
        Assert.Equal([("Beets", 82.20m, 59.99m), ("Kale", -21.20m, -64.99m), ("Leeks", -45m, -65m)], answer.Nets());
        Assert.Equal((2.5m, 50m), (answer.Means.OwnHours, answer.Means.OwnHoursValue.Amount));
    }

    /// <summary>
    /// Kale twice over at an elasticity of 1: of the first week's 120 lb more the stall takes none; of the second week's 35, when nothing
    /// was sold there, all at 2, less 10%. 70 - 7 - 40 - 120 beside the -221 of beets; full cost also counts kale's 100 + 25 + 24 once
    /// more. All of it changes hands in cash but 6 own hours for the 5 of beets.
    /// </summary>
    [Fact]
    public void Swap_BeetsForKale_IsBothOnPaper()
    {
        Change swap = new(ChangeKind.Swap, "Beets", Replacement: "kale", Elasticity: 1m);
        ChangeAnswer answer = ChangeFarm.Judge(ChangeFarm.Build()).Judge(swap);
        Assert.Equal("Swap Beets for Kale", answer.Change.Title);
        Assert.Equal([("Kale: more sales", 70m)], answer.Partial.AddedReturns.Lines());
        Assert.Equal(
            [("Kale: picking, owner labor", 120m), ("Kale: seed", 40m), ("Kale: channel fees", 7m), ("bought in for the boxes", 24m)],
            answer.Partial.AddedCosts.Lines()
        );
        Assert.Equal((-318m, -328.20m), (answer.AvoidableChange.Amount, answer.FullCostChange.Amount));
        Assert.Equal(new MeansChange(new Money(-268m), 0m, -1m, new Money(-30m), new Money(-20m)), answer.Means);
        Assert.Equal((100m, 100m, false), (answer.FeetGone, answer.FeetAdded, answer.ReplacementDoesNotFit));
        Assert.Equal((0m, 120m / 155m, null), (answer.BelowTodaysPrice, answer.NotTaken, answer.Room));
        Assert.Equal(
            [
                ": not assigned 15.00, Beets -15.00",
                "cooler: Kale 25.00, Beets -25.00",
                "general overhead: Kale 100.00, Beets -100.00",
                "stall (channel): Kale 36.00, Beets -36.00",
            ],
            answer.Moves()
        );
        Assert.Equal([("Beets", 82.20m, 0m), ("Kale", -21.20m, -218m), ("Leeks", -45m, -45m)], answer.Nets());
        Assert.Equal([5m, 6m], new[] { answer.Freed.Sum(week => week.Hours), answer.Taken.Sum(week => week.Hours) });
    }

    /// <summary>
    /// Half as much kale again at an elasticity of 1: 17.5 lb at 2 less 10%, for 20 of seed and 3 h. 40 ft are free, in bed Four. Full cost
    /// counts half of 149 more. Rent by 100 : 150 : 100 (the odd cent to the first) and the stall by 300 : 300.
    /// </summary>
    [Fact]
    public void Grow_Kale_IsHalfAsMuchAgain()
    {
        ChangeJudge judge = ChangeFarm.Judge(ChangeFarm.Build());
        ChangeAnswer answer = judge.Judge(new Change(ChangeKind.Grow, "kale", 50m, Elasticity: 1m));
        Assert.Equal("Grow Kale by 50 bed-feet", answer.Change.Title);
        Assert.Equal([("Kale: more sales", 35m)], answer.Partial.AddedReturns.Lines());
        Assert.Equal(
            [("Kale: picking, owner labor", 60m), ("Kale: seed", 20m), ("Kale: channel fees", 3.50m)],
            answer.Partial.AddedCosts.Lines()
        );
        Assert.Equal((-48.50m, -123m, 40m), (answer.AvoidableChange.Amount, answer.FullCostChange.Amount, answer.Room));
        Assert.Equal((0m, 50m, 60m / 77.5m), (answer.FeetGone, answer.FeetAdded, answer.NotTaken));
        Assert.Equal(
            [
                "cooler: Kale 12.50, unused capacity -12.50",
                "general overhead: Kale 28.57, Beets -14.28, Leeks -14.29",
                "stall (channel): Kale 6.00, Beets -6.00",
            ],
            answer.Moves()
        );
        Assert.Empty(answer.Freed);
        Assert.Equal([("cost that ends with unused capacity", 12.50m)], answer.Elsewhere.Amounts());
        Assert.Equal(3m, answer.Taken.Sum(week => week.Hours));
        Close.To(5000m / 7m, answer.Taken.Sum(week => week.BedFootWeeks), 0.0001m);
        Assert.Equal(new MeansChange(new Money(11.50m), 0m, -3m, Money.Zero, new Money(-60m)), answer.Means);
        Assert.Equal(answer.Means, judge.More("Kale", 50m, 1m));
    }

    /// <summary>
    /// 60 lb more in the first week sell beyond the most: to 1.6 times 100 lb, revenue 0.8 x 1.5^u + 0.2 x 2^u - 1 of 180 after the fee,
    /// with u = 1 - 1/e. With 31.50 of the second week that covers 80 where it is 48.50 / 180 = 0.26944: u = 0.51144, e = 2.047.
    /// At 3 a pound and 0.40 of cost it pays at any elasticity; beets' 30 of boxes alone bring less than 130 of cost at none.
    /// </summary>
    [Fact]
    public void Grow_StopsPayingAtAnElasticity()
    {
        ChangeJudge judge = ChangeFarm.Judge(ChangeFarm.Build());
        Assert.Equal(2.05m, judge.Judge(new Change(ChangeKind.Grow, "Kale", 50m)).TurnsAtElasticity.Value);
        Assert.True(judge.Judge(new Change(ChangeKind.Grow, "Kale", 50m, Elasticity: 2.06m)).AvoidableChange.Amount > 0m);
        Assert.True(judge.Judge(new Change(ChangeKind.Grow, "Kale", 50m, Elasticity: 2.03m)).AvoidableChange.Amount < 0m);

        FarmBuilder costly = ChangeFarm.Build().Spend("2025-04-02", 500m, "row cover", crop: "Kale");
        Assert.Equal("it pays at no elasticity", TurningOfKale(costly));
        FarmBuilder cheap = ChangeFarm.Build().Without<LaborRow>(_ => true).Without<ExpenseRow>(row => row.Crop == "Kale");
        Assert.Equal("it pays at any elasticity", TurningOfKale(cheap));
    }

    private static string? TurningOfKale(FarmBuilder farm) =>
        ChangeFarm.Judge(farm).Judge(new Change(ChangeKind.Grow, "Kale", 50m)).TurnsAtElasticity.Reason;

    /// <summary>What is told of dropping alone is what is told of it beside all else.</summary>
    [Fact]
    public void WithoutCrop_IsDroppingIt() =>
        Assert.Equal(
            new MeansChange(new Money(-291m), 0m, 5m, new Money(-30m), new Money(100m)),
            ChangeFarm.Judge(ChangeFarm.Build()).WithoutCrop(" beets")
        );
}
