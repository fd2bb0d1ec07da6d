using FarmEconomics.Files;
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
        to.WriteLine($"{"control total",-22} {"days",-23} {"records hold",14} {"should be",14} {"difference",12}");
        foreach (ControlTotal total in totals)
        {
            string what = $"{total.Row.Table.Trim()} {total.Row.Measure.Trim()}";
            string days = $"{total.Row.From:yyyy-MM-dd} - {total.Row.To:yyyy-MM-dd}";
            string verdict = total.IsMet switch
            {
                null => $"not available: {total.NotAvailable}",
                true when total.FilledByStandards && total.Difference < 0m => "filled up by time standards",
                true => "met",
                _ => "MISSED",
            };
            to.WriteLine(farm.Notation.Text($"{what,-22} {days,-23} {total.Found,14:0.##} {total.Row.Amount,14:0.##} {total.Difference,12:0.##} {verdict}"));
        }
    }

    internal static void PrintProposals(FarmFolder farm, string? output, TextWriter to)
    {
        IReadOnlyList<AliasProposal> proposals = AliasProposal.Of(farm.Problems, farm.Reading.Tables);
        to.WriteLine();
        if (proposals.Count == 0)
        {
            to.WriteLine("No unknown name is near a known one.");
            return;
        }

        foreach (AliasProposal proposal in proposals)
        {
            to.WriteLine($"{proposal.Table}: \"{proposal.Alias}\" is likely \"{proposal.Name}\" ({farm.Notation.Count(proposal.Rows, "row")}, first {proposal.First})");
        }

        string rows = AliasFile.Text(proposals);
        if (output is null)
        {
            to.WriteLine();
            to.WriteLine("Rows for aliases.csv, if you agree:");
            to.Write(rows);
            return;
        }

        if (FolderPlace.IsIn(output, farm.Folder))
        {
            throw new WrongUseException($"{output} lies in your records, which are only ever read; give a file elsewhere and copy the rows you agree with.");
        }

        using (FileStream stream = new(output, FileMode.CreateNew, FileAccess.Write))
        {
            stream.Write(System.Text.Encoding.UTF8.GetBytes(rows));
        }

        to.WriteLine($"Wrote {farm.Notation.Count(proposals.Count, "row")} to {output}. Look through them, then put them into your aliases table.");
    }
}
