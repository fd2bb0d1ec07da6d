using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Reports.Decisions;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions;

/// <summary>What a grower reads of a change or a verdict says what the figures say.</summary>
public class AdviceWordsByHandTests
{
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m }).AsOf("2025-12-31")
        .Bed("One").Bed("Two", 200m).Channel("stall", ChannelKind.Market)
        .Worker("me", WorkerKind.Owner).Worker("Bo", WorkerKind.Hired, 20m);

    private static ChangeAnswer Judge(FarmBuilder farm, Change change) => new ChangeJudge(SeasonCosts.Of(farm.Season(2025))).Judge(change);

    private static string Rest(ChangeAnswer answer) => ChangeSentences.Rest(answer, Notation.Default);

    /// <summary>
    /// Members paid 500; three weeks' boxes held 50 of basil each, grown for 30 of seed and ten hours of 20. Without basil 150 is bought
    /// in: 80 better off. By full cost the 500 go along: 270 worse off. 350 apart, and no new bed is in it.
    /// </summary>
    [Fact]
    public void Drop_OfWhatMembersPaidMuchFor_SaysWhyTheTwoAnswersDisagree()
    {
        FarmBuilder farm = Farm().Channel("boxes", ChannelKind.Share).Income("2025-03-01", "boxes", 500m)
            .Crop("Basil", unit: "bunch", storageDays: 3m).Price("Basil", 2.5m)
            .Planting("B", "Basil", "One", 50m, "2025-06-01", "2025-09-01").Spend("2025-06-01", 30m, "seed", planting: "B")
            .Work("2025-07-01", "me", 10m, "grow", planting: "B");
        foreach (string day in new[] { "2025-07-04", "2025-07-18", "2025-08-01" })
        {
            farm.Pick(day, "B", 20m).Sell(day, "Basil", "boxes", 20m);
        }

        ChangeAnswer answer = Judge(farm, new Change(ChangeKind.Drop, "Basil"));
        Assert.Equal((80m, -270m), (answer.AvoidableChange.Amount, answer.FullCostChange.Amount));
        Assert.Contains("by full cost what members paid for it goes along, $350 more", Rest(answer), StringComparison.Ordinal);
        Assert.DoesNotContain("new beds", Rest(answer), StringComparison.Ordinal);
        Assert.Contains(
            "None of what more is picked finds a buyer.",
            Rest(Judge(farm, new Change(ChangeKind.Grow, "Basil", 10m))),
            StringComparison.Ordinal);
    }

    /// <summary>
    /// 100 lb of beets at 4 for 60 or 300 of seed. Half as much again brings 400 x (1.5^0.5 - 1) = 89.90: more than 30 of seed, less than
    /// 150. What doesn't pay can't stop paying.
    /// </summary>
    [Theory]
    [InlineData(60, "It stops paying at an elasticity of 1.")]
    [InlineData(300, "It would pay from an elasticity of ")]
    public void Grow_SaysFromWhichElasticityItPays(int seed, string told)
    {
        FarmBuilder farm = Farm().Crop("Beets").Price("Beets", 4m, "stall")
            .Planting("B", "Beets", "One", 50m, "2025-06-01", "2025-09-01").Pick("2025-08-01", "B", 100m)
            .Sell("2025-08-01", "Beets", "stall", 100m, price: 4m).Spend("2025-06-01", seed, "seed", planting: "B")
            .Work("2025-06-01", "Bo", 0.1m, "grow", planting: "B");
        ChangeAnswer answer = Judge(farm, new Change(ChangeKind.Grow, "Beets", 25m));
        Assert.Equal(seed < 100, answer.AvoidableChange.Amount > 0m);
        Assert.Contains(told, Rest(answer), StringComparison.Ordinal);
    }

    /// <summary>
    /// Twelve hired hours paid all the same, and nobody else worked: 60 of sales less 20 of seed go, 240 of wages aren't saved.
    /// </summary>
    [Fact]
    public void WagesPaidAllTheSame_AreNotToldAsEarned()
    {
        FarmBuilder farm = Farm().With(settings => settings with { HiredHoursCanBeCut = false }).Crop("Celery", unit: "each")
            .Planting("C", "Celery", "One", 50m, "2025-06-01", "2025-09-01").Pick("2025-08-01", "C", 30m)
            .Sell("2025-08-01", "Celery", "stall", 30m, price: 2m).Spend("2025-06-01", 20m, "seed", planting: "C")
            .Work("2025-06-01", "Bo", 12m, "grow", planting: "C");
        ChangeAnswer answer = Judge(farm, new Change(ChangeKind.Drop, "Celery"));
        Assert.Equal((-40m, 240m), (answer.Means.Cash.Amount, answer.Means.PaidAnyway.Amount));
        Assert.EndsWith(
            "That counts $240 of wages that are paid all the same: gained only if those hours do other work.",
            ChangeSentences.First(answer, Notation.Default)[1],
            StringComparison.Ordinal);
    }

    /// <summary>
    /// 68 each of two seasons, 100 lb a hundred feet less 30 of seed and 2 of work, and 400 of rent: below full cost. The stall took 200 lb
    /// at list once, so 20 feet more bring 20 for 6.40. To grow it is the advice, and what it fell short is told, not that nothing would
    /// change it.
    /// </summary>
    [Fact]
    public void GrowBelowFullCost_SaysWhatItFellShort()
    {
        FarmReview review = Chard(rent: 400m);
        Verdict chard = Only(review);
        Assert.Equal((Direction.Grow, -332m), (chard.Direction, chard.Budget.NetReturn.Amount));
        string words = DecisionSentences.Of(chard, review.Records.Settings);
        Assert.Contains("It still fell $332 short of its full cost.", words, StringComparison.Ordinal);
        Assert.DoesNotContain("alone would change this", words, StringComparison.Ordinal);
    }

    /// <summary>
    /// The same chard with rent of 60 left over: at the price or yield told next it would be at 0, and to grow it pays all the same, since
    /// rent is paid either way. So that is not what would change the advice.
    /// </summary>
    [Fact]
    public void Grow_IsNotSaidToTurnWhereFullCostDoes()
    {
        Verdict chard = Only(Chard(rent: 60m));
        Assert.Equal((Direction.Grow, 8m), (chard.Direction, chard.Budget.NetReturn.Amount));
        Assert.Equal(
            "At $0.08 less a lb, or 8% less yield, it would no longer earn its full cost.",
            DecisionSentences.Needs(chard, Notation.Default));
    }

    /// <summary>The chard of two seasons that the two examples above go by, with a rent.</summary>
    private static FarmReview Chard(decimal rent)
    {
        FarmBuilder farm = Farm().Crop("Chard").Price("Chard", 1m, "stall").Spend("2025-03-01", rent, "rent");
        foreach ((int year, decimal feet) in new[] { (2024, 200m), (2025, 100m) })
        {
            farm.Planting($"C{year}", "Chard", "Two", feet, $"{year}-06-01", $"{year}-09-01").Pick($"{year}-08-01", $"C{year}", feet)
                .Sell($"{year}-08-01", "Chard", "stall", feet, price: 1m).Spend($"{year}-06-01", 0.3m * feet, "seed", planting: $"C{year}")
                .Work($"{year}-06-01", "Bo", 0.001m * feet, "grow", planting: $"C{year}");
        }

        return farm.Review();
    }

    private static Verdict Only(FarmReview review) => Verdicts.Of(review, SeasonCosts.Of(review.Season(2025))).Crops.Single();

    /// <summary>
    /// 100 lb of chard at 1 for 100 of seed, within the noise of 0: 8 more or less leaves it there, so no price would "change this".
    /// </summary>
    [Fact]
    public void TooClose_SaysWhatThePriceTurns()
    {
        FarmBuilder farm = Farm().Crop("Chard").Price("Chard", 1m, "stall")
            .Planting("C", "Chard", "Two", 200m, "2025-06-01", "2025-09-01").Pick("2025-08-01", "C", 100m)
            .Sell("2025-08-01", "Chard", "stall", 100m, price: 1m).Spend("2025-06-01", 12m, "seed", planting: "C")
            .Spend("2025-06-01", 80m, "wages").Work("2025-06-01", "Bo", 4m, "grow");
        FarmReview review = farm.Review();
        Verdict chard = Only(review);
        Assert.Equal((Direction.TooClose, 8m, 16m), (chard.Direction, chard.Mean.Amount, chard.Noise.Amount));
        Assert.Equal(
            "At $0.08 less a lb, or 8% less yield, it would bring no more than the costs that go with it.",
            DecisionSentences.Needs(chard, Notation.Default));
    }

    /// <summary>
    /// Beets lose 50. Spinach sold all it grew at list: twice of it brings nothing more at today's price, and 720 x (2^0.5 - 1) = 298.23 at
    /// a lower one, for 100 of seed. The table of what fits says so, and the sentence doesn't say that nothing does. At 400 of seed nothing
    /// does.
    /// </summary>
    [Theory]
    [InlineData(100, "At today's price nothing that fits its beds and dates under the same cover adds to the farm. "
        + "Sold below it, 100 bed-feet of Spinach would: the farm would be $248 better off than now.")]
    [InlineData(400, "Nothing that fits its beds and dates under the same cover adds to the farm.")]
    public void Drop_SaysWhatFitsAtALowerPrice(int seed, string told)
    {
        FarmBuilder farm = Farm().Crop("Beets").Crop("Spinach").Price("Spinach", 8m, "stall")
            .Planting("B", "Beets", "One", 100m, "2025-05-01", "2025-09-01").Pick("2025-08-01", "B", 10m)
            .Sell("2025-08-01", "Beets", "stall", 10m, price: 1m).Spend("2025-05-01", 60m, "seed", planting: "B")
            .Planting("S", "Spinach", "Two", 100m, "2025-05-05", "2025-06-05").Pick("2025-06-01", "S", 90m)
            .Sell("2025-06-01", "Spinach", "stall", 90m, price: 8m).Spend("2025-05-01", seed, "seed", planting: "S")
            .Work("2025-06-01", "Bo", 0.1m, "office");
        ChangeAnswer answer = Judge(farm, new Change(ChangeKind.Drop, "Beets"));
        Assert.Equal((50m, seed < 300), (answer.AvoidableChange.Amount, answer.Fits.Single().Swap.NetChange.Amount > 50m));
        Assert.EndsWith(told, Rest(answer), StringComparison.Ordinal);
    }

    /// <summary>A price is told "more each", not "more a each".</summary>
    [Fact]
    public void Needs_OfWhatIsSoldByThePiece_ReadAsPeopleSpeak()
    {
        FarmBuilder farm = Farm().Crop("Melons", unit: "each").Planting("M", "Melons", "One", 50m, "2025-06-01", "2025-09-01")
            .Pick("2025-08-01", "M", 30m).Sell("2025-08-01", "Melons", "stall", 30m, price: 2m)
            .Spend("2025-06-01", 75m, "seed", planting: "M").Work("2025-06-01", "Bo", 0.75m, "grow", planting: "M");
        FarmReview review = farm.Review();
        Verdict melons = Only(review);
        Assert.Contains("$1.00 more each", DecisionSentences.Of(melons, review.Records.Settings), StringComparison.Ordinal);
    }

    /// <summary>
    /// Two hired hours at 20 of the same week can be cut for the two own ones at 25 that beets took: own hours stay, and the 10 between
    /// what they cost aren't told as theirs.
    /// </summary>
    [Fact]
    public void HoursThatChangeHands_AreToldAtTheCostOfWhoWorkedThem()
    {
        FarmBuilder farm = Farm().With(settings => settings with { OwnerWage = 25m }).Crop("Beets")
            .Planting("B", "Beets", "One", 50m, "2025-06-01", "2025-09-01").Pick("2025-08-01", "B", 100m)
            .Sell("2025-08-01", "Beets", "stall", 100m, price: 1m).Work("2025-06-02", "me", 2m, "grow", planting: "B")
            .Work("2025-06-03", "Bo", 2m, "office").Spend("2025-06-01", 10m, "seed", planting: "B");
        ChangeAnswer answer = Judge(farm, new Change(ChangeKind.Drop, "Beets"));
        Assert.Equal((-50m, 0m, 10m), (answer.Means.Cash.Amount, answer.Means.OwnHours, answer.Means.OwnHoursValue.Amount));
        Assert.StartsWith(
            "With all hours at the cost of who worked them the farm would be $40 worse off.",
            Rest(answer),
            StringComparison.Ordinal);
    }

    /// <summary>What went into boxes alone has no market that could be full.</summary>
    [Fact]
    public void KeepOfACropOfTheBoxes_SaysThatTheyTakeNoMore()
    {
        FarmBuilder farm = Farm().Channel("boxes", ChannelKind.Share).Income("2025-03-01", "boxes", 100m).Crop("Basil").Price("Basil", 2m)
            .Planting("B", "Basil", "One", 50m, "2025-06-01", "2025-09-01").Pick("2025-07-04", "B", 50m)
            .Sell("2025-07-04", "Basil", "boxes", 50m).Work("2025-06-03", "Bo", 1m, "grow", planting: "B")
            .Spend("2025-06-01", 5m, "seed", planting: "B");
        FarmReview review = farm.Review();
        Verdict basil = Only(review);
        Assert.Equal(Direction.Keep, basil.Direction);
        string words = DecisionSentences.Of(basil, review.Records.Settings);
        Assert.Contains("Boxes and your household take no more of it, and nobody else bought any.", words, StringComparison.Ordinal);
    }
}
