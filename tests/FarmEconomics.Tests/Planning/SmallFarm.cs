using FarmEconomics.Planning;

namespace FarmEconomics.Tests.Planning;

/// <summary>A farm of two crops small enough to be solved by hand: 100 bed-feet, sown in week 10 (March), picked and sold in week 20 (May).</summary>
internal static class SmallFarm
{
    internal const int SownWeek = 10;
    internal const int SoldWeek = 20;

    /// <summary>A costs 2 a foot and sells at 5, B costs 0.5 and sells at 3; the market takes all of both. Without more limits: 100 A, 300.</summary>
    internal static PlanModel Of(double aTakes = 1000.0, string? aFamily = null, string? bFamily = null) =>
        new()
        {
            CropYear = 2026,
            Start = new DateOnly(2026, 1, 1),
            Sowings = [Sowing(0, 2.0), Sowing(1, 0.5)],
            Crops = [Crop("A", 5.0, aTakes, aFamily), Crop("B", 3.0, 1000.0, bFamily)],
            Covers = [new PlanCover("open field", Weekly(100.0))],
            Hours = new PlanHours(Weekly(1000.0), Weekly(0.0), Weekly(0.0), 0.0, 0.0),
            BoxTarget = Weekly(0.0),
            BuyIn = 1.0,
        };

    /// <summary>Cash without other money: what there is in January, and what may be owed.</summary>
    internal static PlanCash Cash(double opening, double line = 0.0, params (int Month, double Money)[] known)
    {
        double[] by = new double[12];
        foreach ((int month, double money) in known)
        {
            by[month] += money;
        }

        return new PlanCash
        {
            Opening = opening,
            Fixed = by,
            Line = [.. Enumerable.Repeat(line, 12)],
            MonthOfWeek = [.. Enumerable.Range(0, PlanModel.Weeks).Select(week => new DateOnly(2026, 1, 1).AddDays(7 * week).Month - 1)],
        };
    }

    /// <summary>What is told of some weeks; 0 in the others.</summary>
    internal static double[] At(params (int Week, double Value)[] told)
    {
        double[] weeks = new double[PlanModel.Weeks];
        foreach ((int week, double value) in told)
        {
            weeks[week] = value;
        }

        return weeks;
    }

    internal static double[] Weekly(double value) => [.. Enumerable.Repeat(value, PlanModel.Weeks)];

    private static PlanSowing Sowing(int crop, double cost) =>
        new(crop, 0, SownWeek, SoldWeek - SownWeek + 1)
        {
            Yield = [.. Enumerable.Range(0, PlanModel.Weeks).Select(week => week == SoldWeek ? 1.0 : 0.0)],
            Hours = Weekly(0.0),
            Trays = Weekly(0.0),
            Cost = cost,
            Today = 50.0,
        };

    private static PlanCrop Crop(string name, double price, double takes, string? family) =>
        new(name)
        {
            HandlingHours = 0.0,
            PickedCost = 0.0,
            SoldCost = 0.0,
            Keeps = 1,
            Family = family,
            Steps =
            [
                .. Enumerable.Range(0, PlanModel.Weeks).Select(_ => (IReadOnlyList<PlanStep>)[new PlanStep("market", takes, price, 0.0)]),
            ],
        };
}
