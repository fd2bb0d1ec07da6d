using FarmEconomics.Planning.Programs;

namespace FarmEconomics.Planning;

/// <content>Lengths in pieces of bed.</content>
public sealed partial class BestMix
{
    // How often pieces are taken off again where rounding left cash short.
    private const int MostRounds = 3;

    /// <summary>
    /// The lengths in pieces of bed, without another program: each rounded down, then those that lost most rounded up as far as their beds
    /// have room.
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
        foreach (
            int i in Enumerable
                .Range(0, feet.Length)
                .Where(i => lengths.Feet[i] - feet[i] > piece / 4.0)
                .OrderByDescending(i => lengths.Feet[i] - feet[i])
        )
        {
            PlanSowing sowing = Model.Sowings[i];
            bool room = Enumerable
                .Range(Math.Max(0, sowing.Week), Math.Min(PlanModel.Weeks, sowing.Week + sowing.WeeksInBed) - Math.Max(0, sowing.Week))
                .All(week =>
                    Enumerable
                        .Range(0, feet.Length)
                        .Where(j => Model.Sowings[j].Cover == sowing.Cover && Model.Sowings[j].Holds(week))
                        .Sum(j => feet[j]) + piece
                    <= Model.Covers[sowing.Cover].Feet[week] + 1e-9
                );
            feet[i] += room ? piece : 0.0;
        }

        for (int round = 0; round < MostRounds && ShortOfCash(feet) is { } found && LeaveOff(feet, lengths.Feet, piece, found); round++)
        {
        }

        return Score(feet);
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
