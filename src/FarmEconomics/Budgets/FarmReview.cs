using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tracing;

namespace FarmEconomics.Budgets;

/// <summary>
/// The second door after opening a records folder: traces all years once, then reviews any crop year of them.
/// Several threads may ask for seasons; what is worked out from one of them beyond its own figures belongs to one thread.
/// </summary>
public sealed class FarmReview
{
    private readonly Dictionary<(int Year, SharingMethod Method, IdleCapacity Idle), Lazy<SeasonReview>> seasons = [];

    private List<int>? recordedYears;

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

    /// <summary>
    /// The crop years the records tell something of: those with a planting and a harvest, a sale, hours or a line of the books.
    /// </summary>
    public IReadOnlyList<int> CropYears => recordedYears ??= FindRecordedYears();

    /// <summary>
    /// Those of which something was picked or sold: a year in which crops only stood, or were set for the next, says nothing of what they
    /// bring.
    /// </summary>
    public IReadOnlyList<int> CropYearsPicked => [.. CropYears.Where(HasProduce)];

    private bool HasProduce(int cropYear) =>
        Trace.Enterprises.Any(enterprise => enterprise.CropYear == cropYear && (enterprise.IsPicked || enterprise.Sold > 0m));

    /// <summary>
    /// The crop year a review is of when none is named: the last with sales of which at least half was over at the closing date, so that
    /// the first sowings of the next year don't hide the season just ended; else the last with sales, else the last at all.
    /// </summary>
    public int LatestCropYear
    {
        get
        {
            List<int> sold = CropYears
                .Where(year => Trace.Enterprises.Any(enterprise => enterprise.CropYear == year && enterprise.Sold > 0m))
                .ToList();
            int past = sold.FindLastIndex(IsHalfOver);
            return past >= 0 ? sold[past]
                : sold.Count > 0 ? sold[^1]
                : CropYears.Count > 0 ? CropYears[^1]
                : Records.Settings.WindowOf(Records.AsOf);
        }
    }

    /// <summary>True when half of a crop year is over at the closing date: before that its season has begun, no more.</summary>
    internal bool IsHalfOver(int cropYear) => Records.Settings.StartOf(cropYear).AddMonths(6) <= Records.AsOf;

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
        Lazy<SeasonReview>? season;
        lock (seasons)
        {
            if (!seasons.TryGetValue(key, out season))
            {
                seasons[key] = season = new(() => new SeasonReview(Charges, cropYear, settings, year => Season(year, method, idle)));
            }
        }

        return season.Value;
    }

    /// <summary>Makes ready some crop years side by side; what is wrong with one is told when it is asked for.</summary>
    /// <param name="cropYears">The crop years.</param>
    internal void Prepare(IReadOnlyList<int> cropYears) => RowRanges.Run(cropYears.Count, i =>
    {
        try
        {
            Season(cropYears[i]);
        }
        catch (RecordsException)
        {
            // The season keeps it.
        }
    });

    private List<int> FindRecordedYears()
    {
        HashSet<int> told = Charges.ChargeList.WithoutLabor.Where(charge => charge.Origin is ExpenseRow).Select(charge => charge.HomeYear)
            .Concat(Trace.YearsWithLabor(added: false))
            .Concat(Trace.Enterprises.Where(enterprise => enterprise.IsPicked).Select(enterprise => enterprise.CropYear))
            .Concat(Trace.WindowsOfDispositions).ToHashSet();
        return Trace.CropYears.Where(told.Contains).ToList();
    }
}
