using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Reports.Decisions;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Cli.Commands;

/// <summary>A change as a terminal prints it: cash and own hours in the first two lines, whatever follows broken at words.</summary>
internal static class ChangeText
{
    internal static string Of(ChangeAnswer answer, Notation notation) =>
        string.Join(
            '\n',
            [.. ChangeSentences.First(answer, notation).Select(TextLines.Of), "", TextLines.Of(ChangeSentences.Rest(answer, notation))]
        ) + "\n";
}
