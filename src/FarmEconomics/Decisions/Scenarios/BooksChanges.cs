using FarmEconomics.Records;

namespace FarmEconomics.Decisions.Scenarios;

/// <summary>Changes of the books, of money that names no crop, and of fees. The yearly cost of equipment and
/// buildings stays.</summary>
internal static class BooksChanges
{
    internal static void Expenses(RecordsCopy copy, ScenarioChange change)
    {
        foreach (ExpenseRow row in copy.Original.Tables.Expenses.Where(row => IsMeant(copy.Original, row, change)))
        {
            copy.Scale(row, ExpenseRow.AmountColumn, change.Step.Factor);
        }
    }

    internal static void Income(RecordsCopy copy, ScenarioChange change)
    {
        foreach (IncomeRow row in copy.Original.Tables.Income.Where(row => Same(row.Channel, change.Name!)))
        {
            copy.Scale(row, IncomeRow.AmountColumn, change.Step.Factor);
        }
    }

    internal static void Fee(RecordsCopy copy, ScenarioChange change)
    {
        foreach (ChannelRow row in copy.Original.Tables.Channels.Where(row => Same(row.Channel, change.Name!)))
        {
            copy.Set(row, ChannelRow.FeePercentColumn, change.Step.Number);
        }
    }

    private static bool IsMeant(FarmRecords records, ExpenseRow row, ScenarioChange change)
    {
        CategoryRow category = records.Category(row.Category);
        return change.Scope switch
        {
            ScenarioScope.Category => Same(row.Category, change.Name!),
            ScenarioScope.Pool => NamesChannelOnly(row) ? Same(records.PoolOf(records.Channel(row.Channel!)).Name, change.Name!)
                : !string.IsNullOrWhiteSpace(row.Pool) ? Same(row.Pool, change.Name!)
                : NamesNothing(row) && category.Class == ExpenseClass.Operating
                    && Same(string.IsNullOrWhiteSpace(category.Pool) ? DefaultPools.GeneralOverhead : category.Pool, change.Name!),
            _ => category.Class == ExpenseClass.Operating,
        };
    }

    /// <summary>True for a row that goes to its channel's own pool, as it names no crop or planting.</summary>
    private static bool NamesChannelOnly(ExpenseRow row) =>
        !string.IsNullOrWhiteSpace(row.Channel) && string.IsNullOrWhiteSpace(row.Crop) && string.IsNullOrWhiteSpace(row.Planting);

    /// <summary>True for a row that names no crop, planting, channel or pool.</summary>
    internal static bool NamesNothing(ExpenseRow row) =>
        string.IsNullOrWhiteSpace(row.Crop)
        && string.IsNullOrWhiteSpace(row.Planting)
        && string.IsNullOrWhiteSpace(row.Channel)
        && string.IsNullOrWhiteSpace(row.Pool);

    private static bool Same(string left, string right) => string.Equals(left.Trim(), right.Trim(), StringComparison.OrdinalIgnoreCase);
}
