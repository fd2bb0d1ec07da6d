using System.CommandLine;
using FarmEconomics.Files.Start;
using FarmEconomics.Records;
using FarmEconomics.Records.Reading;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Cli.Commands;

/// <summary><c>start DIR</c> or <c>start FILE.xlsx</c>: empty tables to fill in.</summary>
internal static class StartCommand
{
    internal static Command Create()
    {
        Argument<string> place = new("PLACE")
        {
            Description = "A new folder, or a new workbook ending in .xlsx. Nothing that is there is overwritten.",
        };
        Option<bool> minimal = OptionRules.Flag("--minimal", "Only the five tables no review is possible without.");
        Option<bool> metric = OptionRules.Flag("--metric", "Lengths in meters, bed widths in centimeters, weights in kilograms.");
        Option<string?> currency = OptionRules.Text("--currency", "CODE",
            "The currency of all money, by its three letters (ISO 4217). Default: USD.");
        Option<bool> comma = OptionRules.Flag("--decimal-comma", "Numbers have a decimal comma, and CSV fields stand between semicolons.");
        Option<string[]> from = new("--from")
        {
            Description =
                "Raw files (harvests, sales, time sheets, ...): their crops, units, channels, workers and beds become the first rows.",
            HelpName = "FILE",
            AllowMultipleArgumentsPerToken = true,
        };
        Command command = new("start", "Write tables to fill in, with a note on every column.")
        {
            place,
            minimal,
            metric,
            currency,
            comma,
            from,
        };
        command.SetAction(parsed =>
            Run(
                parsed.GetValue(place)!,
                parsed.GetValue(minimal),
                (parsed.GetValue(metric), parsed.GetValue(currency), parsed.GetValue(comma)),
                parsed.GetValue(from) ?? []
            )
        );
        return command;
    }

    private static int Run(string place, bool minimal, (bool Metric, string? Currency, bool Comma) ways, string[] from)
    {
        var farm = new FarmSettings { LengthUnit = ways.Metric ? LengthUnit.M : LengthUnit.Ft, DecimalMark = ways.Comma ? ',' : '.' };
        if (ways.Currency is { } currency)
        {
            farm = FarmSettingsReader.Apply(farm, "currency", currency, out Problem? problem);
            if (problem is not null)
            {
                throw new WrongUseException($"--currency takes three letters (ISO 4217), such as EUR, not \"{currency}\".");
            }
        }

        FirstTables? first = from.Length == 0 ? null : Drafted(from);
        IReadOnlyList<string> files = RecordsTemplate.Write(place, minimal, farm, first);
        bool workbook = files.Count == 1;
        Console.Out.WriteLine(workbook
            ? $"Wrote {place}: one sheet per table; rest the pointer on a heading to see what goes there."
            : $"Wrote {farm.Notation.Count(files.Count, "file")} into {place}; about.md says what goes into each column.");
        foreach ((string table, string text) in first?.Files ?? new Dictionary<string, string>())
        {
            Console.Out.WriteLine(
                $"{table}{(workbook ? "" : ".csv")}: {farm.Notation.Count(text.Count(c => c == '\n') - 1, "row")} drafted from your files."
            );
        }

        foreach (string remark in first?.Remarks ?? [])
        {
            Console.Out.WriteLine($"  look at {remark}");
        }

        Console.Out.WriteLine($"Fill in crops, beds, plantings, harvests and sales first, then type: check {place}");
        return ExitCode.Done;
    }

    private static FirstTables Drafted(string[] from)
    {
        try
        {
            return FirstTables.From(from);
        }
        catch (ArgumentException fault)
        {
            throw new WrongUseException(fault.Message);
        }
    }
}
