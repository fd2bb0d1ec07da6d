using System.Buffers.Binary;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Display;
using ScottPlot;
using SkiaSharp;
using Xunit;

namespace FarmEconomics.Tests.Reports.Display;

public class FigureTests
{
    [Fact]
    public void Text_OfAPlot_ReallyShows()
    {
        // The frame stays put, so only letters can differ; on a machine without fonts they used to vanish silently.
        SKBitmap with = Bitmap(Make("Lettuce earns most", "a point"));
        SKBitmap without = Bitmap(Make("", ""));
        Assert.True(Different(with, without, 0, 30) > 300, "the title is missing");
        Assert.True(Different(with, without, 40, 340) > 50, "the label in the plot is missing");
    }

    [Fact]
    public void Font_OfEveryFamilyAskedFor_IsTheOneBroughtAlong()
    {
        PlotFont.Use();
        PlotFont.Use();
        Assert.Single(Fonts.FontResolvers, resolver => resolver.GetType().Name == "EmbeddedFontResolver");
        Assert.Equal("EmbeddedFontResolver", Fonts.FontResolvers[0].GetType().Name);
        SKTypeface regular = Fonts.FontResolvers[0].CreateTypeface("No Such Family", FontWeight.Normal, FontSlant.Upright, FontSpacing.Normal)!;
        SKTypeface bold = Fonts.FontResolvers[0].CreateTypeface("", FontWeight.Bold, FontSlant.Upright, FontSpacing.Normal)!;
        Assert.Equal((PlotFont.Name, false), (regular.FamilyName, regular.IsBold));
        Assert.Equal((PlotFont.Name, true), (bold.FamilyName, bold.IsBold));
    }

    /// <summary>Axes that find their own ends move at the first drawing: what is drawn on no paper must count as one.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Svg_IsWhatThePlottingLibraryWrites(bool fixedAxes)
    {
        Plot Drawn()
        {
            Plot plot = Make("Lettuce earns most", "a point").Plot;
            plot.Add.Scatter(new double[] { 1, 2, 30 }, new double[] { 4, -5, 600 });
            if (fixedAxes)
            {
                plot.Axes.SetLimits(0, 10, 0, 10);
            }

            return plot;
        }

        string Inline(string file) => FigureSvg.Inline(file, "alt", 500, 300);
        Assert.Equal(Inline(Drawn().GetSvgXml(500, 300)), Inline(FigureSvg.Draw(Drawn(), 500, 300)));
    }

    [Fact]
    public void Png_AtTwice_HasTwiceThePixels()
    {
        byte[] png = new Figure(new Plot(), "empty", 300, 200).Png();
        Assert.Equal((600, 400), (BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)), BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(20))));
    }

    /// <summary>
    /// A page sets the caption above the drawing; a notebook shows a picture alone, and the unit of its bars went missing.
    /// </summary>
    [Fact]
    public void Png_WithACaption_ShowsItBelow()
    {
        Figure figure = new(new Plot(), "empty", 300, 200);
        using SKBitmap plain = SKBitmap.Decode(figure.PngWith(null)), with = SKBitmap.Decode(figure.PngWith("Gallons a week, 2025."));
        Assert.Equal(plain.Width, with.Width);
        Assert.True(with.Height > plain.Height);
        int letters = Enumerable.Range(plain.Height, with.Height - plain.Height)
            .Sum(y => Enumerable.Range(0, with.Width).Count(x => with.GetPixel(x, y).Red < 160));
        Assert.True(letters > 100, $"{letters} dark pixels below the plot");
    }

    [Theory]
    [InlineData(1000, 1)]
    [InlineData(100, 3)]
    public void Caption_WiderThanItsPicture_Wraps(int width, int lines)
    {
        List<string> wrapped = CaptionedPng.Lines("Short of full cost at the market, $ in 2025", width);
        Assert.Equal(lines, wrapped.Count);
        Assert.Equal("Short of full cost at the market, $ in 2025", string.Join(' ', wrapped));
    }

    [Fact]
    public void Pictures_OfTheSamePlot_AreTheSameBytes()
    {
        Assert.Equal(Make("a", "b").Png(), Make("a", "b").Png());
        Assert.Equal(Make("a", "b").Svg(), Make("a", "b").Svg());
    }

    [Fact]
    public void Svg_OfAFigure_IsAnElementWithRoleLabelAndViewBox()
    {
        Figure figure = Make("Beans < carrots & \"peas\"", "id=\"x\" url(#y)");
        string svg = figure.Svg();
        Assert.StartsWith("<svg ", svg, StringComparison.Ordinal);
        XElement root = XElement.Parse(svg);
        Assert.Equal("img", (string?)root.Attribute("role"));
        Assert.Equal(figure.Alt, (string?)root.Attribute("aria-label"));
        Assert.Equal("0 0 640 360", (string?)root.Attribute("viewBox"));
        string[] texts = [.. root.Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value)];
        Assert.Contains("Beans < carrots & \"peas\"", texts);
        Assert.Contains("id=\"x\" url(#y)", texts);
        Assert.Empty(root.Descendants().Attributes("style"));
    }

    [Theory]
    [InlineData(0, "", "<rect width=\"40\" height=\"30\"/>", false)]
    [InlineData(10, "", "<rect y=\"10\" width=\"40\" height=\"20\"/>", false)]
    [InlineData(0, "", "<rect y=\"10\" width=\"40\" height=\"20\"/>", true)]
    [InlineData(0, "", "<rect x=\"5\" width=\"30\" height=\"30\"/>", true)]
    [InlineData(0, "<circle r=\"2\"/>", "<rect width=\"40\" height=\"30\"/>", true)]
    public void Svg_CutToTheWholeDrawing_IsNotCut(int top, string beside, string clip, bool stays)
    {
        string file = $"<svg>\n<clipPath id=\"a\">\n  {clip}{beside}\n</clipPath>\n<g clip-path=\"url(#a)\">\n  <path d=\"M1 1\"/>\n"
            + "</g>\n</svg>";
        string svg = FigureSvg.Inline(file, "a stroke", 40, 30, top);
        Assert.Equal(stays, svg.Contains("clip", StringComparison.Ordinal));
        Assert.Contains("<path d=\"M1 1\"/>", svg, StringComparison.Ordinal);
    }

    [Fact]
    public void Svg_Ids_AreTheFiguresOwnAndAllUsesFindThem()
    {
        string one = Make("one", "a").Svg();
        string two = Make("two", "a").Svg();
        string[] ids = Ids(one);
        Assert.NotEmpty(ids);
        Assert.Empty(ids.Intersect(Ids(two)));
        foreach (Match use in Regex.Matches(one, @"url\(#([^)]*)\)"))
        {
            Assert.Contains(use.Groups[1].Value, ids);
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData(" ")]
    public void Figure_WithoutWords_IsRefused(string alt) => Assert.Throws<ArgumentException>(() => new Figure(new Plot(), alt));

    [Fact]
    public void Displays_InTheReportLibrary_AllTellAKernelHow()
    {
        Type[] displays = [.. typeof(IHtmlDisplay).Assembly.GetTypes().Where(t => t is { IsClass: true, IsAbstract: false } && typeof(IHtmlDisplay).IsAssignableFrom(t))];
        Assert.Contains(typeof(Prose), displays);
        foreach (Type display in displays)
        {
            TypeFormatterSourceAttribute? source = display.GetCustomAttributes(true).OfType<TypeFormatterSourceAttribute>().SingleOrDefault();
            Assert.True(
                (source is { PreferredMimeTypes: ["text/html", "text/plain"] } && source.FormatterSourceType == typeof(HtmlFormatterSource))
                || (source is { PreferredMimeTypes: ["text/html" or "image/png", "text/plain", BlockFormatterSource.Json] } && typeof(Block).IsAssignableFrom(display)),
                $"{display.Name} has no [TypeFormatterSource(typeof(HtmlFormatterSource), PreferredMimeTypes = [\"text/html\", \"text/plain\"])]; a block tells its JSON as well");
        }
    }

    [Fact]
    public void Font_OfPlots_HoldsLettersOfThreeScriptsAndNoArrow()
    {
        Assert.True(PlotFont.Holds("Kohlrabi żž Ω ж −$3 1.5×€ ›"));
        Assert.False(PlotFont.Holds("3 → 4"));
    }

    [Theory]
    [InlineData("<tr><th scope=\"row\">Kale</th><td class=\"n loss\">1</td><td class=\"num\">2</td></tr>", 1)]
    [InlineData("<thead><tr><th scope=\"col\" class=\"l h\">Crop</th><th class=\"n\">Left<small>$</small></th><td>why</td></tr></thead>", 2)]
    public void Words_OfATableInANotebook_StandAtTheLeft(string table, int words)
    {
        string shown = HtmlFormatterSource.Guarded(table);
        Assert.Equal(words, Regex.Count(shown, "text-align:left"));
        Assert.DoesNotMatch("text-align:left[^>]*class=\"n", shown);
        Assert.Equal(table.Contains("<small>", StringComparison.Ordinal), shown.Contains("<br><small>", StringComparison.Ordinal));
        Assert.Equal(table, HtmlFormatterSource.Unguarded(shown));
    }

    private static Figure Make(string title, string label)
    {
        PlotFont.Use();
        Plot plot = new();
        plot.Title(title);
        plot.Add.Scatter(new double[] { 0, 1, 2 }, new double[] { 1, 3, 2 });
        plot.Add.Text(label, 0.5, 1.5);
        plot.Axes.SetLimits(-1, 3, 0, 4);
        plot.Layout.Fixed(new PixelPadding(50, 20, 30, 40));
        return new Figure(plot, "Three points; lettuce < beans & \"peas\".", 640, 360);
    }

    private static SKBitmap Bitmap(Figure figure) => SKBitmap.Decode(figure.Png(scale: 1));

    private static int Different(SKBitmap one, SKBitmap two, int fromRow, int toRow) =>
        Enumerable.Range(fromRow, toRow - fromRow).Sum(y => Enumerable.Range(0, one.Width).Count(x => one.GetPixel(x, y) != two.GetPixel(x, y)));

    private static string[] Ids(string svg) => [.. Regex.Matches(svg, @"\sid=""([^""]*)""").Select(m => m.Groups[1].Value)];
}
