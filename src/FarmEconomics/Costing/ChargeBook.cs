using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Costing;

/// <summary>
/// Every charge of every year: the books, the labor and the yearly cost of equipment and buildings, and the fees
/// as they follow from the sales.
/// </summary>
public sealed class ChargeBook
{
    private readonly BooksRouter books;
    private readonly LaborCost labor;
    private ILookup<Enterprise, int>? byEnterprise;

    private ChargeBook(FarmTrace trace)
    {
        Trace = trace;
        ChargeList = new ChargeList(trace.LaborTable);
        books = new BooksRouter(trace, ChargeList, ProblemList);
        labor = new LaborCost(trace, books, ChargeList, ProblemList);
        YearsWithoutOwnerWage = labor.YearsWithoutOwnerWage;
        YearsWithoutHiredWage = labor.YearsWithoutHiredWage;
        Years = trace
            .CropYears.Concat(ChargeList.WithoutLabor.Select(charge => charge.HomeYear))
            .Concat(trace.YearsWithLabor(added: true))
            .Concat(trace.YearsWithFees)
            .Distinct()
            .Order()
            .ToList();
        AddOwnership();
        ByYear = new ChargesByYear(ChargeList);
    }

    /// <summary>The trace behind it.</summary>
    public FarmTrace Trace { get; }

    /// <summary>
    /// The charges of books, labor and ownership, in the order they were made. Channels' fees are derived from the sales:
    /// <see cref="Fees"/>.
    /// </summary>
    public IReadOnlyList<Charge> Charges => ChargeList;

    /// <summary>Channels' fees, part by part of what was sold.</summary>
    public IEnumerable<Charge> Fees =>
        Enumerable.Range(0, Trace.Ledger.Parts.Count).Where(part => Trace.Ledger.Parts.Fee(part) != 0).Select(FeeOf);

    /// <summary>All crop years that hold a planting, a charge or hours.</summary>
    public IReadOnlyList<int> Years { get; }

    /// <summary>What was found wrong or weak.</summary>
    public IReadOnlyList<Problem> Problems => ProblemList;

    /// <summary>Years with unpaid owner hours but no owner wage.</summary>
    public IReadOnlySet<int> YearsWithoutOwnerWage { get; }

    /// <summary>Years with hired hours that no wage and no books give a cost.</summary>
    public IReadOnlySet<int> YearsWithoutHiredWage { get; }

    /// <summary>Crop years whose books hold wages.</summary>
    internal IReadOnlySet<int> YearsWithWages => books.YearsWithWages;

    /// <summary>
    /// Pools whose ownership cost of a crop year isn't available: there is no interest, and one of their assets was within its life.
    /// </summary>
    internal IReadOnlySet<Pool> PoolsWithoutOwnership(int year)
    {
        FarmRecords records = Trace.Records;
        if (records.Settings.InterestPercent is not null)
        {
            return new HashSet<Pool>();
        }

        HashSet<Pool> pools = records
            .Tables.Assets.Where(asset =>
                Ownership.MonthsInService(asset, year, records.Settings, withinLife: true, records.CostsUntil) > 0
            )
            .Select(asset => records.Pool(asset.Pool))
            .ToHashSet();
        if (LandCharge.IsUnknown(records) && Ownership.MonthsPassed(year, records.Settings, records.CostsUntil) > 0)
        {
            pools.Add(records.Pool(DefaultPools.Land));
        }

        return pools;
    }

    internal ChargeList ChargeList { get; }

    /// <summary>The charges that concern a crop year: those whose row belongs to it and those that landed in it.</summary>
    internal ChargesByYear ByYear { get; }

    /// <summary>The charges that landed on an enterprise, its channels' fees last.</summary>
    internal Charge[] ChargesOf(Enterprise enterprise)
    {
        byEnterprise ??= Enumerable
            .Range(0, ChargeList.Count)
            .Where(index => ChargeList.EnterpriseOf(index) is not null)
            .ToLookup(index => ChargeList.EnterpriseOf(index)!);
        // A charge is large: a list of them that grows copies itself many times.
        int[] own = [.. byEnterprise[enterprise]];
        int[] withFee = [.. Trace.PartPlacesOf(enterprise).Where(part => Trace.Ledger.Parts.Fee(part) != 0)];
        Charge[] charges = new Charge[own.Length + withFee.Length];
        for (int i = 0; i < charges.Length; i++)
        {
            charges[i] = i < own.Length ? ChargeList[own[i]] : FeeOf(withFee[i - own.Length]);
        }

        return charges;
    }

    internal List<Problem> ProblemList { get; } = [];

    /// <summary>The crop year a row of the books belongs to.</summary>
    internal int HomeYearOf(ExpenseRow row) => books.HomeYear(row);

    /// <summary>What hours cost; null while not available (no wage known).</summary>
    /// <param name="use">The hours.</param>
    /// <returns>Their cost.</returns>
    public Money? AmountOf(LaborUse use) => labor.AmountOf(use);

    /// <summary>What the books paid on top of wages that are worked out from hours.</summary>
    internal Money BurdenOf(LaborUse use) => labor.BurdenOf(use);

    /// <summary>True for hired hours whose cost is wage times hours, because the books are silent.</summary>
    internal bool IsImputed(LaborUse use) => labor.IsImputed(use);

    /// <summary>Makes the charges of traced records.</summary>
    /// <param name="trace">The trace.</param>
    /// <returns>The charges.</returns>
    public static ChargeBook Of(FarmTrace trace)
    {
        ArgumentNullException.ThrowIfNull(trace);
        return new ChargeBook(trace);
    }

    private Charge FeeOf(int part)
    {
        DispositionPart view = new(Trace.Ledger.Parts, part);
        return new Charge(view.Disposition.Row, view.Disposition.Window, CostStream.Cash, view.Fee)
        {
            Enterprise = view.Enterprise,
            Unallocated = view.Enterprise is null ? Unallocated.NotAssigned : null,
            Line = StatementLine.Selling,
            VariesWith = CostDriver.Units,
            Imputed = true,
            IsFee = true,
        };
    }

    private void AddOwnership()
    {
        FarmRecords records = Trace.Records;
        if (Years.Select(PoolsWithoutOwnership).Any(pools => pools.Count > 0))
        {
            ProblemList.Add(CostingProblems.NoInterest(records));
        }

        BooksByTaxLine repairs = new(this, "repair");
        BooksByTaxLine insurance = new(this, "insurance", "taxes");
        foreach (int year in Years)
        {
            foreach (AssetRow asset in records.Tables.Assets)
            {
                foreach (OwnershipPart part in Ownership.Of(asset, year, records.Settings, records.CostsUntil))
                {
                    Charge charge = new(asset, year, CostStream.Ownership, part.Farm) { Imputed = true };
                    ChargeList.Add(charge with { Pool = records.Pool(asset.Pool) });
                    if (part.Household != Money.Zero)
                    {
                        ChargeList.Add(charge with { Amount = part.Household, Unallocated = Unallocated.Household });
                    }
                }
            }

            foreach ((BedRow bed, Money amount) in LandCharge.ByBed(records, year))
            {
                ChargeList.Add(
                    new Charge(bed, year, CostStream.Ownership, amount) { Imputed = true, Pool = records.Pool(DefaultPools.Land) }
                );
            }

            WarnOfDoubleCounting(records, year, repairs, insurance);
        }
    }

    private void WarnOfDoubleCounting(FarmRecords records, int year, BooksByTaxLine repairs, BooksByTaxLine insurance)
    {
        foreach (AssetRow asset in records.Tables.Assets)
        {
            Pool pool = records.Pool(asset.Pool);
            Warn(asset.RepairsPercent, "repairs_percent", repairs);
            Warn(asset.InsuranceTaxPercent, "insurance_tax_percent", insurance);

            void Warn(decimal? percent, string column, BooksByTaxLine books)
            {
                if (
                    percent is not > 0m
                    || Ownership.MonthsInService(asset, year, records.Settings, withinLife: false, records.CostsUntil) == 0
                )
                {
                    return;
                }

                if (books.First(pool, year) is { } charge)
                {
                    ProblemList.Add(CostingProblems.PercentBesideBooks(asset, column, pool, year, charge.Origin.Source));
                }
            }
        }
    }

    /// <summary>The first line of the books in each pool and year whose tax line holds one of some words.</summary>
    private sealed class BooksByTaxLine
    {
        private readonly Dictionary<(Pool Pool, int Year), Charge> first = [];

        internal BooksByTaxLine(ChargeBook book, params string[] words)
        {
            FarmRecords records = book.Trace.Records;
            foreach (Charge charge in book.ChargeList.WithoutLabor)
            {
                // Payroll taxes and workers' compensation stand on the same tax lines, but insure and tax people, not assets.
                if (charge is { Pool: { } pool, Origin: ExpenseRow row, Stream: CostStream.Cash })
                {
                    string taxLine = records.Category(row.Category).TaxLine ?? "";
                    if (Array.Exists(words, word => taxLine.Contains(word, StringComparison.OrdinalIgnoreCase)))
                    {
                        first.TryAdd((pool, charge.HomeYear), charge);
                    }
                }
            }
        }

        internal Charge? First(Pool pool, int year) => first.TryGetValue((pool, year), out Charge charge) ? charge : null;
    }
}
