using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Files;
using FarmEconomics.Pricing;
using FarmEconomics.Records;
using FarmEconomics.Reports.Decisions;
using FarmEconomics.Reports.WhatIf;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.House;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.WholeWay.Tests.Demo;

/// <summary>The decision the demo farm has to make: crops that full cost would drop and the farm should keep, and others it should not.</summary>
public class DemoDecisionTests
{
    private static readonly Lazy<FarmReview> Demo = new(() => FarmFolder.Open(Path.Combine(Repository.Root, "demo-data")).Review!);

    [Fact]
    public void Drop_CropBelowFullCost_TwoAnswersDisagreeAndTheWordsSayWhy()
    {
        SeasonReview season = Demo.Value.Season(2025);
        ChangeJudge judge = new(SeasonCosts.Of(season));
        List<ChangeAnswer> answers = season.Crops.Where(crop => crop.NetReturn.Amount < 0m).Select(crop => judge.Judge(new Change(ChangeKind.Drop, crop.Name))).ToList();

        ChangeAnswer disputed = answers.First(answer => answer.Disagree);
        Assert.True(disputed.FullCostChange.Amount > 0m && disputed.AvoidableChange.Amount < 0m);
        Assert.Contains("does not go away with it", ChangeSentences.Rest(disputed, Notation.Default));
        Assert.All(answers.Where(answer => !answer.Disagree), answer => Assert.DoesNotContain("disagree", ChangeSentences.Rest(answer, Notation.Default)));
        Assert.All(answers, answer => Assert.All(answer.Moved, moved => Assert.Equal(0m, moved.Moves.Sum(move => move.Change.Amount))));
    }

    [Fact]
    public void Drop_EveryCrop_FirstTwoLinesHaveCashAndOwnHours()
    {
        SeasonReview season = Demo.Value.Season(2025);
        ChangeJudge judge = new(SeasonCosts.Of(season));
        Assert.Equal(41, season.Crops.Count);
        Assert.All(season.Crops, crop =>
        {
            ChangeAnswer answer = judge.Judge(new Change(ChangeKind.Drop, crop.Name));
            IReadOnlyList<string> lines = ChangeSentences.First(answer, Notation.Default);
            Assert.StartsWith($"Without {crop.Name}: ", lines[0], StringComparison.Ordinal);
            Assert.Contains("cash", lines[0], StringComparison.Ordinal);
            Assert.Contains("own hours", lines[0], StringComparison.Ordinal);
            Assert.True(answer.Means.Cash.Amount >= -0.5m || lines[0].Contains(" less cash a year", StringComparison.Ordinal), lines[0]);
            Assert.Contains("own hours", lines[1], StringComparison.Ordinal);
        });
    }

    /// <summary>The same question asked of what-if: the same words, the same figures, and the engine run again without the crop says so to the cent.</summary>
    [SlowFact]
    public void WhatIfWithoutACrop_AnswersAsDecideDoes()
    {
        SeasonReview season = Demo.Value.Season(2025);
        ChangeJudge judge = new(SeasonCosts.Of(season));
        foreach (EnterpriseBudget crop in season.Crops)
        {
            ScenarioOutcome outcome = ScenarioComparison.Of(Demo.Value, 2025, FarmScenario.Parse("without", $"without {crop.Name}", Demo.Value.Records)).Outcomes[0];
            ChangeAnswer drop = judge.Judge(new Change(ChangeKind.Drop, crop.Name));

            Assert.Equal(ChangeSentences.First(drop, Notation.Default), ChangeSentences.First(outcome.Without!, Notation.Default));
            Assert.StartsWith(ChangeSentences.Prose(drop, Notation.Default).Markdown, WhatIfSentences.Answer(outcome).Markdown, StringComparison.Ordinal);

            // Shared cost that moves to the household is not saved; other crops' stock keeps its value. A sale that draws on two years' lots is split anew: cents between years.
            // All years together it is exact (AvoidableCostTests).
            decimal Net(SeasonReview one) => one.FarmNet - one.UnallocatedTotal(Unallocated.Household) - one.Farm.Sums.ClosingStock.Amount;
            Close.To(drop.AvoidableChange.Amount + crop.Sums.ClosingStock.Amount, Net(outcome.After) - Net(season), 0.05m);
            Assert.True(outcome.IsProven);
        }
    }

    /// <summary>decide, verdicts, short-run break-even, floor price and what-if answer alike: Micro mix pays for the farm by all of them.</summary>
    [Fact]
    public void EveryCrop_DropAndFloorPriceAgree()
    {
        SeasonReview season = Demo.Value.Season(2025);
        SeasonCosts costs = SeasonCosts.Of(season);
        ChangeJudge judge = new(costs);
        PriceBook book = PriceBook.Of(Demo.Value, 2025);
        foreach (EnterpriseBudget crop in season.Crops)
        {
            decimal drop = judge.Judge(new Change(ChangeKind.Drop, crop.Name)).AvoidableChange.Amount;
            List<CropPrice> prices = [.. book.Prices.Where(price => price.Crop == crop.Crop)];
            decimal aboveFloor = prices.Sum(price => (price.Realized.Value!.Value - price.Prices.Floor.Value!.Value) * price.Sold.Quantity * (1m - (price.FeePercent / 100m)));

            // Fees are rounded row by row.
            Close.To(-drop, aboveFloor, 0.01m + (0.005m * prices.Sum(price => price.Sold.Parts.Count)));
            Result shortRun = BreakEvenPair.Of(crop, costs.Model(crop)).First(pair => pair is { Form: BreakEvenForm.Full, Run: Run.Short }).Price;
            Assert.Equal(drop < 0m, shortRun.Value < costs.Model(crop).PriceOutsideBoxes.Value);
        }
    }

    [Fact]
    public void Verdicts_EveryCrop_HaveReasonsAndAreTheSameInEveryRun()
    {
        SeasonReview season = Demo.Value.Season(2025);
        Verdicts first = Verdicts.Of(Demo.Value, SeasonCosts.Of(season));
        FarmReview reopened = FarmFolder.Open(Path.Combine(Repository.Root, "demo-data")).Review!;
        string again = DecisionSentences.VerdictLines(Verdicts.Of(reopened, SeasonCosts.Of(reopened.Season(2025))));

        Assert.Equal(season.Crops.Count, first.Crops.Count);
        Assert.Equal(DecisionSentences.VerdictLines(first), again);
        Assert.All(first.Crops, verdict =>
        {
            string words = DecisionSentences.Of(verdict, first.Season.Settings);
            Assert.Contains("own hours", words, StringComparison.Ordinal);
            // What would turn it, what it needs, or, of a crop to grow all the same, how far it fell short.
            string turns = verdict switch
            {
                { Direction: Direction.Grow, Budget.NetReturn.Amount: < 0m } => "It still fell",
                { Direction: Direction.Grow } => "it would no longer earn its",
                { Direction: Direction.TooClose } => "it would bring no more than",
                _ => words.Contains("It needs", StringComparison.Ordinal) ? "It needs" : "change this",
            };
            Assert.Contains(turns, words, StringComparison.Ordinal);
            Assert.Equal(verdict.LowersCash, words.StartsWith("Less cash: ", StringComparison.Ordinal));
            Assert.Equal(verdict.Budget.Name == "Raspberries" ? [2025] : [2023, 2024, 2025], verdict.Seasons.Select(one => one.CropYear)); // first picked in 2025
        });

        // What a market takes, it takes once: a crop that goes takes no other's place.
        HashSet<string> gone = [.. first.Crops.Where(verdict => verdict.BetterMix is not null).Select(verdict => verdict.Budget.Name)];
        Assert.All(first.Crops.Where(verdict => verdict.BetterMix is not null), verdict => Assert.DoesNotContain(verdict.BetterMix!.Crops, one => gone.Contains(one.Crop)));
        Assert.Throws<ArgumentException>(() => Verdicts.Of(reopened, SeasonCosts.Of(season)));
    }

    [Fact]
    public void DropOrGrow_WithoutNames_PicksTheDisputedCropAndProvesItself()
    {
        DropOrGrow plan = DropOrGrow.Of(Demo.Value, Demo.Value.Season(2025));

        Assert.True(plan.Dropped.Disagree);
        Assert.All(plan.Proof().Rows, row => Assert.Equal(0m, row[3].Number));
        Assert.NotEmpty(DecisionPlots.BeforeAndAfter(plan.Dropped, Notation.Default).Svg());
        Assert.NotEmpty(DecisionPlots.Distributions(plan.Verdicts).Svg());
        Assert.NotEmpty(DecisionPlots.Swings(plan.Grid.Model, Notation.Default).Svg());
        Assert.Equal(GridHeatMap.Of(plan.Grid, Notation.Default).Svg(), GridHeatMap.Of(plan.Grid, Notation.Default).Svg());
    }
}
