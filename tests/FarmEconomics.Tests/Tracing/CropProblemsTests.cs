using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Tracing;

/// <summary>
/// Of one kind of problem in one file 1,000 are told, in the order of their dates; the last says how many more there are.
/// </summary>
public class CropProblemsTests
{
    /// <summary>
    /// 1,003 meals of kale on 2 June and one of leeks on the day before, none with a price: 1,004, 4 of them not told. One sale on 30 June
    /// at its list price is of another kind.
    /// </summary>
    [Fact]
    public void ManyOfAKind_AreToldUpToAThousandAndCounted()
    {
        FarmBuilder farm = new FarmBuilder().Crop("kale").Crop("leeks").Crop("peas").Bed("bed").Channel("home", ChannelKind.Household)
            .Channel("market", ChannelKind.Market).Price("peas", 3).AsOf("2025-12-31").Sell("2025-06-30", "peas", "market", 1);
        for (int meal = 0; meal < 1_003; meal++)
        {
            farm.Sell("2025-06-02", "kale", "home", 1);
        }

        IReadOnlyList<Problem> told = farm.Sell("2025-06-01", "leeks", "home", 1).Review().Trace.Problems;
        List<Problem> meals = [.. told.Where(problem => problem.Code == "W405")];
        Assert.Equal(1_000, meals.Count);
        Assert.Contains("leeks on 2025-06-01", meals[0].Message, StringComparison.Ordinal);
        Assert.All(meals[..^1], problem => Assert.Equal(0, problem.Further));
        Assert.Equal(4, meals[^1].Further);
        Assert.Equal(0, Assert.Single(told, problem => problem.Code == "W406").Further);
    }
}
