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
        Argument<string> place = new("PLACE") { Description = "A new folder, or a new workbook ending in .xlsx. Nothing that is there is overwritten." };
        Option<bool> minimal = new("--minimal") { Description = "Only the five tables no review is possible without." };
        Option<bool> metric = new("--metric") { Description = "Lengths in meters, bed widths in centimeters, weights in kilograms." };
        Option<string?> currency = new("--currency") { Description = "The currency of all money, by its three letters (ISO 4217). Default: USD.", HelpName = "CODE" };
        Option<bool> comma = new("--decimal-comma") { Description = "Numbers have a decimal comma, and CSV fields stand between semicolons." };
        Command command = new("start", "Write empty tables to fill in, with a note on every column.") { place, minimal, metric, currency, comma };
        command.SetAction(parsed => Run(parsed.GetValue(place)!, parsed.GetValue(minimal), parsed.GetValue(metric), parsed.GetValue(currency), parsed.GetValue(comma)));
        return command;
    }

    private static int Run(string place, bool minimal, bool metric, string? currency, bool comma)
    {
        var farm = new FarmSettings { LengthUnit = metric ? LengthUnit.M : LengthUnit.Ft, DecimalMark = comma ? ',' : '.' };
        if (currency is not null)
        {
            farm = FarmSettingsReader.Apply(farm, "currency", currency, out Problem? problem);
            if (problem is not null)
            {
                throw new WrongUseException($"--currency takes three letters (ISO 4217), such as EUR, not \"{currency}\".");
            }
        }

        IReadOnlyList<string> files = RecordsTemplate.Write(place, minimal, farm);
        bool workbook = files.Count == 1;
        Console.Out.WriteLine(workbook
            ? $"Wrote {place}: one sheet per table; rest the pointer on a heading to see what goes there."
            : $"Wrote {farm.Notation.Count(files.Count, "file")} into {place}; about.md says what goes into each column.");
        Console.Out.WriteLine($"Fill in crops, beds, plantings, harvests and sales first, then type: check {place}");
        return ExitCode.Done;
    }
}
