using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Reports.Decisions;

namespace FarmEconomics.Cli.Commands;

/// <summary>A change as a terminal prints it: cash and own hours in the first two lines, whatever follows broken at words.</summary>
internal static class ChangeText
{
    private const int Width = 100;

    internal static string Of(ChangeAnswer answer, Notation notation) =>
        string.Join('\n', [.. ChangeSentences.First(answer, notation), "", .. DecisionSentences.Wrapped(ChangeSentences.Rest(answer, notation), Width)]) + "\n";
}
