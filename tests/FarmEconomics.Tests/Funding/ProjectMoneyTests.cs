using FarmEconomics.Budgets;
using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Funding;

/// <summary>Who pays for a project and when, and what it saves, on budgets small enough to work out by hand.</summary>
public class ProjectMoneyTests
{
    [Fact]
    public void NextYear_ProjectOfSeveralYears_PaysOnlyItsFirst()
    {
        FundingWriteUp writeUp = WriteUp("", Row(1000m, 50m), Row(4000m, 100m, year: 2m));
        decimal Line(string name) => writeUp.NextYear.Lines.Single(line => line.Name == name).Total;

        Assert.Equal((1000m, 500m), (Line("Project, what is paid in cash"), Line("Grant")));
        Assert.Equal((5000m, 4500m, 500m), (writeUp.Grant!.Total, writeUp.Grant.Funder, writeUp.Grant.Match));
    }

    /// <summary>600 from the funder, 400 from the state: nothing of it leaves the farm.</summary>
    [Fact]
    public void Outlay_MatchGivenByOthers_IsNotTheFarms()
    {
        FundingWriteUp writeUp = WriteUp(
            "other_saving=100",
            Row(1000m, 60m, from: MatchSource.State),
            Row(200m, 0m, from: MatchSource.Other, inKind: true));

        Assert.Equal(0m, writeUp.Investment!.NeededWithGrant.Outlay);
        Assert.Equal(0m, writeUp.Investment.WithGrant!.Amounts[0]);
        Assert.Equal(1200m, writeUp.Investment.NeededWithoutGrant.Outlay);
        Assert.Equal(600m, writeUp.NextYear.Lines.Single(line => line.Name == "Project, what is paid in cash").Total);
        Assert.Equal(600m, writeUp.Grant!.Match);
    }

    /// <summary>What is given isn't paid, so nobody can be asked for it; a part asked of the funder all the same is paid.</summary>
    [Fact]
    public void InKind_IsThePartThatIsGiven()
    {
        GrantBudget blank = WriteUp("", Row(500m, null, inKind: true)).Grant!;
        GrantBudget part = WriteUp("", Row(500m, 40m, inKind: true)).Grant!;

        Assert.Equal((0m, 500m, 500m, 0m), (blank.Funder, blank.Match, blank.InKind, blank.CashCost));
        Assert.Equal((200m, 300m, 300m, 200m), (part.Funder, part.Match, part.InKind, part.CashCost));
        Assert.Equal(part.Form.InKind, part.InKind);
    }

    /// <summary>60 hours are saved, and nobody said what an hour is worth: 100 of cost isn't all there is.</summary>
    [Fact]
    public void YearlySaving_APartWithoutItsValue_IsNotKnown()
    {
        const string Saved = "hours_saved=60; other_cost=100";
        FundingWriteUp unknown = WriteUp(Saved, Row(1000m, 50m)), valued = WriteUp(Saved + "; hour_value=20", Row(1000m, 50m));

        Assert.Equal("no hour_value and no owner_wage", unknown.Investment!.Missing);
        Assert.Null(unknown.Investment.WithGrant);
        Assert.Equal(1100m, valued.Investment!.YearlySaving.Value);
    }

    [Fact]
    public void HangsOn_Salvage_IsAnInputLikeTheOthers()
    {
        const string Assumed = "other_saving=100; project_salvage=500; project_life_years=1; discount_percent=0";
        InvestmentSwing swing = WriteUp(Assumed, Row(1000m, 50m)).Investment!.HangsOn.Single(one => one.Input == "Worth at the end");

        // -500 + 100 + 500, and a tenth of the 500 less or more.
        Assert.Equal((50m, 150m), (swing.Lower, swing.Higher));
    }

    /// <summary>Half of 40 paid for ice is the household's; the machine that makes it is bought once.</summary>
    [Fact]
    public void IceCost_IsTheFarmsPartOfRunningCosts()
    {
        SeasonReview season = Farm().Pool("cellar", "crate-days")
            .Category("ice", ExpenseClass.Operating).Category("ice machine", ExpenseClass.Capital)
            .Spend("2025-06-01", 40m, "ice", farmPercent: 50m).Spend("2025-06-01", 3000m, "ice machine").Review().Season(2025);

        Assert.Equal(20m, StoreFacts.Of(season, season.Records.FindPool("cellar")!).IceCost.Value);
    }

    [Fact]
    public void ProjectChoice_CostNotGiven_RanksNoProjectFirst()
    {
        IReadOnlyList<ProjectChoice> projects = ProjectChoice.All(Washing(
            wage: 20m,
            new() { ["project"] = "dream", ["task"] = "wash", ["hours_saved_percent"] = 50m },
            new() { ["project"] = "washer", ["cost"] = 100m, ["task"] = "wash", ["hours_saved_percent"] = 50m }));

        Assert.Equal(["washer", "dream"], projects.Select(project => project.Project));
        Assert.Contains("cost", projects[1].YearlyCost.Reason, StringComparison.Ordinal);
        Assert.False(projects[1].PartNeeded.IsAvailable);
    }

    /// <summary>Ten hours of washing nobody put a value on are not worth nothing.</summary>
    [Fact]
    public void ProjectChoice_HoursWithoutAWage_DoNotLookWorthless()
    {
        SeasonReview season = Washing(wage: null, new RowValues { ["project"] = "washer", ["cost"] = 100m, ["task"] = "wash" });

        Assert.Contains("owner_wage", Assert.Single(ProjectChoice.All(season)).PartNeeded.Reason, StringComparison.Ordinal);
    }

    /// <summary>10 of beets were lost in the cellar, hours there nobody wrote down: 12.95 isn't 130% of what could be saved.</summary>
    [Fact]
    public void ProjectChoice_NoLogOfHours_CannotTellThePart()
    {
        FarmBuilder farm = Farm(wage: 20m).Pool("cellar", "crate-days").Task("tidy", Stage.Pack, "cellar").Worker("Own", WorkerKind.Owner)
            .Channel("heap", ChannelKind.Waste).Pick("2025-07-01", "b", 0.2m).Sell("2025-07-02", "beets", "heap", 0.2m)
            .Add<ProjectRow>(new RowValues { ["project"] = "door", ["cost"] = 100m, ["pool"] = "cellar", ["life_years"] = 10m });
        ProjectChoice Of() => Assert.Single(ProjectChoice.All(farm.Review().Season(2025)));

        Assert.Equal((10m, "no labor records"), (Of().LossesOnRecord.Value, Of().PartNeeded.Reason));
        farm.Work("2025-07-03", "Own", 2m, "tidy", pool: "cellar");
        Close.To(12.95m / 50m, Of().PartNeeded.Value!.Value, 1e-9m); // 2 hours at 20, and the 10
    }

    private static FundingWriteUp WriteUp(string assumed, params RowValues[] rows)
    {
        FarmBuilder farm = Farm();
        Array.ForEach(rows, row => farm.Add<FundingRow>(row));
        FundingWriteUp writeUp = FundingWriteUp.Of(farm.Review(), 2025, "Shed", FundingAssumptions.Parse(assumed));
        Assert.All(writeUp.Checks, check => Assert.True(check.Difference == 0m, $"{check.Name}: {check.Left} against {check.Right}"));
        return writeUp;
    }

    private static SeasonReview Washing(decimal? wage, params RowValues[] projects)
    {
        FarmBuilder farm = Farm(wage).Task("wash", Stage.Pack).Worker("Own", WorkerKind.Owner)
            .Work("2025-07-01", "Own", 10m, "wash", crop: "beets");
        Array.ForEach(projects, project => farm.Add<ProjectRow>(project));
        return farm.Review().Season(2025);
    }

    private static FarmBuilder Farm(decimal? wage = null) =>
        new FarmBuilder(new FarmSettings { InterestPercent = 5m, OwnerWage = wage }).AsOf("2025-12-31")
            .Crop("beets", perCrate: 10m, store: "cellar").Bed("bed").Channel("market", ChannelKind.Market)
            .Planting("b", "beets", "bed", 10, "2025-05-01", "2025-07-15").Pick("2025-07-01", "b", 100)
            .Sell("2025-07-01", "beets", "market", 100, 50m).Spend("2025-05-01", 1000m, "seed", crop: "beets");

    private static RowValues Row(
        decimal amount,
        decimal? percent,
        decimal year = 1m,
        MatchSource? from = null,
        bool inKind = false) => new()
        {
            ["project"] = "Shed",
            ["item"] = "item",
            ["object_class"] = ObjectClass.Supplies,
            ["amount"] = amount,
            ["funder_percent"] = percent,
            ["match_from"] = from,
            ["in_kind"] = inKind,
            ["budget_year"] = year,
        };
}
