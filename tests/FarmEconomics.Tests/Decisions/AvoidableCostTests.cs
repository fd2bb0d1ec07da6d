using CsCheck;
using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Avoidable;
using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Files;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.Generators;
using FarmEconomics.Tests.House;
using FarmEconomics.Tracing;
using Xunit;

namespace FarmEconomics.Tests.Decisions;

/// <summary>What goes with a crop is what the engine says when it runs again without it (docs/methods.md, section 16). FARMECONOMICS_FARMS sets how many random farms are tried.</summary>
public class AvoidableCostTests
{
    private static readonly long Farms = long.TryParse(Environment.GetEnvironmentVariable("FARMECONOMICS_FARMS"), out long farms) ? farms : 300;

    [Fact]
    public void Change_EachCropOfARandomFarm_IsThatOfTheEngineRunAgainWithoutIt() => RandomFarm.Gen.Sample(
        farm =>
        {
            FarmReview review = farm.Farm.Review();
            foreach (string crop in review.Records.Crops.Select(crop => crop.Name))
            {
                AssertSame(review, [crop]);
            }
        },
        iter: Farms, threads: 2, print: farm => farm.ToString());

    /// <summary>All crops that leave through the stall go together, and its trips with them.</summary>
    [Fact]
    public void Change_AllCropsOfAChannelOfARandomFarm_FreesItsTripsAsTheEngineDoes() => RandomFarm.Gen.Sample(
        farm =>
        {
            FarmReview review = farm.Farm.Review();
            foreach (IGrouping<Channel, Disposition> channel in review.Trace.Dispositions.Where(leaving => leaving.Channel.IsPriced && leaving.Quantity > 0m).GroupBy(leaving => leaving.Channel))
            {
                AssertSame(review, [.. channel.Select(leaving => leaving.Crop.Name).Distinct()]);
            }
        },
        iter: Farms, threads: 2, print: farm => farm.ToString());

    [Fact]
    public void Change_EachCropOfTheDemoFarm_IsThatOfTheEngineRunAgainWithoutIt()
    {
        FarmReview demo = FarmFolder.Open(Path.Combine(Repository.Root, "demo-data")).Review!;
        foreach (string crop in (string[])["Micro mix", "Beets", "Salad mix", "Garlic", "Carrots", "Asparagus", "Tomatoes"])
        {
            AssertSame(demo, [crop]);
        }

        AssertSame(demo, [.. demo.Records.Crops.Select(crop => crop.Name)]);
    }

    /// <summary>A market where two crops are sold: each alone frees nothing of the stall, both together free its rent and its hours; a truck for all channels goes by dates.</summary>
    [Fact]
    public void Trips_GoWithTheLastCropOfAChannel()
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m }).AsOf("2025-12-31").Bed("One").Bed("Two").Bed("Three")
            .Channel("stall", ChannelKind.Market).Channel("shop", ChannelKind.Wholesale).Worker("me", WorkerKind.Owner).Pool("truck", "sales-value", StatementLine.Selling, varies: CostDriver.Trips);
        foreach ((string crop, string bed, string channel, string day) in (ReadOnlySpan<(string, string, string, string)>)[("Beets", "One", "stall", "2025-07-05"), ("Kale", "Two", "stall", "2025-07-05"), ("Leeks", "Three", "shop", "2025-07-06")])
        {
            farm.Crop(crop).Planting(crop + "1", crop, bed, 100m, "2025-05-01", "2025-08-01").Pick("2025-07-01", crop + "1", 100m).Sell(day, crop, channel, 50m, price: 2m);
        }

        farm.Sell("2025-07-12", "Leeks", "shop", 50m, price: 2m).Spend("2025-07-05", 60m, "market fees", channel: "stall").Work("2025-07-05", "me", 5m, "market", channel: "stall").Spend("2025-06-01", 90m, "fuel", pool: "truck");
        SeasonReview season = farm.Season(2025);
        AvoidableCost avoidable = SeasonCosts.Of(season).Avoidable;

        Assert.All(new[] { "Beets", "Kale" }, crop => Assert.Empty(avoidable.Without(season.CropNamed(crop)).Trips));
        Departure both = avoidable.Without([season.CropNamed("Beets"), season.CropNamed("Kale")]);

        // 60 of rent and 5 h of the stall; of the truck's 90 one trip of three.
        Assert.Equal([("stall (channel)", 60m), ("stall (channel)", 100m), ("truck", 30m)], both.Trips.Select(trip => (trip.Pool.Name, trip.Amount.Amount)).OrderBy(trip => trip.Name).ThenBy(trip => trip.Amount));
        Assert.Equal(-200m + 190m, both.Change.Amount);
        AssertSame(farm.Review(), ["Beets", "Kale"]);
    }

    /// <summary>Members paid 100 a week for boxes of 120: beets out leave 90, so 10 are filled, from what is thrown out first, then from what sells elsewhere.</summary>
    [Fact]
    public void Refill_UpToWhatMembersPaid_CheapestFirst()
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m }).AsOf("2025-12-31").Bed("One").Bed("Two")
            .Channel("stall", ChannelKind.Market).Channel("boxes", ChannelKind.Share, valuesFrom: "stall").Channel("heap", ChannelKind.Waste).Income("2025-03-01", "boxes", 200m)
            .Crop("Beets").Planting("B", "Beets", "One", 100m, "2025-05-01", "2025-09-01").Pick("2025-07-01", "B", 100m).Price("Beets", 3m)
            .Crop("Kale").Planting("K", "Kale", "Two", 100m, "2025-05-01", "2025-09-01").Pick("2025-07-01", "K", 200m).Price("Kale", 2m)
            .Sell("2025-07-02", "Beets", "boxes", 10m).Sell("2025-07-02", "Kale", "boxes", 45m).Sell("2025-07-09", "Beets", "boxes", 10m).Sell("2025-07-09", "Kale", "boxes", 50m)
            .Sell("2025-07-20", "Kale", "heap", 2m).Sell("2025-07-20", "Kale", "stall", 60m, price: 2m).Sell("2025-07-20", "Beets", "stall", 80m, price: 3m);
        SeasonReview season = farm.Season(2025);

        Departure gone = SeasonCosts.Of(season).Avoidable.Without(season.CropNamed("Beets"));

        // First week: 120 - 30 = 90 of 100; 5 lb of kale would do, the most a week's boxes ever held is 50. Second week: 130 - 30 = 100, nothing to fill.
        Assert.Equal([(RefillSource.NotSold, 2m, 4m, 0m), (RefillSource.Sold, 3m, 6m, 6m)], gone.Refill.Items.Select(item => (item.Source, item.Quantity, item.ListValue.Amount, item.Lost.Amount)));
        Assert.Equal((1.25m, 1m), (gone.Refill.Before.Value, gone.Refill.After.Value));
        Assert.Equal(-240m - 6m, gone.Change.Amount); // sales at the stall, and the kale that no longer sells there; payments stay
        AssertSame(farm.Review(), ["Beets"]);
    }

    /// <summary>
    /// All years together, with what the household carries of shared cost, which moves when a crop goes and is not made or lost. Stock on hand of other crops keeps its value, and so do channels' fees on shares.
    /// </summary>
    internal static void AssertSame(FarmReview review, IReadOnlyList<string> crops)
    {
        FarmScenario scenario = new("without", [.. crops.Select(crop => new ScenarioChange(ScenarioSubject.Without, ScenarioScope.Crop, crop, null, new ScenarioStep(-100m, IsPercent: true), ""))]);
        FarmReview without = ScenarioComparison.Of(review, review.Charges.Years.Count > 0 ? review.Charges.Years[^1] : review.LatestCropYear, [scenario]).Outcomes[0].Review;
        decimal expected = 0m;
        HashSet<Crop> all = [.. crops.Select(review.Records.Crop)];
        foreach (int year in review.Charges.Years)
        {
            SeasonCosts costs = SeasonCosts.Of(review.Season(year));
            List<EnterpriseBudget> gone = [.. costs.Season.Crops.Where(crop => crops.Contains(crop.Name))];
            expected += gone.Count == 0 ? 0m : costs.Avoidable.Without(gone, 1m, all).Change.Amount + gone.Sum(crop => crop.Sums.ClosingStock.Amount);
        }

        // Payments for boxes may count in a year that has nothing else, once nothing goes into them.
        List<int> years = [.. review.Charges.Years.Union(review.Trace.Dispositions.Select(leaving => leaving.Window))
            .Union(review.Records.Income.Select(row => row.CropYear ?? review.Records.Settings.WindowOf(row.Date)))];
        Assert.Equal(expected, Net(without, years) - Net(review, years) + OwningOfYearsOpened(review, without));
    }

    /// <summary>Boxes filled with bought-in goods may bring a year into the books that held nothing but sales; its cost of owning is there with or without the crop.</summary>
    private static decimal OwningOfYearsOpened(FarmReview review, FarmReview without)
    {
        HashSet<int> opened = [.. without.Charges.Years.Except(review.Charges.Years)];
        return without.Charges.Charges.Where(charge => charge.Stream == CostStream.Ownership && opened.Contains(charge.HomeYear)).Sum(charge => charge.Amount.Amount);
    }

    private static decimal Net(FarmReview review, List<int> years) => years.Select(year => review.Season(year))
        .Sum(season => season.FarmNet - season.UnallocatedTotal(Unallocated.Household) - season.Farm.Sums.ClosingStock.Amount)
        + review.Trace.Dispositions.Where(leaving => leaving.Channel.Kind == ChannelKind.Share).Sum(leaving => leaving.Fee.Amount);
}
