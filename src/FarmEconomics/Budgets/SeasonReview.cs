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
    private readonly decimal[] outsideHours;

    // Opening a farm reviews every year for what is wrong in it; the views of a year are made when somebody looks at them.
    private readonly Lazy<List<EnterpriseBudget>> groups;
    private readonly Lazy<List<EnterpriseBudget>> beds;
    private readonly Lazy<List<EnterpriseBudget>> structures;
    private readonly Lazy<List<ChannelResult>> channels;
    private readonly Lazy<List<ReconciliationCheck>> reconciliation;
    private readonly decimal[] outside = new decimal[Enum.GetValues<Outside>().Length];

    internal SeasonReview(ChargeBook book, int cropYear, FarmSettings settings)
    {
        this.book = book;
        CropYear = cropYear;
        Settings = settings;
        Known = FindAvailability();
        List<Problem> problems = [];
        Network = new PoolNetwork(book, cropYear, problems, settings);
        BudgetSums[] sums = BudgetBuilder.Direct(book, cropYear, Network.Enterprises);
        PoolSharing sharing = new(book, Network, sums, problems);
        Pools = sharing.Results;
        outsideHours = sharing.OutsideHours;
        ClosingStockValue.Add(book.Trace, cropYear, Network.Enterprises, sums, problems);
        Plantings = Enumerable.Range(0, sums.Length).Select(i => Budget(Network.Enterprises[i].Planting.Name, [Network.Enterprises[i]], sums[i])).ToList();
        Crops = GroupBy(enterprise => enterprise.Crop).Select(pair => Budget(pair.Key.Name, pair.Members, pair.Sums)).ToList();
        groups = new(() => GroupBy(enterprise => enterprise.Crop.Group).Select(pair => Budget(pair.Key, pair.Members, pair.Sums)).ToList());
        beds = new(() => ByBed(bed => bed.Bed.Name));
        structures = new(() => ByBed(bed => bed.Bed.Structure));
        BudgetSums all = new();
        Array.ForEach(sums, all.Add);
        Farm = Budget(settings.FarmName, Network.Enterprises, all);
        channels = new(() => ChannelResult.Of(book, cropYear, Known));
        OtherIncome = book.Trace.OtherIncome.Where(income => income.CropYear == cropYear).ToList();
        SumOutside();
        PoolProblems = problems;
        reconciliation = new(() => new Reconciliation(this, book).Checks());
    }

    /// <summary>The crop year.</summary>
    public int CropYear { get; }

    /// <summary>The assumptions it rests on.</summary>
    public FarmSettings Settings { get; }

    /// <summary>The records it rests on.</summary>
    public FarmRecords Records => book.Trace.Records;

    /// <summary>The lots, leavings and hours behind it, over all years.</summary>
    public FarmTrace Trace => book.Trace;

    /// <summary>What the records can't tell.</summary>
    public Availability Known { get; }

    /// <summary>Who used which pool, and the shares that follow.</summary>
    public PoolNetwork Network { get; }

    /// <summary>A budget per planting, in the order of their first row.</summary>
    public IReadOnlyList<EnterpriseBudget> Plantings { get; }

    /// <summary>A budget per crop, in the order of the crops table.</summary>
    public IReadOnlyList<EnterpriseBudget> Crops { get; }

    /// <summary>A budget per crop group.</summary>
    public IReadOnlyList<EnterpriseBudget> Groups => groups.Value;

    /// <summary>A budget per bed, plantings split by bed-foot-days.</summary>
    public IReadOnlyList<EnterpriseBudget> Beds => beds.Value;

    /// <summary>A budget per structure, plantings split by bed-foot-days.</summary>
    public IReadOnlyList<EnterpriseBudget> Structures => structures.Value;

    /// <summary>All crops together.</summary>
    public EnterpriseBudget Farm { get; }

    /// <summary>Results per channel.</summary>
    public IReadOnlyList<ChannelResult> Channels => channels.Value;

    /// <summary>All pools, empty ones included.</summary>
    public IReadOnlyList<PoolResult> Pools { get; }

    /// <summary>Money not tied to a crop.</summary>
    public IReadOnlyList<OtherIncome> OtherIncome { get; }

    /// <summary>Hours of pools that ended with household, unused and not assigned, and direct hours not assigned, in that order.</summary>
    public IReadOnlyList<decimal> OutsideHours => outsideHours;

    /// <summary>Money of rows of this year that landed on enterprises of other years.</summary>
    public Money Carried { get; private set; }

    /// <summary>Money of rows of other years that landed on this year's enterprises.</summary>
    public Money Brought { get; private set; }

    /// <summary>Hours of this year worked for enterprises of other years.</summary>
    public decimal CarriedHours { get; private set; }

    /// <summary>Hours of other years worked for this year's enterprises.</summary>
    public decimal BroughtHours { get; private set; }

    /// <summary>What was found wrong or weak: tracing and books over all years, pools and stock of this year.</summary>
    public IReadOnlyList<Problem> Problems => [.. book.Trace.Problems, .. book.Problems, .. PoolProblems];

    /// <summary>What was found wrong or weak in this year's pools and stock on hand.</summary>
    public IReadOnlyList<Problem> PoolProblems { get; }

    /// <summary>The proof; every difference is 0.</summary>
    public IReadOnlyList<ReconciliationCheck> Reconciliation => reconciliation.Value;

    /// <summary>Money that ended outside the crops, directly or through pools.</summary>
    /// <param name="where">Household, unused, not assigned or excluded.</param>
    /// <returns>The amount.</returns>
    public decimal OutsideTotal(Outside where) => outside[(int)where];

    /// <summary>Direct charges that landed on an enterprise of this year.</summary>
    /// <param name="enterprise">The enterprise.</param>
    /// <returns>Its charges, each with its row.</returns>
    public IEnumerable<Charge> DirectCharges(Enterprise enterprise) => book.ByEnterprise[enterprise];

    /// <summary>Charges of this year that ended outside crops and pools.</summary>
    /// <param name="where">Household, not assigned or excluded.</param>
    /// <returns>The charges, each with its row.</returns>
    public IEnumerable<Charge> OutsideCharges(Outside where) => book.ByYear[CropYear].Where(charge => charge.Outside == where && charge.HomeYear == CropYear);

    private Availability FindAvailability()
    {
        FarmRecords records = book.Trace.Records;
        bool hours = book.Trace.LaborByWindow[CropYear].Count > 0;
        bool laborInBooks = book.ByYear[CropYear].Any(charge => charge.Stream == CostStream.HiredLabor && charge.HomeYear == CropYear && charge.Origin is ExpenseRow);
        bool costs = records.Expenses.Any(row => book.HomeYearOf(row) == CropYear) || book.ByYear[CropYear].Any(charge => charge.Enterprise?.CropYear == CropYear && charge.Origin is ExpenseRow);
        return new Availability(
            costs ? null : records.Has("expenses") ? $"no expenses of {CropYear}" : "no expense records",
            hours ? null : records.Has("labor") ? $"no labor records of {CropYear}" : "no labor records",
            !hours && !laborInBooks ? "no labor records and no wages in the books"
                : book.YearsWithoutHiredWage.Contains(CropYear) ? "hired hours without a wage and no wages in the books" : null,
            book.YearsWithoutOwnerWage.Contains(CropYear) ? "no owner_wage among the settings" : null,
            book.OwnershipMissing ? "no interest_percent among the settings" : null);
    }

    private EnterpriseBudget Budget(string name, IReadOnlyList<Enterprise> members, BudgetSums sums)
    {
        Crop? crop = members.Count > 0 && members.All(member => member.Crop == members[0].Crop) ? members[0].Crop : null;
        return new EnterpriseBudget(name, CropYear, crop, members, sums, Known);
    }

    private IEnumerable<(TKey Key, List<Enterprise> Members, BudgetSums Sums)> GroupBy<TKey>(Func<Enterprise, TKey> key)
        where TKey : notnull
    {
        foreach (IGrouping<TKey, EnterpriseBudget> group in Plantings.GroupBy(budget => key(budget.Enterprises[0])).OrderBy(group => group.Min(budget => budget.Enterprises[0].Crop.Index)))
        {
            BudgetSums sums = new();
            foreach (EnterpriseBudget budget in group)
            {
                sums.Add(budget.Sums);
            }

            yield return (group.Key, group.Select(budget => budget.Enterprises[0]).ToList(), sums);
        }
    }

    private List<EnterpriseBudget> ByBed(Func<BedPlanting, string> key)
    {
        Dictionary<string, (BudgetSums Sums, List<Enterprise> Members)> views = new(StringComparer.OrdinalIgnoreCase);
        foreach (EnterpriseBudget planting in Plantings)
        {
            Enterprise enterprise = planting.Enterprises[0];
            IReadOnlyList<BedPlanting> beds = enterprise.Planting.Beds;
            decimal[] weights = enterprise.BedFootDays.Value > 0m ? [.. enterprise.BedFootDaysByRow] : beds.Select(bed => bed.BedFeet).ToArray();
            BudgetSums[] parts = planting.Sums.Split(weights);
            foreach (IGrouping<string, int> group in Enumerable.Range(0, parts.Length).GroupBy(i => key(beds[i]), StringComparer.OrdinalIgnoreCase))
            {
                if (!views.TryGetValue(group.Key, out (BudgetSums Sums, List<Enterprise> Members) view))
                {
                    views[group.Key] = view = (new BudgetSums(), []);
                }

                view.Members.Add(enterprise);
                view.Sums.Plantings++;
                foreach (int i in group)
                {
                    parts[i].BedFeet = new BedFeet(beds[i].BedFeet);
                    parts[i].BedFootDays = new BedFootDays(enterprise.BedFootDaysByRow[i]);
                    view.Sums.Add(parts[i]);
                }
            }
        }

        return views.Select(view => Budget(view.Key, view.Value.Members, view.Value.Sums)).ToList();
    }

    private void SumOutside()
    {
        foreach (Charge charge in book.ByYear[CropYear])
        {
            if (charge.HomeYear == CropYear && charge.Outside is { } where)
            {
                outside[(int)where] += charge.Amount.Amount;
                if (where != Outside.Excluded && charge.Hours > 0m)
                {
                    outsideHours[(int)where] += charge.Hours;
                }
            }

            if (charge.Enterprise is { } enterprise && charge.HomeYear != enterprise.CropYear)
            {
                if (charge.HomeYear == CropYear)
                {
                    Carried += charge.Amount;
                    CarriedHours += charge.Hours;
                }
                else if (enterprise.CropYear == CropYear)
                {
                    Brought += charge.Amount;
                    BroughtHours += charge.Hours;
                }
            }
        }

        foreach (PoolResult pool in Pools)
        {
            outside[(int)Outside.Household] += pool.ToHousehold.Amount;
            outside[(int)Outside.Unused] += pool.Unused.Amount;
            outside[(int)Outside.NotAssigned] += pool.NotAssigned.Amount;
        }
    }
}
