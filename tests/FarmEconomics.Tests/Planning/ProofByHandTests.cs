using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// The proof of a plan on <see cref="SmallFarm"/>, added up by hand. The market keeps a tenth. A: 4.50 a foot less 2 and 0.20 for its bag,
/// 0.1 hours in week 12; B: 2.70 less 0.50, 0.10 to pick and 0.02 hours. 4 own hours a week at 1, hired ones at 2. 10 feet are sown for the
/// year after, 60 A (all its market takes), 30 B.
/// Sales 300 + 90 less 39; hours 4 own and 2 hired of A, 0.6 own of B: 8.60; cost 132 of A, 18 of B.
/// </summary>
public class ProofByHandTests
{
    private const double Worth = 390.0 - 39.0 - 8.6 - 150.0;

    [Fact]
    public void Proof_OfAPlan_IsTheSameToTheCentOnPaperAndInTheEngine()
    {
        PlanModel model = Model();
        (PlanDraft draft, PlanQuantities quantities, PlanLengths best) = Plan(model);
        Programs.Near([60.0, 30.0, 10.0], best.Feet, 1e-5);
        PlanProof proof = PlanProof.Of(Farm().Link(), model, draft, quantities, best.Feet);

        Assert.Equal(new Money(192.40m), proof.Planned);
        Assert.Equal(new Money(192.40m), proof.Reviewed);
        Assert.True(proof.Holds);
        Programs.Near(Worth, proof.Objective, 1e-4);
    }

    /// <summary>
    /// What the records hold of the year planned already would be counted twice: a planting, its harvest, sale, work and cost, income, use
    /// and a total. What stood at its beginning stays, with what it cost before.
    /// </summary>
    [Fact]
    public void Proof_LeavesOutWhatTheRecordsHoldOfTheYear()
    {
        FarmBuilder farm = Farm()
            .Planting("X", "A", "Bed", 10m, "2026-02-01", "2026-03-05")
            .Pick("2026-03-01", "X", 7m)
            .Sell("2026-03-02", "A", "market", 7m, price: 9m)
            .Work("2026-02-01", "Ann", 3m, "grow", crop: "A")
            .Spend("2026-02-01", 33m, "seed", crop: "B")
            .Spend("2025-12-20", 44m, "seed", crop: "A", cropYear: 2026)
            .Income("2026-02-01", "market", 55m)
            .Income("2025-12-01", "market", 66m, cropYear: 2026)
            .Asset("Tiller", "Tillage", "2025-01-01", 900m, 10m)
            .Standard("B", Stage.Grow, 30m, RatePer.BedFoot)
            .Total("labor", "hours", 500m, "2026-01-01", "2026-12-31");
        PlanModel model = Model();
        (PlanDraft draft, PlanQuantities quantities, PlanLengths best) = Plan(model);
        PlanProof proof = PlanProof.Of(farm.Link(), model, draft, quantities, best.Feet);
        Assert.Equal((new Money(192.40m), new Money(192.40m)), (proof.Planned, proof.Reviewed));
    }

    [Fact]
    public void Proof_OfACentMore_DoesNotHold() => Assert.False(new PlanProof(new Money(1m), new Money(1.01m), 0.0).Holds);

    /// <summary>
    /// 60 A and 30 B are picked and sold; each week's harvest is written with 0.002 more, so that no cent is lost to rounding: that is
    /// left. What the 10 feet for the year after give isn't picked in this one.
    /// </summary>
    [Fact]
    public void Proof_TellsWhatBecomesOfEachCrop()
    {
        PlanModel model = Model();
        (PlanDraft draft, PlanQuantities quantities, PlanLengths best) = Plan(model);
        PlanProof proof = PlanProof.Of(Farm().Link(), model, draft, quantities, best.Feet);
        Assert.Equal(
            [("A", 60.002m, 60m, 0.002m, 0m), ("B", 30.002m, 30m, 0.002m, 0m)],
            proof.Produce.Select(one => (one.Crop, one.Picked, one.Sold, one.Left, one.Beyond))
        );
        Assert.All(proof.Produce, one => Assert.Equal((0m, null), (one.FromBefore, one.First)));
    }

    /// <summary>
    /// 66 A to be sold of the 60.002 picked: 5.998 beyond. Each brings its money on paper and in the engine alike, so that alone is no
    /// proof.
    /// </summary>
    [Fact]
    public void Proof_OfAPlanThatSellsMoreThanItPicks_DoesNotHold()
    {
        PlanProof proof = Proof(draft => draft with
        {
            Sales = [.. draft.Sales.Select(sale => sale.Crop == "A" ? sale with { Quantity = 66m } : sale)],
        });
        PlanProduce a = proof.Produce[0];
        Assert.Equal((66m, 0m, 5.998m, new DateOnly(2026, 5, 26)), (a.Sold, a.Left, a.Beyond, a.First));
        Assert.Equal(proof.Planned, proof.Reviewed);
        Assert.True(proof.Produce[1].AddsUp);
        Assert.False(proof.Holds);
    }

    /// <summary>The rows of A say 45 instead of 60: 14.998 are sold beyond the 45.002 that are picked.</summary>
    [Fact]
    public void Proof_PicksWhatTheRowsSay()
    {
        PlanProof proof = Proof(draft => draft with
        {
            Plantings = [.. draft.Plantings.Select(row => row is { Crop: "A", CropYear: 2026 } ? row with { Yield = 45m } : row)],
        });
        Assert.Equal((45.002m, 14.998m), (proof.Produce[0].Picked, proof.Produce[0].Beyond));
        Assert.False(proof.Holds);
    }

    /// <summary>
    /// A is picked on May 26, the sixth day of week 20, and to be sold on May 19: all 60 are sold before, and all 60.002 left.
    /// </summary>
    [Fact]
    public void Proof_OfAPlanThatSellsBeforeItPicks_DoesNotHold()
    {
        PlanProof proof = Proof(draft => draft with
        {
            Sales = [.. draft.Sales.Select(sale => sale.Crop == "A" ? sale with { From = sale.From.AddDays(-7) } : sale)],
        });
        PlanProduce a = proof.Produce[0];
        Assert.Equal((60m, 60.002m, 60m, new DateOnly(2026, 5, 19)), (a.Sold, a.Left, a.Beyond, a.First));
        Assert.False(proof.Holds);
    }

    /// <summary>
    /// 5 A are left of the season before and keep a year: they are sold first, and 66 are then 0.998 too many; 65 just fit.
    /// </summary>
    [Theory]
    [InlineData(66, 0.998, false)]
    [InlineData(65, 0, true)]
    public void Proof_SellsWhatIsLeftOfTheSeasonBefore(int sold, double beyond, bool holds)
    {
        FarmBuilder farm = Farm().Planting("A25", "A", "Bed", 10m, "2025-03-12", "2025-12-01").Pick("2025-11-20", "A25", 5m);
        PlanProof proof = Proof(
            draft => draft with
            {
                Sales = [.. draft.Sales.Select(sale => sale.Crop == "A" ? sale with { Quantity = sold } : sale)],
            },
            farm
        );
        PlanProduce a = proof.Produce[0];
        Assert.Equal((5m, (decimal)beyond, holds), (a.FromBefore, a.Beyond, proof.Holds));
    }

    /// <summary>
    /// Half a percent of what is sold, and a hundredth, is what rounding to rows may leave: 100 sold, 99.49 and 99.48 picked.
    /// </summary>
    [Fact]
    public void Produce_AddsUp_ButForWhatRoundingLeaves()
    {
        Assert.True(new PlanProduce("A", 99.49m, 100m, 0m).AddsUp);
        Assert.False(new PlanProduce("A", 99.48m, 100m, 0m).AddsUp);
        Assert.True(new PlanProduce("A", 100m, 99m, 0.505m).AddsUp);
        Assert.False(new PlanProduce("A", 100m, 99m, 0.4m).AddsUp);
    }

    private static PlanProof Proof(Func<PlanDraft, PlanDraft> changed, FarmBuilder? farm = null)
    {
        PlanModel model = Model();
        (PlanDraft draft, PlanQuantities quantities, PlanLengths best) = Plan(model);
        return PlanProof.Of((farm ?? Farm()).Link(), model, changed(draft), quantities, best.Feet);
    }

    private static (PlanDraft Draft, PlanQuantities Quantities, PlanLengths Best) Plan(PlanModel model)
    {
        BestMix mix = BestMix.Of(model, Programs.Solver);
        return (DraftMaker.Of(Farm().Link(), model, mix.Best!.Feet, mix.Quantities!), mix.Quantities!, mix.Best);
    }

    private static PlanModel Model()
    {
        PlanModel farm = SmallFarm.Of(aTakes: 60.0);
        PlanSowing later = farm.Sowings[0] with
        {
            Yield = SmallFarm.Weekly(0.0),
            Later = 9.0,
            LaterUnits = 2.0,
            Cost = 1.0,
            Today = 10.0,
            Week = 11,
        };
        return farm with
        {
            Sowings =
            [
                farm.Sowings[0] with { Hours = [.. Enumerable.Range(0, PlanModel.Weeks).Select(week => week == 12 ? 0.1 : 0.0)] },
                farm.Sowings[1],
                later,
            ],
            Crops =
            [
                Fee(farm.Crops[0]) with { SoldCost = 0.2 },
                Fee(farm.Crops[1]) with { PickedCost = 0.1, HandlingHours = 0.02 },
            ],
            Hours = new PlanHours(SmallFarm.Weekly(4.0), SmallFarm.Weekly(1000.0), SmallFarm.Weekly(0.0), 1.0, 2.0),
        };
    }

    private static PlanCrop Fee(PlanCrop crop) =>
        crop with { Steps = [.. crop.Steps.Select(week => (IReadOnlyList<PlanStep>)[.. week.Select(step => step with { Fee = 0.1 })])] };

    private static FarmBuilder Farm() =>
        new FarmBuilder()
            .Bed("Bed")
            .Crop("A")
            .Crop("B")
            .Channel("market", ChannelKind.Market, fee: 10m)
            .Worker("Ann", WorkerKind.Owner)
            .Pool("Tillage", "bed-feet");
}
