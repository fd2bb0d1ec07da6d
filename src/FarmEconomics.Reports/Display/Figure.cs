using ScottPlot;

namespace FarmEconomics.Reports.Display;

/// <summary>A plot with its text alternative and its size on the page.</summary>
/// <remarks>Not for use from several threads at once: rendering changes the plot's own state.</remarks>
[TypeFormatterSource(typeof(FigureFormatterSource), PreferredMimeTypes = ["image/png", "text/plain"])]
public sealed class Figure
{
    private string? svg;

    /// <summary>Makes a figure of a plot.</summary>
    /// <param name="plot">The plot; its text is drawn in the project's own font.</param>
    /// <param name="alt">What the plot shows, in words, for whoever can't see it. Never empty.</param>
    /// <param name="width">Width on the page in CSS pixels.</param>
    /// <param name="height">Height on the page in CSS pixels; up to about 480 stays under half a printed page.</param>
    public Figure(Plot plot, string alt, int width = 900, int height = 480)
    {
        ArgumentNullException.ThrowIfNull(plot);
        ArgumentException.ThrowIfNullOrWhiteSpace(alt);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(width);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(height);
        PlotFont.Use();
        Plot = plot;
        plot.FigureBackground.Color = Color.FromHex(PageColors.Paper);
        plot.Axes.Title.Label.ForeColor = Color.FromHex(PageColors.Ink);
        Alt = alt;
        Width = width;
        Height = height;
    }

    /// <summary>The plot itself.</summary>
    public Plot Plot { get; }

    /// <summary>What the plot shows, in words.</summary>
    public string Alt { get; }

    /// <summary>Width on the page in CSS pixels.</summary>
    public int Width { get; }

    /// <summary>Height on the page in CSS pixels.</summary>
    public int Height { get; }

    /// <summary>The plot's own title.</summary>
    public string Title => Plot.Axes.Title.Label.Text;

    /// <summary>The figure as a PNG picture.</summary>
    /// <param name="scale">Picture pixels for one CSS pixel; 2 is sharp on a good screen and in print.</param>
    public byte[] Png(double scale = 2)
    {
        lock (Plot.Sync)
        {
            double before = Plot.ScaleFactor;
            try
            {
                Plot.ScaleFactor = scale;
                using Image image = Plot.GetImage((int)Math.Round(Width * scale), (int)Math.Round(Height * scale));
                return image.GetImageBytes(ImageFormat.Png);
            }
            finally
            {
                Plot.ScaleFactor = before;
            }
        }
    }

    /// <summary>The same picture with its caption below, as a page sets it above: the units of bars are told nowhere else.</summary>
    /// <param name="caption">The caption; null: none.</param>
    internal byte[] PngWith(string? caption) => caption is null ? Png() : CaptionedPng.Of(Png(CaptionedPng.Scale), caption, Width);

    /// <summary>How much of the top its title takes; 0: the title stands nowhere else.</summary>
    internal int TitleHeight { get; init; }

    /// <summary>What a reader is told who points at a place of the drawing.</summary>
    internal IReadOnlyList<FigureTip> Tips { get; init; } = [];

    /// <summary>The same without its title, for a page that has it above.</summary>
    internal string SvgBelowTitle()
    {
        lock (Plot.Sync)
        {
            return FigureSvg.WithTips(FigureSvg.Inline(FigureSvg.Draw(Plot, Width, Height), Alt, Width, Height, TitleHeight), Tips);
        }
    }

    /// <summary>The figure as an SVG element that can stand inside a page, with a role, a label and ids of its own.</summary>
    public string Svg()
    {
        lock (Plot.Sync)
        {
            return svg ??= FigureSvg.Inline(FigureSvg.Draw(Plot, Width, Height), Alt, Width, Height);
        }
    }
}

/// <summary>A place of a drawing with the exact figure behind it.</summary>
/// <param name="X">Its left edge in the drawing's pixels.</param>
/// <param name="Y">Its upper edge.</param>
/// <param name="W">Its width.</param>
/// <param name="H">Its height.</param>
/// <param name="Text">The figure, in words.</param>
internal sealed record FigureTip(double X, double Y, double W, double H, string Text);
