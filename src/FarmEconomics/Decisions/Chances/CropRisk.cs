using FarmEconomics.Budgets;

namespace FarmEconomics.Decisions.Chances;

/// <summary>What a simulation draws a crop from: its model, how price and yield may fall, and how they hang together.</summary>
/// <param name="Model">The what-if model.</param>
/// <param name="Price">The price factor.</param>
/// <param name="Yield">The yield factor.</param>
/// <param name="Correlation">Correlation of the two in the copula.</param>
/// <param name="CorrelationSource">Where the correlation comes from.</param>
public sealed record CropRisk(SensitivityModel Model, Distribution Price, Distribution Yield, double Correlation, string CorrelationSource)
{
    private const int LeastPairs = 8;

    /// <summary>The part of the price's variance that the season's market can move for all crops, 0 to 1.</summary>
    public double MarketPart { get; init; } = 1.0;

    /// <summary>The part of the yield's variance that the season's weather can move for all crops, 0 to 1.</summary>
    public double WeatherPart { get; init; } = 1.0;

    /// <summary>The seasons of the crop it rests on, oldest first.</summary>
    public IReadOnlyList<CropSeason> Seasons { get; init; } = [];

    /// <summary>Why no chance is told; null where one is.</summary>
    public string? WhyNoChance { get; init; }

    internal static CropRisk Of(PastSeasons past, SeasonCosts costs, EnterpriseBudget budget)
    {
        SimulationSettings settings = past.Settings;
        IReadOnlyList<CropSeason> seasons = budget.Crop is null ? [] : past.Of(budget.Crop);
        CropRisk assumed = new(
            costs.Model(budget),
            new Triangular(settings.PriceLow, 1.0, settings.PriceHigh),
            new Triangular(settings.YieldLow, 1.0, settings.YieldHigh),
            settings.PriceYieldCorrelation ?? 0.0,
            settings.PriceYieldCorrelation is null ? "too few plantings to tell, taken as 0" : "set by the user"
        )
        {
            Seasons = seasons,
        };
        if (!settings.FromOwnRecords)
        {
            return assumed;
        }

        double yieldNow = (double)(budget.YieldPerBedFoot.Value ?? 0m);
        double priceNow = (double)(budget.AveragePrice.Value ?? 0m);
        List<CropSeason> sold = [.. seasons.Where(season => season.Price > 0.0)];
        string? why = budget.Known.NoFullNetReturn
            ?? (
                seasons.Count < settings.LeastSeasons || sold.Count < settings.LeastSeasons
                    ? $"{Math.Min(seasons.Count, sold.Count)} of {settings.LeastSeasons} seasons it takes are on record"
                    : null
            )
            ?? (yieldNow <= 0.0 || priceNow <= 0.0 ? "nothing of it was picked and sold in the season reviewed" : null);
        return why is not null
            ? assumed with
            {
                WhyNoChance = why,
            }
            : FromSeasons(assumed, [.. seasons], sold, (yieldNow, priceNow), budget, settings);
    }

    private static CropRisk FromSeasons(
        CropRisk assumed,
        List<CropSeason> seasons,
        List<CropSeason> sold,
        (double Yield, double Price) now,
        EnterpriseBudget budget,
        SimulationSettings settings
    )
    {
        SeasonSpread yield = new(
            seasons.Average(season => season.Yield) / now.Yield,
            VarianceComponents.Of(seasons.Select(season => Relative(season.PlantingYields, season.Yield, now.Yield))),
            SquaredParts(budget.Enterprises.Select(one => one.BedFeet.Value))
        );
        SeasonSpread price = new(
            sold.Average(season => season.Price!.Value) / now.Price,
            VarianceComponents.Of(sold.Select(season => Relative(season.PlantingPrices, season.Price!.Value, now.Price))),
            SquaredParts(budget.Enterprises.Select(one => one.Sold))
        );
        CropRisk risk = assumed with { Price = price, Yield = yield, MarketPart = price.SeasonPart, WeatherPart = yield.SeasonPart };
        List<(double, double)> pairs = [.. sold.Select(season => (season.Price!.Value, season.Yield))];
        return settings.PriceYieldCorrelation is not null || pairs.Count < LeastPairs
            ? risk with
            {
                CorrelationSource = settings.PriceYieldCorrelation is null ? "too few seasons to tell, taken as 0" : risk.CorrelationSource,
            }
            : risk with
            {
                Correlation = Math.Clamp(Copula.CorrelationOf(Copula.Spearman(pairs)), -0.95, 0.95),
                CorrelationSource = $"rank correlation of {pairs.Count} seasons",
            };
    }

    /// <summary>
    /// The plantings of a season relative to the reviewed one; the season as a whole where nothing tells plantings apart.
    /// </summary>
    private static double[] Relative(IReadOnlyList<double> plantings, double season, double now) =>
        plantings.Count > 0 ? [.. plantings.Select(value => value / now)] : [season / now];

    private static double SquaredParts(IEnumerable<decimal> sizes)
    {
        List<double> seen = [.. sizes.Where(size => size > 0m).Select(size => (double)size)];
        double all = seen.Sum();
        return all > 0.0 ? seen.Sum(size => size / all * (size / all)) : 1.0;
    }
}
