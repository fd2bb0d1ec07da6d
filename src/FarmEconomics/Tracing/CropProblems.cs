using FarmEconomics.Records;

namespace FarmEconomics.Tracing;

/// <summary>
/// What is found wrong while crops are worked side by side, kept by crop and told in one order in the end: by the date of the row, then
/// file order, as if one
/// row after the other had been looked at.
/// </summary>
internal sealed class CropProblems
{
    private readonly List<(int Disposition, Func<Problem> Tell)>[] found;

    internal CropProblems(int crops) => found = [.. Enumerable.Range(0, crops).Select(_ => new List<(int, Func<Problem>)>())];

    internal void Add(int crop, int disposition, Func<Problem> tell) => found[crop].Add((disposition, tell));

    /// <summary>All of them, in order.</summary>
    internal Problem[] Tell(DispositionTable dispositions)
    {
        (int Disposition, Func<Problem> Tell)[] ordered =
            [.. found.SelectMany(crop => crop).OrderBy(item => dispositions.Day[item.Disposition]).ThenBy(item => dispositions.Row[item.Disposition])];
        Problem[] problems = new Problem[ordered.Length];
        RowRanges.ForEach(ordered.Length, (from, to) =>
        {
            for (int i = from; i < to; i++)
            {
                problems[i] = ordered[i].Tell();
            }
        });
        return problems;
    }
}
