using System.IO.Compression;
using System.Xml.Linq;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Validation;
using FarmEconomics.Budgets;
using FarmEconomics.Files.Workbooks;
using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Reports.Answers;
using FarmEconomics.Reports.Funding;
using FarmEconomics.Tests.Funding;
using FarmEconomics.Tests.Published;
using Xunit;

namespace FarmEconomics.WholeWay.Tests.Ends;

public class WriteUpWorkbookTests
{
    private static readonly FundingWriteUp Full = FundingWriteUp.Of(FundingWriteUpTests.Demo, 2025, "Larger cold room", FundingAssumptions.Parse(FundingWriteUpTests.Assumed, FundingWriteUpTests.Classes));

    [Fact]
    public void Workbook_RecalculatedByLibreOffice_ChangesNoCell()
    {
        LibreOffice.SkipWithout();
        byte[] bytes = WorkbookWriter.ToBytes(WriteUpReport.Workbook(Full));
        Dictionary<(string Sheet, string Cell), object> written = LibreOffice.Cells(bytes);

        Dictionary<(string Sheet, string Cell), object> recalculated = LibreOffice.Recalculate(bytes);

        List<string> changed = [];
        foreach (((string Sheet, string Cell) place, object value) in written)
        {
            if (!recalculated.TryGetValue(place, out object? now) || !Same(value, now))
            {
                changed.Add($"{place.Sheet}!{place.Cell}: {value} became {now ?? "nothing"}");
            }
        }

        Assert.Empty(changed);
        Assert.True(FormulaCount(bytes) > 900, $"{FormulaCount(bytes)} formulas");
    }

    [Fact]
    public void Workbook_PmtNpvAndIrr_AreWorkedOutByLibreOfficeAsHere()
    {
        LibreOffice.SkipWithout();
        Workbook workbook = new();
        WorkbookSheet sheet = workbook.Sheet("Check");
        CapitalBudget[] budgets = [.. Fixture.Load("capital-budgets").GetProperty("cases").EnumerateArray()
            .Select(item => new CapitalBudget(Fixture.Numbers(item, "amounts"), Fixture.Number(item, "rate")))];
        foreach (CapitalBudget budget in budgets)
        {
            int row = sheet.NextRow;
            string last = WorkbookSheet.At(3 + budget.Years, row);
            IReadOnlyList<decimal> rates = budget.RatesOfReturn;
            sheet.Row([
                WorkbookCell.Formula($"NPV({budget.Rate},{WorkbookSheet.At(4, row)}:{last})+D{row}", budget.NetPresentValue),
                rates.Count == 1 ? WorkbookCell.Formula($"IRR(D{row}:{last})", rates[0]) : WorkbookCell.Empty,
                budget.Rate == 0m ? WorkbookCell.Empty : WorkbookCell.Formula($"-PMT({budget.Rate},{budget.Years},A{row})", budget.EqualAnnualValue.Value!.Value),
                .. budget.Amounts.Select(amount => WorkbookCell.Number(amount))]);
        }

        byte[] bytes = WorkbookWriter.ToBytes(workbook);
        Dictionary<(string Sheet, string Cell), object> recalculated = LibreOffice.Recalculate(bytes);
        Assert.All(
            LibreOffice.Cells(bytes),
            cell => Assert.True(Same(cell.Value, recalculated[cell.Key]), $"{cell.Key}: {cell.Value} became {recalculated[cell.Key]}"));
    }

    [Fact]
    public void Workbook_WholeWriteUp_IsValidAndTheSameTwice()
    {
        byte[] bytes = WorkbookWriter.ToBytes(WriteUpReport.Workbook(Full));
        using SpreadsheetDocument document = SpreadsheetDocument.Open(new MemoryStream(bytes), isEditable: false);

        Assert.Empty(new OpenXmlValidator().Validate(document, TestContext.Current.CancellationToken).Select(error => $"{error.Part?.Uri} {error.Path?.XPath}: {error.Description}"));
        Assert.Equal(bytes, WorkbookWriter.ToBytes(WriteUpReport.Workbook(Full)));
    }

    [Fact]
    public void Report_RecordTextThatLooksLikeAFormulaOrMarkup_StaysText()
    {
        RecordTables tables = new();
        tables.Present.Add("funding");
        tables.Add<FundingRow>(new RowValues { ["project"] = "=HYPERLINK(\"x\")", ["item"] = "=1+1 {0,0} <script>", ["object_class"] = ObjectClass.Supplies, ["amount"] = 10m, ["note"] = "@SUM(A1)" });
        FundingWriteUp writeUp = FundingWriteUp.Of(FarmReview.Of(FarmRecords.Link(tables, new FarmSettings { FarmName = "=2+2 <b>", AsOf = new DateOnly(2025, 12, 31) })), 2025, "=HYPERLINK(\"x\")", FundingAssumptions.None);
        byte[] bytes = WorkbookWriter.ToBytes(WriteUpReport.Workbook(writeUp));

        Assert.All(Formulas(bytes), formula => Assert.DoesNotContain("HYPERLINK", formula, StringComparison.Ordinal));
        Assert.All(Formulas(bytes), formula => Assert.DoesNotContain("1+1", formula, StringComparison.Ordinal));
        Assert.Contains("=1+1 {0,0} <script> (@SUM(A1))", LibreOffice.Cells(bytes).Values);
        Assert.DoesNotContain("<script", LenderReport.Html(writeUp), StringComparison.Ordinal);
        Assert.DoesNotContain("=2+2 <b>", LenderReport.Html(writeUp), StringComparison.Ordinal);
        Assert.Equal(10m, writeUp.Grant!.Funder);
    }

    [Fact]
    public void Html_WholeWriteUp_CarriesTheFormYearAndTheConversions()
    {
        string html = LenderReport.Html(Full);

        Assert.Contains($"form of tax year {TaxLines.FormYear}", html, StringComparison.Ordinal);
        Assert.Contains(ProjectSheets.Crops(Full).Table.Notes, note => note.Contains("bed-feet", StringComparison.Ordinal) && note.Contains("Per acre", StringComparison.Ordinal));
        Assert.Contains("funding.csv:2", html, StringComparison.Ordinal);
    }

    private static bool Same(object left, object right) => (left, right) switch
    {
        // Spreadsheets hold 15 digits; rates of return are sought by iteration.
        (decimal a, decimal b) => Math.Abs(a - b) <= 0.0000001m * Math.Max(1m, Math.Abs(a)),
        (string a, string b) => a.Replace("_x005F_", "_", StringComparison.Ordinal) == b.Replace("_x005F_", "_", StringComparison.Ordinal),
        _ => false,
    };

    private static int FormulaCount(byte[] workbook) => Formulas(workbook).Count();

    private static IEnumerable<string> Formulas(byte[] workbook)
    {
        using ZipArchive archive = new(new MemoryStream(workbook));
        foreach (ZipArchiveEntry entry in archive.Entries.Where(entry => entry.FullName.StartsWith("xl/worksheets/sheet", StringComparison.Ordinal)))
        {
            using Stream stream = entry.Open();
            foreach (XElement formula in XDocument.Load(stream).Descendants().Where(element => element.Name.LocalName == "f"))
            {
                yield return formula.Value;
            }
        }
    }
}
