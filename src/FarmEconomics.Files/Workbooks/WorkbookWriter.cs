using System.IO.Compression;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using FarmEconomics.Files.Places;

namespace FarmEconomics.Files.Workbooks;

/// <summary>
/// Writes a workbook in the XLSX format (ISO/IEC 29500) with the format's own kit. The same workbook gives the same bytes: no clock, no
/// random names.
/// </summary>
public static class WorkbookWriter
{
    // The earliest time a ZIP archive can hold: every part carries it.
    private static readonly DateTimeOffset NoTime = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>Writes a workbook to a file, which is replaced whole once all of it is ready.</summary>
    /// <param name="workbook">The workbook, with at least one sheet.</param>
    /// <param name="path">The file.</param>
    /// <exception cref="ArgumentException">No sheet, or a cell holds more than a spreadsheet can.</exception>
    /// <exception cref="IOException">The file can't be written.</exception>
    public static void Write(Workbook workbook, string path)
    {
        _ = WholeFile.Write(Path.GetFullPath(path), ToBytes(workbook), null);
    }

    /// <summary>The workbook as the bytes of a file.</summary>
    /// <param name="workbook">The workbook, with at least one sheet.</param>
    /// <returns>The bytes.</returns>
    /// <exception cref="ArgumentException">No sheet, or a cell holds more than a spreadsheet can.</exception>
    public static byte[] ToBytes(Workbook workbook)
    {
        ArgumentNullException.ThrowIfNull(workbook);
        if (workbook.Sheets.Count == 0)
        {
            throw new ArgumentException("A workbook needs a sheet.", nameof(workbook));
        }

        using MemoryStream package = new();
        using (SpreadsheetDocument document = SpreadsheetDocument.Create(package, SpreadsheetDocumentType.Workbook))
        {
            Fill(document, workbook);
        }

        return WithoutTimes(package);
    }

    private static void Fill(SpreadsheetDocument document, Workbook workbook)
    {
        WorkbookPart root = document.AddWorkbookPart();
        document.ChangeIdOfPart(root, "workbook");
        WorkbookStyles styles = new();
        Sheets sheets = new();
        DefinedNames names = new();
        for (int i = 0; i < workbook.Sheets.Count; i++)
        {
            WorkbookSheet sheet = workbook.Sheets[i];
            string id = $"sheet{i + 1}";
            WorksheetPart part = root.AddNewPart<WorksheetPart>(id);
            SheetXml xml = new(sheet, styles, selected: i == 0);
            part.Worksheet = xml.Make();
            WorkbookNotes.Add(part, xml);
            sheets.Append(new Sheet { Id = id, SheetId = (uint)i + 1, Name = sheet.Name });
            if (sheet.FrozenRows > 0)
            {
                names.Append(
                    new DefinedName($"{Workbook.Quoted(sheet.Name)}!$1:${sheet.FrozenRows}")
                    {
                        Name = "_xlnm.Print_Titles",
                        LocalSheetId = (uint)i,
                    }
                );
            }
        }

        root.Workbook = new DocumentFormat.OpenXml.Spreadsheet.Workbook(new BookViews(new WorkbookView()), sheets);
        if (names.HasChildren)
        {
            root.Workbook.Append(names);
        }

        root.AddNewPart<WorkbookStylesPart>("styles").Stylesheet = styles.Make();
    }

    private static byte[] WithoutTimes(MemoryStream package)
    {
        using ZipArchive written = new(package, ZipArchiveMode.Read, leaveOpen: true);
        using MemoryStream clean = new();
        using (ZipArchive archive = new(clean, ZipArchiveMode.Create, leaveOpen: true))
        {
            // The list of content types goes first, as readers that stream expect.
            foreach (
                ZipArchiveEntry entry in written
                    .Entries.OrderBy(entry => entry.FullName != "[Content_Types].xml")
                    .ThenBy(entry => entry.FullName, StringComparer.Ordinal)
            )
            {
                ZipArchiveEntry copy = archive.CreateEntry(entry.FullName, CompressionLevel.Optimal);
                copy.LastWriteTime = NoTime;
                using Stream from = entry.Open();
                using Stream to = copy.Open();
                from.CopyTo(to);
            }
        }

        return clean.ToArray();
    }
}
