using FarmEconomics.Budgets;
using FarmEconomics.Files;
using FarmEconomics.ProvingGround.Plans;
using FarmEconomics.ProvingGround.World;

namespace FarmEconomics.ProvingGround.Advice;

/// <summary>Plans for next season, each made to fit the beds.</summary>
internal static class Policies
{
    private const int ThumbCrops = 5;

    /// <summary>All advice followed at once.</summary>
    internal static double[][] Follow(Farm farm, IEnumerable<Advised> advice)
    {
        double[][] plan = Copy(farm.Today);
        foreach (Advised one in advice)
        {
            int crop = IndexOf(farm, one.Crop);
            if (one.Move is Move.Drop or Move.Another)
            {
                plan[crop] = new double[Farm.Weeks];
            }

            if (one.Move is Move.Grow or Move.Another)
            {
                AddFeet(farm, plan, one.Other is null ? crop : IndexOf(farm, one.Other), one.Feet);
            }
        }

        PlanRoom.Fit(farm, plan, farm.Today);
        return plan;
    }

    /// <summary>The common rule of thumb: drop the five crops lowest by gross margin per bed-foot, double the five highest.</summary>
    internal static double[][] RuleOfThumb(Farm farm, SeasonReview season)
    {
        List<EnterpriseBudget> ranked = [.. season.Crops.Where(crop => crop.GrossMarginPerBedFoot.Value is not null)
            .OrderBy(crop => crop.GrossMarginPerBedFoot.Value)];
        IEnumerable<Advised> low = ranked.Take(ThumbCrops).Select(crop => new Advised(crop.Name, Move.Drop));
        IEnumerable<Advised> high = ranked.TakeLast(ThumbCrops)
            .Select(crop => new Advised(crop.Name, Move.Grow, null, (double)crop.Sums.BedFeet.Value));
        return Follow(farm, [.. low, .. high]);
    }

    /// <summary>The plain linear program on nothing but the records.</summary>
    internal static double[][] PlainProgram(Farm farm, FarmFolder folder)
    {
        PlanModel model = RecordsModel.Of(folder);
        double[][] plan = BestKnown.ToPlan(farm, model, LengthProgram.Solve(model));
        PlanRoom.Shrink(farm, plan);
        return plan;
    }

    private static int IndexOf(Farm farm, string crop) => Array.FindIndex(farm.Crops, one => one.Name == crop);

    private static double[][] Copy(double[][] plan) => [.. plan.Select(crop => crop.ToArray())];

    /// <summary>More feet are spread over today's sowings of the crop in proportion.</summary>
    private static void AddFeet(Farm farm, double[][] plan, int crop, double feet)
    {
        double all = farm.Today[crop].Sum();
        for (int week = 0; all > 0.0 && week < Farm.Weeks; week++)
        {
            plan[crop][week] += farm.Today[crop][week] / all * feet;
        }
    }
}
