#:property RestorePackagesWithLockFile=false
#:property PublishAot=false
// Judges a mutated library in processes that switch one mutant on after another and run only the tests that come by it: minutes where the
// tester asks an hour, because it starts its tests anew for each. See docs/testing.md; tests/FarmEconomics.Mutation/judge calls it.
// Usage: judge FOLDER REPORT     FOLDER holds the mutated library with the tests, REPORT is the tester's list of mutants (JSON)
//        judge FOLDER work N OF  one of the workers the first starts
using System.Diagnostics;
using System.Globalization;
using System.Reflection;
using System.Runtime.Loader;
using System.Text.Json.Nodes;

const int WorkersAtOnce = 2;
const int TimedOut = 3;
string folder = Path.GetFullPath(args[0]);
// The published examples are looked for beside the tests.
AppContext.SetData("APP_CONTEXT_BASE_DIRECTORY", folder + Path.DirectorySeparatorChar);
AssemblyLoadContext.Default.Resolving += (context, name) =>
    Path.Combine(folder, name.Name + ".dll") is var file && File.Exists(file) ? context.LoadFromAssemblyPath(file) : null;
AssemblyLoadContext.Default.ResolvingUnmanagedDll += (_, name) =>
    Directory.GetFiles(folder, $"*{name}*", SearchOption.AllDirectories)
        .FirstOrDefault(file => file.Contains("linux-x64", StringComparison.Ordinal)) is { } library
        ? System.Runtime.InteropServices.NativeLibrary.Load(library) : 0;

string covered = Path.Combine(folder, "judge-covered.txt");
string Verdicts(int worker) => Path.Combine(folder, $"judge-verdicts-{worker}.txt");
if (args is [_, "work", var which, var of])
{
    return new Judge(new MutatedLibrary(folder), ExampleTest.All(folder)).Work(covered, Verdicts(Whole(which)), Whole(which), Whole(of));
}

foreach (string old in Directory.GetFiles(folder, "judge-*.txt"))
{
    File.Delete(old);
}

Mutant[] mutants = Mutant.Read(args[1]);
new Judge(new MutatedLibrary(folder), ExampleTest.All(folder)).Cover(covered, [.. mutants.Select(mutant => mutant.Id)]);
await Task.WhenAll(Enumerable.Range(0, WorkersAtOnce).Select(async worker =>
{
    // A mutant that never ends, or that ends the process, takes its worker along; the next one goes on behind it.
    int code;
    do
    {
        using Process child = Process.Start(Environment.ProcessPath!, [folder, "work", $"{worker}", $"{WorkersAtOnce}"]);
        await child.WaitForExitAsync();
        code = child.ExitCode;
        if (code is not 0 and not TimedOut)
        {
            File.AppendAllText(Verdicts(worker), $"{File.ReadAllText(Judge.Running(Verdicts(worker)))}\tkilled\n");
        }
    }
    while (code != 0);
}));
Dictionary<int, string> verdicts = Enumerable.Range(0, WorkersAtOnce).SelectMany(worker => File.ReadLines(Verdicts(worker)))
    .Select(line => line.Split('\t')).ToDictionary(cells => Whole(cells[0]), cells => cells[1]);
foreach (Mutant mutant in mutants.Where(mutant => verdicts.GetValueOrDefault(mutant.Id, "no test") is "survived" or "no test"))
{
    Console.WriteLine($"{mutant.Place} {verdicts.GetValueOrDefault(mutant.Id, "no test")}: {mutant.What}");
}

int killed = mutants.Count(mutant => verdicts.GetValueOrDefault(mutant.Id) is "killed" or "timeout");
int timeouts = verdicts.Values.Count(verdict => verdict == "timeout");
Console.WriteLine($"killed {killed} of {mutants.Length}, {100.0 * killed / mutants.Length:0.00} %, {timeouts} of them out of time");
return 0;

static int Whole(string text) => int.Parse(text, CultureInfo.InvariantCulture);

/// <summary>One mutant of the tester's list.</summary>
internal sealed record Mutant(int Id, string Place, string What)
{
    /// <summary>Those that are judged: not left out, and compiled.</summary>
    public static Mutant[] Read(string report) =>
    [
        .. from file in JsonNode.Parse(File.ReadAllText(report))!["files"]!.AsObject()
           from mutant in file.Value!["mutants"]!.AsArray()
           where (string?)mutant!["status"] is "Survived" or "NoCoverage" or "Killed" or "Timeout"
           let place = $"{Path.GetFileName(file.Key)}:{mutant["location"]!["start"]!["line"]}"
           select new Mutant(int.Parse((string)mutant["id"]!, CultureInfo.InvariantCulture), place,
               $"{mutant["mutatorName"]} -> {mutant["replacement"]}".ReplaceLineEndings(" ")),
    ];
}

/// <summary>The switch that the tester built into the library.</summary>
internal sealed class MutatedLibrary
{
    private const BindingFlags Any = BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic;
    private readonly Type control;

    public MutatedLibrary(string folder)
    {
        Assembly library = Assembly.LoadFrom(Path.Combine(folder, "FarmEconomics.dll"));
        control = library.GetTypes().First(type => type.Name == "MutantControl");
        Switch(-1);
    }

    public void Switch(int mutant) => control.GetField("ActiveMutant", Any)!.SetValue(null, mutant);

    /// <summary>The mutants that something comes by.</summary>
    public IEnumerable<int> ComeBy(Action something)
    {
        FieldInfo captures = control.GetField("CaptureCoverage", Any)!;
        captures.SetValue(null, true);
        control.GetMethod("ResetCoverage", Any)!.Invoke(null, null);
        something();
        captures.SetValue(null, false);
        IEnumerable<int>[] seen = (IEnumerable<int>[])control.GetMethod("GetCoverageData", Any)!.Invoke(null, null)!;
        return seen.SelectMany(ids => ids).Distinct();
    }
}

/// <summary>A test, or one case of it.</summary>
internal sealed record ExampleTest(string Name, Type Class, MethodInfo Method, object?[] Values)
{
    private const BindingFlags Any = BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic;

    public static Dictionary<string, ExampleTest> All(string folder) =>
        (from type in Assembly.LoadFrom(Path.Combine(folder, "FarmEconomics.Tests.dll")).GetTypes()
         from method in type.GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly)
         from @case in CasesOf(type, method).Index()
         select new ExampleTest($"{type.FullName}.{method.Name}#{@case.Index}", type, method, @case.Item))
        .ToDictionary(test => test.Name);

    /// <summary>Runs it: null where it passed, "skipped", or what was wrong.</summary>
    public string? Run()
    {
        try
        {
            object? tested = Method.IsStatic ? null : Activator.CreateInstance(Class);
            object? result = Method.Invoke(tested, BindingFlags.DoNotWrapExceptions, null, Arguments(), null);
            (result as Task)?.GetAwaiter().GetResult();
            (tested as IDisposable)?.Dispose();
            return null;
        }
        catch (Exception fault)
        {
            return fault.Message.Contains("$XunitDynamicSkip$", StringComparison.Ordinal) ? "skipped" : fault.GetType().Name;
        }
    }

    private static IEnumerable<object?[]> CasesOf(Type type, MethodInfo method)
    {
        foreach (Attribute attribute in method.GetCustomAttributes())
        {
            object? Of(string property) => attribute.GetType().GetProperty(property)!.GetValue(attribute);
            switch (attribute.GetType().Name)
            {
                case "FactAttribute":
                    yield return [];
                    break;
                case "InlineDataAttribute":
                    yield return (object?[]?)Of("Data") ?? [null];
                    break;
                case "MemberDataAttribute":
                    string name = (string)Of("MemberName")!;
                    object rows = type.GetProperty(name, Any)?.GetValue(null) ?? type.GetMethod(name, Any)!.Invoke(null, null)!;
                    foreach (object row in (System.Collections.IEnumerable)rows)
                    {
                        yield return row as object?[]
                            ?? (object?[])row.GetType().GetInterface("ITheoryDataRow")!.GetMethod("GetData")!.Invoke(row, null)!;
                    }

                    break;
            }
        }
    }

    private object?[] Arguments() => [.. Method.GetParameters().Select((parameter, place) =>
    {
        object? value = place < Values.Length ? Values[place] : parameter.HasDefaultValue ? parameter.DefaultValue : null;
        if (parameter.IsDefined(typeof(ParamArrayAttribute)) && !parameter.ParameterType.IsInstanceOfType(value))
        {
            Array rest = Array.CreateInstance(parameter.ParameterType.GetElementType()!, Math.Max(0, Values.Length - place));
            Values.Skip(place).ToArray().CopyTo(rest, 0);
            return rest;
        }

        Type type = Nullable.GetUnderlyingType(parameter.ParameterType) ?? parameter.ParameterType;
        return value is null || type.IsInstanceOfType(value) ? value
            : type.IsEnum ? Enum.ToObject(type, value)
            : Convert.ChangeType(value, type, CultureInfo.InvariantCulture);
    })];
}

/// <summary>Holds tests against mutants.</summary>
internal sealed class Judge(MutatedLibrary library, Dictionary<string, ExampleTest> tests)
{
    // Beyond what a test takes without a mutant, times this.
    private const double Patience = 6.0;
    private const double Slower = 20.0;

    /// <summary>
    /// Writes down which mutants each test comes by and how long it takes; a test that fails without a mutant judges none.
    /// </summary>
    public void Cover(string file, HashSet<int> judged)
    {
        using StreamWriter writer = new(file);
        foreach (ExampleTest test in tests.Values)
        {
            int[] mutants = [.. library.ComeBy(() => test.Run()).Where(judged.Contains)];
            Stopwatch clock = Stopwatch.StartNew();
            string? wrong = test.Run();
            string seconds = clock.Elapsed.TotalSeconds.ToString(CultureInfo.InvariantCulture);
            if (wrong is null)
            {
                writer.WriteLine($"{test.Name}\t{seconds}\t{string.Join(' ', mutants)}");
            }
            else if (wrong != "skipped")
            {
                Console.WriteLine($"judges nothing, since it fails here without a mutant: {test.Name} ({wrong})");
            }
        }
    }

    /// <summary>The file that names the mutant a worker is at.</summary>
    public static string Running(string verdicts) => verdicts.Replace("verdicts", "running", StringComparison.Ordinal);

    /// <summary>Judges every so-manieth mutant that isn't judged yet.</summary>
    public int Work(string covered, string verdicts, int part, int parts)
    {
        Dictionary<int, List<(ExampleTest Test, double Seconds)>> byMutant = Read(covered);
        HashSet<int> done = File.Exists(verdicts)
            ? [.. File.ReadLines(verdicts).Select(line => int.Parse(line.Split('\t')[0], CultureInfo.InvariantCulture))] : [];
        using StreamWriter writer = new(verdicts, append: true) { AutoFlush = true };
        foreach (int mutant in byMutant.Keys.Order().Where(id => id % parts == part && !done.Contains(id)))
        {
            File.WriteAllText(Running(verdicts), $"{mutant}");
            string verdict = VerdictOn(mutant, [.. byMutant[mutant].OrderBy(one => one.Seconds)]);
            writer.WriteLine($"{mutant}\t{verdict}");
            if (verdict == "timeout")
            {
                writer.Flush();
                Environment.Exit(3);
            }
        }

        return 0;
    }

    private Dictionary<int, List<(ExampleTest Test, double Seconds)>> Read(string covered)
    {
        Dictionary<int, List<(ExampleTest Test, double Seconds)>> byMutant = [];
        foreach (string[] cells in File.ReadLines(covered).Select(line => line.Split('\t')))
        {
            foreach (string id in cells[2].Split(' ', StringSplitOptions.RemoveEmptyEntries))
            {
                int mutant = int.Parse(id, CultureInfo.InvariantCulture);
                byMutant.TryAdd(mutant, []);
                byMutant[mutant].Add((tests[cells[0]], double.Parse(cells[1], CultureInfo.InvariantCulture)));
            }
        }

        return byMutant;
    }

    private string VerdictOn(int mutant, (ExampleTest Test, double Seconds)[] judges)
    {
        string verdict = "survived";
        long deadline = long.MaxValue;
        Thread thread = new(() =>
        {
            library.Switch(mutant);
            foreach ((ExampleTest test, double seconds) in judges)
            {
                Volatile.Write(ref deadline, Stopwatch.GetTimestamp() + (long)((Patience + (seconds * Slower)) * Stopwatch.Frequency));
                if (test.Run() is not null and not "skipped")
                {
                    verdict = "killed";
                    return;
                }
            }
        }, maxStackSize: 16 << 20)
        { IsBackground = true };
        thread.Start();
        while (!thread.Join(200))
        {
            if (Stopwatch.GetTimestamp() > Volatile.Read(ref deadline))
            {
                return "timeout";
            }
        }

        library.Switch(-1);
        return verdict;
    }
}
