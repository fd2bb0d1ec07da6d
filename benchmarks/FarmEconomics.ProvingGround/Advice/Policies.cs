using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Files;
using FarmEconomics.Planning;
using FarmEconomics.ProvingGround.Plans;
using FarmEconomics.ProvingGround.World;
using FarmEconomics.Solver;

namespace FarmEconomics.ProvingGround.Advice;

/// <summary>Plans for next season, each made to fit the beds.</summary>
internal static class Policies
{
    private const int ThumbCrops = 5;

    /// <summary>
    /// All advice followed at once: first what goes, then what takes its place, then what grows where there is room yet. A crop that
    /// takes the place of others is told with them; its beds count once.
    /// </summary>
    internal static double[][] Follow(Farm farm, IReadOnlyCollection<Advised> advice)
    {
        double[][] plan = Copy(farm.Today);
        foreach (Advised one in advice.Where(one => one.Move is Move.Drop or Move.Another))
        {
            plan[IndexOf(farm, one.Crop)] = new double[Farm.Weeks];
        }

        foreach ((string crop, double feet) in advice.Where(one => one.Move == Move.Another).SelectMany(one => one.Grown))
        {
            PlanRoom.Place(farm, plan, IndexOf(farm, crop), feet);
        }

        foreach ((string crop, double feet) in advice.Where(one => one.Move == Move.Grow).SelectMany(one => one.Grown))
        {
            AddFeet(farm, plan, IndexOf(farm, crop), feet);
        }

        PlanRoom.Fit(farm, plan, farm.Today);
        return plan;
    }

    /// <summary>One piece of advice followed, and nothing else.</summary>
    internal static double[][] FollowAlone(Farm farm, Advised one)
    {
        if (one.Move != Move.InPlace)
        {
            return Follow(farm, [one]);
        }

        double[][] plan = Copy(farm.Today);
        foreach ((string crop, double part) in one.Shrunk)
        {
            int other = IndexOf(farm, crop);
            plan[other] = [.. plan[other].Select(feet => feet * (1.0 - part))];
        }

        foreach ((string crop, double feet) in one.Grown)
        {
            PlanRoom.Place(farm, plan, IndexOf(farm, crop), feet);
        }

        return plan;
    }

    /// <summary>The common rule of thumb: drop the five crops lowest by gross margin per bed-foot, double the five highest.</summary>
    internal static double[][] RuleOfThumb(Farm farm, SeasonReview season)
    {
        List<EnterpriseBudget> ranked = [.. season.Crops.Where(crop => crop.GrossMarginPerBedFoot.Value is not null)
            .OrderBy(crop => crop.GrossMarginPerBedFoot.Value)];
        IEnumerable<Advised> low = ranked.Take(ThumbCrops).Select(crop => new Advised(crop.Name, Move.Drop));
        IEnumerable<Advised> high = ranked.TakeLast(ThumbCrops)
            .Select(crop => new Advised(crop.Name, Move.Grow) { Grown = [(crop.Name, (double)crop.Sums.BedFeet.Value)] });
        return Follow(farm, [.. low, .. high]);
    }

    /// <summary>The plain linear program on nothing but the records.</summary>
    internal static double[][] PlainProgram(Farm farm, FarmFolder folder)
    {
        Plans.PlanModel model = RecordsModel.Of(folder);
        double[][] plan = BestKnown.ToPlan(farm, model, LengthProgram.Solve(model));
        PlanRoom.Shrink(farm, plan);
        return plan;
    }

    /// <summary>The program's best mix and its steady plan, in whole where its model finds them; else nothing changes.</summary>
    internal static (double[][] Best, double[][] Robust) ProgramsPlans(Farm farm, FarmReview review)
    {
        SeasonCosts costs = SeasonCosts.Of(review.Season(review.LatestCropYear));
        Planning.PlanModel model = PlanFacts.Of(review, costs);
        Planning.Programs.ILinearSolver solver = LinearSolvers.Find()!;
        BestMix mix = BestMix.Of(model, solver);
        CarefulPlans careful = CarefulPlans.Of(mix, solver, PlanSeasons.Of(review, costs, model).Drawn, [PlanStance.Steady]);
        return (
            mix.Best is { } best ? ToPlan(farm, model, best.Feet) : Copy(farm.Today),
            careful.Of(PlanStance.Steady) is { } steady ? ToPlan(farm, model, steady.Feet) : Copy(farm.Today)
        );
    }

    internal static double[][] ToPlan(Farm farm, Planning.PlanModel model, IReadOnlyList<double> feet)
    {
        double[][] plan = [.. farm.Crops.Select(_ => new double[Farm.Weeks])];
        for (int i = 0; i < feet.Count; i++)
        {
            PlanSowing sowing = model.Sowings[i];
            plan[IndexOf(farm, model.Crops[sowing.Crop].Name)][sowing.Week] += feet[i] < 0.5 ? 0.0 : feet[i];
        }

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
