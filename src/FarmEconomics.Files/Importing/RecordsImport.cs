using CsvHelper;
using FarmEconomics.Files.Importing.Sources;
using FarmEconomics.Files.Inputs;
using FarmEconomics.Files.Workbooks.Reading;
using FarmEconomics.Records;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Importing;

/// <summary>Brings rows of files of other programs into the records, by a mapping that is drafted from the file, looked through once, and
/// remembered.</summary>
public static class RecordsImport
{
    /// <summary>Works out what an import would add. Nothing is written.</summary>
    /// <param name="source">The file of the other program.</param>
    /// <param name="table">The table its rows are for.</param>
    /// <param name="map">A file with the columns of <c>imports</c>, or the name of a mapping the records remember.</param>
    /// <param name="folder">The records folder, or null to look at the rows by themselves.</param>
    /// <param name="sheet">The sheet of a workbook; null: its first one that is not hidden.</param>
    /// <returns>The plan.</returns>
    /// <exception cref="IOException">A file can't be read.</exception>
    /// <exception cref="ArgumentException">There is no such table or mapping, or the source lacks a heading the mapping names.</exception>
    public static ImportPlan Plan(string source, string table, string map, string? folder, string? sheet = null) =>
        Plan(new ImportRequest(source) { Table = table, Map = map, Folder = folder, Sheet = sheet });

    /// <summary>Works out what an import would add. Nothing is written.</summary>
    /// <param name="request">What is to be imported.</param>
    /// <returns>The plan.</returns>
    /// <exception cref="IOException">A file can't be read.</exception>
    /// <exception cref="ArgumentException">There is no such table or mapping, or the source lacks a heading the mapping names.</exception>
    public static ImportPlan Plan(ImportRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        RecordsReading? records = Open(request);
        return Reading(request, () =>
        {
            SheetEntry? sheet = SourceFile.Sheet(request.Source, request.Sheet);
            string name = sheet is null ? Path.GetFileName(request.Source) : SheetPlace.Name(request.Source, sheet.Name);
            ChosenMapping chosen = ChosenMapping.Of(request, records, sheet);
            var plan = new ImportPlan(chosen.Schema.Name, name, request.Folder) { Problems = chosen.Problems };
            if (chosen.Problems.Count == 0)
            {
                new ImportFiller(plan, chosen, records, request).Fill(sheet);
            }

            return plan;
        });
    }

    /// <summary>True when the records remember a mapping whose headings the file has.</summary>
    /// <param name="request">What is to be imported.</param>
    /// <returns>Whether no mapping has to be drafted.</returns>
    /// <exception cref="IOException">A file can't be read.</exception>
    public static bool Remembers(ImportRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        RecordsReading? records = Open(request);
        return records is not null
            && Reading(request, () =>
            ChosenMapping.Remembered(request, records, SourceFile.Sheet(request.Source, request.Sheet)) is not null);
    }

    /// <summary>The sheets of a workbook that are not hidden and hold rows.</summary>
    /// <param name="source">The file.</param>
    /// <returns>Their names; none for a file without sheets.</returns>
    /// <exception cref="IOException">The file can't be read.</exception>
    public static IReadOnlyList<string> Sheets(string source) => !File.Exists(source) ? []
        : Reading(new ImportRequest(source), () => SourceFile.Sheets(source)
            .Where(name => SourceFile.Read(source, SourceFile.Sheet(source, name)).Rows.Count > 1).ToList());

    /// <summary>The records an import goes into, read; null when none are named.</summary>
    internal static RecordsReading? Open(ImportRequest request)
    {
        if (!File.Exists(request.Source) && !Directory.Exists(request.Source))
        {
            throw new FileNotFoundException($"There is no file {request.Source}.");
        }

        if (request.Folder is { } folder && !Directory.Exists(folder))
        {
            throw new ArgumentException(File.Exists(folder) && SheetPlace.IsWorkbook(folder)
                ? $"{folder} is a workbook, which an import never changes: imported rows go into a file of their own, "
                    + "which a workbook has no place for. Save each of its sheets as CSV (crops.csv, sales.csv, ...) in a folder "
                    + "and give that one, or leave --into out, look at the rows, "
                    + $"and copy them into the sheet {request.Table ?? "they are for"} yourself."
                : $"There is no records folder \"{folder}\".");
        }

        return request.Folder is null ? null : RecordsFolder.Read(request.Folder);
    }

    /// <summary>Does what reads the source; what stops it becomes an error of the file.</summary>
    internal static T Reading<T>(ImportRequest request, Func<T> read)
    {
        try
        {
            PlainFile.Require(request.Source, Path.GetFileName(request.Source));
            return read();
        }
        catch (InputException stopped)
        {
            throw new IOException(stopped.Message, stopped);
        }
        catch (CsvFormatException fault)
        {
            throw new IOException($"{Path.GetFileName(request.Source)} holds a row longer than any record; often a quote is never closed.",
                fault);
        }
    }

    /// <summary>The tables that rows can be imported into.</summary>
    public static IEnumerable<string> Tables =>
        RecordSchema.Tables.Where(HoldsRows).Select(table => table.Name);

    /// <summary>The table of a name that rows can be imported into.</summary>
    internal static TableSchema Table(string table) => RecordSchema.Find(table.Trim()) is { } known && HoldsRows(known) ? known
        : throw new ArgumentException($"There is no table {table} that rows can be imported into; these there are: "
            + $"{string.Join(", ", Tables)}.");

    private static bool HoldsRows(TableSchema table) => !table.IsAid && table != SettingRow.Schema;
}
