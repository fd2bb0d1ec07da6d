using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;

namespace FarmEconomics.Tests.Decisions;

/// <summary>Farms of a few crops over three seasons, judged on paper.</summary>
internal static class VerdictFarm
{
    internal static readonly int[] Years = [2023, 2024, 2025];

    internal static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m })
        .AsOf("2025-12-31").Channel("stall", ChannelKind.Market).Channel("shop", ChannelKind.Wholesale)
        .Worker("me", WorkerKind.Owner).Worker("Bo", WorkerKind.Hired, 20m);

    /// <summary>A season of a crop in a bed of its name: all of it sold at the stall, seed by the bed, own hours of picking.</summary>
    internal static FarmBuilder Grow(
        FarmBuilder farm,
        string crop,
        int year,
        decimal pounds,
        decimal price,
        decimal feet = 100m,
        decimal seed = 30m,
        decimal hours = 0.1m,
        string worker = "me"
    )
    {
        string name = $"{crop}{year}";
        return farm.Planting(name, crop, crop, feet, $"{year}-05-01", $"{year}-08-01").Pick($"{year}-07-01", name, pounds)
            .Sell($"{year}-07-01", crop, "stall", pounds, price: price)
            .Work($"{year}-07-01", worker, hours, "harvest", planting: name).Spend($"{year}-05-01", seed, "seed", planting: name);
    }

    internal static FarmBuilder Crop(FarmBuilder farm, string crop, decimal price, decimal bed = 100m, string? structure = null) =>
        farm.Crop(crop).Bed(crop, bed, structure: structure).Price(crop, price, "stall");

    /// <summary>Kale: 2 lb a foot at 4, seed 0.30 and 0.001 hours a pound: 368 for 50 feet; in the first season 100 feet of it.</summary>
    internal static FarmBuilder Kale(FarmBuilder farm, params int[] years) => Kale(farm, 200m, years);

    internal static FarmBuilder Kale(FarmBuilder farm, decimal first, params int[] years)
    {
        foreach (int year in years)
        {
            decimal pounds = year == years[0] ? first : 100m;
            Grow(farm, "Kale", year, pounds, 4m, pounds / 2m, 0.3m * pounds, 0.001m * pounds);
        }

        return farm;
    }

    internal static Verdicts Judge(FarmBuilder farm, VerdictSettings? settings = null)
    {
        FarmReview review = farm.Review();
        return Verdicts.Of(review, SeasonCosts.Of(review.Season(2025)), settings);
    }

    internal static Verdict Named(Verdicts verdicts, string crop) => verdicts.Crops.Single(verdict => verdict.Budget.Name == crop);
}
