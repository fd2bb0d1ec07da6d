using System.CommandLine;
using FarmEconomics.Cli.Commands;

namespace FarmEconomics.Cli;

/// <summary>The commands as a grower types them.</summary>
internal static class CommandLineApp
{
    internal static async Task<int> RunAsync(string[] args)
    {
        RootCommand root = new(
            "From a season's records to what each crop earned: per length of bed, per week of bed time and per hour of labor.\n\n"
            + "FOLDER is a folder of CSV tables, or a workbook (.xlsx) with a sheet per table (docs/records.md says which). Your records are only ever read; results are written beside them.\n"
            + "Exit code 0: done; 1: the records hold errors; 2: wrong use, or a folder can't be read or written.")
        {
            StartCommand.Create(),
            CheckCommand.Create(),
            ImportCommand.Create(),
            ReviewCommand.Create(),
            ReviewAllCommand.Create(),
            OpenCommand.Create(),
            ExplainCommand.Create(),
            DecideCommand.Create(),
            WhatIfCommand.Create(),
            WriteUpCommand.Create(),
            PricesCommand.Create(),
            JupyterCommand.Create(),
        };
        ParseResult parsed = root.Parse(args);
        if (parsed.Errors.Count > 0)
        {
            foreach (System.CommandLine.Parsing.ParseError error in parsed.Errors)
            {
                await Console.Error.WriteLineAsync(error.Message).ConfigureAwait(false);
            }

            await Console.Error.WriteLineAsync("Type --help to see how it is used.").ConfigureAwait(false);
            return ExitCode.WrongUse;
        }

        try
        {
            return await parsed.InvokeAsync(new InvocationConfiguration { EnableDefaultExceptionHandler = false }).ConfigureAwait(false);
        }
        catch (FarmEconomics.Records.RecordsException stopped)
        {
            await Console.Error.WriteLineAsync(stopped.Message).ConfigureAwait(false);
            return ExitCode.RecordsInError;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or WrongUseException)
        {
            await Console.Error.WriteLineAsync(fault.Message).ConfigureAwait(false);
            return ExitCode.WrongUse;
        }
    }
}
