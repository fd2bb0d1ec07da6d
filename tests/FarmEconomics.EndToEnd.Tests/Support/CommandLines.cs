using System.Diagnostics;
using System.Reflection;
using System.Runtime.Loader;
using System.Text.Json;

namespace FarmEconomics.EndToEnd.Tests.Support;

/// <summary>An option or argument of a command, as the program itself declares it.</summary>
/// <param name="Command">The command.</param>
/// <param name="Option">The option's name; empty for the argument.</param>
/// <param name="Values">How many values it takes; 0 for one that is only there or not.</param>
internal sealed record DeclaredOption(string Command, string Option, int Values);

/// <summary>Hundreds of command lines in one child process, which loads the program's own assembly once: what each says and returns.</summary>
internal static class CommandLines
{
    public const string Verb = "answer-command-lines";
    private const string Declare = "declare";
    private static readonly TimeSpan LimitOfOne = TimeSpan.FromSeconds(60);

    /// <summary>Every option and argument of every command.</summary>
    public static async Task<IReadOnlyList<DeclaredOption>> OptionsAsync() => JsonSerializer.Deserialize<DeclaredOption[]>(await AskAsync(Path.GetTempPath(), Declare))!;

    /// <summary>Runs command lines, in a folder of their own.</summary>
    public static async Task<IReadOnlyList<ProgramRun>> RunAsync(string folder, IReadOnlyList<string[]> lines) =>
        JsonSerializer.Deserialize<ProgramRun[]>(await AskAsync(folder, JsonSerializer.Serialize(lines)))!;

    /// <summary>The child's side.</summary>
    public static async Task<int> AnswerAsync()
    {
        string asked = await Console.In.ReadToEndAsync();
        Type program = new Loaded(Program.Assembly).LoadFromAssemblyPath(Program.Assembly).GetType("FarmEconomics.Cli.CommandLineApp", throwOnError: true)!;
        TextWriter answer = Console.Out;
        if (asked == Declare)
        {
            await answer.WriteAsync(JsonSerializer.Serialize(Declared(Method(program, "Root").Invoke(null, null)!).ToArray()));
            return 0;
        }

        var runOne = Method(program, "RunAsync").CreateDelegate<Func<string[], Task<int>>>();
        List<ProgramRun> runs = [];
        foreach (string[] line in JsonSerializer.Deserialize<string[][]>(asked)!)
        {
            using StringWriter output = new();
            using StringWriter error = new();
            Console.SetOut(output);
            Console.SetError(error);
            Task<int> run = runOne(line);
            if (await Task.WhenAny(run, Task.Delay(LimitOfOne)) != run)
            {
                await answer.WriteLineAsync($"still running: {string.Join(' ', line)}");
                return 1;
            }

            runs.Add(new ProgramRun(await run, output.ToString(), error.ToString()));
        }

        await answer.WriteAsync(JsonSerializer.Serialize(runs));
        return 0;
    }

    private static async Task<string> AskAsync(string folder, string question)
    {
        ProcessStartInfo start = new(EntryPoint.TestProgram, [Verb])
        {
            WorkingDirectory = folder,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using Process process = Process.Start(start)!;
        try
        {
            Task<string> error = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
            Task<string> answer = process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
            await process.StandardInput.WriteAsync(question);
            process.StandardInput.Close();
            await process.WaitForExitAsync(TestContext.Current.CancellationToken);
            Assert.True(process.ExitCode == 0, await error + await answer);
            return await answer;
        }
        finally
        {
            if (!process.HasExited)
            {
                process.Kill(entireProcessTree: true);
            }
        }
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
