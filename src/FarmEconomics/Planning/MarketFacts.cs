using FarmEconomics.Decisions.Avoidable;
using FarmEconomics.Records;

namespace FarmEconomics.Planning;

/// <summary>
/// What channels take of a crop, week by week: up to the most they ever took at list price near that week at today's price, then further
/// steps at what each adds (docs/methods.md, section 16).
/// </summary>
internal static class MarketFacts
{
    private static readonly double[] Steps = [1.0, 1.1, 1.25, 1.5, 2.0, 2.5];

    internal static List<PlanStep> Of(CropSales sales, int week, decimal? elasticity) =>
        [.. sales.Channels.SelectMany(channel => StepsOf(sales, channel, week, elasticity)).OrderByDescending(step => step.Net)];

    private static IEnumerable<PlanStep> StepsOf(CropSales sales, Channel channel, int week, decimal? elasticity)
    {
        (decimal most, decimal? price) = sales.MostAtList(channel, week);
        if (most <= 0m || price is not > 0m)
        {
            yield break;
        }

        (double q0, double p) = ((double)most, (double)price.Value);
        double fee = (double)(channel.Row.FeePercent ?? 0m) / 100.0;
        yield return new PlanStep(channel.Name, q0, p, fee);
        double e = (double)Math.Abs(elasticity ?? channel.Row.Elasticity ?? MarketTerms.UsualElasticity);
        for (int i = 1; e > 1.0 && i < Steps.Length; i++)
        {
            double width = Steps[i] - Steps[i - 1];
            yield return new PlanStep(channel.Name, width * q0, p * (Revenue(Steps[i], e) - Revenue(Steps[i - 1], e)) / width, fee);
        }
    }

    /// <summary>Revenue at x times the quantity, in parts of that at 1: x^(1 - 1/e).</summary>
    private static double Revenue(double times, double elasticity) => Math.Pow(times, 1.0 - (1.0 / elasticity));
}
