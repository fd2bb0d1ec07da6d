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

    internal PartTable(LotTable lots, DrawnParts drawn)
    {
        (Dispositions, Lots) = (drawn.Dispositions, lots);
        PartColumns[] crops = drawn.Crops;
        int[] starts = new int[crops.Length + 1];
        for (int i = 0; i < crops.Length; i++)
        {
            starts[i + 1] = starts[i] + crops[i].Count;
        }

        Count = starts[^1];
        (Source, Quantity) = drawn.Joined(starts);
        First = drawn.Ends;
        (Disposition, Money) = (new int[Count], new int[Count]);
        Cents = new long[crops.Length][];
        RowRanges.ByCrop(crops.Length, Count, crop =>
        {
            // So far, ends are counted from the crop's first part.
            int from = starts[crop];
            for (int i = Dispositions.Layout.Starts[crop]; i < Dispositions.Layout.Starts[crop + 1]; i++)
            {
                int end = starts[crop] + First[i + 1];
                Disposition.AsSpan(from, end - from).Fill(i);
                First[i + 1] = from = end;
            }
        });
    }

    internal DispositionTable Dispositions { get; }

    internal LotTable Lots { get; }

    /// <summary>How many parts there are; columns may have room for more.</summary>
    internal int Count { get; }

    /// <summary>The first part of each disposition, then the number of parts.</summary>
    internal int[] First { get; }

    internal int[] Disposition { get; }

    /// <summary>
    /// The lot drawn on; without one: <see cref="NotAssigned"/>, or the enterprise it was spread to, counted down from -2.
    /// </summary>
    internal int[] Source { get; }

    internal long[] Quantity { get; }

    /// <summary>
    /// Where a part's cents stand among its crop's, counted from 1, amount, fee and list value one after another; 0: it has all of its
    /// disposition's.
    /// </summary>
    internal int[] Money { get; }

    /// <summary>The cents of parts, crop by crop.</summary>
    internal long[][] Cents { get; }

    internal static int Spread(int enterprise) => -2 - enterprise;

    /// <summary>The enterprise a part landed on, or <see cref="NotAssigned"/>, which counted down from -2 is itself.</summary>
    internal int EnterpriseOf(int part) => Source[part] is var source && source >= 0 ? Lots.Enterprise[source] : -2 - source;

    internal int DaysHeld(int part) => Math.Max(0, Dispositions.Day[Disposition[part]] - Lots.Day[Source[part]]);

    internal long Amount(int part) => Money[part] == 0 ? Dispositions.Amount[Disposition[part]] : CentsAt(part, 0);

    internal long Fee(int part) => Money[part] == 0 ? Dispositions.Fee(Disposition[part]) : CentsAt(part, 1);

    internal long ListValue(int part) => Money[part] == 0 ? Dispositions.ListValue[Disposition[part]] : CentsAt(part, 2);

    /// <summary>The crop year it landed in; the window of its date when it isn't assigned.</summary>
    internal int CropYear(int part) => EnterpriseOf(part) is >= 0 and int enterprise
        ? Lots.Enterprises[enterprise].CropYear
        : Lots.Records.Settings.WindowOf(DateOnly.FromDayNumber(Dispositions.Day[Disposition[part]]));

    private long CentsAt(int part, int measure) => Cents[Dispositions.Layout.CropAt(Disposition[part])][Money[part] - 1 + measure];
}
