using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Chances;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Chances;

/// <summary>The seasons behind a chance, and which years count as recorded whole (docs/methods.md, section 15), on paper.</summary>
public class PastSeasonsByHandTests
{
    /// <summary>
    /// 2022: 100 lb of 100 feet, 90 sold at 2 and 10 eaten; 80 lb of 50 feet, 60 sold at 3 and 20 thrown out. 2023: 50 lb, all eaten, and
    /// own hours without a wage. 2024: 200 lb at 4; one sowing failed, one stands in a bed beyond the closing date, one took no bed.
    /// </summary>
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { InterestPercent = 5m, PriceChangePercent = 10m })
        .AsOf("2024-12-31").Bed("One", 300m).Bed("Two", 300m)
        .Channel("stall", ChannelKind.Market).Channel("shop", ChannelKind.Wholesale).Channel("heap", ChannelKind.Waste)
        .Channel("table", ChannelKind.Household, valuesFrom: "stall")
        .Worker("Bo", WorkerKind.Hired, 20m).Worker("me", WorkerKind.Owner).Crop("Kale")
        .Planting("A22", "Kale", "One", 100m, "2022-05-01", "2022-08-01").Pick("2022-07-01", "A22", 100m)
        .Sell("2022-07-01", "Kale", "stall", 90m, price: 2m, planting: "A22").Sell("2022-07-01", "Kale", "table", 10m, planting: "A22")
        .Planting("B22", "Kale", "Two", 50m, "2022-05-01", "2022-08-01").Pick("2022-07-01", "B22", 80m)
        .Sell("2022-07-01", "Kale", "shop", 60m, price: 3m, planting: "B22").Sell("2022-07-01", "Kale", "heap", 20m, planting: "B22")
        .Work("2022-07-01", "Bo", 2m, "harvest", crop: "Kale")
        .Planting("A23", "Kale", "One", 100m, "2023-05-01", "2023-08-01").Pick("2023-07-01", "A23", 50m)
        .Sell("2023-07-01", "Kale", "table", 50m).Work("2023-07-01", "me", 2m, "harvest", crop: "Kale")
        .Planting("A24", "Kale", "One", 100m, "2024-05-01", "2024-08-01").Pick("2024-07-01", "A24", 200m)
        .Sell("2024-07-01", "Kale", "stall", 200m, price: 4m).Work("2024-07-01", "Bo", 1m, "harvest", crop: "Kale")
        .Planting("G24", "Kale", "Two", 20m, "2024-09-01", "2024-12-31")
        .Planting("F24", "Kale", "One", 30m, "2024-09-01", "2024-11-01", cropYear: 2024)
        .Planting("F24", "Kale", "Two", 30m, "2024-09-01", "2025-03-01", cropYear: 2024)
        .Planting("Z24", "Kale", "Two", 0m, "2024-05-01", "2024-07-01")
        .Spend("2022-05-01", 5m, "seed", crop: "Kale").Spend("2024-05-01", 8m, "seed", crop: "Kale");

    private static PastSeasons Past()
    {
        FarmReview review = Farm().Review();
        return PastSeasons.Of(review, review.Season(2024));
    }

    private static IReadOnlyList<CropSeason> Kale(out PastSeasons past)
    {
        FarmReview review = Farm().Review();
        past = PastSeasons.Of(review, review.Season(2024));
        return past.Of(review.Records.Crop("Kale"));
    }

    /// <summary>180 lb on 150 feet; 50 on 100; 200 on 120, with the sowing that failed by the closing date.</summary>
    [Fact]
    public void Yields_CountFailedSowings_AndNoneStillStanding()
    {
        IReadOnlyList<CropSeason> kale = Kale(out _);
        Assert.Equal([2022, 2023, 2024], kale.Select(season => season.CropYear));
        Assert.Equal([1.2, 0.5, 200.0 / 120.0], kale.Select(season => season.Yield));
        Assert.Equal([1.0, 1.6], kale[0].PlantingYields);
        Assert.Equal([2.0, 0.0], kale[2].PlantingYields);
        Assert.All(kale, season => Assert.False(season.NamesOnlyTheCrop));
    }

    /// <summary>360 for 150 lb, two years at 10%: 2.40 x 1.21, the sowings 2 x 1.21 and 3 x 1.21; nothing sold has no price.</summary>
    [Fact]
    public void Prices_AreOfWhatWasSold_AtTheLevelOfTheReviewedYear()
    {
        IReadOnlyList<CropSeason> kale = Kale(out _);
        Assert.Equal(2.4 * 1.21, kale[0].Price!.Value, 1e-12);
        Assert.Equal([2.42, 3.63], kale[0].PlantingPrices.Select(price => Math.Round(price, 9)));
        Assert.Null(kale[1].Price);
        Assert.Empty(kale[1].PlantingPrices);
        Assert.Equal(4.0, kale[2].Price);
    }

    /// <summary>
    /// 2022: 360 and 20 eaten (10 lb at what the stall brought) less 40 of labor and 5 of seed; what 2023 netted nobody knows; 800 - 20 -
    /// 8.
    /// </summary>
    [Fact]
    public void NetReturns_AreInTheirOwnMoney_AndNoneWhereUnknown()
    {
        IReadOnlyList<CropSeason> kale = Kale(out PastSeasons past);
        Assert.Equal([335m, null, 772m], kale.Select(season => season.NetReturn?.Amount));
        Assert.Equal([(2022, new Money(335m)), (2024, new Money(772m))], past.Farm);
    }

    /// <summary>Harvests of 2022 that name no sowing tell neither yields nor prices of sowings.</summary>
    [Fact]
    public void Plantings_WhereAHarvestNamesOnlyTheCrop_TellNothing()
    {
        FarmReview review = Farm().PickCrop("2022-07-02", "Kale", 1m).Review();
        CropSeason kale = PastSeasons.Of(review, review.Season(2024)).Of(review.Records.Crop("Kale"))[0];
        Assert.True(kale.NamesOnlyTheCrop);
        Assert.Empty(kale.PlantingYields);
        Assert.Empty(kale.PlantingPrices);
        Assert.Equal(181.0 / 150.0, kale.Yield, 1e-12);
    }

    [Fact]
    public void Season_OfOtherRecords_IsRefused() =>
        Assert.Throws<ArgumentException>(() => PastSeasons.Of(Farm().Review(), Farm().Review().Season(2024)));

    [Fact]
    public void Crop_NotGrown_HasNoSeason()
    {
        FarmReview review = Farm().Crop("Beets").Review();
        Assert.Empty(PastSeasons.Of(review, review.Season(2024)).Of(review.Records.Crop("Beets")));
        Assert.Equal([2022, 2023, 2024], Past().Whole);
    }

    /// <summary>
    /// Four years with harvests, first ones on July 22, 3, 7 and 11 (days 202, 183, 187, 191 of the year; usual 189) and last ones on
    /// September 1, 5 and 9 and August 19 (243, 247, 251, 230; usual 245); 2024 brought nothing. Sold on the day.
    /// </summary>
    private static FarmBuilder Years(string firstOf2021 = "2021-07-22", string asOf = "2025-08-20", int salesOf2021 = 2)
    {
        string[][] days =
        [
            [firstOf2021, "2021-09-01"], ["2022-07-03", "2022-08-01", "2022-08-15", "2022-09-05"],
            ["2023-07-07", "2023-08-01", "2023-08-15", "2023-09-09"], ["2025-07-11", "2025-08-01", "2025-08-15", "2025-08-19"],
        ];
        FarmBuilder farm = new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m }).AsOf(asOf).Bed("One")
            .Channel("stall", ChannelKind.Market).Worker("me", WorkerKind.Owner).Crop("Kale")
            .Planting("K2024", "Kale", "One", 50m, "2024-05-01", "2024-07-01").Work("2024-05-01", "me", 1m, "grow");
        foreach (string[] year in days)
        {
            string name = $"K{year[0][..4]}";
            farm.Planting(name, "Kale", "One", 50m, $"{year[0][..4]}-05-01", $"{year[0][..4]}-10-01");
            for (int i = 0; i < year.Length; i++)
            {
                farm.Pick(year[i], name, 10m);
                if (name != "K2021" || i < salesOf2021)
                {
                    farm.Sell(year[i], "Kale", "stall", 10m, price: 2m);
                }
            }
        }

        return farm;
    }

    private static IEnumerable<(int, string)> InPart(FarmBuilder farm)
    {
        FarmReview review = farm.Review();
        PastSeasons past = PastSeasons.Of(review, review.Season(2025));
        Assert.Equal(5, past.Whole.Count + past.InPart.Count);
        return past.InPart.Select(year => (year.CropYear, year.Reason));
    }

    private static readonly (int, string) Nothing = (2024, "no harvest is on record");

    /// <summary>
    /// Begun 13 days late, ended 14 days early, half the usual 8 rows in 2021: all of it is whole but the year of nothing.
    /// </summary>
    [Fact]
    public void Years_JustWholeEnough_AreWhole() => Assert.Equal([Nothing], InPart(Years()));

    /// <summary>
    /// The usual first harvest is day 189, so day 203 (July 23) is two weeks late, and 204 more; work that is on record before says that
    /// the records don't begin there.
    /// </summary>
    [Fact]
    public void Years_BegunOverTwoWeeksLate_AreInPart()
    {
        Assert.Equal([Nothing], InPart(Years("2021-07-23")));
        Assert.Equal([(2021, "the records begin on 2021-07-24"), Nothing], InPart(Years("2021-07-24")));
        Assert.Equal([Nothing], InPart(Years("2021-07-24").Work("2021-06-01", "me", 1m, "grow")));
        Assert.Equal([Nothing], InPart(Years("2021-07-24").Sell("2021-07-20", "Kale", "stall", 1m, price: 2m)));
    }

    /// <summary>Day 231 of 2025 is August 20, two weeks before the usual end; the day before is more.</summary>
    [Fact]
    public void Years_EndedOverTwoWeeksEarly_AreInPart() =>
        Assert.Equal([Nothing, (2025, "the records end on 2025-08-19")], InPart(Years(asOf: "2025-08-19")));

    [Fact]
    public void Years_OfUnderHalfTheRows_AreInPart() =>
        Assert.Equal(
            [(2021, "it has under half of the usual rows of harvests and sales"), Nothing], InPart(Years(salesOf2021: 1)));

    [Fact]
    public void Years_WithoutAnyHarvest_AreAllInPart()
    {
        FarmReview review = Years().Empty("harvests").Empty("sales").Review();
        PastSeasons past = PastSeasons.Of(review, review.Season(2024));
        Assert.Empty(past.Whole);
        Assert.Equal(Nothing, past.InPart.Select(year => (year.CropYear, year.Reason)).Single());
    }
}
