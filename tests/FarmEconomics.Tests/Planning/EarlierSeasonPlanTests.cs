using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Files;
using FarmEconomics.Planning;
using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>A plan made from a season that others follow on record: it knows nothing of them.</summary>
public class EarlierSeasonPlanTests
{
    private static readonly Lazy<PlanModel> From2023 = new(() =>
    {
        FarmReview review = FarmFolder.Open(Path.Combine(TestFolders.Repository, "demo-data")).Review!;
        return PlanFacts.Of(review, SeasonCosts.Of(review.Season(2023)));
    });

    [Fact]
    public void Model_OfAnEarlierSeason_TakesOnlyWhatStoodAtItsEndAsStanding()
    {
        StandingBed[] standing = [.. From2023.Value.Sowings.SelectMany(sowing => sowing.Standing)];
        Assert.NotEmpty(standing);
        Assert.All(standing, bed => Assert.True(bed.In < new DateOnly(2024, 1, 1), $"{bed.Planting} came in on {bed.In}"));
    }

    [Fact]
    public void Best_FromOneSeason_KeepsWithinTheLimits()
    {
        BestMix mix = BestMix.Of(From2023.Value, Programs.Solver);
        Assert.True(mix.Best!.Worth > mix.Today.Worth);
        Assert.Empty(mix.Short);
    }
}
