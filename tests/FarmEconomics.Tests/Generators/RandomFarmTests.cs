using CsCheck;
using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tracing;
using Xunit;

namespace FarmEconomics.Tests.Generators;

/// <summary>
/// What must hold on every farm. FARMECONOMICS_FARMS sets how many random farms each property sees (the full run is 10000); a failure
/// prints the seed of its farm.
/// </summary>
public class RandomFarmTests
{
    private static readonly long Farms = long.TryParse(Environment.GetEnvironmentVariable("FARMECONOMICS_FARMS"), out long farms) ? farms : 300;

    private static IEnumerable<SeasonReview> Seasons(FarmReview review) => review.Charges.Years.Select(year => review.Season(year));

    [Fact]
    public void Season_RandomFarm_EveryReconciliationHolds() => RandomFarm.Gen.Sample(
        farm =>
        {
            foreach (SeasonReview season in Seasons(farm.Farm.Review()))
            {
                season.AssertProven();
            }
        },
        iter: Farms, threads: 2, print: farm => farm.ToString());

    /// <summary>Split in whole units, hours and quantities add up without a remainder.</summary>
    [Fact]
    public void Season_RandomFarm_HoursAndQuantitiesAddUpExactly() => RandomFarm.Gen.Sample(
        farm =>
        {
            FarmReview review = farm.Farm.Review();
            Assert.All(review.Trace.Labor, use => Assert.Equal(use.Hours, use.Parts.Sum(part => part.Hours)));
            Assert.All(review.Trace.Dispositions, disposition => Assert.Equal(disposition.Quantity, disposition.Parts.Sum(part => part.Quantity)));
            foreach (SeasonReview season in Seasons(review))
            {
                Assert.All(
                    season.Reconciliation.Where(check => check.Check.StartsWith("hours", StringComparison.Ordinal) || check.Check.StartsWith("quantity", StringComparison.Ordinal)),
                    check => Assert.Equal(check.Left, check.Right));
                Assert.Equal(season.Farm.LaborHours.Value, season.Beds.Sum(bed => bed.LaborHours.Value));
            }
        },
        iter: Farms, threads: 2, print: farm => farm.ToString());

    /// <summary>Where the books hold wages, hired labor costs what stands there, whatever standards add.</summary>
    [Fact]
    public void HiredLabor_RandomFarm_IsNeverMoreThanTheBooksOfAYearOfWages() => RandomFarm.Gen.Sample(
        farm =>
        {
            FarmReview review = farm.Farm.Review();
            foreach (int year in review.Charges.YearsWithWages)
            {
                decimal books = review.Records.Expenses.Where(row => review.Charges.HomeYearOf(row) == year && review.Records.Category(row.Category).IsLabor()).Sum(row => row.Amount);
                Assert.Equal(books, review.Charges.Charges.Where(charge => charge.HomeYear == year && charge.Stream == CostStream.HiredLabor).Sum(charge => charge.Amount.Amount));
                Assert.DoesNotContain(review.Trace.Labor, use => use.Added && use.Window == year && use.Kind == WorkerKind.Owner);
            }
        },
        iter: Farms, threads: 2, print: farm => farm.ToString());

    [Fact]
    public void Draws_RandomFarm_StayInReachAndNoneInReachIsLeftForTheUnmatched() => RandomFarm.Gen.Sample(
        farm =>
        {
            FarmTrace trace = farm.Farm.Review().Trace;
            foreach (Disposition disposition in trace.Dispositions)
            {
                DateOnly day = disposition.Row.Date;
                bool InReach(Lot lot) => lot.Date <= day.AddDays(3) && day <= lot.KeptUntil.AddDays(7);
                Assert.All(disposition.Parts, part => Assert.True(part.Lot is not { } lot || InReach(lot), $"{disposition.Row.Source} drew on {part.Lot?.Row.Source}, out of reach"));
                if (disposition.Parts.Any(part => part.Lot is null && part.Quantity > 0m))
                {
                    Assert.DoesNotContain(trace.Lots, lot => lot.Enterprise.Crop == disposition.Crop && lot.Remaining > 0m && InReach(lot));
                }
            }
        },
        iter: Farms, threads: 2, print: farm => farm.ToString());

    [Fact]
    public void Pools_RandomFarm_PartsSumToTheTotalStreamByStream() => RandomFarm.Gen.Sample(
        farm =>
        {
            foreach (SeasonReview season in Seasons(farm.Farm.Review()))
            {
                foreach (PoolResult pool in season.Pools)
                {
                    foreach (CostStream stream in Enum.GetValues<CostStream>())
                    {
                        Assert.Equal(pool.Sum(stream).Amount, pool.Charges.Where(charge => charge.Source.Stream == stream).Sum(charge => charge.Amount.Amount));
                    }

                    Assert.Equal(pool.Total.Amount, (pool.ToCrops + pool.ToHousehold + pool.Unused + pool.NotAssigned).Amount);
                }

                // What a budget's costs vary with is a second cut through the same costs.
                Assert.All(season.Plantings, budget => Close.To(budget.TotalCost.Amount, budget.Sums.CostByBehavior.Sum(), 0.000001m));
            }
        },
        iter: Farms, threads: 2, print: farm => farm.ToString());

    [Fact]
    public void Shares_RandomFarm_RowsSumToOneByEveryMethod() => RandomFarm.Gen.Sample(
        farm =>
        {
            FarmReview review = farm.Farm.Review();
            foreach (int year in review.Charges.Years)
            {
                foreach (SharingMethod method in Enum.GetValues<SharingMethod>())
                {
                    PoolNetwork network = review.Season(year, method).Network;
                    foreach (decimal[,] shares in new[] { network.Running.Shares, network.Owning.Shares })
                    {
                        for (int i = 0; i < shares.GetLength(0); i++)
                        {
                            decimal sum = Enumerable.Range(0, shares.GetLength(1)).Sum(j => shares[i, j]);
                            Close.To(1m, sum, 0.0000000001m);
                        }
                    }
                }
            }
        },
        iter: Math.Max(100, Farms / 3), threads: 2, print: farm => farm.ToString());

    [Fact]
    public void Pools_RandomFarm_ChargeOnlyWhatTheyCanReach() => RandomFarm.Gen.Sample(
        farm =>
        {
            foreach (SeasonReview season in Seasons(farm.Farm.Review()))
            {
                foreach (PoolResult pool in season.Pools)
                {
                    HashSet<string> reached = Reached(season.Network, pool.Pool.Index);
                    Assert.All(pool.Charges, charge => Assert.True(
                        charge.Enterprise is null || reached.Contains(charge.Enterprise.Planting.Name), $"{pool.Pool} charges {charge.Enterprise}, which it can't reach"));
                }
            }
        },
        iter: Farms, threads: 2, print: farm => farm.ToString());

    [Fact]
    public void Use_Doubled_NeverLowersTheUsersShare() => RandomFarm.Gen.Sample(
        farm =>
        {
            foreach (UseRow use in farm.Farm.Tables.Use.Where(row => !farm.OwnPools.Contains(row.User) && row.User != "pack work").Take(2).ToList())
            {
                FarmReview before = farm.Farm.Review();
                farm.Farm.Set(use, UseRow.QuantityColumn, use.Quantity * 2);
                FarmReview after = farm.Farm.Review();
                farm.Farm.Set(use, UseRow.QuantityColumn, use.Quantity / 2);
                foreach (int year in before.Charges.Years)
                {
                    int pool = before.Records.FindPool(use.Pool)!.Index;
                    Assert.True(
                        ShareOf(after.Season(year).Network, pool, use.User) >= ShareOf(before.Season(year).Network, pool, use.User) - 0.0000000001m,
                        $"{year}: twice the use of {use.Pool} by {use.User} lowers its share");
                }
            }
        },
        iter: Math.Max(100, Farms / 3), threads: 2, print: farm => farm.ToString());

    [Fact]
    public void Pool_UnusedOneAdded_ChangesNothingElse() => RandomFarm.Gen.Sample(
        farm =>
        {
            FarmReview before = farm.Farm.Review();
            List<string> told = before.Charges.Years.SelectMany(year => Figures(before.Season(year))).ToList();
            farm.Farm.Pool("spare", "bed-feet").Pool("spare too", "measured", capacity: 5);
            FarmReview after = farm.Farm.Review();
            Assert.Equal(told, after.Charges.Years.SelectMany(year => Figures(after.Season(year))));
        },
        iter: Math.Max(100, Farms / 3), threads: 2, print: farm => farm.ToString());

    /// <summary>
    /// File order only breaks ties: same-day lots and leavings (none here), prices of the same day, and the last cent of a split. So
    /// quantities and hours stay, farm totals of what the books say stay to the cent, and a crop's money moves by cents at most.
    /// </summary>
    [Fact]
    public void Rows_InAnotherOrder_ChangeNoTotals() => RandomFarm.GenDistinctDays.Sample(
        farm =>
        {
            farm.Farm.Empty("prices");
            FarmReview before = farm.Farm.Review();
            Random shuffle = new(unchecked((int)farm.Seed));
            FarmBuilder other = Shuffled(farm.Farm, shuffle);
            FarmReview after = other.Review();
            Assert.Equal(before.Charges.Years, after.Charges.Years);
            int rows = farm.Farm.Tables.Expenses.Count + farm.Farm.Tables.Labor.Count + farm.Farm.Tables.Sales.Count + 20;
            foreach (int year in before.Charges.Years)
            {
                SeasonReview left = before.Season(year);
                SeasonReview right = after.Season(year);
                Assert.Equal(left.Farm.Sums.Harvested, right.Farm.Sums.Harvested);
                Close.To(left.Farm.LaborHours.Value, right.Farm.LaborHours.Value, 0.000001m);
                Assert.Equal(left.UnallocatedTotal(Unallocated.Excluded), right.UnallocatedTotal(Unallocated.Excluded));
                foreach (EnterpriseBudget budget in left.Plantings)
                {
                    EnterpriseBudget same = right.PlantingNamed(budget.Name);
                    Assert.Equal(budget.Sums.Harvested, same.Sums.Harvested);
                    Close.To(budget.Sums.Sold, same.Sums.Sold, 0.000001m);
                    Close.To(budget.Sums.Unsold, same.Sums.Unsold, 0.000001m);
                    Close.To(budget.LaborHours.Value, same.LaborHours.Value, 0.000001m);
                    Close.To(budget.SalesValue.Amount, same.SalesValue.Amount, 0.01m * rows);
                    Close.To(budget.TotalCost.Amount, same.TotalCost.Amount, 0.01m * rows);
                }
            }
        },
        iter: Math.Max(100, Farms / 3), threads: 2, print: farm => farm.ToString());

    private static HashSet<string> Reached(PoolNetwork network, int pool)
    {
        HashSet<int> seen = [pool];
        Queue<int> waiting = new(seen);
        HashSet<string> plantings = [];
        while (waiting.TryDequeue(out int at))
        {
            PoolUsers users = network.Users[at];
            for (int j = 0; j < users.OfEnterprise.Length; j++)
            {
                if (users.OfEnterprise[j] > 0m)
                {
                    plantings.Add(network.Enterprises[j].Planting.Name);
                }
            }

            for (int j = 0; j < users.OfPool.Length; j++)
            {
                if (users.OfPool[j] > 0m && seen.Add(j))
                {
                    waiting.Enqueue(j);
                }
            }
        }

        return plantings;
    }

    private static decimal ShareOf(PoolNetwork network, int pool, string user)
    {
        if (user == "household")
        {
            return network.Running.Shares[pool, network.Column(Unallocated.Household)];
        }

        decimal share = 0m;
        for (int j = 0; j < network.Enterprises.Count; j++)
        {
            if (network.Enterprises[j].Planting.Name == user || network.Enterprises[j].Crop.Name == user)
            {
                share += network.Running.Shares[pool, j];
            }
        }

        return share;
    }

    private static IEnumerable<string> Figures(SeasonReview season) =>
        season.Plantings.Select(budget => $"{season.CropYear} {budget.Name} {budget.Output} {budget.Sums.Materials} {budget.Sums.Selling} {budget.LaborCost} {budget.Sums.Infrastructure} {budget.NetReturn} {budget.LaborHours.Value}")
            .Concat(season.Pools.Where(pool => !pool.Pool.Name.StartsWith("spare", StringComparison.Ordinal))
                .Select(pool => $"{season.CropYear} {pool.Pool.Name} {pool.ToCrops} {pool.ToHousehold} {pool.Unused} {pool.NotAssigned} {pool.ReceivedFromPools}"));

    private static FarmBuilder Shuffled(FarmBuilder farm, Random shuffle)
    {
        FarmBuilder other = new(farm.Settings);
        foreach (string table in farm.Tables.Present)
        {
            other.Tables.Present.Add(table);
        }

        foreach (RecordTable table in farm.Tables.All)
        {
            int[] rows = [.. Enumerable.Range(0, table.Count)];
            shuffle.Shuffle(rows);
            Array.ForEach(rows, row => other.Take(table[row]));
        }

        return other;
    }
}
