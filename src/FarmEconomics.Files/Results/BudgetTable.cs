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
        Money("output", budget => If(Value(budget), budget.Output.Amount)),
        Money("of_which_household", budget => If(Value(budget), budget.Sums.Household.Amount)),
        Money("of_which_closing_stock", budget => If(Value(budget), budget.Sums.ClosingStock.Amount)),
        Money("materials", budget => If(Costs(budget), budget.Sums.Materials.Amount)),
        Money("selling", budget => If(Costs(budget), budget.Sums.Selling.Amount)),
        Money("gross_margin", budget => If(budget.Known.NoGrossMargin is null, budget.GrossMargin.Amount)),
        Number("labor_hours", budget => If(Hours(budget), budget.LaborHours.Value)),
        Number("of_which_estimated_hours", budget => If(Hours(budget), budget.Sums.EstimatedHours)),
        Money("labor_cost", budget => If(Labor(budget), budget.LaborCost.Amount)),
        Money("of_which_owner_labor", budget => If(Labor(budget), budget.Sums.OwnerLabor.Amount)),
        Money("margin_after_labor", budget => If(Value(budget) && Costs(budget) && Labor(budget), budget.MarginAfterLabor.Amount)),
        Money("infrastructure", budget => If(Costs(budget) && Ownership(budget), budget.Sums.Infrastructure.Amount)),
        Money("margin_after_infrastructure", budget => If(Value(budget) && All(budget), budget.MarginAfterInfrastructure.Amount)),
        Money("overhead", budget => If(budget.Known.Overhead is null, budget.Sums.Overhead.Amount)),
        Money("net_return", budget => If(budget.Known.NoFullNetReturn is null, budget.NetReturn.Amount)),
        Number("gross_margin_per_bed_foot", budget => budget.GrossMarginPerBedFoot.Value),
        Number("gross_margin_per_bed_foot_week", budget => budget.GrossMarginPerBedFootWeek.Value),
        Number("gross_margin_per_labor_hour", budget => budget.GrossMarginPerLaborHour.Value),
        Number("return_to_labor_per_hour", budget => budget.ReturnToLaborPerHour.Value),
        Number("net_return_per_bed_foot", budget => budget.NetReturnPerBedFoot.Value),
        Number("average_price", budget => budget.AveragePrice.Value),
        Number("break_even_price", budget => budget.BreakEvenPrice.Value),
        Number("break_even_yield_per_bed_foot", budget => budget.BreakEvenYield.Value),
    ];

    internal static void Row(CsvTable table, EnterpriseBudget budget)
    {
        foreach (ResultColumn<EnterpriseBudget> column in Columns)
        {
            ResultValue.Write(table, column.Kind, column.Value(budget));
        }

        table.End();
    }

    private static ResultColumn<EnterpriseBudget> Money(string name, Func<EnterpriseBudget, decimal?> value) => new(name, ResultKind.Money, budget => value(budget));

    private static ResultColumn<EnterpriseBudget> Number(string name, Func<EnterpriseBudget, decimal?> value) => new(name, ResultKind.Number, budget => value(budget));

    private static bool Value(EnterpriseBudget budget) => budget.Known.Value is null;

    private static bool Costs(EnterpriseBudget budget) => budget.Known.Costs is null;

    private static bool Hours(EnterpriseBudget budget) => budget.Known.Hours is null;

    private static bool Labor(EnterpriseBudget budget) => budget.Known.LaborCost is null && budget.Known.OwnerLabor is null;

    private static bool Ownership(EnterpriseBudget budget) => budget.Known.Ownership is null;

    private static bool All(EnterpriseBudget budget) => Costs(budget) && Labor(budget) && Ownership(budget);

    private static decimal? If(bool known, decimal value) => known ? value : null;
}
