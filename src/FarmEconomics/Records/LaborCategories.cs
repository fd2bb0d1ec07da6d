namespace FarmEconomics.Records;

/// <summary>Which categories of the books hold the cost of hired labor, and which of them what is paid on top of wages.</summary>
public static class LaborCategories
{
    /// <summary>True for wages and for what is paid on top of them.</summary>
    /// <param name="category">The category.</param>
    /// <returns>True for class labor or labor-burden.</returns>
    public static bool IsLabor(this CategoryRow category)
    {
        return category.Class is ExpenseClass.Labor or ExpenseClass.LaborBurden;
    }

    /// <summary>
    /// True for what an employer pays on top of wages: class labor-burden; or class labor with a tax line that holds no wages, as records
    /// have it that don't know the class.
    /// </summary>
    /// <param name="category">The category.</param>
    /// <returns>True for payroll taxes, workers' compensation, benefits and pensions.</returns>
    public static bool IsBurden(this CategoryRow category)
    {
        return category.Class == ExpenseClass.LaborBurden
            || (category.Class == ExpenseClass.Labor && TaxLines.Find(category.TaxLine) is { OnTopOfWages: true });
    }

    /// <summary>True for a category that enters the enterprise budgets: running cost and labor.</summary>
    internal static bool EntersBudgets(this CategoryRow category) => category.Class == ExpenseClass.Operating || category.IsLabor();
}
