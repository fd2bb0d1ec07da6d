using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Validation;
using FarmEconomics.Files.Workbooks;
using FarmEconomics.Tests.Support;
using Xunit;

namespace FarmEconomics.Tests.Files.Workbooks;

public class WorkbookWriterTests
{
    private static readonly string[] Nasty = ["=1+1", "+1", "-1", "@SUM(A1)", "\t=1+1", "=cmd|'/c calc'!A1", "_x000D_", "bell \u0007", "half \uD800 pair", "\uD83E\uDD55 <b>&amp;\"", "  two  blanks  "];

    [Fact]
    public void ToBytes_EveryKindOfCell_IsValidToTheFormatsOwnCheck()
    {
        using MemoryStream bytes = new(WorkbookWriter.ToBytes(Sample()));
        using SpreadsheetDocument document = SpreadsheetDocument.Open(bytes, isEditable: false);

        Assert.Empty(new OpenXmlValidator().Validate(document, TestContext.Current.CancellationToken).Select(error => $"{error.Part?.Uri} {error.Path?.XPath}: {error.Description}"));
    }

    [Fact]
    public void ToBytes_SameWorkbookTwice_GivesTheSameBytes() => Assert.Equal(WorkbookWriter.ToBytes(Sample()), WorkbookWriter.ToBytes(Sample()));

    [Fact]
    public void ToBytes_TextThatLooksLikeAFormula_StaysText()
    {
        using MemoryStream bytes = new(WorkbookWriter.ToBytes(Sample()));
        using SpreadsheetDocument document = SpreadsheetDocument.Open(bytes, isEditable: false);
        var cells = document.WorkbookPart!.WorksheetParts.SelectMany(part => part.Worksheet!.Descendants<DocumentFormat.OpenXml.Spreadsheet.Cell>()).ToList();

        Assert.Equal(2, cells.Count(cell => cell.CellFormula is not null));
        Assert.All(cells.Where(cell => cell.InnerText.StartsWith('=') && cell.CellFormula is null), cell =>
            Assert.Equal(DocumentFormat.OpenXml.Spreadsheet.CellValues.InlineString, cell.DataType!.Value));
    }

    [Fact]
    public void Recalculate_ByLibreOffice_ChangesNoCell()
    {
        LibreOffice.SkipWithout();
        byte[] bytes = WorkbookWriter.ToBytes(Sample());

        Dictionary<(string Sheet, string Cell), object> recalculated = LibreOffice.Recalculate(bytes);

        Assert.Equal(6.5m, recalculated[("Figures", "B5")]);
        Assert.Equal("two", recalculated[("Figures", "C5")]);
        for (int i = 0; i < Nasty.Length; i++)
        {
            string expected = Nasty[i].Replace('\u0007', '\uFFFD').Replace("\uD800", "\uFFFD", StringComparison.Ordinal);
            Assert.Equal(expected, Unescape((string)recalculated[("Words & such", $"A{i + 1}")]));
        }
    }

    [Fact]
    public void SafeName_AnyText_NamesASheet() => CsCheck.Check.Sample(CsCheck.Gen.String, text => { _ = new Workbook().Sheet(Workbook.SafeName(text)); });

    [Theory]
    [InlineData(0, "A")]
    [InlineData(25, "Z")]
    [InlineData(26, "AA")]
    [InlineData(701, "ZZ")]
    [InlineData(702, "AAA")]
    [InlineData(16383, "XFD")]
    public void Column_Number_HasItsLetters(int column, string letters) => Assert.Equal(letters, WorkbookSheet.Column(column));

    // LibreOffice keeps the code of an escaped underscore in what it writes.
    private static string Unescape(string text) => text.Replace("_x005F_", "_", StringComparison.Ordinal);

    private static Workbook Sample()
    {
        Workbook workbook = new();
        WorkbookSheet figures = workbook.Sheet("Figures");
        figures.Row(WorkbookCell.Text("Figures", WorkbookStyle.Title));
        figures.HeadingRow("Name", "Amount", "Word");
        figures.Row(WorkbookCell.Text("one"), WorkbookCell.Money(4.25m) with { Note = "a note, with <markup>" }, WorkbookCell.Text("one"), WorkbookCell.Date(new DateOnly(2025, 6, 30)), WorkbookCell.YesNo(true));
        figures.Row(WorkbookCell.Text("two"), WorkbookCell.Money(2.25m), WorkbookCell.Text("two"), WorkbookCell.Empty, WorkbookCell.Number(null));
        figures.Row(WorkbookCell.Text("total"), WorkbookCell.Formula("SUM(B3:B4)", 6.5m, WorkbookStyle.MoneyTotal), WorkbookCell.Formula("INDEX(C3:C4,2)", "two"));
        figures.Allow(new WorkbookChoice("C3:C4", ["one", "two"]));
        figures.Allow(new WorkbookChoice("A3:A4", [], "'Words & such'!$A$1:$A$9", Strict: false));
        WorkbookSheet words = workbook.Sheet("Words & such");
        foreach (string text in Nasty)
        {
            words.Row(WorkbookCell.Text(text, WorkbookStyle.LongText));
        }

        return workbook;
    }
}
