using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Files;
using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Reports.Planning;
using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>Rotation on the demo farm's records.</summary>
public class DemoRotationTests
{
    /// <summary>The demo farm with rotation asked for: 3 years in the field and tunnels, none where trays stand.</summary>
    private static readonly Lazy<(FarmReview Review, PlanModel Model)> Turned = new(() =>
        Made("rotation,3,years,,\nrotation Tray Room,1,years,,\nrotation Glass House,2,years,,\n")
    );

    /// <summary>Counted again from the rows: a bed is free of a family that isn't in any planting of it out after the first day of 2024.</summary>
    [Fact]
    public void Facts_OfTheRecords_AreTheBedsWithoutTheFamilySinceTwoSeasonsBefore()
    {
        (FarmReview review, PlanModel model) = Turned.Value;
        RecordTables tables = review.Records.Tables;
        Dictionary<string, string> families = tables.Crops.ToDictionary(crop => crop.Crop, crop => crop.Family!);
        Assert.NotEmpty(model.Rotation);
        foreach (PlanRotation one in model.Rotation)
        {
            string cover = model.Covers[one.Cover].Name;
            PlantingRow[] own = [.. tables.Plantings.Where(row => families[row.Crop] == one.Family)];
            string[] stood = [.. own.Where(row => (row.OutOfBed ?? row.InBed) > new DateOnly(2024, 1, 1)).Select(row => row.Bed)];

            // Sown before the first day that counts, with no day it came out: the last harvest decides, which isn't counted again here.
            string[] open = [.. own.Where(row => row.OutOfBed is null && row.InBed <= new DateOnly(2024, 1, 1)).Select(row => row.Bed)];
            BedRow[] free = [.. tables.Beds.Where(bed => (bed.Structure ?? "open field") == cover && !stood.Contains(bed.Bed))];
            Assert.Equal(free.Select(bed => bed.Bed).Except(open).Order(), one.Beds.Except(open).Order());
            Programs.Near((double)tables.Beds.Where(bed => one.Beds.Contains(bed.Bed)).Sum(bed => bed.LengthFt), one.Feet, 1e-6);
        }

        Assert.DoesNotContain(model.Rotation, one => model.Covers[one.Cover].Name == "Tray Room");
        Assert.Contains(model.NotChecked, one => one.StartsWith("rotation Glass House: no bed lies under", StringComparison.Ordinal));
    }

    [Fact]
    public void Facts_WithoutARow_AreNotCheckedAndSaySo()
    {
        FarmReview review = FarmFolder.Open(Path.Combine(TestFolders.Repository, "demo-data")).Review!;
        PlanModel model = PlanFacts.Of(review, SeasonCosts.Of(review.Season(2025)));
        Assert.Empty(model.Rotation);
        Assert.Contains(model.NotChecked, one => one.StartsWith("rotation: no row of limits", StringComparison.Ordinal));
        Assert.Contains(model.NotChecked, one => one.StartsWith("cash by month: no balance sheet", StringComparison.Ordinal));
    }

    /// <summary>What the plan lays into a bed that isn't free of its family, or twice in the year, is told of that bed; and it is little.</summary>
    [Fact]
    public void Beds_OfThePlan_AreFreeOfTheFamilyOrToldNotToBe()
    {
        (FarmReview review, PlanModel model) = Turned.Value;
        SeasonReview season = review.Season(2025);
        BestMix mix = BestMix.Of(model, Programs.Solver);
        PlanLengths chosen = mix.Rounded(mix.Simpler()!, 5.0);
        PlanDraft draft = DraftMaker.Of(season.Records, model, chosen.Feet, mix.QuantitiesOf(chosen.Feet)!);

        PlanOutlook outlook = PlanOutlook.Of(season, model, draft);

        Dictionary<string, decimal> lengths = season.Records.Tables.Beds.ToDictionary(bed => bed.Bed, bed => bed.LengthFt);
        foreach (PlanRotation one in model.Rotation)
        {
            foreach (
                IGrouping<string, DraftPlanting> bed in draft
                    .Plantings.Where(row => row.In >= model.Start && season.Records.Crop(row.Crop).Row.Family == one.Family)
                    .Where(row =>
                        PlanFacts.CoverOf(season.Records.Tables.Beds.First(bed => bed.Bed == row.Bed)) == model.Covers[one.Cover].Name
                    )
                    .GroupBy(row => row.Bed)
            )
            {
                bool fits = one.Beds.Contains(bed.Key) && bed.Sum(row => row.BedFeet) <= lengths[bed.Key] * 1.005m;
                Assert.Equal(!fits, outlook.Problems.Any(problem => problem.Family == one.Family && problem.Where == bed.Key));
            }
        }

        decimal beside = outlook.Problems.Where(problem => problem.Family is not null).Sum(problem => problem.Short);
        Assert.InRange(beside, 0m, 0.05m * draft.Plantings.Sum(row => row.BedFeet));
        Assert.All(
            outlook.Problems.Where(problem => problem.Family is not null),
            problem => Assert.Contains("comes again too soon, on ", PlanWords.Problem(problem, season.Notation), StringComparison.Ordinal)
        );
    }

    /// <summary>A crop without a family is told by its name; the rest is still limited.</summary>
    [Fact]
    public void Facts_OfACropWithoutFamily_SayWhichOne()
    {
        (_, PlanModel model) = Made("rotation,3,years,,\n", crops =>
            crops.Replace("Kale,bunch,greens,brassica,", "Kale,bunch,greens,,", StringComparison.Ordinal)
        );
        Assert.Contains("rotation of Kale: no family on record", model.NotChecked);
        Assert.Contains(model.Rotation, one => one.Family == "brassica");
    }

    private static (FarmReview Review, PlanModel Model) Made(string limits, Func<string, string>? crops = null)
    {
        string folder = TestFolders.Make([
            .. Directory
                .GetFiles(Path.Combine(TestFolders.Repository, "demo-data"), "*.csv")
                .Select(file => (Path.GetFileName(file), File.ReadAllText(file)))
                .Select(file =>
                    file.Item1 == "limits.csv" ? (file.Item1, file.Item2 + limits)
                    : file.Item1 == "crops.csv" && crops is not null ? (file.Item1, crops(file.Item2))
                    : file
                ),
        ]);
        FarmReview review = FarmFolder.Open(folder).Review!;
        return (review, PlanFacts.Of(review, SeasonCosts.Of(review.Season(2025))));
    }
}
