using FarmEconomics.Budgets;

namespace FarmEconomics.Files.Results;

/// <summary>The columns that crops.csv and plantings.csv share.</summary>
internal static class BudgetTable
{
    internal static readonly string[] Columns =
    [
        "crop_year", "crop", "unit", "plantings", "bed_feet", "bed_foot_weeks", "harvested", "unmatched", "sold", "other_use", "unsold",
        "output", "of_which_household", "of_which_closing_stock", "materials", "selling", "gross_margin", "labor_hours", "of_which_estimated_hours",
        "labor_cost", "of_which_owner_labor", "margin_after_labor", "infrastructure", "margin_after_infrastructure", "overhead", "net_return",
        "gross_margin_per_bed_foot", "gross_margin_per_bed_foot_week", "gross_margin_per_labor_hour", "return_to_labor_per_hour",
        "net_return_per_bed_foot", "average_price", "break_even_price", "break_even_yield_per_bed_foot",
    ];

    internal static void Row(CsvTable table, EnterpriseBudget budget)
    {
        Availability known = budget.Known;
        bool costs = known.Costs is null;
        bool hours = known.Hours is null;
        bool labor = known.LaborCost is null && known.OwnerLabor is null;
        bool ownership = known.Ownership is null;
        BudgetSums sums = budget.Sums;
        table.Whole(budget.CropYear).Text(budget.Crop!.Name).Text(budget.Crop.Unit).Whole(sums.Plantings)
            .Number(sums.BedFeet.Value).Number(budget.BedFootWeeks.Value)
            .Number(sums.Harvested).Number(sums.Unmatched).Number(sums.Sold).Number(sums.OtherUse).Number(sums.Unsold)
            .Money(budget.Output.Amount).Money(sums.Household.Amount).Money(sums.ClosingStock.Amount)
            .Money(If(costs, sums.Materials.Amount)).Money(If(costs, sums.Selling.Amount)).Money(If(costs, budget.GrossMargin.Amount))
            .Number(If(hours, budget.LaborHours.Value)).Number(If(hours, sums.EstimatedHours))
            .Money(If(labor, budget.LaborCost.Amount)).Money(If(labor, sums.OwnerLabor.Amount)).Money(If(costs && labor, budget.MarginAfterLabor.Amount))
            .Money(If(costs && ownership, sums.Infrastructure.Amount)).Money(If(costs && labor && ownership, budget.MarginAfterInfrastructure.Amount))
            .Money(If(costs && ownership && labor, sums.Overhead.Amount)).Money(If(costs && labor && ownership, budget.NetReturn.Amount))
            .Number(budget.GrossMarginPerBedFoot.Value).Number(budget.GrossMarginPerBedFootWeek.Value).Number(budget.GrossMarginPerLaborHour.Value)
            .Number(budget.ReturnToLaborPerHour.Value).Number(budget.NetReturnPerBedFoot.Value).Number(budget.AveragePrice.Value)
            .Number(budget.BreakEvenPrice.Value).Number(budget.BreakEvenYield.Value);
        table.End();
    }

    private static decimal? If(bool known, decimal value) => known ? value : null;
}
