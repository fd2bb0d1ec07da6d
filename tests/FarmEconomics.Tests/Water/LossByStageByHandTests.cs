using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Water;
using Xunit;

namespace FarmEconomics.Tests.Water;

/// <summary>
/// Losses by stage of growth on paper (docs/methods.md, section 19): eight days that need 4 mm each, the second of unknown weather; Ky 0.5
/// of the initial stage (days 1 and 2), 1.1 of mid-season (days 4 to 6), 0.9 of the season against 30 mm for the others.
/// </summary>
public class LossByStageByHandTests
{
    private static readonly CropWater Crop = new(new CropCoefficients(0.7, 1.0, 0.9), new StageDays(2, 2, 2, 2), 0.3, 0.3, 0.9);
    // Worked out for every test: a mutation tester sees only what happens while a test runs.
    private SowingLoss Staged { get; } = Of(Crop with { ByStage = new StageResponse(0.5, null, 1.1, null) }, 30.0);
    private SowingLoss Whole { get; } = Of(Crop, 30.0);

    private static SowingLoss Of(CropWater crop, double potential, double first = 4.0) =>
        new(crop, crop.Stages, ([first, 0.0, 4.0, 4.0, 4.0, 4.0, 4.0, 4.0], [true, false, true, true, true, true, true, true]), potential);

    [Fact]
    public void Period_OfADay_IsItsStagesWhereThatHasAKyOfItsOwn()
    {
        Assert.Equal([1, 1, 0, 3, 3, 3, 0, 0], Enumerable.Range(0, 8).Select(Staged.PeriodOf));
        Assert.Equal(new int[8], Enumerable.Range(0, 8).Select(Whole.PeriodOf));
        Assert.Equal((5, 1), (Staged.None().Length, Whole.None().Length));
    }

    /// <summary>
    /// A mm costs 0.5 / 8 in the initial stage (the unknown day as the other), 1.1 / 12 in mid-season, 0.9 / 30 else: 10, 2 and 6 mm leave
    /// 0.7 x 0.875 x 0.45 = 0.275625.
    /// </summary>
    [Fact]
    public void Lost_OfPeriods_IsOneLessTheProductOfWhatIsLeft()
    {
        Assert.Equal(1 - 0.275625, Staged.Of([10, 2, 0, 6, 0]), 12);
        Assert.Equal(0.125, Staged.Of([0, 2, 7, 0, 7]), 12); // stages without a Ky of their own hold nothing
        Assert.Equal((1.0, 1.0), (Staged.Of([50, 0, 0, 0, 0]), Staged.Of([0, 0, 0, 12, 0])));
        Assert.Equal(0.3, Whole.Of([10]), 12);
        Assert.Equal(1.0, Whole.Of([50]));
        Assert.Equal(0.0, Of(Crop, 0.0).Of([50]));
        Assert.Equal(0.0, Of(Crop with { ByStage = new StageResponse(0.5, null, null, null) }, 30.0, first: 0.0).Of([0, 5, 0, 0, 0]));
    }

    /// <summary>
    /// 6 mm on day 4 take 0.55; 2 mm on day 1 take 0.125 of the 0.45 left; 12 mm on day 5 take the 0.45 that mid-season has left, of 0.875.
    /// </summary>
    [Fact]
    public void Lost_DayByDay_IsTheDaysOwnOfWhatTheOthersLeft()
    {
        double[] lost = Staged.None();
        Assert.Equal(0.55, Staged.On(3, 6, lost), 12);
        Assert.Equal(0.125 * 0.45, Staged.On(0, 2, lost), 12);
        Assert.Equal(0.45 * 0.875, Staged.On(4, 12, lost), 12);
        Assert.Equal(0.0, Staged.On(5, 12, lost), 12);
        Assert.Equal([0.0, 0.125, 0.0, 1.0, 0.0], lost.Select(part => Math.Round(part, 12)));
    }

    [Fact]
    public void Stages_OneKyIsEnoughToCount()
    {
        Assert.False(default(StageResponse).IsSet);
        foreach (
            StageResponse one in (StageResponse[])
                [new(1, null, null, null), new(null, 1, null, null), new(null, null, 1, null), new(null, null, null, 1)]
        )
        {
            Assert.True(one.IsSet);
            Assert.False(one.IsWhole);
        }

        Assert.True(new StageResponse(1, 1, 1, 1).IsWhole);
    }

    /// <summary>
    /// One column of the crops table is enough for the coefficients to be the grower's; the other two stay those of small vegetables.
    /// </summary>
    [Theory]
    [InlineData(0, 0.5, 1.05, 0.95)]
    [InlineData(1, 0.7, 0.5, 0.95)]
    [InlineData(2, 0.7, 1.05, 0.5)]
    public void Coefficients_OneColumn_IsTheGrowers(int column, double ini, double mid, double end)
    {
        FarmBuilder farm = new FarmBuilder().Crop("Herb nobody lists");
        farm.Set(farm.Tables.Crops[0], new[] { CropRow.KcIniColumn, CropRow.KcMidColumn, CropRow.KcEndColumn }[column], 0.5m);
        CropWater water = CropWater.Of(farm.Link().Crop("Herb nobody lists"));
        Assert.Equal(WaterFigure.Given, water.CoefficientsFrom);
        Assert.Equal(new CropCoefficients(ini, mid, end), water.Coefficients);
        Assert.Equal((WaterFigure.NotListed, 1.0), (water.ResponseFrom, water.Response));
    }
}
