using System.IO.Compression;
using System.Xml;
using DocumentFormat.OpenXml.Packaging;
using FarmEconomics.Files.Inputs;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Workbooks.Reading;

/// <summary>A sheet of a workbook as its list of sheets names it.</summary>
internal sealed record SheetEntry(string Name, string Id, bool Hidden);

/// <summary>
/// Reads workbooks part by part as streams: nothing of a workbook is held as a tree, and what it unpacks to is known and limited
/// before anything is unpacked.
/// </summary>
internal static class WorkbookReader
{
    private const long MaxUnpacked = 1L << 30;
    private const long FreeOfRatio = 64L << 20;
    private const int MaxRatio = 100;
    private const int MaxParts = 10_000;
    private const int MaxSheets = 1_000;

    // The lists that say what a workbook holds are read as a whole by the library that opens it.
    private const long MaxList = 16L << 20;

    /// <summary>The sheets in their order.</summary>
    /// <exception cref="IOException">The file is no workbook, or unpacks to more than is read.</exception>
    public static IReadOnlyList<SheetEntry> Sheets(string path) => Read(path, (_, workbook) => workbook.Sheets);

    /// <summary>True for a workbook that counts its days from 1904, as some computers did.</summary>
    /// <exception cref="IOException">The file is no workbook, or unpacks to more than is read.</exception>
    public static bool CountsFrom1904(string path) => Read(path, (_, workbook) => workbook.Date1904);

    /// <summary>The rows of one sheet as CSV; numbers have the farm's decimal mark.</summary>
    public static ConvertedSheet Convert(string path, string sheetId, string file, TableSchema schema, FarmSettings settings) =>
        Convert(
            path,
            sheetId,
            _ => settings.DecimalMark,
            (values, stream) => new SheetConverter(file, schema, settings.Notation, values).Convert(stream),
            file
        );

    /// <summary>
    /// All rows of a sheet that is no table of the farm: what its columns hold isn't known yet, so that a percentage keeps its sign
    /// (6.5% is no 0.065). Numbers have the mark that is given for their column, by number from 1, or are days as the workbook counts
    /// them.
    /// </summary>
    public static ConvertedSheet ConvertAll(string path, string sheetId, string file, Func<int, SheetColumn> columnOf)
    {
        Dictionary<int, ColumnSchema> columns = [];
        var none = new TableSchema("source", "a row of another program", []);
        return Convert(path, sheetId, column => column is null ? '.' : columnOf(columns.First(known => known.Value == column).Key).Mark,
            (values, stream) => new SheetConverter(file, none, Notation.Default, values) { EveryColumn = Column }.Convert(stream), file);

        ColumnSchema Column(int at) =>
            columns.TryGetValue(at, out ColumnSchema? known)
                ? known
                : columns[at] = new ColumnSchema(
                    columnOf(at).Name, columnOf(at).CountsDays ? ColumnType.Date : ColumnType.Text, SheetPlace.Letters(at));
    }

    private static ConvertedSheet Convert(
        string path,
        string sheetId,
        Func<ColumnSchema?, char> markOf,
        Func<CellValues, Stream, ConvertedSheet> convert,
        string file
    ) => Read(path, (document, workbook) =>
        {
            if (document.GetPartById(sheetId) is not WorksheetPart part)
            {
                throw new InputException(ProblemCodes.FileUnreadable, $"{file} is no sheet with cells.");
            }

            CellValues values = new(
                document.SharedStringTablePart is { } strings ? SharedStrings.Read(strings.GetStream(FileMode.Open, FileAccess.Read)) : [],
                document.WorkbookStylesPart is { } styles
                    ? CellLooks.Read(styles.GetStream(FileMode.Open, FileAccess.Read))
                    : CellLooks.None,
                workbook.Date1904,
                markOf);
            using Stream stream = part.GetStream(FileMode.Open, FileAccess.Read);
            return convert(values, stream);
        });

    /// <summary>A reader of untrusted XML: no document types, nothing fetched from elsewhere.</summary>
    internal static XmlReader Xml(Stream stream) => XmlReader.Create(stream, new XmlReaderSettings
    {
        DtdProcessing = DtdProcessing.Prohibit,
        XmlResolver = null,
        IgnoreComments = true,
        IgnoreProcessingInstructions = true,
        CloseInput = true,
    });

    private static T Read<T>(string path, Func<WorkbookPart, WorkbookParts, T> read)
    {
        string name = Path.GetFileName(path);
        try
        {
            PlainFile.Require(path, name);
            using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            Guard(stream, name);
            stream.Position = 0;
            using SpreadsheetDocument document = SpreadsheetDocument.Open(stream, isEditable: false);
            WorkbookPart part = document.WorkbookPart ?? throw new InvalidDataException("it holds no workbook");
            return read(part, WorkbookParts.Read(part));
        }
        catch (InputException fault) when (fault.Code == ProblemCodes.FileUnreadable)
        {
            throw new IOException(fault.Message, fault);
        }
        catch (Exception fault)
            when (fault
                    is InvalidDataException
                        or XmlException
                        or FormatException
                        or OpenXmlPackageException
                        or ArgumentException
                        or KeyNotFoundException
                        or InvalidOperationException
                        or NotSupportedException
            )
        {
            throw new IOException($"{name} can't be read as a workbook (.xlsx): {fault.Message.TrimEnd('.')}. "
                + "Save it again from a spreadsheet as .xlsx, without a password.", fault);
        }
    }

    // The sizes that the file declares are the most that is ever unpacked of it.
    private static void Guard(FileStream stream, string name)
    {
        using ZipArchive zip = new(stream, ZipArchiveMode.Read, leaveOpen: true);
        if (zip.Entries.Count > MaxParts)
        {
            throw new IOException(Notation.Default.Text($"{name} is not read: it holds {zip.Entries.Count:N0} parts."));
        }

        if (zip.Entries.FirstOrDefault(entry => IsList(entry.FullName) && (entry.Length < 0 || entry.Length > MaxList)) is { } list)
        {
            throw new IOException(
                $"{name} is not read: its part {list.FullName} has more than {MaxList >> 20} MB, which no farm's records do."
            );
        }

        long unpacked = zip.Entries.Sum(entry => entry.Length < 0 || entry.Length > MaxUnpacked ? MaxUnpacked + 1 : entry.Length);
        if (unpacked > MaxUnpacked || (unpacked > FreeOfRatio && unpacked / MaxRatio > stream.Length))
        {
            throw new IOException(Notation.Default.Text(
                $"{name} is not read: it is {stream.Length / 1024:N0} KB and would unpack to {unpacked / 1048576:N0} MB or more, "
                    + $"which no farm's records do."));
        }
    }

    private static bool IsList(string part) =>
        part.EndsWith(".rels", StringComparison.OrdinalIgnoreCase)
        || part.EndsWith("[Content_Types].xml", StringComparison.OrdinalIgnoreCase)
        || part.EndsWith("workbook.xml", StringComparison.OrdinalIgnoreCase);

    private sealed record WorkbookParts(IReadOnlyList<SheetEntry> Sheets, bool Date1904)
    {
        public static WorkbookParts Read(WorkbookPart part)
        {
            List<SheetEntry> sheets = [];
            bool date1904 = false;
            using XmlReader xml = Xml(part.GetStream(FileMode.Open, FileAccess.Read));
            while (xml.Read())
            {
                if (xml.NodeType != XmlNodeType.Element)
                {
                    continue;
                }

                if (xml.LocalName == "workbookPr")
                {
                    date1904 = xml.GetAttribute("date1904") is "1" or "true";
                }
                else if (xml.LocalName == "sheet")
                {
                    if (sheets.Count == MaxSheets)
                    {
                        throw new InvalidDataException(Notation.Default.Text($"it holds more than {MaxSheets:N0} sheets"));
                    }

                    sheets.Add(
                        new SheetEntry(
                            xml.GetAttribute("name") ?? "",
                            RelationshipId(xml),
                            xml.GetAttribute("state") is "hidden" or "veryHidden"
                        )
                    );
                }
            }

            return new WorkbookParts(sheets, date1904);
        }

        // The attribute is r:id; its namespace differs between the two editions of the standard.
        private static string RelationshipId(XmlReader xml)
        {
            string id = "";
            while (xml.MoveToNextAttribute())
            {
                id = xml.LocalName == "id" && xml.NamespaceURI.EndsWith("/relationships", StringComparison.Ordinal) ? xml.Value : id;
            }

            xml.MoveToElement();
            return id;
        }
    }
}
