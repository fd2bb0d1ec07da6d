using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Budgets;

/// <summary>
/// The establishment of one perennial planting as an asset: what its crop years before the first bearing one cost is carried out of them,
/// and each bearing season takes its part
/// (docs/methods.md, section 8). A planting cleared before it bore carries nothing: its costs stay in the years they came.
/// </summary>
public sealed class StandAccount
{
    private const decimal MonthsPerYear = 12m;

    private readonly FarmRecords records;
    private readonly IReadOnlyList<Enterprise> years;
    private readonly Lazy<Result> establishmentCost;
    private readonly int first;
    private readonly bool cleared;

    private StandAccount(Planting planting, IReadOnlyList<Enterprise> years, FarmRecords records, Func<int, SeasonReview> season)
    {
        Planting = planting;
        this.years = years;
        this.records = records;
        List<Enterprise> all = [.. years];
        first = all.FindIndex(Bore);
        cleared = planting.Beds.All(bed => bed.Row.OutOfBed is { } day && day <= records.CostsUntil);
        BearingYears = cleared && first >= 0 ? Result.Known(all.FindLastIndex(Bore) - first + 1)
            : planting.Crop.Row.BearingYears is { } given ? Result.Known(given)
            : Result.NotAvailable($"bearing_years of {planting.Crop.Name} isn't given in crops");
        establishmentCost = new(() => CostOf(season));
    }

    /// <summary>The planting.</summary>
    public Planting Planting { get; }

    /// <summary>The first crop year something was picked of it, or sold beyond what was picked; null: not yet.</summary>
    public int? FirstBearingYear => first >= 0 ? years[first].CropYear : null;

    /// <summary>Seasons it bears: from the first to the last that bore where its bed was cleared, else the crop's bearing_years.</summary>
    public Result BearingYears { get; }

    /// <summary>What establishing it cost, with interest up to the first bearing season, in whole cents.</summary>
    public Result EstablishmentCost => establishmentCost.Value;

    /// <summary>The part of it that each bearing season carries, in whole cents a year.</summary>
    public Result AnnualPart => EstablishmentCost.Value is not { } cost ? EstablishmentCost
        : BearingYears.Value is not { } seasons ? BearingYears
        : records.Settings.InterestPercent is not { } percent ? Result.NotAvailable("no interest_percent among the settings")
        : Result.Known(Money.Rounded(new Establishment(cost, percent / 100m, seasons).AnnualPart).Amount);

    /// <summary>
    /// The account of a planting over all crop years it stands; seasons are asked only for what its years before bearing cost.
    /// </summary>
    internal static StandAccount Of(FarmTrace trace, Planting planting, Func<int, SeasonReview> season)
    {
        return new StandAccount(planting, trace.Calendar.YearsOf(planting), trace.Records, season);
    }

    /// <summary>True when the grower says how long it bears, so that its establishment is spread.</summary>
    internal static bool IsSpread(Crop crop) => crop.Perennial && crop.Row.BearingYears is not null;

    /// <summary>True in a crop year from the first that bore on.</summary>
    /// <param name="cropYear">A crop year it stands.</param>
    /// <returns>True: it bears.</returns>
    public bool Bears(int cropYear) => FirstBearingYear <= cropYear;

    /// <summary>
    /// The line of establishment in a crop year: below 0 what is carried to later years, above 0 the part it takes, by month up to the
    /// closing date.
    /// </summary>
    /// <param name="cropYear">The crop year.</param>
    /// <param name="cost">All its other costs of that year.</param>
    /// <param name="missing">Why they aren't known.</param>
    internal (Money Amount, string? Missing) In(int cropYear, Money cost, string? missing)
    {
        if (records.HeldEstablishment.TryGetValue((Planting.Name, cropYear), out (Money Amount, string? Missing) held))
        {
            return held;
        }

        if (!IsSpread(Planting.Crop) || (first < 0 && cleared))
        {
            return (Money.Zero, null);
        }

        if (!Bears(cropYear))
        {
            return (Money.Zero - cost, missing);
        }

        int months = Ownership.MonthsPassed(cropYear, records.Settings, records.CostsUntil);
        decimal left = BearingYears.Value!.Value - (cropYear - FirstBearingYear!.Value);
        return left <= 0m || months == 0 ? (Money.Zero, null)
            : AnnualPart.Value is { } part ? (Money.Rounded(part * Math.Min(1m, left) * months / MonthsPerYear), null)
            : (Money.Zero, $"{Planting.Name}: {AnnualPart.Reason}");
    }

    private static bool Bore(Enterprise year) => year.Harvested > 0m || year.Unmatched > 0m;

    private Result CostOf(Func<int, SeasonReview> season)
    {
        if (Planting.Crop.Row.EstablishmentCost is { } each)
        {
            return Result.Known(Money.Rounded(each * years[^1].BedFeet.Value).Amount);
        }

        if (first <= 0)
        {
            return Result.NotAvailable(
                first < 0 ? "it hasn't borne yet" : "the records begin after it was established; give establishment_cost in crops"
            );
        }

        if (records.Settings.InterestPercent is not { } percent)
        {
            return Result.NotAvailable("no interest_percent among the settings");
        }

        List<decimal> costs = [];
        foreach (Enterprise before in years.Take(first))
        {
            EnterpriseBudget budget = season(before.CropYear).BudgetOf(before);
            if (budget.Known.NoCostBeforeEstablishment is { } reason)
            {
                return Result.NotAvailable($"{before.CropYear}: {reason}; give establishment_cost in crops");
            }

            costs.Add(budget.Sums.OwnCost.Amount);
        }

        return Result.Known(Money.Rounded(Establishment.WithInterest(costs, percent / 100m)).Amount);
    }
}
