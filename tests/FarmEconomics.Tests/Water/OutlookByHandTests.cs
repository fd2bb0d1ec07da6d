using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Water;
using Xunit;

namespace FarmEconomics.Tests.Water;

/// <summary>What a block's days ahead are about to lose, and the curve of what water gains there, by hand.</summary>
public class OutlookByHandTests
{
    private static readonly DateOnly First = new(2025, 7, 10);

    // Worked out for every test: a mutation tester sees only what happens while a test runs.
    private SowingWater Thin { get; } = WholeFarm.FourDays("A").Water().Sowings[0];

    /// <summary>
    /// A hundred days, July 10 to October 17, that need 6.5 mm each, 650 in all; the soil holds 30, 9 of them without stress.
    /// </summary>
    private SowingWater Deep { get; } = WholeFarm.Built().Weather("2025-07-10", "2025-07-31", 6.5m).Block("A", WholeFarm.Deep)
        .Grows("A", "2025-07-10", "2025-10-18").Water().Sowings[0];

    private static BlockOutlook Outlook(SowingWater sowing, double stake, int days = 7, int doses = 1) =>
        new(sowing.Block, [new SowingOutlook(sowing, First, days, 0, stake)], doses, 10);

    /// <summary>
    /// The first day's 8 mm of a full soil at 10 liters each; on two days of watering twice as much, where so many are looked at.
    /// </summary>
    [Theory]
    [InlineData(7, 1, 80.0)]
    [InlineData(7, 2, 160.0)]
    [InlineData(1, 2, 80.0)]
    public void Most_IsTheNeedOfTheDaysOfWatering(int days, int doses, double liters) =>
        Assert.Equal(liters, Outlook(Thin, 1000, days, doses).Most, 1e-9);

    /// <summary>One part's soil is full and takes the day's 8 mm, the other's 2 mm dry and takes 10: at 10 liters each 100.</summary>
    [Fact]
    public void Most_OfTwoSowings_IsThatOfTheDrier()
    {
        SowingOutlook full = new(Thin, First, 7, 0, 1000);
        Assert.Equal(100.0, new BlockOutlook(Thin.Block, [full, full with { Depletion = 2 }], 1, 10).Most, 1e-9);
        Assert.Equal(100.0, new BlockOutlook(Thin.Block, [full with { Depletion = 2 }, full], 1, 10).Most, 1e-9);
    }

    [Fact]
    public void Most_WhereNothingIsAtStake_IsNone()
    {
        BlockOutlook outlook = Outlook(Thin, 0);
        Assert.Equal((0.0, 0.0), (outlook.Unwatered, outlook.Most));
        Assert.Empty(outlook.Curve().Pieces);
        Assert.Empty(outlook.Curve(4).Pieces);
    }

    /// <summary>
    /// A soil of 3 mm that is 1.5 dry has 1.5 left of the 8 needed, though at its stress 8 x 1.5 / 2.1 could be taken up: 6.5 of 32 missed.
    /// </summary>
    [Fact]
    public void LostAhead_OfADrySoil_TakesUpNoMoreThanThereIs()
    {
        Assert.Equal(6.5 / 32, Thin.LostAhead(First, 1, 1.5, (0, 0)), 1e-9);
        Assert.Equal(4.5 / 32, Thin.LostAhead(First, 1, 1.5, (2, 1)), 1e-9);
        Assert.Equal((8 - (8 * 1.5 / 2.1)) / 32, Thin.LostAhead(First, 1, 1.5, (5, 1)), 1e-9);
    }

    [Fact]
    public void Potential_OfDaysNoneOfWhichIsKnown_IsNothing()
    {
        Assert.Equal(0.0, SowingWater.PotentialOf(0, 5, 0));
        Assert.Equal(20.0, SowingWater.PotentialOf(8, 5, 2), 1e-9); // 4 a day on the two days known
    }

    /// <summary>
    /// Up to 4 mm the third day begins drier than 9 (2 x 6.5 - 4) and is under stress, with more it isn't: there what a mm gains falls. The
    /// first day's 6.5 mm are 65 liters; halved ten times, the piece that holds the bend is 65 / 1024 long, and the gain at the bend is
    /// right to a hundred-thousandth of what is at stake, be that 1000 or a cent.
    /// </summary>
    [Theory]
    [InlineData(1000.0)]
    [InlineData(0.01)]
    public void Curve_AtABend_IsHalvedTenTimes(double stake)
    {
        BlockOutlook outlook = Outlook(Deep, stake);
        GainCurve curve = outlook.Curve();

        Assert.Equal(65.0, outlook.Most, 1e-9);
        Assert.Equal(65.0, curve.Most, 1e-9);
        Assert.Equal(65.0 / 1024, curve.Pieces.Min(piece => piece.Amount), 1e-9);
        double unwatered = Missed(0) / 650 * stake;
        Assert.Equal(unwatered, outlook.Unwatered, 1e-9 * stake);
        foreach (double mm in (double[])[1, 3, 4, 5, 6.5])
        {
            Assert.Equal(unwatered - (Missed(mm) / 650 * stake), curve.Gain(mm * 10), 1e-5 * unwatered);
        }
    }

    /// <summary>
    /// A crop that is lost once 2 of its day's 8 mm are missed, in a soil that holds 3: up to 3 mm (of 5) nothing is saved, with 5 all, and
    /// more is of no use. Halfway, at 4 of 8 mm, half is saved, as on a straight line from end to end, so a first look sees no bend.
    /// </summary>
    [Fact]
    public void Curve_ThatBendsTwiceAroundItsMiddle_IsSeenToBend()
    {
        BlockOutlook outlook = Outlook(Lost(2), 100, days: 1);
        Assert.Equal([0.0, 0.0, 50.0, 100.0, 100.0],
            new[] { 0, 30, 40, 50, 80 }.Select(liters => Math.Round(outlook.Unwatered - outlook.Loss(liters), 9)));
        GainCurve curve = outlook.Curve();
        Assert.Equal((50.0, 100.0), (Math.Round(curve.Most, 9), Math.Round(curve.All, 9)));
    }

    /// <summary>The four days of thin soil with a Ky at which so many mm missed, of the 32 needed, are all of the yield.</summary>
    private static SowingWater Lost(decimal mm)
    {
        FarmBuilder farm = WholeFarm.FourDays("A");
        return farm.Set(farm.Tables.Crops[0], CropRow.KyColumn, 32m / mm).Water().Sowings[0];
    }

    /// <summary>mm missed in seven days of the deep soil with so much put on the first.</summary>
    private static double Missed(double mm)
    {
        (double dry, double missed) = (0.0, 0.0);
        for (int day = 0; day < 7; day++)
        {
            double put = day == 0 ? mm : 0.0;
            double used = Math.Min(dry <= 9.0 ? 6.5 : 6.5 * (30.0 - dry) / 21.0, 30.0 - dry + put);
            missed += 6.5 - used;
            dry += used - put;
        }

        return missed;
    }
}
