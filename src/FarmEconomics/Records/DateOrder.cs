namespace FarmEconomics.Records;

/// <summary>Rows by date, file order within a day.</summary>
internal static class DateOrder
{
    /// <summary>The rows themselves when they stand in that order already, which most farms' do: that spares sorting millions of them.</summary>
    internal static List<T> Of<T>(List<T> rows, Func<T, DateOnly> date)
    {
        for (int i = 1; i < rows.Count; i++)
        {
            if (date(rows[i]) < date(rows[i - 1]))
            {
                // OrderBy is stable.
                return rows.OrderBy(date).ToList();
            }
        }

        return rows;
    }
}
