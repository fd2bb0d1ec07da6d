using System.Runtime.CompilerServices;
using FarmEconomics.Budgets;
using FarmEconomics.Costing;
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
        List<Charge> charges = budget.Enterprises.SelectMany(season.DirectCharges).Where(charge => charge.Line == line).ToList();
        Money direct = Money.Sum(charges.Select(charge => charge.Amount));
        Money pooled = Money.Sum(paths.Select(path => path.Amount));
        string name = line.ToString().ToLowerInvariant();
        List<string> sentences =
        [
            $"{Phrase.Sentence(name)} of {budget.Name} in {season.CropYear}{(figure.Missing is { } why ? $" is not available ({why}). What is known of it: " : $": {notation.InWords(figure.Amount.Amount, Look.Money)}, of which ")}"
                + $"{notation.InWords(direct.Amount, Look.Money)} in rows that name it and {notation.InWords(pooled.Amount, Look.Money)} through {notation.Count(paths.Select(path => path.Pool).Distinct().Count(), "pool")}.",
        ];
        if (line == StatementLine.Labor && budget.Known.Hours is null)
        {
            decimal named = charges.Sum(charge => charge.Hours);
            sentences.Add($"{notation.Number(budget.LaborHours.Value, Look.Hours)} labor hours stand behind it: {notation.Number(named, Look.Hours)} in rows that name it, "
                + $"{notation.Number(budget.LaborHours.Value - named, Look.Hours)} through pools.");
        }

        foreach (PoolPath path in paths.Where(path => path.Through.Count > 0))
        {
            sentences.Add($"{path.Pool.Pool.Name} ({RowWords.Stream(path.Source.Stream)}): {notation.InWords(path.Directly.Amount, Look.Money)} directly, "
                + $"through other pools {Phrase.List(path.Through.Select(step => $"{step.Pool.Name} {notation.InWords(step.Amount.Amount, Look.Money)}").ToList())}.");
        }

        List<ReportTable> tables = [];
        if (charges.Count > 0)
        {
            tables.Add(Rows($"Rows that name {budget.Name}", season, charges));
        }

        if (paths.Count > 0)
        {
            tables.Add(Shares(season, budget, paths));
        }

        return new ExplainSection(Phrase.Sentence(name), BudgetLines.Of(line), figure.Amount, direct, pooled, sentences, tables);
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
        bool hours = rows.Exists(row => row.Any(charge => charge.Hours != 0m));
        ReportTable table = new ReportTable(title, season.Notation).Column("Row").Column("Day", Look.Date).Column("What").Column("Kind");
        if (hours)
        {
            // A row divided by standards holds minutes: rounded to tenths it would read as nothing.
            table.Column("Hours", Look.Exact);
        }

        table.Column("Amount", Look.Money);
        foreach (IGrouping<(IRecordRow Origin, CostStream Stream, bool Fee), Charge> row in rows)
        {
            List<ReportCell> cells =
            [
                RowWords.Place(row.Key.Origin.Source),
                RowWords.Day(row.Key.Origin) is { } day ? day : "",
                RowWords.What(row.First(), season.Notation),
                RowWords.Stream(row.Key.Stream),
            ];
            if (hours)
            {
                cells.Add(row.Any(charge => charge.Hours != 0m) ? row.Sum(charge => charge.Hours) : "");
            }

            cells.Add(Money.Sum(row.Select(charge => charge.Amount)));
            table.Row(cells);
        }

        List<ReportCell> total = ["All rows", "", "", ""];
        if (hours)
        {
            total.Add(rows.Sum(row => row.Sum(charge => charge.Hours)));
        }

        total.Add(Money.Sum(rows.SelectMany(row => row).Select(charge => charge.Amount)));
        return table.Total(total);
    }

    private static ReportTable Shares(SeasonReview season, EnterpriseBudget budget, List<PoolPath> paths)
    {
        ReportTable table = new ReportTable($"Shares of pools charged to {budget.Name}", season.Notation)
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
                $"{season.Settings.LengthUnit.Label(path.Pool.Users.BasisUsed.ToString())} ({season.Settings.LengthUnit.Label(path.Pool.Users.BasisUsed.Kind.Unit)})", path.Weight, path.Pool.Users.Total, path.Directly, Money.Sum(path.Through.Select(step => step.Amount)));
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
