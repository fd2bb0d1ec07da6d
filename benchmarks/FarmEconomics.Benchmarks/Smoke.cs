using System.Globalization;
using FarmEconomics.Budgets;
using FarmEconomics.Files;

namespace FarmEconomics.Benchmarks;

/// <summary>A few seconds' run of everything that is measured, so that it doesn't rot; fails when what is compared isn't the same work.</summary>
internal static class Smoke
{
    internal static int Run()
    {
        string folder = Directory.CreateTempSubdirectory("smoke-").FullName;
        try
        {
            LargeFarm.Write(folder, 5_000);
            Measured.Open(folder);
            Measured.RollUp(folder);
            Measured.FarmYears(10);
            Measured.Draws(1_000);
            DryFarm.Measure(3);
            FarmReview review = FarmFolder.Open(folder).Review!;
            decimal sales = review.CropYears.Sum(year => review.Season(year).Farm.Sums.Sales.Amount);
            decimal plain = File.ReadLines(Path.Combine(folder, "sales.csv")).Skip(1)
                .Sum(row => row.Split(',')[^1] is { Length: > 0 } amount ? decimal.Parse(amount, CultureInfo.InvariantCulture) : 0m);
            if (sales != plain || sales == 0m)
            {
                Console.Error.WriteLine($"The budgets hold sales of {sales}, the file {plain}.");
                return 1;
            }

            Console.WriteLine($"benchmarks run; sales {sales} on both sides");
            return 0;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
