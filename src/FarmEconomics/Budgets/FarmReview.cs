using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tracing;

namespace FarmEconomics.Budgets;

/// <summary>
/// The second door after opening a records folder: traces all years once, then reviews any crop year of them.
/// Not safe to share between threads while seasons are being reviewed.
/// </summary>
public sealed class FarmReview
{
    private readonly Dictionary<(int Year, SharingMethod Method, IdleCapacity Idle), SeasonReview> seasons = [];

    private FarmReview(FarmRecords records)
    {
        Records = records;
        Trace = FarmTrace.Of(records);
        Charges = ChargeBook.Of(Trace);
    }

    /// <summary>The records.</summary>
    public FarmRecords Records { get; }

    /// <summary>Lots, leavings and hours over all years.</summary>
    public FarmTrace Trace { get; }

    /// <summary>All charges over all years.</summary>
    public ChargeBook Charges { get; }

    /// <summary>The crop years that have a planting.</summary>
    public IReadOnlyList<int> CropYears => Trace.CropYears;

    /// <summary>
    /// The crop year a review is of when none is named: the last with a planting whose window is over at the closing date or that has sales;
    /// else the last with a planting.
    /// </summary>
    public int LatestCropYear
    {
        get
        {
            List<int> sold = Trace.Enterprises.Where(enterprise => enterprise.Sold > 0m).Select(enterprise => enterprise.CropYear).ToList();
            return sold.Count > 0 ? sold.Max() : CropYears.Count > 0 ? CropYears[^1] : Records.Settings.WindowOf(Records.AsOf);
        }
    }

    /// <summary>Reviews linked records.</summary>
    /// <param name="records">The records.</param>
    /// <returns>The review.</returns>
    /// <exception cref="RecordsException">The records can't be made into a result.</exception>
    public static FarmReview Of(FarmRecords records)
    {
        ArgumentNullException.ThrowIfNull(records);
        return new FarmReview(records);
    }

    /// <summary>Reviews one crop year.</summary>
    /// <param name="cropYear">The crop year.</param>
    /// <param name="method">How pools that serve each other are resolved; null: as the settings say.</param>
    /// <param name="idle">What happens to idle capacity; null: as the settings say.</param>
    /// <returns>The season, kept for the next call.</returns>
    /// <exception cref="RecordsException">Pools serve only each other in that year.</exception>
    public SeasonReview Season(int cropYear, SharingMethod? method = null, IdleCapacity? idle = null)
    {
        FarmSettings settings = Records.Settings with
        {
            SharingMethod = method ?? Records.Settings.SharingMethod,
            IdleCapacity = idle ?? Records.Settings.IdleCapacity,
        };
        (int, SharingMethod, IdleCapacity) key = (cropYear, settings.SharingMethod, settings.IdleCapacity);
        if (!seasons.TryGetValue(key, out SeasonReview? season))
        {
            seasons[key] = season = new SeasonReview(Charges, cropYear, settings);
        }

        return season;
    }
}
