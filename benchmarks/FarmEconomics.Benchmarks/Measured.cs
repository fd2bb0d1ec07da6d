using System.Diagnostics;
using System.Globalization;
using DuckDB.NET.Data;
using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Chances;
using FarmEconomics.Files;
using FarmEconomics.Planning;
using FarmEconomics.Planning.Programs;
using FarmEconomics.Solver;
using FarmEconomics.Units;

namespace FarmEconomics.Benchmarks;

/// <summary>What is measured in a process of its own. Each prints one line of name=value pairs.</summary>
internal static class Measured
{
    private const int CropsDrawn = 40;

    /// <summary>Reads, checks, traces, costs and budgets every crop year of a folder, with the proof of each.</summary>
    internal static void Open(string folder)
    {
        long start = Stopwatch.GetTimestamp();
        FarmFolder farm = FarmFolder.Open(folder);
        (decimal Sales, int Differences)[] years =
        [
            .. farm.Review!.CropYears.AsParallel().Select(year => farm.Review.Season(year)).Select(season =>
                (season.Farm.Sums.Sales.Amount, season.Reconciliation.Count(check => check.Difference != 0m))),
        ];
        Say(start, $"sales={years.Sum(year => year.Sales)} differences={years.Sum(year => year.Differences)}");
    }

    /// <summary>DuckDB's roll-up of the same files: quantity and amount by crop and year, joined with what was harvested.</summary>
    internal static void RollUp(string folder)
    {
        long start = Stopwatch.GetTimestamp();
        using DuckDBConnection connection = new("DataSource=:memory:");
        connection.Open();
        using DuckDBCommand command = connection.CreateCommand();
        string from = folder.Replace("'", "''", StringComparison.Ordinal);
        command.CommandText = $"""
            select s.crop, s.year, s.quantity, s.amount, h.quantity
            from (select crop, year(date) as year, sum(quantity) as quantity, sum(amount) as amount from read_csv('{from}/sales.csv') group by all) s
            join (select crop, year(date) as year, sum(quantity) as quantity from read_csv('{from}/harvests.csv') group by all) h using (crop, year)
            order by s.crop, s.year
            """;
        using DuckDBDataReader reader = command.ExecuteReader();
        int groups = 0;
        double sales = 0.0;
        while (reader.Read())
        {
            groups++;
            sales += Convert.ToDouble(reader.GetValue(3), CultureInfo.InvariantCulture);
        }

        Say(start, $"sales={sales:0.00} groups={groups}");
    }

    /// <summary>
    /// The best mix, the steady and the cautious plan, each scored on a thousand simulated seasons; reading the farm isn't counted.
    /// </summary>
    internal static void Plans(string folder)
    {
        FarmReview review = FarmFolder.Open(folder).Review!;
        SeasonCosts costs = SeasonCosts.Of(review.Season(review.LatestCropYear));
        ILinearSolver solver = LinearSolvers.Find() ?? throw new InvalidOperationException(LinearSolvers.Missing);
        long start = Stopwatch.GetTimestamp();
        PlanModel model = PlanFacts.Of(review, costs);
        BestMix mix = BestMix.Of(model, solver);
        CarefulPlans plans = CarefulPlans.Of(mix, solver, PlanSeasons.Of(review, costs, model).Drawn);
        Say(
            start,
            $"crops={model.Crops.Count} sowings={model.Sowings.Count} seasons={plans.Plans[0].Seasons.Count} plans={plans.Plans.Count}"
        );
    }

    /// <summary>Many farm-years one after another: ten invented one-year farms in turn, each opened and its season reckoned.</summary>
    internal static void FarmYears(int count)
    {
        string folder = Directory.CreateTempSubdirectory("farm-years-").FullName;
        try
        {
            for (int i = 0; i < 10; i++)
            {
                LargeFarm.Write(Path.Combine(folder, $"{i}"), sales: 5_000, years: 1, seed: i);
            }

            Run(folder, 10);
            long start = Stopwatch.GetTimestamp();
            Say(start, $"farm_years={count} net={Run(folder, count)}");
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }

        static decimal Run(string folder, int count)
        {
            decimal net = 0m;
            for (int i = 0; i < count; i++)
            {
                FarmReview review = FarmFolder.Open(Path.Combine(folder, $"{i % 10}")).Review!;
                net += review.Season(review.LatestCropYear).Farm.NetReturn.Amount;
            }

            return net;
        }
    }

    /// <summary>Draws seasons of forty crops, price and yield each triangular and joined by the copula.</summary>
    internal static void Draws(int draws)
    {
        List<CostLine> lines = [];
        CropRisk[] risks =
        [
            .. Enumerable.Range(0, CropsDrawn).Select(i => new CropRisk(
                new SensitivityModel($"Crop {i}", new Money(4000m + (100m * i)), Money.Zero, 1000m, new BedFeet(300m), new BedFootWeeks(3000m), lines),
                new Triangular(0.7, 1.0, 1.2), new Triangular(0.6, 1.0, 1.2), -0.3, "set")),
        ];
        Simulation.Run(risks, new SimulationSettings { Draws = 1000 });
        long start = Stopwatch.GetTimestamp();
        Simulation simulation = Simulation.Run(risks, new SimulationSettings { Draws = draws });
        double mean = simulation.Farm.Draws.Average();
        double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
        Say(start, $"mean={mean:0.00} draws_per_second={(double)draws * CropsDrawn / seconds:0}");
    }

    private static void Say(long start, string what)
    {
        using Process me = Process.GetCurrentProcess();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"seconds={Stopwatch.GetElapsedTime(start).TotalSeconds:0.000} cpu={me.TotalProcessorTime.TotalSeconds:0.00} peak_mb={me.PeakWorkingSet64 / 1048576} {what}"));
    }
}
