using System.Reflection;

namespace FarmEconomics.EndToEnd.Tests.Support;

/// <summary>The tests' own start: the test runner, or a child that does what a hidden verb asks for.</summary>
public static class EntryPoint
{
    /// <summary>Runs a program that a test compiled, with the libraries the tests have.</summary>
    internal const string RunVerb = "run-compiled";

    /// <summary>This program, to be started again with such a verb.</summary>
    internal static string TestProgram { get; } =
        Path.Combine(AppContext.BaseDirectory, "FarmEconomics.EndToEnd.Tests" + (OperatingSystem.IsWindows() ? ".exe" : ""));

    public static Task<int> Main(string[] args) =>
        args is [EditingChild.Verb, var folder] ? Task.FromResult(EditingChild.Run(folder))
        : args is [CommandLines.Verb] ? CommandLines.AnswerAsync()
        : args is [RunVerb, var program]
            ? Task.FromResult((int)Assembly.LoadFrom(program).EntryPoint!.Invoke(null, [Array.Empty<string>()])!)
        : Xunit.Runner.InProc.SystemConsole.ConsoleRunner.Run(args);
}
