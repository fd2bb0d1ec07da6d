using FarmEconomics.Page.Runs;
using FarmEconomics.Reports.Answers;
using FarmEconomics.Reports.Frame;

namespace FarmEconomics.Page.Views;

/// <summary>The tabs on top of every page.</summary>
internal static class Nav
{
    /// <summary>The reports, then notebooks of the grower's own, then the tables.</summary>
    /// <param name="notebooks">Notebooks of the grower's own.</param>
    /// <param name="current">The page's own address without query.</param>
    /// <param name="query">Year and settings, which go along.</param>
    internal static IReadOnlyList<PageTab> Of(IReadOnlyList<NotebookEntry> notebooks, string current, string query = "") =>
        [
            .. ReportCatalog
                .Tabs.Select(report => (Text: report.Tab!, Path: PathOf(report.Id)))
                .Select(tab => new PageTab(tab.Text, Address(tab.Path, query), tab.Path == current)),
            .. notebooks.Select(notebook => new PageTab(
                notebook.ShortTitle,
                Address(notebook.Address, query),
                notebook.Address == current
            )),
            new("Tables", Address("/tables", query), current == "/tables"),
            new("Import", Importing.ImportPages.Path, current == Importing.ImportPages.Path),
            new("Fix records", Fixing.FixView.Path, current == Fixing.FixView.Path),
        ];

    /// <summary>The address of a report without a crop.</summary>
    internal static string PathOf(ReportId id) => id == ReportId.Season ? "/" : "/" + ReportCatalog.Name(id);

    /// <summary>An address with its query, if there is one.</summary>
    internal static string Address(string path, string query) => query.Length == 0 ? path
        : path.IndexOf('#', StringComparison.Ordinal) is >= 0 and int hash ? $"{path[..hash]}?{query}{path[hash..]}" : $"{path}?{query}";
}
