using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Decisions;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Decisions;

/// <summary>
/// What if, break-even and what would change a verdict, in whole numbers on paper (docs/methods.md, sections 14, 16 and 17).
/// </summary>
public class AdviceByHandTests
{
    /// <summary>
    /// Sold for 1,000 (200 units), 100 eaten. Seed 100 and straw 60 go with the bed; picking 150 with the quantity; bags 40 and fees 50
    /// with units sold; rent 200 and trips 30 stay. 470 are left. Follows price and yield: 1,000 - 50 = 950; the yield alone: 100 - 150 -
    /// 40 = -90; neither: 100 + 60 + 200 + 30 = 390.
    /// </summary>
    private static SensitivityModel Model(decimal sold = 1000m, decimal fees = 50m) =>
        new(
            "Kale",
            new Money(sold),
            new Money(100m),
            200m,
            new BedFeet(50m),
            new BedFootWeeks(500m),
            [
                new CostLine("seed", BudgetLine.Materials, CostDriver.Length, CostStream.Cash, null, new Money(100m)),
                new CostLine("straw", BudgetLine.Materials, CostDriver.BedTime, CostStream.Cash, null, new Money(60m)),
                new CostLine("picking", BudgetLine.Labor, CostDriver.Quantity, CostStream.HiredLabor, null, new Money(150m)),
                new CostLine("bags", BudgetLine.Selling, CostDriver.Units, CostStream.Cash, null, new Money(40m)),
                new CostLine("channel fees", BudgetLine.Selling, CostDriver.Units, CostStream.Cash, null, new Money(fees)) { IsFee = true },
                new CostLine("rent", BudgetLine.Overhead, CostDriver.Fixed, CostStream.Cash, null, new Money(200m)),
                new CostLine("trips", BudgetLine.Selling, CostDriver.Trips, CostStream.Cash, null, new Money(30m)),
            ]
        );

    /// <summary>
    /// A tenth dearer and a tenth less: 950 x 0.99 - 90 x 0.9 - 390 = 469.50. Without what stays (rent, trips): 950 x 0.99 - 81 - 160.
    /// Gross margin leaves out the picking and the rent: 950 + (100 - 40) - 160 - 30 = 820, and 940.50 + 54 - 190 = 804.50.
    /// </summary>
    [Fact]
    public void WhatIf_MovesWhatFollowsPriceAndYield()
    {
        SensitivityModel model = Model();
        Assert.Equal((470m, 469.50m), (model.NetReturn(1m, 1m), model.NetReturn(1.1m, 0.9m)));
        Assert.Equal((700m, 699.50m), (model.Contribution(1m, 1m), model.Contribution(1.1m, 0.9m)));
        Assert.Equal((820m, 804.50m), (model.GrossMargin(1m, 1m), model.GrossMargin(1.1m, 0.9m)));
        Assert.Equal(1.609m, model.MarginPerBedFootWeek(1.1m, 0.9m).Value);
        Assert.Equal((5m, 1100m, 50m), (model.Price.Value, model.Output.Amount, model.Fees.Amount));
        Assert.Equal(
            [100m, 60m, 150m, 90m, 200m, 30m],
            new[]
            {
                CostDriver.Length,
                CostDriver.BedTime,
                CostDriver.Quantity,
                CostDriver.Units,
                CostDriver.Fixed,
                CostDriver.Trips,
            }.Select(driver => model.Cost(driver).Amount)
        );
    }

    /// <summary>
    /// Even at 480/950 of the price, with half the yield (390 + 45) / 475; to leave 47 at 527/950. At 390/860 of the yield; without what
    /// stays 160/860, to leave 43 203/860; at half the price (43 + 160) / (475 - 90).
    /// </summary>
    [Fact]
    public void BreakEven_IsWhereNothingOrTheWantedIsLeft()
    {
        SensitivityModel model = Model();
        Assert.Equal(480m / 950m, model.PriceFactorFor(1m, longRun: true).Value);
        Assert.Equal(435m / 475m, model.PriceFactorFor(0.5m, longRun: true).Value);
        Assert.Equal(527m / 950m, model.PriceFactorFor(1m, longRun: true, 47m).Value);
        Assert.Equal(250m / 950m, model.PriceFactorFor(1m, longRun: false).Value);
        Assert.Equal(390m / 860m, model.YieldFactorFor(1m, longRun: true).Value);
        Assert.Equal(160m / 860m, model.YieldFactorFor(1m, longRun: false).Value);
        Assert.Equal(203m / 860m, model.YieldFactorFor(1m, longRun: false, 43m).Value);
        Assert.Equal(203m / 385m, model.YieldFactorFor(0.5m, longRun: false, 43m).Value);
    }

    /// <summary>Nothing sold, all of it the channel's, or a price at which a unit earns less than it costs: the reason is told.</summary>
    [Fact]
    public void BreakEven_WhereThereIsNone_SaysWhy()
    {
        Assert.Equal("nothing sold", Model(0m, 0m).PriceFactorFor(1m, longRun: true).Reason);
        Assert.Equal("the channel's fee takes all of the sales", Model(50m).PriceFactorFor(1m, longRun: true).Reason);
        Assert.Equal("a unit earns less than it costs to pick, pack and sell", Model().YieldFactorFor(0.09m, longRun: true).Reason);
        Assert.Equal("sold only in boxes", Model().FloorCost().Reason);
    }

    /// <summary>
    /// Price a fifth up or down moves 950 by 190; yield 860 by 172; wage 150 by 30, and so do hours; seed 20, straw 12, rent 40. Fees move
    /// with the price alone as a line of their own by 10.
    /// </summary>
    [Fact]
    public void Swings_MoveOneThingByAFifth() =>
        Assert.Equal(
            [
                ("price", 280m, 660m),
                ("yield", 298m, 642m),
                ("rent", 510m, 430m),
                ("hours", 500m, 440m),
                ("wage", 500m, 440m),
                ("seed", 490m, 450m),
                ("straw", 482m, 458m),
                ("channel fees", 480m, 460m),
                ("bags", 478m, 462m),
                ("trips", 476m, 464m),
            ],
            Swing.Of(Model()).Select(swing => (swing.Input, swing.AtLow.Amount, swing.AtHigh.Amount))
        );

    /// <summary>Prices 30% lower, a fifth less, all that varies a fifth dearer: 1,100 x 0.56 - 400 x 1.2 - 230 = -94.</summary>
    [Fact]
    public void PessimisticRule_MovesReceiptsAndVariableCost() => Assert.Equal(-94m, SensitivityCase.Pessimistic.NetReturn(Model()).Amount);

    /// <summary>
    /// Beets in boxes that members paid 200 for, 20 lb of them, and 80 lb at the stall for 240 less 24; seed 46. Members' 200 stand to
    /// beets by 60 of the 250 of list value: 48. Without beets 3 lb of kale go into the boxes that brought 1.80: 5.40. So the farm, short
    /// run: 216 x f + 5.40 = 46, f x 3 a pound; at (46 / 221.40) of the yield. Textbook: (46 - 5.40) / 80 and the fee of 0.30. For the
    /// crop, long run, textbook: (46 + 24) / 100 a pound; it brought 288 / 100.
    /// </summary>
    [Fact]
    public void BreakEven_OfACropInBoxes_CountsWhatFillsThemAgain()
    {
        SeasonReview season = Boxes().Season(2025);
        EnterpriseBudget beets = season.CropNamed("Beets");
        BreakEvenPair[] pairs = [.. BreakEvenPair.Of(beets, SeasonCosts.Of(season).Model(beets))];
        (decimal? Price, decimal? Yield)[] told =
        [
            .. pairs.Select(pair =>
                (Rounded(pair.Price), Rounded(pair.YieldPerBedFoot))
            ),
        ];
        Assert.Equal((Round(40.6m / 216m * 3m), Round(46m / 221.4m)), told[1]);
        Assert.Equal((0.7m, Round(0.7m / 2.88m)), told[2]);
        Assert.Equal((Round((40.6m / 80m) + 0.3m), Round(((40.6m / 80m) + 0.3m) / 3m)), told[3]);
    }

    /// <summary>Kale goes into boxes alone in the first weeks: nothing of it is sold outside them, so no price there breaks even.</summary>
    [Fact]
    public void BreakEven_OfACropInBoxesOnly_SaysSo()
    {
        SeasonReview season = Boxes().Without<SaleRow>(sale => sale.Crop == "Kale" && sale.Channel == "stall").Season(2025);
        EnterpriseBudget kale = season.CropNamed("Kale");
        IReadOnlyList<BreakEvenPair> pairs = BreakEvenPair.Of(kale, SeasonCosts.Of(season).Model(kale));
        Assert.Equal(["sold only in boxes", "sold only in boxes"], new[] { pairs[1], pairs[3] }.Select(pair => pair.Price.Reason));
        Assert.NotNull(pairs[2].Price.Value);
    }

    /// <summary>
    /// Kept, beets need less by their price over all, 2.88: at 46 / 264 of it they are even. Were it too close to call, by the price
    /// outside boxes, 3: with an hour of picking divided by sales value, 288 of 560 and so 10.29 of 20, at (46 + 10.29 - 5.40) / 216.
    /// </summary>
    [Fact]
    public void Needs_OfACropInBoxes_AreByThePriceTheyMove()
    {
        Verdict kept = Of(Boxes()).Crops.Single(verdict => verdict.Budget.Name == "Beets");
        Assert.Equal((Direction.Keep, Round(((46m / 264m) - 1m) * 2.88m)), (kept.Direction, Rounded(kept.Needs.Price)));
        Verdicts unsure = Of(Boxes().Work("2025-07-01", "me", 1m, "harvest"), new VerdictSettings { RuleError = 100m });
        Verdict close = unsure.Crops.Single(verdict => verdict.Budget.Name == "Beets");
        Assert.Equal((Direction.TooClose, Round(((50.89m / 216m) - 1m) * 3m)), (close.Direction, Rounded(close.Needs.Price)));
    }

    /// <summary>
    /// 10 hours of picking that name no crop are 200 by rule, and 100 of the 200 lb picked name no planting, of two: 400 of the 800
    /// brought. One season has no spread: the noise is the root of (0.2 x 200)^2 + (0.2 x 400)^2. 10 of 15 hours are by rule.
    /// </summary>
    [Fact]
    public void Noise_IsWhatRulesMayBeOffBy()
    {
        Verdict kale = Assert.Single(Of(ByRule()).Crops);
        Assert.Equal(decimal.Round((decimal)Math.Sqrt(1600.0 + 6400.0), 2), kale.Noise.Amount);
        Assert.Equal(10m / 15m, kale.HoursByRule.Value);
        Verdict sure = Assert.Single(Of(ByRule(), new VerdictSettings { RuleError = 0.1m }).Crops);
        Assert.Equal(decimal.Round((decimal)Math.Sqrt(400.0 + 1600.0), 2), sure.Noise.Amount);
    }

    /// <summary>
    /// Sales 800, seed 90, 15 hours at 20 and rent 500 leave -90. 90 more for 200 lb is 0.45 a pound; 90 of the 300 for labor are 4.5
    /// hours; with the yield move 800 - 300: 590 / 500 is 18% more.
    /// </summary>
    [Fact]
    public void Needs_OfACropShortOfItsFullCost_AreEachAlone()
    {
        Verdict kale = Assert.Single(Of(ByRule().Spend("2025-03-01", 500m, "rent")).Crops);
        Assert.Equal(Direction.Fix, kale.Direction);
        Assert.Equal((0.45m, 0.18m, 4.5m), (Rounded(kale.Needs.Price), Rounded(kale.Needs.Yield), Rounded(kale.Needs.Hours)));
        Assert.Equal(410m, kale.Mean.Amount);

        // With 1,000 of rent 590 are missing: more than labor costs.
        Verdict more = Assert.Single(Of(ByRule().Spend("2025-03-01", 1000m, "rent")).Crops);
        Assert.Equal("hours alone don't change it", more.Needs.Hours.Reason);
        Assert.Equal(590m / 200m, more.Needs.Price.Value);
    }

    /// <summary>A crop that carries its cost needs less by as much: 410 for 200 lb, and no hours fewer.</summary>
    [Fact]
    public void Needs_OfACropThatPays_AreBelowNothing()
    {
        Verdict kale = Assert.Single(Of(ByRule()).Crops);
        Assert.Equal(Direction.Keep, kale.Direction);
        Assert.Equal((-2.05m, -0.82m, null), (Rounded(kale.Needs.Price), Rounded(kale.Needs.Yield), kale.Needs.Hours.Value));
        Assert.Equal(410m / kale.Budget.BedFootWeeks.Value, kale.NetPerBedFootWeek.Value);
    }

    private static decimal Round(decimal value) => decimal.Round(value, 9);

    private static decimal? Rounded(Result result) => result.Value is { } value ? Round(value) : null;

    private static Verdicts Of(FarmBuilder farm, VerdictSettings? settings = null)
    {
        FarmReview review = farm.Review();
        return Verdicts.Of(review, SeasonCosts.Of(review.Season(2025)), settings);
    }

    private static FarmBuilder ByRule() =>
        new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m })
            .AsOf("2025-12-31")
            .Bed("One")
            .Bed("Two")
            .Channel("stall", ChannelKind.Market)
            .Worker("me", WorkerKind.Owner)
            .Crop("Kale")
            .Planting("K1", "Kale", "One", 100m, "2025-05-01", "2025-08-01")
            .Planting("K2", "Kale", "Two", 100m, "2025-05-01", "2025-08-01")
            .Pick("2025-07-01", "K1", 100m)
            .PickCrop("2025-07-02", "Kale", 100m)
            .Sell("2025-07-03", "Kale", "stall", 200m, price: 4m)
            .Work("2025-07-01", "me", 10m, "harvest")
            .Work("2025-07-01", "me", 5m, "harvest", crop: "Kale")
            .Spend("2025-05-01", 90m, "seed", crop: "Kale");

    private static FarmBuilder Boxes() =>
        new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m })
            .AsOf("2025-12-31")
            .Bed("One")
            .Bed("Two")
            .Channel("stall", ChannelKind.Market, fee: 10m)
            .Channel("boxes", ChannelKind.Share, valuesFrom: "stall")
            .Channel("heap", ChannelKind.Waste)
            .Income("2025-03-01", "boxes", 200m)
            .Spend("2025-05-01", 46m, "seed", crop: "Beets")
            .Worker("me", WorkerKind.Owner)
            .Work("2025-07-01", "me", 1m, "harvest", crop: "Kale")
            .Crop("Beets")
            .Planting("B", "Beets", "One", 100m, "2025-05-01", "2025-09-01")
            .Pick("2025-07-01", "B", 100m)
            .Price("Beets", 3m)
            .Crop("Kale")
            .Planting("K", "Kale", "Two", 100m, "2025-05-01", "2025-09-01")
            .Pick("2025-07-01", "K", 200m)
            .Price("Kale", 2m)
            .Sell("2025-07-02", "Beets", "boxes", 10m)
            .Sell("2025-07-02", "Kale", "boxes", 45m)
            .Sell("2025-07-09", "Beets", "boxes", 10m)
            .Sell("2025-07-09", "Kale", "boxes", 50m)
            .Sell("2025-07-20", "Kale", "heap", 2m)
            .Sell("2025-07-20", "Kale", "stall", 60m, price: 2m)
            .Sell("2025-07-20", "Beets", "stall", 80m, price: 3m);
}
