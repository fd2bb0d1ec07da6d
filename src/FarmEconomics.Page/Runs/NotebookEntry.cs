using FarmEconomics.Notebooks;
using FarmEconomics.Notebooks.Pages;
using FarmEconomics.Reports.Frame;

namespace FarmEconomics.Page.Runs;

/// <summary>A notebook that may be run, as it was when the program started.</summary>
internal sealed class NotebookEntry
{
    internal NotebookEntry(string path)
    {
        FilePath = Path.GetFullPath(path);
        Name = Path.GetFileNameWithoutExtension(path);
        NotebookDocument document = NotebookDocument.Load(FilePath);
        Question = document.Title ?? Name;
        Parameters = NotebookParameter.Of(document);
        ShortTitle = NotebookPage.ShortTitle(Name);
    }

    internal string FilePath { get; }

    /// <summary>Its name in addresses: the file's without extension.</summary>
    internal string Name { get; }

    /// <summary>The question it answers: its first heading.</summary>
    internal string Question { get; }

    /// <summary>One or two words for the navigation.</summary>
    internal string ShortTitle { get; }

    internal IReadOnlyList<ReportField> Parameters { get; }
}
