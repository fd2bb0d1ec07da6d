namespace FarmEconomics.Tracing;

/// <summary>
/// Work over many rows in pieces, side by side. Each piece writes to its own rows only, so that every run gives the same.
/// </summary>
internal static class RowRanges
{
    private const int RowsPerPiece = 65_536;
    private const int FewRows = 4_096;

    /// <summary>Rows that are done sooner than a second thread is awake.</summary>
    private const int DoneAtOnce = 16_384;

    /// <param name="rows">How many rows there are.</param>
    /// <param name="work">Does the rows from the first to before the second.</param>
    internal static void ForEach(int rows, Action<int, int> work) => ForEachPiece(rows, (_, from, to) => work(from, to));

    /// <param name="rows">How many rows there are.</param>
    /// <param name="work">Does those of the piece of that number, from the first to before the second.</param>
    internal static void ForEachPiece(int rows, Action<int, int, int> work) =>
        Run(PiecesOf(rows), piece => work(piece, piece * RowsPerPiece, Math.Min(rows, (piece + 1) * RowsPerPiece)));

    /// <summary>How many pieces so many rows make.</summary>
    internal static int PiecesOf(int rows) => (rows + RowsPerPiece - 1) / RowsPerPiece;

    /// <summary>What pieces of a few thousand rows give, in the order of the rows.</summary>
    /// <param name="rows">How many rows there are.</param>
    /// <param name="work">Does the rows from the first to before the second.</param>
    internal static T[] Map<T>(int rows, Func<int, int, T> work)
    {
        T[] results = new T[(rows + FewRows - 1) / FewRows];
        Run(results.Length, piece => results[piece] = work(piece * FewRows, Math.Min(rows, (piece + 1) * FewRows)));
        return results;
    }

    /// <summary>Work crop by crop over the rows of a table.</summary>
    /// <param name="crops">How many crops there are.</param>
    /// <param name="rows">How many rows they have together.</param>
    /// <param name="work">Does those of a crop.</param>
    internal static void ByCrop(int crops, int rows, Action<int> work)
    {
        if (rows >= DoneAtOnce)
        {
            Run(crops, work);
            return;
        }

        for (int crop = 0; crop < crops; crop++)
        {
            work(crop);
        }
    }

    /// <summary>Work of several pieces; one of a single piece stays on its thread.</summary>
    internal static void Run(int pieces, Action<int> work)
    {
        if (pieces == 1)
        {
            work(0);
            return;
        }

        try
        {
            Parallel.For(0, pieces, work);
        }
        catch (AggregateException failed)
        {
            System.Runtime.ExceptionServices.ExceptionDispatchInfo.Throw(failed.InnerExceptions[0]);
        }
    }
}
