using FarmEconomics.Files;
using FarmEconomics.Files.Importing;
using FarmEconomics.Files.Places;
using FarmEconomics.Records;
using FarmEconomics.Records.Completeness;
using FarmEconomics.Records.Names;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Cli.Commands;

/// <summary>What a check says beside the faults: control totals, and what unknown names are likely to mean.</summary>
internal static class RecordsCheckText
{
    internal static void PrintTotals(FarmFolder farm, TextWriter to)
    {
        IReadOnlyList<ControlTotal> totals = ControlTotals.Of(farm.Reading.Tables, farm.Reading.FarmSettings);
        if (totals.Count == 0)
        {
            return;
        }

        to.WriteLine();
        to.WriteLine($"{"control total",-22} {"days",-23} {"records hold",12} {"should be",12} {"difference",10}");
        foreach (ControlTotal total in totals)
        {
            string what = $"{total.Row.Table.Trim()} {total.Row.Measure.Trim()}";
            string days = $"{total.Row.From:yyyy-MM-dd} - {total.Row.To:yyyy-MM-dd}";
            string verdict = total.IsMet switch
            {
                null => $"not available: {total.NotAvailable}",
                true when total.FilledByStandards && total.Difference < 0m => "time standards",
                true => "met",
                _ => "MISSED",
            };
            string sums = farm.Notation.Text($"{total.Found,12:#,0.##} {total.Row.Amount,12:#,0.##} {total.Difference,10:#,0.##}");
            Screen.Say($"{what,-22} {days,-23} {sums} {verdict}", to);
        }
    }

    /// <summary>The tables that aren't there: those worth having next, unless all are asked for or there are few.</summary>
    internal static void PrintMissing(FarmFolder farm, TextWriter to, bool all)
    {
        const int Few = 6;
        IReadOnlyList<MissingTable> missing = farm.Reading.MissingTables;
        IReadOnlyList<MissingTable> told = all || missing.Count <= Few ? missing : [.. missing.Where(table => table.ComesNext)];
        foreach (MissingTable table in told)
        {
            Screen.Say($"no {table.Table}: {table.Consequence}", to);
        }

        if (told.Count < missing.Count)
        {
            to.WriteLine($"{farm.Notation.Count(missing.Count - told.Count, told.Count == 0 ? "table" : "more table")} could be added as "
                + $"you need them; check --all says what each tells.");
        }
    }

    internal static void PrintNames(FarmFolder farm, string? output, TextWriter to)
    {
        const int Shown = 15;
        IReadOnlyList<AliasProposal> names = AliasProposal.All(farm.Problems, farm.Reading.Tables);
        to.WriteLine();
        if (names.Count == 0)
        {
            to.WriteLine("Every name is known.");
            return;
        }

        to.WriteLine($"{farm.Notation.Count(names.Count, "name")} your records don't know, "
            + $"{farm.Notation.Count(names.Count(name => name.Name.Length > 0), "guess", "guesses")}:");
        foreach (AliasProposal name in names.Take(output is null ? int.MaxValue : Shown))
        {
            to.WriteLine($"  {name.Table}: \"{name.Alias}\"{(name.Name.Length > 0 ? $" is likely \"{name.Name}\"" : ": no guess")} "
                + $"({farm.Notation.Count(name.Rows, "row")}, first {name.First})");
        }

        string list = NameList.Text(names);
        if (output is null)
        {
            to.WriteLine();
            to.WriteLine("The list, to fill in (--out FILE writes it):");
            to.Write(list);
            return;
        }

        WriteNew(output, list, farm);
        to.WriteLine($"Wrote {farm.Notation.Count(names.Count, "row")} to {output}. "
            + $"Look through the column name, fill in the blanks you know, save, then type: check {farm.Folder} --add-names {output}");
    }

    private static void WriteNew(string output, string list, FarmFolder farm)
    {
        if (FolderPlace.IsIn(output, farm.Folder))
        {
            throw new WrongUseException($"{output} lies in your records; give a file elsewhere.");
        }

        using FileStream stream = new(output, FileMode.CreateNew, FileAccess.Write);
        stream.Write(System.Text.Encoding.UTF8.GetBytes(list));
    }
}
