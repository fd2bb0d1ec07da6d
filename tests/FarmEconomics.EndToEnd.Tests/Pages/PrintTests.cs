using FarmEconomics.EndToEnd.Tests.Support;
using Microsoft.Playwright;

namespace FarmEconomics.EndToEnd.Tests.Pages;

/// <summary>
/// The pages that go on paper, on both sizes of it: sheets counted, nothing in the margins, and the first sheet of the lender's page by
/// itself.
/// </summary>
public class PrintTests(BrowserOfClass chromium, ReviewedDemo reviewed) : IClassFixture<BrowserOfClass>
{
    [Theory]
    [InlineData("letter", 612)]
    [InlineData("A4", 595)]
    public async Task Lender_IsOneSheetAndItsAppendices(string paper, int points)
    {
        PrintedPage lender = await PrintAsync("lender.html", paper);

        Assert.Equal(points, (int)Math.Round(lender.Width));
        Assert.Empty(lender.Cut);
        Assert.InRange(lender.Sheets, 8, 14);
        Assert.Contains("Total 9,890.00 4,910.00 14,800.00", lender.TextOf(1), StringComparison.Ordinal);
        Assert.DoesNotContain("Income by tax line", lender.TextOf(1), StringComparison.Ordinal);
        Assert.Contains("Income by tax line", lender.TextOf(2), StringComparison.Ordinal);
        Assert.All("BCDEFGHIJ", letter => Assert.Contains(lender.Words, word => word.Sheet > 1 && word.Text == letter.ToString()));
        Assert.Equal(
            Enumerable.Range(1, lender.Sheets),
            Enumerable
                .Range(1, lender.Sheets)
                .Where(sheet => lender.TextOf(sheet).Contains($"{sheet} of {lender.Sheets}", StringComparison.Ordinal))
        );
    }

    // Headings that sort are buttons, which a browser left blank on the second sheet of a table, and a head stood alone at a sheet's foot.
    [Theory]
    [InlineData("letter")]
    [InlineData("A4")]
    public async Task Lender_TablesThatGoOn_CarryTheirHeadings(string paper)
    {
        PrintedPage lender = await PrintAsync("lender.html", paper);
        string[] sheets = [.. Enumerable.Range(1, lender.Sheets).Select(lender.TextOf)];

        Assert.All(
            sheets.Where(sheet => sheet.Contains("Long tunnel 7,600", StringComparison.Ordinal)),
            sheet => Assert.Contains("Class used", sheet, StringComparison.Ordinal)
        );
        Assert.All(
            sheets.Where(sheet => sheet.Contains("The whole farm in crop year 2025, crops first", StringComparison.Ordinal)),
            sheet => Assert.Matches(@"crops first.* Sales .*Share income.* [\d,.]{6,}", sheet)
        );
    }

    [Theory]
    [InlineData("letter")]
    [InlineData("A4")]
    public async Task SeasonAndPrices_FitTheirPaper(string paper)
    {
        foreach ((string page, int most) in new[] { ("index.html", 14), ("prices.html", 8) })
        {
            PrintedPage printed = await PrintAsync(page, paper);
            Assert.Empty(printed.Cut);
            Assert.InRange(printed.Sheets, 1, most);
        }
    }

    private async Task<PrintedPage> PrintAsync(string page, string? paper)
    {
        IBrowser browser = await chromium.Get();
        return await PrintedPage.Of(browser, Path.Combine(await reviewed.Folder, page), paper);
    }
}
