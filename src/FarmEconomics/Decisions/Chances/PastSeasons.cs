using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Chances;

/// <summary>One season of a crop.</summary>
/// <param name="CropYear">The crop year.</param>
/// <param name="Yield">Picked per bed-foot over all plantings.</param>
/// <param name="Price">What a unit sold brought, at the level of the reviewed year; null where nothing was sold.</param>
/// <param name="NetReturn">Net return at full cost in the money of the season; null where the records can't tell.</param>
public sealed record CropSeason(int CropYear, double Yield, double? Price, Money? NetReturn)
{
    /// <summary>
    /// Picked per bed-foot of each planting; empty where harvests of the season name only the crop: their split says nothing of how
    /// plantings differ.
    /// </summary>
    public IReadOnlyList<double> PlantingYields { get; init; } = [];

    /// <summary>What a unit of each planting brought, at the level of the reviewed year; likewise.</summary>
    public IReadOnlyList<double> PlantingPrices { get; init; } = [];

    /// <summary>True where harvests of the season name only the crop.</summary>
    public bool NamesOnlyTheCrop { get; init; }
}

/// <summary>The seasons behind a chance: those recorded whole up to the reviewed one, those left out, and the level of prices.</summary>
public sealed class PastSeasons
{
    private readonly FarmReview review;
    private readonly SeasonReview season;
    private readonly ILookup<(Crop Crop, int Year), Enterprise> plantings;
    private readonly HashSet<(Crop Crop, int Year)> cropOnly;

    private PastSeasons(FarmReview review, SeasonReview season, SimulationSettings settings)
    {
        this.review = review;
        this.season = season;
        Settings = settings with { PriceChangePercent = settings.PriceChangePercent ?? (double?)season.Settings.PriceChangePercent };
        (List<int> whole, List<YearInPart> inPart) = RecordedYears.Of(review, season.CropYear);
        Whole = whole;
        InPart = inPart;
        Level = new PriceLevel(review, season.CropYear, Settings.PriceChangePercent);
        plantings = review.Trace.Enterprises.ToLookup(one => (one.Crop, one.CropYear));
        cropOnly = [.. review.Trace.Lots.Where(lot => string.IsNullOrWhiteSpace(lot.Row.Planting))
            .Select(lot => (lot.Enterprise.Crop, lot.Enterprise.CropYear))];
    }

    /// <summary>The crop years recorded whole, oldest first.</summary>
    public IReadOnlyList<int> Whole { get; }

    /// <summary>The crop years left out.</summary>
    public IReadOnlyList<YearInPart> InPart { get; }

    /// <summary>The level of prices.</summary>
    public PriceLevel Level { get; }

    /// <summary>The assumptions.</summary>
    public SimulationSettings Settings { get; }

    /// <summary>Looks back from a season.</summary>
    /// <param name="review">The farm.</param>
    /// <param name="season">The reviewed season of it.</param>
    /// <param name="settings">The assumptions; null: the defaults.</param>
    /// <returns>The seasons.</returns>
    /// <exception cref="ArgumentException">The season is of other records than the farm.</exception>
    public static PastSeasons Of(FarmReview review, SeasonReview season, SimulationSettings? settings = null)
    {
        ArgumentNullException.ThrowIfNull(review);
        ArgumentNullException.ThrowIfNull(season);
        return season.Records == review.Records
            ? new PastSeasons(review, season, settings ?? new SimulationSettings())
            : throw new ArgumentException("The season's costs are of other records than the farm.", nameof(season));
    }

    /// <summary>The seasons of a crop among those recorded whole in which any of it was planted or picked, oldest first.</summary>
    /// <param name="crop">The crop.</param>
    /// <returns>Its seasons.</returns>
    public IReadOnlyList<CropSeason> Of(Crop crop)
    {
        ArgumentNullException.ThrowIfNull(crop);
        return [.. Whole.Select(year => One(crop, year)).OfType<CropSeason>()];
    }

    /// <summary>
    /// Net return of all crops together in the seasons recorded whole, each in its own money; seasons whose net return isn't known are left
    /// out.
    /// </summary>
    public IReadOnlyList<(int CropYear, Money NetReturn)> Farm =>
        [.. Whole.Select(year => year == season.CropYear ? season : review.Season(year))
        .Where(one => one.Farm.Known.NoFullNetReturn is null).Select(one => (one.CropYear, one.Farm.NetReturn))];

    private CropSeason? One(Crop crop, int year)
    {
        // A perennial not picked in a year is young or resting, no failure; a planting that stands in its bed yet isn't over.
        List<Enterprise> grown =
            [.. plantings[(crop, year)]
            .Where(one => one.BedFeet.Value > 0m
            && (one.Harvested > 0m || (!crop.Perennial && one.Stays.All(stay => stay.Out <= review.Records.AsOf))))];
        if (grown.Count == 0)
        {
            return null;
        }

        Dictionary<Enterprise, (double Money, double Units)> sold = Sold(crop, year);
        double units = sold.Values.Sum(item => item.Units);
        bool named = !cropOnly.Contains((crop, year));
        EnterpriseBudget? budget = (year == season.CropYear ? season : review.Season(year)).Crops.FirstOrDefault(one => one.Crop == crop);
        return new CropSeason(
            year, (double)(grown.Sum(one => one.Harvested) / grown.Sum(one => one.BedFeet.Value)), units > 0.0
                ? sold.Values.Sum(item => item.Money) / units : null,
            budget is null || budget.Known.NoFullNetReturn is not null ? null : budget.NetReturn)
        {
            NamesOnlyTheCrop = !named,
            PlantingYields = named ? grown.ConvertAll(one => (double)(one.Harvested / one.BedFeet.Value)) : [],
            PlantingPrices = named ? [.. sold.Values.Where(item => item.Units > 0.0).Select(item => item.Money / item.Units)] : [],
        };
    }

    /// <summary>
    /// Money and units of what each planting sold through market, stand, buyers and shares, the money at the level of the reviewed year.
    /// </summary>
    private Dictionary<Enterprise, (double Money, double Units)> Sold(Crop crop, int year)
    {
        Dictionary<Enterprise, (double Money, double Units)> sold = [];
        foreach (DispositionPart part in review.Season(year).PartsOf(crop)
            .Where(part => part.Enterprise is not null && part.Disposition.Channel.IsSold))
        {
            (double money, double units) = sold.GetValueOrDefault(part.Enterprise!);
            sold[part.Enterprise!] =
                (money + ((double)part.Amount.Amount * Level.Factor(crop, part.Disposition.Channel, year)), units + (double)part.Quantity);
        }

        return sold;
    }
}
