using System.Text;
using FarmEconomics.Files.Importing.Sources;
using FarmEconomics.Files.Inputs;
using FarmEconomics.Files.Workbooks.Reading;
using FarmEconomics.Records;

namespace FarmEconomics.Files.Importing.Drafts;

/// <summary>A line of a drafted mapping as a person reads it.</summary>
/// <param name="Column">The column it fills; blank for what is left out.</param>
/// <param name="From">What it is filled from.</param>
/// <param name="Note">Why; begins with a question mark where somebody has to look.</param>
/// <param name="IsOpen">True for what only the grower knows.</param>
public sealed record DraftLine(string Column, string From, string Note, bool IsOpen);

/// <summary>A mapping drafted from a file: what is seen in it, what is made of it, and what only the grower knows.</summary>
public sealed class ImportDraft
{
    private const int RowsShown = 3;

    private ImportDraft(SourceBlock block, string table, IReadOnlyList<DraftRow> rows, string name)
    {
        Table = table;
        Sees = $"{block.Grid.Name}: {block.Grid.Look}; {(block.IsWithoutHeadings ? "no headings, so the columns are numbered" : $"headings in line {block.Segments[0].HeadingLine}")}; {block.Rows.Count()} rows.";
        Headings = block.Headings;
        Sample = [.. block.Segments[0].Rows.Take(RowsShown)
            .Select(row => (IReadOnlyList<string>)[.. Enumerable.Range(0, block.Headings.Count).Select(row.At)])];
        Lines = [.. rows.Select(row => new DraftLine(row.Column ?? "", From(row), row.Note ?? "", row.IsOpen))];
        var csv = new StringBuilder();
        ImportCsv.Line(csv, [.. ImportRow.Schema.Columns.Select(column => column.Name)]);
        foreach (DraftRow row in rows)
        {
            ImportCsv.Line(csv, row.Fields(name, table));
        }

        Csv = csv.ToString();
    }

    /// <summary>The table the rows seem to be for.</summary>
    public string Table { get; }

    /// <summary>What the file is, in a sentence.</summary>
    public string Sees { get; }

    /// <summary>Its headings.</summary>
    public IReadOnlyList<string> Headings { get; }

    /// <summary>Its first rows.</summary>
    public IReadOnlyList<IReadOnlyList<string>> Sample { get; }

    /// <summary>The mapping, line by line.</summary>
    public IReadOnlyList<DraftLine> Lines { get; }

    /// <summary>The mapping as a file with the columns of <c>imports</c>, to be looked through and kept.</summary>
    public string Csv { get; }

    /// <summary>Drafts a mapping. Nothing is written.</summary>
    /// <param name="request">What is to be imported; its mapping is not looked at.</param>
    /// <param name="headingsAt">The line the headings stand in; null: found.</param>
    /// <param name="dates">Which order days are written in, where it can't be told from the file.</param>
    /// <returns>The draft.</returns>
    /// <exception cref="IOException">The file can't be read, or is another spreadsheet's.</exception>
    /// <exception cref="ArgumentException">No table can be told from the file; say one.</exception>
    public static ImportDraft Of(ImportRequest request, int? headingsAt = null, DatesWritten dates = DatesWritten.Unknown)
    {
        ArgumentNullException.ThrowIfNull(request);
        RecordsReading? records = RecordsImport.Open(request);
        return RecordsImport.Reading(request, () =>
        {
            SheetEntry? sheet = SourceFile.Sheet(request.Source, request.Sheet);
            SourceGrid grid = SourceFile.Read(request.Source, sheet);
            if (grid.Rows.Count == 0)
            {
                throw new InputException(FarmEconomics.Records.Checks.ProblemCodes.EmptyFile, $"{grid.Name} is empty.");
            }

            SourceBlock block = SourceBlock.Find(grid, headingsAt);
            var columns = new SourceColumns(block);
            string table = request.Table is { } said ? RecordsImport.Table(said).Name : TableGuess.Of(columns, records, grid.Name);
            var maker = new DraftMaker(table, columns, block) { Records = records, Dates = dates };
            string name = ImportCsv.Slug(Path.GetFileNameWithoutExtension(request.Source)
                + (request.Sheet is null ? "" : "-" + request.Sheet));
            return new ImportDraft(block, table, maker.Rows(), name);
        });
    }

    private static string From(DraftRow row)
    {
        string from = row.Constant is { } constant ? $"always \"{constant}\"" : row.Source ?? "";
        string when = row.When is null && row.Match is null ? ""
            : $" {(row.Match ?? "is")} {(row.When is null ? "" : $"\"{row.When}\"")}".TrimEnd()
            + (row.Column is null ? "" : $": \"{row.Becomes}\"");
        return from + when + (row.Format is null ? "" : $" [{row.Format}]");
    }
}
