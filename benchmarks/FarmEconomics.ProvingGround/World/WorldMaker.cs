using FarmEconomics.ProvingGround.Plans;

namespace FarmEconomics.ProvingGround.World;

/// <summary>Makes a world: a farm, and a plan of today as good as the grower is.</summary>
internal static class WorldMaker
{
    /// <summary>A farm with today's plan between habit and the best that could be done, and that best plan.</summary>
    internal static (Farm Farm, double[][] Best) Make(int seed)
    {
        Farm farm = FarmMaker.Make(seed);
        double[][] best = BestKnown.Plan(farm, sizesOnly: false);
        double[][] mixed = BestKnown.Mixed(best, farm.Today, farm.Traits.Skill);

        // Whole feet, and no sowing of a step or two: nobody would write it down.
        farm.Today = [.. mixed.Select(crop => crop.Select(feet => feet < 4.0 ? 0.0 : Math.Floor(feet)).ToArray())];
        return (farm, best);
    }
}
