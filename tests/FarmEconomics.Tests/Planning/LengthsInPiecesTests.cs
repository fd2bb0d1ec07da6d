using FarmEconomics.Planning;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// Lengths rounded to pieces of bed on <see cref="SmallFarm"/>, by hand: down, then up by what was lost most, as far as the beds have room
/// and cash pays for it.
/// </summary>
public class LengthsInPiecesTests
{
    /// <summary>
    /// In tens of 100 feet. 37 lost 7, 62 too little (a quarter of a piece or less) to go up. 43 lost 3, 56 lost 6, and there is room for
    /// one. 42.5 lost a quarter, no more. Whole pieces stay, even where the beds don't hold them.
    /// </summary>
    [Theory]
    [InlineData(37.0, 62.0, 40.0, 60.0)]
    [InlineData(43.0, 56.0, 40.0, 60.0)]
    [InlineData(42.5, 50.0, 40.0, 50.0)]
    [InlineData(42.0, 50.0, 40.0, 50.0)]
    [InlineData(42.6, 50.0, 50.0, 50.0)]
    [InlineData(100.0, 10.0, 100.0, 10.0)]
    public void Rounded_DownThenUpWhereMostWasLost(double a, double b, double roundedA, double roundedB) =>
        Programs.Near([roundedA, roundedB], Rounded(SmallFarm.Of(), 10.0, a, b), 1e-9);

    /// <summary>
    /// 97 feet in week 15 alone: 40 + 50 + 10 don't fit in that week. Room under another cover, or in other weeks, is of no use, and what
    /// stands there takes none.
    /// </summary>
    [Fact]
    public void Rounded_Up_NeedsRoomInEveryWeekOfTheBed()
    {
        PlanModel farm = SmallFarm.Of();
        PlanModel narrow = farm with { Covers = [new PlanCover("open field", At(week => week == 15 ? 97.0 : 100.0))] };
        Programs.Near([40.0, 50.0], Rounded(narrow, 10.0, 43.0, 56.0), 1e-9);

        PlanSowing before = farm.Sowings[1] with { Week = 0, WeeksInBed = 10 }, after = before with { Week = 21, WeeksInBed = 31 };
        PlanSowing beside = before with { Cover = 1, Week = 10 };
        PlanModel full = farm with
        {
            Sowings = [farm.Sowings[0], before, after, beside],
            Covers = [.. farm.Covers, new PlanCover("Tunnel", SmallFarm.Weekly(100.0))],
        };
        Programs.Near([100.0, 100.0, 100.0, 100.0], Rounded(full, 10.0, 93.0, 100.0, 100.0, 100.0), 1e-9);
    }

    /// <summary>
    /// 36 of A take 0.25 trays a foot in week 9: 9 of the 9 there are, so 40 don't fit. A family that 46 free feet are left for takes no
    /// 50, and of a crop of which at most 38 are wanted no 40 are sown; of one of which at least 32 are, not 30.
    /// </summary>
    [Fact]
    public void Rounded_Up_KeepsTheNurseryRotationAndWishes()
    {
        PlanModel farm = SmallFarm.Of(aFamily: "brassica");
        PlanSowing raised = farm.Sowings[0] with { Trays = SmallFarm.At((9, 0.25)), NurseryWeeks = 1, TraysAFoot = 0.25 };
        PlanModel nursery = farm with { Sowings = [raised, farm.Sowings[1]], Trays = SmallFarm.Weekly(9.0) };
        Programs.Near([30.0, 40.0], Rounded(nursery, 10.0, 36.0, 36.0), 1e-9);
        Programs.Near([40.0, 40.0], Rounded(nursery with { Trays = SmallFarm.Weekly(10.0) }, 10.0, 36.0, 36.0), 1e-9);

        PlanModel rotation = farm with { Rotation = [new PlanRotation("brassica", 0, new HashSet<string> { "bed" }, 46.0)] };
        Programs.Near([40.0, 40.0], Rounded(rotation, 10.0, 46.0, 36.0), 1e-9);

        PlanModel Wished(double least, double most) =>
            farm with { Crops = [farm.Crops[0] with { Wish = (least, most) }, farm.Crops[1]] };
        Programs.Near([30.0, 40.0], Rounded(Wished(0.0, 38.0), 10.0, 36.0, 36.0), 1e-9);
        Programs.Near([40.0, 40.0], Rounded(Wished(32.0, 100.0), 10.0, 32.0, 36.0), 1e-9);
    }

    /// <summary>
    /// 46 feet go up to the very 50 that are free of A's family, though B's 40 stand next to them; 36 to the very 40 that are wanted at
    /// most. 40 of A take 10 trays where 9 are: of B, which takes none, there is still room for a piece.
    /// </summary>
    [Fact]
    public void Rounded_Up_FillsWhatThereIsToTheLastFoot()
    {
        PlanModel farm = SmallFarm.Of(aFamily: "brassica");
        PlanModel rotation = farm with { Rotation = [new PlanRotation("brassica", 0, new HashSet<string> { "bed" }, 50.0)] };
        Programs.Near([50.0, 40.0], Rounded(rotation, 10.0, 46.0, 36.0), 1e-9);

        PlanModel wished = farm with { Crops = [farm.Crops[0] with { Wish = (0.0, 40.0) }, farm.Crops[1]] };
        Programs.Near([40.0, 40.0], Rounded(wished, 10.0, 36.0, 36.0), 1e-9);

        PlanSowing raised = farm.Sowings[0] with { Trays = SmallFarm.At((9, 0.25)), NurseryWeeks = 1, TraysAFoot = 0.25 };
        PlanModel nursery = farm with { Sowings = [raised, farm.Sowings[1]], Trays = SmallFarm.Weekly(9.0) };
        Programs.Near([40.0, 40.0], Rounded(nursery, 10.0, 40.0, 36.0), 1e-9);
    }

    /// <summary>
    /// A is sown twice, 30 feet and 12, one after the other, and at least 40 are wanted: 30 + 10 are enough, and 2 are too little lost to
    /// go up. Of 30 and 22 at least 65 are wanted: 22 goes up to 30, little as it lost; 30, which lost nothing, stays.
    /// </summary>
    [Theory]
    [InlineData(12.0, 40.0, 10.0)]
    [InlineData(22.0, 65.0, 30.0)]
    public void Rounded_BelowTheLeast_CountsAllSowingsOfTheCrop(double second, double least, double rounded)
    {
        PlanModel farm = SmallFarm.Of();
        farm = farm with
        {
            Sowings = [farm.Sowings[0], farm.Sowings[0] with { Week = 21, Yield = At(week => week == 31 ? 1.0 : 0.0) }],
            Crops = [farm.Crops[0] with { Wish = (least, double.PositiveInfinity) }, farm.Crops[1]],
        };
        Programs.Near([30.0, rounded], Rounded(farm, 10.0, 30.0, second), 1e-9);
    }

    /// <summary>What stands isn't in pieces: 25 feet stay 25, beside 75 of which 70 are whole.</summary>
    [Fact]
    public void Rounded_LeavesWhatStandsAsItIs()
    {
        PlanModel farm = SmallFarm.Of();
        farm = farm with
        {
            Sowings = [farm.Sowings[0] with { Bounds = (25.0, 25.0), Standing = [new("X", "bed", 25.0, farm.Start)] }, farm.Sowings[1]],
        };
        Programs.Near([25.0, 70.0], Rounded(farm, 10.0, 25.0, 75.0), 1e-9);
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(-10.0)]
    public void Rounded_ToNoPiece_IsRefused(double piece) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Rounded(SmallFarm.Of(), piece, 10.0, 10.0));

    /// <summary>
    /// In twenties, both of 30 go up to 40: 40 x 2 + 40 x 0.5 = 100. With 90 there, A's piece, the dearer, is taken off, and that is
    /// enough. 40 of A weren't rounded up: with 96 B's piece goes. With 200 none does.
    /// </summary>
    [Theory]
    [InlineData(90.0, 30.0, 20.0, 40.0)]
    [InlineData(96.0, 40.0, 40.0, 20.0)]
    [InlineData(200.0, 30.0, 40.0, 40.0)]
    public void Rounded_ShortOfCash_TakesTheDearestPieceOffThatWasRoundedUp(double cash, double a, double roundedA, double roundedB) =>
        Programs.Near([roundedA, roundedB], Rounded(SmallFarm.Of() with { Cash = SmallFarm.Cash(cash) }, 20.0, a, 30.0), 1e-9);

    /// <summary>
    /// 70 in January, 80 spent on A in March, of which 20 sell at 5 in May; 90 go out in June: B, sown in July for September, is short of
    /// 10 as well. A brings its money before July, so B's piece is taken off first; then A's, for March.
    /// </summary>
    [Fact]
    public void Rounded_ShortOfCashTwice_TakesOffWhatBringsNothingByThen() =>
        Programs.Near([20.0, 20.0], Rounded(TwiceShort(0.5, (5, -90.0)), 20.0, 30.0, 30.0), 1e-9);

    /// <summary>
    /// The same with nothing to pay in June and B at 3 a foot, 120 of July's 90 + 100 (but for March's 10, which are short): what is sown
    /// in July is no help in March.
    /// </summary>
    [Fact]
    public void Rounded_ShortOfCashInSpring_LeavesWhatIsSownLater() =>
        Programs.Near([20.0, 40.0], Rounded(TwiceShort(3.0, (5, 60.0)), 20.0, 30.0, 30.0), 1e-9);

    /// <summary>
    /// 120 to be paid in May itself, with 0 (10 of it short) and 100 for A there: A is picked in that month, so none of it is taken off,
    /// and B can't help. Half as much A would leave 70 - 40 + 100 - 120 = 10.
    /// </summary>
    [Fact]
    public void Rounded_ShortOfCashInTheMonthOfPicking_LeavesWhatIsPicked() =>
        Programs.Near([40.0, 40.0], Rounded(TwiceShort(0.5, (4, -120.0), (6, 300.0)), 20.0, 30.0, 30.0), 1e-9);

    /// <summary>
    /// A in February, April, July and October, each rounded up from 30 feet to 40 for 80 where 70 are there, and picked within six weeks
    /// for 20 x 5, of which 30 go the month after: 10 short four times over. Pieces come off from the last month back, three times at most;
    /// February's stays.
    /// </summary>
    [Fact]
    public void Rounded_ShortOfCashOften_TakesPiecesOffThreeTimes()
    {
        PlanModel farm = SmallFarm.Of(aTakes: 20.0);
        PlanSowing[] sowings =
        [
            .. new[] { 5, 17, 29, 41 }.Select(sown =>
                farm.Sowings[0] with { Week = sown, WeeksInBed = 5, Yield = At(week => week == sown + 4 ? 1.0 : 0.0), Today = 20.0 }
            ),
        ];
        farm = farm with { Sowings = sowings, Cash = SmallFarm.Cash(70.0, 0.0, (2, -30.0), (5, -30.0), (8, -30.0)) };
        Programs.Near([40.0, 20.0, 20.0, 20.0], Rounded(farm, 20.0, 30.0, 30.0, 30.0, 30.0), 1e-9);
    }

    /// <summary>
    /// In sevens both of 10.50 go up to 14: 14 x 1.10 + 14 x 0.60 = 23.80, of which 16.10 are there. A's piece costs the very 7.70 that are
    /// short, so B's stays, whatever is left of a cent.
    /// </summary>
    [Fact]
    public void Rounded_ShortOfCashByAPiece_TakesThatOneOff()
    {
        PlanModel farm = SmallFarm.Of();
        farm = farm with
        {
            Sowings = [farm.Sowings[0] with { Cost = 1.10 }, farm.Sowings[1] with { Cost = 0.60 }],
            Cash = SmallFarm.Cash(16.10),
        };
        Programs.Near([7.0, 14.0], Rounded(farm, 7.0, 10.5, 10.5), 1e-9);
    }

    private static PlanModel TwiceShort(double costOfB, params (int Month, double Money)[] known)
    {
        PlanModel farm = SmallFarm.Of(aTakes: 20.0);
        PlanSowing b = farm.Sowings[1] with { Week = 27, WeeksInBed = 10, Yield = At(week => week == 36 ? 1.0 : 0.0), Cost = costOfB };
        return farm with { Sowings = [farm.Sowings[0], b], Cash = SmallFarm.Cash(70.0, 0.0, known) };
    }

    private static IReadOnlyList<double> Rounded(PlanModel farm, double piece, params double[] feet) =>
        BestMix.Of(farm, Programs.Solver).Rounded(new PlanLengths(feet, 0.0), piece).Feet;

    private static double[] At(Func<int, double> of) => [.. Enumerable.Range(0, PlanModel.Weeks).Select(of)];
}
