using FarmEconomics.Decisions.Chances;

namespace FarmEconomics.ProvingGround.World;

/// <summary>Makes a farm from a seed: the same seed, the same farm. Every range here is invented.</summary>
internal static class FarmMaker
{
    internal static Farm Make(int seed)
    {
        SeededRandom random = new(seed, "farm");
        Traits traits = new(
            Between(random, 0.80, 1.05), Between(random, 0.75, 1.15), Between(random, 0.7, 1.6),
            new[] { 1.0, 0.75, 0.4, 0.0 }[(int)(random.NextUniform() * 4)], new[] { 0.0, 0.2, 0.4, 0.6 }[(int)(random.NextUniform() * 4)])
        {
            Inflation = Between(random, 0.0, 0.04),
        };
        Labor labor = new()
        {
            OwnerWage = Round(Between(random, 14, 22)),
            HiredWage = Round(Between(random, 15, 19)),
            Overhead = Between(random, 2, 5),
        };
        Outlet[] outlets = Outlets(random);
        Shares shares = random.NextUniform() < 0.25 ? new(0, 0, 1) :
            new((int)Between(random, 20, 70), 25 * (int)Between(random, 16, 25), Between(random, 0.85, 1.1));
        Crop[] crops = CropKinds.All.OrderBy(_ => random.NextUniform()).Take((int)Between(random, 18, 27))
            .OrderBy(kind => kind.Name, StringComparer.Ordinal)

                .Select(kind => CropMaker.Make(new SeededRandom(seed, kind.Name), kind, new CropMaker.Setting(traits, labor, outlets, shares))).ToArray();
        Farm farm = new() { Seed = seed, Crops = crops, Outlets = outlets, Shares = shares, Labor = labor, Traits = traits };
        farm.Today = Habit(farm, random);
        SetLimits(farm);
        return farm;
    }

    internal static double Between(SeededRandom random, double low, double high) => low + ((high - low) * random.NextUniform());

    /// <summary>A factor with mean 1 whose logarithm has this standard deviation.</summary>
    internal static double Factor(SeededRandom random, double spread) => Math.Exp((spread * random.NextNormal()) - (spread * spread / 2.0));

    private static double Round(double value) => Math.Round(value * 2) / 2;

    private static Outlet[] Outlets(SeededRandom random) =>
    [
        new("Saturday Market", "market", Math.Round(Between(random, 0, 0.06), 3),
            (17, 44), (Between(random, 5, 9), Between(random, 25, 50))),
        new("Farm Stand", "stand", 0.0, (15, 47), (Between(random, 1, 2), Between(random, 3, 10))),
        new("Shop and Kitchens", "wholesale", 0.0, (18, 47), (Between(random, 1.5, 3), Between(random, 10, 20))),
    ];

    /// <summary>
    /// What a grower sows by habit: sowings as far apart as one is picked, each long enough for what the channels and boxes take while it
    /// is picked and keeps, times the grower's own error.
    /// </summary>
    private static double[][] Habit(Farm farm, SeededRandom random)
    {
        double[][] plan = new double[farm.Crops.Length][];
        for (int c = 0; c < plan.Length; c++)
        {
            Crop crop = farm.Crops[c];
            plan[c] = new double[Farm.Weeks];
            double error = Factor(random, 0.45) / farm.Traits.Market;
            double weekly = crop.Demands.Sum(demand => demand.Units) + (0.4 * crop.BoxMost);
            int apart = Math.Max(2, crop.Time.Picking + (int)(random.NextUniform() * 5) - 1);
            int first = crop.Time.First + (int)(random.NextUniform() * Math.Min(apart, crop.Time.Last - crop.Time.First + 1));
            for (int week = first; week <= crop.Time.Last; week += apart)
            {
                double weeks = crop.Time.Picking + (Math.Min(crop.Time.Keeps - 1, 14) * 0.8 * apart / (crop.Time.Last - first + apart));
                plan[c][week] = Math.Max(10, 5 * Math.Round(weekly * weeks / crop.Yield * error * Factor(random, 0.2) / 5));
            }
        }

        return plan;
    }

    /// <summary>Beds and hours follow from habit: its peak use over how tight the world is; habit is then made to fit.</summary>
    private static void SetLimits(Farm farm)
    {
        for (int cover = 0; cover < Farm.Covers; cover++)
        {
            farm.BedFeet[cover] = Math.Max(100, 50 * Math.Ceiling(PlanRoom.Use(farm, farm.Today, cover).Max() / farm.Traits.Beds / 50));
        }

        PlanRoom.Shrink(farm, farm.Today);
        double[] hours = Enumerable.Range(0, Farm.Weeks).Select(week => PlanRoom.ExpectedHours(farm, farm.Today, week)).ToArray();
        double peak = hours.Max() / farm.Traits.Hours;
        farm.Labor.Own = Math.Round(Math.Max(25, 0.6 * peak));
        farm.Labor.Hired = Math.Round(Math.Max(8, peak - farm.Labor.Own));
    }
}
