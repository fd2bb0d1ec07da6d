using FarmEconomics.Records;
using FarmEconomics.Records.Checks;

namespace FarmEconomics.Costing;

/// <summary>The problems costing finds, each with its code and words.</summary>
internal static class CostingProblems
{
    internal static Problem NoWeights(Pool pool, int year, decimal money, decimal hours, Notation notation) => ProblemCatalog.Make(
        ProblemCodes.NoWeights, pool.Row.Source, "basis",
        notation.Text($"The pool {pool.Name} has {notation.Prefix}{money:#,0.00} and {hours:0.##} hours in {year} but no "
            + $"{notation.Label(pool.Basis.Kind.Unit)} to share them by: not assigned to any crop.")) with
    { Money = money };

    internal static Problem MissingUnitsPerCrate(Pool pool, Crop crop, decimal? estimate, Notation notation) => ProblemCatalog.Make(
        ProblemCodes.NoUnitsPerCrate, crop.Row.Source, "units_per_crate",
        estimate is { } units
            ? notation.Text($"{crop.Name} has no units_per_crate: in dividing the pool {pool.Name} a crate is estimated to hold "
                + $"{units:0.##} {crop.Unit}, from what the crop sold for.")
            : $"{crop.Name} has no units_per_crate and nothing to estimate it from: it pays none of the cost of the pool {pool.Name}; "
                + "the other crops pay its part.");

    internal static Problem CratesUnknown(Pool pool, int year, decimal part, Notation notation) => ProblemCatalog.Make(
        ProblemCodes.CratesUnknown, pool.Row.Source, "basis",
        notation.Text($"Crops with {part * 100m:0}% of the sales value in {year} of what the pool {pool.Name} handled "
            + $"have no units_per_crate: it is divided by sales value."));

    internal static Problem MissingStore(Pool pool, Crop crop) => ProblemCatalog.Make(
        ProblemCodes.NoStore, crop.Row.Source, "store",
        $"{crop.Name} names no store and there are several: it pays none of the cost of {pool.Name}.");

    internal static Problem OverCapacity(Pool pool, int year, decimal used, decimal capacity, Notation notation) => ProblemCatalog.Make(
        ProblemCodes.OverCapacity, pool.Row.Source, "capacity",
        notation.Text($"The pool {pool.Name} was used {used:0.##} {notation.Label(pool.Basis.Kind.Unit)} in {year}, "
            + $"more than its capacity of {capacity:0.##}: nothing counts as unused."));

    internal static Problem ClosedCircle(IReadOnlyList<Pool> circle, int year) => ProblemCatalog.Make(
        ProblemCodes.ClosedCircle, circle[0].Row.Source, "pool",
        $"In {year} the pools {string.Join(" -> ", circle.Select(pool => pool.Name))} -> {circle[0].Name} serve only each other: "
            + "their cost can't reach a crop.");

    internal static Problem NoInterest(FarmRecords records) => records.Tables.Assets.Count == 0 ? ProblemCatalog.Make(
        ProblemCodes.NoInterest, records.Tables.Beds[0].Source, "bed",
        "There is a land_value but no interest_percent among the farm's settings: the land charge is not available, nor is what holds it: "
            + "overhead and net return.")
        : ProblemCatalog.Make(
        ProblemCodes.NoInterest, records.Tables.Assets[0].Source, "cost",
        "There are assets but no interest_percent among the farm's settings: their ownership cost is not available, nor is what holds it: "
            + "infrastructure and net return.");

    internal static Problem NoOwnerWage(LaborRow row) => ProblemCatalog.Make(
        ProblemCodes.NoOwnerWage, row.Source, "worker",
        "There are unpaid owner hours but no owner_wage among the farm's settings: their value is not available, nor is what holds it: "
            + "labor and net return.");

    internal static Problem PercentBesideBooks(AssetRow asset, string what, Pool pool, int year, SourceLine books) => ProblemCatalog.Make(
        ProblemCodes.PercentBesideBooks, asset.Source, what,
        $"{asset.Asset} carries {what} although the books hold such a row for {pool.Name} in {year} ({books}): the cost may count twice.");

    internal static Problem HouseholdTwice(IRecordRow use, Pool pool, SourceLine percent) => ProblemCatalog.Make(
        ProblemCodes.HouseholdTwice, use.Source, "user",
        $"The household stands in the use of {pool.Name} although {percent} already takes its part out by farm_percent: "
            + "it may count twice.");

    internal static Problem UseWithoutPlanting(IRecordRow row, Pool pool, string user, int year) => ProblemCatalog.Make(
        ProblemCodes.UseWithoutPlanting, row.Source, "user",
        $"{user} used {pool.Name} in {year} but has no planting in that crop year: its part is not assigned.");

    internal static Problem MissingWaterNeed(Pool pool, Crop crop) => ProblemCatalog.Make(
        ProblemCodes.NoWaterNeed, crop.Row.Source, "water_need",
        $"{crop.Name} has no water_need: taken as 1, the average, in sharing out {pool.Name}.");

    internal static Problem HourFarFromWages(SourceLine row, int year, decimal cost, decimal wage, Notation notation) =>
        ProblemCatalog.Make(
            ProblemCodes.HourFarFromWages,
            row,
            "hours",
            notation.Text(
                $"A hired hour of {year} cost {notation.Prefix}{cost:0.00} by the books, and the workers' wages are "
                    + $"{notation.Prefix}{wage:0.00} on average: hours or wages may be missing."
            )
        );

    internal static Problem BurdenInBooks(ExpenseRow row, int year, FarmSettings settings) => ProblemCatalog.Make(
        ProblemCodes.BurdenInBooks, row.Source, "category",
        settings.Notation.Text($"The books of {year} hold what is paid on top of wages but no wages: hired hours count at wage x hours, "
            + $"and payroll_burden_percent ({settings.PayrollBurdenPercent:0.##}) is not added."));

    internal static Problem PartOfYear(AssetRow asset, int year, int months, DateOnly closing) => ProblemCatalog.Make(
        ProblemCodes.PartOfYear, asset.Source, "in_service",
        $"The records of {year} run to {closing:yyyy-MM-dd}: of the yearly cost of owning equipment and buildings {months} of 12 "
            + "months are charged.");

    internal static Problem UnpaidHoursAfterAll(LaborRow row, int year) => ProblemCatalog.Make(
        ProblemCodes.UnpaidHoursAfterAll, row.Source, "worker",
        $"unpaid_hours is none among the farm's settings, but {row.Worker} worked unpaid in {year}: the hours count.");

    internal static Problem HoursWithoutMoney(SourceLine row, int year) => ProblemCatalog.Make(
        ProblemCodes.HoursWithoutMoney, row, "hours",
        $"The books of {year} hold wages, but each of them names a crop, planting, channel or pool: no wages are left to pay these and the "
            + $"other hired hours of {year}, and they count at no cost.");
}
