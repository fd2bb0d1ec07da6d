using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>A plan's rows laid into beds, repeated, read from file, and the limits that only a plan is held to, worked by hand.</summary>
public class PlanRowsByHandTests
{
    /// <summary>
    /// The farm of <see cref="PlanByHandTests"/>: 100 feet of carrots again, from April 30 for 13 weeks, at 1.5 lb a foot instead of the 2
    /// of last year, so that each sale of 100 lb is one of 75. Hours 100 x (0.1 + 1.5 x 0.025), seed 100 x 0.25.
    /// </summary>
    [Fact]
    public void LikeLastYear_RepeatsTheSeasonAtTheYieldExpected()
    {
        PlanDraft draft = LikeLastYear.Of(PlanByHandTests.Farm().Season(2025), PlanByHandTests.ModelOf(PlanByHandTests.Farm()));
        DraftPlanting one = Assert.Single(draft.Plantings);
        Assert.Equal((2026, "Carrots 2026-1", "Carrots", "A", 100m), (one.CropYear, one.Planting, one.Crop, one.Bed, one.BedFeet));
        Assert.Equal((new DateOnly(2026, 4, 30), new DateOnly(2026, 7, 30), null), (one.In, one.Out, one.Sown));
        Assert.Equal((150m, 13.75m, 25m, 0m), (one.Yield, one.Hours, one.Cost, one.Trays));
        Assert.Equal(
            [
                new DraftSale(2026, "Carrots", "Market", 75m, 2m, new DateOnly(2026, 7, 9)),
                new DraftSale(2026, "Carrots", "Market", 75m, 2m, new DateOnly(2026, 7, 16)),
            ],
            draft.Sales
        );
    }

    /// <summary>
    /// 40 lb more last year, 20 in boxes at a list price of 3 and 20 at the market for 20, and 10 more the year before: 240 and 110 lb of
    /// 100 feet each, 175 expected. Members have paid for their 20; 155 are left for the market's 220. Its week of July 16 took 120 for
    /// 220.
    /// </summary>
    [Fact]
    public void LikeLastYear_TakesEachChannelsWeekAtItsMeanPriceAndBoxesAtListValue()
    {
        FarmBuilder farm = PlanByHandTests.Farm().Pick("2025-07-17", "C25", 40m).Price("Carrots", 3m, "Boxes");
        farm.Pick("2024-07-10", "C24", 10m).Sell("2024-07-12", "Carrots", "Market", 10m, price: 2m);
        farm.Sell("2025-07-18", "Carrots", "Boxes", 20m).Sell("2025-07-18", "Carrots", "Market", 20m, price: 1m);
        farm.Price("Carrots", 9m, "Market");
        PlanDraft draft = LikeLastYear.Of(farm.Season(2025), PlanByHandTests.ModelOf(farm));
        Assert.Equal(
            [("Boxes", 20m, 3m, 16), ("Market", 70.455m, 2m, 9), ("Market", 84.545m, 1.8333m, 16)],
            draft.Sales.Select(sale => (sale.Channel, sale.Quantity, sale.Price, sale.From.Day))
        );
        Assert.Equal(175m, Assert.Single(draft.Plantings).Yield);
    }

    /// <summary>Beets stood all summer and were sold, but nobody wrote down a harvest: nothing is planned to be sold of them.</summary>
    [Fact]
    public void LikeLastYear_OfWhatWasSoldWithoutAHarvest_SellsNothing()
    {
        FarmBuilder farm = PlanByHandTests.Farm().Crop("Beets").Planting("B25", "Beets", "A", 20m, "2025-05-01", "2025-08-01");
        farm.Sell("2025-07-18", "Beets", "Market", 20m, price: 1m);
        PlanDraft draft = LikeLastYear.Of(farm.Season(2025), PlanByHandTests.ModelOf(farm));
        Assert.Equal(["Carrots"], draft.Sales.Select(sale => sale.Crop).Distinct());
    }

    /// <summary>
    /// Beds of 40 and 100 feet, and one of 50 twice as wide. 30 feet go where least is left over them (40), 100 into the 100, as many again
    /// into the wide one as 50 of its length; 60 find 10 beside the first and stand the rest where most room is, told by the outlook; when
    /// all are out again but the second, 120 take the wide bed whole and 20 of the first.
    /// </summary>
    [Fact]
    public void Draft_OfLengths_IsLaidWhereItFitsBest()
    {
        FarmRecords records = new FarmBuilder().Bed("A", 40m).Bed("B", 100m).Bed("C", 50m, width: 60m).Link();
        PlanModel model = SmallFarm.Of() with { Sowings = [Sowing(10, 5), Sowing(12, 5), Sowing(12, 3), Sowing(15, 2), Sowing(13, 2)] };
        PlanDraft draft = DraftMaker.Of(
            records,
            model,
            [30.0, 100.0, 100.0, 120.0, 60.0],
            PlanQuantities.OfSales(new Dictionary<(int, int), double> { [(0, 20)] = 102.5 }, [])
        );
        Assert.Equal(
            [
                ("A 2026-1", "A", 30m, 10),
                ("A 2026-2", "B", 100m, 12),
                ("A 2026-3", "C", 50m, 12),
                ("A 2026-4", "A", 10m, 13),
                ("A 2026-4", "A", 50m, 13),
                ("A 2026-5", "C", 50m, 15),
                ("A 2026-5", "A", 20m, 15),
            ],
            draft.Plantings.Select(one => (one.Planting, one.Bed, one.BedFeet, (one.In.DayNumber - new DateOnly(2026, 1, 1).DayNumber) / 7))
        );

        // 102.5 of the 410 ripe are picked: a quarter of a unit a foot; 2 money, 0.5 hours and 0.1 trays a foot, three weeks before.
        DraftPlanting wide = draft.Plantings[2];
        Assert.Equal((25m, 200m, 50m, 10m), (wide.Yield, wide.Cost, wide.Hours, wide.Trays));
        Assert.Equal((new DateOnly(2026, 3, 26), new DateOnly(2026, 3, 5), new DateOnly(2026, 4, 16)), (wide.In, wide.Sown, wide.Out));
    }

    /// <summary>A name that a planting on record has is passed over; under a quarter of a foot is no row.</summary>
    [Fact]
    public void Draft_Names_PassOverThoseOnRecord()
    {
        FarmRecords records = new FarmBuilder()
            .Crop("A")
            .Bed("A", 40m)
            .Planting("A 2026-1", "A", "A", 1m, "2025-05-01", "2025-06-01")
            .Link();
        PlanModel model = SmallFarm.Of() with { Sowings = [Sowing(10, 5), Sowing(20, 5)] };
        Assert.Equal(
            ["A 2026-2"],
            DraftMaker
                .Of(records, model, [0.25, 1.0], PlanQuantities.OfSales(new Dictionary<(int, int), double>(), []))
                .Plantings.Select(one => one.Planting)
        );
    }

    /// <summary>
    /// Rows of the year, and those of the year after that come in during it; a case of 12 lb at 30 is 24 lb at 2.50 in two.
    /// </summary>
    [Fact]
    public void OnFile_TakesTheYearsRowsAndWhatComesInForTheNext()
    {
        FarmBuilder farm = new FarmBuilder()
            .Crop("Carrots")
            .Unit("Carrots", "case", 12m)
            .Crop("Garlic")
            .Bed("A")
            .Channel("Market", ChannelKind.Market);
        Row(farm, 2026, "Carrots", "2026-05-01", "2026-07-31");
        Row(farm, 2027, "Garlic", "2026-10-15", "2027-07-20");
        Row(farm, 2027, "Carrots", "2027-05-01", "2027-07-31");
        Row(farm, 2027, "Garlic", "2027-01-01", "2027-07-20");
        farm.Add<PlanSaleRow>(
            new RowValues
            {
                ["crop_year"] = 2026,
                ["crop"] = "carrots",
                ["channel"] = "market",
                ["quantity"] = 2m,
                ["unit"] = "case",
                ["price"] = 30m,
                ["from"] = new DateOnly(2026, 7, 10),
                ["weeks"] = 3m,
            }
        );
        farm.Add<PlanSaleRow>(
            new RowValues
            {
                ["crop_year"] = 2027,
                ["crop"] = "Carrots",
                ["channel"] = "Market",
                ["quantity"] = 2m,
                ["price"] = 3m,
                ["from"] = new DateOnly(2027, 7, 10),
            }
        );
        FarmRecords records = farm.Link();

        Assert.Equal([2026, 2027], PlanOnFile.Years(records));
        PlanDraft draft = PlanOnFile.Of(records, 2026)!;
        Assert.Equal([(2026, "Carrots"), (2027, "Garlic")], draft.Plantings.Select(one => (one.CropYear, one.Crop)));
        Assert.Equal(
            (50m, 8m, null, 0m),
            (draft.Plantings[0].Yield, draft.Plantings[0].Hours, draft.Plantings[0].Cost, draft.Plantings[0].Trays)
        );
        Assert.Equal(new DraftSale(2026, "Carrots", "Market", 24m, 2.5m, new DateOnly(2026, 7, 10), 3), Assert.Single(draft.Sales));
        Assert.Equal(1, Assert.Single(PlanOnFile.Of(records, 2027)!.Sales).Weeks);
        Assert.Null(PlanOnFile.Of(records, 2025));
    }

    /// <summary>
    /// A plan for 2026 sets garlic in October that is lifted in 2027. That is the end of the plan of 2026 and none for 2027, until a sowing
    /// of 2027 or a sale of it is written; then the garlic is part of it.
    /// </summary>
    [Fact]
    public void OnFile_WhatThePlanBeforeSetInFallAlone_IsNoPlan()
    {
        static FarmBuilder Written()
        {
            FarmBuilder farm = new FarmBuilder().Crop("Carrots").Crop("Garlic").Bed("A").Channel("Market", ChannelKind.Market);
            Row(farm, 2026, "Carrots", "2026-05-01", "2026-07-31");
            Row(farm, 2027, "Garlic", "2026-10-15", "2027-07-20");
            return farm;
        }

        FarmRecords alone = Written().Link();
        Assert.Equal([2026], PlanOnFile.Years(alone));
        Assert.Null(PlanOnFile.Of(alone, 2027));

        FarmBuilder sown = Written();
        Row(sown, 2027, "Carrots", "2027-05-01", "2027-07-31");
        Assert.Equal(["Garlic", "Carrots"], PlanOnFile.Of(sown.Link(), 2027)!.Plantings.Select(one => one.Crop));

        FarmBuilder sold = Written();
        sold.Add<PlanSaleRow>(
            new RowValues
            {
                ["crop_year"] = 2027,
                ["crop"] = "Garlic",
                ["channel"] = "Market",
                ["quantity"] = 40m,
                ["price"] = 9m,
                ["from"] = new DateOnly(2027, 8, 1),
            }
        );
        FarmRecords records = sold.Link();
        Assert.Equal([2026, 2027], PlanOnFile.Years(records));
        Assert.Equal("Garlic", Assert.Single(PlanOnFile.Of(records, 2027)!.Plantings).Crop);
    }

    /// <summary>
    /// 1000 at the beginning; members' 300 in February, rent 500 in March, phone 120 and tax 70 in April, draws 33 in May, 45 in November;
    /// 2000 may be owed to June.
    /// </summary>
    [Fact]
    public void Cash_OfTheYearPlanned_IsTheSeasonsThatDoesNotVary()
    {
        PlanCash cash = PlanByHandTests
            .ModelOf(
                PlanByHandTests.Farm().Limit("Line of credit", 2000m, from: "2026-01-01", to: "2026-06-30"),
                new PlanSettings { OpeningCash = 1000m }
            )
            .Cash!;
        Assert.Equal(1000.0, cash.Opening);
        Assert.Equal([0.0, 300.0, -500.0, -190.0, -33.0, 0.0, 0.0, 0.0, 0.0, 0.0, 45.0, 0.0], cash.Fixed);
        Assert.Equal([2000.0, 2000.0, 2000.0, 2000.0, 2000.0, 2000.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0], cash.Line);
        Assert.Equal([0, 0, 1, 3, 4, 11], new[] { 0, 4, 5, 17, 18, 51 }.Select(week => cash.MonthOfWeek[week]));
        PlanModel without = PlanByHandTests.ModelOf(PlanByHandTests.Farm());
        Assert.Null(without.Cash);
        Assert.Contains("cash by month: no balance sheet says what cash there is at the beginning", without.NotChecked);
    }

    /// <summary>
    /// Customers owe 80 at the beginning: they pay in the first month, and 80 are owed again at the end; no cash, no such rows.
    /// </summary>
    [Fact]
    public void Cash_UnpaidInvoices_ComeInFirstAndComeOffLast()
    {
        FarmBuilder farm = PlanByHandTests.Farm();
        PlanSettings settings = new() { OpeningCash = 1000m, UnpaidInvoices = 80m };
        PlanModel model = PlanByHandTests.ModelOf(farm, settings);
        Assert.Equal([80.0, 300.0, -500.0, -190.0, -33.0, 0.0, 0.0, 0.0, 0.0, 0.0, 45.0, -80.0], model.Cash!.Fixed);
        PlanOutlook Of(PlanModel one) => PlanOutlook.Of(farm.Season(2025), one, new PlanDraft(2026, [], []));
        PlanOutlook outlook = Of(model), without = Of(PlanByHandTests.ModelOf(farm, settings with { UnpaidInvoices = 0m }));
        Assert.Equal([80m, 0m, -80m], new[] { 0, 5, 11 }.Select(month => outlook.Months[month].Invoices));
        Assert.Equal([80m, 0m, -80m], new[] { 0, 5, 11 }.Select(month => outlook.Months[month].Left - without.Months[month].Left));
        Assert.Equal(without.BreakEven, outlook.BreakEven);
        Assert.All(
            Of(PlanByHandTests.ModelOf(farm, settings with { OpeningCash = null })).Months,
            month => Assert.Equal(0m, month.Invoices));
    }

    /// <summary>
    /// Carrots stood in bed A in both seasons: within 3 years only B's 100 feet are free of their family. Records begin in May 2024, after
    /// the window of 3 years (2024 on), which is told; 2 years reach back to 2025 alone; 1 limits nothing.
    /// </summary>
    [Theory]
    [InlineData("rotation", 3, 1, "rotation before 2024: no plantings on record")]
    [InlineData("Rotation", 2, 1, null)]
    [InlineData("rotation", 1, 0, "rotation: fewer than 2 years limit nothing")]
    [InlineData("rotation open field", 2, 1, null)]
    [InlineData("rotation tunnel", 2, 0, "rotation tunnel: no bed lies under a structure of that name")]
    public void Rotation_OfTheYearPlanned_LeavesTheBedsFreeOfAFamily(string limit, int years, int families, string? told)
    {
        FarmBuilder farm = PlanByHandTests.Farm().Limit(limit, years, "years");
        farm.Set(farm.Tables.Crops[0], CropRow.FamilyColumn, "Umbels");
        PlanModel model = PlanByHandTests.ModelOf(farm);
        Assert.Equal(families, model.Rotation.Count);
        Assert.All(model.Rotation, one =>
            Assert.Equal(("Umbels", 0, 100.0, "B"), (one.Family, one.Cover, one.Feet, Assert.Single(one.Beds)))
        );
        Assert.All(model.Rotation, one => Assert.True(one.Holds(model, model.Sowings[0])));
        string[] notes = [.. model.NotChecked.Where(note => note.StartsWith("rotation", StringComparison.OrdinalIgnoreCase))];
        Assert.True(told is null ? notes.Length == 0 : notes.Contains(told), string.Join("; ", notes));
    }

    private static PlanSowing Sowing(int week, int weeks) =>
        new(0, 0, week, weeks)
        {
            Yield = [.. SmallFarm.Weekly(0.0).Select((_, at) => at == 20 ? 1.0 : 0.0)],
            Hours = [.. SmallFarm.Weekly(0.0).Select((_, at) => at == week ? 0.5 : 0.0)],
            Trays = [.. SmallFarm.Weekly(0.0).Select((_, at) => at < week && at >= week - 3 ? 0.1 : 0.0)],
            Cost = 2.0,
            NurseryWeeks = 3,
        };

    private static void Row(FarmBuilder farm, int year, string crop, string inBed, string outOfBed) =>
        farm.Add<PlanRow>(
            new RowValues
            {
                ["crop_year"] = year,
                ["planting"] = $"{crop} {year}",
                ["crop"] = crop,
                ["bed"] = "A",
                ["bed_feet"] = 20m,
                ["in_bed"] = FarmBuilder.Day(inBed),
                ["out_of_bed"] = FarmBuilder.Day(outOfBed),
                ["yield"] = 50m,
                ["hours"] = 8m,
            }
        );
}
