using FarmEconomics.ProvingGround.Report;
using FarmEconomics.ProvingGround.Smoke;
using FarmEconomics.ProvingGround.Trials;

const int Seasons = 200;
const int FirstFresh = 10_001;
const string Figures = "benchmarks/advice";
const string Page = "docs/advice.md";

if (args is ["smoke"])
{
    string folder = Directory.CreateTempSubdirectory("smoke-").FullName;
    try
    {
        return SmokeRun.Run(folder);
    }
    finally
    {
        Directory.Delete(folder, recursive: true);
    }
}

if (args is ["page"])
{
    AdvicePage.Write(Page, Figures);
    return 0;
}

int worlds = args.Select(arg => int.TryParse(arg, out int number) ? number : 0).FirstOrDefault(number => number > 0, 60);
bool fresh = args.Contains("--fresh");
bool plans = args.Contains("--plans");
int first = fresh ? FirstFresh : 1;
WorldResult[] results = new WorldResult[worlds];
int done = 0;
Parallel.For(0, worlds, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, i =>
{
    results[i] = Trial.Of(first + i, Seasons, singles: !plans);
    Console.Error.WriteLine($"{Interlocked.Increment(ref done)} of {worlds}");
});
new ResultFiles(Figures, (plans ? "plans" : args.Contains("--before") ? "before" : "after") + (fresh ? "-fresh" : "")).Write(results);
AdvicePage.Write(Page, Figures);
return 0;
