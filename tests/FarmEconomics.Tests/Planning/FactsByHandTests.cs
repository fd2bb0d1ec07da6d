using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// What a plan takes from a season with a nursery, a store, boxes, garlic that comes in the fall before and rhubarb that stays, worked by
/// hand (docs/methods.md, section 20). Bed W is twice as wide as the standard; T lies in a tunnel.
/// </summary>
public class FactsByHandTests
{
    // Worked out for every test, not kept: a mutation tester sees only what happens while a test runs.
    private static PlanModel Model => ModelOf(Farm());

    private static PlanSowing[] Of(string crop) => PlanByHandTests.SowingsOf(Model, crop);

    private static PlanCrop Crop(string name) => Model.Crops.Single(crop => crop.Name == name);

    /// <summary>
    /// Leeks: in bed on May 1 (day 120: week 17), out on August 28: 119 days, 17 weeks. Sown 28 days before: 4 weeks in the nursery. Picked
    /// 80 lb 98 days on and 40 lb 112 days on, weeks 14 and 16 of them, of 100 feet.
    /// </summary>
    [Fact]
    public void Sowing_FromTheNursery_StandsGivesAndTakesAsItDid()
    {
        PlanSowing leeks = Assert.Single(Of("Leeks"));
        Assert.Equal((17, 17, 4, 0, 100.0), (leeks.Week, leeks.WeeksInBed, leeks.NurseryWeeks, leeks.Cover, leeks.Today));
        Near(leeks.Yield, (31, 0.8), (33, 0.4));
        Near(leeks.Trays, (13, 0.05), (14, 0.05), (15, 0.05), (16, 0.05));
        Assert.Equal(((double?)null, 0.0, (0.0, double.PositiveInfinity)), (leeks.Later, leeks.LaterUnits, leeks.Bounds));

        // 4 hours of raising over four weeks; 6 of growing, all logged in the first week, which then counts 20 of 20 + 16.
        Near(
            leeks.Hours,
            [
                .. Enumerable.Range(13, 4).Select(week => (week, 0.01)),
                (17, 0.06 * 20.0 / 36.0),
                .. Enumerable.Range(18, 16).Select(week => (week, 0.06 / 36.0)),
            ]
        );

        // Seed 50 over 100 feet; straw 34 over 1,700 bed-foot-weeks, 17 of them a foot.
        Assert.Equal(0.5 + 0.34, leeks.Cost, 9);
    }

    /// <summary>
    /// 12 hours picked 120 lb; packaging 12 over 120 picked, card fees 6 over 120 sold; 21 days in store are 3 weeks, a year all.
    /// </summary>
    [Fact]
    public void Crop_TakesHandlingAndPackagingByTheUnit()
    {
        PlanCrop leeks = Crop("Leeks");
        Assert.Equal(
            (0.1, 0.1, 0.05, 3, 10.0),
            (
                Math.Round(leeks.HandlingHours, 9),
                Math.Round(leeks.PickedCost, 9),
                Math.Round(leeks.SoldCost, 9),
                leeks.Keeps,
                leeks.UnitsPerCrate
            )
        );
        PlanCrop garlic = Crop("Garlic");
        Assert.Equal((52, 0.0, 0.0), (garlic.Keeps, garlic.HandlingHours, garlic.SoldCost));
        Assert.Equal(("Alliums", null), (leeks.Family, Crop("Rhubarb").Family));
        Assert.Equal((0.0, double.PositiveInfinity), leeks.Wish);
        PlanSettings wishes = new() { Least = Named(" leeks", 25m), Most = Named("LEEKS", 60m) };
        Assert.Equal((25.0, 60.0), ModelOf(Farm(), wishes).Crops[0].Wish);
    }

    /// <summary>
    /// Garlic came in on October 16, 77 days before its crop year: week 41 of the year before. 60 lb of 40 feet, picked after the year
    /// planned; sold at 3, less 20 of seed, it added 160 over 40 feet. The seed, 0.50 a foot, is bought in the year planned all the same:
    /// it earns 4.50 then, before it. That of October 2025 stands, to be picked 275 days on: week 28.
    /// </summary>
    [Fact]
    public void Garlic_OfTheFallBefore_IsSownForTheYearAfterAndStandsForThisOne()
    {
        PlanSowing[] garlic = Of("Garlic");
        Assert.Equal(2, garlic.Length);
        PlanSowing sown = garlic[0], stands = garlic[1];
        Assert.Equal((41, 40, 1, 40.0, 0.5), (sown.Week, sown.WeeksInBed, sown.Cover, sown.Today, sown.Cost));
        Assert.Equal((4.5, 1.5), (Math.Round(sown.Later!.Value, 9), sown.LaterUnits));
        Assert.Equal(0.0, sown.Yield.Sum());
        Assert.Empty(sown.Standing);

        Assert.Equal((-11, 40, 1, 0.0, 0.0, null), (stands.Week, stands.WeeksInBed, stands.Cover, stands.Today, stands.Cost, stands.Later));
        Assert.Equal((40.0, 40.0), stands.Bounds);
        Near(stands.Yield, (28, 1.5));
        Assert.Equal(
            new StandingBed("G26", "T", 40.0, new DateOnly(2025, 10, 16)) { Out = new DateOnly(2026, 7, 20) },
            Assert.Single(stands.Standing)
        );
        Assert.True(stands.Holds(0) && stands.Holds(28) && !stands.Holds(29));
    }

    /// <summary>
    /// Rhubarb: 20 feet of the wide bed are 40; 30 lb on May 15 (day 134: week 19); 5.2 hours over 52 weeks; compost 26 over 40 feet.
    /// </summary>
    [Fact]
    public void Perennial_StaysAsItStands()
    {
        PlanSowing rhubarb = Assert.Single(Of("Rhubarb"));
        Assert.Equal((-1, 53, 0, 40.0), (rhubarb.Week, rhubarb.WeeksInBed, rhubarb.Cover, rhubarb.Today));
        Assert.Equal((40.0, 40.0), rhubarb.Bounds);
        Near(rhubarb.Yield, (19, 0.75));
        Assert.All(rhubarb.Hours, hours => Assert.Equal(0.0025, hours, 9));
        Assert.Equal(0.65, rhubarb.Cost, 9);
        Assert.Equal(("R", "W", 40.0), (rhubarb.Standing[0].Planting, rhubarb.Standing[0].Bed, rhubarb.Standing[0].BedFeet));
        Assert.Null(rhubarb.Later);

        // Dug out in the fall, it stands no longer.
        FarmBuilder farm = Farm();
        farm.Set(farm.Tables.Plantings[0], PlantingRow.OutOfBedColumn, new DateOnly(2025, 10, 1));
        Assert.DoesNotContain(ModelOf(farm).Sowings, sowing => sowing.Crop == 2);
    }

    /// <summary>A and the double W in the open, T in the tunnel; a bed taken up by March is there until then.</summary>
    [Fact]
    public void Covers_HoldTheirBedsAtTheStandardWidth()
    {
        Assert.Equal(["open field", "Tunnel"], Model.Covers.Select(cover => cover.Name));
        Assert.All(Model.Covers[0].Feet, feet => Assert.Equal(200.0, feet));
        Assert.All(Model.Covers[1].Feet, feet => Assert.Equal(40.0, feet));
        FarmBuilder farm = Farm().Bed("Old", 30m);
        farm.Set(farm.Tables.Beds[3], BedRow.ToColumn, new DateOnly(2026, 3, 1));

        // The middle of week 8 is March 1: 26 February and three days.
        Assert.Equal([230.0, 230.0, 200.0], new[] { 0, 8, 9 }.Select(week => ModelOf(farm).Covers[0].Feet[week]));
    }

    /// <summary>
    /// Boxes: 10 lb at 4 on August 8 (week 31), 20 at 4 on August 22 (week 33): worth 40 and 80. Members paid 100, 50 a delivery week.
    /// </summary>
    [Fact]
    public void Boxes_AreToHoldWhatTheyHeldUpToWhatWasPaid()
    {
        Near(Model.BoxTarget, (31, 40.0), (33, 50.0));
        Assert.Equal(20.0, Crop("Leeks").BoxMost);
        Near(Crop("Leeks").BoxValue, (31, 4.0), (33, 4.0));
        Assert.Equal(0.0, Crop("Garlic").BoxMost);
        Assert.Equal(1.0, Model.BuyIn, 9);
        Assert.Equal(1.25, ModelOf(Farm().With(settings => settings with { BuyInPercent = 125m })).BuyIn, 9);
    }

    /// <summary>
    /// 80 lb are 8 crates on August 7, 7 on the 8th and 9th once 10 lb are boxed, none from the 10th, when the rest is sold: 22 over the
    /// week of August 6, 8 over 22/7. The 4 crates of August 21 make a mean under one crate, which doesn't count.
    /// </summary>
    [Fact]
    public void Store_IsFullerThanItsMeanAsItWas()
    {
        PlanStore store = Assert.Single(Model.Stores);
        Assert.Equal("Cooler", store.Name);
        Assert.All(store.Crates, crates => Assert.Equal(30.0, crates));
        Assert.Equal(8.0 / (22.0 / 7.0), store.PeakOverMean, 9);
        Assert.Equal([1.0], Crop("Leeks").InStore);
        Assert.All(Model.Trays!, trays => Assert.Equal(50.0, trays));
        Assert.Null(ModelOf(PlanByHandTests.Farm()).Trays);
        Assert.Empty(ModelOf(PlanByHandTests.Farm()).Stores);
    }

    /// <summary>
    /// Sold: leeks 90 at 3 and members' 100, garlic 180, rhubarb 60: 610 over 100 + 40 + 40 feet; a change must bring a twentieth of that.
    /// </summary>
    [Fact]
    public void Change_MustBringATwentiethOfWhatAFootBrings() => Assert.Equal(0.05 * 610.0 / 180.0, Model.ChangeCost, 9);

    /// <summary>
    /// On June 1 of the year planned what has come in by then stands, with its harvest to come: leeks of May 14 (day 133: week 19), ripe
    /// in weeks 33 and 35. Those of June 15 don't yet.
    /// </summary>
    [Fact]
    public void Standing_DuringTheYearPlanned_IsWhatHasComeIn()
    {
        FarmBuilder farm = Farm()
            .AsOf("2026-06-01")
            .Planting("L26", "Leeks", "A", 50m, "2026-05-14", "2026-09-10", cropYear: 2026)
            .Planting("L26b", "Leeks", "A", 50m, "2026-06-15", "2026-10-10", cropYear: 2026);
        PlanModel model = ModelOf(farm);
        PlanSowing stands = Assert.Single(model.Sowings, sowing => sowing.Crop == 0 && sowing.Standing.Count > 0);
        Assert.Equal((19, "L26", (50.0, 50.0)), (stands.Week, stands.Standing[0].Planting, stands.Bounds));
        Near(stands.Yield, (33, 0.8), (35, 0.4));
    }

    /// <summary>
    /// 10 hours in the week 100 feet of beets come in, 2 in each of the 12 after: 0.02 a foot to weed, 0.08 more to plant, so that the
    /// first week counts 5 of 17: 34 hours are 0.34 a foot.
    /// </summary>
    [Fact]
    public void FirstWeek_CountsAsLeastSquaresHaveIt()
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { OwnerWage = 10m, InterestPercent = 5m })
            .AsOf("2025-12-31")
            .Bed("A")
            .Crop("Beets")
            .Channel("Market", ChannelKind.Market)
            .Worker("Ann", WorkerKind.Owner)
            .Spend("2025-04-01", 10m, "seed")
            .Planting("B25", "Beets", "A", 100m, "2025-05-01", "2025-07-31")
            .Pick("2025-07-24", "B25", 100m)
            .Sell("2025-07-25", "Beets", "Market", 100m, price: 2m)
            .Work("2025-05-01", "Ann", 10m, "grow", crop: "Beets");
        for (int week = 1; week <= 12; week++)
        {
            farm.Work($"{new DateOnly(2025, 5, 1).AddDays(7 * week):yyyy-MM-dd}", "Ann", 2m, "grow", crop: "Beets");
        }

        PlanSowing beets = Assert.Single(ModelOf(farm).Sowings);
        Near(beets.Hours, [(17, 0.34 * 5.0 / 17.0), .. Enumerable.Range(18, 12).Select(week => (week, 0.02))]);
    }

    /// <summary>
    /// Without owner_wage an own hour is worth what workers says of those of the last season that has some with a wage: 3 hours at 20 and 1
    /// at 12 are 72 in 4 hours, 18; those of Ann, who has no wage, say nothing.
    /// </summary>
    [Fact]
    public void OwnHour_WithoutASetting_IsWorthWhatWorkersSays()
    {
        FarmBuilder farm = PlanByHandTests.Farm().With(settings => settings with { OwnerWage = null });
        Assert.Equal(0.0, PlanByHandTests.ModelOf(farm).Hours.OwnCost);

        farm.Worker("Eve", WorkerKind.Owner, 20m).Worker("Jo", WorkerKind.Owner, 12m)
            .Work("2025-07-10", "Eve", 3m, "harvest", crop: "Carrots").Work("2025-07-11", "Jo", 1m, "harvest", crop: "Carrots");

        Assert.Equal(18.0, Math.Round(PlanByHandTests.ModelOf(farm).Hours.OwnCost, 9));
        farm.Work("2024-07-10", "Jo", 9m, "harvest", crop: "Carrots"); // 12 an hour the season before
        Assert.Equal(18.0, Math.Round(PlanByHandTests.ModelOf(farm).Hours.OwnCost, 9));
        Assert.Equal(7.0, PlanByHandTests.ModelOf(farm, new PlanSettings { OwnWage = 7m }).Hours.OwnCost);
    }

    /// <summary>
    /// A hired hour costs what the last season that paid some did: 5 hours of 2024 at 18 and a tenth on top, though 20 is written for 2025;
    /// without any, the wage written last. 5 is the most hired in a week.
    /// </summary>
    [Fact]
    public void HiredHour_CostsWhatTheLastSeasonPaid()
    {
        FarmBuilder farm = PlanByHandTests
            .Farm()
            .With(settings => settings with { PayrollBurdenPercent = 10m })
            .Worker("Bo", WorkerKind.Hired, 18m)
            .Worker("Bo", WorkerKind.Hired, 20m, "2025-01-01");
        PlanHours none = PlanByHandTests.ModelOf(farm).Hours;
        Assert.Equal((22.0, 0.0), (Math.Round(none.HiredCost, 9), none.Hired[30]));
        PlanHours paid = PlanByHandTests.ModelOf(farm.Work("2024-07-10", "Bo", 5m, "harvest", crop: "Carrots")).Hours;
        Assert.Equal((19.8, 5.0, 15.0), (Math.Round(paid.HiredCost, 9), paid.Hired[30], paid.OwnCost));
        Assert.Equal(7.0, PlanByHandTests.ModelOf(farm, new PlanSettings { OwnWage = 7m }).Hours.OwnCost);
    }

    private static Dictionary<string, decimal> Named(string crop, decimal feet) => new() { [crop] = feet };

    private static void Near(IReadOnlyList<double> weeks, params (int Week, double Value)[] expected)
    {
        Assert.Equal(PlanModel.Weeks, weeks.Count);
        for (int week = 0; week < weeks.Count; week++)
        {
            double there = expected.Where(one => one.Week == week).Sum(one => one.Value);
            Assert.True(Math.Abs(there - weeks[week]) < 1e-9, $"week {week}: expected {there}, got {weeks[week]}");
        }
    }

    private static PlanModel ModelOf(FarmBuilder farm, PlanSettings? settings = null) => PlanByHandTests.ModelOf(farm, settings);

    internal static FarmBuilder Farm()
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { OwnerWage = 10m, InterestPercent = 5m, BuyInPercent = 100m })
            .AsOf("2025-12-31")
            .Bed("A")
            .Bed("W", 50m, width: 60m)
            .Bed("T", 40m, structure: "Tunnel")
            .Crop("Leeks", perCrate: 10m, storageDays: 21m, store: "Cooler")
            .Crop("Garlic")
            .Perennial("Rhubarb")
            .Channel("Market", ChannelKind.Market)
            .Channel("Box", ChannelKind.Share)
            .Worker("Ann", WorkerKind.Owner)
            .Pool("Cooler", "crate-days")
            .Pool("Nursery", "tray-days")
            .Limit("Cooler", 30m, "crates")
            .Limit("Nursery", 50m, "trays")
            .Category("straw", ExpenseClass.Operating, StatementLine.Materials, "fertility and crop supplies", CostDriver.BedTime)
            .Price("Leeks", 4m, "Box")
            .Planting("R", "Rhubarb", "W", 20m, "2024-03-01")
            .Planting("G25", "Garlic", "T", 40m, "2024-10-16", "2025-07-20", cropYear: 2025)
            .Planting("L25", "Leeks", "A", 100m, "2025-05-01", "2025-08-28", sown: "2025-04-03", trays: 5m)
            .Planting("G26", "Garlic", "T", 40m, "2025-10-16", "2026-07-20", cropYear: 2026)
            .Pick("2025-05-15", "R", 30m)
            .Pick("2025-07-18", "G25", 60m)
            .Pick("2025-08-07", "L25", 80m)
            .Pick("2025-08-21", "L25", 40m)
            .Sell("2025-05-16", "Rhubarb", "Market", 30m, price: 2m)
            .Sell("2025-07-19", "Garlic", "Market", 60m, price: 3m)
            .Sell("2025-08-08", "Leeks", "Box", 10m)
            .Sell("2025-08-10", "Leeks", "Market", 70m, price: 3m)
            .Sell("2025-08-22", "Leeks", "Box", 20m)
            .Sell("2025-08-22", "Leeks", "Market", 20m, price: 3m)
            .Income("2025-03-01", "Box", 100m)
            .Spend("2025-01-10", 20m, "seed", crop: "Garlic")
            .Spend("2025-03-01", 50m, "seed", crop: "Leeks")
            .Spend("2025-05-02", 34m, "straw", crop: "Leeks")
            .Spend("2025-08-07", 12m, "packaging", crop: "Leeks")
            .Spend("2025-08-10", 6m, "card fees", crop: "Leeks")
            .Spend("2025-04-01", 26m, "compost", crop: "Rhubarb")
            .Work("2025-04-03", "Ann", 4m, "seeding", crop: "Leeks")
            .Work("2025-05-01", "Ann", 6m, "grow", crop: "Leeks")
            .Work("2025-08-07", "Ann", 12m, "harvest", crop: "Leeks")
            .Work("2025-11-20", "Ann", 5.2m, "weeding", crop: "Rhubarb");
        farm.Set(farm.Tables.Crops[0], CropRow.FamilyColumn, " Alliums ");
        return farm;
    }
}
