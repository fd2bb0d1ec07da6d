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
        // Notes are mostly kept in the order of their dates.
        int[]? byDate = IsByDate(dayOf) ? null : InOrderOfDate(dayOf);
        int[][] next = new int[RowRanges.PiecesOf(cropOf.Length)][];
        RowRanges.ForEachPiece(cropOf.Length, (piece, from, to) => next[piece] = Counted(from, to));
        Starts = TurnedToPlaces(next, crops);
        (RowOf, ByDate) = (new int[cropOf.Length], new int[cropOf.Length]);
        RowRanges.ForEachPiece(cropOf.Length, (piece, from, to) =>
        {
            int[] places = next[piece];
            for (int i = from; i < to; i++)
            {
                int row = byDate is null ? i : byDate[i];
                int place = places[cropOf[row]]++;
                (RowOf[place], ByDate[i]) = (row, place);
            }
        });

        int[] Counted(int from, int to)
        {
            int[] counts = new int[crops];
            for (int i = from; i < to; i++)
            {
                counts[cropOf[byDate is null ? i : byDate[i]]]++;
            }

            return counts;
        }
    }

    /// <summary>The first place of each crop, then the number of rows.</summary>
    internal int[] Starts { get; }

    /// <summary>The row that lies at each place.</summary>
    internal int[] RowOf { get; }

    /// <summary>The places in the order of all crops together: by date, then file order.</summary>
    internal int[] ByDate { get; }

    /// <summary>How many rows a crop has.</summary>
    internal int CountOf(int crop) => Starts[crop + 1] - Starts[crop];

    /// <summary>The crop a place belongs to.</summary>
    internal int CropAt(int place)
    {
        int low = 0;
        int high = Starts.Length;
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

    /// <summary>How many rows of each crop a piece has becomes where the piece's rows of it begin.</summary>
    /// <returns>The first place of each crop, then the number of rows.</returns>
    private static int[] TurnedToPlaces(int[][] pieces, int crops)
    {
        int[] starts = new int[crops + 1];
        int place = 0;
        for (int crop = 0; crop < crops; crop++)
        {
            starts[crop] = place;
            foreach (int[] piece in pieces)
            {
                (piece[crop], place) = (place, place + piece[crop]);
            }
        }

        starts[crops] = place;
        return starts;
    }

    private static bool IsByDate(int[] dayOf)
    {
        for (int row = 1; row < dayOf.Length; row++)
        {
            if (dayOf[row] < dayOf[row - 1])
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Row numbers by day, file order within a day; counted out, not compared, because there may be millions.</summary>
    private static int[] InOrderOfDate(int[] dayOf)
    {
        int[] rows = new int[dayOf.Length];
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
