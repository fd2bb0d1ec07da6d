using FarmEconomics.Planning;

namespace FarmEconomics.Tests.Planning;

/// <summary>Random small farms in the form records take, the same of a seed.</summary>
internal static class RandomPlan
{
    internal static PlanModel Farm(int seed)
    {
        Random random = new(seed);
        int crops = random.Next(2, 6);
        return new PlanModel
        {
            CropYear = 2026,
            Start = new DateOnly(2026, 1, 1),
            Sowings = [.. Enumerable.Range(0, crops * 3).Select(i => Sowing(random, i % crops))],
            Crops = [.. Enumerable.Range(0, crops).Select(c => Crop(random, c))],
            Covers = [new PlanCover("open field", [.. Enumerable.Repeat(100.0 + random.Next(400), PlanModel.Weeks)])],
            Hours = new PlanHours(
                [.. Enumerable.Range(0, PlanModel.Weeks).Select(_ => 5.0 + random.Next(30))],
                [.. Enumerable.Repeat((double)random.Next(10), PlanModel.Weeks)],
                [.. Enumerable.Repeat(2.0, PlanModel.Weeks)],
                10.0 * random.NextDouble(),
                15.0
            ),
            BoxTarget = [.. Enumerable.Range(0, PlanModel.Weeks).Select(week => week is > 20 and < 30 ? random.Next(100) : 0.0)],
            BuyIn = 1.1,
        };
    }

    private static PlanSowing Sowing(Random random, int crop)
    {
        int week = random.Next(5, 30), first = random.Next(3, 10), picks = random.Next(1, 5);
        double each = 0.2 + random.NextDouble();
        return new PlanSowing(crop, 0, week, first + picks)
        {
            Yield = [.. Enumerable.Range(0, PlanModel.Weeks).Select(one => one >= week + first && one < week + first + picks ? each : 0.0)],
            Hours =
            [
                .. Enumerable.Range(0, PlanModel.Weeks).Select(one => one >= week && one < week + first ? 0.01 * random.Next(5) : 0.0),
            ],
            Trays = new double[PlanModel.Weeks],
            Cost = random.NextDouble(),
            Today = random.Next(40),
        };
    }

    private static PlanCrop Crop(Random random, int place)
    {
        double price = 1.0 + (4.0 * random.NextDouble()), takes = 5.0 + random.Next(60);
        return new PlanCrop($"crop {place}")
        {
            HandlingHours = 0.05 * random.NextDouble(),
            PickedCost = 0.1 * random.NextDouble(),
            SoldCost = 0.2 * random.NextDouble(),
            Keeps = random.Next(1, 6),
            Steps =
            [
                .. Enumerable
                    .Range(0, PlanModel.Weeks)
                    .Select(_ =>
                        (IReadOnlyList<PlanStep>)
                            [new PlanStep("market", takes, price, 0.05), new PlanStep("market", takes, 0.6 * price, 0.05)]
                    ),
            ],
            BoxMost = random.Next(20),
            BoxValue = [.. Enumerable.Repeat(price, PlanModel.Weeks)],
        };
    }
}
