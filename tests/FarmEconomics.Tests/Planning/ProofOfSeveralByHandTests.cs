using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// The proof of a plan of three crops, added up by hand, on a farm whose records hold much of the year to come already. A is sown twice and
/// once more for the year after, picked and sold in two weeks through two channels and in boxes; B once; garlic G stands since October.
/// An own hour counts 10, a hired one 18; the market keeps a tenth.
/// </summary>
public class ProofOfSeveralByHandTests
{
    /// <summary>
    /// Market 40 A at 5 and 20 B at 3 less a tenth, shop 40 A at 4 and 50 G at 2. What boxes hold is paid for by members, and in neither.
    /// </summary>
    private const decimal Sales = 180m + 54m + 160m + 100m;

    /// <summary>
    /// Week 0: 40 feet of A x 0.05, own. Week 12: A 40 x 0.1 + 20 x 0.05 = 5, G 40 x 0.05 = 2; with the 10 feet x 0.5 for the year after,
    /// which are no work of this year's crops, 12, of which 6 are own: each crop's are half own, half hired. Week 20: 30 B picked x 0.02.
    /// </summary>
    private const decimal Hours = (2m * 10m) + (2.5m * 10m) + (2.5m * 18m) + (1m * 10m) + (1m * 18m) + (0.6m * 10m);

    /// <summary>
    /// A: 40 feet x 2 + 20 x 1, 100 picked x 0.05, 40 + 40 + 20 sold and boxed x 0.2. B: 30 x 0.5, 30 x 0.1, (20 + 10) x 0.1. G: 50 x 0.1.
    /// </summary>
    private const decimal Cost = 100m + 5m + 20m + 15m + 3m + 3m + 5m;

    private static readonly DateOnly October = new(2025, 10, 16);
    private static readonly double[] Feet = [40.0, 20.0, 30.0, 10.0, 40.0];

    [Fact]
    public void Proof_OfSeveralCrops_IsTheSameToTheCentOnPaperAndInTheEngine()
    {
        PlanProof proof = Proof(Farm());
        Assert.Equal((new Money(Sales - Hours - Cost), new Money(Sales - Hours - Cost)), (proof.Planned, proof.Reviewed));
        Programs.Near((double)(Sales - Hours - Cost), proof.Objective, 1e-9);
    }

    /// <summary>
    /// Ten pounds of A are left of the season before and sold first, and the farm calls its fixed cost "seed" and its office work "grow":
    /// the plan brings the same.
    /// </summary>
    [Fact]
    public void Proof_OfAFarmWithStockAndWordsOfItsOwn_IsTheSame()
    {
        Money expected = new(Sales - Hours - Cost);
        PlanProof stock = Proof(Farm().Pick("2025-07-01", "A25", 10m));
        Assert.Equal((expected, expected), (stock.Planned, stock.Reviewed));
        PlanProof words = Proof(
            Farm().Category("seed", ExpenseClass.Operating, varies: CostDriver.Fixed).Task("grow", Stage.Overhead)
        );
        Assert.Equal((expected, expected), (words.Planned, words.Reviewed));
    }

    /// <summary>The rows the proof is made of: sales and boxes by crop, channel and week, boxes at list value.</summary>
    [Fact]
    public void Draft_HasSalesAndBoxesByCropChannelAndWeek()
    {
        PlanModel model = Model();
        FarmRecords records = Farm().Link();
        PlanDraft draft = DraftMaker.Of(records, model, Feet, PlanQuantities.Of(model, Programs.Solver, Feet)!);
        Assert.Equal(
            [
                ("A", "box", 20m, 3m, 24),
                ("A", "market", 40m, 5m, 20),
                ("A", "shop", 40m, 4m, 24),
                ("B", "box", 10m, 2m, 20),
                ("B", "market", 20m, 3m, 20),
                ("G", "shop", 50m, 2m, 28),
            ],
            draft.Sales.Select(sale =>
                (sale.Crop, sale.Channel, sale.Quantity, sale.Price, (sale.From.DayNumber - model.Start.DayNumber) / 7)
            )
        );
    }

    /// <summary>
    /// All that the records hold of the year from its first day on, or for it, is left out, be it noted of plantings that go with it: X,
    /// which is for the year after the plan's and would take part of its harvest, and Y. Wages that the books hold for the year would pay
    /// for the plan's hired hours. What stands, G26, stays.
    /// </summary>
    [Theory]
    [InlineData("2026-01-01", null)]
    [InlineData("2025-12-20", 2026)]
    public void Proof_LeavesOutTheYearFromItsFirstDay(string paid, int? paidFor)
    {
        PlanProof proof = Proof(
            Farm()
                .Planting("X", "A", "P", 10m, "2026-01-01", "2026-12-01", cropYear: 2027)
                .Planting("Y", "A", "Q", 10m, "2026-02-01", "2026-03-05")
                .Pick("2026-01-01", "X", 7m)
                .Sell("2026-01-01", "A", "market", 7m, price: 9m, planting: "X")
                .Work("2026-01-01", "Ann", 3m, "grow", planting: "X")
                .Spend("2026-01-01", 33m, "seed", planting: "X")
                .Spend("2025-12-20", 44m, "seed", planting: "X", cropYear: 2026)
                .Spend(paid, 700m, "wages", cropYear: paidFor)
                .Income("2026-01-01", "market", 55m)
                .Income("2025-12-01", "market", 66m, cropYear: 2026)
                .Asset("Tiller", "Tillage", "2025-01-01", 900m, 10m)
                .Standard("B", Stage.Grow, 30m, RatePer.BedFoot)
                .Total("labor", "hours", 500m, "2026-01-01", "2026-12-31")
        );
        Assert.Equal((new Money(Sales - Hours - Cost), new Money(Sales - Hours - Cost)), (proof.Planned, proof.Reviewed));
    }

    private static PlanProof Proof(FarmBuilder farm)
    {
        PlanModel model = Model();
        FarmRecords records = farm.Link();
        PlanQuantities quantities = PlanQuantities.Of(model, Programs.Solver, Feet)!;
        return PlanProof.Of(records, model, DraftMaker.Of(records, model, Feet, quantities), quantities, Feet);
    }

    /// <summary>
    /// Each week's harvest is just what channels take and boxes must hold: 20 A at a list value of 3 and 10 B at 2, dear to buy in. Of the
    /// 7 hours of week 12 no more than 3.5 are own.
    /// </summary>
    private static PlanModel Model()
    {
        PlanModel farm = SmallFarm.Of();
        PlanSowing sowing = farm.Sowings[0] with { Yield = Weeks(), Cost = 0.0 };
        return farm with
        {
            Sowings =
            [
                sowing with { Yield = Weeks((20, 1.0)), Cost = 2.0, Hours = Weeks((0, 0.05), (12, 0.1)) },
                sowing with { Yield = Weeks((24, 3.0)), Cost = 1.0, Hours = Weeks((12, 0.05)) },
                sowing with { Crop = 1, Yield = Weeks((20, 1.0)), Cost = 0.5 },
                sowing with { Cost = 1.0, Hours = Weeks((12, 0.5)), Later = 9.0, LaterUnits = 2.0 },
                sowing with { Crop = 2, Yield = Weeks((28, 1.25)), Hours = Weeks((12, 0.05)), Standing = [new("G26", "T", 40.0, October)] },
            ],
            Crops =
            [
                Crop("A", (20, "market", 40.0, 5.0), (24, "shop", 40.0, 4.0)) with
                {
                    PickedCost = 0.05,
                    SoldCost = 0.2,
                    BoxMost = 20.0,
                    BoxValue = Weeks((24, 3.0)),
                },
                Crop("B", (20, "market", 20.0, 3.0)) with
                {
                    PickedCost = 0.1,
                    SoldCost = 0.1,
                    HandlingHours = 0.02,
                    BoxMost = 10.0,
                    BoxValue = Weeks((20, 2.0)),
                },
                Crop("G", (28, "shop", 50.0, 2.0)) with { PickedCost = 0.1 },
            ],
            Hours = new PlanHours(SmallFarm.Weekly(6.0), SmallFarm.Weekly(100.0), Weeks(), 10.0, 18.0),
            BoxTarget = Weeks((20, 20.0), (24, 60.0)),
            BuyIn = 9.0,
        };
    }

    private static PlanCrop Crop(string name, params (int Week, string Channel, double Takes, double Price)[] sold) =>
        SmallFarm.Of().Crops[0] with
        {
            Name = name,
            Steps =
            [
                .. Enumerable
                    .Range(0, PlanModel.Weeks)
                    .Select(week =>
                        (IReadOnlyList<PlanStep>)
                            [.. sold.Where(one => one.Week == week).Select(one => Step(one.Channel, one.Takes, one.Price))]
                    ),
            ],
        };

    private static PlanStep Step(string channel, double takes, double price) =>
        new(channel, takes, price, channel == "market" ? 0.1 : 0.0);

    private static double[] Weeks(params (int Week, double Value)[] there) =>
        [.. Enumerable.Range(0, PlanModel.Weeks).Select(week => there.Where(one => one.Week == week).Sum(one => one.Value))];

    /// <summary>
    /// A sold all of 2025's harvest then. What raising garlic cost in October is spent already, and in neither. The records' own wage and
    /// payroll tax aren't the plan's: its hours have their whole cost.
    /// </summary>
    private static FarmBuilder Farm() =>
        new FarmBuilder(new FarmSettings { OwnerWage = 15m, PayrollBurdenPercent = 20m })
            .AsOf("2025-12-31")
            .Bed("P")
            .Bed("Q")
            .Bed("T")
            .Crop("A")
            .Crop("B")
            .Crop("G")
            .Channel("market", ChannelKind.Market, fee: 10m)
            .Channel("shop", ChannelKind.Market)
            .Channel("box", ChannelKind.Share)
            .Worker("Ann", WorkerKind.Owner)
            .Pool("Tillage", "bed-feet")
            .Price("A", 3m, "box")
            .Price("B", 2m, "box")
            .Planting("A25", "A", "P", 40m, "2025-03-12", "2025-08-01")
            .Pick("2025-07-01", "A25", 50m)
            .Sell("2025-07-03", "A", "market", 50m, price: 4m)
            .Planting("G26", "G", "T", 40m, "2025-10-16", "2026-07-20", cropYear: 2026)
            .Spend("2025-10-10", 80m, "seed", planting: "G26")
            .Work("2025-10-16", "Ann", 4m, "grow", planting: "G26");
}
