using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Chances;

namespace FarmEconomics.Planning;

/// <summary>
/// The seasons a plan is judged by: those on record, and many simulated ones. A simulated season is drawn whole: its weather and its market
/// move all crops together, the rest each crop alone, as in the simulation of chance and from the same numbers. Yields and prices stand
/// over their means, and the simulated seasons have the mean the plan rests on.
/// </summary>
public sealed class PlanSeasons
{
    private PlanSeasons(
        IReadOnlyList<int> years,
        IReadOnlyList<PlanSeason> recorded,
        IReadOnlyList<PlanSeason> drawn,
        int leastForChance
    ) =>
        (Years, Recorded, Drawn, HasChance) = (years, recorded, drawn, recorded.Count >= leastForChance);

    /// <summary>The crop years of <see cref="Recorded"/>.</summary>
    public IReadOnlyList<int> Years { get; }

    /// <summary>The seasons recorded whole, oldest first, alike in chance; a crop not grown in one stands at its mean.</summary>
    public IReadOnlyList<PlanSeason> Recorded { get; }

    /// <summary>The simulated seasons, alike in chance.</summary>
    public IReadOnlyList<PlanSeason> Drawn { get; }

    /// <summary>
    /// True with so many seasons on record that chances may be told in percent; else simulated seasons are named as such.
    /// </summary>
    public bool HasChance { get; }

    /// <summary>Draws seasons for a plan.</summary>
    /// <param name="review">The farm.</param>
    /// <param name="costs">The season the plan starts from.</param>
    /// <param name="model">The plan's model.</param>
    /// <param name="settings">The assumptions of the draws; null: the defaults with a thousand draws.</param>
    /// <returns>The seasons.</returns>
    public static PlanSeasons Of(FarmReview review, SeasonCosts costs, PlanModel model, SimulationSettings? settings = null)
    {
        ArgumentNullException.ThrowIfNull(review);
        ArgumentNullException.ThrowIfNull(costs);
        ArgumentNullException.ThrowIfNull(model);
        settings ??= new SimulationSettings { Draws = PlanSettings.DrawnSeasons };
        settings.Check();
        PastSeasons past = PastSeasons.Of(review, costs.Season, settings);
        IReadOnlyList<CropSeason>[] seasons = [.. model.Crops.Select(crop => past.Of(review.Records.Crop(crop.Name)))];
        Spread[] yields = Spread.Of(
            [.. seasons.Select(own => own.Select(season => (season.Yield, season.PlantingYields)).ToList())],
            new Triangular(settings.YieldLow, 1.0, settings.YieldHigh)
        );
        Spread[] prices = Spread.Of(
            [
                .. seasons.Select(own =>
                    own.Where(season => season.Price > 0.0).Select(season => (season.Price!.Value, season.PlantingPrices)).ToList()
                ),
            ],
            new Triangular(settings.PriceLow, 1.0, settings.PriceHigh)
        );
        return new PlanSeasons(
            [.. past.Whole],
            [.. past.Whole.Select(year => RecordedOf(year, seasons, past.Whole.Count))],
            Draw(model, settings, yields, prices),
            settings.LeastSeasons
        );
    }

    private static PlanSeason RecordedOf(int year, IReadOnlyList<CropSeason>[] seasons, int years)
    {
        double Over(IReadOnlyList<CropSeason> own, Func<CropSeason, double?> of)
        {
            double? here = own.Where(season => season.CropYear == year).Select(of).FirstOrDefault();
            double mean = own.Select(of).Where(value => value is not null).Select(value => value!.Value).DefaultIfEmpty(0.0).Average();
            return here is { } value && mean > 0.0 ? value / mean : 1.0;
        }

        return new PlanSeason(
            1.0 / years,
            [.. seasons.Select(own => Over(own, season => season.Yield))],
            [.. seasons.Select(own => Over(own, season => season.Price))]
        );
    }

    private static PlanSeason[] Draw(PlanModel model, SimulationSettings settings, Spread[] yields, Spread[] prices)
    {
        double[] weather = Simulation.Normals(settings, Simulation.Weather), market = Simulation.Normals(settings, Simulation.Market);
        double[][] yield = new double[model.Crops.Count][], price = new double[model.Crops.Count][];
        for (int c = 0; c < model.Crops.Count; c++)
        {
            SeededRandom random = new(settings.Seed, model.Crops[c].Name);
            double weatherPart = Math.Sqrt(settings.SharedWeather * yields[c].SeasonPart),
                marketPart = Math.Sqrt(settings.SharedMarket * prices[c].SeasonPart);
            (yield[c], price[c]) = (new double[settings.Draws], new double[settings.Draws]);
            for (int i = 0; i < settings.Draws; i++)
            {
                yield[c][i] = Math.Max(
                    0.0,
                    1.0 + (yields[c].Deviation * Copula.Correlated(weather[i], random.NextNormal(), weatherPart))
                );
                price[c][i] = Math.Max(0.0, 1.0 + (prices[c].Deviation * Copula.Correlated(market[i], random.NextNormal(), marketPart)));
            }

            AtTheMean(yield[c]);
            AtTheMean(price[c]);
        }

        return
        [
            .. Enumerable
                .Range(0, settings.Draws)
                .Select(i => new PlanSeason(1.0 / settings.Draws, [.. yield.Select(crop => crop[i])], [.. price.Select(crop => crop[i])])),
        ];
    }

    private static void AtTheMean(double[] factors)
    {
        double mean = factors.Average();
        for (int i = 0; mean > 0.0 && i < factors.Length; i++)
        {
            factors[i] /= mean;
        }
    }

    /// <summary>How a crop's yield or price moves from season to season, over its mean.</summary>
    /// <param name="Deviation">Standard deviation of a season to come.</param>
    /// <param name="SeasonPart">The part of its square that whole seasons share, 0 to 1.</param>
    private readonly record struct Spread(double Deviation, double SeasonPart)
    {
        /// <summary>
        /// Of few seasons a crop's own spread is little known: b = k / (k + 4) of it and the rest of the farm's mean, k the crop's seasons.
        /// A season to come lies off the mean of k seasons by 1 + 1 / k of their variance. Without a crop of two seasons: as assumed.
        /// </summary>
        internal static Spread[] Of(List<(double Season, IReadOnlyList<double> Plantings)>[] crops, Distribution assumed)
        {
            (int Seasons, double Between, double Within)[] own = [.. crops.Select(Own)];
            List<(int Seasons, double Between, double Within)> told = [.. own.Where(one => one.Seasons > 1)];
            double freedom = told.Sum(one => one.Seasons - 1.0);
            double between = told.Count == 0 ? assumed.Variance : told.Sum(one => (one.Seasons - 1) * one.Between) / freedom;
            double within = told.Count == 0 ? 0.0 : told.Sum(one => (one.Seasons - 1) * one.Within) / freedom;
            return [.. own.Select(one =>
            {
                double b = one.Seasons > 1 ? one.Seasons / (one.Seasons + PlanSettings.MeanCounts) : 0.0;
                double ofSeasons = between + (b * (one.Between - between)), ofPlantings = within + (b * (one.Within - within));
                double all = ofSeasons + ofPlantings;
                return new Spread(Math.Sqrt(all * (1.0 + (1.0 / Math.Max(1, one.Seasons)))), all > 0.0 ? ofSeasons / all : 0.0);
            })];
        }

        /// <summary>Variance between seasons, and what is left of that within one over the crop's plantings.</summary>
        private static (int Seasons, double Between, double Within) Own(List<(double Season, IReadOnlyList<double> Plantings)> seasons)
        {
            double mean = seasons.Select(season => season.Season).DefaultIfEmpty(0.0).Average();
            if (seasons.Count < 2 || mean <= 0.0)
            {
                return (seasons.Count, 0.0, 0.0);
            }

            VarianceComponents parts = VarianceComponents.Of(
                seasons.Select(season =>
                    season.Plantings.Count > 0 ? [.. season.Plantings.Select(value => value / mean)] : new[] { season.Season / mean }
                )
            );
            return (seasons.Count, parts.Between, parts.Within * parts.Groups / parts.Count);
        }
    }
}
