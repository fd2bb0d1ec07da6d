using FarmEconomics.Records;

namespace FarmEconomics.Budgets.Completeness;

/// <summary>Something the records don't hold, or hold doubtfully, and what it does to the answer.</summary>
/// <param name="What">What is missing or doubtful, in a sentence.</param>
/// <param name="Changes">Which figures are not available or weak because of it, in a sentence.</param>
/// <param name="Money">The money in what is touched: the worst gap touches the most.</param>
/// <param name="First">The first row to look at, or null.</param>
public sealed record RecordGap(string What, string Changes, decimal Money, SourceLine? First = null);
