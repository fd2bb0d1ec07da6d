using FarmEconomics.Planning;
using FarmEconomics.Planning.Programs;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// What stands in a plan's program and what doesn't, counted on <see cref="SmallFarm"/>: a limit or a quantity that nothing can come of
/// leaves the optimum as it is, but makes a farm of forty crops wait.
/// </summary>
public class ProgramRowsByHandTests
{
    /// <summary>
    /// Beds in the eleven weeks A and B stand, hours in all 52; in week 20 what is ripe of each crop and where it goes. Nothing stands in
    /// the tunnel, nothing is kept, boxed, wished for or raised in trays.
    /// </summary>
    [Fact]
    public void Rows_AreThoseThatSomethingCanComeOf()
    {
        PlanModel farm = SmallFarm.Of();
        PlanProgram program = new(farm with { Covers = [.. farm.Covers, new PlanCover("tunnel", SmallFarm.Weekly(50.0))] });
        Assert.Equal(Enumerable.Range(10, 11), Weeks(program, PlanLimitKind.Beds, 0));
        Assert.Equal(Enumerable.Range(0, 52), Weeks(program, PlanLimitKind.Hours, 0));
        Assert.Equal([20, 20], Weeks(program, PlanLimitKind.Balance, 0));
        Assert.Equal([20, 20], Weeks(program, PlanLimitKind.Balance, 1));
        Assert.Equal(11 + 52 + 4, program.Keys.Count);
        PlanSeasonPlaces places = Assert.Single(program.Incomes);
        Assert.Equal([(0, 20), (1, 20)], places.Picked.Keys);
        Assert.Equal([(0, 20, 0), (1, 20, 0)], places.Sold.Keys);
        Assert.Empty(places.Stock);
        Assert.Empty(places.Boxed);
        Assert.Empty(program.Changes);
    }

    /// <summary>The balance that tells how far a length lies from this year's is of no week; so is that of a season's income.</summary>
    [Fact]
    public void Rows_OfNoWeek_SaySo()
    {
        PlanModel farm = SmallFarm.Of();
        PlanProgram changes = new(farm with { ChangeCost = 0.2 });
        Assert.Equal([-1, 20, 20], Weeks(changes, PlanLimitKind.Balance, 1));
        Assert.Equal(4, changes.Changes.Count);
        PlanProgram seasons = new(farm, [PlanSeason.Mean(2) with { Chance = 0.5 }, PlanSeason.Mean(2) with { Chance = 0.5 }]);
        Assert.Equal([-1, -1, 20, 20, 20, 20], Weeks(seasons, PlanLimitKind.Balance, 0));
    }

    /// <summary>A keeps for three weeks: it lies in stock at the end of two; at the end of the year none is carried on.</summary>
    [Theory]
    [InlineData(20, new[] { 20, 21 })]
    [InlineData(51, new int[0])]
    public void Stock_LiesInTheWeeksItKeepsToTheYearsEnd(int picked, int[] weeks)
    {
        PlanModel farm = SmallFarm.Of();
        PlanProgram program = new(
            farm with
            {
                Sowings = [farm.Sowings[0] with { Yield = SmallFarm.At((picked, 1.0)) }, farm.Sowings[1]],
                Crops = [farm.Crops[0] with { Keeps = 3 }, farm.Crops[1]],
            }
        );
        Assert.Equal(weeks, program.Incomes[0].Stock.Keys.Select(key => key.Week));
    }

    /// <summary>
    /// Boxes go out in weeks 20 and 21. A, which keeps, goes into those of week 20 alone, where it is worth something in one; B may not go
    /// into any.
    /// </summary>
    [Fact]
    public void Boxes_HoldWhatMayAndIsWorthSomething()
    {
        PlanModel farm = SmallFarm.Of();
        PlanProgram program = new(
            farm with
            {
                Crops =
                [
                    farm.Crops[0] with { Keeps = 2, BoxMost = 10.0, BoxValue = SmallFarm.At((20, 4.0)) },
                    farm.Crops[1] with { BoxValue = SmallFarm.At((20, 4.0)) },
                ],
                BoxTarget = SmallFarm.At((20, 60.0), (21, 60.0)),
            }
        );
        Assert.Equal([20, 21], Weeks(program, PlanLimitKind.Boxes, 0));
        Assert.Equal([(0, 20)], program.Incomes[0].Boxed.Keys);
    }

    /// <summary>
    /// A foot of A takes a unit of water in weeks 12 and 13, 100 in all: more than the 50 of week 12, no more than the 100 of week 13, so
    /// week 12 alone has rows, and only A may miss some of it.
    /// </summary>
    [Fact]
    public void Water_HasRowsWhereItMayBeShort()
    {
        PlanModel farm = SmallFarm.Of();
        PlanWater water = new()
        {
            Limit = [.. Enumerable.Range(0, 52).Select(week => week switch { 12 => 50.0, 13 => 100.0, _ => double.PositiveInfinity })],
            Need = [SmallFarm.At((12, 1.0), (13, 1.0)), SmallFarm.Weekly(0.0)],
            Soil = [0.0, 0.0],
            LostPerUnit = [1.0, 1.0],
        };
        PlanProgram program = new(farm with { Water = water });
        Assert.Equal([12], Weeks(program, PlanLimitKind.Water, 0));
        Assert.Single(program.Model.Quantities, quantity => quantity.Name == "water missed");
    }

    /// <summary>
    /// 100 feet of A, none of B, which therefore is left out with all it would keep. 100 A are ripe in each of weeks 20 and 21, kept for
    /// one more week; a shop takes 100 a week at 5, so what the market pays 4 for can only come of week 21, when there may be 200: own,
    /// hired and other hours of 52 weeks, two of picking, two of stock, three of the shop and one of the market. 200 x 5 - 200.
    /// </summary>
    [Fact]
    public void Scores_HoldOnlyWhatCanComeOfTheLengths()
    {
        PlanModel farm = SmallFarm.Of();
        PlanStep[] steps = [new("shop", 100.0, 5.0, 0.0), new("market", 90.0, 4.0, 0.0)];
        farm = farm with
        {
            Sowings = [farm.Sowings[0] with { Yield = SmallFarm.At((20, 1.0), (21, 1.0)) }, farm.Sowings[1]],
            Crops =
            [
                farm.Crops[0] with { Keeps = 2, Wish = (20.0, double.PositiveInfinity), Steps = [.. Enumerable.Repeat(steps, 52)] },
                farm.Crops[1] with { Keeps = 2 },
            ],
        };
        Opened opened = new(Programs.Solver);
        Programs.Near([800.0], SeasonScores.Of(farm, opened, [100.0, 0.0], [PlanSeason.Mean(2)]), 1e-6);
        Assert.Equal((3 * 52) + 2 + 2 + 3 + 1, Assert.Single(opened.Models).Quantities.Count);
    }

    private static IEnumerable<int> Weeks(PlanProgram program, PlanLimitKind kind, int place) =>
        program.Keys.Where(key => key.Kind == kind && key.Place == place).Select(key => key.Week).Order();

    /// <summary>Keeps the models a solver is handed.</summary>
    private sealed class Opened(ILinearSolver solver) : ILinearSolver
    {
        internal List<LinearModel> Models { get; } = [];

        public ILinearRun Open(LinearModel model, bool once = false)
        {
            Models.Add(model);
            return solver.Open(model, once);
        }
    }
}
