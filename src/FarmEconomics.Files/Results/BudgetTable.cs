using FarmEconomics.Budgets;

namespace FarmEconomics.Files.Results;

/// <summary>The columns that crops.csv and plantings.csv share.</summary>
internal static class BudgetTable
{
    internal static readonly ResultColumn<EnterpriseBudget>[] Columns =
    [
        new("crop_year", ResultKind.Whole, budget => budget.CropYear),
        new("crop", ResultKind.Text, budget => budget.Crop!.Name),
        new("unit", ResultKind.Text, budget => budget.Crop!.Unit),
        new("plantings", ResultKind.Whole, budget => budget.Sums.Plantings),
        Number("bed_feet", budget => budget.Sums.BedFeet.Value),
        Number("bed_foot_weeks", budget => budget.BedFootWeeks.Value),
        Number("harvested", budget => budget.Sums.Harvested),
        Number("unmatched", budget => budget.Sums.Unmatched),
        Number("sold", budget => budget.Sums.Sold),
        Number("other_use", budget => budget.Sums.OtherUse),
        Number("unsold", budget => budget.Sums.Unsold),
        Money("output", BudgetLine.Output),
        Money("of_which_household", BudgetLine.HouseholdUse),
        Money("of_which_closing_stock", BudgetLine.ClosingStock),
        Money("materials", BudgetLine.Materials),
        Money("selling", BudgetLine.Selling),
        Money("gross_margin", BudgetLine.GrossMargin),
        Number("labor_hours", budget => budget.Known.Hours is null ? budget.LaborHours.Value : null),
        Number("of_which_estimated_hours", budget => budget.Known.Hours is null ? budget.Sums.EstimatedHours : null),
        Money("labor_cost", BudgetLine.Labor),
        Money("of_which_owner_labor", BudgetLine.OwnerLabor),
        Money("margin_after_labor", BudgetLine.MarginAfterLabor),
        Money("infrastructure", BudgetLine.Infrastructure),
        Money("margin_after_infrastructure", BudgetLine.MarginAfterInfrastructure),
        Money("overhead", BudgetLine.Overhead),
        Money("establishment", BudgetLine.Establishment),
        Money("net_return", BudgetLine.NetReturn),
        Number("gross_margin_per_bed_foot", budget => budget.GrossMarginPerBedFoot.Value),
        Number("gross_margin_per_bed_foot_week", budget => budget.GrossMarginPerBedFootWeek.Value),
        Number("gross_margin_per_labor_hour", budget => budget.GrossMarginPerLaborHour.Value),
        Number("return_to_labor_per_hour", budget => budget.ReturnToLaborPerHour.Value),
        Number("net_return_per_bed_foot", budget => budget.NetReturnPerBedFoot.Value),
        Number("average_price", budget => budget.AveragePrice.Value),
        Number("break_even_price", budget => budget.BreakEvenPrice.Value),
        Number("break_even_yield_per_bed_foot", budget => budget.BreakEvenYield.Value),
    ];

    private static ResultColumn<EnterpriseBudget> Money(string name, BudgetLine line) =>
        new(name, ResultKind.Money, budget => budget.Line(line).Value);

    private static ResultColumn<EnterpriseBudget> Number(string name, Func<EnterpriseBudget, decimal?> value) =>
        new(name, ResultKind.Number, budget => value(budget));
}
