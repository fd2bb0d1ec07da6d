using System.Globalization;
using System.IO.Compression;
using System.Security;
using System.Text;

namespace FarmEconomics.EndToEnd.Tests.Support;

/// <summary>A workbook of a folder's CSV files, written without the program's own writer (ECMA-376, SpreadsheetML): numbers as numbers, the rest as text.</summary>
internal static class PlainWorkbook
{
    private const string Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private const string Office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    private const string Package = "http://schemas.openxmlformats.org/package/2006";
    private const string Types = "application/vnd.openxmlformats-officedocument.spreadsheetml";

    /// <summary>Writes it.</summary>
    internal static void Write(string folder, string path)
    {
        string[] files = [.. Directory.EnumerateFiles(folder, "*.csv").Order(StringComparer.Ordinal)];
        using ZipArchive zip = ZipFile.Open(path, ZipArchiveMode.Create);
        Add("[Content_Types].xml", $"<Types xmlns=\"{Package}/content-types\"><Default Extension=\"rels\" ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/><Override PartName=\"/xl/workbook.xml\" ContentType=\"{Types}.sheet.main+xml\"/>{Each(i => $"<Override PartName=\"/xl/s{i}.xml\" ContentType=\"{Types}.worksheet+xml\"/>")}</Types>");
        Add("_rels/.rels", $"<Relationships xmlns=\"{Package}/relationships\"><Relationship Id=\"w\" Type=\"{Office}/officeDocument\" Target=\"xl/workbook.xml\"/></Relationships>");
        Add("xl/_rels/workbook.xml.rels", $"<Relationships xmlns=\"{Package}/relationships\">{Each(i => $"<Relationship Id=\"r{i}\" Type=\"{Office}/worksheet\" Target=\"s{i}.xml\"/>")}</Relationships>");
        Add("xl/workbook.xml", $"<workbook xmlns=\"{Main}\" xmlns:r=\"{Office}\"><sheets>{Each(i => $"<sheet name=\"{Path.GetFileNameWithoutExtension(files[i])}\" sheetId=\"{i + 1}\" r:id=\"r{i}\"/>")}</sheets></workbook>");
        for (int i = 0; i < files.Length; i++)
        {
            Add($"xl/s{i}.xml", $"<worksheet xmlns=\"{Main}\"><sheetData>{string.Concat(PlainCsv.Read(File.ReadAllText(files[i])).Select(row => $"<row>{string.Concat(row.Select(Cell))}</row>"))}</sheetData></worksheet>");
        }

        string Each(Func<int, string> text) => string.Concat(Enumerable.Range(0, files.Length).Select(text));

        void Add(string name, string text)
        {
            using Stream stream = zip.CreateEntry(name).Open();
            stream.Write(Encoding.UTF8.GetBytes("<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>" + text));
        }
    }

    private static string Cell(string field) => field.Length == 0 ? "<c/>"
        : decimal.TryParse(field, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal number) ? $"<c><v>{number.ToString(CultureInfo.InvariantCulture)}</v></c>"
        : $"<c t=\"inlineStr\"><is><t xml:space=\"preserve\">{SecurityElement.Escape(field)}</t></is></c>";
}
