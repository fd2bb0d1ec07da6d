using FarmEconomics.Files.Importing;
using FarmEconomics.Files.Importing.Drafts;
using FarmEconomics.Files.Inputs;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Cli.Commands;

/// <summary>What an import says: what it sees, how it would read it, what comes of it, and whether that adds up.</summary>
internal static class ImportText
{
    private const int RowsShown = 3;
    private const int LinesShown = 14;
    private const int NamesShown = 12;
    private const int CausesShown = 5;
    private const int LongestCell = 18;
    private const int LongestNote = 90;
    private const int LongestAsked = 300;

    internal static string Rows(this Notation notation, int count) => notation.Count(count, "row");

    internal static void PrintDraft(ImportDraft draft, string map, bool all, TextWriter to)
    {
        to.WriteLine(draft.Sees);
        foreach (IReadOnlyList<string> row in draft.Sample.Prepend(draft.Headings))
        {
            to.WriteLine("    " + string.Join(" | ", row.Take(8).Select(cell => Short(cell, LongestCell)))
                + (row.Count > 8 ? $" | and {row.Count - 8} more" : ""));
        }

        to.WriteLine($"These look like rows of {draft.Table}. Drafted to {map}:");
        DraftLine[] lines = [.. draft.Lines.OrderByDescending(line => line.IsOpen)];
        foreach (DraftLine line in lines.Take(all ? int.MaxValue : LinesShown))
        {
            // What is asked is told in full.
            bool asks = line.Note.StartsWith('?');
            string note = Short(line.Note.TrimStart('?', ' '), asks ? LongestAsked : LongestNote);
            to.WriteLine($"  {(asks ? "?" : " ")} {(line.Column.Length == 0 ? "left out" : line.Column),-11} "
                + $"{line.From}{(note.Length == 0 ? "" : $"  ({note})")}");
        }

        if (!all && lines.Length > LinesShown)
        {
            to.WriteLine($"    and {lines.Length - LinesShown} more lines there");
        }

        foreach (string sentence in draft.WhatToDo(map))
        {
            to.WriteLine(sentence);
        }

        to.WriteLine();
    }

    internal static void PrintPlan(ImportPlan plan, bool all, TextWriter to)
    {
        to.WriteLine(plan.Notation.Text(
            $"{plan.Source} into {plan.Table}: {plan.Notation.Rows(plan.RowsInSource)}; {plan.Rows.Count:N0} to add, "
                + $"{plan.AlreadyThere.Count:N0} added before, {plan.LeftOut.Count:N0} left out by the mapping, "
                + $"{plan.RowsHeldBack:N0} held back."));
        foreach (string remark in plan.Remarks)
        {
            to.WriteLine(remark);
        }

        if (plan.Rows.Count > 0)
        {
            to.WriteLine($"{(SheetPlace.IsSheet(plan.Source) ? "   row" : "  line")}  "
                + $"{string.Join(" | ", plan.Columns)}");
            foreach (ImportedRow row in plan.Rows.Take(RowsShown))
            {
                to.WriteLine($"{row.Line,6}  {string.Join(" | ", row.Fields)}");
            }

            if (plan.Rows.Count > RowsShown)
            {
                to.WriteLine(plan.Notation.Text($"        and {plan.Rows.Count - RowsShown:N0} more{(plan.Contents.Count > 0 ? ": " : "")}"
                    + $"{string.Join("; ", plan.Contents)}"));
            }
        }

        PrintSums(plan, to);
        PrintProblems(plan, all, to);
    }

    private static void PrintSums(ImportPlan plan, TextWriter to)
    {
        int agree = plan.Sums.Count(sum => sum.Agrees);
        if (agree > 0)
        {
            ImportSum largest = plan.Sums.Where(sum => sum.Agrees).MaxBy(sum => Math.Abs(sum.InSource))!;
            to.WriteLine(plan.Notation.Text($"{plan.Notation.Count(agree, "total")} of the file {(agree == 1 ? "agrees" : "agree")} with "
                + $"the rows, the largest {largest.InSource:#,0.##} ({largest.What})."));
        }

        foreach (ImportSum sum in plan.Sums.Where(sum => !sum.Agrees).Take(RowsShown))
        {
            to.WriteLine(
                plan.Notation.Text(
                    $"DOES NOT ADD UP: {sum.What}: the file says {sum.InSource:#,0.####}, its rows come to {sum.Read:#,0.####}."
                )
            );
        }
    }

    private static void PrintProblems(ImportPlan plan, bool all, TextWriter to)
    {
        PrintUnknownNames(plan, all, to);
        IReadOnlyList<ProblemCause> causes = ProblemCause.Of(all ? plan.Problems : plan.ProblemsBesideNames);
        if (all)
        {
            foreach (Problem problem in causes.SelectMany(cause => cause.Problems))
            {
                to.WriteLine(Line(problem, ""));
            }

            return;
        }

        foreach (ProblemCause cause in causes.Take(CausesShown))
        {
            string more = cause.Count > 1 ? $" And {plan.Notation.Count(cause.Count - 1, "row")} like it." : "";
            string money =
                cause.Money == 0m ? "" : plan.Notation.Text($" {cause.Money:#,0.00} of money in {(cause.Count == 1 ? "it" : "them")}.");
            to.WriteLine(Line(cause.First, more + money));
            if (cause.First.Severity == Severity.Error)
            {
                to.WriteLine("    fix: " + cause.First.Hint);
            }
        }

        if (causes.Count > CausesShown)
        {
            to.WriteLine($"And {plan.Notation.Count(causes.Count - CausesShown, "more kind of problem", "more kinds of problems")}, "
                + $"in {plan.Notation.Count(causes.Skip(CausesShown).Sum(cause => cause.Count), "row")}: "
                + $"--all tells every row, --list FILE writes them to a CSV file.");
        }
    }

    private static void PrintUnknownNames(ImportPlan plan, bool all, TextWriter to)
    {
        if (plan.UnknownNames.Count == 0)
        {
            return;
        }

        to.WriteLine($"{plan.Notation.Count(plan.UnknownNames.Count, "name")} the records don't know:");
        foreach (ImportedName name in plan.UnknownNames.Take(all ? int.MaxValue : NamesShown))
        {
            to.WriteLine($"  {name.Table}: \"{name.Alias}\", {plan.Notation.Rows(name.Rows)}"
                + $"{(name.Name.Length > 0 ? $"; did you mean {name.Name}?" : "")}");
        }

        if (!all && plan.UnknownNames.Count > NamesShown)
        {
            to.WriteLine($"  and {plan.UnknownNames.Count - NamesShown} more");
        }
    }

    private static string Line(Problem problem, string more) =>
        $"{problem.Source}: {(problem.Severity == Severity.Error ? "error" : "warning")} {problem.Code}: "
            + $"{problem.Message}{(problem.Nearest is { } nearest ? $" Did you mean {nearest}?" : "")}{more}";

    private static string Short(string text, int most) => text.Length <= most ? text : string.Concat(text.AsSpan(0, most - 3), "...");
}
