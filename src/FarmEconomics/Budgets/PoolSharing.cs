using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Budgets;

/// <summary>Shares a year's pools out: each pool's money, stream by stream, split once to the cent; its hours split exactly.</summary>
internal sealed class PoolSharing
{
    private readonly PoolNetwork network;
    private readonly BudgetSums[] sums;

    internal PoolSharing(ChargeBook book, PoolNetwork network, BudgetSums[] sums)
    {
        this.network = network;
        this.sums = sums;
        ILookup<Pool, Charge> rows = RowsByPool(book, network.Year);
        IReadOnlySet<Pool> unowned = book.PoolsWithoutOwnership(network.Year);
        foreach (PoolUsers users in network.Users)
        {
            PoolResult result = new(users.Pool, users, rows[users.Pool].ToList()) { OwnershipKnown = !unowned.Contains(users.Pool) };
            Results.Add(result);
            foreach (CostStream stream in Enum.GetValues<CostStream>())
            {
                ShareMoney(result, stream);
            }

            ShareHours(result);
        }

        ReportFlows();
        MarkUnknownFlows();
    }

    internal List<PoolResult> Results { get; } = [];

    /// <summary>Reports the pools that hold something and have nobody to share it out to.</summary>
    internal static void Check(ChargeBook book, PoolNetwork network, List<Problem> problems)
    {
        (decimal Money, decimal Hours)[] held = new (decimal, decimal)[book.Trace.Records.Pools.Count];
        foreach (Charge row in book.ByYear[network.Year].InPools)
        {
            ref (decimal Money, decimal Hours) own = ref held[row.Pool!.Index];
            own = (own.Money + row.Amount.Amount, own.Hours + row.Hours);
        }

        foreach (PoolUsers users in network.Users)
        {
            (decimal money, decimal hours) = held[users.Pool.Index];
            if ((money != 0m || hours > 0m) && users.Total <= 0m)
            {
                problems.Add(CostingProblems.NoWeights(users.Pool, network.Year, money, hours, network.Notation));
            }
        }
    }

    private static ILookup<Pool, Charge> RowsByPool(ChargeBook book, int year) =>
        book.ByYear[year].InPools.ToLookup(charge => charge.Pool!);

    /// <summary>Hours that ended outside the crops.</summary>
    internal decimal[] UnallocatedHours { get; } = new decimal[3];

    private decimal[] Row(int pool, SharedCosts shares)
    {
        decimal[] row = new decimal[network.Enterprises.Count + 3];
        for (int j = 0; j < row.Length; j++)
        {
            row[j] = shares.Shares[pool, j];
        }

        return row;
    }

    private void ShareMoney(PoolResult result, CostStream stream)
    {
        List<Charge> rows = result.Rows.Where(row => row.Stream == stream).ToList();
        Money total = Money.Sum(rows.Select(row => row.Amount));
        if (total == Money.Zero)
        {
            return;
        }

        PoolStream source = new(result.Pool, stream, total, Behavior(result.Pool, stream, rows, total), SellShare(rows, total));
        decimal[] shares = Row(result.Pool.Index, stream == CostStream.Ownership ? network.Owning : network.Running);
        Money[] parts = LargestRemainder.Split(total, shares);
        for (int j = 0; j < parts.Length; j++)
        {
            if (shares[j] == 0m)
            {
                continue;
            }

            bool crop = j < network.Enterprises.Count;
            PoolCharge charge = new(
                source,
                crop ? network.Enterprises[j] : null,
                crop ? null : (Unallocated)(j - network.Enterprises.Count),
                shares[j],
                parts[j]
            );
            result.ChargeList.Add(charge);
            Land(result, charge, j);
        }
    }

    private void Land(PoolResult result, PoolCharge charge, int target)
    {
        switch (charge.Unallocated)
        {
            case null:
                result.ToCrops += charge.Amount;
                BudgetBuilder.AddCost(sums[target], charge.Line, charge.Source.Stream, charge.Amount);
                for (int i = 0; i < charge.Source.BehaviorShares.Count; i++)
                {
                    sums[target].BehaviorCost[i] += charge.Amount.Amount * charge.Source.BehaviorShares[i];
                }

                sums[target].SellLabor += charge.Line == StatementLine.Labor ? charge.Amount.Amount * charge.Source.SellShare : 0m;
                break;
            case Unallocated.Household:
                result.ToHousehold += charge.Amount;
                break;
            case Unallocated.Unused:
                result.Unused += charge.Amount;
                break;
            default:
                result.NotAssigned += charge.Amount;
                break;
        }
    }

    private static decimal[] Behavior(Pool pool, CostStream stream, List<Charge> rows, Money total)
    {
        decimal[] shares = new decimal[Enum.GetValues<CostDriver>().Length];
        if (stream == CostStream.Ownership || (pool.IsOverhead && stream != CostStream.Cash))
        {
            shares[(int)CostDriver.Fixed] = 1m;
        }
        else
        {
            foreach (Charge row in rows)
            {
                shares[(int)DriverOf(row, pool)] += row.Amount.Amount / total.Amount;
            }

            // Refunds of one driver larger than its cost leave no parts to split by: the pool's own driver has it all.
            if (Array.Exists(shares, share => share < 0m))
            {
                Array.Clear(shares);
                shares[(int)pool.VariesWith] = 1m;
            }
        }

        return shares;
    }

    /// <summary>
    /// What a row of a pool varies with: hours by their stage, money as the pool says. Of a channel's own pool all that its category
    /// doesn't tie to length, bed time, quantity or units goes with the channel's trips.
    /// </summary>
    internal static CostDriver DriverOf(Charge row, Pool pool)
    {
        if (row.Stage is { } stage)
        {
            return StageBehavior.Of(stage, namesCrop: false);
        }

        return pool.Channel is null || row is not { Stream: CostStream.Cash, CategoryDriver: { } written } || written == CostDriver.Fixed
            ? pool.VariesWith
            : written;
    }

    /// <summary>The part that is labor of stage sell; only labor has a stage.</summary>
    private static decimal SellShare(List<Charge> rows, Money total) =>
        rows.Where(row => row.Stage == Stage.Sell).Sum(row => row.Amount.Amount) / total.Amount;

    private void ShareHours(PoolResult result)
    {
        decimal[] shares = Row(result.Pool.Index, network.Running);

        // Hours filled in from standards go to plantings, never to a pool: none of these are estimated, and each has a stage.
        foreach (IGrouping<Stage, Charge> group in result.Rows.Where(row => row.Hours > 0m).GroupBy(row => row.Stage!.Value))
        {
            decimal[] parts = LargestRemainder.SplitExactly(group.Sum(row => row.Hours), shares);
            for (int j = 0; j < parts.Length; j++)
            {
                if (parts[j] == 0m)
                {
                    continue;
                }

                bool crop = j < sums.Length;
                result.HoursList.Add(
                    new PoolHours(
                        result.Pool,
                        crop ? network.Enterprises[j] : null,
                        crop ? null : (Unallocated)(j - sums.Length),
                        group.Key,
                        parts[j]
                    )
                );
                if (!crop)
                {
                    UnallocatedHours[j - sums.Length] += parts[j];
                }
                else if (result.Pool.IsOverhead)
                {
                    sums[j].OverheadHours += parts[j];
                }
                else
                {
                    sums[j].StageHours[(int)group.Key] += parts[j];
                }
            }
        }
    }

    /// <summary>Money that isn't known makes what it flows through unknown as well, pool after pool.</summary>
    private void MarkUnknownFlows()
    {
        Queue<PoolResult> unknown = new(Results.Where(result => !result.OwnershipKnown));
        while (unknown.TryDequeue(out PoolResult? sender))
        {
            if (!sender.PassedKnown)
            {
                continue;
            }

            foreach (PoolResult receiver in Results.Where(other => network.Running.ToPools[sender.Pool.Index, other.Pool.Index] > 0.0))
            {
                sender.PassedKnown = receiver.ReceivedKnown = false;
                unknown.Enqueue(receiver);
            }
        }
    }

    private void ReportFlows()
    {
        double[] running = network.Running.GrossFlows(Results.ConvertAll(result => (double)(result.Cash + result.Labor).Amount));
        double[] owning = network.Owning.GrossFlows(Results.ConvertAll(result => (double)result.Ownership.Amount));
        for (int i = 0; i < Results.Count; i++)
        {
            double gross = running[i] + owning[i];
            Results[i].ReceivedFromPools = Money.Rounded((decimal)gross - Results[i].Total.Amount);
            Results[i].CostOfUse = Money.Rounded((decimal)running[i] + ((decimal)owning[i] * network.UsedFactor[i]));
            Results[i].PassedToPools = Money.Rounded(
                (decimal)((running[i] * network.Running.ToPools.Row(i).Sum()) + (owning[i] * network.Owning.ToPools.Row(i).Sum()))
            );
        }
    }
}
