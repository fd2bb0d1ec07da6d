using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Reports.Explain;

/// <summary>
/// The establishment of perennials opened: what each planting cost before it bore, and the part this season takes of it or carries on.
/// </summary>
internal static class EstablishmentSection
{
    /// <param name="season">The season.</param>
    /// <param name="budget">The budget of a crop or a planting.</param>
    internal static ExplainSection Of(SeasonReview season, EnterpriseBudget budget)
    {
        Notation notation = season.Notation;
        BudgetFigure figure = budget.Line(BudgetLine.Establishment);
        ReportTable table = new ReportTable("By planting", notation)
            .Column("Planting")
            .Column("Establishment", Look.Money)
            .Column("Bears, years", Look.Quantity)
            .Column("Its part a year", Look.Money)
            .Column("First bearing year", Look.Year)
            .Column($"In {season.CropYear}", Look.Money);
        Money sum = Money.Zero;
        foreach (Enterprise one in budget.Enterprises)
        {
            StandAccount account = season.StandOf(one.Planting);
            EnterpriseBudget planting = season.BudgetOf(one);
            sum += planting.Sums.Establishment;
            table.Row(
                one.Planting.Name,
                account.EstablishmentCost,
                account.BearingYears,
                account.AnnualPart,
                account.FirstBearingYear is { } first ? first : ReportCell.Missing("it hasn't borne yet"),
                ReportCell.Of(planting.Line(BudgetLine.Establishment))
            );
        }

        table.Total("All plantings", "", "", "", "", sum);
        string amount = notation.InWords(Math.Abs(figure.Amount.Amount), Look.Money);
        string sentence =
            figure.Missing is { } why ? $"What {budget.Name} takes of its establishment in {season.CropYear} is not available ({why})."
            : figure.Amount.Amount < 0m
                ? $"{budget.Name} doesn't bear in {season.CropYear}: {amount} of cost is carried to the seasons that will."
            : $"{budget.Name} takes {amount} of what establishing it cost in {season.CropYear}: an equal part each bearing season, "
                + $"interest included.";
        return new ExplainSection("Establishment", BudgetLine.Establishment, figure.Amount, figure.Amount, Money.Zero, [sentence], [table]);
    }
}
