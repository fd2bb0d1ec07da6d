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
    private readonly List<(int Disposition, long Detail, TellDisposition Tell)>[] found;

    internal CropProblems(int crops) => found = [.. Enumerable.Range(0, crops).Select(_ => new List<(int, long, TellDisposition)>())];

    /// <summary>Adds a problem; all of one kind name the same teller.</summary>
    internal void Add(int crop, int disposition, TellDisposition tell, long detail = 0) => found[crop].Add((disposition, detail, tell));

    /// <summary>All of them, in order.</summary>
    internal List<Problem> Tell(DispositionTable dispositions)
    {
        RecordTable sales = dispositions.Records.Sales.Table;
        List<Problem> problems = [];
        Dictionary<(TellDisposition Tell, string File), Told> causes = [];
        foreach (
            (int disposition, long detail, TellDisposition tell) in found
                .SelectMany(crop => crop)
                .OrderBy(item => dispositions.Day[item.Disposition])
                .ThenBy(item => dispositions.Row[item.Disposition])
        )
        {
            string file = sales.Source(dispositions.Records.Sales.IndexOf(dispositions.Row[disposition])).File;
            if (!causes.TryGetValue((tell, file), out Told? told))
            {
                causes.Add((tell, file), told = new Told());
            }

            if (told.Count == ProblemLog.KeptPerCause)
            {
                told.Further++;
                continue;
            }

            told.Count++;
            told.Last = problems.Count;
            problems.Add(tell(disposition, detail));
        }

        foreach (Told told in causes.Values.Where(told => told.Further > 0))
        {
            problems[told.Last] = problems[told.Last] with { Further = told.Further };
        }

        return problems;
    }

    private sealed class Told
    {
        internal int Count { get; set; }

        internal int Last { get; set; }

        internal int Further { get; set; }
    }
}
