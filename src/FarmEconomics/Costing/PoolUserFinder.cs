using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Costing;

/// <summary>Reckons the weights of every pool for one crop year.</summary>
internal sealed class PoolUserFinder
{
    private readonly FarmTrace trace;
    private readonly FarmRecords records;
    private readonly ChargeBook book;
    private readonly int year;
    private readonly List<Problem> problems;
    private readonly int crateDayPools;
    private readonly CrateSizes crateSizes;

    internal PoolUserFinder(ChargeBook book, int year, IReadOnlyList<Enterprise> enterprises, IReadOnlySet<Pool> busy, List<Problem> problems)
    {
        this.book = book;
        trace = book.Trace;
        records = trace.Records;
        this.year = year;
        this.problems = problems;
        Enterprises = enterprises;
        Busy = busy;
        crateSizes = new CrateSizes(enterprises);
        crateDayPools = records.Pools.Count(pool => pool.Basis.Kind == BasisKind.CrateDays);
        Users = records.Pools.ConvertAll(Find);
    }

    internal IReadOnlyList<Enterprise> Enterprises { get; }

    /// <summary>Pools that have something to share out: only they are worth a warning.</summary>
    internal IReadOnlySet<Pool> Busy { get; }

    internal List<PoolUsers> Users { get; }

    private PoolUsers Find(Pool pool)
    {
        PoolUsers users = new(pool, Enterprises.Count, records.Pools.Count) { BasisUsed = pool.Basis };
        FillBasis(users, pool.Basis);
        if (pool.Fallback is { } fallback && users.OfEnterprise.Sum() <= 0m)
        {
            users.BasisUsed = fallback;
            FillBasis(users, fallback);
        }

        HashSet<int> replaced = [];
        AddUse(users, replaced);
        AddLoads(users, replaced);
        return users;
    }

    private void FillBasis(PoolUsers users, Basis basis)
    {
        Pool pool = users.Pool;
        switch (basis.Kind)
        {
            case BasisKind.BedFootDays:
                Each(users, enterprise => BedFootDaysIn(enterprise, pool));
                break;
            case BasisKind.TrayDays:
                Each(users, enterprise => enterprise.TrayDays);
                break;
            case BasisKind.BedFeet:
                Each(users, enterprise => BedFeetIn(enterprise, pool));
                break;
            case BasisKind.LaborHours:
                FillLaborHours(users, basis.Stage);
                break;
            case BasisKind.QuantityCrates:
                FillCrates(users, [.. Enterprises.Select(enterprise => enterprise.Harvested)]);
                break;
            case BasisKind.CrateDays:
                FillCrates(users, new CrateDays(trace, crateDayPools).UnitDays(pool, this));
                break;
            case BasisKind.Water:
                Each(users, enterprise => BedFootDaysIn(enterprise, pool) is var days && days > 0m ? days * WaterNeed(pool, enterprise.Crop) : 0m);
                break;
            case BasisKind.SalesValue:
                FillSalesValue(users);
                break;
            case BasisKind.InputRates:
                FillInputRates(users);
                break;
            default:
                break;
        }
    }

    private void Each(PoolUsers users, Func<Enterprise, decimal> weight)
    {
        for (int i = 0; i < Enterprises.Count; i++)
        {
            users.OfEnterprise[i] = Math.Max(0m, weight(Enterprises[i]));
        }
    }

    private static bool Serves(Pool pool, BedPlanting bed) =>
        string.IsNullOrWhiteSpace(pool.Row.Structure) || string.Equals(pool.Row.Structure.Trim(), bed.Bed.Structure, StringComparison.OrdinalIgnoreCase);

    private static decimal BedFootDaysIn(Enterprise enterprise, Pool pool)
    {
        decimal sum = 0m;
        for (int i = 0; i < enterprise.Planting.Beds.Count; i++)
        {
            sum += Serves(pool, enterprise.Planting.Beds[i]) ? enterprise.BedFootDaysByRow[i] : 0m;
        }

        return sum;
    }

    private static decimal BedFeetIn(Enterprise enterprise, Pool pool) =>
        enterprise.Planting.Beds.Where(bed => Serves(pool, bed)).Sum(bed => bed.BedFeet);

    /// <summary>Quantities in crates; by sales value where crops with over half of it don't say how many of their units fill one.</summary>
    private void FillCrates(PoolUsers users, decimal[] quantities)
    {
        decimal all = 0m;
        decimal unknown = 0m;
        decimal[] values = new decimal[quantities.Length];
        for (int i = 0; i < quantities.Length; i++)
        {
            values[i] = quantities[i] > 0m ? Math.Max(0m, Enterprises[i].SalesValue.Amount) : 0m;
            all += values[i];
            unknown += CrateSizes.IsKnown(Enterprises[i].Crop) ? 0m : values[i];
        }

        if (unknown * 2m <= all)
        {
            for (int i = 0; i < quantities.Length; i++)
            {
                users.OfEnterprise[i] = Crates(users.Pool, Enterprises[i].Crop, quantities[i]);
            }

            return;
        }

        users.BasisUsed = new Basis(BasisKind.SalesValue);
        WarnOnce(users.Pool, CostingProblems.CratesUnknown(users.Pool, year, unknown / all, records.Settings.Notation));

        // All together they stay the estimated crates, so that written use in crates stands beside them in the same unit.
        decimal crates = quantities.Select((quantity, i) => crateSizes.Of(Enterprises[i].Crop) is { } size ? quantity / size : 0m).Sum();
        for (int i = 0; i < quantities.Length; i++)
        {
            users.OfEnterprise[i] = crates > 0m ? crates * values[i] / all : values[i];
        }
    }

    private decimal Crates(Pool pool, Crop crop, decimal quantity)
    {
        if (quantity <= 0m)
        {
            return 0m;
        }

        decimal? size = crateSizes.Of(crop);
        if (!CrateSizes.IsKnown(crop))
        {
            WarnOnce(pool, CostingProblems.MissingUnitsPerCrate(pool, crop, size, records.Settings.Notation));
        }

        return size is { } units ? quantity / units : 0m;
    }

    private decimal WaterNeed(Pool pool, Crop crop)
    {
        if (crop.Row.WaterNeed is null)
        {
            WarnOnce(pool, CostingProblems.MissingWaterNeed(pool, crop));
        }

        return crop.Row.WaterNeed ?? 1m;
    }

    internal void WarnOnce(Pool pool, Problem problem)
    {
        if (Busy.Contains(pool) && !problems.Exists(known => known.Code == problem.Code && known.Message == problem.Message))
        {
            problems.Add(problem);
        }
    }

    private Dictionary<Enterprise, int>? positions;

    internal int PositionOf(Enterprise enterprise)
    {
        positions ??= Enumerable.Range(0, Enterprises.Count).ToDictionary(i => Enterprises[i]);
        return positions[enterprise];
    }

    private void FillLaborHours(PoolUsers users, Stage? stage)
    {
        foreach (Charge charge in book.ByYear[year])
        {
            if (charge.Enterprise is { } enterprise && enterprise.CropYear == year && charge.Hours > 0m && (stage is null || charge.Stage == stage))
            {
                users.OfEnterprise[PositionOf(enterprise)] += charge.Hours;
            }
        }
    }

    private void FillSalesValue(PoolUsers users)
    {
        if (users.Pool.Channel is not { } channel)
        {
            Each(users, enterprise => enterprise.SalesValue.Amount);
            return;
        }

        // A channel's pool follows its own sales; goods without money follow their list value, else their crates.
        foreach (Func<Enterprise, ChannelSum, decimal> weight in new Func<Enterprise, ChannelSum, decimal>[]
        {
            (_, sum) => ExactUnits.Money(sum.Amount).Amount,
            (_, sum) => ExactUnits.Money(sum.ListValue).Amount,
            (enterprise, sum) => Crates(users.Pool, enterprise.Crop, ExactUnits.Value(sum.Quantity)),
        })
        {
            // Credits take off what was sold; a planting that only gave money back uses nothing.
            Each(users, enterprise => weight(enterprise, trace.Valuer.Results.Of(enterprise, channel)));
            if (users.OfEnterprise.Sum() > 0m)
            {
                return;
            }
        }
    }

    private void FillInputRates(PoolUsers users)
    {
        foreach (InputRateRow row in records.Tables.InputRates)
        {
            if (records.Pool(row.Pool) != users.Pool)
            {
                continue;
            }

            Crop crop = records.Crop(row.Crop);
            for (int i = 0; i < Enterprises.Count; i++)
            {
                users.OfEnterprise[i] += Enterprises[i].Crop == crop ? row.Rate * RateCount.Of(Enterprises[i], row.Per) : 0m;
            }
        }
    }

    private void AddUse(PoolUsers users, HashSet<int> replaced)
    {
        foreach (UseRow row in records.Tables.Use)
        {
            if (records.Pool(row.Pool) == users.Pool && (row.CropYear is null ? !IsPlantingOfOtherYears(row.User.Trim()) : row.CropYear == year))
            {
                AddUser(users, row, row.User, row.Quantity, replaced);
            }
        }
    }

    private void AddLoads(PoolUsers users, HashSet<int> replaced)
    {
        DateOnly from = records.Settings.StartOf(year);
        DateOnly yearEnd = records.Settings.EndOf(year).AddDays(-1);
        DateOnly last = records.CostsUntil < yearEnd ? records.CostsUntil : yearEnd;
        foreach (LoadRow row in records.Tables.Loads)
        {
            if (records.Pool(row.Pool) == users.Pool)
            {
                decimal kilowattHours = LoadEnergy.KilowattHours(row, from, last);
                if (kilowattHours > 0m)
                {
                    AddUser(users, row, row.User, kilowattHours, replaced);
                }
            }
        }
    }

    /// <summary>"Every crop year" of a planting are those it stands in.</summary>
    private bool IsPlantingOfOtherYears(string name) =>
        records.FindPool(name) is null && records.FindCrop(name) is null && records.FindPlanting(name) is { } planting && !Enterprises.Any(enterprise => enterprise.Planting == planting);

    /// <summary>Adds measured use; on a reckoned basis a planting or crop named here replaces its reckoned weight. A name that a crop and a planting share is the crop's.</summary>
    private void AddUser(PoolUsers users, IRecordRow row, string user, decimal quantity, HashSet<int> replaced)
    {
        string name = user.Trim();
        if (string.Equals(name, "household", StringComparison.OrdinalIgnoreCase))
        {
            users.Household += quantity;
        }
        else if (records.FindPool(name) is { } pool)
        {
            users.OfPool[pool.Index] += quantity;
        }
        else
        {
            Crop? crop = records.FindCrop(name);
            Planting? planting = crop is null ? records.FindPlanting(name) : null;
            List<int> own = [.. Enumerable.Range(0, Enterprises.Count).Where(i => crop is not null ? Enterprises[i].Crop == crop : Enterprises[i].Planting == planting)];

            if (own.Count == 0)
            {
                users.NotAssigned += quantity;
                WarnOnce(users.Pool, CostingProblems.UseWithoutPlanting(row, users.Pool, name, year));
                return;
            }

            decimal[] days = own.Select(i => Enterprises[i].BedFootDays.Value).ToArray();
            decimal[] parts = LargestRemainder.SplitExactly(quantity, days.Sum() > 0m ? days : own.Select(i => Enterprises[i].BedFeet.Value).ToArray());
            for (int k = 0; k < own.Count; k++)
            {
                if (replaced.Add(own[k]))
                {
                    users.OfEnterprise[own[k]] = 0m;
                }

                users.OfEnterprise[own[k]] += parts[k];
            }
        }
    }
}
