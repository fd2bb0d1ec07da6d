namespace FarmEconomics.Tracing;

/// <summary>
/// The parts of all dispositions while they are drawn, each crop's at its own place in columns of all crops: once all are drawn the
/// columns are pushed together and stay, so that millions of parts need no second place.
/// </summary>
internal sealed class DrawnParts
{
    private readonly int[] source;
    private readonly long[] quantity;

    internal DrawnParts(DispositionTable dispositions, LotTable lots)
    {
        Dispositions = dispositions;
        Ends = new int[dispositions.Count + 1];
        int[] rooms = [.. Enumerable.Range(0, dispositions.Layout.Starts.Length - 1).Select(Room)];
        (source, quantity) = (new int[rooms.Sum()], new long[rooms.Sum()]);
        Crops = new PartColumns[rooms.Length];
        for (int crop = 0, start = 0; crop < rooms.Length; start += rooms[crop++])
        {
            Crops[crop] = new PartColumns(source, quantity, start, rooms[crop]);
        }

        // A part ends a disposition or a lot; only what met no lot is spread over more.
        int Room(int crop) => dispositions.Layout.CountOf(crop) + lots.Layout.CountOf(crop);
    }

    internal DispositionTable Dispositions { get; }

    internal PartColumns[] Crops { get; }

    /// <summary>How many parts of its crop there are up to the end of each disposition, from the second place on.</summary>
    internal int[] Ends { get; }

    /// <summary>All sources and quantities, crop after crop.</summary>
    /// <param name="starts">Where each crop's parts begin, then how many there are.</param>
    internal (int[] Source, long[] Quantity) Joined(int[] starts)
    {
        if (!Array.TrueForAll(Crops, crop => crop.IsInPlace))
        {
            (int[] sources, long[] quantities) = (new int[starts[^1]], new long[starts[^1]]);
            RowRanges.ByCrop(Crops.Length, starts[^1], crop => Crops[crop].CopyTo(sources, quantities, starts[crop]));
            return (sources, quantities);
        }

        // One after another: a crop's parts move down to where those of the crop before may have been.
        for (int crop = 0; crop < Crops.Length; crop++)
        {
            Crops[crop].CopyTo(source, quantity, starts[crop]);
        }

        return (source, quantity);
    }
}

/// <summary>One crop's parts while they are drawn.</summary>
/// <param name="source">A column of all crops.</param>
/// <param name="quantity">Another.</param>
/// <param name="start">Where the crop's room begins in both.</param>
/// <param name="room">How many parts have room there; with more, the crop moves to columns of its own.</param>
internal sealed class PartColumns(int[] source, long[] quantity, int start, int room)
{
    internal int Count { get; private set; }

    internal bool IsInPlace { get; private set; } = true;

    internal int SourceAt(int part) => source[start + part];

    internal void Add(int from, long amount)
    {
        if (Count == room)
        {
            room = (2 * Count) + 4;
            (int[] sources, long[] quantities) = (new int[room], new long[room]);
            CopyTo(sources, quantities, 0);
            (source, quantity, start, IsInPlace) = (sources, quantities, 0, false);
        }

        source[start + Count] = from;
        quantity[start + Count++] = amount;
    }

    internal void CopyTo(int[] sources, long[] quantities, int at)
    {
        Array.Copy(source, start, sources, at, Count);
        Array.Copy(quantity, start, quantities, at, Count);
    }
}
