using System.Text;
using FarmEconomics.Records.Names;

namespace FarmEconomics.Files;

/// <summary>Proposed aliases as the text of an <c>aliases.csv</c>.</summary>
public static class AliasFile
{
    // The rows may be put into a table that is parted by another of these.
    private const string Separators = ",;\t";

    /// <summary>Writes proposals as rows of <c>aliases</c>.</summary>
    /// <param name="proposals">The proposals.</param>
    /// <returns>CSV with a heading row.</returns>
    public static string Text(IEnumerable<AliasProposal> proposals)
    {
        ArgumentNullException.ThrowIfNull(proposals);
        var text = new StringBuilder("table,alias,name\n");
        foreach (AliasProposal proposal in proposals)
        {
            text.Append(Line(proposal)).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>One proposal as a row of <c>aliases</c>.</summary>
    internal static string Line(AliasProposal proposal) =>
        $"{proposal.Table},{CsvField.Of(proposal.Alias, Separators)},{CsvField.Of(proposal.Name, Separators)}";
}
