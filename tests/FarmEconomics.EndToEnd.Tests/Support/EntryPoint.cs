using FarmEconomics.Notebooks;

namespace FarmEconomics.EndToEnd.Tests.Support;

/// <summary>The tests' own start: the test runner, or the child that runs notebooks when the hidden verb asks for it.</summary>
public static class EntryPoint
{
    public static Task<int> Main(string[] args) =>
        args is [NotebookWorker.Verb, ..] ? NotebookWorker.RunAsync(args) : Xunit.Runner.InProc.SystemConsole.ConsoleRunner.Run(args);
}
