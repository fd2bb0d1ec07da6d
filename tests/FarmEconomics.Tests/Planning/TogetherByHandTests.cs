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
}
