using CsvHelper;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Reading;

/// <summary>
/// Tells rows that are no records: a totals row, and remarks under the table. They are named by a warning and not read. Both are
/// told narrowly, so that a record in error stays an error.
/// </summary>
internal sealed class RowsApart(TableSchema schema, ColumnSchema?[] columns, string file, List<Problem> problems)
{
    private static readonly HashSet<string> TotalWords = ["total", "totals", "sum", "subtotal", "subtotals", "grandtotal", "sums"];

    private readonly int[] required =
    [
        .. Enumerable
            .Range(0, columns.Length)
            .Where(i => columns[i] is { } column && (column.Required || schema.OneOf.Contains(column.Name))),
    ];

    // Apart from the others: what takes remarks back must not take these, and a file may hold millions of them.
    private readonly ProblemLog totals = new();
    private readonly List<(int FirstProblem, SourceLine Source, string Text)> notes = [];

    private readonly List<string> namesInError = [];

    /// <summary>True for a row that starts with "Total" and lacks a value no record may lack.</summary>
    public bool IsTotal(CsvReader reader, SourceLine source)
    {
        int first = 0;
        while (reader.IsEmpty(first))
        {
            first++;
        }

        // A look at the length and the first byte (a date's is a digit) spares the text of nearly every row.
        ReadOnlySpan<byte> bytes = reader.GetSpan(first);
        if (
            bytes.Length is < 3 or > 14
            || char.IsAsciiDigit((char)bytes[0])
            || !TotalWords.Contains(HeadingKey.Of(reader.GetString(first).TrimEnd(':')))
        )
        {
            return false;
        }

        if (!LacksRequired(reader, first))
        {
            return false;
        }

        totals.Add(ProblemCatalog.Make(ProblemCodes.NoRecord, source, null, "The row is a total and is not read."));
        return true;
    }

    // Apart from IsTotal, which every row goes through: what the lambda holds would be made anew for each.
    private bool LacksRequired(CsvReader reader, int first) =>
        Array.Exists(required, i => i != first && columns[i]!.Required && (i >= reader.FieldCount || reader.IsEmpty(i)));

    public void NextIsRecord() => KeepNotes();

    /// <summary>A row in error is held to be a remark when it is one text of several words, as long as nothing else follows.</summary>
    /// <returns>False for what may be a remark.</returns>
    public bool NextIsInError(CsvReader reader, RowReading row, bool fits, string name)
    {
        int filled = -1;
        int count = 0;
        for (int i = 0; i < reader.FieldCount; i++)
        {
            if (!reader.IsEmpty(i))
            {
                filled = i;
                count++;
            }
        }

        string text = count == 1 ? reader.GetString(filled) : "";
        if (fits && required.Length > 1 && text.Any(char.IsLetter) && text.Contains(' ', StringComparison.Ordinal))
        {
            notes.Add((row.FirstProblem, row.Source, text));
            return false;
        }

        KeepNotes();
        namesInError.Add(name);
        return true;
    }

    /// <summary>The names that rows in error would have defined: such a name is known. A remark defines none.</summary>
    public IReadOnlyList<string> NamesInError => namesInError;

    // What looked like a remark is followed by a record, so it is a row in error after all; its one text may be a name.
    private void KeepNotes()
    {
        if (notes.Count == 0)
        {
            return;
        }

        namesInError.AddRange(notes.Select(note => note.Text));
        notes.Clear();
    }

    /// <summary>Puts a warning in place of the errors of the remarks at the end, and adds those of the totals.</summary>
    /// <returns>How many rows they are.</returns>
    public int TakeNotes()
    {
        if (notes.Count > 0)
        {
            problems.RemoveRange(notes[0].FirstProblem, problems.Count - notes[0].FirstProblem);
            problems.AddRange(
                notes.Select(note =>
                    ProblemCatalog.Make(
                        ProblemCodes.NoRecord,
                        note.Source,
                        null,
                        $"The row under the table in {file} is a remark and is not read."
                    )
                )
            );
        }

        problems.AddRange(totals.Problems);
        return notes.Count;
    }
}
