using FarmEconomics.Notebooks;

namespace FarmEconomics.Cli.Review;

/// <summary>A notebook's question: its first heading.</summary>
internal static class NotebookTitle
{
    internal static string Of(NotebookDocument document)
    {
        foreach (NotebookCell cell in document.Cells)
        {
            foreach (string line in cell.Source.Split('\n'))
            {
                if (cell.Type == "markdown" && line.StartsWith("# ", StringComparison.Ordinal))
                {
                    return line[2..].Trim();
                }
            }
        }

        return "Notebook";
    }
}
