using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Reports.Tables;

public class ReportTableTests
{
    private static ReportTable Small(Notation? notation = null) => new ReportTable("What <beds> & crops earned", notation ?? Notation.Default)
        .Column("Crop").Column("Output", Look.Money).Column("Margin", Look.Rate, per: "hour").Column("Day", Look.Date)
        .Row("Kale <b>", 1234.5m, Result.Known(12.345m), new DateOnly(2025, 6, 30))
        .Row("Beans, \"snap\"", -3m, Result.NotAvailable("no labor hours"), "")
        .Total("All", 1231.5m, Result.NotAvailable("no labor hours"), "")
        .Note("A note with 1 < 2.");

    /// <summary>A column of money that says no unit, as the twelve months of a cash flow, has no empty brackets.</summary>
    [Fact]
    public void FullHeading_WithoutAUnit_IsTheHeadingAlone() =>
        Assert.Equal(["Line", "Jan", "Year ($)"], new ReportTable("Cash", Notation.Default).Column("Line").Column("Jan", Look.Money, "")
            .Column("Year", Look.Money).Columns.Select(column => column.FullHeading));

    [Fact]
    public void Html_TextFromRecords_IsEncoded()
    {
        string html = Small().ToHtml();
        Assert.Contains("<caption>What &lt;beds&gt; &amp; crops earned</caption>", html, StringComparison.Ordinal);
        Assert.Contains("Kale &lt;b&gt;", html, StringComparison.Ordinal);
        Assert.Contains("A note with 1 &lt; 2.", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<b>", html, StringComparison.Ordinal);
        Assert.DoesNotContain("style=", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Html_RowsThatOpen_NameTheirCropAndThePartOfEachFigure()
    {
        string html = new ReportTable("What each crop earned", Notation.Default).Column("Crop").Column("Brought in", Look.Money, part: FigurePart.Output)
            .Column("Labor hours", Look.Hours, part: FigurePart.Labor).Column("Gross margin", Look.Rate)
            .Row("Beans & <peas>", 12.5m, ReportCell.Missing("no hours"), 3m).Total("All crops", 12.5m, "", "").Opens().ToHtml();
        Assert.Contains("<tr data-opens=\"Beans &amp; &lt;peas&gt;\">", html, StringComparison.Ordinal);
        Assert.Contains("data-value=\"12.5\" data-part=\"output\">12.50</td>", html, StringComparison.Ordinal);
        Assert.Contains("data-part=\"budget\">3.00</td>", html, StringComparison.Ordinal);
        // What is not available opens nothing, and neither does a total.
        Assert.DoesNotContain("data-part=\"labor\"", html, StringComparison.Ordinal);
        Assert.Single(html.Split("data-opens"), part => part.StartsWith("=\"", StringComparison.Ordinal));
    }

    [Fact]
    public void Html_NumbersAndHeadings_AreMarkedForReaders()
    {
        string html = Small().ToHtml();
        Assert.Contains("<th scope=\"col\" class=\"num\">Output <span class=\"unit\">$</span></th>", html, StringComparison.Ordinal);
        Assert.Contains("<th scope=\"row\">Kale", html, StringComparison.Ordinal);
        Assert.Contains("<td class=\"num\" data-value=\"1234.5\">1,234.50</td>", html, StringComparison.Ordinal);
        Assert.Contains("<tfoot>", html, StringComparison.Ordinal);
    }

    [Fact]
    public void MissingValue_InEveryForm_SaysWhyAndIsNeverZero()
    {
        ReportTable table = Small();
        Assert.Contains("title=\"no labor hours\">not available<sup>1</sup>", table.ToHtml(), StringComparison.Ordinal);
        Assert.Contains("not available [1]", table.ToPlainText(), StringComparison.Ordinal);
        Assert.Contains("[1] no labor hours", table.ToPlainText(), StringComparison.Ordinal);
        Assert.Equal("Crop,Output ($),Margin ($/hour),Day\r\nKale <b>,1234.50,12.345,2025-06-30\r\n\"Beans, \"\"snap\"\"\",-3.00,,\r\n", table.ToCsv());
        Assert.Null(table.ToDataFrame().Columns["Margin ($/hour)"][1]);
        Assert.Equal(12.345m, table.ToDataFrame().Columns["Margin ($/hour)"][0]);
    }

    [Fact]
    public void Top_LeavesRowsOut_AndSaysWhatTheyHold()
    {
        ReportTable top = Small().Top(1);
        Assert.Single(top.Rows);
        Assert.Contains("1 more row is not shown (output -3.00).", top.Notes);
    }

    [Fact]
    public void Row_WithTheWrongNumberOfCells_IsRefused() =>
        Assert.Throws<ArgumentException>(() => new ReportTable("t", Notation.Default).Column("a").Row("1", "2"));

    [Fact]
    public void Table_OfAFarmWithDecimalCommas_IsWrittenItsWayForPeopleAndTheSameForPrograms()
    {
        ReportTable comma = Small(new Notation("EUR", ',', LengthUnit.M));
        string html = comma.ToHtml();

        Assert.Contains("data-value=\"1234.5\">1.234,50</td>", html, StringComparison.Ordinal);
        Assert.Contains("€", html, StringComparison.Ordinal);
        Assert.Contains("1.234,50", comma.ToPlainText(), StringComparison.Ordinal);
        Assert.DoesNotContain("1,234.50", html + comma.ToPlainText(), StringComparison.Ordinal);
        Assert.Equal(Small().ToCsv().Replace('$', '€'), comma.ToCsv());
    }

    [Theory]
    [InlineData(-0.004, Look.Money, "0.00")]
    [InlineData(0.005, Look.Money, "0.01")]
    [InlineData(-1234.5, Look.WholeMoney, "-1,235")]
    [InlineData(2.25, Look.Hours, "2.3")]
    [InlineData(0.125, Look.Percent, "12.5%")]
    [InlineData(2025, Look.Year, "2025")]
    public void Number_ByLook_RoundsAwayFromZero(double value, Look look, string expected) => Assert.Equal(expected, Notation.Default.Number((decimal)value, look));

    [Fact]
    public void MoneyInWords_CarriesSignBeforeCurrency()
    {
        Assert.Equal("-$12.50", Notation.Default.InWords(-12.5m, Look.Money));
        Assert.Equal("€1,000", (Notation.Default with { Currency = "EUR" }).InWords(1000m, Look.WholeMoney));
        Assert.Equal("CHF 3.00", (Notation.Default with { Currency = "CHF" }).InWords(3m, Look.Money));
        Assert.Equal("$0", Notation.Default.InWords(-0.2m, Look.WholeMoney));
    }
}
