using FarmEconomics.ProvingGround.Play;
using FarmEconomics.ProvingGround.World;

namespace FarmEconomics.ProvingGround.Plans;

/// <summary>The model of somebody who knows the truth: not next season's luck, but what may come and how likely.</summary>
internal static class TruthModel
{
    /// <summary>Every sowing week of every crop may be chosen.</summary>
    internal static PlanModel OfSowings(Farm farm, IReadOnlyList<SeasonDraw> scenarios)
    {
        List<Sowing> sowings = [];
        for (int c = 0; c < farm.Crops.Length; c++)
        {
            for (int sown = farm.Crops[c].Time.First; sown <= farm.Crops[c].Time.Last; sown++)
            {
                sowings.Add(OneSowing(farm, c, sown, scenarios));
            }
        }

        return Of(farm, sowings, scenarios);
    }

    /// <summary>Only the size of each crop's plan of today may be chosen.</summary>
    internal static PlanModel OfSizes(Farm farm, IReadOnlyList<SeasonDraw> scenarios) =>
        Of(farm, [.. Enumerable.Range(0, farm.Crops.Length).Select(c => WholePlan(farm, c, scenarios))], scenarios);

    private static PlanModel Of(Farm farm, List<Sowing> sowings, IReadOnlyList<SeasonDraw> scenarios) => new()
    {
        Sowings = sowings,
        Crops = [.. Enumerable.Range(0, farm.Crops.Length).Select(c => CropOf(farm, c, scenarios))],
        BedFeet = farm.BedFeet,
        OwnHours = PerWeek(week => Math.Max(0.0, farm.Labor.Own - farm.FixedHours(week))),
        HiredHours = PerWeek(week => Math.Max(0.0, farm.Labor.HiredIn(week) - Math.Max(0.0, farm.FixedHours(week) - farm.Labor.Own))),
        HourCost = (farm.Labor.OwnerWage, farm.Labor.HiredCost),
        BoxTarget = PerWeek(week => farm.Shares.IsOpen(week) ? farm.Shares.Target : 0.0),
        BuyIn = farm.Shares.BuyIn,
    };

    internal static double[] PerWeek(Func<int, double> value) => [.. Enumerable.Range(0, Farm.Weeks).Select(value)];

    private static Sowing OneSowing(Farm farm, int c, int sown, IReadOnlyList<SeasonDraw> scenarios)
    {
        Crop crop = farm.Crops[c];
        double[] feet = new double[Farm.Weeks];
        double[] hours = new double[Farm.Weeks];
        double[][] yields = [.. scenarios.Select(_ => new double[Farm.Weeks])];
        for (int week = sown; week <= Math.Min(Farm.Weeks - 1, crop.LastPickOf(sown)); week++)
        {
            feet[week] = 1.0;
            hours[week] = crop.Work.Grow * PlanRoom.GrowPart(crop, week - sown);
            for (int s = 0; s < yields.Length && week >= sown + crop.Time.Lag; s++)
            {
                yields[s][week] = scenarios[s].Yield(c, sown) / crop.Time.Picking;
            }
        }

        return new Sowing(c, crop.Cover, feet, hours, yields) { Cost = crop.Cost.Seed + crop.Cost.Supplies, Week = sown };
    }

    private static Sowing WholePlan(Farm farm, int c, IReadOnlyList<SeasonDraw> scenarios)
    {
        double[] feet = new double[Farm.Weeks];
        double[] hours = new double[Farm.Weeks];
        double[][] yields = [.. scenarios.Select(_ => new double[Farm.Weeks])];
        double cost = 0.0;
        for (int sown = 0; sown < Farm.Weeks; sown++)
        {
            double length = farm.Today[c][sown];
            if (length > 0.0)
            {
                Sowing one = OneSowing(farm, c, sown, scenarios);
                cost += one.Cost * length;
                for (int week = sown; week < Farm.Weeks; week++)
                {
                    feet[week] += one.Feet[week] * length;
                    hours[week] += one.Hours[week] * length;
                    for (int s = 0; s < yields.Length; s++)
                    {
                        yields[s][week] += one.Yield[s][week] * length;
                    }
                }
            }
        }

        return new Sowing(c, farm.Crops[c].Cover, feet, hours, yields) { Cost = cost, Week = -1 };
    }

    private static CropModel CropOf(Farm farm, int c, IReadOnlyList<SeasonDraw> scenarios)
    {
        Crop crop = farm.Crops[c];
        List<SaleStep>[][] steps = [.. scenarios.Select(draw => Enumerable.Range(0, Farm.Weeks)
            .Select(week => StepsOf(farm, c, draw, week)).ToArray())];
        return new CropModel((crop.HandlingHours, crop.Cost.Packaging), crop.Time.Keeps, steps, (crop.BoxMost, crop.Price));
    }

    private static List<SaleStep> StepsOf(Farm farm, int c, SeasonDraw draw, int week)
    {
        List<SaleStep> steps = [];
        for (int o = 0; o < farm.Outlets.Length; o++)
        {
            Demand demand = farm.Crops[c].Demands[o];
            double units = draw.Demand(c, o, week);
            double from = 0.0;
            foreach (double to in Demand.Ends.Where(end => units > 0.0 && end <= demand.MostTimes))
            {
                steps.Add(new SaleStep(units * (to - from),
                    demand.Price * (1.0 - farm.Outlets[o].Fee) * Demand.Step(from, to, demand.Elasticity)));
                from = to;
            }
        }

        return steps;
    }
}
