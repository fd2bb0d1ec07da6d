namespace FarmEconomics.Planning;

/// <summary>Cash by month: what there is at the beginning, what comes and goes whatever is grown, and what may be borrowed.</summary>
public sealed record PlanCash
{
    /// <summary>Cash at the beginning of the year, money.</summary>
    public required double Opening { get; init; }

    /// <summary>
    /// What customers owe at the beginning for what was sold before, money: it comes in in the first month, and as much is unpaid again at
    /// the end.
    /// </summary>
    public double Unpaid { get; init; }

    /// <summary>
    /// What comes in less what goes out whatever is grown, by month of the year: members' payments, other income and
    /// <see cref="Unpaid"/>, less running costs, taxes and what the household draws.
    /// </summary>
    public required IReadOnlyList<double> Fixed { get; init; }

    /// <summary>The most that may be owed at the end of each month, 0 or more; 0: no line of credit is on record.</summary>
    public required IReadOnlyList<double> Line { get; init; }

    /// <summary>The month of each week's first day, from 0.</summary>
    public required IReadOnlyList<int> MonthOfWeek { get; init; }

    /// <summary>True where a line of credit is on record.</summary>
    public bool HasLine => Line.Any(line => line > 0.0);

    /// <summary>
    /// What a unit of money short costs where the limit may be broken: it steers alone and is no cost; null: the limit holds.
    /// </summary>
    internal double? ShortCosts { get; init; }
}

/// <summary>Cash that falls short whatever is grown.</summary>
/// <param name="Month">The month at whose end it is most, from 0.</param>
/// <param name="By">By how much, money.</param>
public sealed record CashShort(int Month, double By);

/// <summary>
/// Cash by month in a plan's program, as <see cref="PlanOutlook"/> tells it: sales less fees in the week they are sold, hired hours and
/// bought-in produce in theirs, seed, supplies and packaging when a planting is sown. Over several seasons it is their mean.
/// </summary>
internal static class PlanCashLimits
{
    /// <summary>Where lengths are given and the rest is chosen: enough to sell early or hire less for, within reason.</summary>
    internal const double Steers = 1.0;

    /// <summary>Where nothing but the least that is short is looked for.</summary>
    internal const double LeastShort = 1000.0;

    /// <summary>What rounding to cents may leave.</summary>
    internal const double Slack = 0.01;

    // Among months alike the latest counts as the one that is short.
    private const double Later = 1e-4;

    /// <summary>
    /// Adds cash at the end of each month, no lower than its limit, and the rows that hold it: their shadow price is what a unit of money
    /// more from that month on is worth.
    /// </summary>
    internal static void Add(PlanModel plan, PlanProgram program)
    {
        if (plan.Cash is not { } cash)
        {
            return;
        }

        ILookup<int, (int Month, int Quantity, double Money)> flows = Flows(plan, cash, program).ToLookup(flow => flow.Month);
        for (int month = 0; month < cash.Fixed.Count; month++)
        {
            double known = cash.Fixed[month] + (month == 0 ? cash.Opening : 0.0);
            int closing = program.Model.AddQuantity("cash", 0.0, least: -cash.Line[month]);
            int row = program.Limit(new(PlanLimitKind.Cash, 0, month), known, known);
            program.Model.Set(row, closing, 1.0);
            if (month > 0)
            {
                program.Model.Set(row, program.Cash[month - 1], -1.0);
            }

            foreach ((_, int quantity, double money) in flows[month])
            {
                program.Model.Set(row, quantity, -money);
            }

            if (cash.ShortCosts is { } costs)
            {
                program.CashShort.Add(program.Model.AddQuantity("short of cash", -costs * (1.0 - (Later * month))));
                program.Model.Set(row, program.CashShort[^1], -1.0);
            }

            program.Cash.Add(closing);
        }
    }

    /// <summary>
    /// What is short in a solution in all, and the last month in which more of it is; null where nothing is, to a unit of money.
    /// </summary>
    internal static CashShort? ShortOf(PlanProgram program, IReadOnlyList<double> values)
    {
        double all = program.CashShort.Sum(at => values[at]);
        return all <= 1.0 ? null : new CashShort(program.CashShort.FindLastIndex(at => values[at] > Slack), all);
    }

    /// <summary>What <see cref="PlanCash.ShortCosts"/> took off the objective.</summary>
    internal static double Charged(PlanProgram program, IReadOnlyList<double> values) =>
        program.CashShort.Sum(at => -program.Model.Quantities[at].Worth * values[at]);

    /// <summary>True where a solution of a program without these rows keeps them.</summary>
    internal static bool AreKept(PlanModel plan, PlanCash cash, PlanProgram program, IReadOnlyList<double> values)
    {
        double[] closing = [.. cash.Fixed];
        closing[0] += cash.Opening;
        foreach ((int month, int quantity, double money) in Flows(plan, cash, program))
        {
            closing[month] += money * values[quantity];
        }

        for (int month = 0; month < closing.Length; month++)
        {
            closing[month] += month > 0 ? closing[month - 1] : 0.0;
            if (closing[month] < -cash.Line[month] - Slack)
            {
                return false;
            }
        }

        return true;
    }

    private static IEnumerable<(int Month, int Quantity, double Money)> Flows(PlanModel plan, PlanCash cash, PlanProgram program)
    {
        for (int i = 0; i < plan.Sowings.Count; i++)
        {
            PlanSowing sowing = plan.Sowings[i];
            if (sowing.PaidIn is not null || (sowing.Standing.Count == 0 && sowing.Week >= 0))
            {
                yield return (cash.MonthOfWeek[SownIn(sowing)], program.Lengths[i], -SuppliesOf(plan, sowing));
            }
        }

        for (int season = 0; season < program.Incomes.Length; season++)
        {
            foreach ((int week, int quantity, double money) in FlowsOf(plan, program, season))
            {
                yield return (cash.MonthOfWeek[week], quantity, money * program.Seasons[season].Chance);
            }
        }
    }

    /// <summary>The week it is sown in, in the nursery or in place; that a perennial's cost of the year is paid in.</summary>
    internal static int SownIn(PlanSowing sowing) =>
        sowing.PaidIn ?? Math.Clamp(sowing.Week - sowing.NurseryWeeks, 0, PlanModel.Weeks - 1);

    /// <summary>Seed, supplies and packaging of a bed-foot, all that is ripe picked.</summary>
    internal static double SuppliesOf(PlanModel plan, PlanSowing sowing)
    {
        PlanCrop crop = plan.Crops[sowing.Crop];
        double units = sowing.Yield.Sum() + sowing.LaterUnits;
        return sowing.Cost + (units * (crop.PickedCost + crop.SoldCost));
    }

    private static IEnumerable<(int Week, int Quantity, double Money)> FlowsOf(PlanModel plan, PlanProgram program, int season)
    {
        PlanSeasonPlaces places = program.Incomes[season];
        foreach (((int crop, int week, int step), int quantity) in places.Sold)
        {
            yield return (week, quantity, plan.Crops[crop].Steps[week][step].Net * program.Seasons[season].Price[crop]);
        }

        for (int week = 0; week < PlanModel.Weeks; week++)
        {
            yield return (week, places.Hired[week], -plan.Hours.HiredCost);
            if (places.Bought[week] is { } bought)
            {
                yield return (week, bought, -plan.BuyIn);
            }
        }
    }
}
