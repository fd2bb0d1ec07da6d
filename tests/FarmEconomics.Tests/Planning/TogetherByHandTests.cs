using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Reports.Planning;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// What is full in several weeks, told over all of them together, on <see cref="SmallFarm"/>, by hand: a foot of A earns 3, one of B 2.5.
/// </summary>
public class TogetherByHandTests
{
    /// <summary>
    /// A foot of A takes a tray in weeks 8 and 9, B none; of 60 trays, 60 A and 40 B. A tray more in one of the two weeks brings nothing,
    /// in both it turns a foot of B into A: 3 - 2.5. A foot of bed more bears B: 2.5, in the eleven weeks from sowing to the last pick.
    /// </summary>
    [Fact]
    public void Trays_FullInSeveralWeeks_AreToldByWhatAllOfThemBring()
    {
        PlanModel farm = SmallFarm.Of();
        farm = farm with
        {
            Sowings = [farm.Sowings[0] with { Trays = SmallFarm.At((8, 1.0), (9, 1.0)) }, farm.Sowings[1]],
            Trays = SmallFarm.Weekly(60.0),
        };
        BestMix mix = BestMix.Of(farm, Programs.Solver, BestMix.LimitsTold);
        Programs.Near([60.0, 40.0], mix.Best!.Feet, 1e-6);
        Assert.All(mix.Worths.Where(one => one.Key.Kind == PlanLimitKind.Trays), one => Programs.Near(0.0, one.More!.Value, 1e-6));
        Assert.Equal([PlanLimitKind.Beds, PlanLimitKind.Trays], mix.Together.Select(one => one.Thing.Kind));
        Assert.Equal(Enumerable.Range(10, 11), mix.Together[0].Weeks);
        Assert.Equal([8, 9], mix.Together[1].Weeks);
        Programs.Near([2.5, 0.5], [.. mix.Together.Select(one => one.More)], 1e-6);
        Programs.Near([2.5, 0.5], [.. mix.Together.Select(one => one.Less!.Value)], 1e-6);
        string said = PlanWords.Headline(mix, mix.Best, Notation.Default);
        Assert.Contains("What limits it most: a foot more of open field bed all year (full in 11 weeks) would be worth $2.50.", said,
            StringComparison.Ordinal);
        Assert.Contains("Next: a tray more all year (full in 2 weeks), $0.50.", said, StringComparison.Ordinal);
        Assert.Empty(BestMix.Of(farm, Programs.Solver).Together);
    }

    /// <summary>
    /// A foot of A takes half an hour in weeks 10 and 11 each, of 20 own hours at 0.20: it earns 2.80, and 40 A, 60 B are best. An hour
    /// more in both weeks turns two feet of B into A: 2 x (2.80 - 2.50); in one of them alone it is worth no more than the hour.
    /// </summary>
    [Fact]
    public void Hours_FullInSeveralWeeks_AreToldOnTopOfWhatTheyAreWorth()
    {
        PlanModel farm = SmallFarm.Of();
        farm = farm with
        {
            Sowings = [farm.Sowings[0] with { Hours = SmallFarm.At((10, 0.5), (11, 0.5)) }, farm.Sowings[1]],
            Hours = new PlanHours(SmallFarm.Weekly(20.0), SmallFarm.Weekly(0.0), SmallFarm.Weekly(0.0), 0.2, 0.2),
        };
        BestMix mix = BestMix.Of(farm, Programs.Solver, BestMix.LimitsTold);
        Programs.Near([40.0, 60.0], mix.Best!.Feet, 1e-6);
        LimitTogether hours = Assert.Single(mix.Together, one => one.Thing.Kind == PlanLimitKind.Hours);
        Assert.Equal([10, 11], hours.Weeks);
        Programs.Near([0.6, 0.6], [hours.More, hours.Less!.Value], 1e-6);
        Assert.All(mix.Worths.Where(one => one.Key.Kind == PlanLimitKind.Hours), one => Programs.Near(0.0, one.More!.Value, 1e-6));
        Assert.Contains("Next: an hour more in each of 2 weeks, $0.60.",
            PlanWords.Headline(mix, mix.Best, Notation.Default), StringComparison.Ordinal);
    }

    /// <summary>What is full in one week alone is told as that week, and a week of which one more brings nothing isn't named.</summary>
    [Fact]
    public void Things_FullInOneWeek_AreToldAsThatWeek()
    {
        PlanModel farm = SmallFarm.Of();
        farm = farm with { Sowings = [.. farm.Sowings.Select(sowing => sowing with { WeeksInBed = 1 })] };
        BestMix mix = BestMix.Of(farm, Programs.Solver, BestMix.LimitsTold);
        Assert.Empty(mix.Together);
        Assert.Contains(
            "What limits it most: a foot more of open field bed in the week of Mar 12 would be worth $3.00.",
            PlanWords.Headline(mix, mix.Best, Notation.Default),
            StringComparison.Ordinal);
    }

    /// <summary>
    /// Of 60 trays A takes all in weeks 8 and 9, 59.70 in week 7 (0.995 a foot), and the market takes 60.5 of A. A tray more all year turns
    /// half a foot of B into A, 0.25: no more is sold; one less takes a whole foot, 0.50. In weeks 8 and 9 alone one more would end at
    /// 60.30 feet, where week 7 is full.
    /// </summary>
    [Fact]
    public void Thing_ThatStaysAllYear_IsMoreInWeeksTooThatArentFull()
    {
        PlanModel farm = SmallFarm.Of(aTakes: 60.5);
        farm = farm with
        {
            Sowings = [farm.Sowings[0] with { Trays = SmallFarm.At((7, 0.995), (8, 1.0), (9, 1.0)) }, farm.Sowings[1]],
            Trays = SmallFarm.Weekly(60.0),
        };
        BestMix mix = BestMix.Of(farm, Programs.Solver, BestMix.LimitsTold);
        LimitTogether trays = Assert.Single(mix.Together, one => one.Thing.Kind == PlanLimitKind.Trays);
        Assert.Equal((0, -1), (trays.Thing.Place, trays.Thing.Week));
        Assert.Equal([8, 9], trays.Weeks);
        Programs.Near([0.25, 0.5], [trays.More, trays.Less!.Value], 1e-6);
    }

    /// <summary>
    /// 20 own hours a week at 0.30. A foot of A costs 4.50 and takes an hour in week 10, one of B costs 2.50 and takes one in week 11: each
    /// brings 0.50, and 20 feet of each are best. An hour more in both weeks: 0.50 + 0.50, less 0.60 that two hours are worth.
    /// </summary>
    [Fact]
    public void Hours_FullForTwoCrops_BringWhatBothBring()
    {
        PlanModel farm = SmallFarm.Of();
        farm = farm with
        {
            Sowings =
            [
                farm.Sowings[0] with { Hours = SmallFarm.At((10, 1.0)), Cost = 4.5 },
                farm.Sowings[1] with { Hours = SmallFarm.At((11, 1.0)), Cost = 2.5 },
            ],
            Hours = new PlanHours(SmallFarm.Weekly(20.0), SmallFarm.Weekly(0.0), SmallFarm.Weekly(0.0), 0.3, 0.3),
        };
        BestMix mix = BestMix.Of(farm, Programs.Solver, BestMix.LimitsTold);
        Programs.Near([20.0, 20.0], mix.Best!.Feet, 1e-6);
        LimitTogether hours = Assert.Single(mix.Together, one => one.Thing.Kind == PlanLimitKind.Hours);
        Programs.Near([0.4, 0.4], [hours.More, hours.Less!.Value], 1e-6);
    }
}
