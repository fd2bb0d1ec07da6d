using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Changes;

/// <summary>What takes the place of beets on <see cref="ChangeFarm"/>, and what stands against it, on paper.</summary>
public class ChangeFitsByHandTests
{
    private static readonly DateOnly June30 = new(2025, 6, 30);

    /// <summary>
    /// At an elasticity of 1 leeks twice over find no buyer: -50 beside -221; kale's are 70 - 7 - 160. 13 hours were worked in the week of
    /// June 30, and 13 are the limit: 6 of kale for 5 of beets are one too many, 2 of leeks are not.
    /// </summary>
    [Fact]
    public void Fits_ComeBestFirst_WithTheWeeksThatAreTooLong()
    {
        FarmBuilder farm = ChangeFarm.Build().Limit("labor", 13m, "hours a week").Limit("water", 9m, "gallons a day");
        ChangeJudge judge = ChangeFarm.Judge(farm);
        ChangeAnswer answer = judge.Judge(new Change(ChangeKind.Drop, "Beets", Elasticity: 1m));
        Assert.Equal(
            [("Leeks", 100m, 1m, -271m), ("Kale", 100m, 1m, -318m)],
            answer.Fits.Select(fit => (fit.Crop, fit.BedFeet, fit.Growth, fit.Swap.NetChange.Amount))
        );
        Assert.Empty(answer.Fits[0].BeyondLimit);
        Assert.Equal([new WeekBeyondLimit(June30, 14m, 13m)], answer.Fits[1].BeyondLimit);
        Assert.Empty(answer.BeyondLimit);
        Assert.Equal(["water"], answer.LimitsNotChecked);
        Assert.True(answer.HoursChecked);
        Assert.Equal(
            [new WeekBeyondLimit(June30, 14m, 13m)],
            judge.Judge(new Change(ChangeKind.Swap, "Beets", Replacement: "Kale")).BeyondLimit
        );
        Assert.Equal([new WeekBeyondLimit(June30, 16m, 13m)], judge.Judge(new Change(ChangeKind.Grow, "Kale", 50m)).BeyondLimit);
        Assert.False(ChangeFarm.Judge(ChangeFarm.Build()).Judge(new Change(ChangeKind.Drop, "Beets")).HoursChecked);
    }

    /// <summary>Two that add alike stand by name: chard as leeks, sold at the shop in its own bed.</summary>
    [Fact]
    public void Fits_ThatAddAlike_GoByName()
    {
        FarmBuilder farm = ChangeFarm
            .Build()
            .Crop("Chard")
            .Price("Chard", 2m)
            .Bed("Five")
            .Planting("C", "Chard", "Five", 100m, "2025-05-01", "2025-08-09")
            .Pick("2025-07-01", "C", 80m)
            .Sell("2025-07-02", "Chard", "shop", 80m, price: 2m)
            .Spend("2025-04-01", 10m, "seed", crop: "Chard")
            .Work("2025-07-01", "me", 2m, "harvest", crop: "Chard");
        ChangeAnswer answer = ChangeFarm.Judge(farm).Judge(new Change(ChangeKind.Drop, "Beets", Elasticity: 1m));
        Assert.Equal(["Chard", "Leeks", "Kale"], answer.Fits.Select(fit => fit.Crop));
    }

    /// <summary>
    /// In the tunnel chard finds no place in beets' open bed: swapped, it counts foot for foot, 100 ft. What gave nothing has no length
    /// that fits either, and a crop whose produce has no price isn't tried.
    /// </summary>
    [Fact]
    public void Fits_LeaveOutWhatIsUnderAnotherCoverOrOfNoKnownValue()
    {
        FarmBuilder farm = ChangeFarm
            .Build()
            .Crop("Chard")
            .Price("Chard", 2m)
            .Bed("Roof", structure: "tunnel")
            .Planting("C", "Chard", "Roof", 50m, "2025-05-01", "2025-08-09")
            .Pick("2025-07-01", "C", 80m)
            .Sell("2025-07-02", "Chard", "shop", 80m, price: 2m)
            .Crop("Dill")
            .Planting("D", "Dill", "Four", 20m, "2025-05-01", "2025-08-09")
            .Pick("2025-07-01", "D", 5m)
            .Sell("2025-07-02", "Dill", "table", 5m);
        ChangeJudge judge = ChangeFarm.Judge(farm);
        ChangeAnswer answer = judge.Judge(new Change(ChangeKind.Swap, "Beets", Replacement: "Chard", Elasticity: 1m));
        Assert.Equal(["Leeks", "Kale"], answer.Fits.Select(fit => fit.Crop));
        Assert.Equal((true, 100m, 100m), (answer.ReplacementDoesNotFit, answer.FeetGone, answer.FeetAdded));
        Assert.Equal(["Dill"], answer.CropsUnknown.Keys);
        Assert.Null(answer.WhyUnknown);
        Assert.Equal(answer.CropsUnknown["Dill"], judge.Judge(new Change(ChangeKind.Drop, "Dill")).WhyUnknown);
        Assert.Equal(
            answer.CropsUnknown["Dill"],
            judge.Judge(new Change(ChangeKind.Swap, "Beets", Replacement: "Dill", Elasticity: 1m)).WhyUnknown
        );
    }

    /// <summary>
    /// 50 ft of kale and 50 of leeks for beets: -291 in cash, then 35 - 3.50 - 20 of kale and -5 of leeks; 5 h freed, 3 and 1 taken.
    /// Standards add 2 h of packing beets and 1 h of packing leeks, which have no day: 2 freed and half an hour taken.
    /// </summary>
    [Fact]
    public void Mix_InThePlaceOfBeets_IsAllTogether()
    {
        FarmBuilder farm = ChangeFarm
            .Build()
            .Standard("Beets", Stage.Pack, 1.2m, RatePer.BedFoot)
            .Standard("Leeks", Stage.Pack, 0.6m, RatePer.BedFoot);
        ChangeJudge judge = ChangeFarm.Judge(farm);
        Mix mix = new([("Kale", 50m), ("Leeks", 50m)], Money.Zero);
        Assert.Equal(
            new MeansChange(new Money(-284.50m), 0m, 2.5m, new Money(-30m), new Money(50m)),
            judge.WithMix("beets", mix, 1m, new Dictionary<string, decimal>())
        );

        // 250 ft of kale that are there already leave room for 12.5 lb in the second week: 25 - 2.50.
        Assert.Equal(
            new MeansChange(new Money(-293.50m), 0m, 2.5m, new Money(-30m), new Money(50m)),
            judge.WithMix("beets", mix, 1m, new Dictionary<string, decimal> { ["Kale"] = 250m })
        );

        // Swapped for 100 ft of leeks: 5 + 2 h freed, 2 + 1 taken.
        Assert.Equal(4m, judge.Judge(new Change(ChangeKind.Swap, "Beets", Replacement: "Leeks", Elasticity: 1m)).Means.OwnHours);
        Assert.Equal(3.5m, judge.Judge(new Change(ChangeKind.Shrink, "Beets", 50m)).Means.OwnHours);
        Assert.Equal(-1.5m, judge.More("Leeks", 50m, 1m).OwnHours);
    }

    /// <summary>
    /// Last year the shop took 40 lb more leeks in that week, at 2: half as much again pays 80 - 25 in the 100 ft of beets' bed, for 80 -
    /// 50. With beets' -221 that is -191. Leeks that go too, or that the market has already, are no choice.
    /// </summary>
    [Fact]
    public void BestMix_IsOfWhatTheMarketTakesAtTodaysPrice()
    {
        FarmBuilder farm = ChangeFarm
            .Build()
            .Planting("L24", "Leeks", "Three", 100m, "2024-05-01", "2024-08-09")
            .Pick("2024-07-01", "L24", 120m)
            .Sell("2024-07-02", "Leeks", "shop", 120m, price: 2m);
        ChangeJudge judge = ChangeFarm.Judge(farm);
        Mix mix = judge.Judge(new Change(ChangeKind.Drop, "Beets")).BestMix!;
        Assert.Equal([("Leeks", 100m)], mix.Crops);
        Assert.Equal(-191m, mix.Change.Amount);
        SeasonReview season = farm.Season(2025);
        ChangeJudge again = new(SeasonCosts.Of(season));
        EnterpriseBudget beets = season.CropNamed("Beets");
        Assert.Equal(-191m, again.BestMix(beets, null, new HashSet<string>(), new Dictionary<string, decimal>())!.Change.Amount);
        Assert.Null(again.BestMix(beets, null, new HashSet<string> { "Leeks" }, new Dictionary<string, decimal>()));
        Assert.Null(again.BestMix(beets, null, new HashSet<string>(), new Dictionary<string, decimal> { ["Leeks"] = 50m }));
        Assert.Null(judge.Judge(new Change(ChangeKind.Shrink, "Beets", 50m)).BestMix);
    }

    /// <summary>What makes no sense is said with the change's title; what just does, all 100 ft of beets, is judged.</summary>
    [Theory]
    [InlineData(ChangeKind.Shrink, "Beets", 100.5, null, 2, "Shrink Beets by 100.5 bed-feet: Beets has only 100 bed-feet.")]
    [InlineData(ChangeKind.Shrink, "Beets", 0, null, 2, "Shrink Beets by 0 bed-feet: bed-feet must be above 0.")]
    [InlineData(ChangeKind.Grow, "Beets", -1, null, 2, "Grow Beets by -1 bed-feet: bed-feet must be above 0.")]
    [InlineData(ChangeKind.Swap, "Beets", 0, "beets", 2, "Swap Beets for Beets: a crop can't take its own place.")]
    [InlineData(ChangeKind.Drop, "Beets", 0, null, 0, "Drop Beets: an elasticity of 0 has no price at which more could be sold.")]
    [InlineData(ChangeKind.Swap, "Beets", 0, "Cress", 2, "Swap Beets for Cress: it has no bed space to go by.")]
    [InlineData(ChangeKind.Grow, "Cress", 10, null, 2, "Grow Cress by 10 bed-feet: it has no bed space to go by.")]
    [InlineData(ChangeKind.Drop, " Corn ", 0, null, 2, "Corn has no planting in 2025. Crops of that year: Beets, Kale, Leeks, Cress.")]
    [InlineData(ChangeKind.Swap, "Beets", 0, null, 2,
        "A crop without a name has no planting in 2025. Crops of that year: Beets, Kale, Leeks, Cress.")]
    public void Change_ThatMakesNoSense_SaysWhy(ChangeKind kind, string crop, double feet, string? replacement, int elasticity, string why)
    {
        ChangeJudge judge = ChangeFarm.Judge(WithCress());
        Change change = new(kind, crop, (decimal)feet, replacement, elasticity);
        string said = Assert.Throws<ArgumentException>(() => judge.Judge(change)).Message;
        Assert.Equal(why, said.Replace(" beets", " Beets", StringComparison.Ordinal));
        Assert.Throws<ArgumentException>(() => judge.More("Kale", 0m));
    }

    [Fact]
    public void Change_AtTheEdgeOfSense_IsJudged()
    {
        ChangeJudge judge = ChangeFarm.Judge(WithCress());
        Assert.Equal(0m, judge.Judge(new Change(ChangeKind.Drop, "Cress")).FeetGone);
        Assert.Equal(100m, judge.Judge(new Change(ChangeKind.Shrink, "Beets", 100m)).FeetGone);
        Assert.Equal(100m, judge.Judge(new Change(ChangeKind.Grow, "Beets", 100m, Elasticity: -1m)).FeetAdded);
        Assert.Equal(100m, judge.Judge(new Change(ChangeKind.Swap, "Beets", Replacement: "Kale")).FeetAdded);
    }

    /// <summary>Cress gives nothing but its tray's place: a row of no bed-feet.</summary>
    private static FarmBuilder WithCress() =>
        ChangeFarm.Build().Crop("Cress").Planting("C", "Cress", "Four", 0m, "2025-05-01", "2025-05-09");

    /// <summary>Full and avoidable cost disagree where one says yes and the other no, not where one says neither.</summary>
    [Theory]
    [InlineData(1, 1, false)]
    [InlineData(1, 0, false)]
    [InlineData(0, 1, false)]
    [InlineData(0, -1, false)]
    [InlineData(-1, 0, false)]
    [InlineData(-1, -1, false)]
    [InlineData(1, -1, true)]
    [InlineData(-1, 1, true)]
    public void Answers_DisagreeWhereTheyPointDifferentWays(int full, int avoidable, bool disagree)
    {
        ChangeAnswer answer = ChangeFarm.Judge(ChangeFarm.Build()).Judge(new Change(ChangeKind.Drop, "Beets"));
        answer = answer with
        {
            FullCostChange = new Money(full),
            Partial = new PartialBudget([new PartialBudgetLine("all", new Money(avoidable))], [], [], []),
        };
        Assert.Equal(disagree, answer.Disagree);
    }
}
