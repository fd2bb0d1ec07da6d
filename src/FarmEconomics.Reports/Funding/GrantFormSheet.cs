using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Funding;

/// <summary>Sections A, C, D, E and F of the federal budget form, line by line; Section B is the budget by object class.</summary>
public static class GrantFormSheet
{
    private static readonly (MatchSource Source, string Column, string Name)[] Sources =
    [
        (MatchSource.Applicant, "C12 (b)", "applicant"),
        (MatchSource.State, "C12 (c)", "state"),
        (MatchSource.Other, "C12 (d)", "other sources"),
    ];

    /// <summary>Makes the sheet; null without a project.</summary>
    /// <param name="writeUp">The write-up.</param>
    public static FundingSheet? Of(FundingWriteUp writeUp)
    {
        ArgumentNullException.ThrowIfNull(writeUp);
        if (writeUp.Grant is not { } grant)
        {
            return null;
        }

        GrantForm form = grant.Form;
        ReportTable table = new ReportTable($"{grant.Project}: the other sections of SF-424A", writeUp.Season.Notation).InOrder()
            .Column("Line").Column("What it holds").Column("Amount", Look.Money);
        FundingSheet sheet = new("SF-424A", table);
        Summary(sheet, form, writeUp.Assumptions.Grant);
        foreach ((MatchSource source, string column, string name) in Sources)
        {
            table.Row(column, name, form.From(source));
        }

        table.Row("C12 (e)", "total of (b) to (d); equals A5 (f)", form.NonFederal);
        sheet.LiveLast(2, "SUM({5,2}:{7,2})");
        Quarters(sheet, "D13", "federal cash", form.FederalCash);
        Quarters(sheet, "D14", "cash of all others", form.OtherCash);
        IEnumerable<decimal> all = form.FederalCash.Quarters.Zip(form.OtherCash.Quarters, (federal, other) => federal + other);
        Quarters(sheet, "D15", "13 + 14", new QuarterlyCash([.. all]));
        for (int i = 0; i < 5; i++)
        {
            sheet.Live(19 + i, 2, $"{{{9 + i},2}}+{{{14 + i},2}}");
        }

        for (int year = 0; year < form.LaterFederal.Count; year++)
        {
            table.Row($"E20 ({(char)('b' + year)})", $"federal, year {year + 2} of the project", form.LaterFederal[year]);
        }

        table.Row("F22", Indirect(grant, writeUp), default);
        Notes(table, grant, writeUp);
        return sheet;
    }

    private static void Summary(FundingSheet sheet, GrantForm form, GrantAssumptions asked)
    {
        string program = asked.ProgramTitle is { } title ? $"program: {title}" : "program: not given (program_title)";
        string listing = asked.AssistanceListing is { } number
            ? $"assistance listing {number}"
            : "assistance listing number: not given (assistance_listing)";
        sheet.Table
            .Row("A1 (a)", program, default)
            .Row("A1 (b)", listing, default)
            .Row("A5 (e)", "federal, first year", form.Federal)
            .Row("A5 (f)", "non-federal, first year", form.NonFederal)
            .Row("A5 (g)", "total, first year", form.Total);
        sheet.LiveLast(2, "{2,2}+{3,2}");
    }

    private static void Quarters(FundingSheet sheet, string line, string what, QuarterlyCash cash)
    {
        int first = sheet.Table.Rows.Count;
        sheet.Table.Row(line, $"{what}, first year", cash.Year);
        sheet.LiveLast(2, $"SUM({{{first + 1},2}}:{{{first + 4},2}})");
        for (int i = 0; i < cash.Quarters.Count; i++)
        {
            sheet.Table.Row(line, $"{what}, quarter {i + 1}", cash.Quarters[i]);
        }
    }

    private static string Indirect(GrantBudget grant, FundingWriteUp writeUp)
    {
        Notation notation = writeUp.Season.Notation;
        return grant.IndirectPercent is not { } percent || percent == 0m ? "no indirect charges"
            : notation.Text($"{percent:0.##}% of {notation.InWords(grant.IndirectBase, Look.Money)}, "
                + $"{(grant.IndirectNeedsNegotiatedRate ? "a negotiated rate: say its kind" : "without a negotiated rate")}");
    }

    private static void Notes(ReportTable table, GrantBudget grant, FundingWriteUp writeUp)
    {
        Notation notation = writeUp.Season.Notation;
        if (grant.Form.InKind > 0m)
        {
            table.Note($"In kind, {notation.InWords(grant.Form.InKind, Look.Money)} in the first year, "
                + $"stands in line 12 and not in line 14: it is no cash. The form wants it explained on a sheet of its own; "
                + $"the rows of the narrative marked in kind do that.");
        }

        foreach (string text in Thresholds(grant, notation))
        {
            table.Note(text);
        }

        table.Note("Sections A to D are of the first year; Section B is the budget by object class. "
            + "Quarters are those of the funding table's rows, the first where blank; indirect charges follow their base. "
            + "The form is OMB 4040-0006; check it against the funder's own copy.");
    }

    /// <summary>Where the level for equipment bites.</summary>
    /// <param name="grant">The budget.</param>
    /// <param name="notation">How the farm writes.</param>
    internal static IEnumerable<string> Thresholds(GrantBudget grant, Notation notation)
    {
        if (notation.Currency != "USD")
        {
            yield break; // the levels are in US dollars
        }

        string whose = grant.EquipmentLevel < GrantBudget.FederalEquipmentLevel
            ? "your own level"
            : "2 CFR 200.1, awards from October 2024";
        string level = $"{notation.InWords(grant.EquipmentLevel, Look.WholeMoney)} apiece ({whose})";
        foreach (GrantLine line in grant.BelowEquipmentLevel)
        {
            yield return $"{line.Item} costs {notation.InWords(line.Total, Look.WholeMoney)}, less than {level}: "
                + $"the form counts it among supplies (6e), and an indirect rate then covers it. "
                + $"Awards before October 2024 and some state programs use {notation.InWords(5000m, Look.WholeMoney)}; ask the funder.";
        }

        foreach (GrantLine line in grant.MaybeEquipment)
        {
            yield return $"{line.Item} costs {notation.InWords(line.Total, Look.WholeMoney)}: if it is one piece it is equipment (6d), "
                + $"from {level} on, and no part of an indirect base.";
        }
    }
}
