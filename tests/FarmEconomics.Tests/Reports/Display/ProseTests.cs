using System.Net;
using System.Text.RegularExpressions;
using CsCheck;
using FarmEconomics.Reports.Display;
using Xunit;

namespace FarmEconomics.Tests.Reports.Display;

public class ProseTests
{
    [Fact]
    public void Prose_WithMarks_IsHtmlAndPlainText()
    {
        Prose prose = new("Carrots earned **$4.25** a bed-foot.");
        Assert.Equal("<p>Carrots earned <strong>$4.25</strong> a bed-foot.</p>\n", prose.ToHtml());
        Assert.Equal("Carrots earned $4.25 a bed-foot.", prose.ToPlainText());
    }

    [Fact]
    public void Table_RightAligned_HasAClassAndNoStyle() =>
        Assert.Contains("<td class=\"num\">1.50</td>", new Prose("| a | b |\n|:--|--:|\n| x | 1.50 |").ToHtml(), StringComparison.Ordinal);

    [Theory]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("a <b onclick=\"x()\">b</b>")]
    [InlineData("[x](javascript:alert(1))")]
    [InlineData("[x](JavaScript&#58;alert(1))")]
    [InlineData("<javascript:alert(1)>")]
    [InlineData("![x](https://example.org/a.png)")]
    [InlineData("[x](//example.org)")]
    public void Markdown_WithSomethingActiveOrOutside_LosesIt(string markdown)
    {
        string html = SafeMarkdown.ToHtml(markdown);
        Assert.DoesNotMatch("<(script|b|img)", html);
        Assert.DoesNotMatch("(href|src)=\"(?!#\")", html);
    }

    [Fact]
    public void Link_ToAPage_Stays() =>
        Assert.Contains("href=\"02-season-review.html#beds\"", SafeMarkdown.ToHtml("[x](02-season-review.html#beds)"), StringComparison.Ordinal);

    [Fact]
    public void Text_FromARecord_ShowsAsItIs() =>
        // Whatever a grower typed into a name comes out as the same characters, and as nothing else.
        Gen.Char[' ', '~'].Array[0, 30].Select(chars => new string(chars)).Sample(name =>
        {
            string html = new Prose($"x{Prose.Text(name)}x").ToHtml();
            Match paragraph = Regex.Match(html, @"\A<p>([^<>]*)</p>\n\z");
            Assert.True(paragraph.Success, html);
            Assert.Equal($"x{name}x", WebUtility.HtmlDecode(paragraph.Groups[1].Value));
        });
}
