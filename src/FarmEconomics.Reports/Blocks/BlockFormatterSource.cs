using FarmEconomics.Reports.Display;

namespace FarmEconomics.Reports.Blocks;

/// <summary>
/// Shows a block in a notebook: as HTML with its chart as a picture, as text, and as JSON, by which it is compared with the page's.
/// </summary>
public sealed class BlockFormatterSource
{
    /// <summary>The media type of a block's content.</summary>
    public const string Json = "application/vnd.farm-economics.block+json";

    /// <summary>One formatter each for HTML, plain text and JSON.</summary>
#pragma warning disable CA1822 // Mark members as static: the kernel calls it on an instance
    public IEnumerable<object> CreateTypeFormatters() =>
    [
        new MimeFormatter("text/html", value => HtmlFormatterSource.Guarded(BlockHtml.InNotebook((Block)value).Text)),
        new MimeFormatter("text/plain", value => ((Block)value).ToPlainText()),
        new MimeFormatter(Json, value => ((Block)value).ToJson()),
    ];
#pragma warning restore CA1822
}

/// <summary>Shows a chart in a notebook: a picture, its words, and its data as JSON.</summary>
public sealed class PlotFormatterSource
{
    /// <summary>One formatter each for PNG, plain text and JSON.</summary>
#pragma warning disable CA1822 // Mark members as static: the kernel calls it on an instance
    public IEnumerable<object> CreateTypeFormatters() =>
    [
        new MimeFormatter("image/png", value => Convert.ToBase64String(Drawn((PlotBlock)value).PngWith(((PlotBlock)value).Caption))),
        new MimeFormatter("text/plain", value => ((PlotBlock)value).ToPlainText()),
        new MimeFormatter(BlockFormatterSource.Json, value => ((PlotBlock)value).ToJson()),
    ];
#pragma warning restore CA1822

    private static Figure Drawn(PlotBlock plot) => plot.Chart.Figure ?? BarFigure.Of(plot.Heading ?? "", plot.Chart.Bars!);
}
