using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Tracing;

/// <summary>Who worked how long at what, without a reference to anything.</summary>
/// <param name="Row">The position among the rows of labor; below 0: among the hours added, counted down from -1.</param>
/// <param name="Stage">The stage of the task.</param>
/// <param name="Kind">Who worked.</param>
/// <param name="Hours">Hours.</param>
/// <param name="Window">The crop-year window of the day.</param>
internal readonly record struct LaborHours(int Row, Stage Stage, WorkerKind Kind, decimal Hours, int Window)
{
    internal bool IsAdded => Row < 0;
}

/// <summary>Hours of a row that went one way.</summary>
/// <param name="Use">The row's place.</param>
/// <param name="Target">An enterprise; <see cref="LaborTable.NotAssigned"/>; or a pool, counted down from -2.</param>
/// <param name="Hours">Hours.</param>
/// <param name="Weight">What its part went by.</param>
/// <param name="Estimated">True when a time standard says where the hours went.</param>
internal readonly record struct LaborShare(int Use, int Target, decimal Hours, decimal Weight, bool Estimated);

/// <summary>
/// All labor as rows of plain values: logged rows in file order, then hours added from standards; and their parts, row by row.
/// </summary>
internal sealed class LaborTable
{
    /// <summary>Hours that nothing could take.</summary>
    internal const int NotAssigned = -1;

    private readonly List<IRecordRow> added;

    internal LaborTable(FarmRecords records, IReadOnlyList<Enterprise> enterprises, LaborBuilder built)
    {
        Records = records;
        Enterprises = enterprises;
        added = built.AddedFrom;
        Uses = [.. built.Uses];
        First = new int[Uses.Length + 1];
        foreach (ArraySegment<LaborShare> some in built.Shares)
        {
            foreach (ref readonly LaborShare share in some.AsSpan())
            {
                First[share.Use + 1]++;
            }
        }

        for (int i = 0; i < Uses.Length; i++)
        {
            First[i + 1] += First[i];
        }

        int[] next = First[..^1];
        Shares = new LaborShare[First[^1]];
        foreach (ArraySegment<LaborShare> some in built.Shares)
        {
            foreach (ref readonly LaborShare share in some.AsSpan())
            {
                Shares[next[share.Use]++] = share;
            }
        }
    }

    internal FarmRecords Records { get; }

    internal IReadOnlyList<Enterprise> Enterprises { get; }

    internal LaborHours[] Uses { get; }

    /// <summary>The first part of each row, then the number of parts.</summary>
    internal int[] First { get; }

    internal LaborShare[] Shares { get; }

    internal static int OfPool(Pool pool) => -2 - pool.Index;

    internal IRecordRow Origin(int use) => Uses[use].IsAdded ? added[-1 - Uses[use].Row] : Records.Labor[Uses[use].Row];

    internal LaborRow? Logged(int use) => Uses[use].IsAdded ? null : Records.Labor[Uses[use].Row];

    internal Enterprise? EnterpriseOf(int share) => Shares[share].Target is >= 0 and int enterprise ? Enterprises[enterprise] : null;

    internal Pool? PoolOf(int share) => Shares[share].Target is < NotAssigned and int pool ? Records.Pools[-2 - pool] : null;

    internal LaborPart PartAt(int share) =>
        new(EnterpriseOf(share), PoolOf(share), Shares[share].Hours, Shares[share].Estimated) { Weight = Shares[share].Weight };

    /// <summary>All rows, as views.</summary>
    internal IReadOnlyList<LaborUse> Views() => ViewsOf([.. Enumerable.Range(0, Uses.Length)]);

    /// <summary>Some rows, as views.</summary>
    internal IReadOnlyList<LaborUse> ViewsOf(int[] uses) => new ColumnList<LaborUse>(uses, use => new LaborUse(this, use));
}

/// <summary>Labor while it is traced: rows, and parts of them in whatever order they are found.</summary>
internal sealed class LaborBuilder
{
    private const int SharesInPiece = 512;

    // Parts of a large farm's labor are never copied while they are found: full arrays stay, and those of a piece are taken over.
    private readonly List<(LaborShare[] Items, int Count)> shares = [];

    internal List<LaborHours> Uses { get; } = [];

    /// <summary>The parts found, some at a time.</summary>
    internal IEnumerable<ArraySegment<LaborShare>> Shares =>
        shares.Select(some => new ArraySegment<LaborShare>(some.Items, 0, some.Count));

    internal List<IRecordRow> AddedFrom { get; } = [];

    /// <summary>Adds a row, and tells its place.</summary>
    internal int Add(LaborHours hours)
    {
        Uses.Add(hours);
        return Uses.Count - 1;
    }

    /// <summary>Adds hours that no log holds.</summary>
    internal int Add(IRecordRow origin, Stage stage, WorkerKind kind, decimal hours, int window)
    {
        AddedFrom.Add(origin);
        return Add(new LaborHours(-AddedFrom.Count, stage, kind, hours, window));
    }

    /// <summary>Adds what a piece of the log came to; the piece is used up.</summary>
    internal void Add(LaborBuilder piece)
    {
        int before = Uses.Count;
        Uses.AddRange(piece.Uses);
        foreach ((LaborShare[] items, int count) in piece.shares)
        {
            foreach (ref LaborShare share in items.AsSpan(0, count))
            {
                share = share with { Use = share.Use + before };
            }
        }

        shares.AddRange(piece.shares);
    }

    /// <summary>All hours of a row go one way.</summary>
    internal void Place(int use, int target) => Add(new LaborShare(use, target, Uses[use].Hours, 1m, Estimated: false));

    /// <summary>Spreads the hours of a row over enterprises by weight, in units of 10^-8; they sum to the hours exactly.</summary>
    internal void Spread(int use, List<(Enterprise Enterprise, decimal Weight)> weights, bool estimated)
    {
        if (weights.Count == 1 && Uses[use].Hours != 0m)
        {
            Add(new LaborShare(use, weights[0].Enterprise.Index, Uses[use].Hours, weights[0].Weight, estimated));
            return;
        }

        decimal[] parts = LargestRemainder.SplitExactly(Uses[use].Hours, weights.ConvertAll(item => item.Weight));
        for (int i = 0; i < parts.Length; i++)
        {
            if (parts[i] != 0m)
            {
                Add(new LaborShare(use, weights[i].Enterprise.Index, parts[i], weights[i].Weight, estimated));
            }
        }
    }

    private void Add(LaborShare share)
    {
        if (shares.Count == 0 || shares[^1].Count == SharesInPiece)
        {
            shares.Add((new LaborShare[SharesInPiece], 0));
        }

        (LaborShare[] items, int count) = shares[^1];
        items[count] = share;
        shares[^1] = (items, count + 1);
    }
}
