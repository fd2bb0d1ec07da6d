using System.Globalization;
using FarmEconomics.Budgets;
using FarmEconomics.Files;
using FarmEconomics.Files.Results;
using FarmEconomics.Planning.Variances;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Planning;
using FarmEconomics.Tests.Files;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>The demo farm beside its plans, after the season and in the middle of it.</summary>
public class PlanVariancesTests
{
    private static readonly string Demo = Path.Combine(TestFolders.Repository, "demo-data");
    private static readonly Lazy<FarmReview> Whole = new(() => FarmFolder.Open(Demo).Review!);
    private static readonly Lazy<FarmFolder> Half = new(() => FarmFolder.Open(Demo, [new("as_of", "2025-08-10")]));

    [Theory]
    [InlineData(2024)]
    [InlineData(2025)]
    public void Parts_OfAWholeSeason_SumToTheDifferenceToTheCentAndTheYearIsThePlan(int year)
    {
        PlanVariances variances = PlanVariances.Of(Whole.Value.Season(year))!;

        AssertSums(variances);
        Assert.False(variances.IsPartOfYear);
        Assert.Equal(variances.Planned, variances.YearPlanned);
        Assert.Equal(variances.Actual, variances.Outlook);
        Assert.True(
            Enum.GetValues<VarianceKind>().Count(kind => Math.Abs(variances.Of(kind).Amount) >= 100m) >= 6,
            "the demo's plan has several reasons"
        );
    }

    [Fact]
    public void Parts_DuringTheSeason_SumTooAndTheOutlookIsWhatCameAndTheRestOfThePlan()
    {
        PlanVariances half = PlanVariances.Of(Half.Value.Review!.Season(2025))!;

        AssertSums(half);
        Assert.True(half.IsPartOfYear);
        Assert.Equal(new DateOnly(2025, 8, 10), half.UpTo);
        Assert.InRange(half.Planned.Amount, 1m, half.YearPlanned.Amount - 1m);
        Assert.Equal(
            PlanVariances.Of(Whole.Value.Season(2025))!.Crops.Count(crop => crop.Planned != Money.Zero),
            half.Crops.Count(crop => crop.Planned != Money.Zero)
        );
        Assert.Equal(half.Actual + half.YearPlanned - half.Planned, half.Outlook);
        string words = VarianceWords.Headline(half);
        Assert.StartsWith("Up to Aug 10 the crops brought $", words, StringComparison.Ordinal);
        Assert.Contains("With the plan for the rest of the year", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Season_WithoutAPlan_HasNone() => Assert.Null(PlanVariances.Of(Whole.Value.Season(2023)));

    [Fact]
    public void Table_OfASeason_IsThatOfTheVariancesAndHeadingsAloneWithoutAPlan()
    {
        PlanVariances variances = PlanVariances.Of(Whole.Value.Season(2025))!;
        string[][] rows = Rows(2025), none = Rows(2023);

        Assert.Single(none);
        Assert.Equal(rows[0], none[0]);
        Assert.Equal(variances.Crops.Select(crop => crop.Crop), rows.Skip(1).Select(row => row[1]));
        Assert.All(rows.Skip(1), row =>
        {
            decimal[] money = [.. row.Skip(3).Select(text => decimal.Parse(text, CultureInfo.InvariantCulture))];
            Assert.Equal(money[1] - money[0], money[2]);
            Assert.Equal(money[2], money.Skip(3).Sum());
        });
    }

    [Fact]
    public void Words_ForTheSeasonsPage_NameTheSumTheReasonsTheCropsAndTheWayToTheRest()
    {
        ReviewedFarm farm = ReviewedFarm.Of(FarmFolder.Open(Demo), 2025);

        string words = VarianceWords.Short(farm.Planned!, farm.Slugs, "farm:next-year#rest").Markdown;

        Assert.StartsWith(
            "In 2025 the crops brought $",
            VarianceWords.Short(farm.Planned!, farm.Slugs, "farm:next-year#rest").ToPlainText(),
            StringComparison.Ordinal
        );
        Assert.Contains(" by hours", words, StringComparison.Ordinal);
        Assert.Contains("(farm:crops/radish)", words, StringComparison.Ordinal);
        Assert.EndsWith("[Crop by crop](farm:next-year#rest).", words, StringComparison.Ordinal);
        Assert.Null(ReviewedFarm.Of(FarmFolder.Open(Demo), 2023).Planned);
    }

    private static void AssertSums(PlanVariances variances)
    {
        Assert.All(variances.Crops, crop => Assert.Equal(crop.Difference, Money.Sum(crop.Parts.Values)));
        Assert.Equal(variances.Actual - variances.Planned, Money.Sum(Enum.GetValues<VarianceKind>().Select(variances.Of)));
    }

    private static string[][] Rows(int year)
    {
        string folder = TestFolders.Make();
        ResultTables.Write(Whole.Value.Season(year), [], folder);
        return [.. File.ReadLines(Path.Combine(folder, "plan_against_actual.csv")).Select(line => line.Split(','))];
    }
}
