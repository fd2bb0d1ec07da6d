using FarmEconomics.ProvingGround.Play;
using FarmEconomics.ProvingGround.World;

namespace FarmEconomics.ProvingGround.Plans;

/// <summary>
/// The best that could be done knowing the truth: the linear program over seasons drawn from it, then the best by play of that plan,
/// parts of it and mixes of it with today's, over further seasons. None of those seasons is one the trial plays.
/// </summary>
internal static class BestKnown
{
    internal const int Scenarios = 4;
    private const int Played = 40;
    private static readonly double[] Sizes = [1.0, 0.9, 0.8];

    internal static double[][] Plan(Farm farm, bool sizesOnly)
    {
        SeasonDraw[] known = [.. Enumerable.Range(0, Scenarios).Select(i => new SeasonDraw(farm, $"plan {i}"))];
        PlanModel model = sizesOnly ? TruthModel.OfSizes(farm, known) : TruthModel.OfSowings(farm, known);
        double[][] found = ToPlan(farm, model, LengthProgram.Solve(model));
        return BestByPlay(farm, [farm.Today, .. Sizes.Select(size => Scaled(found, size)), Mixed(found, farm.Today, 0.7)]);
    }

    /// <summary>Bed-feet by crop and week from the units of each sowing.</summary>
    internal static double[][] ToPlan(Farm farm, PlanModel model, double[] units)
    {
        double[][] plan = [.. farm.Crops.Select(_ => new double[Farm.Weeks])];
        for (int i = 0; i < units.Length; i++)
        {
            Sowing sowing = model.Sowings[i];
            if (sowing.Week >= 0)
            {
                plan[sowing.Crop][sowing.Week] += units[i] < 0.5 ? 0.0 : units[i];
            }
            else
            {
                plan[sowing.Crop] = [.. farm.Today[sowing.Crop].Select(feet => feet * units[i])];
            }
        }

        return plan;
    }

    internal static double[][] Mixed(double[][] one, double[][] other, double part) =>
        [.. one.Select((crop, c) => crop.Select((feet, week) => (feet * part) + (other[c][week] * (1.0 - part))).ToArray())];

    private static double[][] Scaled(double[][] plan, double factor) =>
        [.. plan.Select(crop => crop.Select(feet => feet * factor).ToArray())];

    private static double[][] BestByPlay(Farm farm, double[][][] plans)
    {
        SeasonPlay play = new(farm);
        SeasonDraw[] draws = [.. Enumerable.Range(0, Played).Select(i => new SeasonDraw(farm, $"choose {i}"))];
        return plans.MaxBy(plan => draws.Sum(draw => play.Play(plan, draw).Value))!;
    }
}
