using FarmEconomics.Water;
using Xunit;

namespace FarmEconomics.Tests.Water;

/// <summary>
/// 13 blocks of <see cref="TriageByHandTests"/> with sets of 30 gallons that may run on each of two days: more than a million ways (3 to
/// the 13th), so that set after set goes where a gallon saves most. Blocks are worth 1000, 4000, 7000, 3000, 6000, 2000, 5000 and so on.
/// </summary>
public class ManySetsByHandTests
{
    private const double Gallon = 3.785411784;

    private static int?[] Sets(double gallons)
    {
        WaterTriage list = WaterTriage.Of(
            DryFarm.Farm(TriageByHandTests.Builder(13, [30])),
            new WaterAtHand(new DateOnly(2025, 7, 10), 2, gallons * Gallon, false),
            (sowing, _) => 1000.0 * (1 + (sowing.Block.Index * 3 % 7))
        );
        return [.. list.Lines.OrderBy(line => line.Block.Index).Select(line => line.Sets)];
    }

    /// <summary>
    /// A set is 2.44 mm. The second on a block brings it past the 3.7 mm (2 x 6.35 - 9) from which on a mm saves less, so the first on both
    /// blocks worth 7000, the third and the tenth, goes before the second on one of them.
    /// </summary>
    [Fact]
    public void SecondSet_SavesLessThanTheFirstOnAnother() =>
        Assert.Equal([0, 0, 1, 0, 0, 0, 0, 0, 0, 1, 0, 0, 0], Sets(60));

    /// <summary>With water for all sets every block has both, the first of the table too.</summary>
    [Fact]
    public void WaterForAllSets_LeavesNoBlockOut() => Assert.All(Sets((13 * 60) + 1), sets => Assert.Equal(2, sets));
}
