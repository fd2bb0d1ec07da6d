using FarmEconomics.Notebooks;

namespace FarmEconomics.EndToEnd.Tests.Support;

/// <summary>The tests' own start: the test runner, or a child that runs notebooks or many command lines when a hidden verb asks for it.</summary>
public static class EntryPoint
{
    public static Task<int> Main(string[] args) =>
        args is [NotebookWorker.Verb, ..] ? NotebookWorker.RunAsync(args)
        : args is [EditingChild.Verb, var folder] ? Task.FromResult(EditingChild.Run(folder))
        : args is [CommandLines.Verb] ? CommandLines.AnswerAsync()
        : Xunit.Runner.InProc.SystemConsole.ConsoleRunner.Run(args);
}
