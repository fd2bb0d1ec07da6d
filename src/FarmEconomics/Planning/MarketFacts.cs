using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Avoidable;
using FarmEconomics.Records;

namespace FarmEconomics.Planning;

/// <summary>
/// What channels take of a crop, week by week. A week in which all was sold at list price tells only that the channel takes at least so
/// much; one in which some sold for less, or was left, tells how much it takes at list: its units times (paid / list)^e. What a channel
/// takes is the mean of such weeks near by, a week of the first kind counting with at least that mean; with weeks of the first kind
/// alone it is the most of them. Around it the week's demand moves, so that the last units earn less than list price on the mean.
/// </summary>
internal static class MarketFacts
{
    private static readonly double[] Ends = [0.7, 0.85, 1.0, 1.15, 1.35, 1.75, 2.5];

    /// <summary>Middle of each fifth of a standard normal.</summary>
    private static readonly double[] Fifths = [-1.2816, -0.5244, 0.0, 0.5244, 1.2816];

    /// <summary>The steps of every week of the year, the best paying first.</summary>
    internal static IReadOnlyList<IReadOnlyList<PlanStep>> Of(CropSales sales, decimal? elasticity)
    {
        List<PlanStep>[] weeks = [.. Enumerable.Range(0, PlanModel.Weeks).Select(_ => new List<PlanStep>())];
        foreach (Channel channel in sales.Channels)
        {
            double e = (double)Math.Abs(elasticity ?? channel.Row.Elasticity ?? MarketTerms.UsualElasticity);
            double[] earns = [.. Ends.Select((end, i) => Revenue(end, e) - Revenue(StartOf(i), e))];
            for (int week = 0; week < weeks.Length; week++)
            {
                weeks[week].AddRange(StepsOf(sales, channel, week, (e, earns)));
            }
        }

        return [.. weeks.Select(week => (IReadOnlyList<PlanStep>)[.. week.OrderByDescending(step => step.Net)])];
    }

    private static double StartOf(int step) => step == 0 ? 0.0 : Ends[step - 1];

    private static IEnumerable<PlanStep> StepsOf(CropSales sales, Channel channel, int week, (double Elasticity, double[] Earns) demand)
    {
        (double q0, double price) = Taken([.. sales.Near(channel, week)], demand.Elasticity);
        double fee = (double)(channel.Row.FeePercent ?? 0m) / 100.0;
        for (int i = 0; i < Ends.Length; i++)
        {
            double earns = price * demand.Earns[i] / (Ends[i] - StartOf(i));
            if (earns > 0.0)
            {
                yield return new PlanStep(channel.Name, (Ends[i] - StartOf(i)) * q0, earns, fee);
            }
        }
    }

    private static (double Units, double Price) Taken(
        List<(int Year, double Units, double List, double Paid, bool AllSold)> weeks,
        double elasticity
    )
    {
        if (weeks.Count == 0)
        {
            return (0.0, 0.0);
        }

        double atList = (double)VerdictSettings.AtListPrice;
        double[] told =
        [
            .. weeks
                .Where(one => one.Paid < atList || !one.AllSold)
                .Select(one => one.Units * Math.Min(1.0, Math.Pow(one.Paid, elasticity))),
        ];
        double[] least = [.. weeks.Where(one => one.Paid >= atList && one.AllSold).Select(one => one.Units)];
        int newest = weeks.Max(one => one.Year);
        double price = weeks.Where(one => one.Year == newest).Average(one => one.List);
        if (told.Length == 0)
        {
            return (least.Max(), price);
        }

        double mean = told.Average();
        for (int i = 0; i < 50; i++)
        {
            mean = (told.Sum() + least.Sum(one => Math.Max(one, mean))) / weeks.Count;
        }

        return (mean, price);
    }

    /// <summary>
    /// Mean revenue at x times the usual quantity, in parts of list price times it, over five equally likely weeks: the quantity up to what
    /// the week takes at list, beyond it (x / f)^(1 - 1/e) times f, constant elasticity integrated; nothing more where e is 1 or less.
    /// </summary>
    private static double Revenue(double times, double elasticity) => Fifths.Average(z =>
    {
        double f = Math.Exp((PlanSettings.DemandSpread * z) - (PlanSettings.DemandSpread * PlanSettings.DemandSpread / 2.0));
        return times <= f ? times : f * Math.Pow(times / f, Math.Max(0.0, 1.0 - (1.0 / elasticity)));
    });
}
