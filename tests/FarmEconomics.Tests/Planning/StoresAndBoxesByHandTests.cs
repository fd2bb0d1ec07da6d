using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// Stores, boxes, beds and limits of the year planned where there are several of each, by hand (docs/methods.md, section 20).
/// </summary>
public class StoresAndBoxesByHandTests
{
    /// <summary>
    /// Nine weeks, each with 7 crates picked on its first day and sold n days on: a mean of n crates, the fullest day 7. Of n = 7 (four
    /// weeks), 4 (four weeks) and 2 the eight fullest count: (4 x 1 + 4 x 7/4) / 8. Potatoes name no store; there is but one.
    /// </summary>
    [Fact]
    public void Store_IsFullerThanItsMeanAsInTheEightFullestWeeks()
    {
        FarmBuilder farm = Potatoes().Pool("Cellar", "crate-days").Limit("Cellar", 30m, "crates");
        int[] days = [2, 7, 4, 7, 4, 7, 4, 7, 4];
        for (int i = 0; i < days.Length; i++)
        {
            DateOnly first = new DateOnly(2025, 1, 1).AddDays(7 * (18 + (2 * i)));
            farm.Pick($"{first:yyyy-MM-dd}", "P25", 70m)
                .Sell($"{first.AddDays(days[i]):yyyy-MM-dd}", "Potatoes", "Market", 70m, price: 1m);
        }

        PlanModel model = PlanByHandTests.ModelOf(farm);
        Assert.Equal(1.375, Assert.Single(model.Stores).PeakOverMean, 9);
        Assert.Equal([1.0], Assert.Single(model.Crops).InStore);
    }

    /// <summary>Of two stores a crop that names neither lies in neither: nothing tells how their days differ.</summary>
    [Fact]
    public void Store_InWhichNothingLay_IsAsFullAsItsMean()
    {
        PlanModel model = PlanByHandTests.ModelOf(
            Picked(Potatoes())
                .Pool("Cellar", "crate-days")
                .Pool("Barn", "crate-days")
                .Limit("Cellar", 30m, "crates")
                .Limit("Barn", 20m, "crates")
        );
        Assert.Equal(
            [("Cellar", 30.0, 1.0), ("Barn", 20.0, 1.0)],
            model.Stores.Select(store => (store.Name, store.Crates[9], store.PeakOverMean))
        );
        Assert.Equal([0.0, 0.0], Assert.Single(model.Crops).InStore);
    }

    /// <summary>
    /// Boxes of August 8 and 9, both in week 31 (days 219 and 220): 6 + 7 lb of leeks at 4 and 10 of carrots at 2 are 72 of list value,
    /// under the members' 1,000 for the one week. The week's leeks were 13 lb; a pound of them counts 5 in the boxes of 2026 from July on.
    /// </summary>
    [Fact]
    public void Boxes_OfAWeek_HoldAllThatWentIntoThem()
    {
        PlanModel model = PlanByHandTests.ModelOf(
            Picked(Potatoes())
                .Crop("Leeks")
                .Crop("Carrots")
                .Channel("Box", ChannelKind.Share)
                .Price("Leeks", 4m, "Box", from: "2025-01-01")
                .Price("Leeks", 5m, "Box", from: "2026-07-01")
                .Price("Carrots", 2m, "Box", from: "2025-01-01")
                .Income("2025-03-01", "Box", 1000m)
                .Planting("L25", "Leeks", "B", 50m, "2025-05-01", "2025-08-28")
                .Planting("C25", "Carrots", "B", 50m, "2025-05-01", "2025-08-28")
                .Pick("2025-08-07", "L25", 13m)
                .Pick("2025-08-07", "C25", 10m)
                .Sell("2025-08-08", "Leeks", "Box", 6m)
                .Sell("2025-08-08", "Carrots", "Box", 10m)
                .Sell("2025-08-09", "Leeks", "Box", 7m)
        );
        Assert.Equal([(31, 72.0)], model.BoxTarget.Select((value, week) => (week, Math.Round(value, 9))).Where(week => week.Item2 != 0.0));
        PlanCrop leeks = model.Crops.Single(crop => crop.Name == "Leeks");
        Assert.Equal((13.0, 5.0), (leeks.BoxMost, leeks.BoxValue[31]));
        Assert.Equal(10.0, model.Crops.Single(crop => crop.Name == "Carrots").BoxMost);
    }

    /// <summary>
    /// A store without a limit isn't limited. Of two nurseries with room for 50 and 30 trays all trays stand in either: 30. An own hour is
    /// worth the setting's 10, though nobody logged one.
    /// </summary>
    [Fact]
    public void Limits_AreThoseOnRecordAndTheLeastOfThem()
    {
        PlanModel model = PlanByHandTests.ModelOf(
            Picked(Potatoes())
                .Pool("Cellar", "crate-days")
                .Pool("Barn", "crate-days")
                .Pool("House", "tray-days")
                .Pool("Frame", "tray-days")
                .Limit("Barn", 20m, "crates")
                .Limit("House", 50m, "trays")
                .Limit("Frame", 30m, "trays")
        );
        Assert.Equal("Barn", Assert.Single(model.Stores).Name);
        Assert.All(model.Trays!, trays => Assert.Equal(30.0, trays));
        Assert.Equal(10.0, model.Hours.OwnCost);
    }

    /// <summary>A farm without boxes has no value for them.</summary>
    [Fact]
    public void Boxes_ThatNobodyPacks_HaveNoValue() =>
        Assert.Empty(Assert.Single(PlanByHandTests.ModelOf(Picked(Potatoes())).Crops).BoxValue);

    /// <summary>
    /// 200 feet all year; 100 more from March 1 (day 59: the fourth day of week 8 is day 59), another 100 to June 30 (day 180: that of week
    /// 25 is day 178, of week 26 day 185).
    /// </summary>
    [Fact]
    public void Beds_CountFromTheirFirstDayToTheirLast()
    {
        FarmBuilder farm = Picked(Potatoes()).Bed("New").Bed("Old");
        farm.Set(farm.Tables.Beds[2], BedRow.FromColumn, new DateOnly(2026, 3, 1));
        farm.Set(farm.Tables.Beds[3], BedRow.ToColumn, new DateOnly(2026, 6, 30));
        Assert.Equal(
            Enumerable.Range(0, PlanModel.Weeks).Select(week => 200.0 + (week >= 8 ? 100.0 : 0.0) + (week <= 25 ? 100.0 : 0.0)),
            Assert.Single(PlanByHandTests.ModelOf(farm).Covers).Feet
        );
    }

    /// <summary>A limit that no record can be held against is told; those read elsewhere, on rotation and credit, aren't told so.</summary>
    [Fact]
    public void Limit_ThatCannotBeChecked_IsTold()
    {
        FarmBuilder farm = Picked(Potatoes())
            .Limit("tractor", 5m, "hours a day")
            .Limit("line of credit", 900m)
            .Limit("rotation", 2m, "years");
        IReadOnlyList<string> told = PlanByHandTests.ModelOf(farm).NotChecked;
        Assert.Contains("tractor: no record tells its use by day", told);
        Assert.DoesNotContain(told, note => note.EndsWith("only next year's plan is held to it", StringComparison.Ordinal));
    }

    private static FarmBuilder Picked(FarmBuilder farm) =>
        farm.Pick("2025-08-01", "P25", 70m).Sell("2025-08-03", "Potatoes", "Market", 70m, price: 1m);

    private static FarmBuilder Potatoes() =>
        new FarmBuilder(new FarmSettings { OwnerWage = 10m, InterestPercent = 5m })
            .AsOf("2025-12-31")
            .Bed("A")
            .Bed("B")
            .Crop("Potatoes", perCrate: 10m)
            .Channel("Market", ChannelKind.Market)
            .Spend("2025-04-01", 9m, "seed")
            .Planting("P25", "Potatoes", "A", 100m, "2025-04-01", "2025-12-01");
}
