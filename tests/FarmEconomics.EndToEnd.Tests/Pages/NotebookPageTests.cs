using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using FarmEconomics.EndToEnd.Tests.Support;
using FarmEconomics.Notebooks;
using FarmEconomics.Notebooks.Pages;

namespace FarmEconomics.EndToEnd.Tests.Pages;

public class NotebookPageTests
{
    public static readonly NotebookPageOptions Options = new()
    {
        Nav = [new("Overview", "index.html"), new("Season <review>", "02-season-review.html", IsCurrent: true)],
        Footer = ["These figures rest on the grower's own records & nothing else.", "They are not tax, legal, lending or food-safety advice."],
    };

    [Fact]
    public async Task Page_OfANotebook_HasItsOwnScriptAloneAndAStrictPolicy()
    {
        string page = await SeasonPage();
        string script = Assert.Single(Regex.Matches(page, "<script>(.*?)</script", RegexOptions.Singleline | RegexOptions.IgnoreCase)).Groups[1].Value;
        Assert.Contains($"script-src 'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(script)))}';", page, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"\sstyle=""", page);
        Assert.DoesNotMatch(@"<[^>]*\son\w+=", page);
        Assert.Contains("http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src ", page, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", page, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"(src|xlink:href)=""(?!data:|#)", page);
        Assert.StartsWith("<!DOCTYPE html>\n<html lang=\"en\">", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Page_Ids_AreUnique()
    {
        string page = await SeasonPage();
        string[] ids = [.. Regex.Matches(page, @"\sid=""([^""]*)""").Select(m => m.Groups[1].Value)];
        Assert.True(ids.Length > 2);
        Assert.Equal(ids.Length, ids.Distinct().Count());
        foreach (Match use in Regex.Matches(page, @"url\(#([^)]*)\)"))
        {
            Assert.Contains(use.Groups[1].Value, ids);
        }
    }

    [Fact]
    public async Task Page_WithTheSameFigureTwice_KeepsIdsApart()
    {
        NotebookDocument document = (await Runs.Season()).Document.Clone();
        NotebookCell cell = document.Cells.First(c => c.Outputs.Any(o => o["data"]?["image/svg+xml"] is not null));
        cell.Json["outputs"]!.AsArray().Add(cell.Outputs[0].DeepClone());
        string[] ids = [.. Regex.Matches(NotebookPage.Render(document, Options), @"\sid=""([^""]*)""").Select(m => m.Groups[1].Value)];
        Assert.Equal(ids.Length, ids.Distinct().Count());
    }

    [Fact]
    public async Task Page_Figures_HaveWordsForThem()
    {
        string page = await SeasonPage();
        Assert.Equal(2, Regex.Count(page, "<figure[^>]*><svg [^>]*role=\"img\" aria-label=\"[^\"]{10,}\""));
        string saved = NotebookPage.Render((await Runs.Season()).Document.WithoutSvg(), Options);
        Assert.Equal(2, Regex.Count(saved, "<figure[^>]*><img src=\"data:image/png;base64,[^\"]*\" width=\"\\d+\" height=\"\\d+\" alt=\"[^\"]{10,}\""));
    }

    [Fact]
    public async Task Page_Headings_AreInOrderWithOneH1()
    {
        int[] levels = [.. Regex.Matches(await SeasonPage(), "<h([1-6])").Select(m => m.Groups[1].Value[0] - '0')];
        Assert.Equal([1, 2, 3], levels);
    }

    [Fact]
    public void Headings_OutOfOrder_AreMended() => Assert.Equal(
        "<h1>a</h1><h2>b</h2><h3 class=\"x\">c</h3><h2>d</h2>",
        HtmlFragment.OrderHeadings("<h2>a</h2><h1>b</h1><h6 class=\"x\">c</h6><h1>d</h1>"));

    [Fact]
    public async Task Page_Text_IsEncodedAndTheFrameIsThere()
    {
        string page = await SeasonPage();
        Assert.Contains("&lt;b&gt;raw HTML&lt;/b&gt;", page, StringComparison.Ordinal);
        Assert.Contains("<a href=\"02-season-review.html\" aria-current=\"page\">Season &lt;review&gt;</a>", page, StringComparison.Ordinal);
        Assert.Contains("<p>These figures rest on the grower&#39;s own records &amp; nothing else.</p>", page, StringComparison.Ordinal);
        Assert.Contains("<title>What did the season bring?</title>", page, StringComparison.Ordinal);
        Assert.Contains("<td class=\"num\">1,600.00</td>", page, StringComparison.Ordinal);
        Assert.Contains("<div class=\"scroll\" role=\"region\" aria-label=\"Table\" tabindex=\"0\"><table>", page, StringComparison.Ordinal);
        Assert.DoesNotContain("dni-", page, StringComparison.Ordinal);
        Assert.Equal(page, await SeasonPage());
    }

    [Fact]
    public async Task Page_OfAFailedRun_SaysSoAtTheTop()
    {
        NotebookRun run = await Runs.Sample("error");
        string page = NotebookPage.Render(run.Document, Options with { Failure = run.Failure });
        Assert.True(page.IndexOf("This page is not complete.", StringComparison.Ordinal) < page.IndexOf("<pre class=\"plain\">before</pre>", StringComparison.Ordinal));
        Assert.Contains("The run stopped: cell 2: the cents don&#39;t add up", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("<p>plain <em>words</em> &lt;x&gt;</p>", true)]
    [InlineData("<a href=\"02-season-review.html#beds\">x</a>", true)]
    [InlineData("<script>alert(1)</script>", false)]
    [InlineData("<p onclick=\"x()\">", false)]
    [InlineData("<p style=\"color:red\">", false)]
    [InlineData("<img src=\"https://example.org/x.png\">", false)]
    [InlineData("<a href=\"javascript:alert(1)\">x</a>", false)]
    [InlineData("<a href=\"java&#115;cript:alert(1)\">x</a>", false)]
    [InlineData("<rect fill=\"url(https://example.org/x)\"/>", false)]
    [InlineData("<svg><foreignObject></foreignObject></svg>", false)]
    [InlineData("<p <script>", false)]
    [InlineData("<!-- x -->", false)]
    public void Fragment_WithAnythingActiveOrOutside_IsNotSafe(string html, bool safe) => Assert.Equal(safe, HtmlFragment.IsSafe(html));

    internal static async Task<string> SeasonPage() => NotebookPage.Render((await Runs.Season()).Document, Options);
}
