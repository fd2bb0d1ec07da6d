using System.Globalization;
using FarmEconomics.Notebooks;
using FarmEconomics.Notebooks.Pages;
using FarmEconomics.Reports.Frame;

namespace FarmEconomics.Page.Runs;

/// <summary>A notebook that may be run, as its file was when it was read.</summary>
internal sealed class NotebookEntry
{
    internal NotebookEntry(string path)
    {
        FilePath = Path.GetFullPath(path);
        Name = Path.GetFileNameWithoutExtension(path);
        Version = VersionNow;
        NotebookDocument document = NotebookDocument.Load(FilePath);
        Question = document.Title ?? Name;
        Parameters = NotebookParameter.Of(document);
        ShortTitle = NotebookPage.ShortTitle(Name);
    }

    internal string FilePath { get; }

    /// <summary>Its name in addresses: the file's without extension.</summary>
    internal string Name { get; }

    /// <summary>Its page's address: any letter may stand in a file's name, not in an address.</summary>
    internal string Address => "/notebook/" + Uri.EscapeDataString(Name);

    /// <summary>When the file was last written: a notebook that was changed is another one, with other pages.</summary>
    internal string Version { get; }

    /// <summary>The question it answers: its first heading.</summary>
    internal string Question { get; }

    /// <summary>One or two words for the navigation.</summary>
    internal string ShortTitle { get; }

    internal IReadOnlyList<ReportField> Parameters { get; }

    /// <summary>The notebook as its file is now; as it was while it can't be read, which running it tells.</summary>
    internal NotebookEntry Now()
    {
        try
        {
            return VersionNow == Version ? this : new NotebookEntry(FilePath);
        }
        catch (Exception unread) when (unread is NotebookException or IOException or UnauthorizedAccessException)
        {
            return this;
        }
    }

    private string VersionNow => File.GetLastWriteTimeUtc(FilePath).Ticks.ToString(CultureInfo.InvariantCulture);
}
