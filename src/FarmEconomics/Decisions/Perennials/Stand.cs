using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Perennials;

/// <summary>A crop year of a perennial planting.</summary>
/// <param name="CropYear">The crop year.</param>
/// <param name="Bears">True from the first crop year on in which something was picked.</param>
/// <param name="Output">What it brought.</param>
/// <param name="Cost">What it cost that year, before its part of the establishment; not available where the records don't tell it.</param>
/// <param name="MarginAfterLabor">Output less materials, selling and labor: what goes when the stand goes.</param>
public sealed record StandYear(int CropYear, bool Bears, Result Output, Result Cost, Result MarginAfterLabor);

/// <summary>
/// A planting of a perennial with its establishment (<see cref="StandAccount"/>), and whether it should stand on: what establishing it took
/// is spent either way and no part of that question.
/// </summary>
public sealed class Stand
{
    private Stand(Planting planting, decimal bedFeet, List<StandYear> years)
    {
        Planting = planting;
        BedFeet = bedFeet;
        Years = years;
    }

    /// <summary>The planting.</summary>
    public Planting Planting { get; }

    /// <summary>Bed-feet it takes, or bed-meters on a farm that measures in meters.</summary>
    public decimal BedFeet { get; }

    /// <summary>Its crop years up to the reviewed one, oldest first.</summary>
    public IReadOnlyList<StandYear> Years { get; }

    /// <summary>The first crop year something was picked; null: not yet.</summary>
    public int? FirstBearingYear => Years.FirstOrDefault(year => year.Bears)?.CropYear;

    /// <summary>What establishing it cost, with interest, in currency.</summary>
    public Result EstablishmentCost { get; private init; }

    /// <summary>
    /// Seasons it bears: those from the first to the last that bore where its bed was cleared, else the crop's bearing_years.
    /// </summary>
    public Result BearingYears { get; private init; }

    /// <summary>The part of its establishment a bearing season carries, in currency a year.</summary>
    public Result AnnualPart { get; private init; }

    /// <summary>Bearing seasons so far, the reviewed one included.</summary>
    public int Borne => Years.Count(year => year.Bears);

    /// <summary>Bearing seasons still to come, at least 0.</summary>
    public Result Remaining => BearingYears.Map(years => Math.Max(0m, years - Borne));

    /// <summary>
    /// What the beds of the same cover without a perennial brought in the reviewed year, margin after labor per bed-foot of bed.
    /// </summary>
    public Result InsteadPerBedFoot { get; private init; }

    /// <summary>
    /// The mean of its bearing seasons, margin after labor per bed-foot a year: the level amount its remaining years bring if they go on
    /// so.
    /// </summary>
    public Result RemainingPerBedFoot
    {
        get
        {
            List<Result> bearing = [.. Years.Where(year => year.Bears).Select(year => year.MarginAfterLabor)];
            return bearing.Count == 0 ? Result.NotAvailable("it hasn't borne yet")
                : bearing.Find(margin => !margin.IsAvailable) is { Reason: { } reason } ? Result.NotAvailable(reason)
                : Result.Of(bearing.Average(margin => margin.Value!.Value), BedFeet, "nothing planted in beds");
        }
    }

    /// <summary>What a new stand would bring a year, its establishment carried: the same mean less the annual part, per bed-foot.</summary>
    public Result AgainPerBedFoot => RemainingPerBedFoot.Combine(AnnualPart, (bears, part) => bears - (part / BedFeet));

    /// <summary>
    /// True when its remaining years bring at least what would stand there instead; null where that can't be told or no bearing year is
    /// left.
    /// </summary>
    public bool? ShouldStay =>
        Remaining.Value is > 0m && RemainingPerBedFoot.Value is { } stays && InsteadPerBedFoot.Value is { } instead
            ? stays >= instead
            : null;

    /// <summary>The net return of a bearing season with its part of the establishment.</summary>
    /// <param name="year">One of <see cref="Years"/> that bears.</param>
    /// <returns>Output less cost less the annual part.</returns>
    public Result NetOf(StandYear year)
    {
        ArgumentNullException.ThrowIfNull(year);
        return !year.Bears ? Result.NotAvailable("its cost is establishment, carried by the bearing years")
            : year.Output.Combine(year.Cost, (output, cost) => output - cost).Combine(AnnualPart, (margin, part) => margin - part);
    }

    /// <summary>The perennial plantings that stood in a crop year.</summary>
    /// <param name="review">The farm.</param>
    /// <param name="cropYear">The reviewed crop year.</param>
    /// <returns>One per planting, in the order of the file.</returns>
    public static IReadOnlyList<Stand> Of(FarmReview review, int cropYear)
    {
        ArgumentNullException.ThrowIfNull(review);
        ILookup<Planting, Enterprise> plantings = review
            .Trace.Enterprises.Where(one => one.Crop.Perennial && one.CropYear <= cropYear)
            .ToLookup(one => one.Planting);
        Dictionary<int, SeasonReview> seasons = plantings
            .SelectMany(group => group)
            .Select(one => one.CropYear)
            .Distinct()
            .ToDictionary(year => year, year => review.Season(year));
        return
        [
            .. plantings
                .Where(group => group.Any(one => one.CropYear == cropYear))
                .OrderBy(group => group.Key.Index)
                .Select(group => Make(group, seasons, cropYear)),
        ];
    }

    private static Stand Make(IGrouping<Planting, Enterprise> planting, Dictionary<int, SeasonReview> seasons, int cropYear)
    {
        StandAccount account = seasons[cropYear].StandOf(planting.Key);
        List<Enterprise> ones = [.. planting.OrderBy(one => one.CropYear)];
        List<StandYear> years = [.. ones.Select(one => YearOf(one, seasons[one.CropYear], account.Bears(one.CropYear)))];
        bool bears = account.Bears(cropYear);
        Result notYet = Result.NotAvailable("it hasn't borne yet");
        return new Stand(planting.Key, ones[^1].BedFeet.Value, years)
        {
            EstablishmentCost = bears || planting.Key.Crop.Row.EstablishmentCost is not null ? account.EstablishmentCost : notYet,
            BearingYears = account.BearingYears,
            AnnualPart = bears ? account.AnnualPart : notYet,
            InsteadPerBedFoot = InsteadOf(planting.Key, seasons[cropYear]),
        };
    }

    private static StandYear YearOf(Enterprise one, SeasonReview season, bool bears)
    {
        EnterpriseBudget budget = season.Plantings.First(planting => planting.Enterprises.Contains(one));
        Result cost = budget.Known.NoCostBeforeEstablishment is { } reason
            ? Result.NotAvailable(reason)
            : Result.Known(budget.Sums.OwnCost.Amount);
        return new StandYear(one.CropYear, bears, Of(BudgetLine.Output), cost, Of(BudgetLine.MarginAfterLabor));

        Result Of(BudgetLine line) =>
            budget.Line(line) is { Missing: { } why } ? Result.NotAvailable(why) : Result.Known(budget.Line(line).Amount.Amount);
    }

    private static Result InsteadOf(Planting planting, SeasonReview season)
    {
        HashSet<string> covers = [.. planting.Beds.Select(bed => bed.Bed.Structure)];
        decimal standard = season.Settings.StandardBedWidthIn;
        decimal margin = 0m,
            length = 0m;
        foreach (
            EnterpriseBudget bed in season.Beds.Where(bed => bed.Enterprises.Count > 0 && !bed.Enterprises.Any(one => one.Crop.Perennial))
        )
        {
            if (season.Records.Tables.Beds.Find(one => one.Bed.Trim().Equals(bed.Name, StringComparison.OrdinalIgnoreCase)) is not { } row
                || !covers.Contains(string.IsNullOrWhiteSpace(row.Structure) ? "open field" : row.Structure.Trim()))
            {
                continue;
            }

            if (bed.Line(BudgetLine.MarginAfterLabor) is { Missing: { } why })
            {
                return Result.NotAvailable(why);
            }

            margin += bed.MarginAfterLabor.Amount;
            length += row.LengthFt * (row.WidthIn ?? standard) / standard;
        }

        return Result.Of(margin, length, "no other bed of that cover was planted");
    }
}
