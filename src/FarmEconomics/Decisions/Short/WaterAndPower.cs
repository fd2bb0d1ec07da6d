using System.Globalization;
using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Units;
using FarmEconomics.Water;
using FarmEconomics.Water.Power;

namespace FarmEconomics.Decisions.Short;

/// <summary>A crop beside the water it takes.</summary>
/// <param name="Use">What it takes and lost.</param>
/// <param name="Contribution">What its sowings in watered blocks added to the farm.</param>
/// <param name="Needed">Watering they took, in thousands of the farm's unit of volume.</param>
public sealed record CropWaterMargin(CropWaterUse Use, Result Contribution, decimal Needed)
{
    /// <summary>Contribution per 1,000 gallons, or liters on a farm in meters.</summary>
    public Result PerThousand => Contribution.Value is { } money ? Result.Of(money, Needed, "it took no watering") : Contribution;
}

/// <summary>
/// What a season's water and power allowed: need against the limit, what was lost, and what would lift it. Nothing of it enters a budget.
/// </summary>
public sealed class WaterAndPower
{
    /// <summary>The step of the limit whose worth is told: 100 gallons a day, 400 liters on a farm in meters.</summary>
    public const int Step = 100;

    private const int MetricStep = 400;

    private static readonly OncePer<SeasonCosts, WaterAndPower> Found = new(costs => new WaterAndPower(costs));
    private readonly WrittenLimits limits;
    private readonly Lazy<IReadOnlyList<WaterWorth>> worth;

    private WaterAndPower(SeasonCosts costs)
    {
        Season = costs.Season;
        limits = new WrittenLimits(Season.Records);
        Worth = SowingWorth.Of(costs);
        Farm = FarmWater.Of(Season.Trace, Worth.EndOf);
        Power = PowerSeason.Of(Season.Records, Season.CropYear);
        worth = new(() => [.. WaterWorths.Of(this, limits.Sprinklers)]);
        WhyNoWater = Farm.WhyUnknown ?? WhyNoDay(Farm.Weather, Season);
        if (WhyNoWater is null)
        {
            Water = WaterSeason.Of(Farm, Season.CropYear, LimitOn, Worth.StillToCome, Worth.LeftToPick);
            Crops = [.. CropsOf(costs)];
        }
    }

    /// <summary>The season.</summary>
    public SeasonReview Season { get; }

    /// <summary>What sowings are worth.</summary>
    public SowingWorth Worth { get; }

    /// <summary>The farm's blocks, weather and watering.</summary>
    public FarmWater Farm { get; }

    /// <summary>The season's water; null where <see cref="WhyNoWater"/> says why.</summary>
    public WaterSeason? Water { get; }

    /// <summary>
    /// Why nothing is told of the season's water: the farm's reason, or that its weather holds no day of the season; null where it is.
    /// </summary>
    public string? WhyNoWater { get; }

    /// <summary>The season's power.</summary>
    public PowerSeason Power { get; }

    /// <summary>True when the records hold anything of either: a table, or a setting.</summary>
    public bool IsTold => Farm.Weather.First is not null || Farm.Blocks.Count > 0 || Power.DaysLogged > 0
        || Season.Settings.Supply != new PowerSupply();

    /// <summary>The crops in watered blocks, most contribution per 1,000 gallons first; those of unknown worth last.</summary>
    public IReadOnlyList<CropWaterMargin> Crops { get; } = [];

    /// <summary>Why no crop's loss can be told in money; null where one's can.</summary>
    public string? WhyNoWorth => Water is not { WorthIsKnown: false } ? null
        : Crops.Select(crop => crop.Contribution.Reason).Concat(OfPlantings()).FirstOrDefault(why => why is not null)
            ?? "no budget of the season is known";

    /// <summary>Liters in the farm's unit of volume: a gallon, or a liter.</summary>
    public double LitersPerUnit => LitersIn(Season.Settings);

    /// <summary>The step of the limit whose worth is told, in the farm's unit of volume.</summary>
    public int LimitStep => Season.Settings.LengthUnit == LengthUnit.M ? MetricStep : Step;

    /// <summary>What more of each limit of the season would have saved: water first, then sprinklers and the hours they run.</summary>
    public IReadOnlyList<WaterWorth> WorthOfMore => worth.Value;

    /// <summary>Money saved in the season by one step a day more than the limit.</summary>
    public Result SavedByMore => OfWater(one => one.Saved);

    /// <summary>Money lost in the season by one step a day less.</summary>
    public Result LostByLess => OfWater(one => one.LostByLess);

    /// <summary>Follows the water and power of a season.</summary>
    /// <param name="costs">The season's costs.</param>
    /// <returns>What there was, what it allowed.</returns>
    public static WaterAndPower Of(SeasonCosts costs)
    {
        ArgumentNullException.ThrowIfNull(costs);
        return Found.Of(costs);
    }

    /// <summary>
    /// The season by which sowings of a day are worth something: the day's own where it is over, else the last one over, else the one a
    /// review is of.
    /// </summary>
    /// <param name="review">The farm.</param>
    /// <param name="day">The day.</param>
    /// <returns>The season.</returns>
    public static SeasonReview SeasonFor(FarmReview review, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(review);
        FarmSettings settings = review.Records.Settings;
        bool Over(int year) => settings.IsOver(year, review.Records.AsOf);
        int own = settings.WindowOf(day);
        IEnumerable<int> over = review.CropYears.Where(year => Over(year) && year <= review.LatestCropYear);
        return review.Season(review.CropYears.Contains(own) && Over(own) ? own : over.DefaultIfEmpty(review.LatestCropYear).Max());
    }

    /// <summary>The list to take to the field.</summary>
    /// <param name="hand">What there is to water with, in liters or sprinkler-hours.</param>
    /// <returns>The list; the days after the weather table are taken as the last week known, without rain.</returns>
    /// <exception cref="InvalidOperationException">There is no balance of water: <see cref="FarmWater.WhyUnknown"/> says why.</exception>
    public WaterTriage Triage(WaterAtHand hand)
    {
        FarmWater ahead = FarmWater.Of(Season.Trace, Worth.EndOf, ahead: true);
        return ahead.WhyUnknown is { } why ? throw new InvalidOperationException(why) : WaterTriage.Of(ahead, hand, Worth.StillToCome);
    }

    internal static double LitersIn(FarmSettings settings) => settings.LengthUnit == LengthUnit.M ? 1 : WaterMath.LitersPerGallon;

    /// <summary>Liters there are on a day by the limits table; null: no limit is written for it.</summary>
    /// <param name="day">The day.</param>
    /// <returns>Liters.</returns>
    public double? LitersOn(DateOnly day) => (double?)limits.On(ScarceKind.Water, null, day) * LitersPerUnit;

    /// <summary>What there is to water with on a day by the limits table.</summary>
    /// <param name="day">The day.</param>
    /// <returns>Liters and sprinkler-hours; null where no limit is written.</returns>
    public WaterLimit LimitOn(DateOnly day) => new(LitersOn(day), (double?)limits.Sprinklers.On(day));

    // Weather of another season says nothing of this one's need, least of all that there was none.
    private static string? WhyNoDay(FarmWeather weather, SeasonReview season)
    {
        FarmSettings settings = season.Settings;
        (DateOnly first, DateOnly last) = (weather.First!.Value, weather.Last!.Value);
        return last >= settings.StartOf(season.CropYear) && first < settings.EndOf(season.CropYear) ? null
            : string.Create(
                CultureInfo.InvariantCulture,
                $"the weather table holds {first:yyyy-MM-dd} to {last:yyyy-MM-dd}, no day of {season.CropYear}");
    }

    private Result OfWater(Func<WaterWorth, Result> of) => Water is null ? Result.NotAvailable(WhyNoWater!)
        : WorthOfMore.FirstOrDefault(one => one.Step == WaterStep.Water) is { } water ? of(water)
        : Result.NotAvailable("no row of limits says how much water there is a day");

    /// <summary>Why plantings of watered crops aren't known: those outside of blocks count in the mean of a season under way.</summary>
    private IEnumerable<string?> OfPlantings() => Season.Plantings
        .Where(planting => Crops.Any(crop => crop.Use.Crop == planting.Crop)).Select(planting => planting.Known.NoNetReturn);

    private IEnumerable<CropWaterMargin> CropsOf(SeasonCosts costs)
    {
        Dictionary<Crop, Result> contributions = [];
        HashSet<Planting> watered = [.. Farm.Sowings.Where(sowing => sowing.Span.CropYear == Season.CropYear)
            .Select(sowing => sowing.Planting)];
        foreach (EnterpriseBudget planting in Season.Plantings.Where(planting => watered.Contains(planting.Enterprises[0].Planting)))
        {
            Result one = Contribution.Of(costs, planting);
            Result before = contributions.TryGetValue(planting.Crop!, out Result sum) ? sum : Result.Known(0m);
            contributions[planting.Crop!] = before.Value is { } known && one.Value is { } more ? Result.Known(known + more)
                : before.Value is null ? before : one;
        }

        return Water!.Crops.Select(use => new CropWaterMargin(use, contributions.TryGetValue(use.Crop, out Result money) ? money
                : Result.NotAvailable("no budget of it in the season"), (decimal)(use.Needed / LitersPerUnit / 1000)))
            .OrderByDescending(crop => crop.PerThousand.IsAvailable).ThenByDescending(crop => crop.PerThousand.Value)
                .ThenBy(crop => crop.Use.Crop.Index);
    }
}
