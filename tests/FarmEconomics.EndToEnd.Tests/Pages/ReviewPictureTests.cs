using System.Net;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using FarmEconomics.EndToEnd.Tests.Support;
using Microsoft.Playwright;

namespace FarmEconomics.EndToEnd.Tests.Pages;

/// <summary>
/// The README's picture is the first page of the demo farm's review as it is now: beside it stand the SHA-256 of the picture and of
/// the words of the page it was taken of. <c>FARM_REWRITE=1</c> takes it again, in a browser.
/// </summary>
public partial class ReviewPictureTests(ReviewedDemo reviewed)
{
    private const int Width = 1280;
    private const int Height = 860;

    private static readonly string Picture = Path.Combine(Repository.Root, "docs", "review.png");
    private static readonly string Sums = Path.Combine(Repository.Root, "docs", "review.sha256");

    [Fact]
    public async Task ReviewPicture_IsOfThePageAsItIs()
    {
        string page = Path.Combine(await reviewed.Folder, "index.html");
        string words = Fingerprint(await File.ReadAllTextAsync(page, TestContext.Current.CancellationToken));
        if (Environment.GetEnvironmentVariable("FARM_REWRITE") == "1")
        {
            await TakeAsync(page, words);
        }

        byte[] picture = await File.ReadAllBytesAsync(Picture, TestContext.Current.CancellationToken);
        string[] sums = await File.ReadAllLinesAsync(Sums, TestContext.Current.CancellationToken);
        Assert.Equal($"{Sum(picture)}  review.png", sums[0]);
        Assert.True(
            sums[1] == $"{words}  words of index.html",
            "docs/review.png shows an earlier page: run this test with FARM_REWRITE=1 and look at the picture");
    }

    [Theory]
    [InlineData("<p>Kale earned <b>$3</b></p>", "<p>Kale earned\n <i>$3</i></p>", true)]
    [InlineData("<style>p { color: red }</style><p>Kale</p>", "<p>Kale</p>", true)]
    [InlineData("<p>Kale earned $3</p>", "<p>Kale earned $4</p>", false)]
    public void Fingerprint_OfTwoPages_IsThatOfTheirWords(string one, string other, bool same) =>
        Assert.Equal(same, Fingerprint(one) == Fingerprint(other));

    private static async Task TakeAsync(string path, string words)
    {
        await using IBrowser browser = await Browser.LaunchAsync();
        IPage page = await browser.NewPageAsync(
            new() { ViewportSize = new() { Width = Width, Height = Height }, ColorScheme = ColorScheme.Light });
        await page.GotoAsync(new Uri(path).AbsoluteUri);
        byte[] picture = await page.ScreenshotAsync(new() { Type = ScreenshotType.Png, Animations = ScreenshotAnimations.Disabled });
        await File.WriteAllBytesAsync(Picture, picture, TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync(
            Sums, $"{Sum(picture)}  review.png\n{words}  words of index.html\n", TestContext.Current.CancellationToken);
    }

    /// <summary>Of what a person reads on a page: not its markup, looks or scripts.</summary>
    private static string Fingerprint(string html)
    {
        string text = WebUtility.HtmlDecode(Markup().Replace(Unread().Replace(html, " "), " "));
        return Sum(Encoding.UTF8.GetBytes(Space().Replace(text, " ").Trim()));
    }

    private static string Sum(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    [GeneratedRegex("<(style|script|head)\\b.*?</\\1>", RegexOptions.Singleline)]
    private static partial Regex Unread();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Markup();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Space();
}
