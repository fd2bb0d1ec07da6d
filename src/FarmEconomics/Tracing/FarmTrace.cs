using FarmEconomics.Records;

namespace FarmEconomics.Tracing;

/// <summary>
/// All years of a farm traced once: which lot every sale drew on, what it was worth, and where every hour went.
/// </summary>
public sealed class FarmTrace
{
    private FarmTrace(FarmRecords records)
    {
        Records = records;
        Calendar = new PlantingCalendar(records, ProblemList);
        Ledger = new LotLedger(records, Calendar, ProblemList);
        Valuer = new LeavingValuer(records, Ledger, ProblemList);
        Work = new StageWork(records.Settings, Calendar, Ledger);
        Hours = new HoursTracer(records, Calendar, Work, ProblemList);
        LayOutByYear();
    }

    /// <summary>The records traced.</summary>
    public FarmRecords Records { get; }

    /// <summary>Enterprises of all crop years, by first row in the file.</summary>
    public IReadOnlyList<Enterprise> Enterprises => Calendar.Enterprises;

    /// <summary>The crop years that have a planting, in order.</summary>
    public IReadOnlyList<int> CropYears => Calendar.Enterprises.Select(enterprise => enterprise.CropYear).Distinct().Order().ToList();

    /// <summary>All lots by date.</summary>
    public IReadOnlyList<Lot> Lots => Ledger.Lots;

    /// <summary>All leavings by date.</summary>
    public IReadOnlyList<Leaving> Leavings => Ledger.Leavings;

    /// <summary>All labor.</summary>
    public IReadOnlyList<LaborUse> Labor => Hours.Uses;

    /// <summary>Money not tied to a crop.</summary>
    public IReadOnlyList<OtherIncome> OtherIncome => Valuer.OtherIncome;

    /// <summary>Share income split over produce, by channel and crop-year window.</summary>
    public IReadOnlyDictionary<(Channel Channel, int Window), Units.Money> ShareIncome => Valuer.ShareIncome;

    /// <summary>What tracing found wrong or weak.</summary>
    public IReadOnlyList<Problem> Problems => ProblemList;

    /// <summary>Leavings by the crop-year window of their date.</summary>
    internal ByYear<Leaving> LeavingsByWindow { get; } = new();

    /// <summary>Parts of leavings by the crop year they landed in; those not assigned by the window of their date.</summary>
    internal ByYear<LeavingPart> PartsByYear { get; } = new();

    /// <summary>Lots by the crop year of their enterprise.</summary>
    internal ByYear<Lot> LotsByYear { get; } = new();

    /// <summary>Labor by the crop-year window of its day.</summary>
    internal ByYear<LaborUse> LaborByWindow { get; } = new();

    internal List<Problem> ProblemList { get; } = [];

    internal PlantingCalendar Calendar { get; }

    internal LotLedger Ledger { get; }

    internal LeavingValuer Valuer { get; }

    internal StageWork Work { get; }

    internal HoursTracer Hours { get; }

    /// <summary>Traces linked records.</summary>
    /// <param name="records">The records.</param>
    /// <returns>The trace.</returns>
    /// <exception cref="RecordsException">A harvest names a crop or a planting that was never planted by then.</exception>
    public static FarmTrace Of(FarmRecords records)
    {
        ArgumentNullException.ThrowIfNull(records);
        return new FarmTrace(records);
    }

    /// <summary>The parts of the leavings dated in a crop-year window, wherever they landed.</summary>
    internal IEnumerable<LeavingPart> PartsOfWindow(int year)
    {
        foreach (Leaving leaving in LeavingsByWindow[year])
        {
            foreach (LeavingPart part in leaving.OwnParts)
            {
                yield return part;
            }
        }
    }

    private void LayOutByYear()
    {
        foreach (Lot lot in Ledger.Lots)
        {
            LotsByYear.Add(lot.Enterprise.CropYear, lot);
        }

        foreach (Leaving leaving in Ledger.Leavings)
        {
            LeavingsByWindow.Add(leaving.Window, leaving);
            foreach (LeavingPart part in leaving.OwnParts)
            {
                PartsByYear.Add(part.CropYear, part);
            }
        }

        foreach (LaborUse use in Hours.Uses)
        {
            LaborByWindow.Add(use.Window, use);
        }
    }
}
