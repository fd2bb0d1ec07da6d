using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Changes;

/// <summary>
/// The best mix for three beds of 100, 60 and 10 ft, on paper (docs/methods.md, section 16). A foot of each crop brings a pound. The stall
/// took 60 lb more of kale last year than now, at 4; of chard 80, at 3; of leeks 20, at 2; seed is 1.00, 0.50 and 0.10 a foot. So f feet of
/// kale add 4 x (f, at most 60) - f; of chard 3 x (f, at most 80) - f / 2; of leeks 2 x (f, at most 20) - f / 10.
/// </summary>
public class MixFinderByHandTests
{
    /// <summary>
    /// In 100 ft chard adds 190, kale 140, leeks 30; in 60 more kale 180, chard 160 - 190; in 10 more leeks 19, kale 170 - 180, chard
    /// 185 - 190: 389. Kale alone would take the 100 ft for 140, and nothing more: 80 in all three of the two longer beds.
    /// </summary>
    [Fact]
    public void Mix_GivesEachBedToTheCropThatAddsMostThere()
    {
        Mix mix = Best(Farm())!;
        Assert.Equal([("Chard", 100m), ("Kale", 60m), ("Leeks", 10m)], mix.Crops);
        Assert.Equal(389m, mix.Change.Amount);
    }

    /// <summary>
    /// The market has 50 ft of chard already: 125 of its gain. In 100 ft more chard adds 165 - 125, kale 140; in 60 more chard 185 - 125,
    /// leeks 34, kale less than nothing; in 10 more leeks 19: 140 + 60 + 19, without the 125.
    /// </summary>
    [Fact]
    public void Mix_ComesAfterWhatTheMarketHasAlready()
    {
        Mix mix = Best(Farm(), new Dictionary<string, decimal> { ["Chard"] = 50m })!;
        Assert.Equal([("Kale", 100m), ("Chard", 60m), ("Leeks", 10m)], mix.Crops);
        Assert.Equal(219m, mix.Change.Amount);
    }

    /// <summary>
    /// The same with 10 ft of leeks there already, 19 of their gain: in 10 ft more they add 38 - 19, and neither 125 nor 19 are of the mix.
    /// </summary>
    [Fact]
    public void Mix_ComesAfterAllThatTheMarketHasAlready()
    {
        Mix mix = Best(Farm(), new Dictionary<string, decimal> { ["Chard"] = 50m, ["Leeks"] = 10m })!;
        Assert.Equal([("Kale", 100m), ("Chard", 60m), ("Leeks", 10m)], mix.Crops);
        Assert.Equal(140m + 60m + 19m, mix.Change.Amount);
    }

    /// <summary>
    /// Turnips at 3 less 1 of seed, up to 200 lb more, add 200 in 100 ft and 120 in the 60 after; kale 180 there, though turnips have more.
    /// </summary>
    [Fact]
    public void Mix_GoesByWhatABedAdds_NotByWhatACropHas()
    {
        FarmBuilder farm = Farm();
        Add(farm, "Turnips", 3m, 200m, 1m);
        Mix mix = Best(farm, crops: ["Turnips", "Kale"], beds: ["One", "Two"])!;
        Assert.Equal([("Turnips", 100m), ("Kale", 60m)], mix.Crops);
        Assert.Equal(380m, mix.Change.Amount);
    }

    /// <summary>Mint costs nothing, and 100 ft are all the stall takes: a bed more would add nothing, so it stays free.</summary>
    [Fact]
    public void Mix_LeavesABedThatAddsNothing()
    {
        FarmBuilder farm = Farm();
        Add(farm, "Mint", 3m, 100m, 0m);
        Assert.Equal([("Mint", 100m)], Best(farm, crops: ["Mint"])!.Crops);
    }

    /// <summary>Where chard and kale fit nowhere at the time, leeks take what adds: 30 in 100 ft, and no more of them.</summary>
    [Fact]
    public void Mix_OfCropsThatFit_LeavesOutTheOthers()
    {
        FarmBuilder farm = Farm();
        Mix mix = Best(farm, crops: ["Leeks"])!;
        Assert.Equal([("Leeks", 100m)], mix.Crops);
        Assert.Equal(30m, mix.Change.Amount);
        Assert.Null(Best(farm, crops: []));
    }

    /// <summary>A crop that adds nothing, or takes more than it brings, is in no mix: turnips cost what they bring.</summary>
    [Fact]
    public void Mix_WithoutGain_IsNone()
    {
        FarmBuilder farm = Farm();
        Add(farm, "Turnips", 1m, 100m, 1m);
        Assert.Null(Best(farm, crops: ["Turnips"]));
    }

    /// <summary>
    /// Two crops of a bed each that add alike, after a third that adds more: the order of names settles it, and the mix with fewer crops
    /// stands before one that adds no more.
    /// </summary>
    [Fact]
    public void Mix_OfCropsThatAddAlike_GoesByName()
    {
        FarmBuilder farm = Farm();
        Add(farm, "Turnips", 4m, 60m, 1m);
        Add(farm, "Endive", 4m, 60m, 1m);
        Mix mix = Best(farm, crops: ["Turnips", "Endive"], beds: ["Two"])!;
        Assert.Equal([("Endive", 60m)], mix.Crops);
        Assert.Equal(180m, mix.Change.Amount);
    }

    /// <summary>
    /// The eight that add most alone are tried, no others: eight crops that fit bed One add 21 to 28 there. The ninth adds 72 - 54 = 18
    /// in bed Two, where none of the others fits: only among eight it is found.
    /// </summary>
    [Fact]
    public void Mix_IsTriedAmongEight()
    {
        FarmBuilder farm = Farm();
        string[] names = ["A", "B", "C", "D", "E", "F", "G", "H"];
        for (int i = 0; i < names.Length; i++)
        {
            Add(farm, $"Lettuce {names[i]}", 1.21m + (i * 0.01m), 100m, 1m);
        }

        Add(farm, "Basil", 1.2m, 60m, 0.9m, inBed: "2025-04-01");
        SeasonReview season = farm.Season(2025);
        List<BedTime.Gap> gaps =
        [
            new(BedNamed(season, "One"), 100m, new DateOnly(2025, 5, 1), new DateOnly(2025, 8, 1)),
            new(BedNamed(season, "Two"), 60m, new DateOnly(2025, 4, 1), new DateOnly(2025, 7, 1)),
        ];
        string[] lettuce = [.. names.Select(name => $"Lettuce {name}")];
        Assert.Equal([("Lettuce H", 100m)], Finder(season, gaps, [.. lettuce, "Basil"], null).Best!.Crops);
        Assert.Equal(
            [("Lettuce H", 100m), ("Basil", 60m)],
            Finder(season, gaps, [.. lettuce.Skip(1), "Basil"], null).Best!.Crops
        );
    }

    private static Mix? Best(
        FarmBuilder farm,
        Dictionary<string, decimal>? already = null,
        string[]? crops = null,
        string[]? beds = null
    )
    {
        SeasonReview season = farm.Season(2025);
        (string Bed, decimal Feet)[] free = [("Three", 10m), ("One", 100m), ("Two", 60m)];
        List<BedTime.Gap> gaps =
        [
            .. free.Where(one => beds?.Contains(one.Bed) != false)
                .Select(one => new BedTime.Gap(BedNamed(season, one.Bed), one.Feet, new DateOnly(2025, 1, 1), new DateOnly(2026, 1, 1))),
        ];
        return Finder(season, gaps, crops ?? ["Leeks", "Kale", "Chard"], already).Best;
    }

    private static MixFinder Finder(SeasonReview season, List<BedTime.Gap> gaps, string[] crops, Dictionary<string, decimal>? already)
    {
        SeasonCosts costs = SeasonCosts.Of(season);
        return new MixFinder(
            new BedTime(season),
            gaps,
            [.. crops.Select(season.CropNamed).Select(crop => (crop, new CropGrowth(costs, crop, null)))],
            already
        );
    }

    private static Bed BedNamed(SeasonReview season, string name) => new(season.Records.Tables.Beds.Single(row => row.Bed == name), 30m);

    private static FarmBuilder Farm()
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m })
            .AsOf("2025-12-31")
            .Bed("One")
            .Bed("Two")
            .Bed("Three")
            .Channel("stall", ChannelKind.Market);
        Add(farm, "Kale", 4m, 60m, 1m);
        Add(farm, "Chard", 3m, 80m, 0.5m);
        Add(farm, "Leeks", 2m, 20m, 0.1m);
        return farm;
    }

    /// <summary>A crop on 100 ft, 100 lb sold now and so much more the year before.</summary>
    private static void Add(FarmBuilder farm, string crop, decimal price, decimal more, decimal seed, string inBed = "2025-05-01") =>
        farm.Crop(crop)
            .Bed($"{crop} bed")
            .Price(crop, price, "stall")
            .Planting($"{crop} 24", crop, $"{crop} bed", 100m, "2024-05-01", "2024-08-01")
            .Pick("2024-06-24", $"{crop} 24", 100m + more)
            .Sell("2024-06-25", crop, "stall", 100m + more, price: price)
            .Planting($"{crop} 25", crop, $"{crop} bed", 100m, inBed, inBed == "2025-05-01" ? "2025-08-01" : "2025-07-01")
            .Pick("2025-06-24", $"{crop} 25", 100m)
            .Sell("2025-06-25", crop, "stall", 100m, price: price)
            .Spend("2025-04-01", 100m * seed, "seed", crop: crop);
}
