namespace FarmEconomics.EndToEnd.Tests.Support;

/// <summary>The tests' own start: the test runner, or a child that edits or runs command lines when a hidden verb asks for it.</summary>
public static class EntryPoint
{
    /// <summary>This program, to be started again with such a verb.</summary>
    internal static string TestProgram { get; } =
        Path.Combine(AppContext.BaseDirectory, "FarmEconomics.EndToEnd.Tests" + (OperatingSystem.IsWindows() ? ".exe" : ""));

    public static Task<int> Main(string[] args) =>
        args is [EditingChild.Verb, var folder] ? Task.FromResult(EditingChild.Run(folder))
        : args is [CommandLines.Verb] ? CommandLines.AnswerAsync()
        : Xunit.Runner.InProc.SystemConsole.ConsoleRunner.Run(args);
}
