using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tracing;
using Xunit;

namespace FarmEconomics.Tests.Tracing;

/// <summary>
/// docs/methods.md 4, hours: which day's picks and sales weigh them, and that each of very many rows goes where it says. Beets a (10
/// bed-feet) and b (30), peas never planted.
/// </summary>
public class HoursByHandTests
{
    private static FarmBuilder Farm() => new FarmBuilder().Crop("beets").Crop("peas").Bed("bed").Channel("market", ChannelKind.Market)
        .Worker("Al", WorkerKind.Volunteer).AsOf("2025-12-31").Planting("a", "beets", "bed", 10, "2025-05-01", "2025-09-01")
        .Planting("b", "beets", "bed", 30, "2025-05-01", "2025-09-01");

    /// <summary>Where each row's hours went: planting and hours.</summary>
    private static IEnumerable<string> Went(FarmBuilder farm) => farm.Review().Trace.Labor.Select(use => string.Join(
        ", ",
        use.Parts.Select(part => $"{part.Enterprise?.Planting.Name} {part.Hours:0.##}")));

    /// <summary>
    /// On June 3 only b was picked, and what was sold came from a, picked on the 1st: 2 hours of harvesting are b's and 3 of selling
    /// a's. On the 6th nothing was picked or sold: the 3rd is the nearest day of both.
    /// </summary>
    [Theory]
    [InlineData("2025-06-03")]
    [InlineData("2025-06-06")]
    public void HarvestAndSelling_OfOneDay_GoByPicksAndBySales(string day)
    {
        FarmBuilder farm = Farm().Pick("2025-06-01", "a", 20).Pick("2025-06-03", "b", 20).Sell("2025-06-03", "beets", "market", 5, 1);
        Assert.Equal(
            ["b 2", "a 3", "b 1"],
            Went(farm.Work(day, "Al", 2, "harvest", crop: "beets").Work(day, "Al", 3, "sell", crop: "beets")
                .Work(day, "Al", 1, "pack", crop: "beets")));
    }

    /// <summary>
    /// a was picked 1 to 3 days before and b as many after: a's day counts, nearest first. A day more on both sides is out of reach: the
    /// crop's bed-foot-weeks of the year share the 4 hours, 1 : 3.
    /// </summary>
    [Theory]
    [InlineData("2025-06-09", "2025-06-11", "a 4")]
    [InlineData("2025-06-07", "2025-06-13", "a 4")]
    [InlineData("2025-06-07", "2025-06-12", "b 4")]
    [InlineData("2025-06-06", "2025-06-13", "b 4")]
    [InlineData("2025-06-06", "2025-06-14", "a 1, b 3")]
    public void NearestDayWithinThree_Weighs(string before, string after, string went) =>
        Assert.Equal([went], Went(Farm().Pick(before, "a", 5).Pick(after, "b", 5).Work("2025-06-10", "Al", 4, "harvest", crop: "beets")));

    /// <summary>Only culls within reach weigh nothing: 4 hours by bed-foot-weeks, 1 : 3, and none of them lost.</summary>
    [Fact]
    public void PicksOfCullsAlone_WeighNothing() => Assert.Equal(
        ["a 1, b 3"],
        Went(Farm().Pick("2025-06-10", "a", 0, culled: 2).Pick("2025-06-11", "a", 0, culled: 2)
            .Work("2025-06-10", "Al", 4, "harvest", crop: "beets")));

    /// <summary>Work of 2023 for a crop that has plantings in 2025, 2024 and 2022 goes to the next year that has one.</summary>
    [Fact]
    public void WorkBeforeTwoLaterYears_GoesToTheNext() => Assert.Equal(
        ["next 4"],
        Went(Farm().Planting("next", "beets", "bed", 10, "2024-05-01", "2024-09-01")
            .Planting("before", "beets", "bed", 10, "2022-05-01", "2022-09-01").Work("2023-11-01", "Al", 4, "grow", crop: "beets")));

    /// <summary>A row of no hours has no part, and makes no year one in which somebody worked.</summary>
    [Fact]
    public void RowOfNoHours_HasNoParts()
    {
        FarmTrace trace = Farm().Planting("old", "beets", "bed", 10, "2024-05-01", "2024-09-01")
            .Work("2024-06-10", "Al", 0, "grow", crop: "beets").Work("2025-06-10", "Al", 4, "grow", planting: "a").Review().Trace;
        Assert.Empty(trace.Labor[0].Parts);
        Assert.Equal([2025], trace.YearsWithLabor(added: true));
    }

    /// <summary>The only planting of a crop takes its hours, even where its bed-feet are 0.</summary>
    [Fact]
    public void HoursOfOnePlanting_AreAllItsOwn()
    {
        // The checks of the records refuse 0 bed-feet; records made by a program may hold them.
        FarmBuilder farm = Farm().Planting("p", "peas", "bed", 0, "2025-05-01", "2025-09-01")
            .Work("2025-11-10", "Al", 4, "grow", crop: "peas");
        Assert.Equal(["p 4"], Went(farm));
        farm.Season(2025).AssertProven();
    }

    /// <summary>
    /// 4,100 rows of a quarter hour, the last four of b: 1,024 hours of a and 1 of b, each row where it says, and the rows in their order.
    /// Of them the 4,099th names only the crop on a day when b alone was picked.
    /// </summary>
    [Fact]
    public void ThousandsOfRows_EachGoWhereTheySay()
    {
        FarmBuilder farm = Farm().Pick("2025-06-01", "b", 5);
        for (int i = 0; i < 4_100; i++)
        {
            string? planting = i < 4_096 ? "a" : i == 4_098 ? null : "b";
            farm.Work("2025-06-01", "Al", 0.25m, "harvest", planting: planting, crop: planting is null ? "beets" : null);
        }

        farm.Work("2025-06-02", "Al", 0.5m, "harvest");
        string[] went = [.. Went(farm)];
        Assert.Equal(Enumerable.Repeat("a 0.25", 4_096).Concat(Enumerable.Repeat("b 0.25", 4)), went[..4_100]);
        Assert.Equal(" 0.5", went[4_100]);
        Assert.Equal("harvest work", farm.Review().Trace.Labor[4_100].Parts[0].Pool!.Name);
    }

    /// <summary>
    /// The standard of packing is 1 h for a and 3 for b. 4 hours of packing peas, which nobody planted, are not assigned: they stand in no
    /// pool and come off no standard. 4 hours at the wash line leave nothing of it, nor do 5.
    /// </summary>
    [Fact]
    public void HoursNotAssigned_ComeOffNoStandard()
    {
        static decimal[] Added(Func<FarmBuilder, FarmBuilder> with) =>
        [
            .. with(Farm().Standard("beets", Stage.Pack, 6, RatePer.BedFoot).Pool("wash line", "bed-feet", StatementLine.Labor))
                .Review().Trace.Labor.Where(use => use.Added).Select(use => use.Hours),
        ];
        Assert.Equal([1m, 3m], Added(farm => farm.Work("2025-06-10", "Al", 4, "pack", crop: "peas")));
        Assert.Empty(Added(farm => farm.Work("2025-06-10", "Al", 4, "pack", pool: "wash line")));
        Assert.Empty(Added(farm => farm.Work("2025-06-10", "Al", 5, "pack", pool: "wash line")));
        Assert.Empty(Added(farm => farm.Work("2025-06-10", "Al", 1, "pack", planting: "a")
            .Work("2025-06-10", "Al", 1, "pack", planting: "b")));
    }

    [Fact]
    public void Labor_NamesItsStageWorkerAndHours()
    {
        LaborUse use = Farm().Work("2025-06-10", "Al", 2.5m, "grow", planting: "a").Review().Trace.Labor[0];
        Assert.Equal("Grow Volunteer 2.5", use.ToString());
        Assert.Equal("", default(LaborUse).ToString());
    }
}
