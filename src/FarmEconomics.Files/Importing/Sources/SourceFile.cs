using System.Text;
using CsvHelper;
using FarmEconomics.Files.Inputs;
using FarmEconomics.Files.Places;
using FarmEconomics.Files.Reading;
using FarmEconomics.Files.Workbooks.Reading;
using FarmEconomics.Records.Checks;

namespace FarmEconomics.Files.Importing.Sources;

/// <summary>Opens files of other programs: text in columns with any of four separators, in any encoding spreadsheets write, and
/// workbooks.</summary>
internal static class SourceFile
{
    private const int LinesLookedAt = 60;
    private const string Separators = ",;\t|";

    private static readonly string[] OtherSpreadsheets = [".xls", ".xlsm", ".xlsb", ".ods", ".fods", ".numbers", ".gsheet", ".wk1", ".wks",
        ".123", ".qpw"];

    /// <summary>The sheet to read.</summary>
    /// <param name="path">The source.</param>
    /// <param name="name">The sheet's name; null: the first one that is not hidden and has rows.</param>
    /// <returns>The sheet; null when the source is no workbook.</returns>
    /// <exception cref="ArgumentException">There is no such sheet, or a sheet of a file that has none is asked for.</exception>
    public static SheetEntry? Sheet(string path, string? name)
    {
        if (!SheetPlace.IsWorkbook(path))
        {
            return name is null ? null
                : throw new ArgumentException($"{Path.GetFileName(path)} is no workbook (.xlsx) and has no sheets; leave --sheet out.");
        }

        IReadOnlyList<SheetEntry> sheets = WorkbookReader.Sheets(path);
        return sheets.FirstOrDefault(sheet => name is null ? !sheet.Hidden
            : sheet.Name.Trim().Equals(name.Trim(), StringComparison.OrdinalIgnoreCase))
            ?? throw new ArgumentException(name is null
                ? $"{Path.GetFileName(path)} has no sheet that is not hidden."
                : $"{Path.GetFileName(path)} has no sheet \"{name}\"; it has {string.Join(", ", sheets.Select(sheet => sheet.Name))}.");
    }

    /// <summary>The names of the sheets that are not hidden; none for a file without sheets.</summary>
    public static IReadOnlyList<string> Sheets(string path) => SheetPlace.IsWorkbook(path)
        ? [.. WorkbookReader.Sheets(path).Where(sheet => !sheet.Hidden).Select(sheet => sheet.Name)] : [];

    /// <summary>Reads all rows.</summary>
    /// <param name="path">The file.</param>
    /// <param name="sheet">The sheet of a workbook.</param>
    /// <param name="columnOf">What is known of a column of a sheet, from 1; null: its letters and a point.</param>
    /// <exception cref="InputException">It can't be read, or is no file that is read here.</exception>
    public static SourceGrid Read(string path, SheetEntry? sheet, Func<int, SheetColumn>? columnOf = null)
    {
        string name = Path.GetFileName(path);
        PlainFile.Require(path, name);
        if (sheet is not null)
        {
            string place = SheetPlace.Name(path, sheet.Name);
            columnOf ??= at => new SheetColumn($"column {at}");
            ConvertedSheet converted = WorkbookReader.ConvertAll(path, sheet.Id, place, columnOf);
            return new SourceGrid(place,
                Rows(converted.Csv, ',', line => converted.RowOfLine[Math.Clamp(line - 1, 0, converted.RowOfLine.Length - 1)], []))
            {
                Look = $"sheet \"{sheet.Name}\" of a workbook",
                Faults = converted.Faults,
            };
        }

        byte[] bytes = Bytes(path, name);
        Encoding encoding = TextEncodings.Of(bytes);
        string text = encoding.GetString(bytes.AsSpan(encoding.Preamble.Length)).Replace("\r\n", "\n",
            StringComparison.Ordinal).Replace('\r', '\n');
        // No spreadsheet writes this letter into a text; pictures and programs' own files are full of it.
        if (text.Contains('\0', StringComparison.Ordinal))
        {
            throw new InputException(ProblemCodes.FileUnreadable,
                $"{name} is no table: it holds no text. Of a picture, type the rows into a spreadsheet and save it as CSV; "
                    + "of a program's own file, ask the program for a CSV download.");
        }

        char separator = SeparatorOf(ref text, out int skipped);
        Dictionary<int, List<CellFault>> faults = [];
        return new SourceGrid(name, Rows(Encoding.UTF8.GetBytes(text), separator, line => line + skipped, faults))
        {
            IsText = true,
            Faults = faults,
            Look = $"text in columns, {SeparatorWord(separator)} between them, letters in {TextEncodings.NameOf(encoding)}",
        };
    }

    private static byte[] Bytes(string path, string name)
    {
        byte[] bytes;
        try
        {
            if (FolderPlace.FileAt(path)?.Length > CsvInput.MaxBytes)
            {
                throw new InputException(ProblemCodes.FileTooLarge,
                    $"{name} has more than {CsvInput.MaxBytes / 1048576} MB, which is more than is read.");
            }

            bytes = File.ReadAllBytes(path);
        }
        catch (UnauthorizedAccessException)
        {
            throw new InputException(ProblemCodes.FileUnreadable, $"{name} can't be opened: you have no right to read it.");
        }

        bool other = OtherSpreadsheets.Contains(Path.GetExtension(path), StringComparer.OrdinalIgnoreCase);
        if (other || bytes.AsSpan().StartsWith("PK\u0003\u0004"u8) || bytes.AsSpan().StartsWith((byte[])[0xD0, 0xCF, 0x11, 0xE0]))
        {
            throw new InputException(ProblemCodes.FileUnreadable,
                $"{name} is a spreadsheet's own file: open it there, choose Save as (or Download), the kind \"Excel workbook (.xlsx)\" or "
                    + "\"CSV\", and import that file.");
        }

        return bytes.AsSpan().StartsWith("%PDF"u8)
            ? throw new InputException(ProblemCodes.FileUnreadable,
                $"{name} is a PDF, which shows a table and doesn't hold one: ask the bank or the program for a CSV download.")
            : bytes;
    }

    private static List<SourceCells> Rows(byte[] csv, char separator, Func<int, int> lineOf, Dictionary<int, List<CellFault>> faults)
    {
        List<SourceCells> rows = [];
        CsvReaderOptions options = TableFile.Options(separator) with { Encoding = null, HasHeader = false, OnMalformedRecord = Remember };
        using CsvReader reader = CsvReader.Create(csv, options);
        while (reader.Read())
        {
            var row = new SourceCells(lineOf((int)reader.LineNumber), reader.Current.ToArray());
            if (row.Filled > 0)
            {
                rows.Add(row);
            }
        }

        return HeadingLines.Joined(rows);

        // A stray quote inside a text (5" pots) is kept as a letter and harms nothing.
        void Remember(CsvMalformedRecord record) => _ = record.Reason == CsvMalformedReason.StrayQuote || faults.TryAdd(
            lineOf((int)record.LineNumber), [new CellFault(ProblemCodes.BadQuotes, null, TableFile.QuoteFault(record.Reason), -1)]);
    }

    /// <summary>The separator that parts most rows into the same number of fields; a line <c>sep=;</c> says it.</summary>
    private static char SeparatorOf(ref string text, out int skipped)
    {
        skipped = 0;
        if (text.Length > 5 && text.StartsWith("sep=", StringComparison.OrdinalIgnoreCase) && text[5] == '\n')
        {
            char said = text[4];
            text = text[6..];
            skipped = 1;
            return said;
        }

        char best = ',';
        (int Rows, int Fields) most = (0, 0);
        foreach (char separator in Separators)
        {
            int[] counts = Counts(text, separator);
            IGrouping<int, int>? usual = counts.Where(count => count > 0).GroupBy(count => count)
                .MaxBy(group => group.Count() * (1 + Math.Min(group.Key, 8)));
            (int Rows, int Fields) found = usual is null ? (0, 0) : (usual.Count(), usual.Key);
            if (found.Rows * Math.Min(found.Fields, 4) > most.Rows * Math.Min(most.Fields, 4))
            {
                (best, most) = (separator, found);
            }
        }

        return best;
    }

    private static int[] Counts(string text, char separator)
    {
        List<int> counts = [0];
        bool quoted = false;
        foreach (char c in text)
        {
            quoted ^= c == '"';
            counts[^1] += c == separator && !quoted ? 1 : 0;
            if (c == '\n' && !quoted)
            {
                if (counts.Count == LinesLookedAt)
                {
                    break;
                }

                counts.Add(0);
            }
        }

        return [.. counts];
    }

    private static string SeparatorWord(char separator) => separator switch
    {
        ',' => "commas",
        ';' => "semicolons",
        '\t' => "tabs",
        _ =>
        $"\"{separator}\""
    };
}
