using FarmEconomics.Files.Results;
using FarmEconomics.Page.Farm;
using FarmEconomics.Page.Fields;
using FarmEconomics.Page.Views;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace FarmEconomics.Page;

/// <summary>The result tables to take along.</summary>
internal sealed partial class PageRoutes
{
    private void MapTables(WebApplication app)
    {
        app.MapGet("/tables", (HttpContext context) =>
            Tables(context) is { } made
                ? Page(
                    $"The tables of crop year {made.Value.Year}",
                    TablesView.Render(
                        made.Value.Year,
                        made.Query,
                        made.Value.Notation,
                        [.. ResultTables.All.Select(table => (table.Name, table.What, made.Value.Rows(table.Name)))]
                    ),
                    "/tables"
                )
                : Page("No tables yet", TablesView.None(), "/tables")
        );
        app.MapGet("/tables/{name}", (HttpContext context, string name) =>
        {
            if (Tables(context) is not { } made)
            {
                return NoSuchPage("There are no tables: the records have errors, or tell nothing of that crop year.");
            }

            byte[]? content = name == "review.xlsx" ? made.Value.Workbook : made.Value.Files.GetValueOrDefault(name);
            return content is null
                ? NoSuchPage("There is no such table.")
                : Results.File(
                    content,
                    name.EndsWith(".xlsx", StringComparison.Ordinal)
                        ? "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"
                        : "text/csv; charset=utf-8",
                    $"{made.Value.Year}-{name}"
                );
        });
    }

    private (SeasonTables Value, string Query)? Tables(HttpContext context)
    {
        FarmSnapshot now = cache.Look();
        FieldForm form = Form(now, SeasonFields, Given(context.Request.Query));
        return form.Faults.Count == 0 && now.Farm(form.Settings, form.SkipBadRows).Tables(form.Year) is { } made
            ? (made, NotebookView.YearAndSettings(form)) : null;
    }
}
