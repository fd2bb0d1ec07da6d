using FarmEconomics.Notebooks.Pages;
using FarmEconomics.Page.Runs;

namespace FarmEconomics.Page.Views;

/// <summary>The links on top of every page.</summary>
internal static class Nav
{
    internal static IReadOnlyList<PageLink> Of(IReadOnlyList<NotebookEntry> notebooks, string current) =>
    [
        new("The farm", "/", current == "/"),
        .. notebooks.Select(notebook => new PageLink(notebook.ShortTitle, $"/notebook/{notebook.Name}", current == notebook.Name)),
        new("Tables", "/tables", current == "/tables"),
    ];

    /// <summary>An address with its query, if there is one.</summary>
    internal static string Address(string path, string query) => query.Length > 0 ? $"{path}?{query}" : path;
}
