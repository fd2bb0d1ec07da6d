using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Budgets;

/// <summary>
/// One crop year of a farm: what every planting, crop, group, bed, structure and channel earned, where the shared cost went, and the
/// proof that nothing was lost.
/// </summary>
public sealed class SeasonReview
{
    private readonly ChargeBook book;
    private readonly IReadOnlySet<Pool> unowned;

    // Opening a farm looks into every year for what is wrong in it; a year's figures are worked out when somebody asks for one.
    private readonly Lazy<SeasonFigures> figures;
    private readonly Lazy<List<ChannelResult>> channels;
    private readonly Lazy<List<ReconciliationCheck>> reconciliation;
    private readonly Lazy<ILookup<Crop, DispositionPart>> partsByCrop;
    private readonly Lazy<ILookup<Crop, Lot>> lotsByCrop;
    private readonly Lazy<Postings> postings;

    internal SeasonReview(ChargeBook book, int cropYear, FarmSettings settings, Func<int, SeasonReview> another)
    {
        Another = another;
        this.book = book;
        CropYear = cropYear;
        Settings = settings;
        unowned = book.PoolsWithoutOwnership(cropYear);
        Known = FindAvailability();
        List<Problem> problems = [];
        CheckPartOfYear(problems);
        Network = new PoolNetwork(book, cropYear, problems, settings);
        PoolSharing.Check(book, Network, problems);
        ClosingStockValue.Check(book.Trace, cropYear, Network.Enterprises, problems);
        PoolProblems = problems;
        figures = new(() => new SeasonFigures(book, this));
        channels = new(() => ChannelResult.Of(book, cropYear, Known));
        reconciliation = new(() => new Reconciliation(this, book).Checks());
        partsByCrop = new(() => DispositionParts.ToLookup(part => part.Disposition.Crop));
        postings = new(() => new Postings(this, book));
        lotsByCrop = new(() => Lots.ToLookup(lot => lot.Enterprise.Crop));
        OtherIncome = book.Trace.OtherIncome.Where(income => income.CropYear == cropYear).ToList();
    }

    /// <summary>The crop year.</summary>
    public int CropYear { get; }

    /// <summary>The assumptions it rests on.</summary>
    public FarmSettings Settings { get; }

    /// <summary>How the farm writes what a person reads.</summary>
    public Notation Notation => Settings.Notation;

    /// <summary>The records it rests on.</summary>
    public FarmRecords Records => book.Trace.Records;

    /// <summary>The lots, leavings and hours behind it, over all years.</summary>
    public FarmTrace Trace => book.Trace;

    /// <summary>Lots of this year's plantings, by date.</summary>
    public IReadOnlyList<Lot> Lots => book.Trace.LotsOfYear(CropYear);

    /// <summary>Dispositions dated in this year, by date.</summary>
    public IReadOnlyList<Disposition> Dispositions => book.Trace.DispositionsOfWindow(CropYear);

    /// <summary>
    /// What left of this year's plantings, whenever it left, and what left in this year and is assigned to no planting; by date.
    /// </summary>
    public IReadOnlyList<DispositionPart> DispositionParts => book.Trace.PartsOfYear(CropYear);

    /// <summary>What the hours of a row cost; null: not known.</summary>
    /// <param name="use">The hours.</param>
    /// <returns>The money.</returns>
    public Money? AmountOf(LaborUse use) => book.AmountOf(use);

    /// <summary>
    /// What an employer paid for the hours of a row: what they cost, and what the books hold on top of wages worked out from hours; 0 where
    /// nothing is known.
    /// </summary>
    internal decimal PaidFor(LaborUse use) => (AmountOf(use)?.Amount ?? 0m) + book.BurdenOf(use).Amount;

    /// <summary>What an hour of some work cost, with what was paid on top.</summary>
    /// <param name="work">The work, of more than 0 hours.</param>
    internal decimal CostOfHour(List<LaborUse> work) => work.Sum(PaidFor) / work.Sum(use => use.Hours);

    /// <summary>What the records can't tell.</summary>
    public Availability Known { get; }

    /// <summary>Who used which pool, and the shares that follow.</summary>
    public PoolNetwork Network { get; }

    /// <summary>A budget per planting, in the order of their first row.</summary>
    public IReadOnlyList<EnterpriseBudget> Plantings => figures.Value.Plantings;

    /// <summary>The budget of a planting of this crop year.</summary>
    internal EnterpriseBudget BudgetOf(Enterprise enterprise) => Plantings.First(budget => budget.Enterprises[0] == enterprise);

    /// <summary>A budget per crop, in the order of the crops table.</summary>
    public IReadOnlyList<EnterpriseBudget> Crops => figures.Value.Crops;

    /// <summary>A budget per crop group.</summary>
    public IReadOnlyList<EnterpriseBudget> Groups => figures.Value.Groups;

    /// <summary>A budget per bed, plantings split by bed-foot-days.</summary>
    public IReadOnlyList<EnterpriseBudget> Beds => figures.Value.Beds;

    /// <summary>A budget per structure, plantings split by bed-foot-days.</summary>
    public IReadOnlyList<EnterpriseBudget> Structures => figures.Value.Structures;

    /// <summary>All crops together.</summary>
    public EnterpriseBudget Farm => figures.Value.Farm;

    /// <summary>Results per channel.</summary>
    public IReadOnlyList<ChannelResult> Channels => channels.Value;

    /// <summary>All pools, empty ones included.</summary>
    public IReadOnlyList<PoolResult> Pools => figures.Value.Pools;

    /// <summary>Money not tied to a crop.</summary>
    public IReadOnlyList<OtherIncome> OtherIncome { get; }

    /// <summary>Hours of pools that ended with household, unused and not assigned, and direct hours not assigned, in that order.</summary>
    public IReadOnlyList<decimal> UnallocatedHours => figures.Value.UnallocatedHours;

    /// <summary>Money of rows of this year that landed on enterprises of other years.</summary>
    public Money Carried => figures.Value.Carried;

    /// <summary>Money of rows of other years that landed on this year's enterprises.</summary>
    public Money Brought => figures.Value.Brought;

    /// <summary>Hours of this year worked for enterprises of other years.</summary>
    public decimal CarriedHours => figures.Value.CarriedHours;

    /// <summary>Hours of other years worked for this year's enterprises.</summary>
    public decimal BroughtHours => figures.Value.BroughtHours;

    /// <summary>What was found wrong or weak: tracing and books over all years, pools and stock of this year.</summary>
    public IReadOnlyList<Problem> Problems => [.. book.Trace.Problems, .. book.Problems, .. PoolProblems];

    /// <summary>What was found wrong or weak in this year's pools and stock on hand.</summary>
    public IReadOnlyList<Problem> PoolProblems { get; }

    /// <summary>The proof; every difference is 0.</summary>
    public IReadOnlyList<ReconciliationCheck> Reconciliation => reconciliation.Value;

    /// <summary>The ledger: everything that landed in this year, line by line, from which every planting's budget is summed.</summary>
    public Postings Postings => postings.Value;

    /// <summary>Money that ended outside the crops, directly or through pools.</summary>
    /// <param name="where">Household, unused, not assigned or excluded.</param>
    /// <returns>The amount.</returns>
    public decimal UnallocatedTotal(Unallocated where) => figures.Value.UnallocatedTotal(where);

    /// <summary>The budget of a crop by its name, in whatever case; null where it has no planting in this year.</summary>
    /// <param name="name">The crop's name.</param>
    /// <returns>Its budget.</returns>
    public EnterpriseBudget? FindBudget(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return Crops.FirstOrDefault(crop => string.Equals(crop.Name, name.Trim(), StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>The establishment of a planting of a perennial, and what of it each crop year takes or carries.</summary>
    /// <param name="planting">The planting.</param>
    /// <returns>Its account over all crop years it stands.</returns>
    public StandAccount StandOf(Planting planting)
    {
        ArgumentNullException.ThrowIfNull(planting);
        return StandAccount.Of(book.Trace, planting, Another);
    }

    /// <summary>The lines of establishment of its perennials, for a copy of the records that holds them.</summary>
    internal IEnumerable<((string Planting, int CropYear) Key, (Money Amount, string? Missing) Line)> EstablishmentLines =>
        Plantings
            .Where(planting => planting.Enterprises[0].Crop.Perennial)
            .Select(planting =>
                ((planting.Enterprises[0].Planting.Name, CropYear), (planting.Sums.Establishment, planting.Known.Establishment))
            );

    /// <summary>The season of another crop year, worked out the same way.</summary>
    internal Func<int, SeasonReview> Another { get; }

    /// <summary>Sales dated in this year that no planting could take.</summary>
    internal decimal UnassignedSales => ExactUnits.Money(book.Trace.TotalsOf(CropYear).Unassigned).Amount;

    /// <summary>
    /// What the farm netted, crops and the rest: net return, other income and sales not assigned, less unused capacity and cost not
    /// assigned.
    /// </summary>
    internal decimal FarmNet => Farm.NetReturn.Amount + OtherIncome.Sum(income => income.Amount.Amount) + UnassignedSales
        - UnallocatedTotal(Unallocated.Unused) - UnallocatedTotal(Unallocated.NotAssigned);

    /// <summary>The parts of <see cref="DispositionParts"/> that are of one crop; all crops are sorted out in one pass.</summary>
    /// <param name="crop">The crop.</param>
    /// <returns>Its parts, by date.</returns>
    public IEnumerable<DispositionPart> PartsOf(Crop crop) => partsByCrop.Value[crop];

    /// <summary>The lots of one crop; all crops are sorted out in one pass.</summary>
    /// <param name="crop">The crop.</param>
    /// <returns>Its lots, by date.</returns>
    public IEnumerable<Lot> LotsOf(Crop crop) => lotsByCrop.Value[crop];

    /// <summary>Direct charges that landed on an enterprise of this year.</summary>
    /// <param name="enterprise">The enterprise.</param>
    /// <returns>Its charges, each with its row.</returns>
    public IEnumerable<Charge> DirectCharges(Enterprise enterprise) => book.ChargesOf(enterprise);

    private void CheckPartOfYear(List<Problem> problems)
    {
        int months = Ownership.MonthsPassed(CropYear, Records.Settings, Records.CostsUntil);
        AssetRow? cut = Records.Tables.Assets.Find(one =>
            Ownership.MonthsInService(one, CropYear, Records.Settings, withinLife: false, Records.CostsUntil)
            < Ownership.MonthsInService(one, CropYear, Records.Settings, withinLife: false)
        );
        if (cut is { } asset)
        {
            problems.Add(CostingProblems.PartOfYear(asset, CropYear, months, Records.CostsUntil));
        }
    }

    private Availability FindAvailability()
    {
        FarmRecords records = book.Trace.Records;
        bool wages = book.YearsWithWages.Contains(CropYear);
        bool hours = book.Trace.LaborByWindow[CropYear].Count > 0;
        bool none = !hours && !wages && records.Settings.UnpaidHours == UnpaidHours.None;
        string noLog = records.Has("labor") ? $"no labor records of {CropYear}" : "no labor records";
        bool costs =
            records.Expenses.Any(row => book.HomeYearOf(row) == CropYear)
            || book.ByYear[CropYear].Any(charge => charge.Enterprise?.CropYear == CropYear && charge.Origin is ExpenseRow);
        Availability known = new(
            costs ? null : records.Has("expenses") ? $"no expenses of {CropYear}" : "no expense records",
            hours || none ? null : noLog,
            !hours && !wages && !none ? "no labor records and no wages in the books"
                : book.YearsWithoutHiredWage.Contains(CropYear) ? "hired hours without a wage and no wages in the books" : null,
            book.YearsWithoutOwnerWage.Contains(CropYear) ? "no owner_wage among the settings"
                // Wages tell what hired hours cost. What anybody worked unpaid without a log, nobody knows.
                : !hours && wages && records.Settings.UnpaidHours != UnpaidHours.None ? noLog : null,
            unowned.Count > 0 ? "no interest_percent among the settings" : null);
        return known with { Overhead = known.Costs ?? UnknownIn(pool => pool.IsOverhead, known, hours) };
    }

    /// <summary>Why the cost of some pools isn't known: what they hold, not what the rest of the farm lacks.</summary>
    private string? UnknownIn(Predicate<Pool> meant, Availability known, bool hours)
    {
        bool Holds(WorkerKind kind) => book.Trace.LaborByWindow[CropYear].Any(use => use.Kind == kind && book.AmountOf(use) is null
            && use.Parts is [{ Pool: { } pool }] && meant(pool));
        return (!hours || Holds(WorkerKind.Hired) ? known.LaborCost : null)
            ?? (Holds(WorkerKind.Owner) ? known.OwnerLabor : null)
            ?? (unowned.Any(pool => meant(pool)) ? known.Ownership : null);
    }
}
