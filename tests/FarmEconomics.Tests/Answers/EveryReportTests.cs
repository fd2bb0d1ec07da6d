using System.Globalization;
using System.Net;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using FarmEconomics.Files;
using FarmEconomics.Reports.Answers;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.Tests.Answers;

/// <summary>What holds of every report, over the demo farm.</summary>
public partial class EveryReportTests
{
    /// <summary>The most words of a page with its folds closed: prose, headings and captions.</summary>
    private static readonly Dictionary<ReportId, int> MostWords = new()
    {
        [ReportId.Season] = 600,
        [ReportId.Crop] = 500,
        [ReportId.DropOrGrow] = 700,
        [ReportId.NextYear] = 800,
        [ReportId.Prices] = 800,
        [ReportId.SharedCosts] = 700,
        [ReportId.Water] = 600,
        [ReportId.Lender] = 900,
        [ReportId.WhatIf] = 600,
        [ReportId.Records] = 500,
    };

    private static readonly Lazy<ReviewedFarm> Farm = new(() => ReviewedFarm.Of(FarmFolder.Open(Path.Combine(TestFolders.Repository, "demo-data"))));
    private static readonly Lazy<IReadOnlyList<ReviewPage>> Pages = new(() => ReviewBook.Pages(Farm.Value));

    public static TheoryData<ReportId> Reports() => [.. ReportCatalog.All.Select(report => report.Id)];

    [Theory]
    [MemberData(nameof(Reports))]
    public void Keys_StandOnceAPageAndCarryTheReportsName(ReportId id)
    {
        List<BlockKey> keys = [.. BlockJson.Flat(Make(id)).Select(block => block.Key)];
        Assert.Equal(keys.Count, keys.Distinct().Count());
        Assert.Single(keys.Select(key => key.Report).Distinct());
        Assert.Single(Make(id).OfType<HeadlineBlock>());
    }

    [Theory]
    [MemberData(nameof(Reports))]
    public void Pictures_OfANotebook_HoldNoLetterTheirFontLacks(ReportId id)
    {
        foreach (PlotBlock plot in BlockJson.Flat(Make(id)).OfType<PlotBlock>())
        {
            Figure figure = plot.Chart.Figure ?? BarFigure.Of(plot.Heading ?? "", plot.Chart.Bars!);
            Assert.All(
                figure.Plot.GetPlottables<ScottPlot.Plottables.Text>().Select(text => text.LabelText).Append(figure.Title),
                text => Assert.True(PlotFont.Holds(text), $"{plot.Key.Name}: {text}")
            );
        }
    }

    [Theory]
    [MemberData(nameof(Reports))]
    public void Words_OfThePage_StayUnderItsLimit(ReportId id)
    {
        if (!MostWords.TryGetValue(id, out int most))
        {
            return;
        }

        int closed = Words(Closed().Replace(BlockHtml.Of(Make(id).Where(block => block is not FoldBlock)).Text, "")), open = Words(BlockHtml.Of(Make(id)).Text);
        Assert.True(closed <= most, $"{id}: {closed} words, {most} are the most");
        Assert.True(open <= 3 * most, $"{id}: {open} words with folds open, {3 * most} are the most");
    }

    [Theory]
    [MemberData(nameof(Reports))]
    public void HowSure_IsALineOfAtMostTwentyFiveWords(ReportId id) =>
        Assert.All(Make(id).OfType<HeadlineBlock>(), headline => Assert.True((headline.HowSure ?? "").Split(' ').Length <= 25, headline.HowSure));

    [Theory]
    [MemberData(nameof(Reports))]
    public void Figures_AreAtMostFour(ReportId id) => Assert.All(Make(id).OfType<FiguresBlock>(), figures => Assert.InRange(figures.Figures.Count, 1, 4));

    [Theory]
    [MemberData(nameof(Reports))]
    public void Json_MadeTwice_IsTheSame(ReportId id) => Assert.True(JsonNode.DeepEquals(BlockJson.Of(Make(id)), BlockJson.Of(Anew(id))));

    [Fact]
    public void Drawings_UseTheColorsOfRolesAlone() => Assert.All(Pages.Value.Where(page => page.Path.EndsWith(".html", StringComparison.Ordinal)), page =>
        Assert.Empty(Drawing().Matches(page.Html).SelectMany(svg => Color().Matches(svg.Value)).Select(color => color.Groups[1].Value).Where(color => color != "none" && color != "transparent" && !color.StartsWith("var(--", StringComparison.Ordinal) && !color.StartsWith("url(", StringComparison.Ordinal)).Distinct()));

    [Fact]
    public void Links_LeadToPagesAndPlacesThatAreThere()
    {
        Dictionary<string, string> pages = Pages.Value.ToDictionary(page => page.Path, page => page.Html);
        foreach ((string path, string html) in pages.Where(page => page.Key.EndsWith(".html", StringComparison.Ordinal)))
        {
            Assert.DoesNotContain("href=\"farm:", Body(html), StringComparison.Ordinal);
            foreach (string href in Link().Matches(Body(html)).Select(link => WebUtility.HtmlDecode(link.Groups[1].Value)).Where(href => !href.StartsWith('#')))
            {
                string folder = path.Contains('/', StringComparison.Ordinal) ? path[..path.LastIndexOf('/')] + "/" : "";
                string to = Path.GetRelativePath("/x", Path.GetFullPath(Path.Combine("/x", folder, href.Split('#')[0]))).Replace('\\', '/');
                Assert.True(pages.TryGetValue(to, out string? target), $"{path}: {href}");
                Assert.True(!href.Contains('#', StringComparison.Ordinal) || target.Contains($"id=\"{href.Split('#')[1]}\"", StringComparison.Ordinal), $"{path}: {href}");
            }
        }
    }

    [Fact]
    public void Pages_NameNoFolderOfTheMachineAndNothingUnknownCellByCell() => Assert.All(Pages.Value, page =>
    {
        Assert.DoesNotContain(TestFolders.Repository, page.Html, StringComparison.Ordinal);
        Assert.DoesNotContain(">not available<", page.Html, StringComparison.Ordinal);
        Assert.DoesNotContain(" style=", page.Html, StringComparison.Ordinal);
    });

    [Fact]
    public void Tables_OnScreen_HaveAtMostSevenColumns() => Assert.All(
        new[] { ReportId.Season, ReportId.Crop, ReportId.DropOrGrow, ReportId.Prices, ReportId.SharedCosts, ReportId.WhatIf, ReportId.Records }.SelectMany(id => Make(id).Where(block => block is not FoldBlock)).OfType<TableBlock>(), table => Assert.InRange(table.Table.Columns.Count, 1, 7));

    [Theory]
    [InlineData("--paper", 0)]
    [InlineData("--ink", 4.5)]
    [InlineData("--soft", 4.5)]
    [InlineData("--gain", 4.5)]
    [InlineData("--loss", 4.5)]
    [InlineData("--bar", 3)]
    [InlineData("--barloss", 3)]
    [InlineData("--third", 3)]
    [InlineData("--pale", 3)]
    public void Contrast_InLightAndDark_IsHighEnough(string role, double least)
    {
        string[] themes = [.. Regex.Matches(PageShell.Stylesheet, @":root\{[^}]*\}").Select(match => match.Value)];
        foreach (string theme in themes.Where(theme => theme.Contains(role + ":", StringComparison.Ordinal) && theme.Contains("--paper:#", StringComparison.Ordinal)))
        {
            double one = Luminance(Value(theme, role)), paper = Luminance(Value(theme, "--paper"));
            Assert.True((Math.Max(one, paper) + 0.05) / (Math.Min(one, paper) + 0.05) >= least, $"{role} in {theme[..40]}");
        }
    }

    // CSS takes the space behind a letter written by its number for the number's end; a letter of two halves is one number.
    [Fact]
    public void Foot_NameWithSignsAndPictures_IsPrintedAsItIs() =>
        Assert.Equal(
            "@page{@bottom-left{content:\"Hill \\000026  S\u00F6hne \\01f955 , 2025\"}}",
            PageShell.Foot("Hill & S\u00F6hne \U0001F955, 2025", isMetric: false)
        );

    private static readonly Lazy<Dictionary<ReportId, IReadOnlyList<Block>>> Made = new(() => ReportCatalog.All.ToDictionary(report => report.Id, report => Anew(report.Id)));

    private static IReadOnlyList<Block> Make(ReportId id) => Made.Value[id];

    private static IReadOnlyList<Block> Anew(ReportId id) => ReportCatalog.Get(id).Make(Farm.Value, new Dictionary<string, object>(), CancellationToken.None);

    private static string Body(string html) => html[html.IndexOf("<body", StringComparison.Ordinal)..];

    // Table cells, charts and navigation don't count.
    private static int Words(string html) => Regex.Count(WebUtility.HtmlDecode(Regex.Replace(Cells().Replace(Drawing().Replace(html, " "), " "), "<[^>]+>", " ")), @"[\p{L}\p{N}$%.,’'-]*[\p{L}\p{N}][\p{L}\p{N}$%.,’'-]*");

    private static string Value(string theme, string role) => Regex.Match(theme, role + ":#([0-9a-f]{3,6})").Groups[1].Value;

    // Relative luminance and contrast: WCAG 2.2, definitions "relative luminance" and "contrast ratio".
    private static double Luminance(string hex)
    {
        string full = hex.Length == 3 ? string.Concat(hex.Select(c => $"{c}{c}")) : hex;
        double[] parts = [.. Enumerable.Range(0, 3).Select(i => int.Parse(full.AsSpan(2 * i, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0).Select(part => part <= 0.04045 ? part / 12.92 : Math.Pow((part + 0.055) / 1.055, 2.4))];
        return (0.2126 * parts[0]) + (0.7152 * parts[1]) + (0.0722 * parts[2]);
    }

    [GeneratedRegex("<details class=\"data\".*?</details>", RegexOptions.Singleline)]
    private static partial Regex Closed();

    [GeneratedRegex("<svg.*?</svg>", RegexOptions.Singleline)]
    private static partial Regex Drawing();

    [GeneratedRegex("<(thead|tbody|tfoot).*?</\\1>", RegexOptions.Singleline)]
    private static partial Regex Cells();

    [GeneratedRegex("(?:fill|stroke|stop-color)=\"([^\"]*)\"")]
    private static partial Regex Color();

    [GeneratedRegex("<a href=\"([^\"]*)\"")]
    private static partial Regex Link();
}
