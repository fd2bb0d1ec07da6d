using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Tracing;

/// <summary>
/// All years of a farm traced once: which lot every sale drew on, what it was worth, and where every hour went.
/// </summary>
public sealed class FarmTrace
{
    private readonly Lazy<Dictionary<int, int[]>> lotsByYear;
    private readonly Lazy<Dictionary<int, int[]>> partsByYear;
    private readonly Lazy<Dictionary<int, YearTotals>> totals;
    private readonly Lazy<Int128[]> unitDays;

    private FarmTrace(FarmRecords records)
    {
        Records = records;
        Calendar = new PlantingCalendar(records, ProblemList);
        Ledger = new LotLedger(records, Calendar, ProblemList);
        Valuer = new DispositionValuer(records, Ledger, ProblemList);
        Work = new StageWork(Calendar, Ledger);
        LaborTable = HoursTracer.Of(records, Calendar, Work, ProblemList);
        Labor = LaborTable.Views();
        lotsByYear = new(() => ByYearOf(Ledger.Lots.Layout.ByDate, lot => Enterprises[Ledger.Lots.Enterprise[lot]].CropYear));
        partsByYear = new(() => ByYearOf(PartsByDate(), Ledger.Parts.CropYear));
        totals = new(() => YearTotals.Of(Ledger));
        unitDays = new(() => UnitDays.Of(Ledger));
        for (int use = 0; use < LaborTable.Uses.Length; use++)
        {
            LaborByWindow.Add(LaborTable.Uses[use].Window, Labor[use]);
        }
    }

    /// <summary>The records traced.</summary>
    public FarmRecords Records { get; }

    /// <summary>Enterprises of all crop years, by first row in the file.</summary>
    public IReadOnlyList<Enterprise> Enterprises => Calendar.Enterprises;

    /// <summary>All stays in beds, planting by planting.</summary>
    public IReadOnlyList<BedStay> Stays => Calendar.Stays;

    /// <summary>The crop years that have a planting, in order.</summary>
    public IReadOnlyList<int> CropYears => Calendar.Enterprises.Select(enterprise => enterprise.CropYear).Distinct().Order().ToList();

    /// <summary>All lots by date.</summary>
    public IReadOnlyList<Lot> Lots => LotsAt(Ledger.Lots.Layout.ByDate);

    /// <summary>All that was sold or used, by date.</summary>
    public IReadOnlyList<Disposition> Dispositions => DispositionsAt(Ledger.Dispositions.Layout.ByDate);

    /// <summary>All labor.</summary>
    public IReadOnlyList<LaborUse> Labor { get; }

    /// <summary>Money not tied to a crop.</summary>
    public IReadOnlyList<OtherIncome> OtherIncome => Valuer.OtherIncome;

    /// <summary>Share income split over produce, by channel and crop-year window.</summary>
    public IReadOnlyDictionary<(Channel Channel, int Window), Money> ShareIncome => Valuer.ShareIncome;

    /// <summary>What tracing found wrong or weak.</summary>
    public IReadOnlyList<Problem> Problems => ProblemList;

    internal LaborTable LaborTable { get; }

    /// <summary>Labor by the crop-year window of its day.</summary>
    internal ByYear<LaborUse> LaborByWindow { get; } = new();

    internal List<Problem> ProblemList { get; } = [];

    internal PlantingCalendar Calendar { get; }

    internal LotLedger Ledger { get; }

    internal DispositionValuer Valuer { get; }

    internal StageWork Work { get; }

    /// <summary>Traces linked records.</summary>
    /// <param name="records">The records.</param>
    /// <returns>The trace.</returns>
    /// <exception cref="RecordsException">A harvest names a crop or a planting that was never planted by then.</exception>
    public static FarmTrace Of(FarmRecords records)
    {
        ArgumentNullException.ThrowIfNull(records);
        return new FarmTrace(records);
    }

    /// <summary>What the rows of the sales table come to in a crop year.</summary>
    internal YearTotals TotalsOf(int year) => totals.Value.GetValueOrDefault(year) ?? new YearTotals();

    /// <summary>Units of its crop times days held, of all lots of an enterprise.</summary>
    internal decimal UnitDaysOf(Enterprise enterprise) => ExactUnits.Value(unitDays.Value[enterprise.Index]);

    /// <summary>The crop-year windows in which something was sold or used.</summary>
    internal IEnumerable<int> WindowsOfDispositions => totals.Value.Where(year => year.Value.HasRows).Select(year => year.Key);

    /// <summary>Crop years in which something was sold through a channel that took a fee of it.</summary>
    internal IEnumerable<int> YearsWithFees => totals.Value.Where(year => year.Value.TakesFees).Select(year => year.Key);

    /// <summary>The crop-year windows of hours that went somewhere, those added from standards among them or not.</summary>
    internal IEnumerable<int> YearsWithLabor(bool added) =>
        Enumerable
            .Range(0, LaborTable.Uses.Length)
            .Where(use => (added || !LaborTable.Uses[use].IsAdded) && LaborTable.First[use] < LaborTable.First[use + 1])
            .Select(use => LaborTable.Uses[use].Window)
            .Distinct();

    /// <summary>The parts that landed on an enterprise, by date.</summary>
    internal IEnumerable<int> PartPlacesOf(Enterprise enterprise)
    {
        (DispositionTable table, PartTable parts, int crop) = (Ledger.Dispositions, Ledger.Parts, enterprise.Crop.Index);
        for (int part = parts.First[table.Layout.Starts[crop]]; part < parts.First[table.Layout.Starts[crop + 1]]; part++)
        {
            if (parts.EnterpriseOf(part) == enterprise.Index)
            {
                yield return part;
            }
        }
    }

    /// <summary>Lots of the enterprises of a crop year, by date.</summary>
    internal IReadOnlyList<Lot> LotsOfYear(int year) => LotsAt(lotsByYear.Value.GetValueOrDefault(year) ?? []);

    /// <summary>What was sold or used in a crop-year window, by date.</summary>
    internal IReadOnlyList<Disposition> DispositionsOfWindow(int year) => DispositionsAt(PlacesOfWindow(year));

    /// <summary>Parts that landed in a crop year, and those of its window that aren't assigned; by date.</summary>
    internal IReadOnlyList<DispositionPart> PartsOfYear(int year) =>
        new ColumnList<DispositionPart>(PartPlacesOfYear(year), part => new DispositionPart(Ledger.Parts, part));

    /// <summary>The same as places in the columns of parts.</summary>
    internal int[] PartPlacesOfYear(int year) => partsByYear.Value.GetValueOrDefault(year) ?? [];

    /// <summary>The parts of what was sold or used in a crop-year window, wherever they landed.</summary>
    internal IEnumerable<DispositionPart> PartsOfWindow(int year)
    {
        foreach (int place in PlacesOfWindow(year))
        {
            for (int part = Ledger.Parts.First[place]; part < Ledger.Parts.First[place + 1]; part++)
            {
                yield return new DispositionPart(Ledger.Parts, part);
            }
        }
    }

    /// <summary>Places of what was sold or used in a crop-year window, by date.</summary>
    internal ArraySegment<int> PlacesOfWindow(int year) =>
        Ledger.Dispositions.PlacesOfDays(Records.Settings.StartOf(year).DayNumber, Records.Settings.EndOf(year).DayNumber);

    private ColumnList<Lot> LotsAt(int[] places) => new(places, lot => new Lot(Ledger.Lots, lot));

    private ColumnList<Disposition> DispositionsAt(ArraySegment<int> places) => new(places, place => new Disposition(Ledger.Parts, place));

    private IEnumerable<int> PartsByDate()
    {
        foreach (int place in Ledger.Dispositions.Layout.ByDate)
        {
            for (int part = Ledger.Parts.First[place]; part < Ledger.Parts.First[place + 1]; part++)
            {
                yield return part;
            }
        }
    }

    private static Dictionary<int, int[]> ByYearOf(IEnumerable<int> places, Func<int, int> yearOf)
    {
        Dictionary<int, List<int>> years = [];
        foreach (int place in places)
        {
            int year = yearOf(place);
            if (!years.TryGetValue(year, out List<int>? list))
            {
                years[year] = list = [];
            }

            list.Add(place);
        }

        return years.ToDictionary(year => year.Key, year => year.Value.ToArray());
    }
}
