using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Answers;

/// <summary>The columns of the ladder.</summary>
public enum LadderColumn
{
    /// <summary>Which net figure.</summary>
    Figure,

    /// <summary>Its amount.</summary>
    Amount,

    /// <summary>What it counts and leaves out.</summary>
    Counts,
}

/// <summary>The five net figures of a season beside each other, each with what it counts and leaves out: they stand once, here.</summary>
internal static class SeasonLadder
{
    internal static ReportTable Of(ReviewedFarm farm)
    {
        SeasonReview season = farm.Season;
        FundingWriteUp books = farm.WriteUp;
        Notation notation = farm.Notation;
        ReportTable table = new ReportTable($"Season {season.CropYear}.", notation).InOrder()
            .Column("Net figure").As(LadderColumn.Figure).Wrapping()
            .Column($"{season.CropYear}", Look.WholeMoney).As(LadderColumn.Amount).WithBar()
            .Column("What it counts and leaves out").As(LadderColumn.Counts).Wrapping();
        FarmStatementLine net = FarmStatement.Of(season).First(line => line.Item == FarmStatementItem.NetReturnOfFarm);
        table
            .Row(
                "All crops, after every cost",
                ReportCell.Of(season.Farm.Line(BudgetLine.NetReturn)),
                $"Left over: your own hours{Wage(season)} and the cost of owning counted"
            )
            .Row(
                "The farm, after every cost",
                net.Amount is { } amount ? amount : ReportCell.Missing(net.Reason!),
                net.Amount is null ? "also counts what no crop carries" : Also(season))
            .Row(
                "Tax form, cash basis",
                books.Tax.NetUnknown is { } unknown ? ReportCell.Missing(unknown) : books.Tax.NetBeforeDepreciation,
                "leaves out depreciation, your own hours and what is in store or owed"
            );
        AddAccrual(table, books, notation);
        return table;
    }

    private static void AddAccrual(ReportTable table, FundingWriteUp books, Notation notation)
    {
        string why = books.Tax.NetUnknown ?? "it needs a balance sheet at both ends of the year (balances.csv)";
        if (books.Accrual is not { } accrual)
        {
            table
                .Row(
                    "Net farm income",
                    ReportCell.Missing(why),
                    "counts depreciation and changes in stock and bills; leaves out your own hours"
                )
                .Row("After unpaid labor", ReportCell.Missing(why), "unpaid hours taken off");
            return;
        }

        table.Row(
            "Net farm income",
            accrual.NetFarmIncome,
            $"counts {BlockNumber.Of(accrual.Depreciation, Look.WholeMoney, notation)} of depreciation and changes in stock and bills; "
                + $"leaves out your own hours"
        );
        table.Row(
            "After unpaid labor",
            books.Inputs.UnpaidLabor.Value is { } unpaid
                ? accrual.NetFarmIncome - unpaid
                : ReportCell.Missing(books.Inputs.UnpaidLabor.Reason!),
            books.Inputs.UnpaidLabor.Value is { } hours
                ? $"{BlockNumber.Of(hours, Look.WholeMoney, notation)} of unpaid hours taken off; interest on your own money not counted"
                : "unpaid hours taken off"
        );
    }

    private static string Also(SeasonReview season)
    {
        string Money(decimal amount) => BlockNumber.Of(amount, Look.WholeMoney, season.Notation);
        List<string> said = [];
        decimal unused = season.UnallocatedTotal(Unallocated.Unused),
            lost = season.UnallocatedTotal(Unallocated.NotAssigned),
            other = season.OtherIncome.Sum(income => income.Amount.Amount),
            sold = season.UnassignedSales;
        if (unused != 0m)
        {
            said.Add($"{Money(unused)} of unused capacity");
        }

        if (lost != 0m)
        {
            said.Add($"{Money(lost)} of cost that reached no crop");
        }

        if (other != 0m)
        {
            said.Add($"{Money(other)} of other income");
        }

        if (sold != 0m)
        {
            said.Add($"{Money(sold)} of sales of crops that weren't grown");
        }

        return said.Count == 0 ? "nothing else came in or went out" : $"also counts {Phrase.List(said)}";
    }

    private static string Wage(SeasonReview season)
    {
        OwnHourValue value = OwnHourValue.Of(season.Trace, season.CropYear);
        List<decimal> wages = [.. value.OwnWages.Select(pair => pair.Wage)];
        if (!value.WorkersTableDecides && value.Setting is { } setting)
        {
            wages.Add(setting);
        }

        string Rate(decimal wage) => BlockNumber.Of(wage, wage == decimal.Truncate(wage) ? Look.WholeMoney : Look.Rate, season.Notation);
        return wages.Count == 0 ? ""
            : wages.Min() == wages.Max() ? $" at {Rate(wages[0])}"
            : $" at {Rate(wages.Min())} to {Rate(wages.Max())}";
    }
}
