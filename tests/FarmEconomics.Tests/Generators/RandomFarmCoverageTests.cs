using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using Xunit;

namespace FarmEconomics.Tests.Generators;

/// <summary>A property over random farms says little if the farms are dull: what the proof is about must happen often enough.</summary>
public class RandomFarmCoverageTests
{
    [Fact]
    public void RandomFarms_HoldWhatTheProofIsAbout()
    {
        Dictionary<string, int> seen = [];
        for (uint seed = 1; seed <= 300; seed++)
        {
            FarmReview review = new RandomFarm(seed, distinctDays: false).Farm.Review();
            List<SeasonReview> seasons = review.Charges.Years.Select(year => review.Season(year)).ToList();
            foreach (Unallocated where in Enum.GetValues<Unallocated>())
            {
                Count($"money {where}", seasons.Exists(season => season.UnallocatedTotal(where) != 0m));
            }

            Count("carried", seasons.Exists(season => season.Carried.Amount != 0m));
            Count("hours carried", seasons.Exists(season => season.CarriedHours != 0m));
            Count("unmatched", review.Trace.Enterprises.Any(enterprise => enterprise.Unmatched > 0m));
            Count("held too long", seasons.Exists(season => season.Problems.Any(problem => problem.Code == "W403")));
            Count("noted before its harvest", review.Trace.Problems.Any(problem => problem.Code == "W415"));
            Count("lots out of reach", review.Trace.Dispositions.Any(disposition => disposition.Parts.Any(part => part.Lot is null && part.Quantity > 0m)
                && review.Trace.Lots.Any(lot => lot.Remaining > 0m && lot.Enterprise.Crop == disposition.Crop && lot.KeptUntil.AddDays(7) < disposition.Row.Date)));
            Count("planting without an end", review.Trace.Problems.Any(problem => problem.Code == "W416"));
            Count("harvest too soon", review.Trace.Problems.Any(problem => problem.Code == "W417"));
            Count("harvest before its planting", review.Trace.Problems.Any(problem => problem.Code == "W418"));
            Count("crates estimated", seasons.Exists(season => season.Problems.Any(problem => problem.Code == "W502" && problem.Message.Contains("estimated", StringComparison.Ordinal))));
            Count("crates unknown", seasons.Exists(season => season.Problems.Any(problem => problem.Code == "W419")));
            Count("sold through another channel", review.Trace.Dispositions.Any(disposition => disposition.IsSold && disposition.Channel.Kind == ChannelKind.Other));
            Count("share income", review.Trace.ShareIncome.Values.Any(income => income.Amount > 0m));
            Count("closing stock", seasons.Exists(season => season.Farm.Sums.ClosingStock.Amount > 0m));
            Count("estimated hours", seasons.Exists(season => season.Farm.Sums.EstimatedHours > 0m));
            Count("refund", review.Records.Expenses.Any(row => row.Amount < 0m));
            Count("perennial", review.Records.Plantings.Any(planting => planting.Crop.Perennial));
            Count(
                "establishment charged or carried",
                seasons.Exists(season => season.Plantings.Any(planting => planting.Sums.Establishment != default))
            );
            Count("crop year not from January", review.Records.Settings.CropYearStartMonth != 1);
            Count("pool money through another pool", seasons.Exists(season => season.Pools.Any(pool => pool.ReceivedFromPools.Amount > 0m)));
            Count("circle of pools", seasons.Exists(season => HasCircle(season.Network)));
            Count("burden beside wage times hours", review.Trace.Labor.Any(use => review.Charges.BurdenOf(use).Amount != 0m));
            Count("wages shared by added hours", review.Trace.Labor.Any(use => use.Added && review.Charges.AmountOf(use) is { Amount: > 0m } && use.Kind == WorkerKind.Hired));
            Count("no labor, known", seasons.Exists(season => season.Known.Hours is null && season.Farm.LaborHours.Value == 0m && season.Trace.Labor.All(use => use.Window != season.CropYear)));
            Count("part of a year", seasons.Exists(season => season.Problems.Any(problem => problem.Code == "W513")));
            Count("unknown costs", seasons.Exists(season => season.Known.Costs is not null));
        }

        Assert.All(seen, pair => Assert.True(pair.Value >= 15, $"{pair.Key}: only {pair.Value} of 300 farms"));

        void Count(string what, bool happened) => seen[what] = seen.GetValueOrDefault(what) + (happened ? 1 : 0);
    }

    private static bool HasCircle(PoolNetwork network)
    {
        int count = network.Users.Count;
        bool[,] reaches = new bool[count, count];
        for (int i = 0; i < count; i++)
        {
            for (int j = 0; j < count; j++)
            {
                reaches[i, j] = i != j && network.Users[i].OfPool[j] > 0m;
            }
        }

        for (int k = 0; k < count; k++)
        {
            for (int i = 0; i < count; i++)
            {
                for (int j = 0; j < count; j++)
                {
                    reaches[i, j] |= reaches[i, k] && reaches[k, j];
                }
            }
        }

        return Enumerable.Range(0, count).Any(i => reaches[i, i]);
    }
}
