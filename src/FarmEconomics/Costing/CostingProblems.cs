using FarmEconomics.Records;

namespace FarmEconomics.Costing;

/// <summary>The problems costing finds, each with its code and words.</summary>
internal static class CostingProblems
{
    internal static Problem NoWeights(Pool pool, int year, decimal money, decimal hours) => new(
        Severity.Warning, "W501", pool.Row.Source, "basis",
        $"The pool {pool.Name} has {money:0.00} and {hours:0.##} hours in {year} but no {pool.Basis.Unit} to share them by: not assigned to any crop.",
        "Give the pool another basis, or enter the records its basis needs.") { Money = money };

    internal static Problem MissingUnitsPerCrate(Pool pool, Crop crop) => new(
        Severity.Warning, "W502", crop.Row.Source, "units_per_crate",
        $"{crop.Name} has no units_per_crate: it carries nothing of the pool {pool.Name}, the other crops carry its part.",
        "Enter how many units fill a crate.");

    internal static Problem MissingStore(Pool pool, Crop crop) => new(
        Severity.Warning, "W503", crop.Row.Source, "store",
        $"{crop.Name} names no store and there are several: it carries nothing of {pool.Name}.",
        "Enter the pool or pools the crop is kept in.");

    internal static Problem OverCapacity(Pool pool, int year, decimal used) => new(
        Severity.Warning, "W504", pool.Row.Source, "capacity",
        $"The pool {pool.Name} was used {used:0.##} {pool.Basis.Unit} in {year}, more than its capacity of {pool.Row.Capacity:0.##}: nothing counts as unused.",
        "Correct the capacity or the use.");

    internal static Problem ClosedCircle(IReadOnlyList<Pool> circle, int year) => new(
        Severity.Error, "E501", circle[0].Row.Source, "pool",
        $"In {year} the pools {string.Join(" -> ", circle.Select(pool => pool.Name))} -> {circle[0].Name} serve only each other: their cost can't reach a crop.",
        "Enter a user outside the circle for one of them.");

    internal static Problem NoInterest(AssetRow asset) => new(
        Severity.Warning, "W505", asset.Source, "cost",
        "There are assets but no interest_percent among the farm's settings: their ownership cost is not available and every net return is before ownership cost.",
        "Enter interest_percent in the farm table; 0 is a value too.");

    internal static Problem NoOwnerWage(LaborRow row) => new(
        Severity.Warning, "W506", row.Source, "worker",
        "There are unpaid owner hours but no owner_wage among the farm's settings: their value is not available and every net return is before owner labor.",
        "Enter owner_wage in the farm table.");

    internal static Problem PercentBesideBooks(AssetRow asset, string what, Pool pool, int year, SourceLine books) => new(
        Severity.Warning, "W507", asset.Source, what,
        $"{asset.Asset} carries {what} although the books hold such a row for {pool.Name} in {year} ({books}): the cost may count twice.",
        $"Leave {what} blank, or take the row off the pool.");

    internal static Problem HouseholdTwice(UseRow use, Pool pool, SourceLine percent) => new(
        Severity.Warning, "W508", use.Source, "user",
        $"The household stands in the use of {pool.Name} although {percent} already takes its part out by farm_percent: it may count twice.",
        "Keep one of the two.");

    internal static Problem UseWithoutPlanting(IRecordRow row, Pool pool, string user, int year) => new(
        Severity.Warning, "W509", row.Source, "user",
        $"{user} used {pool.Name} in {year} but has no planting in that crop year: its part is not assigned.",
        "Correct the user or the crop_year.");

    internal static Problem MissingWaterNeed(Pool pool, Crop crop) => new(
        Severity.Warning, "W510", crop.Row.Source, "water_need",
        $"{crop.Name} has no water_need: taken as 1, the average, in sharing out {pool.Name}.",
        "Enter the crop's relative need of water.");
}
