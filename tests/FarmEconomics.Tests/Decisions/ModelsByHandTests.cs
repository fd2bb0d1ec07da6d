using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Decisions;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Decisions;

/// <summary>The lines of a crop's cost, its what-if model, and its years side by side (docs/methods.md, section 14), on paper.</summary>
public class ModelsByHandTests
{
    private static FarmBuilder Farm(decimal? wage = 20m) =>
        new FarmBuilder(new FarmSettings { OwnerWage = wage, InterestPercent = 5m })
            .AsOf("2025-12-31").Bed("One").Bed("Two").Bed("Four")
            .Channel("stall", ChannelKind.Market, fee: 10m).Channel("table", ChannelKind.Household)
            .Channel("boxes", ChannelKind.Share, fee: 2m, valuesFrom: "stall")
            .Worker("me", WorkerKind.Owner).Worker("Bo", WorkerKind.Hired, 15m)
            .Crop("Kale").Crop("Beets").Crop("Chard").Price("Kale", 2m).Price("Beets", 3m).Price("Chard", 1m)
            .Category("straw", ExpenseClass.Operating).Category("tape", ExpenseClass.Operating);

    private static SensitivityModel Plain(decimal sold, decimal units, params CostLine[] lines) =>
        new("Kale", new Money(sold), Money.Zero, units, new BedFeet(50m), new BedFootWeeks(500m), lines);

    /// <summary>A cost that is no cash is unpaid labor or ownership; what goes with the crop is all but fixed cost and trips.</summary>
    [Theory]
    [InlineData(CostStream.Cash, false, false)]
    [InlineData(CostStream.HiredLabor, true, false)]
    [InlineData(CostStream.OwnerLabor, true, true)]
    [InlineData(CostStream.Ownership, false, true)]
    public void CostLine_IsLaborAndNonCash_ByItsStream(CostStream stream, bool labor, bool nonCash)
    {
        CostLine line = new("picking", BudgetLine.Labor, CostDriver.Quantity, stream, null, new Money(1m));
        Assert.Equal((labor, nonCash, true), (line.IsLabor, line.IsNonCash, line.IsAvoidable));
        CostLine still = line with { VariesWith = CostDriver.Fixed }, trips = line with { VariesWith = CostDriver.Trips };
        Assert.False(still.IsAvoidable || trips.IsAvoidable);
    }

    /// <summary>
    /// Fractions of 0, below it, 1 and above are no swing; factors of 0 no grid, on either side, whatever the other side is.
    /// </summary>
    [Fact]
    public void SwingsAndGrids_OutOfRange_AreRefused()
    {
        SensitivityModel model = Plain(100m, 10m);
        Assert.All(new[] { 0m, -0.1m, 1m, 1.1m }, part => Assert.Throws<ArgumentOutOfRangeException>(() => Swing.Of(model, part)));
        Assert.Throws<ArgumentOutOfRangeException>(() => SensitivityGrid.Of(model, [1m], [0m]));
        Assert.Throws<ArgumentOutOfRangeException>(() => SensitivityGrid.Of(model, null, [0m]));
        Assert.Throws<ArgumentOutOfRangeException>(() => SensitivityGrid.Of(model, [0m]));
        Assert.Throws<ArgumentOutOfRangeException>(() => SensitivityGrid.Of(model, [0m], [0m]));
        SensitivityGrid usual = SensitivityGrid.Of(model);
        Assert.Equal((9, 9, 60m), (usual.PriceFactors.Count, usual.YieldFactors.Count, usual.NetReturn[0][4].Amount));
    }

    /// <summary>Nothing sold has no price, and no yield or price at which it is even.</summary>
    [Fact]
    public void Model_OfNothing_SaysSo()
    {
        CostLine seed = new("seed", BudgetLine.Materials, CostDriver.Length, CostStream.Cash, null, new Money(9m));
        SensitivityModel none = Plain(0m, 0m, seed);
        Assert.Equal("nothing sold, or several crops without a common unit", none.Price.Reason);
        Assert.Equal("nothing sold", none.YieldFactorFor(1m, longRun: true).Reason);
        Assert.Equal("nothing sold", none.PriceFactorFor(1m, longRun: false).Reason);
        Assert.Equal("nothing sold", none.FloorCost().Reason);
    }

    /// <summary>
    /// Kale: 60 lb at the stall for 120 less 12, 10 eaten (20), 30 on hand at 2 less 12 / 60: 54. Beets failed. The farm at twice the
    /// price: 108 more, its stock and what was eaten as before; it has no unit.
    /// </summary>
    [Fact]
    public void Model_OfTheFarm_MovesOnlyWhatWasSold()
    {
        SeasonReview season = Farm().Planting("K", "Kale", "One", 100m, "2025-05-01", "2025-09-01").Pick("2025-07-01", "K", 100m)
            .Sell("2025-07-02", "Kale", "stall", 60m, price: 2m).Sell("2025-07-02", "Kale", "table", 10m)
            .Spend("2025-05-01", 30m, "seed", crop: "Kale").Work("2025-07-01", "me", 1m, "harvest", crop: "Kale")
            .Planting("B", "Beets", "Two", 100m, "2025-05-01", "2025-09-01").Season(2025);
        SensitivityModel farm = SeasonCosts.Of(season).Model(season.Farm);
        Assert.Equal((194m, 74m), (farm.Output.Amount, farm.NotSold.Amount));
        Assert.Equal(194m - 12m - 30m - 20m, farm.NetReturn(1m, 1m));
        Assert.Equal(108m, farm.NetReturn(2m, 1m) - farm.NetReturn(1m, 1m));
        Assert.Equal((0m, null), (farm.Units, farm.Price.Value));

        SensitivityModel kale = SeasonCosts.Of(season).Model(season.CropNamed("Kale"));
        Assert.Equal((2m, 2m), (kale.Price.Value, kale.PriceOutsideBoxes.Value));
        Assert.Equal((60m, 12m), (kale.UnitsOutsideBoxes, kale.FeesOutsideBoxes.Amount));
    }

    /// <summary>
    /// Members paid 100 for 10 lb of beets, worth 30, and 10 of kale, worth 20: 60 less 2% stand to beets, with 40 lb at the stall for 120
    /// less 12 and 5 eaten. Outside boxes a pound brought 3 and the fees were 12. Kale went into boxes alone, chard was eaten.
    /// </summary>
    [Fact]
    public void Model_OfACropInBoxes_KnowsWhatWasSoldOutsideThem()
    {
        SeasonReview season = Farm().Income("2025-03-01", "boxes", 100m)
            .Planting("B", "Beets", "One", 100m, "2025-05-01", "2025-09-01").Pick("2025-07-01", "B", 55m)
            .Sell("2025-07-02", "Beets", "boxes", 10m).Sell("2025-07-02", "Beets", "stall", 40m, price: 3m)
            .Sell("2025-07-02", "Beets", "table", 5m).Planting("K", "Kale", "Two", 100m, "2025-05-01", "2025-09-01")
            .Pick("2025-07-01", "K", 10m).Sell("2025-07-02", "Kale", "boxes", 10m)
            .Planting("C", "Chard", "Four", 100m, "2025-05-01", "2025-09-01").Pick("2025-07-01", "C", 10m)
            .Sell("2025-07-02", "Chard", "table", 10m)
            .Spend("2025-05-01", 30m, "seed", crop: "Beets").Work("2025-07-01", "me", 1m, "harvest", crop: "Beets").Season(2025);
        SeasonCosts costs = SeasonCosts.Of(season);
        SensitivityModel beets = costs.Model(season.CropNamed("Beets")), kale = costs.Model(season.CropNamed("Kale"));
        Assert.Equal((58.80m, 13.20m, 12m), (beets.ShareNet.Amount, beets.Fees.Amount, beets.FeesOutsideBoxes.Amount));
        Assert.Equal((40m, 3m, 3.6m), (beets.UnitsOutsideBoxes, beets.PriceOutsideBoxes.Value, beets.Price.Value));
        Assert.Equal("sold only in boxes", kale.PriceOutsideBoxes.Reason);
        Assert.Equal("nothing sold", costs.Model(season.CropNamed("Chard")).PriceOutsideBoxes.Reason);
    }

    /// <summary>
    /// Direct costs before those of pools; then by the line of the budget, the larger first, then by name: seed and straw 40 each, tape 55;
    /// picking by Bo 30 and by me 20; then compost 12, and picking that names no crop, 15 and 20.
    /// </summary>
    [Fact]
    public void CostLines_StandInTheOrderOfTheBudget()
    {
        SeasonReview season = Farm().Planting("K", "Kale", "One", 100m, "2025-05-01", "2025-09-01").Pick("2025-07-01", "K", 50m)
            .Sell("2025-07-02", "Kale", "stall", 50m, price: 2m).Spend("2025-05-01", 40m, "straw", crop: "Kale")
            .Spend("2025-05-01", 40m, "seed", crop: "Kale").Spend("2025-05-02", 55m, "tape", crop: "Kale")
            .Work("2025-07-01", "me", 1m, "harvest", crop: "Kale").Work("2025-07-01", "Bo", 2m, "harvest", crop: "Kale")
            .Work("2025-07-01", "me", 1m, "harvest").Work("2025-07-01", "Bo", 1m, "harvest").Spend("2025-04-01", 12m, "compost")
            .Season(2025);
        IReadOnlyList<CostLine> lines = SeasonCosts.Of(season).Of(season.CropNamed("Kale"));
        Assert.Equal(
            [
                (false, BudgetLine.Materials, 55m), (false, BudgetLine.Materials, 40m), (false, BudgetLine.Materials, 40m),
                (false, BudgetLine.Selling, 10m), (false, BudgetLine.Labor, 30m), (false, BudgetLine.Labor, 20m),
            ],
            lines.Take(6).Select(line => (line.Pool is not null, line.Line, line.Amount.Amount)));
        Assert.Equal(["tape", "seed", "straw", "channel fees"], lines.Take(4).Select(line => line.Name));
        Assert.All(lines.Skip(6), line => Assert.NotNull(line.Pool));
        Assert.Equal([12m, 20m, 15m], lines.Skip(6).Select(line => line.Amount.Amount));
        Assert.Equal(season.CropNamed("Kale").TotalCost.Amount, lines.Sum(line => line.Amount.Amount));
    }

    /// <summary>
    /// Rhubarb's establishment of 8 a foot, on 50 feet, without interest over 8 bearing years: 50 a year, fixed and no cash.
    /// </summary>
    [Fact]
    public void Establishment_OfAPerennial_IsALineOfItsOwn()
    {
        SeasonReview season = Farm().With(settings => settings with { InterestPercent = 0m })
            .Perennial("Rhubarb", bearingYears: 8m, establishmentCost: 8m).Planting("R", "Rhubarb", "Four", 50m, "2023-04-01")
            .Pick("2025-06-01", "R", 20m).Sell("2025-06-02", "Rhubarb", "stall", 20m, price: 4m)
            .Spend("2025-05-01", 30m, "compost", crop: "Rhubarb")
            .Work("2025-06-01", "me", 1m, "harvest", crop: "Rhubarb").Season(2025);
        EnterpriseBudget rhubarb = season.CropNamed("Rhubarb");
        CostLine line = SeasonCosts.Of(season).Of(rhubarb).Single(line => line.Line == BudgetLine.Establishment);
        Assert.Equal(
            ("establishment", CostDriver.Fixed, CostStream.Ownership, 50m), (line.Name, line.VariesWith, line.Stream, line.Amount.Amount));
        Assert.True(line is { IsNonCash: true, IsAvoidable: false, IsLabor: false });
        Assert.Equal(80m - 8m - 30m - 20m - 50m, SeasonCosts.Of(season).Model(rhubarb).NetReturn(1m, 1m));
    }

    /// <summary>
    /// Kale 2021: only planted and sown; 2022: 100 lb for 300 less 30 and 50; 2023: none; 2024: picked and eaten; 2025: own hours without a
    /// wage.
    /// </summary>
    [Fact]
    public void Years_OfACrop_StandPerUnitInTheirOwnMoney()
    {
        FarmReview review = Farm(wage: null).Planting("K21", "Kale", "One", 100m, "2021-05-01", "2021-09-01")
            .Spend("2021-05-01", 50m, "seed", crop: "Kale")
            .Work("2021-05-01", "Bo", 1m, "grow", crop: "Kale")
            .Planting("K22", "Kale", "One", 100m, "2022-05-01", "2022-09-01").Pick("2022-07-01", "K22", 100m)
            .Sell("2022-07-02", "Kale", "stall", 100m, price: 3m).Spend("2022-05-01", 50m, "seed", crop: "Kale")
            .Work("2022-07-01", "Bo", 0.001m, "office")
            .Planting("B23", "Beets", "One", 100m, "2023-05-01", "2023-09-01").Pick("2023-07-01", "B23", 100m)
            .Planting("K24", "Kale", "One", 100m, "2024-05-01", "2024-09-01").Pick("2024-07-01", "K24", 10m)
            .Sell("2024-07-02", "Kale", "table", 10m).Spend("2024-05-01", 50m, "seed", crop: "Kale")
            .Work("2024-07-01", "Bo", 1m, "harvest", crop: "Kale")
            .Planting("K25", "Kale", "One", 100m, "2025-05-01", "2025-09-01").Pick("2025-07-01", "K25", 10m)
            .Sell("2025-07-02", "Kale", "stall", 10m, price: 3m).Work("2025-07-01", "me", 1m, "harvest", crop: "Kale").Review();
        CropOverYears kale = CropOverYears.Of(review, " kale ");

        Assert.Equal("Kale", kale.Crop);
        Assert.Equal([2022, 2024, 2025], kale.Years.Select(year => year.CropYear));
        decimal office = kale.Years[0].Budget.TotalCost.Amount - 80m;
        Assert.InRange(office, 0m, 0.02m);
        Assert.Equal(2.2m - (office / 100m), kale.Years[0].NetReturnPerUnit.Value);
        Assert.Equal(0.8m + (office / 100m), kale.Years[0].CostPerUnit.Value);
        Assert.Equal(("nothing sold", "nothing sold"), (kale.Years[1].NetReturnPerUnit.Reason, kale.Years[1].CostPerUnit.Reason));
        string? why = kale.Years[2].Budget.Known.NoFullNetReturn;
        Assert.NotNull(why);
        Assert.Equal((why, why), (kale.Years[2].NetReturnPerUnit.Reason, kale.Years[2].CostPerUnit.Reason));
        CropOverYears none = CropOverYears.Of(review, "okra");
        Assert.Equal(("okra", 0, "No year of okra is on record."), (none.Crop, none.Years.Count, none.Statement));
        Assert.Equal([2022], CropOverYears.Of(review, "kale", 2023).Years.Select(year => year.CropYear));
    }
}
