using System.Runtime.CompilerServices;
using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Decisions;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;
using FarmEconomics.Units;

namespace FarmEconomics.Reports.Explain;

/// <summary>A cost line opened: the rows that name the crop, and each pool's share with the way it came.</summary>
internal static class LineSection
{
    /// <summary>A pool's table is the same for every crop it charges.</summary>
    private static readonly ConditionalWeakTable<PoolResult, ReportTable> OwnRows = [];

    internal static ExplainSection Of(SeasonReview season, EnterpriseBudget budget, StatementLine line, List<PoolPath> paths)
    {
        Notation notation = season.Notation;
        BudgetFigure figure = budget.Line(BudgetLines.Of(line));
        SeasonCosts costs = SeasonCosts.Of(season);
        List<Charge> charges = budget.Enterprises.SelectMany(costs.DirectCharges).Where(charge => charge.Line == line).ToList();
        Money direct = Money.Sum(charges.Select(charge => charge.Amount));
        Money pooled = Money.Sum(paths.Select(path => path.Amount));
        string name = line.ToString().ToLowerInvariant();
        string whole = figure.Missing is { } why
            ? $" is not available ({why}). What is known of it: "
            : $": {notation.InWords(figure.Amount.Amount, Look.Money)}, of which ";
        string first = $"{Phrase.Sentence(name)} of {Phrase.InSentence(budget.Name)} in {season.CropYear}{whole}"
            + $"{notation.InWords(direct.Amount, Look.Money)} in rows that name it and {notation.InWords(pooled.Amount, Look.Money)} "
            + $"through {notation.Count(paths.Select(path => path.Pool).Distinct().Count(), "pool")}.";
        IEnumerable<string> hours = line == StatementLine.Labor && budget.Known.Hours is null ? [Hours(budget, charges, notation)] : [];
        List<ReportTable> tables = [];
        if (charges.Count > 0)
        {
            tables.Add(Rows($"Rows that name {Phrase.InSentence(budget.Name)}", season, charges));
        }

        if (paths.Count > 0)
        {
            tables.Add(Shares(season, budget, paths));
        }

        return new ExplainSection(
            Phrase.Sentence(name), BudgetLines.Of(line), figure.Amount, direct, pooled, [first, .. hours, .. Through(paths, notation)],
            tables);
    }

    private static string Hours(EnterpriseBudget budget, List<Charge> charges, Notation notation)
    {
        decimal named = charges.Sum(charge => charge.Hours);
        return $"{notation.Number(budget.LaborHours.Value, Look.Hours)} labor hours stand behind it: "
            + $"{notation.Number(named, Look.Hours)} in rows that name it, "
            + $"{notation.Number(budget.LaborHours.Value - named, Look.Hours)} through pools.";
    }

    private static IEnumerable<string> Through(List<PoolPath> paths, Notation notation)
    {
        foreach (PoolPath path in paths.Where(path => path.Through.Count > 0))
        {
            IEnumerable<string> through =
                path.Through.Select(step => $"{step.Pool.Name} {notation.InWords(step.Amount.Amount, Look.Money)}");
            yield return $"{path.Pool.Pool.Name} ({RowWords.Stream(path.Source.Stream)}): "
                + $"{notation.InWords(path.Directly.Amount, Look.Money)} directly, through other pools {Phrase.List([.. through])}.";
        }
    }

    internal static ReportTable PoolRows(SeasonReview season, PoolResult pool) =>
        OwnRows.GetValue(pool, one => Rows($"Rows of {one.Pool.Name}", season, one.Rows));

    /// <summary>The rows behind charges, each once, by day; parts of a row are added up.</summary>
    private static ReportTable Rows(string title, SeasonReview season, IEnumerable<Charge> charges)
    {
        List<IGrouping<(IRecordRow Origin, CostStream Stream, bool Fee), Charge>> rows = charges
            .GroupBy(charge => (charge.Origin, charge.Stream, charge.IsFee))
            .OrderBy(row => RowWords.Day(row.Key.Origin) ?? DateOnly.MaxValue)
            .ThenBy(row => row.Key.Origin.Source, Comparer<SourceLine>.Create(SourceLine.Compare))
            .ToList();
        TableOf<IGrouping<(IRecordRow Origin, CostStream Stream, bool Fee), Charge>> columns = new ReportTable(title, season.Notation)
            .Of<IGrouping<(IRecordRow Origin, CostStream Stream, bool Fee), Charge>>()
            .Column("Row", row => RowWords.Place(row.Key.Origin.Source))
            .Column("Day", Look.Date, row => RowWords.Day(row.Key.Origin) is { } day ? day : "")
            .Column("What", row => RowWords.What(row.First(), season.Notation))
            .Column("Kind", row => RowWords.Stream(row.Key.Stream));
        List<ReportCell> total = ["All rows", "", "", ""];
        if (rows.Exists(row => row.Any(charge => charge.Hours != 0m)))
        {
            // A row divided by standards holds minutes: rounded to tenths it would read as nothing.
            columns.Column("Hours", Look.Exact, row => row.Any(charge => charge.Hours != 0m) ? row.Sum(charge => charge.Hours) : "");
            total.Add(rows.Sum(row => row.Sum(charge => charge.Hours)));
        }

        total.Add(Money.Sum(rows.SelectMany(row => row).Select(charge => charge.Amount)));
        return columns.Column("Amount", Look.Money, row => Money.Sum(row.Select(charge => charge.Amount))).Rows(rows).Total(total);
    }

    private static ReportTable Shares(SeasonReview season, EnterpriseBudget budget, List<PoolPath> paths)
    {
        ReportTable table = new ReportTable($"Shares of pools charged to {Phrase.InSentence(budget.Name)}", season.Notation)
            .Column("Pool")
            .Column("Kind")
            .Column("The pool's amount", Look.Money)
            .Column("Share", Look.Percent)
            .Column("Charged", Look.Money)
            .Column("Shared out by")
            .Column("Its weight", Look.Quantity)
            .Column("of all weights", Look.Quantity)
            .Column("Directly", Look.Money)
            .Column("Through other pools", Look.Money);
        foreach (PoolPath path in paths)
        {
            table.Row(
                path.Pool.Pool.Name, RowWords.Stream(path.Source.Stream), path.Source.Total, path.Share, path.Amount,
                $"{season.Settings.LengthUnit.Label(path.Pool.Users.BasisUsed.ToString())} "
                    + $"({season.Settings.LengthUnit.Label(path.Pool.Users.BasisUsed.Kind.Unit)})",
                path.Weight, path.Pool.Users.Total, path.Directly, Money.Sum(path.Through.Select(step => step.Amount)));
        }

        return table.Total(
            "All pools",
            "",
            "",
            "",
            Money.Sum(paths.Select(path => path.Amount)),
            "",
            "",
            "",
            Money.Sum(paths.Select(path => path.Directly)),
            Money.Sum(paths.SelectMany(path => path.Through).Select(step => step.Amount))
        );
    }
}
