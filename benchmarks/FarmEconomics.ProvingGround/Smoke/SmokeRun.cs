using FarmEconomics.ProvingGround.Plans;
using FarmEconomics.ProvingGround.Play;
using FarmEconomics.ProvingGround.Report;
using FarmEconomics.ProvingGround.Trials;
using FarmEconomics.ProvingGround.World;

namespace FarmEconomics.ProvingGround.Smoke;

/// <summary>A few seconds' run of everything, so that it doesn't rot; fails when a farm solved by hand comes out otherwise.</summary>
internal static class SmokeRun
{
    private const int Seasons = 20;

    /// <summary>The first is tried twice: the same seed must give the same figures.</summary>
    private static readonly int[] Seeds = [1, 1, 2];

    internal static int Run(string folder)
    {
        WorldResult[] tried = new WorldResult[Seeds.Length];
        Parallel.For(0, Seeds.Length, i => tried[i] = Trial.Of(Seeds[i], Seasons));
        List<WorldResult> worlds = [.. tried[1..]];
        if ((WrongByHand() ?? WrongBound() ?? WrongBalance() ?? WrongTrial(tried[0], worlds)) is { } wrong)
        {
            Console.Error.WriteLine(wrong);
            return 1;
        }

        ResultFiles files = new(folder, "before");
        files.Write(worlds);
        AdvicePage.Write(Path.Combine(folder, "advice.md"), folder);
        Console.WriteLine($"the proving ground runs; {files.Read().Sum(world => world.Verdicts.Count)} verdicts on {worlds.Count} farms");
        return 0;
    }

    private static string? WrongByHand()
    {
        double length = LengthProgram.Solve(OneCrop())[0];
        return Math.Abs(length - 12.0) < 1e-6 ? null : $"The farm solved by hand grows 12 bed-feet, the program {length}.";
    }

    /// <summary>81 of 263, 95 % two-sided: 0.2553 (Newcombe, Statistics in Medicine 17, 1998, Table I, method 3; cited from memory).</summary>
    private static string? WrongBound()
    {
        double bound = Spread.Wilson(81, 263, 1.959963984540054);
        return Math.Abs(bound - 0.2553) < 0.00005 ? null : $"Wilson's bound of 81 in 263 is 0.2553, the program says {bound}.";
    }

    private static string? WrongBalance()
    {
        Farm farm = FarmMaker.Make(3);
        return Enumerable.Range(0, 5).Select(i => Balance.Of(farm, farm.Today, new SeasonDraw(farm, $"trial {i}")))
            .FirstOrDefault(wrong => wrong is not null);
    }

    private static string? WrongTrial(WorldResult again, List<WorldResult> worlds)
    {
        return !worlds[0].Policies.SequenceEqual(again.Policies) || !worlds[0].Verdicts.SequenceEqual(again.Verdicts)
            ? "The same seed gave other figures."
            : worlds.Exists(world => world.Policies.Single(one => one.Policy == Policy.Best).Gain <= 0.0)
                ? "Knowing the truth gained nothing."
            : worlds.Exists(world => world.Verdicts.Count != world.Crops) ? "A crop has no verdict."
            : null;
    }

    /// <summary>
    /// One crop in the bed in weeks 20 to 22, picked in week 22: 2 units a bed-foot. 20 units bring $5 each and 8 more $1.50; handling
    /// takes 0.1 hours at $10 and $0.25 of packaging a unit, a bed-foot costs $1. A foot for the 20 earns 2 x (5 - 1.25) - 1 = $6.50, for
    /// the 8 more 2 x (1.50 - 1.25) - 1 = -$0.50; boxes must hold $12 of list value at $3 a unit, 4 units, or be bought in at $12: a foot
    /// for them saves 2 x (3 - 1.25) - 1 = $2.50. So 24 units: 12 bed-feet.
    /// </summary>
    private static PlanModel OneCrop()
    {
        double[] At(double value, params int[] weeks) =>
            [.. Enumerable.Range(0, Farm.Weeks).Select(week => weeks.Contains(week) ? value : 0.0)];
        List<SaleStep>[] steps = [.. Enumerable.Range(0, Farm.Weeks)
            .Select(week => week == 22 ? [new SaleStep(20, 5), new SaleStep(8, 1.5)] : new List<SaleStep>())];
        return new PlanModel
        {
            Sowings = [new Sowing(0, 0, At(1, 20, 21, 22), new double[Farm.Weeks], [At(2, 22)]) { Cost = 1.0, Week = 20 }],
            Crops = [new CropModel((0.1, 0.25), 1, [steps], (10, 3))],
            BedFeet = [100, 0],
            OwnHours = At(40, 22),
            HiredHours = new double[Farm.Weeks],
            HourCost = (10, 15),
            BoxTarget = At(12, 22),
            BuyIn = 1.0,
        };
    }
}
