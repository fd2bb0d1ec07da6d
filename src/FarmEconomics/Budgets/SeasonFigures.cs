using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Budgets;

/// <summary>The figures of one crop year: pools shared out, a budget per planting, and the views those add up to.</summary>
internal sealed class SeasonFigures
{
    private const int NamedWithoutPrice = 5;

    private readonly ChargeBook book;
    private readonly int cropYear;
    private readonly Availability known;
    private readonly decimal[] unallocatedHours;
    private readonly IReadOnlyList<Crop> withoutPrice;
    private readonly Dictionary<Enterprise, string> standsUnknown = [];
    private readonly decimal[] unallocated = new decimal[Enum.GetValues<Unallocated>().Length];
    private readonly Lazy<List<EnterpriseBudget>> groups;
    private readonly Lazy<List<EnterpriseBudget>> beds;
    private readonly Lazy<List<EnterpriseBudget>> structures;

    internal SeasonFigures(ChargeBook book, SeasonReview season)
    {
        PoolNetwork network = season.Network;
        this.book = book;
        cropYear = season.CropYear;
        known = season.Known;
        BudgetSums[] sums = BudgetBuilder.Direct(book, cropYear, network.Enterprises);
        PoolSharing sharing = new(book, network, sums);
        Pools = sharing.Results;
        unallocatedHours = sharing.UnallocatedHours;
        ClosingStockValue.Add(book.Trace, network.Enterprises, sums);
        AddEstablishment(season, sums);
        withoutPrice =
        [
            .. Enumerable
                .Range(0, sums.Length)
                .Where(i => sums[i].ValueIncomplete)
                .Select(i => network.Enterprises[i].Crop)
                .Distinct()
                .OrderBy(crop => crop.Index),
        ];
        Plantings = Enumerable
            .Range(0, sums.Length)
            .Select(i => Budget(network.Enterprises[i].Planting.Name, [network.Enterprises[i]], sums[i]))
            .ToList();
        Crops = GroupBy(enterprise => enterprise.Crop).Select(pair => Budget(pair.Key.Name, pair.Members, pair.Sums)).ToList();
        groups = new(() => GroupBy(enterprise => enterprise.Crop.Group).Select(pair => Budget(pair.Key, pair.Members, pair.Sums)).ToList());
        beds = new(() => ByBed(bed => bed.Bed.Name));
        structures = new(() => ByBed(bed => bed.Bed.Structure));
        BudgetSums all = new();
        Array.ForEach(sums, all.Add);
        Farm = Budget(season.Settings.FarmName, network.Enterprises, all);
        SumOutside();
    }

    internal List<PoolResult> Pools { get; }

    internal List<EnterpriseBudget> Plantings { get; }

    internal List<EnterpriseBudget> Crops { get; }

    internal List<EnterpriseBudget> Groups => groups.Value;

    internal List<EnterpriseBudget> Beds => beds.Value;

    internal List<EnterpriseBudget> Structures => structures.Value;

    internal EnterpriseBudget Farm { get; }

    internal IReadOnlyList<decimal> UnallocatedHours => unallocatedHours;

    internal Money Carried { get; private set; }

    internal Money Brought { get; private set; }

    internal decimal CarriedHours { get; private set; }

    internal decimal BroughtHours { get; private set; }

    internal decimal UnallocatedTotal(Unallocated where) => unallocated[(int)where];

    private void AddEstablishment(SeasonReview season, BudgetSums[] sums)
    {
        for (int i = 0; i < sums.Length; i++)
        {
            Enterprise enterprise = season.Network.Enterprises[i];
            if (StandAccount.IsSpread(enterprise.Crop))
            {
                (Money amount, string? missing) = season
                    .StandOf(enterprise.Planting)
                    .In(cropYear, sums[i].OwnCost, known.NoCostBeforeEstablishment);
                sums[i].Establishment = amount;
                sums[i].BehaviorCost[(int)CostDriver.Fixed] += amount.Amount;
                if (missing is not null)
                {
                    standsUnknown[enterprise] = missing;
                }
            }
        }
    }

    private EnterpriseBudget Budget(string name, IReadOnlyList<Enterprise> members, BudgetSums sums)
    {
        Crop? crop = members.Count > 0 && members.All(member => member.Crop == members[0].Crop) ? members[0].Crop : null;
        return new EnterpriseBudget(name, cropYear, crop, members, sums, KnownOf(members, sums));
    }

    private Availability KnownOf(IReadOnlyList<Enterprise> members, BudgetSums sums)
    {
        Availability told = sums.ValueIncomplete ? known with { Value = WhyNoValue(members) } : known;
        return members.FirstOrDefault(standsUnknown.ContainsKey) is { } stand
            ? told with
            {
                Establishment = standsUnknown[stand],
            }
            : told;
    }

    /// <summary>Names the crops whose value isn't known; of many, how many of how many.</summary>
    private string WhyNoValue(IReadOnlyList<Enterprise> members)
    {
        HashSet<Crop> crops = [.. members.Select(member => member.Crop)];
        List<string> names = [.. withoutPrice.Where(crops.Contains).Select(crop => crop.Name)];
        return names.Count <= NamedWithoutPrice
            ? Availability.NoPriceOf(names)
            : $"{crops.Count} crops, prices for {crops.Count - names.Count}";
    }

    private IEnumerable<(TKey Key, List<Enterprise> Members, BudgetSums Sums)> GroupBy<TKey>(Func<Enterprise, TKey> key)
        where TKey : notnull
    {
        foreach (
            IGrouping<TKey, EnterpriseBudget> group in Plantings
                .GroupBy(budget => key(budget.Enterprises[0]))
                .OrderBy(group => group.Min(budget => budget.Enterprises[0].Crop.Index))
        )
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
            decimal[] weights =
                enterprise.BedFootDays.Value > 0m ? [.. enterprise.BedFootDaysByRow] : beds.Select(bed => bed.BedFeet).ToArray();
            BudgetSums[] parts = planting.Sums.Split(weights);
            foreach (
                IGrouping<string, int> group in Enumerable
                    .Range(0, parts.Length)
                    .GroupBy(i => key(beds[i]), StringComparer.OrdinalIgnoreCase)
            )
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
        // Fees follow the sales: a part sold in one crop year and grown in another carries its fee over.
        YearTotals fees = book.Trace.TotalsOf(cropYear);
        unallocated[(int)Unallocated.NotAssigned] += ExactUnits.Money(fees.UnassignedFees).Amount;
        Carried += ExactUnits.Money(fees.CarriedFees);
        Brought += ExactUnits.Money(fees.BroughtFees);
        foreach (Charge charge in book.ByYear[cropYear].NotAtHome)
        {
            if (charge.HomeYear == cropYear && charge.Unallocated is { } where)
            {
                unallocated[(int)where] += charge.Amount.Amount;
                if (charge.Hours > 0m)
                {
                    unallocatedHours[(int)where] += charge.Hours;
                }
            }

            if (charge.Enterprise is { } enterprise && charge.HomeYear != enterprise.CropYear)
            {
                if (charge.HomeYear == cropYear)
                {
                    Carried += charge.Amount;
                    CarriedHours += charge.Hours;
                }
                else if (enterprise.CropYear == cropYear)
                {
                    Brought += charge.Amount;
                    BroughtHours += charge.Hours;
                }
            }
        }

        foreach (PoolResult pool in Pools)
        {
            unallocated[(int)Unallocated.Household] += pool.ToHousehold.Amount;
            unallocated[(int)Unallocated.Unused] += pool.Unused.Amount;
            unallocated[(int)Unallocated.NotAssigned] += pool.NotAssigned.Amount;
        }
    }
}
