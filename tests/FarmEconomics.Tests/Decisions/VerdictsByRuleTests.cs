using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions;

/// <summary>
/// What verdicts say where hours and harvests were divided by rule, where figures aren't known, and what would change them
/// (docs/methods.md, section 17), on paper.
/// </summary>
public class VerdictsByRuleTests
{
    private static FarmBuilder Farm(decimal? wage = 20m) =>
        new FarmBuilder(new FarmSettings { OwnerWage = wage, InterestPercent = 5m })
            .AsOf("2025-12-31")
            .Bed("One")
            .Channel("stall", ChannelKind.Market)
            .Worker("me", WorkerKind.Owner)
            .Task("office", Stage.Overhead)
            .Crop("Kale")
            .Planting("K1", "Kale", "One", 100m, "2025-05-01", "2025-08-01")
            .Spend("2025-05-01", 30m, "seed", crop: "Kale");

    private static FarmBuilder Sold(decimal? wage = 20m) =>
        Farm(wage).Pick("2025-07-01", "K1", 200m).Sell("2025-07-03", "Kale", "stall", 200m, price: 4m);

    private static Verdicts Of(FarmBuilder farm, VerdictSettings? settings = null)
    {
        FarmReview review = farm.Review();
        return Verdicts.Of(review, SeasonCosts.Of(review.Season(2025)), settings);
    }

    private static Verdict Kale(FarmBuilder farm) => Of(farm).Crops.Single(verdict => verdict.Budget.Name == "Kale");

    /// <summary>
    /// Sales 800, seed 30, 5 own hours at 20 of picking, 9 in the office (180) and 550 of rent: 60 short. An hour of the crop's own costs
    /// 20, so 3 of its 5 would have to go; those of the office aren't among them.
    /// </summary>
    [Fact]
    public void Needs_Hours_AreThoseOfTheCropNotOfTheOffice()
    {
        FarmBuilder farm = Sold().Work("2025-07-01", "me", 5m, "harvest", crop: "Kale").Work("2025-07-20", "me", 9m, "office");
        Verdict kale = Kale(farm.Spend("2025-03-01", 550m, "rent"));
        Assert.Equal((Direction.Fix, -60m, 5m), (kale.Direction, kale.Budget.NetReturn.Amount, kale.Budget.LaborHours.Value));
        Close.To(3m, kale.Needs.Hours.Value!.Value, 1e-9m);

        // 100 short is all that its own hours cost.
        Assert.Equal("hours alone don't change it", Kale(farm.Spend("2025-03-01", 40m, "rent")).Needs.Hours.Reason);
    }

    /// <summary>800 of wages that name kale, and no hours: 30 short, and no hour to save it by.</summary>
    [Fact]
    public void Needs_Hours_OfWagesWithoutHours_AreNone()
    {
        Verdict kale = Kale(Sold().Spend("2025-07-31", 800m, "wages", crop: "Kale")
            .With(settings => settings with { UnpaidHours = UnpaidHours.None }));
        Assert.Equal((Direction.Fix, -30m, 0m), (kale.Direction, kale.Budget.NetReturn.Amount, kale.Budget.LaborHours.Value));
        Assert.Equal("hours alone don't change it", kale.Needs.Hours.Reason);
    }

    private static FarmBuilder Near(decimal before = 150m) => Farm().Pick("2025-07-01", "K1", 120m)
        .Sell("2025-07-03", "Kale", "stall", 120m, price: 1m)
        .Work("2025-07-01", "me", 5m, "harvest", crop: "Kale").Work("2025-07-20", "me", 9m, "office").Spend("2025-03-01", 70m, "rent")
        .Planting("K24", "Kale", "One", 100m, "2024-05-01", "2024-08-01").Pick("2024-07-01", "K24", before)
        .Sell("2024-07-03", "Kale", "stall", before, price: 1m).Work("2024-07-01", "me", 5m, "harvest", crop: "Kale")
        .Spend("2024-05-01", 30m, "seed", crop: "Kale");

    /// <summary>
    /// 150 and 120 of sales less 30 and 5 hours: 20 and -10, mean 5, noise 135 x the root of (2 x 15^2 / 135^2) / 2, which is 15. To the
    /// farm, without rent and office, and on the mean: 5 less on 120 lb turn it, 1/24 a pound; at a yield y, 120 y - 100 y (picking) = 15.
    /// </summary>
    [Fact]
    public void Needs_OfACropTooCloseToCall_AreToTheFarmOnTheMean()
    {
        Verdict kale = Kale(Near());
        Assert.Equal((Direction.TooClose, 5m, 15m), (kale.Direction, kale.Mean.Amount, kale.Noise.Amount));
        Close.To(-5m / 120m, kale.Needs.Price.Value!.Value, 1e-9m);
        Assert.Equal("hours alone don't change it", kale.Needs.Hours.Reason);
        Close.To(-0.25m, kale.Needs.Yield.Value!.Value, 1e-9m);
    }

    /// <summary>
    /// Hours at the stall, where beets are sold as well, stay when kale goes: they are among its hours, but 2.50 short on the mean of 5 and
    /// -10 are an eighth of an hour of 20 still. Beets bring 40 every season, so the noise is the root of (2 x 7.50^2) / 2 / 2.
    /// </summary>
    [Fact]
    public void Needs_Hours_OfWhatGoesWithTheCrop_CostWhatAnHourCosts()
    {
        FarmBuilder farm = Near(135m).Bed("Two").Crop("Beets");
        foreach (int year in new[] { 2024, 2025 })
        {
            farm.Planting($"B{year}", "Beets", "Two", 100m, $"{year}-05-01", $"{year}-08-01").Pick($"{year}-07-01", $"B{year}", 40m)
                .Sell($"{year}-07-03", "Beets", "stall", 40m, price: 1m);
        }

        Verdict kale = Kale(farm.Work("2025-07-03", "me", 4m, "market", channel: "stall"));
        Assert.Equal((Direction.TooClose, 8m), (kale.Direction, kale.Budget.LaborHours.Value));
        Close.To(7.5m * 0.7071068m, kale.Noise.Amount, 0.006m);
        Close.To(0.125m, kale.Needs.Hours.Value!.Value, 1e-9m);
    }

    /// <summary>
    /// 10 hours of growing filled in from 6 minutes a foot and 4 of picking that name no crop, 14 of 20 hours and 280 of 400: the noise is
    /// a fifth of 280. Office hours, which stay, and compost, which is no labor, are none of it.
    /// </summary>
    [Fact]
    public void Noise_CountsHoursFromStandardsAndByRule_AndNoOthers()
    {
        FarmBuilder farm = Sold().Standard("Kale", Stage.Grow, 6m, RatePer.BedFoot).Work("2025-07-01", "me", 4m, "harvest")
            .Work("2025-07-01", "me", 6m, "harvest", crop: "Kale").Work("2025-07-20", "me", 9m, "office")
            .Spend("2025-04-04", 50m, "compost").Spend("2025-03-01", 40m, "rent");
        Verdict kale = Kale(farm);
        Assert.Equal((56m, 0.7m), (kale.Noise.Amount, kale.HoursByRule.Value));
        Assert.Equal(20m, kale.Budget.LaborHours.Value);
    }

    /// <summary>One planting has all that was picked, whether the row names it or the crop: nothing is divided.</summary>
    [Fact]
    public void Noise_OfOnePlanting_HasNoPartOfHarvests()
    {
        FarmBuilder farm = Farm().PickCrop("2025-07-01", "Kale", 200m).Sell("2025-07-03", "Kale", "stall", 200m, price: 4m)
            .Work("2025-07-01", "me", 5m, "harvest", crop: "Kale");
        Assert.Equal(0m, Kale(farm).Noise.Amount);
    }

    /// <summary>
    /// Two plantings that failed: -30 - 100 now, 370 the year before; the noise is the spread of both, as if it had brought something now.
    /// </summary>
    [Fact]
    public void CropThatFailed_HasTheNoiseOfItsSeasons()
    {
        FarmBuilder farm = Farm().Bed("Two").Planting("K2", "Kale", "Two", 100m, "2025-05-01", "2025-08-01")
            .Work("2025-07-01", "me", 5m, "grow", crop: "Kale").Price("Kale", 4m, "stall")
            .Planting("K24", "Kale", "One", 100m, "2024-05-01", "2024-08-01").Pick("2024-07-01", "K24", 125m)
            .Sell("2024-07-03", "Kale", "stall", 125m, price: 4m).Work("2024-07-01", "me", 5m, "grow", crop: "Kale")
            .Spend("2024-05-01", 30m, "seed", crop: "Kale");
        Verdict kale = Kale(farm);

        // 370 of 100 feet are 740 of the 200 there are now; 435 above the mean and below: 2 x 435^2, half of it.
        Assert.Equal([740m, -130m], kale.Seasons.Select(season => season.Contribution.Amount));
        Assert.Equal((305m, 435m), (kale.Mean.Amount, kale.Noise.Amount));
        Assert.Equal((Direction.TooClose, "nothing sold"), (kale.Direction, kale.Needs.Price.Reason));
    }

    /// <summary>Own hours without a wage, or no bills at all: nothing is told of the crop but why, bills before hours.</summary>
    [Fact]
    public void CropOfUnknownFigures_SaysWhy()
    {
        FarmBuilder unpaid = Sold(wage: null).Work("2025-07-01", "me", 5m, "harvest", crop: "Kale");
        string hours = unpaid.Season(2025).CropNamed("Kale").Known.OwnerLabor!;
        AssertUnknown(hours, Kale(unpaid));

        FarmBuilder bare = unpaid.Without<ExpenseRow>(_ => true);
        Assert.NotNull(bare.Season(2025).CropNamed("Kale").Known.OwnerLabor);
        string bills = bare.Season(2025).CropNamed("Kale").Known.NoNetReturn!;
        Assert.NotEqual(hours, bills);
        AssertUnknown(bills, Kale(bare));
    }

    /// <summary>Own hours without a wage are told before that no row tells what became of what was picked.</summary>
    [Fact]
    public void CropOfUnknownHours_ThatNobodyTook_SaysWhyOfTheHours()
    {
        FarmBuilder farm = Farm(wage: null).Price("Kale", 4m).Pick("2025-07-01", "K1", 200m)
            .Work("2025-07-01", "me", 5m, "harvest", crop: "Kale");
        farm.Set(farm.Tables.Crops[0], CropRow.StorageDaysColumn, 7m);
        EnterpriseBudget kale = farm.Season(2025).CropNamed("Kale");
        Assert.Equal((200m, 0m, 0m), (kale.Sums.Harvested, kale.Sums.Sold, kale.Sums.OnHand));
        AssertUnknown(kale.Known.OwnerLabor!, Kale(farm));
    }

    private static void AssertUnknown(string why, Verdict kale)
    {
        Assert.Equal((Direction.Unknown, why), (kale.Direction, kale.WhyUnknown));
        Assert.All(
            new[] { kale.Needs.Price, kale.Needs.Yield, kale.Needs.Hours, kale.NetPerBedFootWeek },
            told => Assert.Equal(why, told.Reason));
        Assert.Null(kale.More);
        Assert.Equal("no value of an own hour turns it", kale.TurnsAtWage.Reason);
    }
}
