using FarmEconomics.Decisions.Chances;
using FarmEconomics.ProvingGround.World;

namespace FarmEconomics.ProvingGround.Play;

/// <summary>The luck of one season: the same for every plan that plays it (common random numbers).</summary>
internal sealed class SeasonDraw
{
    private readonly double[][] yields;
    private readonly double[][] demands;

    /// <summary>Draws a season.</summary>
    /// <param name="farm">The farm.</param>
    /// <param name="stream">What the season is for: records, trial or plan, with its number; each has luck of its own.</param>
    internal SeasonDraw(Farm farm, string stream)
    {
        SeededRandom shared = new(farm.Seed, stream);
        double weather = shared.NextNormal();
        double market = FarmMaker.Factor(shared, 0.08);
        double[] outlets = [.. Enumerable.Range(0, farm.Outlets.Length * Farm.Weeks).Select(_ => market * FarmMaker.Factor(shared, 0.12))];
        yields = new double[farm.Crops.Length][];
        demands = new double[farm.Crops.Length][];
        for (int c = 0; c < farm.Crops.Length; c++)
        {
            Crop crop = farm.Crops[c];
            SeededRandom random = new(farm.Seed, stream + crop.Name);
            double season = (crop.Spread.Weather * weather) + (crop.Spread.Season * random.NextNormal());
            double variance = Square(crop.Spread.Weather) + Square(crop.Spread.Season) + Square(crop.Spread.Sowing);
            yields[c] = new double[Farm.Weeks];
            for (int week = 0; week < Farm.Weeks; week++)
            {
                bool fails = random.NextUniform() < crop.FailChance;
                double single = crop.Spread.Sowing * random.NextNormal();
                yields[c][week] = fails ? 0.0 : crop.Yield * crop.WeekFactor(week) * Math.Exp(season + single - (variance / 2.0));
            }

            demands[c] = new double[farm.Outlets.Length * Farm.Weeks];
            for (int week = 0; week < Farm.Weeks; week++)
            {
                double own = FarmMaker.Factor(random, 0.15);
                for (int o = 0; o < farm.Outlets.Length; o++)
                {
                    int at = (o * Farm.Weeks) + week;
                    demands[c][at] = farm.Outlets[o].IsOpen(week) ? crop.Demands[o].Units * own * outlets[at] : 0.0;
                }
            }
        }
    }

    /// <summary>Units a bed-foot of a sowing gives in all, if all is picked.</summary>
    internal double Yield(int crop, int sown) => yields[crop][sown];

    /// <summary>q0 of the week, units.</summary>
    internal double Demand(int crop, int outlet, int week) => demands[crop][(outlet * Farm.Weeks) + week];

    private static double Square(double value) => value * value;
}
