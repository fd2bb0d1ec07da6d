using BenchmarkDotNet.Running;
using FarmEconomics.Benchmarks;

// Each verb is one measurement in a process of its own, so that no other warms it up; benchmarks/run puts them side by side.
switch (args.FirstOrDefault())
{
    case "farm":
        LargeFarm.Write(args[1], int.Parse(args[2]));
        return 0;
    case "open":
        Measured.Open(args[1]);
        return 0;
    case "roll-up":
        Measured.RollUp(args[1]);
        return 0;
    case "farm-years":
        Measured.FarmYears(int.Parse(args[1]));
        return 0;
    case "draws":
        Measured.Draws(int.Parse(args[1]));
        return 0;
    case "opened":
        await Opened.MeasureAsync(args[1], args[2]);
        return 0;
    case "plans":
        Measured.Plans(args[1]);
        return 0;
    case "water":
        DryFarm.Measure(int.Parse(args[1]));
        return 0;
    case "report":
        Report.Write(int.Parse(args[1]), args.Length > 2 ? int.Parse(args[2]) : 1);
        return 0;
    case "smoke":
        return Smoke.Run();
    default:
        BenchmarkSwitcher.FromAssembly(typeof(Measured).Assembly).Run(args);
        return 0;
}
