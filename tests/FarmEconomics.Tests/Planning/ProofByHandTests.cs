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
