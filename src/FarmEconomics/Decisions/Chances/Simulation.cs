using FarmEconomics.Budgets;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Chances;

/// <summary>
/// Many seasons drawn for every crop, and the farm's net return in each. The same seed gives the same numbers in every run, whatever the
/// crops' order.
/// </summary>
public sealed class Simulation
{
    /// <summary>The stream of the season's weather.</summary>
    internal const string Weather = "the season's weather";

    /// <summary>The stream of the season's market.</summary>
    internal const string Market = "the season's market";

    private const int DrawsAtOnce = 256;

    private Simulation(SimulationSettings settings, IReadOnlyList<CropRisk> risks, IReadOnlyList<Outcome> crops, Outcome farm)
    {
        Settings = settings;
        Risks = risks;
        Crops = crops;
        Farm = farm;
    }

    /// <summary>The assumptions.</summary>
    public SimulationSettings Settings { get; }

    /// <summary>The seasons looked back at; null when given crops were drawn.</summary>
    public PastSeasons? Past { get; private init; }

    /// <summary>True when a chance is told of any crop.</summary>
    public bool HasChance => Farm.WhyNoChance is null;

    /// <summary>Crops of known net return without enough seasons: in the farm's draws they stand as they were.</summary>
    public IEnumerable<Outcome> HeldStill => HasChance ? Crops.Where(crop => crop.WhyNoChance is not null) : [];

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
        settings.Check();
        PastSeasons past = PastSeasons.Of(review, costs.Season, settings);
        CropRisk[] risks = new CropRisk[costs.Season.Crops.Count];
        RowRanges.Run(risks.Length, i => risks[i] = CropRisk.Of(past, costs, costs.Season.Crops[i]));
        return Run(risks, settings, past);
    }

    /// <summary>Draws given crops.</summary>
    /// <param name="risks">The crops, each name once.</param>
    /// <param name="settings">The assumptions.</param>
    /// <returns>The outcomes.</returns>
    public static Simulation Run(IReadOnlyList<CropRisk> risks, SimulationSettings settings) => Run(risks, settings, null);

    private static Simulation Run(IReadOnlyList<CropRisk> risks, SimulationSettings settings, PastSeasons? past)
    {
        ArgumentNullException.ThrowIfNull(risks);
        ArgumentNullException.ThrowIfNull(settings);
        settings.Check();
        double[] weather = Normals(settings, Weather);
        double[] market = Normals(settings, Market);

        // Each crop has a stream of its own, so threads may take them in any order; the farm is summed after, in the crops' order.
        Outcome[] crops = new Outcome[risks.Count];
        Parallel.For(0, risks.Count, k => crops[k] = Draw(risks[k], weather, market, settings));
        return new Simulation(settings, risks, crops, Sum(risks, crops, settings, past)) { Past = past };
    }

    /// <summary>All crops together: the draws of those that have some, the others as they were; nothing where none has.</summary>
    private static Outcome Sum(IReadOnlyList<CropRisk> risks, Outcome[] crops, SimulationSettings settings, PastSeasons? past)
    {
        IReadOnlyList<(int, Money)> years = past?.Farm ?? [];
        if (!Array.Exists(crops, crop => crop.WhyNoChance is null))
        {
            return new Outcome("farm", [], 0.0, years, crops.FirstOrDefault()?.WhyNoChance ?? "there is no crop");
        }

        double still = Enumerable
            .Range(0, crops.Length)
            .Where(k => crops[k].WhyNoChance is not null)
            .Sum(k => (double)risks[k].Model.NetReturn(1m, 1m));
        double[] farm = new double[settings.Draws];
        Array.Fill(farm, still);
        foreach (Outcome crop in crops.Where(crop => crop.WhyNoChance is null))
        {
            ReadOnlySpan<double> own = crop.Values;
            for (int i = 0; i < farm.Length; i++)
            {
                farm[i] += own[i];
            }
        }

        return new Outcome("farm", farm, 0.0, years);
    }

    /// <summary>The chance that one crop beats another in the same season, by net return per bed-foot-week; ties count half.</summary>
    /// <param name="first">Index of the one.</param>
    /// <param name="second">Index of the other.</param>
    /// <returns>0 to 1; not available when one has no time in bed.</returns>
    public Result ChanceBeats(int first, int second)
    {
        Outcome a = Crops[first];
        Outcome b = Crops[second];
        if ((a.WhyNoChance ?? b.WhyNoChance) is { } why)
        {
            return Result.NotAvailable(why);
        }

        if (a.BedFootWeeks <= 0.0 || b.BedFootWeeks <= 0.0)
        {
            return Result.NotAvailable("no time in bed");
        }

        double wins = 0.0;
        for (int i = 0; i < a.Draws.Count; i++)
        {
            double left = a.Draws[i] / a.BedFootWeeks;
            double right = b.Draws[i] / b.BedFootWeeks;
            wins += left > right ? 1.0 : left == right ? 0.5 : 0.0;
        }

        return Result.Known((decimal)(wins / a.Draws.Count));
    }

    /// <summary>One number a season, the same for every crop: the season's weather, or its market.</summary>
    internal static double[] Normals(SimulationSettings settings, string stream)
    {
        SeededRandom random = new(settings.Seed, stream);
        double[] numbers = new double[settings.Draws];
        random.FillNormals(numbers);
        return numbers;
    }

    private static Outcome Draw(CropRisk risk, double[] weather, double[] market, SimulationSettings settings)
    {
        SensitivityModel model = risk.Model;
        List<(int, Money)> years =
        [
            .. risk.Seasons.Where(season => season.NetReturn is not null).Select(season => (season.CropYear, season.NetReturn!.Value)),
        ];
        return risk.WhyNoChance is { } why
            ? new Outcome(model.Name, [], (double)model.BedFootWeeks.Value, years, why)
            : new Outcome(model.Name, NetReturns(risk, weather, market, settings), (double)model.BedFootWeeks.Value, years);
    }

    private static double[] NetReturns(CropRisk risk, double[] weather, double[] market, SimulationSettings settings)
    {
        SensitivityModel model = risk.Model;
        double followed = (double)model.Followed;
        double grownOnly = (double)model.Grown();
        double still = (double)model.Standing;
        double shared = Math.Sqrt(settings.SharedWeather * risk.WeatherPart);
        double sharedMarket = Math.Sqrt(settings.SharedMarket * risk.MarketPart);

        // What the market moves for all crops has nothing to do with this crop's yield: the rest hangs together the more, so that price and
        // yield have the wanted correlation.
        double own = Math.Clamp(risk.Correlation / Math.Sqrt(1.0 - (sharedMarket * sharedMarket)), -1.0, 1.0);
        SeededRandom random = new(settings.Seed, model.Name);
        (double restOfWeather, double restOfOwn, double restOfMarket) = (Copula.Rest(shared), Copula.Rest(own), Copula.Rest(sharedMarket));
        double[] net = new double[weather.Length];
        Span<double> normals = stackalloc double[2 * DrawsAtOnce];
        for (int first = 0; first < net.Length; first += DrawsAtOnce)
        {
            // Two numbers a season, one after the other.
            normals = normals[..(2 * Math.Min(DrawsAtOnce, net.Length - first))];
            random.FillNormals(normals);
            for (int k = 0; k < normals.Length; k += 2)
            {
                int i = first + (k / 2);
                double grown = (shared * weather[i]) + (restOfWeather * normals[k]);
                double sold = (sharedMarket * market[i]) + (restOfMarket * ((own * grown) + (restOfOwn * normals[k + 1])));
                double yield = risk.Yield.AtNormal(grown);
                double price = risk.Price.AtNormal(sold);
                net[i] = (price * yield * followed) + (yield * grownOnly) - still;
            }
        }

        return net;
    }
}
