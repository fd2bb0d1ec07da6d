using FarmEconomics.Budgets;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Chances;

/// <summary>Many seasons drawn for every crop, and the farm's net return in each. The same seed gives the same numbers in every run, whatever the crops' order.</summary>
public sealed class Simulation
{
    private Simulation(SimulationSettings settings, IReadOnlyList<CropRisk> risks, IReadOnlyList<Outcome> crops, Outcome farm)
    {
        Settings = settings;
        Risks = risks;
        Crops = crops;
        Farm = farm;
    }

    /// <summary>The assumptions.</summary>
    public SimulationSettings Settings { get; }

    /// <summary>What each crop was drawn from.</summary>
    public IReadOnlyList<CropRisk> Risks { get; }

    /// <summary>Net return per crop, in the order of the risks.</summary>
    public IReadOnlyList<Outcome> Crops { get; }

    /// <summary>Net return of all crops together; what no crop carries (other income, unused capacity) is not in it.</summary>
    public Outcome Farm { get; }

    /// <summary>Draws a season's crops.</summary>
    /// <param name="review">The farm.</param>
    /// <param name="costs">The season's costs.</param>
    /// <param name="settings">The assumptions; null: the defaults.</param>
    /// <returns>The outcomes.</returns>
    public static Simulation Of(FarmReview review, SeasonCosts costs, SimulationSettings? settings = null)
    {
        ArgumentNullException.ThrowIfNull(costs);
        settings ??= new SimulationSettings();
        return Run([.. costs.Season.Crops.Select(crop => CropRisk.Of(review, costs, crop, settings))], settings);
    }

    /// <summary>Draws given crops.</summary>
    /// <param name="risks">The crops, each name once.</param>
    /// <param name="settings">The assumptions.</param>
    /// <returns>The outcomes.</returns>
    public static Simulation Run(IReadOnlyList<CropRisk> risks, SimulationSettings settings)
    {
        ArgumentNullException.ThrowIfNull(risks);
        ArgumentNullException.ThrowIfNull(settings);
        settings.Check();
        SeededRandom weather = new(settings.Seed, "the season's weather");
        double[] season = new double[settings.Draws];
        for (int i = 0; i < season.Length; i++)
        {
            season[i] = weather.NextNormal();
        }

        // Each crop has a stream of its own, so threads may take them in any order; the farm is summed after, in the crops' order.
        Outcome[] crops = new Outcome[risks.Count];
        Parallel.For(0, risks.Count, k => crops[k] = Draw(risks[k], season, settings));
        double[] farm = new double[settings.Draws];
        foreach (Outcome crop in crops)
        {
            for (int i = 0; i < farm.Length; i++)
            {
                farm[i] += crop.Draws[i];
            }
        }

        return new Simulation(settings, risks, crops, new Outcome("farm", farm, 0.0));
    }

    /// <summary>The chance that one crop beats another in the same season, by net return per bed-foot-week; ties count half.</summary>
    /// <param name="first">Index of the one.</param>
    /// <param name="second">Index of the other.</param>
    /// <returns>0 to 1; not available when one has no time in bed.</returns>
    public Rate ChanceBeats(int first, int second)
    {
        Outcome a = Crops[first];
        Outcome b = Crops[second];
        if (a.BedFootWeeks <= 0.0 || b.BedFootWeeks <= 0.0)
        {
            return Rate.NotAvailable("no time in bed");
        }

        double wins = 0.0;
        for (int i = 0; i < a.Draws.Count; i++)
        {
            double left = a.Draws[i] / a.BedFootWeeks;
            double right = b.Draws[i] / b.BedFootWeeks;
            wins += left > right ? 1.0 : left == right ? 0.5 : 0.0;
        }

        return Rate.Known((decimal)(wins / a.Draws.Count));
    }

    private static Outcome Draw(CropRisk risk, double[] season, SimulationSettings settings)
    {
        WhatIfModel model = risk.Model;
        double followed = (double)model.Followed;
        double grownOnly = (double)model.Grown();
        double still = (double)model.Standing;
        double shared = Math.Sqrt(settings.SharedWeather);
        SeededRandom random = new(settings.Seed, model.Name);
        double[] net = new double[season.Length];
        for (int i = 0; i < net.Length; i++)
        {
            double grown = Copula.Correlated(season[i], random.NextNormal(), shared);
            double sold = Copula.Correlated(grown, random.NextNormal(), risk.Correlation);
            double yield = risk.Yield.AtNormal(grown);
            double price = risk.Price.AtNormal(sold);
            net[i] = (price * yield * followed) + (yield * grownOnly) - still;
        }

        return new Outcome(model.Name, net, (double)model.BedFootWeeks.Value);
    }
}
