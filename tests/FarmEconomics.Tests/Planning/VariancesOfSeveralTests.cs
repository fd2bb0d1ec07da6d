using FarmEconomics.Planning.Variances;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// A plan of several plantings, crops and channels beside its season, by hand (docs/methods.md, section 20). Carrots: 60 feet of A for 120
/// lb, 12 hours and 30 money, 20 of the double bed W for 80 lb, 4 hours and 10 money: 100 feet, 200 lb, 16 hours, 40. An hour cost 12 in
/// 2024. Sold: 130 at 2 less 10% over two weeks and 20 later, 50 into boxes at 3: 420. Planned 420 - 192 - 40 = 188.
/// </summary>
public class VariancesOfSeveralTests
{
    /// <summary>
    /// Came: 200 lb, a fifth of all that grew culled as in 2024; 140 sold at 2.50 less 10%, 315, 50 boxed at 3, 150, 10 given away; 1 + 9 +
    /// 4 + 4 = 18 hours at 18, 324; 30 of seed and 8 of packaging: 103. Sold 190 of 200: 399 - 232 = 167, -21. Mix: 140 x 1.80 + 150 = 402,
    /// +3. Price: +63. 2 hours more at 12: -24. 18 hours at 6 more: -108. Supplies: +2.
    /// </summary>
    [Fact]
    public void Parts_OfACropOfTwoPlantings_AreOfBothTogether()
    {
        CropVariance carrots = Year().Crops[0];
        Assert.Equal(("Carrots", 188m, 103m), (carrots.Crop, carrots.Planned.Amount, carrots.Actual.Amount));
        Assert.Equal(
            [
                (VarianceKind.PartSold, -21m),
                (VarianceKind.ChannelMix, 3m),
                (VarianceKind.Price, 63m),
                (VarianceKind.Hours, -24m),
                (VarianceKind.Wage, -108m),
                (VarianceKind.Spending, 2m),
            ],
            Told(carrots)
        );
    }

    /// <summary>
    /// Arugula, 36 - 12 - 5 = 19, was planned and not grown; beets, in bed from December 2 to January 31, are half done at the year's end:
    /// 1 of their 2 hours, 19 as well; kale was grown unplanned, 30 less 10% and one hour at the market, 9. Garlic is planned for 2026. The
    /// records go on to March; the season ended in December.
    /// </summary>
    [Fact]
    public void Crops_PlannedOrGrownAlone_StandByTheirDifference()
    {
        PlanVariances year = Year();
        Assert.Equal(
            [("Carrots", 188m, 103m), ("Arugula", 19m, 0m), ("Beets", 19m, 0m), ("Kale", 0m, 9m)],
            year.Crops.Select(crop => (crop.Crop, crop.Planned.Amount, crop.Actual.Amount))
        );
        Assert.Equal([(VarianceKind.Area, -19m)], Told(year.Crops[1]));
        Assert.Equal([(VarianceKind.Rest, 9m)], Told(year.Crops[3]));
        Assert.Equal((false, new DateOnly(2025, 12, 31)), (year.IsPartOfYear, year.UpTo));
        Assert.Equal((226m, 226m, 112m), (year.Planned.Amount, year.YearPlanned.Amount, year.Outlook.Amount));
    }

    /// <summary>
    /// Closed on July 16: 75 of 90 days in A, 45 of 90 in W: 100 + 40 lb, 10 + 2 hours. Half of the market's first 130, none of its 20 or
    /// of the boxes: 117 - 144 - 40 = -67. Arugula is to come in that day: not yet. 150 lb grew of 175: 120 of 140 are left, 6/7 of 117 -
    /// 144, less 40: -63.14, so the yield saves 3.86. Came: 225 - 324 - 38 = -137, and kale's 9.
    /// </summary>
    [Fact]
    public void Parts_DuringTheSeason_AreOfThePlanUpToThen()
    {
        PlanVariances now = PlanVariances.Of(Farm().AsOf("2025-07-16").Season(2025))!;
        Assert.Equal(
            [("Carrots", -67m, -137m), ("Kale", 0m, 9m)],
            now.Crops.Select(crop => (crop.Crop, crop.Planned.Amount, crop.Actual.Amount))
        );
        Assert.Equal(3.86m, now.Crops[0].Parts[VarianceKind.Yield].Amount);
        Assert.Equal((226m, -128m + 226m + 67m), (now.YearPlanned.Amount, now.Outlook.Amount));
        Assert.Equal((true, new DateOnly(2025, 7, 16)), (now.IsPartOfYear, now.UpTo));
    }

    /// <summary>
    /// A row of 0 hours in 2024 tells no cost: an hour is planned at 2025's 18 instead, 188 - 16 x 6 = 92. All of 2024's culled tells no
    /// part: 2025's own, a fifth as well.
    /// </summary>
    [Fact]
    public void Before_WhereItTellsNothing_TheSeasonItselfDoes()
    {
        PlanVariances year = PlanVariances.Of(Farm(hours: 0m, kept: 0m).Season(2025))!;
        CropVariance carrots = year.Crops.Single(crop => crop.Crop == "Carrots");
        Assert.Equal(92m, carrots.Planned.Amount);
        Assert.Equal(
            [VarianceKind.PartSold, VarianceKind.ChannelMix, VarianceKind.Price, VarianceKind.Hours, VarianceKind.Spending],
            Told(carrots).Select(part => part.Item1)
        );
    }

    /// <summary>A bed that isn't on file counts as it is planned; a season without any record has no plan beside it.</summary>
    [Fact]
    public void Plan_InABedNotOnFile_CountsItsFeet()
    {
        FarmBuilder farm = Farm();
        farm.Set(farm.Tables.Plan[0], PlanRow.BedColumn, "New");
        Assert.Equal(188m, PlanVariances.Of(farm.Season(2025))!.Crops[0].Planned.Amount);
        Assert.Equal(0m, PlanVariances.Of(farm.Season(2025))!.Crops[0].Parts[VarianceKind.Area].Amount);
        Assert.Null(PlanVariances.Of(Farm().Season(2022)));
    }

    private static PlanVariances Year() => PlanVariances.Of(Farm().Season(2025))!;

    private static IEnumerable<(VarianceKind, decimal)> Told(CropVariance crop) =>
        crop.Parts.Where(part => part.Value.Amount != 0m).Select(part => (part.Key, part.Value.Amount));

    private static FarmBuilder Farm(decimal hours = 10m, decimal kept = 1m)
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { InterestPercent = 5m })
            .AsOf("2026-03-01")
            .Bed("A")
            .Bed("W", 50m, width: 60m)
            .Crop("Carrots")
            .Crop("Arugula")
            .Crop("Beets")
            .Crop("Kale")
            .Crop("Garlic")
            .Channel("Market", ChannelKind.Market, fee: 10m)
            .Channel("Boxes", ChannelKind.Share)
            .Channel("Compost", ChannelKind.Waste)
            .Worker("Bo", WorkerKind.Hired, 12m)
            .Worker("Bo", WorkerKind.Hired, 18m, "2025-01-01")
            .Price("Carrots", 3m, "Boxes")
            .Income("2025-02-01", "Boxes", 100m);
        Before(farm, hours, kept);
        Season(farm);
        return Plan(farm);
    }

    // 2024: 15 of 75 and 5 of 25 lb culled, unless none is kept; the rest sold within the year, so that none of it is left for 2025.
    private static void Before(FarmBuilder farm, decimal hours, decimal kept)
    {
        farm.Planting("C24", "Carrots", "A", 60m, "2024-05-01", "2024-07-31")
            .Pick("2024-07-10", "C24", 60m * kept, culled: 15m)
            .Pick("2024-07-17", "C24", 20m * kept, culled: 5m)
            .Spend("2024-04-20", 9m, "seed", crop: "Carrots")
            .Work("2024-05-01", "Bo", hours, "grow", crop: "Carrots");
        if (kept > 0m)
        {
            farm.Sell("2024-07-20", "Carrots", "Market", 80m * kept, price: 2m);
        }
    }

    private static void Season(FarmBuilder farm) =>
        farm.Planting("C25a", "Carrots", "A", 60m, "2025-05-02", "2025-07-31")
            .Planting("C25b", "Carrots", "W", 20m, "2025-06-01", "2025-08-30")
            .Planting("K25", "Kale", "A", 10m, "2025-05-02", "2025-06-30")
            .Pick("2025-06-20", "K25", 10m)
            .Pick("2025-07-09", "C25a", 120m, culled: 30m)
            .Pick("2025-08-07", "C25b", 80m, culled: 20m)
            .Sell("2025-06-21", "Kale", "Market", 10m, price: 3m)
            .Sell("2025-07-12", "Carrots", "Market", 100m, price: 2.5m)
            .Sell("2025-08-08", "Carrots", "Boxes", 50m)
            .Sell("2025-08-09", "Carrots", "Market", 40m, price: 2.5m)
            .Sell("2025-08-10", "Carrots", "Compost", 10m)
            .Spend("2025-04-20", 30m, "seed", crop: "Carrots")
            .Spend("2025-07-09", 8m, "packaging", crop: "Carrots")
            .Work("2025-04-20", "Bo", 1m, "seeding", crop: "Carrots")
            .Work("2025-05-02", "Bo", 9m, "grow", crop: "Carrots")
            .Work("2025-07-09", "Bo", 4m, "harvest", crop: "Carrots")
            .Work("2025-07-09", "Bo", 4m, "pack", crop: "Carrots")
            .Work("2025-06-21", "Bo", 1m, "market", crop: "Kale");

    private static FarmBuilder Plan(FarmBuilder farm)
    {
        Row(farm, 2025, "Carrots", ("A", 60m), ("2025-05-02", "2025-07-31"), (120m, 12m, 30m));
        Row(farm, 2025, "Carrots", ("W", 20m), ("2025-06-01", "2025-08-30"), (80m, 4m, 10m));
        Row(farm, 2025, "Beets", ("A", 10m), ("2025-12-02", "2026-01-31"), (40m, 2m, 5m));
        Row(farm, 2025, "Arugula", ("A", 10m), ("2025-07-16", "2025-09-14"), (20m, 1m, 5m));
        Row(farm, 2026, "Garlic", ("A", 10m), ("2025-10-16", "2026-07-20"), (50m, 5m, 20m));
        Sale(farm, "Carrots", "Market", (130m, 2m), "2025-07-09", 2);
        Sale(farm, "Carrots", "Market", (20m, 2m), "2025-08-13", 1);
        Sale(farm, "Carrots", "Boxes", (50m, 3m), "2025-08-07", 1);
        Sale(farm, "Beets", "Market", (20m, 2m), "2025-12-20", 1);
        Sale(farm, "Arugula", "Market", (20m, 2m), "2025-09-01", 1);
        return farm;
    }

    /// <summary>A row of the plan, for tests of variances.</summary>
    internal static void Row(
        FarmBuilder farm,
        int year,
        string crop,
        (string Bed, decimal Feet) where,
        (string In, string Out) days,
        (decimal Yield, decimal? Hours, decimal? Cost) told
    ) =>
        farm.Add<PlanRow>(
            new RowValues
            {
                ["crop_year"] = year,
                ["planting"] = $"{crop} {year} {days.In}",
                ["crop"] = crop,
                ["bed"] = where.Bed,
                ["bed_feet"] = where.Feet,
                ["in_bed"] = FarmBuilder.Day(days.In),
                ["out_of_bed"] = FarmBuilder.Day(days.Out),
                ["yield"] = told.Yield,
                ["hours"] = told.Hours,
                ["cost"] = told.Cost,
            }
        );

    /// <summary>A row of what the plan sells from a day on, a week or several.</summary>
    internal static void Sale(FarmBuilder farm, string crop, string channel, (decimal Units, decimal Price) told, string from, int weeks) =>
        farm.Add<PlanSaleRow>(
            new RowValues
            {
                ["crop_year"] = 2025,
                ["crop"] = crop,
                ["channel"] = channel,
                ["quantity"] = told.Units,
                ["price"] = told.Price,
                ["from"] = FarmBuilder.Day(from),
                ["weeks"] = (decimal)weeks,
            }
        );
}
