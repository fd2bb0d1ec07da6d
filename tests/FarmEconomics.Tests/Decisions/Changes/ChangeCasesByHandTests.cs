using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Changes;

/// <summary>What <see cref="ChangeFarm"/> doesn't have of itself: deliveries, card fees, hired hands, other boxes; each on paper.</summary>
public class ChangeCasesByHandTests
{
    private static readonly Dictionary<string, decimal> None = [];

    /// <summary>
    /// 3 hours of delivery to the shop go with leeks, which are all it sells, beside their 2 of picking; not with half of them, and more
    /// leeks don't take any.
    /// </summary>
    [Fact]
    public void Deliveries_GoWithTheLastOfAChannel_AndComeWithNone()
    {
        FarmBuilder farm = ChangeFarm.Build().Work("2025-07-02", "me", 3m, "delivery", channel: "shop").Limit("labor", 17m, "hours a week");
        ChangeJudge judge = ChangeFarm.Judge(farm);
        Mix kale = new([("Kale", 100m)], Money.Zero);
        Mix leeks = new([("Leeks", 100m)], Money.Zero);
        Assert.Equal(5m, judge.Judge(new Change(ChangeKind.Drop, "Leeks")).Means.OwnHours);
        Assert.Equal(5m, judge.WithoutCrop("Leeks").OwnHours);
        Assert.Equal(1m, judge.Judge(new Change(ChangeKind.Shrink, "Leeks", 50m)).Means.OwnHours);
        Assert.Equal(-1m, judge.Judge(new Change(ChangeKind.Grow, "Leeks", 50m)).Means.OwnHours);
        Assert.Equal(-1m, judge.More("Leeks", 50m).OwnHours);
        Assert.Equal(5m - 6m, judge.WithMix("Leeks", kale, 1m, None).OwnHours);
        Assert.Equal(5m - 2m, judge.WithMix("Beets", leeks, 1m, None).OwnHours);

        // 16 hours were worked in the week, 17 is the limit: kale for leeks is 16 - 5 + 6.
        Assert.All(judge.Judge(new Change(ChangeKind.Drop, "Leeks")).Fits, fit => Assert.Empty(fit.BeyondLimit));

        // Leeks for beets are 2 hours for 5, whatever the shop's deliveries take: 10 more here.
        farm.Work("2025-07-03", "me", 10m, "delivery", channel: "shop");
        ChangeAnswer beets = ChangeFarm.Judge(farm).Judge(new Change(ChangeKind.Drop, "Beets"));
        Assert.Empty(beets.Fits.Single(fit => fit.Crop == "Leeks").BeyondLimit);
    }

    /// <summary>
    /// Card fees of 31 on 155 lb of kale are 0.20 a pound: on 17.5 lb more 3.50. Leeks, at an elasticity of 1, sell none and pay no fees.
    /// </summary>
    [Fact]
    public void Grow_CostsByTheUnitComeWithWhatIsSold()
    {
        ChangeJudge judge = ChangeFarm.Judge(ChangeFarm.Build().Spend("2025-07-31", 31m, "card fees", crop: "Kale"));
        Assert.Equal(
            [("Kale: picking, owner labor", 60m), ("Kale: seed", 20m), ("Kale: card fees", 3.50m), ("Kale: channel fees", 3.50m)],
            judge.Judge(new Change(ChangeKind.Grow, "Kale", 50m, Elasticity: 1m)).Partial.AddedCosts.Lines()
        );
        ChangeAnswer leeks = judge.Judge(new Change(ChangeKind.Grow, "Leeks", 50m, Elasticity: 1m));
        Assert.Empty(leeks.Partial.AddedReturns);
        Assert.Equal([("Leeks: picking, owner labor", 20m), ("Leeks: seed", 5m)], leeks.Partial.AddedCosts.Lines());
    }

    /// <summary>
    /// Card fees of 8 on 80 lb of leeks are 0.10: the 40 lb more that the shop took last year bring 80 - 50 - 4, beside the -221
    /// without beets.
    /// </summary>
    [Fact]
    public void BestMix_PaysCostsByTheUnit()
    {
        FarmBuilder farm = ChangeFarm
            .Build()
            .Planting("L24", "Leeks", "Three", 100m, "2024-05-01", "2024-08-09")
            .Pick("2024-07-01", "L24", 120m)
            .Sell("2024-07-02", "Leeks", "shop", 120m, price: 2m)
            .Spend("2025-07-31", 8m, "card fees", crop: "Leeks");
        Assert.Equal(-221m + 26m, ChangeFarm.Judge(farm).Judge(new Change(ChangeKind.Drop, "Beets")).BestMix!.Change.Amount);
    }

    /// <summary>Herbs that only the household eats sell nothing, more or less: half as much again costs 5 of seed.</summary>
    [Fact]
    public void Grow_OfWhatIsOnlyEatenAtHome_Costs()
    {
        FarmBuilder farm = ChangeFarm
            .Build()
            .Crop("Parsley")
            .Price("Parsley", 2m)
            .Planting("P", "Parsley", "Four", 20m, "2025-05-01", "2025-08-09")
            .Pick("2025-07-01", "P", 10m)
            .Sell("2025-07-01", "Parsley", "table", 10m)
            .Spend("2025-04-01", 10m, "seed", crop: "Parsley");
        ChangeAnswer answer = ChangeFarm.Judge(farm).Judge(new Change(ChangeKind.Grow, "Parsley", 10m));
        Assert.Equal((-5m, 1m), (answer.AvoidableChange.Amount, answer.NotTaken));
    }

    /// <summary>
    /// Books with wages: standards add 2 hired hours of packing beets and 1 of packing leeks, which have no day. Bo's 2 hours of picking
    /// leeks stand in their week.
    /// </summary>
    [Fact]
    public void HiredHours_WithoutADay_StayHired()
    {
        FarmBuilder farm = ChangeFarm
            .Build()
            .Worker("Bo", WorkerKind.Hired)
            .Work("2025-07-14", "Bo", 2m, "harvest", crop: "Leeks")
            .Spend("2025-07-31", 100m, "wages")
            .Standard("Beets", Stage.Pack, 1.2m, RatePer.BedFoot)
            .Standard("Leeks", Stage.Pack, 0.6m, RatePer.BedFoot);
        ChangeJudge judge = ChangeFarm.Judge(farm);
        Assert.Equal(2m, judge.WithoutCrop("Beets").HiredHours);
        Assert.Equal(1m, judge.Judge(new Change(ChangeKind.Shrink, "Beets", 50m)).Means.HiredHours);

        // Half as much more takes 0.5 without a day. The owner never worked more than the 13 hours of the week of June 30, so 1 more
        // there is hired; 1 more in the week of July 14 is the owner's.
        ChangeAnswer more = judge.Judge(new Change(ChangeKind.Grow, "Leeks", 50m, Elasticity: 1m));
        Assert.Equal((-1.5m, -1m), (more.Means.HiredHours, more.Means.OwnHours));
        Assert.Equal([0m, 1m], more.Taken.Where(week => week.Hours > 0m).Select(week => week.HiredHours));
        Assert.Equal(1.5m, judge.WithMix("Beets", new Mix([("Leeks", 50m)], Money.Zero), 1m, None).HiredHours);
    }

    /// <summary>
    /// Repairs of 30 at the cooler are running cost, which idle capacity takes no part of: 10 each, and 15 each without beets.
    /// </summary>
    [Fact]
    public void Drop_MovesRunningCostToThoseWhoUse()
    {
        FarmBuilder farm = ChangeFarm.Build().Spend("2025-06-01", 30m, "repairs", pool: "cooler");
        ChangeAnswer answer = ChangeFarm.Judge(farm).Judge(new Change(ChangeKind.Drop, "Beets"));
        Assert.Contains("cooler: unused capacity 25.00, Kale 5.00, Leeks 5.00, Beets -35.00", answer.Moves());
    }

    /// <summary>
    /// A shed that beets don't use moves no cent: 4.00 of office work and 1.00 of weeding are 5.00, 1.67 for kale and 3.33 for leeks, who
    /// use it twice as much. 4.00 alone would be 1.33 and 2.67, but of each charge a fifth is weeding: 1.34 and 2.66.
    /// </summary>
    [Fact]
    public void Drop_OfACropThatDoesNotUseAPool_MovesNothingOfIt()
    {
        FarmBuilder farm = ChangeFarm
            .Build()
            .Pool("shed", "measured")
            .Use("shed", "Kale", 1m, 2025)
            .Use("shed", "Leeks", 2m, 2025)
            .Work("2025-05-20", "me", 0.2m, "office", pool: "shed")
            .Work("2025-05-20", "me", 0.05m, "weeding", pool: "shed");
        Assert.DoesNotContain(
            ChangeFarm.Judge(farm).Judge(new Change(ChangeKind.Drop, "Beets")).Moves(),
            line => line.StartsWith("shed", StringComparison.Ordinal)
        );
    }

    /// <summary>
    /// Beets alone in the boxes: without them the 196 that members pay after the 2% stand to nobody's credit, and nothing of the farm's can
    /// go in: the 90 that were in them are bought in at 80%, 72.
    /// </summary>
    [Fact]
    public void Drop_OfAllThatWasInTheBoxes_LeavesPaymentsWithoutBoxes()
    {
        FarmBuilder farm = ChangeFarm.Build().Without<SaleRow>(sale => sale is { Channel: "boxes", Crop: "Kale" });
        ChangeAnswer answer = ChangeFarm.Judge(farm).Judge(new Change(ChangeKind.Drop, "Beets"));
        Assert.Equal([("payments for shares without boxes", 196m), ("Beets", -196m)], answer.SharesMoved.Amounts());
        Assert.Equal(
            [
                ("bought in for the boxes", -72m),
                ("cost that ends with not assigned", -15m),
                ("cost that ends with unused capacity", -25m),
                ("payments for shares without boxes", 196m),
            ],
            answer.Elsewhere.Amounts().Order()
        );
        Assert.Equal(
            answer.AvoidableChange.Amount,
            answer.Crops.Sum(crop => crop.After.Amount - crop.Before.Amount) + answer.Elsewhere.Sum(line => line.Change.Amount)
        );
    }

    /// <summary>
    /// Leeks go into bags of their own, for which 50 were paid. Without beets their part of the boxes stands to kale, which is in them, and
    /// to nothing of the bags.
    /// </summary>
    [Fact]
    public void Drop_OfACropInOneKindOfBoxes_LeavesTheOtherAsItIs()
    {
        FarmBuilder farm = ChangeFarm
            .Build()
            .Channel("bags", ChannelKind.Share)
            .Income("2025-03-01", "bags", 50m)
            .Pick("2025-07-02", "L", 40m)
            .Sell("2025-07-03", "Leeks", "bags", 40m);
        ChangeAnswer answer = ChangeFarm.Judge(farm).Judge(new Change(ChangeKind.Drop, "Beets"));
        Assert.Equal([("Kale", 88.20m), ("Beets", -88.20m)], answer.SharesMoved.Amounts());
    }

    /// <summary>
    /// Of the 60 missing in the first boxes onions of last year, at 1.50 a pound, stand in with 8 lb, the most they ever had there: 16
    /// worth, which would have sold for 1.35 each, 10.80. Then kale, 15 lb for 27, and 14 are bought in for 11.20.
    /// </summary>
    [Fact]
    public void Drop_FillsBoxesWithCropsOfAnotherYearToo()
    {
        FarmBuilder farm = ChangeFarm
            .Build()
            .Crop("Onions", storageDays: 400m)
            .Price("Onions", 2m)
            .Planting("O", "Onions", "Four", 40m, "2024-05-01", "2024-08-09")
            .Pick("2024-08-01", "O", 16m)
            .Sell("2025-07-09", "Onions", "boxes", 8m)
            .Sell("2025-07-10", "Onions", "stall", 8m, price: 1.50m);
        ChangeAnswer answer = ChangeFarm.Judge(farm).Judge(new Change(ChangeKind.Drop, "Beets"));
        Assert.Equal(
            [
                ("Beets: sales", 300m),
                ("Beets: household use at list value", 30m),
                ("Kale: put into the boxes instead of being sold, at the price less fee and packaging", 27m),
                ("Onions: put into the boxes instead of being sold, at the price less fee and packaging", 10.80m),
            ],
            answer.Partial.ReducedReturns.Lines()
        );
        Assert.Equal([("bought in for the boxes", 11.20m)], answer.Partial.AddedCosts.Lines());
        Assert.Contains(("Onions of another year in the boxes", -10.80m), answer.Elsewhere.Amounts());
        Assert.Contains(("bought in for the boxes", -11.20m), answer.Elsewhere.Amounts());
    }

    /// <summary>Two sowings of radishes, one after the other, fit twice into beets' bed: 200 ft for 100.</summary>
    [Fact]
    public void Swap_ForACropThatFitsTwice_IsOfAllItsFeet()
    {
        FarmBuilder farm = ChangeFarm
            .Build()
            .Crop("Radishes")
            .Price("Radishes", 2m)
            .Planting("R1", "Radishes", "Four", 20m, "2025-05-01", "2025-06-15")
            .Planting("R2", "Radishes", "Four", 20m, "2025-06-15", "2025-08-01")
            .Pick("2025-06-10", "R1", 10m)
            .Pick("2025-07-25", "R2", 10m)
            .Sell("2025-07-25", "Radishes", "shop", 20m, price: 2m);
        ChangeAnswer answer = ChangeFarm.Judge(farm).Judge(new Change(ChangeKind.Swap, "Beets", Replacement: "Radishes"));
        Assert.Equal((200m, false), (answer.FeetAdded, answer.ReplacementDoesNotFit));
        Assert.Equal(5m, answer.Fits.Single(fit => fit.Crop == "Radishes").Growth);
    }

    /// <summary>Cress grown without bed-feet can't be measured against a bed: it isn't tried.</summary>
    [Fact]
    public void Fits_LeaveOutACropWithoutBedFeet()
    {
        FarmBuilder farm = ChangeFarm
            .Build()
            .Crop("Cress")
            .Price("Cress", 2m)
            .Planting("C", "Cress", "Four", 0m, "2025-05-01", "2025-05-09")
            .Pick("2025-05-08", "C", 10m)
            .Sell("2025-05-08", "Cress", "shop", 10m, price: 2m);
        ChangeAnswer answer = ChangeFarm.Judge(farm).Judge(new Change(ChangeKind.Drop, "Beets"));
        Assert.Equal(["Kale", "Leeks"], answer.Fits.Select(fit => fit.Crop).Order());
    }

    /// <summary>A farm that measures in meters is told so.</summary>
    [Fact]
    public void Error_OfAMetricFarm_IsInItsUnits()
    {
        ChangeJudge judge = ChangeFarm.Judge(ChangeFarm.Build().With(settings => settings with { LengthUnit = LengthUnit.M }));
        Assert.DoesNotContain("feet", Assert.Throws<ArgumentException>(() => judge.More("Kale", 0m)).Message, StringComparison.Ordinal);
    }
}
