using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Records.Schema;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;
using FarmEconomics.Units;

namespace FarmEconomics.Reports.Season;

/// <summary>The whole-farm statement, the assumptions and the proof.</summary>
public static class ProofTables
{
    /// <summary>The farm's statement of the crop year: from output to net return, and what stands outside the crops.</summary>
    public static ReportTable Statement(SeasonReview season)
    {
        EnterpriseBudget farm = season.Farm;
        ReportCell stock = season.Settings.ClosingStock == ClosingStock.Count
            ? On(BudgetLine.ClosingStock)
            : ReportCell.Missing("closing_stock is set to ignore");
        ReportTable table = new ReportTable($"{farm.Name} in {season.CropYear}: the crops together", season.Notation)
            .InOrder().Column("Line").Column("Amount", Look.Money)
            .Row("Sales", On(BudgetLine.Sales))
            .Row("Shares, by what they received", On(BudgetLine.ShareIncome))
            .Row("Household use at list value (no cash)", On(BudgetLine.HouseholdUse))
            .Row($"Stock on hand at {Looks.Day(season.Records.AsOf)} (no cash)", stock)
            .Row("Brought in", On(BudgetLine.Output))
            .Row("- materials", On(BudgetLine.Materials)).Row("- selling", On(BudgetLine.Selling))
            .Row("Gross margin", On(BudgetLine.GrossMargin))
            .Row("- hired labor", On(BudgetLine.HiredLabor)).Row("- your own hours (no cash)", On(BudgetLine.OwnerLabor))
            .Row("Margin after labor", On(BudgetLine.MarginAfterLabor))
            .Row("- infrastructure", On(BudgetLine.Infrastructure))
            .Row("Margin after infrastructure", On(BudgetLine.MarginAfterInfrastructure))
            .Row("- overhead", On(BudgetLine.Overhead))
            .Row("- establishment of perennials (no cash)", On(BudgetLine.Establishment))
            .Row("Left over", On(BudgetLine.NetReturn));
        AddOutside(table, season);
        return table;

        ReportCell On(BudgetLine line) => ReportCell.Of(farm.Line(line));
    }

    private static void AddOutside(ReportTable table, SeasonReview season)
    {
        foreach ((Unallocated where, string words) in Outside)
        {
            decimal amount = season.UnallocatedTotal(where);
            string before = where is Unallocated.Household or Unallocated.NotAssigned ? season.Farm.Known.OwnershipLeftOut : "";
            table.Row(
                $"Outside the crops: {words}{before}",
                ReportCell.Known(amount, where == Unallocated.Unused ? season.Farm.Known.Ownership : season.Farm.Known.Costs));
        }

        if (season.OtherIncome.Count > 0)
        {
            table.Row("Other farm income, outside the crops", Money.Sum(season.OtherIncome.Select(income => income.Amount)));
        }

        if (season.UnassignedSales != 0m)
        {
            table.Row("Sales of crops that weren't grown, outside the crops", season.UnassignedSales);
        }
    }

    private static readonly (Unallocated Where, string Words)[] Outside =
    [
        (Unallocated.Household, "the household's part"),
        (Unallocated.Unused, "unused capacity"),
        (Unallocated.NotAssigned, "not assigned"),
        (Unallocated.Excluded, "purchases, principal, interest on assets, tax, drawings"),
    ];

    /// <summary>Every assumption the figures rest on, and what is missing with its consequence.</summary>
    public static ReportTable Assumptions(SeasonReview season)
    {
        ReportTable table = new ReportTable($"What the figures of {season.CropYear} rest on", season.Notation)
            .Column("Assumption").Column("Value").Column("What it means");
        foreach ((string assumption, ReportCell value, string meaning) in OfTime(season).Concat(OfCost(season.Settings)))
        {
            table.Row(assumption, value, meaning);
        }

        AddLimits(table, season.Settings.Limits, season.Notation);
        foreach (TableSchema schema in RecordSchema.Tables.Where(schema => !schema.Required && !season.Records.Has(schema.Name)))
        {
            table.Row($"{schema.Name}.csv", ReportCell.Missing("there is no such file in the records"), schema.Without);
        }

        return table;
    }

    private static (string, ReportCell, string)[] OfTime(SeasonReview season)
    {
        FarmSettings settings = season.Settings;
        string first = Looks.Day(settings.StartOf(season.CropYear)), last = Looks.Day(settings.EndOf(season.CropYear).AddDays(-1));
        bool none = settings.UnpaidHours == UnpaidHours.None;
        return
        [
            ("crop year", $"{first} to {last}", "A planting counts in the year of its first harvest, with all its costs and sales."),
            (
                "as_of",
                Looks.Day(season.Records.AsOf),
                settings.AsOf is null
                    ? "The last date in the records."
                    : "Uses records through this day, as farm.csv says; later rows are counted, not used."
            ),
            ("owner_wage", OwnerWage(season), "Value of an unpaid hour, unless workers.csv gives one."),
            (
                "unpaid_hours",
                none ? "none" : "as-logged",
                none ? "A season without wages and hours took no labor." : "A season without a log has unknown hours."
            ),
            (
                "payroll_burden_percent",
                settings.Notation.Number(settings.PayrollBurdenPercent, Look.Exact),
                "Only used where the books carry neither wages nor what is paid on top of them."
            ),
        ];
    }

    private static (string, ReportCell, string)[] OfCost(FarmSettings settings) =>
    [
        (
            "interest_percent",
            settings.InterestPercent is { } interest
                ? settings.Notation.Number(interest, Look.Exact)
                : ReportCell.Missing("no interest_percent in farm.csv: the cost of owning can't be told"),
            "Interest on money tied up in equipment and buildings."
        ),
        (
            "ownership_method",
            settings.OwnershipMethod == OwnershipMethod.CapitalRecovery ? "capital-recovery" : "depreciation-and-interest",
            "How the cost of equipment and buildings is spread over the years."
        ),
        (
            "idle_capacity",
            settings.IdleCapacity.ToString().ToLowerInvariant(),
            settings.IdleCapacity == IdleCapacity.Separate
                ? "No crop pays for capacity you didn't use."
                : "Those who used a thing also pay for what nobody used of it."
        ),
        ("closing_stock", settings.ClosingStock.ToString().ToLowerInvariant(), "Whether what is still in store counts as brought in."),
        (
            settings.LengthUnit == LengthUnit.M ? "standard_bed_width_cm" : "standard_bed_width_in",
            settings.Notation.Number(settings.StandardBedWidthIn, Look.Exact),
            settings.LengthUnit.Label("One bed-foot is a foot of bed this many inches wide.")
        ),
        (
            "shared costs",
            settings.SharingMethod switch
            {
                SharingMethod.Reciprocal => "reciprocal",
                SharingMethod.StepDown => "step-down",
                _ => "direct",
            },
            "How shared costs that serve each other are divided, such as a boiler and panels."
        ),
        ("currency", settings.Currency, "Of all money here."),
    ];

    private static void AddLimits(ReportTable table, TracingLimits limits, Notation notation) =>
        table
            .Row(
                "produce past keeping",
                $"{limits.DaysBeyondKeeping} days",
                "How long after it stopped keeping a sale may still be matched to it; ours."
            )
            .Row("sales noted early", $"{limits.DaysNotedEarly} days", "How long before its harvest a sale may be noted; ours.")
            .Row(
                "least days to harvest",
                $"{limits.LeastDaysWithoutHistory} days",
                "From bed to a harvest that names only its crop, where no harvest names a planting of it; ours."
            )
            .Row(
                "plantings without an end",
                $"{limits.TimesMedianStay} x the crop's usual stay",
                notation.Text(
                    $"Taken as out of the bed then; at least the {limits.LongestStayPercentile:0}th percentile of its stays, "
                        + $"{limits.ShortestBound} days, {limits.BoundWithoutHistory} where nothing tells; ours."
                )
            );

    /// <summary>What an unpaid hour is worth, and who says so.</summary>
    private static ReportCell OwnerWage(SeasonReview season)
    {
        OwnHourValue value = OwnHourValue.Of(season.Trace, season.CropYear);
        string AnHour(decimal wage) => season.Notation.InWords(wage, Look.Rate) + " an hour";
        string own = $"workers.csv gives {Phrase.List(value.OwnWages.Select(pair => $"{pair.Worker} {AnHour(pair.Wage)}").ToList())}";
        return value.WorkersTableDecides ? $"{(value.Setting is { } unused ? $"{AnHour(unused)}, not used" : "none needed")}: {own}"
            : value.Setting is not { } wage ? ReportCell.Missing("no owner_wage in farm.csv: unpaid hours carry no value")
            : value.OwnWages.Count > 0 ? $"{AnHour(wage)}; {own}" : AnHour(wage);
    }

    /// <summary>The checks that nothing was lost, failed ones first.</summary>
    public static ReportTable Reconciliation(SeasonReview season)
    {
        ReportTable table = new ReportTable(
            season.Notation.Text($"Totals agree: {season.Reconciliation.Count:#,0} sums of {season.CropYear} made in two ways"),
            season.Notation
        )
            .Column("Check")
            .Column("From the records", Look.Exact)
            .Column("From the results", Look.Exact)
            .Column("Difference", Look.Exact);
        foreach (ReconciliationCheck check in season.Reconciliation.OrderBy(check => check.Holds))
        {
            table.Row(check.Check, check.Left, check.Right, check.Difference);
        }

        return table;
    }

    /// <summary>Fails loudly when a check doesn't hold: the last cell of every notebook.</summary>
    public static string RequireProof(SeasonReview season)
    {
        List<ReconciliationCheck> broken = season.Reconciliation.Where(check => !check.Holds).ToList();
        return broken.Count == 0
            ? season.Notation.Text(
                $"All {season.Reconciliation.Count:#,0} checks of {season.CropYear} hold: "
                    + $"every cent, hour and unit in the records stands in the results exactly once."
            )
            : throw new InvalidOperationException(
                "These sums don't agree, so don't trust the figures: "
                    + string.Join(
                        "; ",
                        broken.Select(check =>
                            season.Notation.Text($"{check.Check}: {check.Left} against {check.Right}, difference {check.Difference}")
                        )
                    )
            );
    }

    /// <summary>The proof in a sentence for beside the figures.</summary>
    public static string InWords(SeasonReview season)
    {
        int failed = season.Reconciliation.Count(check => !check.Holds);
        return failed == 0
            ? season.Notation.Text($"The totals agree with your records to the cent ({season.Reconciliation.Count:#,0} checks).")
            : season.Notation.Text(
                $"{failed:#,0} of {season.Reconciliation.Count:#,0} totals do not agree with your records: don't rely on these figures."
            );
    }

    /// <summary>What every report must say about itself.</summary>
    public const string Cautions = "These figures rest on the grower's own records. "
        + "They are not tax, legal, lending or food-safety advice. Tax lines and depreciation "
        + "need the grower's tax preparer and the current official forms; holding and washing produce follows local food-safety rules; "
        + "local codes and licensed practice come first.";
}
