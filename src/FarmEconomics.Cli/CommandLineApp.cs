using System.CommandLine;
using FarmEconomics.Cli.Commands;
using FarmEconomics.Files.Places;
using FarmEconomics.Records;
using FarmEconomics.Reports.Answers;
using FarmEconomics.Solver;

namespace FarmEconomics.Cli;

/// <summary>The commands as a grower types them.</summary>
internal static class CommandLineApp
{
    private const string Trace = "FARMECONOMICS_TRACE";

    internal static async Task<int> RunAsync(string[] args)
    {
        NextYearReport.FindSolver = LinearSolvers.Find;
        using PlainConsole console = PlainConsole.Install();
        using Interruption interruption = new();
        UnhandledExceptionEventHandler last = (_, fault) =>
        {
            TellFault(fault.ExceptionObject as Exception ?? new InvalidOperationException());
            Environment.Exit(ExitCode.ProgramAtFault);
        };
        AppDomain.CurrentDomain.UnhandledException += last;
        try
        {
            Task<int> work = Task.Run(() => CarryOutAsync(args, interruption));
            if (interruption.WaitFor(work))
            {
                return await work.ConfigureAwait(false);
            }

            // It computes on and doesn't listen: what it was writing goes, and it ends with the program.
            TemporaryPlaces.RemoveAll();
            return TellStopped(interruption);
        }
        finally
        {
            AppDomain.CurrentDomain.UnhandledException -= last;
        }
    }

    internal static RootCommand Root() => new(
        "Shows what each crop earned, from your records.\n\n"
        + "FOLDER is a folder of CSV tables, or a workbook (.xlsx) with a sheet per table (docs/records.md says which). "
        + "Reviews only read your records; results are written beside them.\n"
        + "Exit code 0: done; 1: the records hold errors, or the program has a fault; 2: wrong use, or a folder can't be read or written; "
        + "130 or 143: stopped (Ctrl+C, or asked to end).")
    {
        StartCommand.Create(),
        CheckCommand.Create(),
        ReviewCommand.Create(),
        OpenCommand.Create(),
        ExplainCommand.Create(),
        DecideCommand.Create(),
        WhatIfCommand.Create(),
        PricesCommand.Create(),
        PlanCommand.Create(),
        WaterCommand.Create(),
        WriteUpCommand.Create(),
        ImportCommand.Create(),
        JupyterCommand.Create(),
        ReviewAllCommand.Create(),
    };

    private static async Task<int> CarryOutAsync(string[] args, Interruption interruption)
    {
        try
        {
            RootCommand root = Root();
            OptionRules.AddTo(root);
            CommandHelp.AddTo(root);
            ParseResult parsed = root.Parse(args);
            if (parsed.Errors.Count > 0)
            {
                TellErrors(parsed);
                return ExitCode.WrongUse;
            }

            // Ctrl+C is heard here alone: the library's own way ends what doesn't listen in the middle.
            InvocationConfiguration settings = new() { EnableDefaultExceptionHandler = false, ProcessTerminationTimeout = null };
            return await parsed.InvokeAsync(settings, interruption.Token).ConfigureAwait(false);
        }
#pragma warning disable CA1031 // Do not catch general exception types: a grower reads a sentence, whatever happens
        catch (Exception fault)
#pragma warning restore CA1031
        {
            // Whatever goes wrong while everything is being stopped comes from that.
            return interruption.ExitCode != 0 ? TellStopped(interruption) : Tell(fault);
        }
    }

    private static int TellStopped(Interruption interruption)
    {
        Console.Error.WriteLine();
        Console.Error.WriteLine(Interruption.Sentence);
        return interruption.ExitCode;
    }

    private static int Tell(Exception fault)
    {
        switch (fault)
        {
            case RecordsException:
                Console.Error.WriteLine(fault.Message);
                return ExitCode.RecordsInError;
            case IOException or UnauthorizedAccessException or WrongUseException:
                Console.Error.WriteLine(fault.Message);
                return ExitCode.WrongUse;
            default:
                TellFault(fault);
                return ExitCode.ProgramAtFault;
        }
    }

    private static void TellFault(Exception fault)
    {
        Console.Error.WriteLine($"This is a fault of the program ({fault.GetType().Name}: {fault.Message.ReplaceLineEndings(" ")}). "
            + $"Your records are as they were. Please report this line with the command you typed; "
            + $"with {Trace}=1 in the environment it says where.");
        if (Environment.GetEnvironmentVariable(Trace) == "1")
        {
            Console.Error.WriteLine(fault);
        }
    }

    private static void TellErrors(ParseResult parsed)
    {
        // One mistyped word leaves the words after it without a meaning; what was meant says more than all of them.
        string[] messages = CommandHelp.Guess(parsed) is { } guess ? [guess] : [.. parsed.Errors.Select(error => error.Message).Distinct()];
        foreach (string message in messages)
        {
            Console.Error.WriteLine(message);
        }

        Console.Error.WriteLine("Type --help to see how it is used.");
    }
}
