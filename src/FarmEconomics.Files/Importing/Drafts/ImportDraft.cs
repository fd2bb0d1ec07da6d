using System.Text;
using FarmEconomics.Files.Importing.Sources;
using FarmEconomics.Files.Inputs;
using FarmEconomics.Files.Workbooks.Reading;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Importing.Drafts;

/// <summary>A line of a drafted mapping as a person reads it.</summary>
/// <param name="Column">The column it fills; blank for what is left out.</param>
/// <param name="From">What it is filled from.</param>
/// <param name="Note">Why; begins with a question mark where somebody has to look.</param>
/// <param name="IsOpen">True for what only the grower knows.</param>
public sealed record DraftLine(string Column, string From, string Note, bool IsOpen);

/// <summary>A line of a drafted mapping that asks the grower something.</summary>
/// <param name="Line">Its place in <see cref="ImportDraft.Lines"/>.</param>
/// <param name="Column">The column it fills.</param>
/// <param name="About">What of the file it is about: a heading, or what a value begins with; blank: all rows.</param>
/// <param name="Why">What is asked, or why it is guessed so.</param>
/// <param name="Answer">What is guessed; blank: nothing.</param>
/// <param name="IsOpen">True when nothing can be read before it is answered.</param>
public sealed record DraftQuestion(int Line, string Column, string About, string Why, string Answer, bool IsOpen)
{
    /// <summary>The answers to choose from, each with what it means; none where a text is asked for.</summary>
    public IReadOnlyList<KeyValuePair<string, string>> Readings { get; init; } = [];

    /// <summary>The columns of the file that may hold it, each as an answer with what it means.</summary>
    public IReadOnlyList<KeyValuePair<string, string>> Columns { get; init; } = [];

    /// <summary>The table whose names are answers; null: any text.</summary>
    public string? NamesOf { get; init; }
}

/// <summary>A table of a file that can be drafted by itself.</summary>
/// <param name="HeadingLine">The line its headings stand in.</param>
/// <param name="Rows">How many rows it has.</param>
/// <param name="Headings">Its headings.</param>
public sealed record DraftBlock(int HeadingLine, int Rows, IReadOnlyList<string> Headings);

/// <summary>A mapping drafted from a file: what is seen in it, what is made of it, and what only the grower knows.</summary>
public sealed class ImportDraft
{
    private const int RowsShown = 3;
    private readonly IReadOnlyList<DraftRow> rows;
    private readonly string name;

    private ImportDraft(SourceBlock block, string table, IReadOnlyList<DraftRow> rows, string name)
    {
        Table = table;
        int count = block.Rows.Count();
        string headings = block.IsWithoutHeadings
            ? "no headings, so the columns are numbered"
            : $"headings in line {block.Segments[0].HeadingLine}";
        Sees = $"{block.Grid.Name}: {block.Grid.Look}; {headings}; {count} {(count == 1 ? "row" : "rows")}.";
        string[] above = [.. rows.Select(row => ImportWords.LabelAbove(row.Source ?? "")).OfType<string>().Distinct()];
        Headings = [.. above.Select(label => label.Length > 0 ? label : ImportWords.Above), .. block.Headings];
        Sample = [.. Shown(block, above.Length > 0).Select(shown => (IReadOnlyList<string>)
            [
                .. above.Select(shown.Part.TextAbove),
                .. Enumerable.Range(0, block.Headings.Count).Select(shown.Row.At),
            ])];
        Lines = [.. rows.Select(row => new DraftLine(row.Column ?? "", From(row), row.Note ?? "", row.IsOpen))];
        Questions = [.. rows.Select((row, at) => (row, at)).Where(pair => pair.row.IsAsked).Select(pair => Question(pair.row, pair.at))];
        Others = [.. block.Others.Select(other => new DraftBlock(other.HeadingLine, other.Rows.Count, other.Headings))];
        (this.rows, this.name) = (rows, name);
        Csv = With(new Dictionary<int, string>());
    }

    /// <summary>The table the rows seem to be for.</summary>
    public string Table { get; }

    /// <summary>What the file is, in a sentence.</summary>
    public string Sees { get; }

    /// <summary>Its headings, those of what is read from above them first.</summary>
    public IReadOnlyList<string> Headings { get; }

    /// <summary>Its first rows; where something is read from above, the first of each part.</summary>
    public IReadOnlyList<IReadOnlyList<string>> Sample { get; }

    /// <summary>The mapping, line by line.</summary>
    public IReadOnlyList<DraftLine> Lines { get; }

    /// <summary>The mapping as a file with the columns of <c>imports</c>, to be looked through and kept.</summary>
    public string Csv { get; }

    /// <summary>What the grower is asked, in the order of the lines.</summary>
    public IReadOnlyList<DraftQuestion> Questions { get; }

    /// <summary>Other tables of the same file or sheet, which are drafted one at a time.</summary>
    public IReadOnlyList<DraftBlock> Others { get; }

    /// <summary>The mapping with answers in place of its questions.</summary>
    /// <param name="answers">The answers, by the place of the line.</param>
    /// <returns>The same as <see cref="Csv"/>, answered.</returns>
    public string With(IReadOnlyDictionary<int, string> answers)
    {
        ArgumentNullException.ThrowIfNull(answers);
        var csv = new StringBuilder();
        ImportCsv.Line(csv, [.. ImportRow.Schema.Columns.Select(column => column.Name)]);
        foreach ((int at, DraftRow row) in rows.Index())
        {
            ImportCsv.Line(csv, row.With(answers.GetValueOrDefault(at, "")).Fields(name, Table));
        }

        return csv.ToString();
    }

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
                throw new InputException(ProblemCodes.EmptyFile, $"{grid.Name} is empty.");
            }

            SourceBlock block = SourceBlock.Find(grid, headingsAt);
            if (block.HeadingsAlone is { } alone)
            {
                throw new InputException(ProblemCodes.EmptyFile,
                    $"{grid.Name} holds headings ({string.Join(", ", alone.Take(8))}) and no row below them.");
            }

            var columns = new SourceColumns(block);
            string table = request.Table is { } said
                ? RecordsImport.Table(said).Name
                : TableGuess.Of(columns, records, string.Join(' ', block.Above.SelectMany(row => row.Fields).Prepend(grid.Name)));
            var maker = new DraftMaker(table, columns, block) { Records = records, Dates = dates };
            string name = ImportCsv.Slug(Path.GetFileNameWithoutExtension(request.Source)
                + (request.Sheet is null ? "" : "-" + request.Sheet));
            return new ImportDraft(block, table, sheet is null ? maker.Rows() : InItsCalendar(request.Source, maker.Rows()), name);
        });
    }

    // A day in an example is of the calendar most workbooks have.
    private static IReadOnlyList<DraftRow> InItsCalendar(string source, IReadOnlyList<DraftRow> rows) =>
        !rows.Any(IsSerial) || !WorkbookReader.CountsFrom1904(source) ? rows
            : [.. rows.Select(row => !IsSerial(row) ? row
                : row with { Note = row.Note?.StartsWith('?') == true ? $"{row.Note}; {From1904}" : From1904 })];

    private const string From1904 = "this workbook counts its days from 1904, four years later";

    private static bool IsSerial(DraftRow row) => row.Format == ImportWords.Serial;

    /// <summary>What is to be done with it, in sentences; none where no line needs a look.</summary>
    /// <param name="map">The file it is written to.</param>
    internal IEnumerable<string> WhatToDo(string map)
    {
        int open = Lines.Count(line => line.IsOpen);
        if (open > 0)
        {
            yield return $"{open} of them only you know: open {map} in a spreadsheet, put the answer in place of each \"?\" (or keep one "
                + "of two forms), save, and type the same again.";
        }
        else if (Lines.Any(line => line.Note.StartsWith('?')))
        {
            yield return "Lines with ? are worth a look; change them in that file and type the same again.";
        }

        DraftQuestion[] columns = [.. Questions.Where(question => question.IsOpen && question.Columns.Count > 0)];
        if (columns.Length > 0)
        {
            string asked = string.Join(", ", columns.Select(question => question.Column));
            yield return $"Where a column of the file holds the answer ({asked}): "
                + "leave constant blank and put the column's heading under source_column.";
        }
    }

    // What stands above differs from part to part: a row of each shows it.
    private static IEnumerable<(SourceSegment Part, SourceCells Row)> Shown(SourceBlock block, bool parts) => (parts
        ? block.Segments.SelectMany(part => part.Rows.Take(1), (part, row) => (part, row))
        : block.Segments[0].Rows.Select(row => (block.Segments[0], row))).Take(RowsShown);

    private DraftQuestion Question(DraftRow row, int at) =>
        new(at, row.Column ?? "", row.When ?? row.Source ?? "", row.Note?.TrimStart('?', ' ') ?? "", row.Answer, row.IsOpen)
        {
            Readings =
            [
                .. row.Forms.Select(
                    (form, of) => new KeyValuePair<string, string>(form, of < row.Readings.Count ? row.Readings[of] : form)
                ),
            ],
            Columns =
            [
                .. row.Instead.Select((column, of) => new KeyValuePair<string, string>(DraftRow.AnswerOf(of),
                    $"the column {column.Source}: {column.Note?.TrimStart('?', ' ')}")),
            ],
            NamesOf = row.Column is null ? null : RecordSchema.Find(Table)?.Find(row.Column)?.RefersTo,
        };

    private static string From(DraftRow row)
    {
        string from = row.Constant is { } constant ? $"always \"{constant}\"" : row.Source ?? "";
        string when = row.When is null && row.Match is null ? ""
            : $" {(row.Match ?? "is")} {(row.When is null ? "" : $"\"{row.When}\"")}".TrimEnd()
            + (row.Column is null ? "" : $": \"{row.Becomes}\"");
        return from + when + (row.Format is null ? "" : $" [{row.Format}]");
    }
}
