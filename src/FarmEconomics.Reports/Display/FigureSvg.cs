using System.Globalization;
using System.Net;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using ScottPlot;
using SkiaSharp;

namespace FarmEconomics.Reports.Display;

/// <summary>Turns a plot's SVG file into an element that can stand inside an HTML page, many to a page.</summary>
internal static partial class FigureSvg
{
    /// <summary>
    /// The plot as an SVG file, byte for byte as <see cref="Plot.GetSvgXml"/> writes it. That one first paints a picture nobody sees, so
    /// that axes find their ends before the file begins; a canvas that draws nothing does as well.
    /// </summary>
    /// <param name="plot">The plot; its axes move.</param>
    /// <param name="width">Width of the drawing.</param>
    /// <param name="height">Its height.</param>
    internal static string Draw(Plot plot, int width, int height)
    {
        using (SKNoDrawCanvas nothing = new(width, height))
        {
            plot.Render(nothing, width, height);
        }

        using MemoryStream file = new();
        using (SKCanvas canvas = SKSvgCanvas.Create(new SKRect(0, 0, width, height), file))
        {
            bool clears = plot.RenderManager.ClearCanvasBeforeEachRender;
            plot.RenderManager.ClearCanvasBeforeEachRender = false;
            plot.Render(canvas, width, height);
            plot.RenderManager.ClearCanvasBeforeEachRender = clears;
        }

        return Encoding.UTF8.GetString(file.GetBuffer(), 0, (int)file.Length);
    }

    /// <summary>Strips the prologue, adds a viewBox, a role and a label, and makes the ids the figure's own.</summary>
    /// <param name="xml">The file.</param>
    /// <param name="alt">What it shows.</param>
    /// <param name="width">Its width.</param>
    /// <param name="height">Its height.</param>
    /// <param name="top">How much of its top is left out: the title, where a page has it above.</param>
    /// <remarks>The prefix comes from the content, so the same records give the same bytes.</remarks>
    public static string Inline(string xml, string alt, int width, int height, int top = 0)
    {
        int start = xml.IndexOf("<svg", StringComparison.Ordinal);
        int body = xml.IndexOf('>', start) + 1;
        string inner = WithoutIdleClips(Layout().Replace(xml[body..], ""), width, height, top);
        // The writer numbers ids on through the whole process; numbered anew, the same plot gives the same bytes.
        Dictionary<string, int> numbers = [];
        inner = Retag(inner, id => $"\u0001{Number(numbers, id)}");
        string prefix = "f" + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(alt + "\n" + inner)))[..10] + "-";
        inner = inner.Replace("\u0001", prefix, StringComparison.Ordinal);
        inner = inner.Replace(
            $"font-family=\"{PlotFont.Name}\"",
            $"font-family=\"{PlotFont.Name}, Segoe UI, system-ui, sans-serif\"",
            StringComparison.Ordinal
        );
        inner = ColorUse().Replace(inner, use => PageColors.Roles.TryGetValue(use.Groups["color"].Value, out string? role)
            ? $"{use.Groups["where"].Value}=\"var(--{role},{use.Groups["color"].Value})\"" : use.Value);
        return $"<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" "
            + $"viewBox=\"0 {top} {width} {height - top}\" width=\"{width}\" height=\"{height - top}\" role=\"img\" "
            + $"aria-label=\"{WebUtility.HtmlEncode(alt)}\">"
            + inner.Trim();
    }

    // The writer puts each stroke into a group of its own, most of them cut to the whole drawing, where the element itself cuts: half of
    // a page's elements said nothing.
    private static string WithoutIdleClips(string svg, int width, int height, int top) => ClippedGroup().Replace(svg, group =>
    {
        double Edge(string name) =>
            group.Groups[name] is { Success: true, Value: string text } ? double.Parse(text, CultureInfo.InvariantCulture) : 0;
        bool whole = Edge("x") <= 0 && Edge("y") <= top && Edge("x") + Edge("w") >= width && Edge("y") + Edge("h") >= height;
        return whole ? group.Groups["drawn"].Value : group.Value;
    });

    /// <summary>Adds places to point at, invisible, above what is drawn.</summary>
    internal static string WithTips(string svg, IReadOnlyList<FigureTip> tips)
    {
        StringBuilder rects = new();
        foreach (FigureTip tip in tips)
        {
            rects.Append($"<rect x=\"{Pixel(tip.X)}\" y=\"{Pixel(tip.Y)}\" width=\"{Pixel(tip.W)}\" height=\"{Pixel(tip.H)}\" "
                + $"fill=\"transparent\"><title>{WebUtility.HtmlEncode(tip.Text)}</title></rect>");
        }

        static string Pixel(double at) => at.ToString("0.#", CultureInfo.InvariantCulture);

        return svg.Insert(svg.LastIndexOf("</svg>", StringComparison.Ordinal), rects.ToString());
    }

    // Tag by tag: a label's text may read like an id, and text has its angle brackets encoded.
    private static string Retag(string svg, Func<string, string> rename) => Tag().Replace(svg, tag => IdUse().Replace(
        IdAttribute().Replace(tag.Value, id => $" id=\"{rename(id.Groups[1].Value)}\""),
        use => $"{use.Groups[1].Value}#{rename(use.Groups[2].Value)}"));

    private static int Number(Dictionary<string, int> numbers, string id)
    {
        if (!numbers.TryGetValue(id, out int number))
        {
            number = numbers.Count + 1;
            numbers.Add(id, number);
        }

        return number;
    }

    // A tag that has an id or names one; the others are most of a drawing.
    [GeneratedRegex("<[^<>]*(?:\\sid=\"|url\\(#|href=\"#)[^<>]*>")]
    private static partial Regex Tag();

    [GeneratedRegex("\\sid=\"([^\"]*)\"")]
    private static partial Regex IdAttribute();

    [GeneratedRegex("(url\\(|href=\")#([^)\"]*)")]
    private static partial Regex IdUse();

    [GeneratedRegex("(?<where>fill|stroke|stop-color)=\"(?<color>#[0-9A-Fa-f]{6}|white|black)\"")]
    private static partial Regex ColorUse();

    // A clip of a rectangle and the group that alone uses it; groups of strokes hold no other group.
    [GeneratedRegex("<clipPath id=\"(?<id>[^\"]*)\"><rect(?: x=\"(?<x>[^\"]*)\")?(?: y=\"(?<y>[^\"]*)\")?"
        + " width=\"(?<w>[^\"]*)\" height=\"(?<h>[^\"]*)\"/></clipPath>"
        + "<g clip-path=\"url\\(#\\k<id>\\)\">(?<drawn>(?:(?!<g|</g>).)*)</g>", RegexOptions.Singleline)]
    private static partial Regex ClippedGroup();

    // The indentation the SVG writer puts around tags and inside text elements.
    [GeneratedRegex("(?<=>)\\s*\\n\\s*|\\s*\\n\\s*(?=<)")]
    private static partial Regex Layout();
}
