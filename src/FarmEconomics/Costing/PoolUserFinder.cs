using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Costing;

/// <summary>Works out the weights of every pool for one crop year.</summary>
internal sealed class PoolUserFinder
{
    private readonly FarmRecords records;
    private readonly List<Problem> problems;
    private readonly Lazy<decimal[][]> hours;

    internal PoolUserFinder(
        ChargeBook book,
        int year,
        IReadOnlyList<Enterprise> enterprises,
        IReadOnlySet<Pool> busy,
        List<Problem> problems
    )
    {
        Trace = book.Trace;
        hours = new(() => HoursOf(book.ByYear[year]));
        records = Trace.Records;
        Year = year;
        this.problems = problems;
        Enterprises = enterprises;
        Busy = busy;
        CrateSizes = new CrateSizes(enterprises);
        CrateDayPools = records.Pools.Count(pool => pool.Basis.Kind == BasisKind.CrateDays);
        Users = records.Pools.ConvertAll(Find);
    }

    internal FarmTrace Trace { get; }

    internal FarmRecords Records => records;

    internal int Year { get; }

    /// <summary>
    /// Hours that landed on each enterprise of the year, by stage, those of no stage last: several pools go by them.
    /// </summary>
    internal decimal[][] Hours => hours.Value;

    internal CrateSizes CrateSizes { get; }

    /// <summary>How many pools are stores.</summary>
    internal int CrateDayPools { get; }

    internal IReadOnlyList<Enterprise> Enterprises { get; }

    /// <summary>Pools that have something to share out: only they are worth a warning.</summary>
    internal IReadOnlySet<Pool> Busy { get; }

    internal List<PoolUsers> Users { get; }

    private PoolUsers Find(Pool pool)
    {
        PoolUsers users = new(pool, Enterprises.Count, records.Pools.Count) { BasisUsed = pool.Basis };
        pool.Basis.Kind.Weigh(new BasisWeights(this, users), pool.Basis);
        if (pool.Fallback is { } fallback && users.OfEnterprise.Sum() <= 0m)
        {
            users.BasisUsed = fallback;
            fallback.Kind.Weigh(new BasisWeights(this, users), fallback);
        }

        HashSet<int> replaced = [];
        AddUse(users, replaced);
        AddLoads(users, replaced);
        return users;
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

    private decimal[][] HoursOf(ChargesOfYear charges)
    {
        int stages = Enum.GetValues<Stage>().Length;
        decimal[][] sums = [.. Enterprises.Select(_ => new decimal[stages + 1])];
        foreach (Charge charge in charges)
        {
            if (charge is { Enterprise: { } enterprise, Hours: > 0m } && enterprise.CropYear == Year)
            {
                sums[PositionOf(enterprise)][charge.Stage is { } stage ? (int)stage : stages] += charge.Hours;
            }
        }

        return sums;
    }

    private void AddUse(PoolUsers users, HashSet<int> replaced)
    {
        foreach (UseRow row in records.Tables.Use)
        {
            if (
                records.Pool(row.Pool) == users.Pool
                && (row.CropYear is null ? !IsPlantingOfOtherYears(row.User.Trim()) : row.CropYear == Year)
            )
            {
                AddUser(users, row, row.User, row.Quantity, replaced);
            }
        }
    }

    private void AddLoads(PoolUsers users, HashSet<int> replaced)
    {
        DateOnly from = records.Settings.StartOf(Year);
        DateOnly yearEnd = records.Settings.EndOf(Year).AddDays(-1);
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
        records.FindPool(name) is null
        && records.FindCrop(name) is null
        && records.FindPlanting(name) is { } planting
        && !Enterprises.Any(enterprise => enterprise.Planting == planting);

    /// <summary>
    /// Adds measured use; on a basis worked out a planting or crop named here replaces its weight. A name that a crop and a planting
    /// share is the crop's.
    /// </summary>
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
            AddGrown(users, row, name, quantity, replaced);
        }
    }

    private void AddGrown(PoolUsers users, IRecordRow row, string name, decimal quantity, HashSet<int> replaced)
    {
        Crop? crop = records.FindCrop(name);
        Planting? planting = crop is null ? records.FindPlanting(name) : null;
        List<int> own =
        [
            .. Enumerable
                .Range(0, Enterprises.Count)
                .Where(i => crop is not null ? Enterprises[i].Crop == crop : Enterprises[i].Planting == planting),
        ];

        if (own.Count == 0)
        {
            users.NotAssigned += quantity;
            WarnOnce(users.Pool, CostingProblems.UseWithoutPlanting(row, users.Pool, name, Year));
            return;
        }

        decimal[] days = own.Select(i => Enterprises[i].BedFootDays.Value).ToArray();
        decimal[] parts = LargestRemainder.SplitExactly(
            quantity,
            days.Sum() > 0m ? days : own.Select(i => Enterprises[i].BedFeet.Value).ToArray()
        );
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
