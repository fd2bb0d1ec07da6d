using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace FarmEconomics.EndToEnd.Tests.Support;

/// <summary>
/// A page as a browser prints it, read back from the PDF with the Poppler tools: sheets, their size and where every word stands.
/// </summary>
/// <param name="Sheets">Sheets of paper.</param>
/// <param name="Width">Width of the first, in points.</param>
/// <param name="Words">Every word with the sheet it stands on, from 1, and its left and right edge in points.</param>
internal sealed partial record PrintedPage(
    int Sheets,
    double Width,
    IReadOnlyList<(int Sheet, double Left, double Right, string Text)> Words
)
{
    // 14 mm, as the pages' style says; a point for rounding.
    private const double Margin = (14 / 25.4 * 72) - 1;

    private const string Required = "FARMECONOMICS_REQUIRE_BROWSER";

    /// <summary>Words that reach into the margin at the left or the right: what a printer would cut.</summary>
    public IEnumerable<string> Cut =>
        Words.Where(word => word.Left < Margin || word.Right > Width - Margin).Select(word => $"sheet {word.Sheet}: {word.Text}");

    /// <summary>Prints a saved page.</summary>
    /// <param name="browser">The browser.</param>
    /// <param name="file">The page.</param>
    /// <param name="paper">A size of paper as CSS names it; null: as the page says.</param>
    public static async Task<PrintedPage> Of(IBrowser browser, string file, string? paper)
    {
        string reader = Tool.Require(Required, "printed pages are not read back", "pdftotext"),
            counter = Tool.Require(Required, "printed pages are not counted", "pdfinfo");
        IPage page = await browser.NewPageAsync(new() { BypassCSP = true });
        await page.GotoAsync(new Uri(file).AbsoluteUri);
        if (paper is not null)
        {
            await page.AddStyleTagAsync(new() { Content = $"@page{{size:{paper}}}" });
        }

        string pdf = Path.ChangeExtension(file, $".{paper ?? "own"}.pdf");
        await page.PdfAsync(new() { Path = pdf, PreferCSSPageSize = true });
        await page.CloseAsync();
        string folder = Path.GetDirectoryName(pdf)!;
        (int exit, string told) = await Tool.RunAsync(counter, folder, [pdf]);
        Assert.True(exit == 0, told);
        (exit, string text) = await Tool.RunAsync(reader, folder, ["-bbox", pdf, "-"]);
        Assert.True(exit == 0, text);
        File.Delete(pdf);
        int sheet = 0;
        double width = 0;
        List<(int, double, double, string)> words = [];
        foreach (Match match in Line().Matches(text))
        {
            if (match.Groups["width"].Success)
            {
                sheet++;
                width = Number(match.Groups["width"]);
            }
            else
            {
                words.Add((sheet, Number(match.Groups["left"]), Number(match.Groups["right"]), match.Groups["text"].Value));
            }
        }

        int sheets = int.Parse(Count().Match(told).Groups[1].Value, CultureInfo.InvariantCulture);
        Assert.Equal(sheets, sheet);
        return new PrintedPage(sheets, width, words);
    }

    /// <summary>The words of one sheet, with blanks between.</summary>
    public string TextOf(int sheet) => string.Join(' ', Words.Where(word => word.Sheet == sheet).Select(word => word.Text));

    private static double Number(Group group) => double.Parse(group.Value, CultureInfo.InvariantCulture);

    [GeneratedRegex("<page width=\"(?<width>[\\d.]+)\"|<word xMin=\"(?<left>[-\\d.]+)\" yMin=\"[-\\d.]+\" xMax=\"(?<right>[-\\d.]+)\" yMax=\"[-\\d.]+\">(?<text>.*?)</word>")]
    private static partial Regex Line();

    [GeneratedRegex(@"Pages:\s+(\d+)")]
    private static partial Regex Count();
}
