using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Files;
using FarmEconomics.Records;
using FarmEconomics.Reports.Decisions;
using FarmEconomics.Tests.House;
using Xunit;

namespace FarmEconomics.Tests.Demo;

/// <summary>The decision the demo farm has to make: crops that full cost would drop and the farm should keep, and others it should not.</summary>
public class DemoDecisionTests
{
    private static readonly Lazy<FarmReview> Demo = new(() => FarmFolder.Open(Path.Combine(Repository.Root, "demo-data")).Review!);

    [Fact]
    public void Drop_CropBelowFullCost_TwoAnswersDisagreeAndTheWordsSayWhy()
    {
        SeasonReview season = Demo.Value.Season(2025);
        ChangeJudge judge = new(SeasonCosts.Of(season));
        List<ChangeAnswer> answers = season.Crops.Where(crop => crop.NetReturn.Amount < 0m).Select(crop => judge.Judge(new Change(ChangeKind.Drop, crop.Name, Elasticity: 2m))).ToList();

        ChangeAnswer disputed = answers.First(answer => answer.Disagree);
        Assert.True(disputed.FullCostChange.Amount > 0m && disputed.AvoidableChange.Amount < 0m);
        Assert.Contains("The two disagree because", DecisionSentences.Of(disputed, Notation.Default));
        Assert.Contains("does not go away with it", DecisionSentences.Of(disputed, Notation.Default));
        Assert.All(answers.Where(answer => !answer.Disagree), answer => Assert.DoesNotContain("disagree", DecisionSentences.Of(answer, Notation.Default)));
        Assert.All(answers, answer => Assert.All(answer.Moved, moved => Assert.Equal(0m, moved.Moves.Sum(move => move.Change.Amount))));
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
            string words = DecisionSentences.Of(verdict, first.Settings, first.Season.Settings);
            Assert.Contains('$', words);
            Assert.Contains("Weakest assumption", words + (verdict.TurnsOn is null ? "Weakest assumption" : ""));
        });
        Assert.Contains("stays ahead of", again);
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
