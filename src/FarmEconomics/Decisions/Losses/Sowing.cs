using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Losses;

/// <summary>One sowing (a planting) beside the mean of its crop.</summary>
/// <param name="Budget">Its budget.</param>
/// <param name="Crop">The budget of the crop, this sowing included.</param>
/// <param name="Sown">The first day it was sown, else set into a bed.</param>
public sealed record Sowing(EnterpriseBudget Budget, EnterpriseBudget Crop, DateOnly Sown)
{
    /// <summary>Net return at full cost; not available where the records can't tell.</summary>
    public Result NetReturn =>
        Budget.Known.NoFullNetReturn is { } reason ? Result.NotAvailable(reason) : Result.Known(Budget.NetReturn.Amount);

    /// <summary>True when it met its full cost; null when the records can't tell.</summary>
    public bool? Paid => NetReturn.Value is { } net ? net >= 0m : null;

    /// <summary>Labor hours per bed-foot.</summary>
    /// <param name="budget">The sowing's budget or the crop's.</param>
    /// <returns>Hours.</returns>
    public static Result HoursPerBedFoot(EnterpriseBudget budget)
    {
        ArgumentNullException.ThrowIfNull(budget);
        return budget.Known.Hours is { } reason ? Result.NotAvailable(reason)
            : Result.Of(budget.LaborHours.Value, budget.Sums.BedFeet.Value, "nothing planted in beds");
    }

    /// <summary>The part of what was picked, culled included, that wasn't sold, 0 to 1.</summary>
    /// <param name="budget">The sowing's budget or the crop's.</param>
    /// <returns>A share.</returns>
    public static Result NotSold(EnterpriseBudget budget)
    {
        ArgumentNullException.ThrowIfNull(budget);
        decimal picked = budget.Sums.Harvested + budget.Sums.Culled;
        return picked > 0m ? Result.Known(Math.Clamp(1m - (budget.Sums.Sold / picked), 0m, 1m)) : Result.NotAvailable("nothing picked");
    }
}

/// <summary>The sowings of a season: which paid, from when to when, and which of good crops lost.</summary>
public sealed class Sowings
{
    private static readonly OncePer<SeasonReview, Sowings> Found = new(season => new Sowings(season));

    private Sowings(SeasonReview season)
    {
        Season = season;
        Dictionary<Crop, EnterpriseBudget> crops = season.Crops.ToDictionary(crop => crop.Crop!);
        All = [.. season.Plantings.Select(planting => new Sowing(planting, crops[planting.Crop!], SownOn(planting.Enterprises[0])))
            .OrderBy(sowing => sowing.Crop.Crop!.Index).ThenBy(sowing => sowing.Sown).ThenBy(sowing => sowing.Budget.Enterprises[0].Index)];
        WorstOfGoodCrops = [.. All.Where(sowing => sowing.Paid == false && sowing.Crop.NetReturn.Amount >= 0m)
            .OrderBy(sowing => sowing.Budget.NetReturn.Amount).ThenBy(sowing => sowing.Budget.Enterprises[0].Index)];
    }

    /// <summary>The season.</summary>
    public SeasonReview Season { get; }

    /// <summary>All sowings, by crop and day.</summary>
    public IReadOnlyList<Sowing> All { get; }

    /// <summary>Sowings that fell short of their full cost although their crop met it, the largest loss first.</summary>
    public IReadOnlyList<Sowing> WorstOfGoodCrops { get; }

    /// <summary>Lists the sowings of a season.</summary>
    /// <param name="season">The season.</param>
    /// <returns>The sowings.</returns>
    public static Sowings Of(SeasonReview season)
    {
        ArgumentNullException.ThrowIfNull(season);
        return Found.Of(season);
    }

    /// <summary>
    /// The sowings of every crop with two or more, perennials left out, each with the first and the last that paid; null: none did, or the
    /// records can't tell.
    /// </summary>
    public IEnumerable<(EnterpriseBudget Crop, IReadOnlyList<Sowing> Sowings, Sowing? First, Sowing? Last)> ByCrop =>
        All.Where(sowing => !sowing.Crop.Crop!.Perennial)
        .GroupBy(sowing => sowing.Crop).Where(crop => crop.Count() > 1)
        .Select(crop => (crop.Key, (IReadOnlyList<Sowing>)[.. crop], crop.FirstOrDefault(sowing => sowing.Paid == true),
            crop.LastOrDefault(sowing => sowing.Paid == true)));

    private static DateOnly SownOn(Enterprise enterprise) =>
        enterprise.Planting.Beds.Min(row => row.Row.Sown is { } sown && sown < row.In ? sown : row.In);
}
