using System.Diagnostics;
using System.Globalization;
using System.IO.Compression;
using System.Xml.Linq;
using Xunit;

namespace FarmEconomics.Tests.Support;

/// <summary>
/// LibreOffice Calc without a screen, as an independent spreadsheet: it reads a workbook whose formulas carry no values and works them out
/// itself.
/// Where it isn't installed (Debian: libreoffice-calc) the test is skipped, unless FARMECONOMICS_REQUIRE_LIBREOFFICE=1 asks for it.
/// </summary>
internal static class LibreOffice
{
    private static readonly TimeSpan Limit = TimeSpan.FromMinutes(3);
    private static readonly XNamespace Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

    public static void SkipWithout()
    {
        if (Program() is null)
        {
            const string Reason = "LibreOffice Calc is not installed (Debian: apt-get install libreoffice-calc)";
            Assert.False(Environment.GetEnvironmentVariable("FARMECONOMICS_REQUIRE_LIBREOFFICE") == "1", Reason);
            Assert.Skip(Reason);
        }
    }

    /// <summary>
    /// Takes the values of all formulas out, lets LibreOffice work them out again, and gives every cell that holds something, by sheet and
    /// cell.
    /// </summary>
    public static Dictionary<(string Sheet, string Cell), object> Recalculate(byte[] workbook)
    {
        string folder = Directory.CreateTempSubdirectory("farm-calc-").FullName;
        try
        {
            string source = Path.Combine(folder, "in.xlsx");
            File.WriteAllBytes(source, WithoutFormulaValues(workbook));
            Convert(folder, source);
            return Cells(File.ReadAllBytes(Path.Combine(folder, "out", "in.xlsx")));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>Every cell of a workbook that holds something: a decimal or a string.</summary>
    public static Dictionary<(string Sheet, string Cell), object> Cells(byte[] workbook)
    {
        using ZipArchive archive = new(new MemoryStream(workbook));
        List<string> shared = archive.GetEntry("xl/sharedStrings.xml") is { } strings
            ? [.. Load(strings).Root!.Elements(Main + "si").Select(item => string.Concat(item.Descendants(Main + "t").Select(t => t.Value)))]
            : [];
        XNamespace relation = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
        Dictionary<string, string> targets = Load(archive.GetEntry("xl/_rels/workbook.xml.rels")!).Root!.Elements()
            .ToDictionary(item => (string)item.Attribute("Id")!, item => ((string)item.Attribute("Target")!).TrimStart('/'));
        Dictionary<(string, string), object> cells = [];
        foreach (XElement sheet in Load(archive.GetEntry("xl/workbook.xml")!).Descendants(Main + "sheet"))
        {
            string target = targets[(string)sheet.Attribute(relation + "id")!];
            ZipArchiveEntry part = archive.GetEntry(target.StartsWith("xl/", StringComparison.Ordinal) ? target : "xl/" + target)!;
            foreach (XElement cell in Load(part).Descendants(Main + "c"))
            {
                string type = (string?)cell.Attribute("t") ?? "n";
                string? value = type == "inlineStr" ? string.Concat(cell.Descendants(Main + "t").Select(t => t.Value)) : (string?)cell.Element(Main + "v");
                if (value is not null)
                {
                    cells[((string)sheet.Attribute("name")!, (string)cell.Attribute("r")!)] = type switch
                    {
                        "s" => shared[int.Parse(value, CultureInfo.InvariantCulture)],
                        "n" => decimal.Parse(value, NumberStyles.Float, CultureInfo.InvariantCulture),
                        _ => value,
                    };
                }
            }
        }

        return cells;
    }

    private static XDocument Load(ZipArchiveEntry entry)
    {
        using Stream stream = entry.Open();
        return XDocument.Load(stream, LoadOptions.PreserveWhitespace);
    }

    private static byte[] WithoutFormulaValues(byte[] workbook)
    {
        using MemoryStream bytes = new();
        bytes.Write(workbook);
        using (ZipArchive archive = new(bytes, ZipArchiveMode.Update, leaveOpen: true))
        {
            foreach (string name in archive.Entries.Select(entry => entry.FullName).Where(name => name.StartsWith("xl/worksheets/sheet", StringComparison.Ordinal)).ToList())
            {
                XDocument sheet = Load(archive.GetEntry(name)!);
                foreach (XElement cell in sheet.Descendants(Main + "c").Where(cell => cell.Element(Main + "f") is not null))
                {
                    cell.Element(Main + "v")?.Remove();
                    cell.Attribute("t")?.Remove();
                }

                archive.GetEntry(name)!.Delete();
                using Stream stream = archive.CreateEntry(name).Open();
                sheet.Save(stream, SaveOptions.DisableFormatting);
            }
        }

        return bytes.ToArray();
    }

    private static void Convert(string folder, string source)
    {
        // A profile of its own: no settings of whoever runs the tests, several runs beside each other, and formulas always worked out on
        // loading.
        string profile = Path.Combine(folder, "profile");
        Directory.CreateDirectory(Path.Combine(profile, "user"));
        File.WriteAllText(
            Path.Combine(profile, "user", "registrymodifications.xcu"),
            """
            <?xml version="1.0" encoding="UTF-8"?>
            <oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
            <item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
            </oor:items>
            """);
        ProcessStartInfo start = new(Program()!)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            ArgumentList = { $"-env:UserInstallation=file://{profile}", "--headless", "--norestore", "--convert-to", "xlsx", "--outdir", Path.Combine(folder, "out"), source },
        };
        using Process process = Process.Start(start)!;
        Task<string> output = process.StandardOutput.ReadToEndAsync();
        Task<string> errors = process.StandardError.ReadToEndAsync();
        if (!process.WaitForExit(Limit))
        {
            process.Kill(entireProcessTree: true);
            Assert.Fail($"LibreOffice took longer than {Limit}.");
        }

        Assert.True(File.Exists(Path.Combine(folder, "out", "in.xlsx")), $"LibreOffice wrote nothing: {output.Result} {errors.Result}");
    }

    private static string? Program() => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
        .SelectMany(folder => new[] { Path.Combine(folder, "soffice"), Path.Combine(folder, "localc") }).FirstOrDefault(File.Exists);
}
