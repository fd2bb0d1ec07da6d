using System.Globalization;
using System.Net;
using CsCheck;
using FarmEconomics.Reports.Blocks;
using Xunit;

namespace FarmEconomics.Tests.Reports.Blocks;

/// <summary>A page is written through one buffer: every value as .NET's own encoder writes it, at any length.</summary>
public sealed class HtmlWriterTests
{
    private static readonly Gen<string> AnyText = Gen.Char["ab<>&\"' \u2212\u00e9\u00ff\u0100\ud83c\udf45\u2028"].Array[0, 40]
        .Select(letters => new string(letters));

    [Fact]
    public void Texts_AreWrittenAsTheFrameworkEncodesThem() => AnyText.Array[0, 60].Sample(texts =>
    {
        HtmlWriter html = new();
        foreach (string text in texts)
        {
            html.Add($"<b>{text}</b>");
        }

        Assert.Equal(string.Concat(texts.Select(text => $"<b>{WebUtility.HtmlEncode(text)}</b>")), html.ToHtml().Text);
    });

    [Fact]
    public void Numbers_AreInvariantAndGrowTheBuffer() => Gen.Decimal.Array[0, 200].Sample(numbers =>
    {
        HtmlWriter html = new();
        foreach (decimal number in numbers)
        {
            html.Add($"{number:0.####};");
        }

        string expected = string.Concat(numbers.Select(number => number.ToString("0.####", CultureInfo.InvariantCulture) + ";"));
        Assert.Equal(expected, html.ToHtml().Text);
    });

    [Fact]
    public void Values_OfOtherKinds_AreEncodedToo()
    {
        // A char and a day are written by a format; what a format writes may need encoding as well.
        Assert.Equal("&lt; 2025-06-01 &amp;", Html.Of($"{'<'} {new DateOnly(2025, 6, 1):yyyy-MM-dd} {new DateOnly(2025, 6, 1):'&'}").Text);
        Assert.Equal("&lt;i&gt; ", Html.Of($"{new Uri("<i>", UriKind.Relative)} {(object?)null}").Text);
        Assert.Equal("<i>", Html.Of($"{new Html("<i>")}").Text);
    }

    [Fact]
    public void LineEnds_FromAPlaceOn_AreAlike()
    {
        HtmlWriter html = new();
        html.Safe("a\r\nb");
        int from = html.Written.Length;
        html.Safe("c\r\nd\u2028e\rf\n");
        html.EndLinesAlike(from);
        Assert.Equal("a\r\nbc\nd\ne\nf\n", html.ToHtml().Text);
    }
}
