using FarmEconomics.Planning.Programs;

namespace FarmEconomics.Planning;

/// <content>Lengths in pieces of bed.</content>
public sealed partial class BestMix
{
    // How often pieces are taken off again where rounding left cash short.
    private const int MostRounds = 3;

    /// <summary>
    /// The lengths in pieces of bed, without another program: each rounded down, then those that lost most rounded up as far as beds,
    /// trays, rotation and the grower's most have room, and further where they fall short of his least.
    /// </summary>
    /// <param name="lengths">The lengths.</param>
    /// <param name="piece">Bed-feet of a piece, above 0.</param>
    /// <returns>The lengths in pieces with their worth.</returns>
    public PlanLengths Rounded(PlanLengths lengths, double piece)
    {
        ArgumentNullException.ThrowIfNull(lengths);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(piece);
        double[] feet =
        [
            .. lengths.Feet.Select(
                (length, i) => Model.Sowings[i].Bounds.Least > 0.0 ? length : Math.Floor((length / piece) + 1e-9) * piece
            ),
        ];
        foreach (int i in Enumerable.Range(0, feet.Length).Where(i => lengths.Feet[i] - feet[i] > 1e-6)
            .OrderByDescending(i => lengths.Feet[i] - feet[i]))
        {
            bool wanted = lengths.Feet[i] - feet[i] > piece / 4.0 || Grown(feet, i) < Model.Crops[Model.Sowings[i].Crop].Wish.Least - 1e-9;
            feet[i] += wanted && HasRoom(feet, i, piece) ? piece : 0.0;
        }

        for (int round = 0; round < MostRounds && ShortOfCash(feet) is { } found && LeaveOff(feet, lengths.Feet, piece, found); round++)
        {
        }

        return Score(feet);
    }

    private double Grown(double[] feet, int sowing) =>
        Enumerable.Range(0, feet.Length).Where(j => Model.Sowings[j].Crop == Model.Sowings[sowing].Crop).Sum(j => feet[j]);

    /// <summary>True where one more piece of a sowing keeps within beds, trays, rotation and what the grower wants at most.</summary>
    private bool HasRoom(double[] feet, int at, double piece)
    {
        PlanSowing sowing = Model.Sowings[at];
        int from = Math.Max(0, sowing.Week), to = Math.Min(PlanModel.Weeks, sowing.Week + sowing.WeeksInBed);
        double Sum(Func<PlanSowing, double> of) => Enumerable.Range(0, feet.Length).Sum(j => feet[j] * of(Model.Sowings[j]));
        bool Bed(int week) => Sum(one => one.Cover == sowing.Cover && one.Holds(week) ? 1.0 : 0.0) + piece
            <= Model.Covers[sowing.Cover].Feet[week] + 1e-9;
        bool Nursery(int week) => Model.Trays is not { } most || sowing.Trays[week] <= 0.0
            || Sum(one => one.Trays[week]) + (piece * sowing.Trays[week]) <= most[week] + 1e-9;
        bool Free(PlanRotation one) => Sum(other => one.Holds(Model, other) ? 1.0 : 0.0) + piece <= one.Feet + 1e-9;
        return Enumerable.Range(from, Math.Max(0, to - from)).All(Bed)
            && Enumerable.Range(0, PlanModel.Weeks).All(Nursery)
            && Model.Rotation.Where(one => one.Holds(Model, sowing)).All(Free)
            && Grown(feet, at) + piece <= Model.Crops[sowing.Crop].Wish.Most + 1e-9;
    }

    /// <summary>By how much lengths leave cash short; null where they don't, to a unit of money.</summary>
    private CashShort? ShortOfCash(double[] feet)
    {
        (PlanProgram program, LinearSolution solution) = SolveFixed([.. feet], keptCash);
        return solution.IsOptimal ? PlanCashLimits.ShortOf(program, solution.Values) : null;
    }

    /// <summary>
    /// Takes pieces that were rounded up, and bring nothing by the end of a month that is short, off again; false where there are none.
    /// </summary>
    private bool LeaveOff(double[] feet, IReadOnlyList<double> lengths, double piece, CashShort found)
    {
        int MonthOf(int week) => keptCash!.MonthOfWeek[Math.Clamp(week, 0, PlanModel.Weeks - 1)];
        bool CostsBefore(int i) => Model.Sowings[i].Standing.Count == 0 && MonthOf(PlanCashLimits.SownIn(Model.Sowings[i])) <= found.Month
            && !Enumerable.Range(0, PlanModel.Weeks).Any(week => Model.Sowings[i].Yield[week] > 0.0 && MonthOf(week) <= found.Month);
        double left = found.By;
        foreach (int i in Enumerable.Range(0, feet.Length).Where(i => feet[i] > lengths[i] && CostsBefore(i))
            .OrderByDescending(i => PlanCashLimits.SuppliesOf(Model, Model.Sowings[i])))
        {
            if (left <= PlanCashLimits.Slack)
            {
                break;
            }

            feet[i] -= piece;
            left -= PlanCashLimits.SuppliesOf(Model, Model.Sowings[i]) * piece;
        }

        return left < found.By;
    }
}
