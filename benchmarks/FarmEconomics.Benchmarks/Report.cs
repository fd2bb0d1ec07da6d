using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;
using FarmEconomics.Notebooks;

namespace FarmEconomics.Benchmarks;

/// <summary>Runs everything side by side and writes docs/benchmarks.md. Called by benchmarks/run from the root of the repository.</summary>
internal static class Report
{
    private const string Cli = "src/FarmEconomics.Cli/bin/Release/net10.0/FarmEconomics.Cli.dll";
    private static readonly string Own = typeof(Report).Assembly.Location;
    private static readonly StringBuilder Text = new();
    private static readonly List<Aim> Aims = [];

    /// <summary>Measures and writes.</summary>
    /// <param name="times">How often each is run.</param>
    /// <param name="part">1: everything, into docs/benchmarks.md. Above: a farm that many times smaller, without the review, onto the screen.</param>
    internal static void Write(int times, int part)
    {
        string scratch = Directory.CreateTempSubdirectory("benchmarks-").FullName;
        try
        {
            Line("# How fast it is");
            Line();
            Line($"Written by `benchmarks/run {times}` on {DateTime.UtcNow:yyyy-MM-dd}: {Machine()}, {RuntimeInformation.OSDescription.Split('#')[0].Trim()}, .NET {Environment.Version}. Don't edit by hand.");
            Line();
            string often = times == 1 ? "once" : $"{times} times";
            Line($"Every line is a process of its own, run {often} in turn with the lines it is compared with. "
                + "Time is the shortest run, memory the largest. Processor time is that of all threads; other programs on the machine");
            Line("lengthen the time more than the processor time, so where the two are far apart the machine was busy.");
            Check(part > 1 ? times : times * 3);
            Sizes(times, 5_000_000 / part, scratch);
            FarmYears(times, Math.Max(10, 1000 / part));
            Draws(times, 200_000 / part);
            Water(times);
            Pages(times, scratch);
            PagesInTheBrowser(times);
            Plans(times, part > 1 ? "tests/FarmEconomics.Tests/BadRecords/sound" : "demo-data");
            Summary();
            if (part > 1)
            {
                Console.WriteLine(Text);
                return;
            }

            Review(times, scratch);
            File.WriteAllText("docs/benchmarks.md", Text.ToString());
            Console.WriteLine("wrote docs/benchmarks.md");
        }
        finally
        {
            Directory.Delete(scratch, recursive: true);
        }
    }

    private static void Check(int times)
    {
        Side check = new("`check demo-data`", "dotnet", Cli, "check", "demo-data");
        Side jit = new("the same, compiled only while it runs", "env", "DOTNET_ReadyToRun_DisableR2R=1", "DOTNET_ReadyToRun=0", "dotnet", Cli, "check", "demo-data");
        Side nothing = new("`--version` (start of .NET and of the command line)", "dotnet", Cli, "--version");
        Side.Measure(times, check, nothing, jit);
        Heading("Check of the demo farm, from start to end of the process", "Three crop years in 26 tables.");
        Table([check, nothing, jit], check);
        Aims.Add(new Aim("`check demo-data`, s", "at most 0.30", check.Missing, () => (check.Wall, check.Wall <= 0.305)));
    }

    private static void Sizes(int times, int sales, string scratch)
    {
        string folder = Path.Combine(scratch, "farm");
        LargeFarm.Write(folder, sales);
        Side own = new("read, check, trace, cost and budget ten years, with the proof", "dotnet", Own, "open", folder);
        Side duck = new("DuckDB, the plain roll-up", "dotnet", Own, "roll-up", folder);
        Side pandas = new("pandas, the plain roll-up", "/usr/bin/python3", "benchmarks/roll-up.py", folder);
        Side.Measure(times, own, duck, pandas);
        Heading($"{sales:N0} sales",
            $"{sales:N0} sales, {sales / 5:N0} harvests, {sales / LargeFarm.SalesPerPlanting:N0} plantings, 58,000 rows of labor, ten crop years. The others only add up quantity and amount by crop and year and join the harvests: the least any program must do with the same files.");
        Table([own, duck, pandas], own);
        string? missing = own.Missing ?? duck.Missing;
        Aims.Add(new Aim($"{sales:N0} sales, whole process, times DuckDB's", "at most 3.0", missing, () => (own.Wall / duck.Wall, own.Wall <= 3.05 * duck.Wall)));
        Aims.Add(new Aim($"{sales:N0} sales, processor time, times DuckDB's", "none of its own", missing, () => (own.Cpu / duck.Cpu, null)));
        Aims.Add(new Aim($"{sales:N0} sales, peak memory, MB", "under 1,000", own.Missing, () => (own.PeakMb, own.PeakMb < 1000.0)));
        if (own.Missing is null)
        {
            Line();
            Line($"Differences in the proof: {own.Value("differences")}. Sales in the budgets: {own.Value("sales")}{(duck.Missing is null ? $"; added up by DuckDB: {duck.Value("sales")}" : "")}.");
        }
    }

    private static void FarmYears(int times, int most)
    {
        Side[] sides = [.. new[] { 10, 100, 1000 }.Where(count => count <= most).Select(count => new Side($"{count:N0} farm-years", "dotnet", Own, "farm-years", $"{count}"))];
        Side.Measure(times, sides);
        Heading(
            "Many farm-years in one go",
            "Ten invented farms of 5,000 sales a year in turn, each read, checked and worked out, one after another. "
                + "Time should grow with their number and memory should not.");
        Line("| | seconds | for one, ms | peak memory, MB |");
        Line("|---|--:|--:|--:|");
        if (sides[^1] is { } longest)
        {
            Aims.Add(new Aim($"{longest.Name}, ms for one", "under 12", longest.Missing, () => (MsForOne(longest), MsForOne(longest) < 12.0)));
        }

        foreach (Side side in sides.Where(side => side.Missing is null))
        {
            Line(string.Create(CultureInfo.InvariantCulture, $"| {side.Name} | {side.Inside:0.00} | {MsForOne(side):0.0} | {side.PeakMb:0} |"));
        }
    }

    private static double MsForOne(Side side) => 1000.0 * side.Inside / int.Parse(side.Value("farm_years"), CultureInfo.InvariantCulture);

    private static void Draws(int times, int draws)
    {
        Side own = new($"{draws:N0} seasons of forty crops drawn", "dotnet", Own, "draws", $"{draws}");
        Side numpy = new("numpy drawing the same", "/usr/bin/python3", "benchmarks/draws.py", $"{draws}");
        Side.Measure(times, own, numpy);
        Heading("Simulation", "Per season and crop: two normal numbers, the copula, two triangular factors, the net return. Time is that of the draws alone.");
        Table([own, numpy], own);
        Aims.Add(new Aim("draws, time, times numpy's", "at most 1.0", own.Missing ?? numpy.Missing, () => (own.Inside / numpy.Inside, own.Inside <= 1.05 * numpy.Inside)));
        foreach (Side side in new[] { own, numpy }.Where(side => side.Missing is null))
        {
            Line();
            Line($"{side.Name}: mean of the farm {side.Value("mean")}, {side.Value("draws_per_second")} crop draws a second.");
        }
    }

    private static void Water(int times)
    {
        const int Blocks = 40;
        Side own = new(
            $"a season's water of {Blocks} blocks: need, limit and log, day by day, with what was lost",
            "dotnet",
            Own,
            "water",
            $"{Blocks}"
        );
        Side numpy = new(
            "numpy, the plain balance of the same number of sowings",
            "/usr/bin/python3",
            "benchmarks/balance.py",
            "200",
            "214"
        );
        Side.Measure(times, own, numpy);
        Heading("Water of a season", "Five sowings a block, 214 days. Time is that of the season's water alone, after the records are read and costed; numpy keeps only the balance of the soil, without a list, money or a limit.");
        Table([own, numpy], own);
        Aims.Add(new Aim($"a season's water of {Blocks} blocks, s", "under 0.20", own.Missing, () => (own.Inside, own.Inside < 0.2)));
    }

    private static void Pages(int times, string scratch)
    {
        Side pages = new(
            "`review demo-data --no-notebooks` (all pages and tables)",
            "dotnet",
            Cli,
            "review",
            "demo-data",
            "--no-notebooks",
            "--out",
            Path.Combine(scratch, "pages")
        );
        Side tables = new(
            "`review demo-data --tables-only`",
            "dotnet",
            Cli,
            "review",
            "demo-data",
            "--tables-only",
            "--out",
            Path.Combine(scratch, "tables")
        );
        Side.Measure(times, pages, tables);
        Heading(
            "Pages and tables of the demo farm, from start to end of the process",
            "Next year's page holds the best mix, a linear program solved again for every crop it leaves out."
        );
        Table([pages, tables], pages);
        Aims.Add(new Aim("pages and tables of the demo farm, s", "at most 1.5", pages.Missing, () => (pages.Wall, pages.Wall <= 1.55)));
    }

    private static void PagesInTheBrowser(int times)
    {
        Side side = new("`open demo-data`", "dotnet", Own, "opened", Cli, "demo-data");
        Side.Measure(times, side);
        Heading(
            "Pages in the browser",
            "Asked for over HTTP of `open demo-data`, whatever the browser then takes to draw them. "
                + "A changed field reads the records with another interest rate and works the season out again: the middle of seven."
        );
        Line("| | seconds |");
        Line("|---|--:|");
        if (side.Missing is null)
        {
            Line($"| from the start of the program to its address | {side.Value("address")} |");
            Line($"| the first page, once the address is there | {side.Value("first")} |");
            Line($"| the slowest of {side.Value("tabs")} pages, looked at again | {side.Value("page")} |");
            Line($"| the season with a changed field | {side.Value("seconds")} |");
        }

        Aims.Add(new Aim("first page of `open`, s", "at most 0.30", side.Missing, () => Within(side, "first", 0.3)));
        Aims.Add(new Aim("any page of `open` looked at again, s", "at most 0.25", side.Missing, () => Within(side, "page", 0.25)));
        Aims.Add(new Aim("the season with a changed field, s", "at most 0.25", side.Missing, () => Within(side, "seconds", 0.25)));
    }

    private static (double, bool?) Within(Side side, string value, double bound) =>
        double.Parse(side.Value(value), CultureInfo.InvariantCulture) is var seconds ? (seconds, seconds <= bound + 0.005) : default;

    private static void Plans(int times, string records)
    {
        Side own = new(
            "best mix, steady and cautious plan of the demo farm, each scored on 1,000 simulated seasons",
            "dotnet",
            Own,
            "plans",
            records
        );
        Side.Measure(times, own);
        Heading("Next year's plans", "Forty crops, 52 weeks. Aim: under ten seconds on two processors; reading the farm isn't counted.");
        Table([own], own);
        Aims.Add(new Aim("plans with 1,000 simulated seasons, seconds", "under 10", own.Missing, () => (own.Inside, own.Inside < 10.0)));
    }

    private static void Review(int times, string scratch)
    {
        string kernels = Path.Combine(scratch, "jupyter");
        Directory.CreateDirectory(kernels);
        JupyterKernelSpec.Write(kernels, Directory.GetCurrentDirectory());
        string[] notebooks = [.. Directory.GetFiles("notebooks", "*.ipynb").Order(StringComparer.Ordinal)];
        Side own = new($"`review demo-data` ({notebooks.Length} notebooks, their pages, all tables)", "dotnet", Cli, "review", "demo-data", "--out", Path.Combine(scratch, "review"));
        Side jupyter = new($"`jupyter nbconvert --execute` of the same {notebooks.Length} notebooks",
            ["env", $"JUPYTER_PATH={kernels}", "jupyter", "nbconvert", "--to", "notebook", "--execute", .. notebooks, "--output-dir", Path.Combine(scratch, "executed"), "--ExecutePreprocessor.timeout=600"]);
        Side pages = new("`review demo-data --no-notebooks` (pages and tables)", "dotnet", Cli, "review", "demo-data", "--no-notebooks", "--out", Path.Combine(scratch, "pages"));
        Side.Measure(Math.Max(1, times / 2), pages, own, jupyter);
        Heading("Review of the demo farm, cold", "Aims: pages and tables in at most a twentieth of what Jupyter takes for the notebooks; with them executed under a third.");
        Table([pages, own, jupyter], own);
        Aims.Add(new Aim("pages and tables, part of nbconvert's time", "at most 0.05", pages.Missing ?? jupyter.Missing, () => (pages.Inside / jupyter.Inside, pages.Inside <= jupyter.Inside / 20.0)));
        Aims.Add(new Aim("review with notebooks, part of nbconvert's time", "under 0.33", own.Missing ?? jupyter.Missing, () => (own.Inside / jupyter.Inside, own.Inside < jupyter.Inside / 3.0)));
    }

    /// <summary>All aims in one place, what was measured and whether they were met.</summary>
    private static void Summary()
    {
        Heading("Aims", "Everything above that has an aim. What could not be compared says why.");
        Line("| | aim | measured | met |");
        Line("|---|---|--:|---|");
        foreach (Aim aim in Aims)
        {
            if (aim.Missing is { } why)
            {
                Line($"| {aim.What} | {aim.Bound} | {why} | |");
                continue;
            }

            (double value, bool? met) = aim.Measured();
            Line(string.Create(CultureInfo.InvariantCulture, $"| {aim.What} | {aim.Bound} | {value:0.00} | {(met is { } known ? known ? "yes" : "no" : "")} |"));
        }
    }

    private static void Heading(string title, string what)
    {
        Line();
        Line($"## {title}");
        Line();
        Line(what);
        Line();
    }

    private static void Table(Side[] sides, Side first)
    {
        Line("| | seconds | whole process, s | processor, s | peak memory, MB | first : this |");
        Line("|---|--:|--:|--:|--:|--:|");
        foreach (Side side in sides)
        {
            Line(side.Missing is { } why
                ? $"| {side.Name} | {why} | | | | |"
                : string.Create(CultureInfo.InvariantCulture,
                    $"| {side.Name} | {side.Inside:0.00} | {side.Wall:0.00} | {side.Cpu:0.00} | {side.PeakMb:0} | {(first.Missing is null ? $"{first.Inside / side.Inside:0.00}" : "")} |"));
        }
    }

    private static string Machine()
    {
        string model = File.Exists("/proc/cpuinfo")
            ? File.ReadLines("/proc/cpuinfo").FirstOrDefault(line => line.StartsWith("model name", StringComparison.Ordinal))?.Split(": ")[^1] ?? "" : "";
        return $"{(model.Length > 0 ? model : $"{RuntimeInformation.ProcessArchitecture}")}, {Environment.ProcessorCount} threads, {GC.GetGCMemoryInfo().TotalAvailableMemoryBytes / 1e9:0} GB";
    }

    private static void Line(string text = "") => Text.Append(text).Append('\n');

    /// <summary>One thing to be reached.</summary>
    /// <param name="What">What is measured.</param>
    /// <param name="Bound">The aim, in words.</param>
    /// <param name="Missing">Why it could not be measured; null: it was.</param>
    /// <param name="Measured">The value, and whether the aim is met; null where there is none.</param>
    private sealed record Aim(string What, string Bound, string? Missing, Func<(double Value, bool? Met)> Measured);
}
