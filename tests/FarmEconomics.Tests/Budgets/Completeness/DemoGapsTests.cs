using FarmEconomics.Budgets.Completeness;
using FarmEconomics.Files;
using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.Tests.Budgets.Completeness;

public class DemoGapsTests
{
    [Fact]
    public void Gaps_OfTheDemoFarm_AreSortedByMoneyAndTellTheMissingPeppers()
    {
        FarmFolder farm = FarmFolder.Open(Path.Combine(TestFolders.Repository, "demo-data"));

        IReadOnlyList<RecordGap> gaps = CompletenessReview.Gaps(farm.Review!.Season(2024));

        Assert.Equal(gaps.OrderByDescending(gap => gap.Money).Select(gap => gap.Money), gaps.Select(gap => gap.Money));
        Assert.Contains(gaps, gap => gap.What.StartsWith("6 lb of Peppers left", StringComparison.Ordinal));
        Assert.All(gaps, gap => Assert.NotEmpty(gap.Changes));
    }
}
