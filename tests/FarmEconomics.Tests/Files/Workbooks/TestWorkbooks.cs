using System.IO.Compression;
using System.Text;
using CsvHelper;
using FarmEconomics.Files.Workbooks;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Tests.Files.Workbooks;

/// <summary>Workbooks made for one test: from a folder of CSV, or from the XML of their sheets.</summary>
internal static class TestWorkbooks
{
    /// <summary>A workbook with a sheet for each CSV file, typed as a grower's would be: numbers as numbers, days as days.</summary>
    public static string FromFolder(string folder)
    {
        var workbook = new Workbook();
        foreach (string file in Directory.EnumerateFiles(folder, "*.csv").Order(StringComparer.Ordinal))
        {
            string name = Path.GetFileNameWithoutExtension(file);
            WorkbookSheet sheet = workbook.Sheet(name);
            using CsvReader reader = CsvReader.FromFile(file, new CsvReaderOptions { HasHeader = false });
            ColumnSchema?[]? columns = null;
            while (reader.Read())
            {
                string[] fields = reader.Current.ToArray();
                bool isHeading = columns is null;
                columns ??= [.. fields.Select(field => RecordSchema.Find(name)?.Find(field))];
                sheet.Row([.. fields.Select((field, i) => isHeading ? WorkbookCell.Text(field) : Cell(field, i < columns.Length ? columns[i] : null))]);
            }
        }

        string path = NewPath();
        WorkbookWriter.Write(workbook, path);
        return path;
    }

    /// <summary>A workbook with exactly these sheets; <c>hidden</c> is the state of a sheet that isn't shown.</summary>
    public static string Raw(params (string Name, string Inside, string State)[] sheets)
    {
        string path = NewPath();
        using ZipArchive zip = ZipFile.Open(path, ZipArchiveMode.Create);
        const string Head = """<?xml version="1.0" encoding="UTF-8" standalone="yes"?>""";
        const string Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
        const string Office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
        const string Types = "application/vnd.openxmlformats-officedocument.spreadsheetml";
        Add("[Content_Types].xml", $"""
            <Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="{Types}.sheet.main+xml"/><Override PartName="/xl/styles.xml" ContentType="{Types}.styles+xml"/>{Each(i => $"<Override PartName=\"/xl/s{i}.xml\" ContentType=\"{Types}.worksheet+xml\"/>")}</Types>
            """);
        Add("_rels/.rels", $"""<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="w" Type="{Office}/officeDocument" Target="xl/workbook.xml"/></Relationships>""");
        Add("xl/_rels/workbook.xml.rels", $"""<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="st" Type="{Office}/styles" Target="styles.xml"/>{Each(i => $"<Relationship Id=\"r{i}\" Type=\"{Office}/worksheet\" Target=\"s{i}.xml\"/>")}</Relationships>""");
        Add("xl/workbook.xml", $"""<workbook xmlns="{Main}" xmlns:r="{Office}"><sheets>{Each(i => $"<sheet name=\"{sheets[i].Name}\" sheetId=\"{i + 1}\" state=\"{sheets[i].State}\" r:id=\"r{i}\"/>")}</sheets></workbook>""");
        Add("xl/styles.xml", $"""<styleSheet xmlns="{Main}">"""
            + """<numFmts count="1"><numFmt numFmtId="170" formatCode="dd\.mm\.yyyy"/></numFmts>"""
            + """<cellXfs count="4"><xf numFmtId="0"/><xf numFmtId="14"/><xf numFmtId="170"/><xf numFmtId="10"/></cellXfs></styleSheet>""");
        for (int i = 0; i < sheets.Length; i++)
        {
            Add($"xl/s{i}.xml", $"""<worksheet xmlns="{Main}">{sheets[i].Inside}</worksheet>""");
        }

        return path;

        string Each(Func<int, string> text) => string.Concat(Enumerable.Range(0, sheets.Length).Select(text));

        void Add(string name, string text)
        {
            using Stream stream = zip.CreateEntry(name).Open();
            stream.Write(Encoding.UTF8.GetBytes(Head + text));
        }
    }

    /// <summary>The XML of a sheet's rows: every cell is text.</summary>
    public static string Rows(params string[][] rows) =>
        $"<sheetData>{string.Concat(rows.Select(row => $"<row>{string.Concat(row.Select(Text))}</row>"))}</sheetData>";

    public static string Text(string text) => $"<c t=\"inlineStr\"><is><t xml:space=\"preserve\">{System.Security.SecurityElement.Escape(text)}</t></is></c>";

    public static string NewPath() => Path.Combine(TestFolders.Make(), "records.xlsx");

    private static WorkbookCell Cell(string field, ColumnSchema? column) => column?.Type switch
    {
        ColumnType.Date when DateOnly.TryParseExact(field, "yyyy-MM-dd", out DateOnly day) => WorkbookCell.Date(day),
        ColumnType.Number or ColumnType.Money or ColumnType.Price or ColumnType.Rate or ColumnType.Percent or ColumnType.Year
            when decimal.TryParse(field, System.Globalization.NumberStyles.Number, null, out decimal number) => WorkbookCell.Number(number),
        _ => WorkbookCell.Text(field),
    };
}
