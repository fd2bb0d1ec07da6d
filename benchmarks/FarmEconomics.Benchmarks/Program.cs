using System.Diagnostics;
using FarmEconomics.Benchmarks;
using FarmEconomics.Budgets;
using FarmEconomics.Files;

switch (args[0])
{
    case "large":
        LargeFarm.Write(args[1], int.Parse(args[2]));
        break;
    case "open":
        long start = Stopwatch.GetTimestamp();
        FarmFolder farm = FarmFolder.Open(args[1]);
        Console.WriteLine($"open {Stopwatch.GetElapsedTime(start).TotalSeconds:0.00} s");
        foreach (int year in farm.Review!.CropYears)
        {
            SeasonReview season = farm.Review.Season(year);
            Console.WriteLine($"{year} {season.Farm.NetReturn} {season.Reconciliation.Count(check => check.Difference != 0m)} differences");
        }

        Console.WriteLine($"all {Stopwatch.GetElapsedTime(start).TotalSeconds:0.00} s, cpu {Environment.CpuUsage.TotalTime.TotalSeconds:0.0} s, peak {Process.GetCurrentProcess().PeakWorkingSet64 / 1e6:0} MB, gc pause {GC.GetTotalPauseDuration().TotalSeconds:0.00}, allocated {GC.GetTotalAllocatedBytes() / 1e6:0} MB");
        break;
}
