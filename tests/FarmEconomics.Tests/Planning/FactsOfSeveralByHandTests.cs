using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// What a plan takes from crops that stand over the turn of the year, stand still, or were sown twice, by hand (docs/methods.md,
/// section 20). Both crop years begin on January 1; 2024 has a February 29.
/// </summary>
public class FactsOfSeveralByHandTests
{
    private static PlanSowing[] Of(string crop) => PlanByHandTests.SowingsOf(PlanByHandTests.ModelOf(Farm()), crop);

    /// <summary>
    /// In bed on January 2 and 3, week 0, of its own crop year: sown and picked (58 days, 8 weeks on) within the year planned.
    /// </summary>
    [Fact]
    public void Sowing_OfTheFirstWeek_IsPickedWithinTheYear()
    {
        PlanSowing mache = Assert.Single(Of("Mache"));
        Assert.Equal((0, 50.0, null, 0.0), (mache.Week, mache.Today, mache.Later, mache.LaterUnits));
        Assert.Equal((0.5, 0.5), (mache.Yield[8], mache.Yield.Sum()));
    }

    /// <summary>
    /// Spinach for 2025 came in on October 16, 2024, 77 days before it, and was picked 6 weeks on, still before its crop year: all the same
    /// it is for the year after the one planned, and gives nothing in it. 50 lb of 100 feet, sold at 2.
    /// </summary>
    [Fact]
    public void Sowing_ForTheYearAfter_GivesNothingInTheYearBeItPickedBeforeItsEnd()
    {
        PlanSowing spinach = Assert.Single(Of("Spinach"), one => one.Standing.Count == 0);
        Assert.Equal((41, 100.0, 1.0, 0.5, 0.0), (spinach.Week, spinach.Today, spinach.Later, spinach.LaterUnits, spinach.Yield.Sum()));
    }

    /// <summary>
    /// Leeks in bed on October 7, 2024, day 280: week 40. First picked 84 days on, 12 weeks: in week 52, which is past the year. 30 lb of
    /// 50 feet, sold at 3.
    /// </summary>
    [Fact]
    public void Sowing_FirstPickedAWeekPastTheLast_IsPickedAfterTheYear()
    {
        PlanSowing leeks = Assert.Single(Of("Leeks"));
        Assert.Equal((40, 0.0, 1.8, 0.6), (leeks.Week, leeks.Today, Math.Round(leeks.Later!.Value, 9), Math.Round(leeks.LaterUnits, 9)));
        Assert.Equal((0.0, 0.0), (leeks.Yield.Sum(), leeks.Cost));
    }

    /// <summary>
    /// Garlic added 120 - 20 in 2024 and 180 - 20 in 2025, of 40 feet each: (2.50 + 4) / 2, and 0.50 of seed stand
    /// in the year it is set. Without a log of hours sales and seed alone tell it, as they do of every other crop.
    /// </summary>
    [Fact]
    public void Later_IsTheMeanOfTheSeasons()
    {
        PlanSowing garlic = Assert.Single(Of("Garlic"));
        Assert.Equal((3.75, 0.5), (Math.Round(garlic.Later!.Value, 9), Math.Round(garlic.Cost, 9)));
        PlanModel unknown = PlanByHandTests.ModelOf(Farm().Without<LaborRow>(_ => true));
        Assert.Equal(3.75, Assert.Single(PlanByHandTests.SowingsOf(unknown, "Garlic")).Later!.Value, 9);
    }

    /// <summary>
    /// Parsnips of June 1 (day 151: week 21) stand at the closing date, but were picked: they tell. Those of June 15 gave nothing yet, and
    /// one of their two beds holds them still: they tell nothing, and their feet count with the nearest week told. Scallions that leave
    /// on the closing date itself are no failure yet.
    /// </summary>
    [Fact]
    public void Planting_ThatStandsUnpicked_TellsNothing()
    {
        PlanSowing parsnips = Assert.Single(Of("Parsnips"));
        Assert.Equal((21, 40.0 + 20.0, 0.5), (parsnips.Week, parsnips.Today, parsnips.Yield.Sum()));
        Assert.Empty(Of("Scallions"));
    }

    /// <summary>Of scallions nothing was picked or sold: what a pound would cost isn't known, and counts nothing.</summary>
    [Fact]
    public void Crop_ThatGaveNothing_CostsNothingByThePound()
    {
        PlanCrop scallions = PlanByHandTests.ModelOf(Farm()).Crops.Single(crop => crop.Name == "Scallions");
        Assert.Equal((0.0, 0.0, 0.0), (scallions.PickedCost, scallions.SoldCost, scallions.HandlingHours));
    }

    /// <summary>
    /// Spinach for 2026 came into C on November 20 (42 days before: week -6), into B a week later; picked 6 weeks after the first: week 0.
    /// </summary>
    [Fact]
    public void Standing_InTwoBeds_CountsFromItsFirstDay()
    {
        PlanSowing stands = Assert.Single(Of("Spinach"), one => one.Standing.Count > 0);
        Assert.Equal((-6, (60.0, 60.0), 0.5), (stands.Week, stands.Bounds, stands.Yield[0]));
        Assert.Equal(
            [("B", 40.0, new DateOnly(2025, 11, 27)), ("C", 20.0, new DateOnly(2025, 11, 20))],
            stands.Standing.Select(bed => (bed.Bed, bed.BedFeet, bed.In))
        );
    }

    /// <summary>
    /// On November 1 of the year planned leeks stand that came in on October 8 (week 40) and that very day (day 304: week 43). Both are
    /// picked past the year, the first in week 52.
    /// </summary>
    [Fact]
    public void Standing_DuringTheYear_HoldsWhatCameInOnTheClosingDate()
    {
        FarmBuilder farm = Farm()
            .AsOf("2026-11-01")
            .Planting("L26", "Leeks", "E", 50m, "2026-10-08", "2027-01-20", cropYear: 2026)
            .Planting("L26b", "Leeks", "F", 20m, "2026-11-01", "2027-02-01", cropYear: 2026);
        PlanSowing[] stand = [.. PlanByHandTests.SowingsOf(PlanByHandTests.ModelOf(farm), "Leeks").Where(one => one.Standing.Count > 0)];
        Assert.Equal([(40, 0.0), (43, 0.0)], stand.Select(one => (one.Week, one.Yield.Sum())));
    }

    /// <summary>
    /// A plan made from 2024 when the closing date lies right past the year it is for: mache of the last day of 2024 and
    /// garlic of October stood at its beginning, mache of January 2 didn't.
    /// </summary>
    [Fact]
    public void Standing_OfAnEarlierSeason_IsWhatStoodAtItsEnd()
    {
        FarmBuilder farm = Farm().AsOf("2026-01-01").Planting("M25x", "Mache", "E", 10m, "2024-12-31", "2025-03-10", cropYear: 2025);
        FarmReview review = farm.Review();
        PlanModel model = PlanFacts.Of(review, SeasonCosts.Of(review.Season(2024)));
        Assert.Equal(
            [(-1, "M25x"), (-11, "G25")],
            model.Sowings.Where(one => one.Standing.Count > 0).Select(one => (one.Week, Assert.Single(one.Standing).Planting))
        );
    }

    /// <summary>
    /// Rhubarb, two plantings of 40 and 20 feet over two seasons: 20 + 30 + 12 lb of 120 feet, all in week 19. 3 hours of raising and
    /// 21.96 of growing for those 120 feet: 0.208 over 52 weeks. One of the first planting's two beds was dug out.
    /// </summary>
    [Fact]
    public void Perennial_OfSeveralPlantings_GivesTheMeanOfAllTheirFeet()
    {
        FarmBuilder farm = Farm()
            .Perennial("Rhubarb")
            .Planting("R1", "Rhubarb", "A", 30m, "2024-03-01")
            .Planting("R1", "Rhubarb", "B", 10m, "2024-03-01", "2025-10-01")
            .Planting("R2", "Rhubarb", "C", 20m, "2024-03-01")
            .Pick("2024-05-15", "R1", 20m)
            .Pick("2025-05-15", "R1", 30m)
            .Pick("2025-05-15", "R2", 12m)
            .Work("2025-04-03", "Ann", 3m, "seeding", planting: "R1")
            .Work("2025-11-20", "Ann", 21.96m, "weeding", planting: "R2");
        PlanSowing rhubarb = Assert.Single(PlanByHandTests.SowingsOf(PlanByHandTests.ModelOf(farm), "Rhubarb"));
        Assert.Equal(62.0 / 120.0, rhubarb.Yield[19], 9);
        Assert.Equal(62.0 / 120.0, rhubarb.Yield.Sum(), 9);
        Assert.All(rhubarb.Hours, hours => Assert.Equal(0.004, hours, 9));
        Assert.Equal([("R1", "A", 30.0), ("R2", "C", 20.0)], rhubarb.Standing.Select(bed => (bed.Planting, bed.Bed, bed.BedFeet)));
        Assert.Equal((50.0, 50.0), rhubarb.Bounds);
    }

    /// <summary>All is fallow in the season: a change needs bring nothing, since nothing says what a foot brings.</summary>
    [Fact]
    public void Change_AfterAFallowSeason_NeedsBringNothing()
    {
        static bool Of2024(string? planting) => planting?.EndsWith("24", StringComparison.Ordinal) == true;
        FarmBuilder farm = Farm()
            .Without<PlantingRow>(row => !Of2024(row.Planting))
            .Without<HarvestRow>(row => !Of2024(row.Planting))
            .Without<ExpenseRow>(row => row.Planting == "G25")
            .Without<SaleRow>(row => row.Date.Year != 2024 || row.Crop == "Spinach");
        PlanModel model = PlanByHandTests.ModelOf(farm);
        Assert.Equal(0.0, model.ChangeCost);
        Assert.NotEmpty(model.Sowings);
    }

    private static FarmBuilder Farm() =>
        new FarmBuilder(new FarmSettings { OwnerWage = 10m })
            .AsOf("2025-12-31")
            .Bed("A", 200m)
            .Bed("B", 200m)
            .Bed("C", 200m)
            .Bed("D", 200m)
            .Bed("E", 200m)
            .Bed("F", 200m)
            .Crop("Mache")
            .Crop("Spinach")
            .Crop("Leeks")
            .Crop("Garlic")
            .Crop("Parsnips")
            .Crop("Scallions")
            .Channel("Market", ChannelKind.Market)
            .Spend("2024-06-01", 9m, "fuel")
            .Spend("2025-06-01", 9m, "fuel")
            .Worker("Ann", WorkerKind.Owner)
            .Work("2024-06-01", "Ann", 1m, "office")
            .Work("2025-06-01", "Ann", 1m, "office")
            .Planting("M24", "Mache", "A", 50m, "2024-01-03", "2024-03-10", cropYear: 2024)
            .Pick("2024-03-01", "M24", 25m)
            .Planting("M25", "Mache", "A", 50m, "2025-01-02", "2025-03-10", cropYear: 2025)
            .Pick("2025-03-01", "M25", 25m)
            .Planting("S25", "Spinach", "B", 100m, "2024-10-16", "2024-12-20", cropYear: 2025)
            .Pick("2024-11-27", "S25", 50m)
            .Sell("2024-11-28", "Spinach", "Market", 50m, price: 2m)
            .Planting("S26", "Spinach", "B", 40m, "2025-11-27", "2026-02-10", cropYear: 2026)
            .Planting("S26", "Spinach", "C", 20m, "2025-11-20", "2026-02-10", cropYear: 2026)
            .Planting("L24", "Leeks", "C", 50m, "2024-10-07", "2025-01-10", cropYear: 2024)
            .Pick("2024-12-30", "L24", 30m)
            .Sell("2024-12-30", "Leeks", "Market", 30m, price: 3m)
            .Planting("G24", "Garlic", "D", 40m, "2023-10-16", "2024-07-20", cropYear: 2024)
            .Pick("2024-07-18", "G24", 60m)
            .Sell("2024-07-20", "Garlic", "Market", 60m, price: 2m)
            .Spend("2024-01-10", 20m, "seed", planting: "G24")
            .Planting("G25", "Garlic", "D", 40m, "2024-10-16", "2025-07-20", cropYear: 2025)
            .Pick("2025-07-18", "G25", 60m)
            .Sell("2025-07-20", "Garlic", "Market", 60m, price: 3m)
            .Spend("2025-01-10", 20m, "seed", planting: "G25")
            .Planting("P25", "Parsnips", "E", 40m, "2025-06-01", "2026-03-01", cropYear: 2025)
            .Pick("2025-11-01", "P25", 20m)
            .Planting("P25b", "Parsnips", "E", 10m, "2025-06-15", "2025-10-01", cropYear: 2025)
            .Planting("P25b", "Parsnips", "F", 10m, "2025-06-15", "2026-03-01", cropYear: 2025)
            .Planting("C25", "Scallions", "F", 30m, "2025-10-01", "2025-12-31", cropYear: 2025);
}
