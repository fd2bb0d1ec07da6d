namespace FarmEconomics.Tracing;

/// <summary>
/// Where the rows of a table lie once they are laid out crop by crop, each crop's by date, then in file order: no lot of a crop is
/// drawn on by another.
/// </summary>
internal sealed class CropLayout
{
    /// <param name="crops">How many crops there are.</param>
    /// <param name="cropOf">The crop of each row.</param>
    /// <param name="dayOf">The day of each row.</param>
    internal CropLayout(int crops, int[] cropOf, int[] dayOf)
    {
        Starts = new int[crops + 1];
        foreach (int crop in cropOf)
        {
            Starts[crop + 1]++;
        }

        for (int i = 0; i < crops; i++)
        {
            Starts[i + 1] += Starts[i];
        }

        ByDate = InOrderOfDate(dayOf);
        RowOf = new int[cropOf.Length];
        int[] next = Starts[..^1];
        for (int i = 0; i < ByDate.Length; i++)
        {
            int row = ByDate[i];
            int place = next[cropOf[row]]++;
            (RowOf[place], ByDate[i]) = (row, place);
        }
    }

    /// <summary>The first place of each crop, then the number of rows.</summary>
    internal int[] Starts { get; }

    /// <summary>The row that lies at each place.</summary>
    internal int[] RowOf { get; }

    /// <summary>The places in the order of all crops together: by date, then file order.</summary>
    internal int[] ByDate { get; }

    /// <summary>The crop a place belongs to.</summary>
    internal int CropAt(int place)
    {
        int low = 0;
        int high = Starts.Length - 1;
        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            (low, high) = Starts[middle] <= place ? (middle, high) : (low, middle);
        }

        return low;
    }

    /// <summary>The first place of a crop whose day isn't before one.</summary>
    internal int FirstFrom(int crop, int[] days, int day)
    {
        (int low, int high) = (Starts[crop], Starts[crop + 1]);
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = days[middle] < day ? (middle + 1, high) : (low, middle);
        }

        return low;
    }

    /// <summary>Row numbers by day, file order within a day; counted out, not compared, because there may be millions.</summary>
    private static int[] InOrderOfDate(int[] dayOf)
    {
        int[] rows = new int[dayOf.Length];
        if (rows.Length == 0)
        {
            return rows;
        }

        int first = dayOf.Min();
        int[] next = new int[dayOf.Max() - first + 2];
        foreach (int day in dayOf)
        {
            next[day - first + 1]++;
        }

        for (int i = 1; i < next.Length; i++)
        {
            next[i] += next[i - 1];
        }

        for (int row = 0; row < rows.Length; row++)
        {
            rows[next[dayOf[row] - first]++] = row;
        }

        return rows;
    }
}
