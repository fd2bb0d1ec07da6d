namespace FarmEconomics.Tracing;

/// <summary>
/// The parts of all dispositions in columns, in the order of the dispositions. Nearly every disposition has a single part, which
/// carries all its money;
/// only of the others are the parts' cents held.
/// </summary>
internal sealed class PartTable
{
    /// <summary>A part that no planting could take.</summary>
    internal const int NotAssigned = -1;

    private const int WholeMoney = -1;

    internal PartTable(DispositionTable dispositions, LotTable lots, PartColumns[] crops)
    {
        Dispositions = dispositions;
        Lots = lots;
        int[] starts = new int[crops.Length + 1];
        for (int i = 0; i < crops.Length; i++)
        {
            starts[i + 1] = starts[i] + crops[i].Count;
        }

        First = new int[dispositions.Count + 1];
        First[^1] = starts[^1];
        (Disposition, Source, Money, Quantity) = (new int[starts[^1]], new int[starts[^1]], new int[starts[^1]], new long[starts[^1]]);
        Array.Fill(Money, WholeMoney);
        Cents = new long[crops.Length][];
        RowRanges.Run(crops.Length, crop =>
        {
            PartColumns own = crops[crop];
            own.Source.AsSpan(0, own.Count).CopyTo(Source.AsSpan(starts[crop]));
            own.Quantity.AsSpan(0, own.Count).CopyTo(Quantity.AsSpan(starts[crop]));
            int first = dispositions.Layout.Starts[crop];
            for (int i = 0, from = 0; i < own.Ends.Length; from = own.Ends[i], i++)
            {
                First[first + i] = starts[crop] + from;
                Disposition.AsSpan(starts[crop] + from, own.Ends[i] - from).Fill(first + i);
            }

            crops[crop] = PartColumns.None;
        });
    }

    internal DispositionTable Dispositions { get; }

    internal LotTable Lots { get; }

    /// <summary>The first part of each disposition, then the number of parts.</summary>
    internal int[] First { get; }

    internal int[] Disposition { get; }

    /// <summary>
    /// The lot drawn on; without one: <see cref="NotAssigned"/>, or the enterprise it was spread to, counted down from -2.
    /// </summary>
    internal int[] Source { get; }

    internal long[] Quantity { get; }

    /// <summary>
    /// Where a part's cents stand among its crop's, amount, fee and list value one after another; -1: it has all of its disposition's.
    /// </summary>
    internal int[] Money { get; }

    /// <summary>The cents of parts, crop by crop.</summary>
    internal long[][] Cents { get; }

    internal static int Spread(int enterprise) => -2 - enterprise;

    /// <summary>The enterprise a part landed on, or <see cref="NotAssigned"/>.</summary>
    internal int EnterpriseOf(int part) => Source[part] is var source && source >= 0 ? Lots.Enterprise[source] : source == NotAssigned ? NotAssigned : -2 - source;

    internal int DaysHeld(int part) => Math.Max(0, Dispositions.Day[Disposition[part]] - Lots.Day[Source[part]]);

    internal long Amount(int part) => Money[part] < 0 ? Dispositions.Amount[Disposition[part]] : CentsAt(part, 0);

    internal long Fee(int part) => Money[part] < 0 ? Dispositions.Fee(Disposition[part]) : CentsAt(part, 1);

    internal long ListValue(int part) => Money[part] < 0 ? Dispositions.ListValue[Disposition[part]] : CentsAt(part, 2);

    /// <summary>The crop year it landed in; the window of its date when it isn't assigned.</summary>
    internal int CropYear(int part) => EnterpriseOf(part) is >= 0 and int enterprise
        ? Lots.Enterprises[enterprise].CropYear
        : Lots.Records.Settings.WindowOf(DateOnly.FromDayNumber(Dispositions.Day[Disposition[part]]));

    private long CentsAt(int part, int measure) => Cents[Dispositions.Layout.CropAt(Disposition[part])][Money[part] + measure];
}

/// <summary>One crop's parts while they are drawn.</summary>
internal sealed class PartColumns
{
    /// <param name="dispositions">How many dispositions the crop has.</param>
    /// <param name="room">How many parts to make room for at first.</param>
    internal PartColumns(int dispositions, int room)
    {
        Ends = new int[dispositions];
        Source = new int[room];
        Quantity = new long[room];
    }

    internal static PartColumns None { get; } = new(0, 0);

    internal int Count { get; private set; }

    /// <summary>How many parts there are up to the end of each disposition.</summary>
    internal int[] Ends { get; }

    internal int[] Source { get; private set; }

    internal long[] Quantity { get; private set; }

    internal void Add(int source, long quantity)
    {
        if (Count == Source.Length)
        {
            (int[] sources, long[] quantities) = (Source, Quantity);
            Array.Resize(ref sources, (2 * Count) + 4);
            Array.Resize(ref quantities, (2 * Count) + 4);
            (Source, Quantity) = (sources, quantities);
        }

        Source[Count] = source;
        Quantity[Count++] = quantity;
    }
}
