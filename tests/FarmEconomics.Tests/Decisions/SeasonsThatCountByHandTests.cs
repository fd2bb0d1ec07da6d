using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Chances;
using FarmEconomics.Records;
using FarmEconomics.Reports.Decisions;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions;

/// <summary>Which seasons a verdict rests on, and how it tells them (docs/methods.md, section 17), on paper.</summary>
public class SeasonsThatCountByHandTests
{
    /// <summary>Beets bring 100 less 30 of seed and an hour every year, so that years without other crops are recorded whole.</summary>
    private static FarmBuilder Farm(decimal? wage = 20m)
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { OwnerWage = wage, InterestPercent = 5m }).AsOf("2025-12-31")
            .Channel("stall", ChannelKind.Market).Worker("Bo", WorkerKind.Hired, 20m).Crop("Beets").Bed("Two").Price("Beets", 1m, "stall");
        foreach (int year in new[] { 2023, 2024, 2025 })
        {
            farm.Planting($"B{year}", "Beets", "Two", 100m, $"{year}-05-01", $"{year}-08-01").Pick($"{year}-07-01", $"B{year}", 100m)
                .Sell($"{year}-07-01", "Beets", "stall", 100m, price: 1m).Spend($"{year}-05-01", 30m, "seed", planting: $"B{year}")
                .Work($"{year}-07-01", "Bo", 1m, "harvest", planting: $"B{year}");
        }

        return farm.Crop("Kale").Bed("One").Price("Kale", 4m, "stall");
    }

    /// <summary>A season of 100 feet of kale: seed 30 and five hired hours at 20; what is picked sells at 4.</summary>
    private static FarmBuilder Kale(FarmBuilder farm, int year, decimal pounds, string picked = "07-01", string worker = "Bo")
    {
        string name = $"K{year}";
        farm.Planting(name, "Kale", "One", 100m, $"{year}-05-01", $"{year}-09-01").Spend($"{year}-05-01", 30m, "seed", planting: name)
            .Work($"{year}-{picked}", worker, 5m, "grow", planting: name);
        return pounds == 0m ? farm
            : farm.Pick($"{year}-{picked}", name, pounds).Sell($"{year}-{picked}", "Kale", "stall", pounds, price: 4m);
    }

    private static Verdict Judge(FarmBuilder farm, string crop = "Kale")
    {
        FarmReview review = farm.Review();
        return Verdicts.Of(review, SeasonCosts.Of(review.Season(2025))).Crops.Single(verdict => verdict.Budget.Name == crop);
    }

    private static string Words(Verdict verdict) => DecisionSentences.Of(verdict, new FarmSettings());

    /// <summary>400 - 130 = 270 twice, and the seed and the hours of the year it failed: (270 - 130 + 270) / 3.</summary>
    [Fact]
    public void SeasonInWhichItFailed_Counts()
    {
        Verdict kale = Judge(Kale(Kale(Kale(Farm(), 2023, 100m), 2024, 0m), 2025, 100m));
        Assert.Equal([(2023, 270m), (2024, -130m), (2025, 270m)], kale.Seasons.Select(one => (one.CropYear, one.Contribution.Amount)));
        Assert.Equal(136.67m, kale.Mean.Amount);
    }

    /// <summary>A year that the crop's table over the years leaves out looks as if it hadn't failed.</summary>
    [Fact]
    public void SeasonInWhichItFailed_StandsAmongTheYears()
    {
        FarmReview review = Kale(Kale(Kale(Farm(), 2023, 100m), 2024, 0m), 2025, 100m).Review();
        CropOverYears kale = CropOverYears.Of(review, "Kale");
        Assert.Equal([2023, 2024, 2025], kale.Years.Select(year => year.CropYear));
        Assert.Equal(-130m, kale.Years[1].Budget.NetReturn.Amount);
    }

    /// <summary>Kale of 2025 stands in its bed at the closing date, unpicked: that year isn't over.</summary>
    [Fact]
    public void SeasonStillStanding_IsNotAmongTheYears()
    {
        FarmBuilder farm = Kale(Farm(), 2024, 100m).Planting("K25", "Kale", "One", 100m, "2025-12-01", "2026-03-01", cropYear: 2025)
            .Spend("2025-12-01", 30m, "seed", planting: "K25");
        Assert.Equal([2024], CropOverYears.Of(farm.Review(), "Kale").Years.Select(year => year.CropYear));
    }

    /// <summary>
    /// One of the year's two beds was empty on the closing date itself and the other before: a year that is over. With one still standing
    /// it isn't.
    /// </summary>
    [Theory]
    [InlineData("2025-12-31", new[] { 2024, 2025 })]
    [InlineData("2026-01-01", new[] { 2024 })]
    public void SeasonInWhichItFailed_IsOverWithItsLastBed(string outOfBed, int[] years)
    {
        FarmBuilder farm = Kale(Kale(Farm(), 2024, 100m), 2025, 0m)
            .Planting("Late", "Kale", "One", 100m, "2025-09-01", outOfBed, cropYear: 2025);
        Assert.Equal(years, CropOverYears.Of(farm.Review(), "Kale").Years.Select(year => year.CropYear));

        // The season under way tells something where it failed or was picked, and beets were picked.
        SeasonReview season = farm.Season(2025);
        Assert.Equal(
            (years.Contains(2025), true),
            (CropOverYears.Tells(season.CropNamed("Kale"), farm.Settings.AsOf!.Value),
                CropOverYears.Tells(season.CropNamed("Beets"), farm.Settings.AsOf.Value)));
    }

    /// <summary>
    /// Rhubarb stands in 2023 unpicked, was picked in 2024 and not sold, and sold in 2025 without a harvest on record: two years of it.
    /// </summary>
    [Fact]
    public void YearOfAPerennial_IsOneInWhichItWasPickedOrSold()
    {
        FarmBuilder farm = Farm().Perennial("Rhubarb").Planting("R", "Rhubarb", "One", 100m, "2023-04-01").Pick("2024-06-01", "R", 50m)
            .Sell("2025-08-01", "Rhubarb", "stall", 40m, price: 3m);
        Assert.Equal([2024, 2025], CropOverYears.Of(farm.Review(), "Rhubarb").Years.Select(year => year.CropYear));
    }

    /// <summary>
    /// Rhubarb rested in 2023; in 2024 it was sold without a harvest on record, as were radishes: none of these seasons tells what
    /// they add.
    /// </summary>
    [Theory]
    [InlineData("Rhubarb")]
    [InlineData("Radishes")]
    public void SeasonNotPicked_OfAPerennialOrSoldAllTheSame_DoesNotCount(string crop)
    {
        FarmBuilder farm = Farm().Perennial("Rhubarb").Crop("Radishes").Bed("Three")
            .Planting("Rhubarb", "Rhubarb", "One", 100m, "2023-04-01")
            .Planting("R24", "Radishes", "Three", 100m, "2024-05-01", "2024-08-01")
            .Planting("Radishes", "Radishes", "Three", 100m, "2025-05-01", "2025-08-01");
        foreach (int year in new[] { 2023, 2024, 2025 })
        {
            farm.Spend($"{year}-05-01", 20m, "compost", crop: "Rhubarb").Work($"{year}-05-01", "Bo", 1m, "grow", crop: "Rhubarb");
        }

        farm.Sell("2024-07-01", crop, "stall", 40m, price: 3m).Pick("2025-07-01", crop, 50m)
            .Sell("2025-07-01", crop, "stall", 50m, price: 3m);
        Assert.Equal([2025], Judge(farm, crop).Seasons.Select(season => season.CropYear));
    }

    /// <summary>
    /// Kale failed in 2023, a year of two rows of harvests and sales. Beside 2024 and 2025 with their eighteen more that looks like a year
    /// recorded in part; asked for up to 2023 it is the only year there is.
    /// </summary>
    [Fact]
    public void YearsUpToALastOne_AreHeldAgainstNoLaterOnes()
    {
        FarmBuilder farm = Kale(Farm(), 2023, 0m);
        for (int day = 1; day <= 18; day++)
        {
            farm.PickCrop($"2024-07-{day:00}", "Beets", 1m).PickCrop($"2025-07-{day:00}", "Beets", 1m);
        }

        FarmReview review = farm.Review();
        Assert.Equal([2023], CropOverYears.Of(review, "Kale", 2023).Years.Select(year => year.CropYear));
        Assert.Empty(CropOverYears.Of(review, "Kale").Years);
    }

    /// <summary>
    /// 370 twice, and -130 in the season reviewed: mean 203.33, squares 166,666.67 over the four degrees of freedom of both crops, a third
    /// of it: 117.85. The failed harvest doesn't make it any surer.
    /// </summary>
    [Fact]
    public void NoiseOfACropThatFailedNow_IsThatOfItsSeasons()
    {
        Verdict kale = Judge(Kale(Kale(Kale(Farm(), 2023, 125m), 2024, 125m), 2025, 0m));
        Assert.Equal(203.33m, kale.Mean.Amount);
        Close.To((decimal)Math.Sqrt(166666.6667 / 4.0 / 3.0), kale.Noise.Amount, 0.006m);
    }

    /// <summary>
    /// The records begin on 2023-08-20, seven weeks after the usual first harvest: the end of a season is no season. Chance leaves that
    /// year out, and so do verdicts.
    /// </summary>
    [Fact]
    public void YearRecordedInPart_DoesNotCount()
    {
        FarmBuilder farm = Kale(Kale(Kale(Farm(), 2023, 20m, "08-20"), 2024, 100m), 2025, 100m)
            .Without<HarvestRow>(row => row.Planting == "B2023").Without<SaleRow>(row => row.Date == FarmBuilder.Day("2023-07-01"))
            .Without<LaborRow>(row => row.Planting == "B2023");
        FarmReview review = farm.Review();
        Assert.Equal([2023], PastSeasons.Of(review, review.Season(2025)).InPart.Select(year => year.CropYear));
        Assert.Equal([2024, 2025], Judge(farm).Seasons.Select(season => season.CropYear));
    }

    /// <summary>Own hours of 2024 carry no value on record; told at nothing they would make that season too good.</summary>
    [Fact]
    public void SeasonOfOwnHoursWithoutValue_DoesNotCount()
    {
        FarmBuilder farm = Farm(wage: null).Worker("me", WorkerKind.Owner).Worker("me", WorkerKind.Owner, 20m, from: "2025-01-01");
        Verdict kale = Judge(Kale(Kale(farm, 2024, 100m, worker: "me"), 2025, 100m, worker: "me"));
        Assert.Equal([2025], kale.Seasons.Select(season => season.CropYear));
        Assert.Contains("Only 2025 tells what it adds", Words(kale), StringComparison.Ordinal);
    }

    /// <summary>Rye is sown to be turned under: seed every year, and nothing it brings is on record. Nobody is told to drop it.</summary>
    [Fact]
    public void CropOfWhichNothingWasEverPicked_IsNotJudged()
    {
        FarmBuilder farm = Farm().Crop("Rye");
        foreach (int year in new[] { 2023, 2024, 2025 })
        {
            farm.Planting($"R{year}", "Rye", "One", 100m, $"{year}-09-10", $"{year}-12-20")
                .Spend($"{year}-09-10", 25m, "seed", planting: $"R{year}");
        }

        Verdict rye = Judge(farm, "Rye");
        Assert.Equal(Direction.Unknown, rye.Direction);
        Assert.Null(rye.BetterMix);
        Assert.StartsWith("The records can't tell: nothing of it was ever picked", Words(rye), StringComparison.Ordinal);
    }

    /// <summary>
    /// 100 lb picked, and not a row of where they went: nobody knows what they brought. Of 2024 neither; that season doesn't count.
    /// </summary>
    [Fact]
    public void CropOfWhichNoRowTellsWhereItWent_IsNotJudged()
    {
        FarmBuilder farm = Kale(Kale(Kale(Farm(), 2023, 100m), 2024, 100m), 2025, 100m)
            .Crop("Chard", storageDays: 7m).Price("Chard", 3m, "stall");
        foreach (int year in new[] { 2024, 2025 })
        {
            farm.Planting($"C{year}", "Chard", "One", 50m, $"{year}-09-02", $"{year}-11-01").Pick($"{year}-10-01", $"C{year}", 40m)
                .Spend($"{year}-09-01", 30m, "seed", planting: $"C{year}");
        }

        Verdict chard = Judge(farm, "Chard");
        Assert.Equal((Direction.Unknown, "no row tells what became of what was picked"), (chard.Direction, chard.WhyUnknown));
        Assert.Equal([2025], chard.Seasons.Select(season => season.CropYear));

        // One bunch eaten in 2025 is a row that tells.
        farm.Channel("table", ChannelKind.Household).Sell("2025-10-01", "Chard", "table", 1m, price: 3m);
        Assert.NotEqual(Direction.Unknown, Judge(farm, "Chard").Direction);
    }
}
