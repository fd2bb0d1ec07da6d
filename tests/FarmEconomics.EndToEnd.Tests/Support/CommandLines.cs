using System.Collections.Concurrent;
using System.Reflection;
using System.Runtime.Loader;
using System.Text.Json;

[assembly: AssemblyFixture(typeof(FarmEconomics.EndToEnd.Tests.Support.ChildrenOfTheRun))]

namespace FarmEconomics.EndToEnd.Tests.Support;

/// <summary>An option or argument of a command, as the program itself declares it.</summary>
/// <param name="Command">The command.</param>
/// <param name="Option">The option's name; empty for the argument.</param>
/// <param name="Values">How many values it takes; 0 for one that is only there or not.</param>
internal sealed record DeclaredOption(string Command, string Option, int Values);

/// <summary>Command lines in a child process that loads the program's own assembly once: what each says and returns.</summary>
internal static class CommandLines
{
    public const string Verb = "answer-command-lines";
    private const string Declare = "declare";

    // Children that stay for the next test; each answers one line at a time.
    private static readonly ConcurrentBag<LineChild> Idle = [];

    /// <summary>Every option and argument of every command.</summary>
    public static async Task<IReadOnlyList<DeclaredOption>> OptionsAsync()
    {
        using LineChild child = new(Path.GetTempPath());
        return JsonSerializer.Deserialize<DeclaredOption[]>(await child.AskAsync(Declare, LimitOfOne))!;
    }

    /// <summary>Runs command lines, in a folder of their own.</summary>
    public static async Task<IReadOnlyList<ProgramRun>> RunAsync(string folder, IReadOnlyList<string[]> lines)
    {
        using LineChild child = new(folder);
        List<ProgramRun> runs = [];
        foreach (string[] line in lines)
        {
            runs.Add(await AskAsync(child, line, LimitOfOne));
        }

        return runs;
    }

    /// <summary>Runs one in a child that stays: it is warm, so that a test takes a third of the time.</summary>
    public static async Task<ProgramRun> RunWarmAsync(string[] line, TimeSpan patience)
    {
        if (!Idle.TryTake(out LineChild? child))
        {
            child = new LineChild(Path.GetTempPath());
        }

        try
        {
            ProgramRun run = await AskAsync(child, line, patience);
            Idle.Add(child);
            return run;
        }
        catch
        {
            child.Dispose();
            throw;
        }
    }

    /// <summary>Ends the children that stayed.</summary>
    internal static void EndChildren()
    {
        while (Idle.TryTake(out LineChild? child))
        {
            child.Dispose();
        }
    }

    /// <summary>The child's side: a question a line, and its answer.</summary>
    public static async Task<int> AnswerAsync()
    {
        Assembly assembly = new Loaded(Program.Assembly).LoadFromAssemblyPath(Program.Assembly);
        Type program = assembly.GetType("FarmEconomics.Cli.CommandLineApp", throwOnError: true)!;
        var runOne = Method(program, "RunAsync").CreateDelegate<Func<string[], Task<int>>>();
        TextReader questions = Console.In;
        TextWriter answers = Console.Out;
        while (await questions.ReadLineAsync() is { } asked)
        {
            await answers.WriteLineAsync(asked == Declare
                ? JsonSerializer.Serialize(Declared(Method(program, "Root").Invoke(null, null)!).ToArray())
                : JsonSerializer.Serialize(await RunOneAsync(runOne, JsonSerializer.Deserialize<string[]>(asked)!)));
            await answers.FlushAsync();
        }

        return 0;
    }

    private static TimeSpan LimitOfOne => TimeSpan.FromSeconds(60);

    private static async Task<ProgramRun> AskAsync(LineChild child, string[] line, TimeSpan patience) =>
        JsonSerializer.Deserialize<ProgramRun>(await child.AskAsync(JsonSerializer.Serialize(line), patience))!;

    private static async Task<ProgramRun> RunOneAsync(Func<string[], Task<int>> runOne, string[] line)
    {
        using StringWriter output = new();
        using StringWriter error = new();
        Console.SetOut(output);
        Console.SetError(error);
        int exitCode = await runOne(line);
        return new ProgramRun(exitCode, output.ToString(), error.ToString());
    }

    private static MethodInfo Method(Type program, string name) => program.GetMethod(name, BindingFlags.Static | BindingFlags.NonPublic)!;

    private static IEnumerable<DeclaredOption> Declared(dynamic root)
    {
        foreach (dynamic command in root.Subcommands)
        {
            yield return new DeclaredOption(command.Name, "", 1);
            foreach (dynamic option in command.Options)
            {
                bool takesNothing = option.ValueType == typeof(bool);
                yield return new DeclaredOption(command.Name, option.Name, takesNothing ? 0 : Math.Max(1, (int)option.Arity.MinimumNumberOfValues));
            }
        }
    }

    /// <summary>The program with what it brings, apart from what the tests bring.</summary>
    private sealed class Loaded(string path) : AssemblyLoadContext(nameof(Loaded))
    {
        private readonly AssemblyDependencyResolver resolver = new(path);

        protected override Assembly? Load(AssemblyName assemblyName) => resolver.ResolveAssemblyToPath(assemblyName) is { } found ? LoadFromAssemblyPath(found) : null;

        protected override nint LoadUnmanagedDll(string unmanagedDllName) => resolver.ResolveUnmanagedDllToPath(unmanagedDllName) is { } found ? LoadUnmanagedDllFromPath(found) : 0;
    }
}

/// <summary>Ends the children that answer command lines with the last test.</summary>
public sealed class ChildrenOfTheRun : IDisposable
{
    /// <inheritdoc/>
    public void Dispose() => CommandLines.EndChildren();
}
