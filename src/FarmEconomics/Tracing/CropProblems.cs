using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Tracing;

/// <summary>Says what is wrong with something sold or used.</summary>
/// <param name="disposition">Its place.</param>
/// <param name="detail">A number that the sentence needs: a part, a quantity, money.</param>
internal delegate Problem TellDisposition(int disposition, long detail);

/// <summary>
/// What is found wrong while crops are worked side by side, kept by crop and told in one order in the end: by the date of the row, then
/// file order, as if one row after the other had been looked at. Of one kind in one file only as many are put into words as a list of
/// problems keeps; the last of them says how many more there are.
/// </summary>
internal sealed class CropProblems
{
    private readonly List<Found>[] found;

    internal CropProblems(int crops) => found = [.. Enumerable.Range(0, crops).Select(_ => new List<Found>())];

    /// <summary>Adds a problem; all of one kind name the same teller.</summary>
    internal void Add(int crop, int disposition, TellDisposition tell, long detail = 0) =>
        found[crop].Add(new Found(disposition, detail, tell));

    /// <summary>All of them, in order.</summary>
    internal List<Problem> Tell(DispositionTable dispositions)
    {
        RecordTable sales = dispositions.Records.Sales.Table;
        List<Problem> problems = [];
        Dictionary<(TellDisposition Tell, string File), Told> causes = [];
        IEnumerable<Found> inOrder = found.SelectMany(crop => crop)
            .OrderBy(one => dispositions.Day[one.Disposition]).ThenBy(one => dispositions.Row[one.Disposition]);
        foreach (Found one in inOrder)
        {
            string file = sales.Source(dispositions.Records.Sales.IndexOf(dispositions.Row[one.Disposition])).File;
            if (!causes.TryGetValue((one.Tell, file), out Told? told))
            {
                causes.Add((one.Tell, file), told = new Told());
            }

            if (told.Count == ProblemLog.KeptPerCause)
            {
                told.Further++;
                continue;
            }

            told.Count++;
            told.Last = problems.Count;
            problems.Add(one.Tell(one.Disposition, one.Detail));
        }

        foreach (Told told in causes.Values)
        {
            problems[told.Last] = problems[told.Last] with { Further = told.Further };
        }

        return problems;
    }

    // A class: lists of it are compiled ahead of time, which those of a tuple are not.
    private sealed record Found(int Disposition, long Detail, TellDisposition Tell);

    private sealed class Told
    {
        internal int Count { get; set; }

        internal int Last { get; set; }

        internal int Further { get; set; }
    }
}
