using System.Text;
using FarmEconomics.Files.Results;
using FarmEconomics.Files.Workbooks;
using FarmEconomics.Page.Farm;
using FarmEconomics.Page.Fields;
using FarmEconomics.Page.Views;
using FarmEconomics.Records;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace FarmEconomics.Page;

/// <summary>The result tables to take along.</summary>
internal sealed partial class PageRoutes
{
    private sealed record TableFiles(int Year, Notation Notation, IReadOnlyDictionary<string, byte[]> Files, byte[] Workbook);

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
                        [.. ResultTables.All.Select(table => (table.Name, table.What, Rows(made.Value.Files[table.Name])))]
                    ),
                    "/tables"
                )
                : NoSuchPage("There are no tables: the records have errors, or tell nothing of that crop year.")
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

    private static int Rows(byte[] csv) => Math.Max(0, Encoding.UTF8.GetString(csv).Count(c => c == '\n') - 1);

    private (TableFiles Value, string Query)? Tables(HttpContext context)
    {
        FarmSnapshot now = cache.Look();
        FieldForm form = Form(now, SeasonFields, Given(context.Request.Query));
        if (form.Faults.Count > 0)
        {
            return null;
        }

        TableFiles? made = now.Farm(form.Settings, form.SkipBadRows).WithSeason(form.Year, (folder, season) =>
        {
            DirectoryInfo temporary = Directory.CreateTempSubdirectory("farm-tables-");
            try
            {
                Workbook book = new();
                ResultTables.Write(season, folder.ProblemsWith(season), temporary.FullName, book);
                Dictionary<string, byte[]> files = temporary.EnumerateFiles()
                    .ToDictionary(file => file.Name, file => File.ReadAllBytes(file.FullName), StringComparer.Ordinal);
                return new TableFiles(season.CropYear, season.Notation, files, WorkbookWriter.ToBytes(book));
            }
            finally
            {
                temporary.Delete(recursive: true);
            }
        });
        return made is null ? null : (made, NotebookView.YearAndSettings(form));
    }
}
