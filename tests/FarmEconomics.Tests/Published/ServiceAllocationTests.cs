using System.Text.Json;
using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Published;

/// <summary>Service departments of textbooks: once by the solve itself, once as a farm whose pools serve each other.</summary>
public class ServiceAllocationTests
{
    /// <summary>Case by method; the last case has no service between departments and is published for the direct method only.</summary>
    public static TheoryData<int, SharingMethod> Cases
    {
        get
        {
            TheoryData<int, SharingMethod> cases = [];
            foreach (SharingMethod method in Enum.GetValues<SharingMethod>())
            {
                cases.Add(0, method);
                cases.Add(1, method);
                cases.Add(2, method);
            }

            cases.Add(3, SharingMethod.Direct);
            return cases;
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Solve_PublishedCase_GivesItsAnswer(int number, SharingMethod method)
    {
        JsonElement item = Fixture.Load("service-allocation").List("cases").ElementAt(number);
        decimal[] expected = Answer(item, method);
        decimal[] costs = item.Numbers("service_costs");
        SharedCosts solved = SharedCosts.Solve(Shares(item, "to_services"), Shares(item, "to_producers"), method);
        decimal[] actual = Enumerable.Range(0, expected.Length).Select(j => costs.Select((cost, i) => cost * solved.Shares[i, j]).Sum()).ToArray();
        Fixture.Near(expected, actual, 0.005m);
        CheckPublished(item, method, actual);
        if (method == SharingMethod.Reciprocal && item.TryGetProperty("gross", out _))
        {
            Fixture.Near(item.Numbers("gross"), solved.GrossFlows(Array.ConvertAll(costs, cost => (double)cost)).Select(flow => (decimal)flow).ToArray(), 0.0001m);
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Farm_OfPoolsThatServeEachOther_GivesTheSameAnswer(int number, SharingMethod method)
    {
        JsonElement item = Fixture.Load("service-allocation").List("cases").ElementAt(number);
        decimal[] expected = Answer(item, method);
        SeasonReview season = Farm(item, expected.Length).Review().Season(2025, method);
        season.AssertProven();
        decimal[] actual = Enumerable.Range(0, expected.Length).Select(j => season.PlantingNamed($"producer {j}").Sums.Infrastructure.Amount).ToArray();

        // Each pool's money is split to the cent, so a producer may be off by a cent for every pool.
        Fixture.Near(expected, actual, 0.01m * item.Numbers("service_costs").Length);
        Assert.Equal(item.Numbers("service_costs").Sum(), actual.Sum());
        CheckPublished(item, method, actual);
        if (method == SharingMethod.Reciprocal && item.TryGetProperty("gross", out _))
        {
            decimal[] gross = Enumerable.Range(0, item.Numbers("service_costs").Length).Select(i => season.PoolNamed($"service {i}"))
                .Select(pool => (pool.Total + pool.ReceivedFromPools).Amount).ToArray();
            Fixture.Near(item.Numbers("gross"), gross, 0.01m);
        }
    }

    private static decimal[] Answer(JsonElement item, SharingMethod method) => item.Numbers(method switch
    {
        SharingMethod.Reciprocal => "reciprocal",
        SharingMethod.StepDown => "step_down_in_listed_order",
        _ => "direct",
    });

    private static void CheckPublished(JsonElement item, SharingMethod method, decimal[] actual)
    {
        string name = method switch { SharingMethod.Reciprocal => "published_reciprocal", SharingMethod.StepDown => "published_step_down", _ => "published_direct" };
        if (item.TryGetProperty(name, out JsonElement printed) && printed.ValueKind == JsonValueKind.Array)
        {
            Fixture.Near(item.Numbers(name), actual, 1m);
        }
    }

    private static double[,] Shares(JsonElement item, string name)
    {
        decimal[][] rows = item.Table(name);
        decimal[][] other = item.Table(name == "to_services" ? "to_producers" : "to_services");
        double[,] shares = new double[rows.Length, rows[0].Length];
        for (int i = 0; i < rows.Length; i++)
        {
            decimal all = rows[i].Sum() + other[i].Sum();
            for (int j = 0; j < rows[i].Length; j++)
            {
                shares[i, j] = (double)(rows[i][j] / all);
            }
        }

        return shares;
    }

    private static FarmBuilder Farm(JsonElement item, int producers)
    {
        FarmBuilder farm = new FarmBuilder().Bed("bed", 1000);
        for (int j = 0; j < producers; j++)
        {
            farm.Crop($"crop {j}").Planting($"producer {j}", $"crop {j}", "bed", 10, "2025-05-01", "2025-08-01");
        }

        decimal[] costs = item.Numbers("service_costs");
        decimal[][] services = item.Table("to_services");
        decimal[][] targets = item.Table("to_producers");
        for (int i = 0; i < costs.Length; i++)
        {
            farm.Pool($"service {i}", "measured").Spend("2025-06-01", costs[i], "repairs", pool: $"service {i}");
        }

        for (int i = 0; i < costs.Length; i++)
        {
            for (int j = 0; j < costs.Length; j++)
            {
                farm.Use($"service {i}", $"service {j}", services[i][j] * 1000m);
            }

            for (int j = 0; j < producers; j++)
            {
                farm.Use($"service {i}", $"producer {j}", targets[i][j] * 1000m);
            }
        }

        return farm;
    }
}
