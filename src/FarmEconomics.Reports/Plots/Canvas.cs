using FarmEconomics.Reports.Display;
using ScottPlot;

namespace FarmEconomics.Reports.Plots;

/// <summary>
/// A plot whose coordinates are the page's pixels, y downwards: what is drawn by hand stands exactly where it was put, so that labels
/// can be kept apart. The title stays the plot's own.
/// </summary>
internal sealed class Canvas
{
    private const int TitleHeight = 34;

    // Smaller is hard to read at the size a page shows it: 12 px where a drawing fills the page or a phone.
    private const double Least = 11.3, LeastOnPhone = 13;

    private readonly Plot plot;
    private readonly int width;
    private readonly int height;

    internal Canvas(string title, int width, int height)
        : this(new Plot(), title, width, height)
    {
    }

    internal Canvas(string title, bool onPhone, int height)
        : this(title, WidthFor(onPhone), height)
    {
    }

    private Canvas(Plot plot, string title, int width, int height)
    {
        this.plot = plot;
        PlotFont.Use();
        this.width = width;
        this.height = height;
        plot.Title(TrueMinus.In(title), FitTitle(title, width));
        plot.HideGrid();
        foreach (IAxis axis in new IAxis[] { plot.Axes.Left, plot.Axes.Right, plot.Axes.Bottom, plot.Axes.Top })
        {
            axis.IsVisible = false;
        }

        plot.Layout.Fixed(new PixelPadding(0, 0, 0, TitleHeight));
        plot.Axes.SetLimits(0, width, 0, Bottom);
    }

    /// <summary>Height of the area below the title.</summary>
    internal int Bottom => height - TitleHeight;

    /// <summary>Width of the whole.</summary>
    internal int Width => width;

    /// <summary>Whether it is drawn for a window of 400 px.</summary>
    internal bool OnPhone => width <= WidthFor(onPhone: true);

    /// <summary>Width of a drawing for a page, or for a window of 400 px.</summary>
    internal static int WidthFor(bool onPhone) => onPhone ? 400 : 900;

    /// <summary>Width of a text here, where small letters are drawn larger on a phone.</summary>
    internal double Measure(string text, double size) => TextWidth(text, size, OnPhone);

    /// <summary>Width of a text on the page, by the metrics of the font that will draw it.</summary>
    internal static double TextWidth(string text, double size, bool onPhone = false) =>
        PlotFont.Width(text, onPhone ? Math.Max(size, LeastOnPhone) : size);

    private readonly List<FigureTip> tips = [];

    internal Figure ToFigure(string alt) => new(plot, alt, width, height) { TitleHeight = TitleHeight, Tips = tips };

    /// <summary>What a reader is told who points at a place.</summary>
    internal void Tip(double x, double y, double w, double h, string text) => tips.Add(new FigureTip(x, y + TitleHeight, w, h, text));

    internal void Rect(double x, double y, double w, double h, Color fill, Color? line = null, double lineWidth = 1)
    {
        ScottPlot.Plottables.Rectangle rectangle = plot.Add.Rectangle(x, x + w, Y(y + h), Y(y));
        rectangle.FillColor = fill;
        rectangle.LineWidth = line is null ? 0 : (float)lineWidth;
        rectangle.LineColor = line ?? fill;
    }

    internal void Line(double x1, double y1, double x2, double y2, Color color, double lineWidth = 1, LinePattern? pattern = null)
    {
        ScottPlot.Plottables.LinePlot line = plot.Add.Line(x1, Y(y1), x2, Y(y2));
        line.Color = color;
        line.LineWidth = (float)lineWidth;
        line.MarkerSize = 0;
        line.LinePattern = pattern ?? LinePattern.Solid;
    }

    internal void Polygon(IEnumerable<(double X, double Y)> points, Color fill)
    {
        ScottPlot.Plottables.Polygon polygon = plot.Add.Polygon(points.Select(point => new Coordinates(point.X, Y(point.Y))).ToArray());
        polygon.FillColor = fill;
        polygon.LineWidth = 0;
        polygon.MarkerSize = 0;
    }

    internal void Dot(double x, double y, double size, Color fill, Color line, MarkerShape shape = MarkerShape.FilledCircle)
    {
        ScottPlot.Plottables.Marker marker = plot.Add.Marker(x, Y(y), shape, (float)size, fill);
        marker.MarkerLineColor = line;
        marker.MarkerLineWidth = 1;
    }

    internal void Text(
        string text,
        double x,
        double y,
        double size = 12,
        Color? color = null,
        Alignment align = Alignment.MiddleLeft,
        bool bold = false,
        float rotation = 0,
        bool halo = false
    )
    {
        if (text.Length == 0)
        {
            return;
        }

        ScottPlot.Plottables.Text label = plot.Add.Text(
            TrueMinus.In(text), x, Y(rotation == 0 ? y - (size * 0.1) : y)); // the middle of the letters lies below that of their box
        label.LabelFontSize = (float)Math.Max(size, OnPhone ? LeastOnPhone : Least);
        label.LabelFontColor = color ?? Palette.Ink;
        label.LabelAlignment = align;
        label.LabelBold = bold;
        label.LabelRotation = rotation;
        label.LabelPadding = 0;
        label.LabelBackgroundColor = halo ? Palette.White.WithAlpha(.8) : Colors.Transparent;
    }

    /// <summary>The width that names take at the left: of the longest, and no more than a part of the drawing.</summary>
    internal double NamesWidth(IEnumerable<string> names, double size, double most) =>
        Math.Min(most, names.Select(name => Measure(name, size)).DefaultIfEmpty(0).Max());

    /// <summary>A name that ends at <paramref name="right"/>, cut where it is longer than <paramref name="room"/>.</summary>
    internal void Name(string name, double right, double y, double size, double room, bool bold = false) =>
        Text(PlotFont.Fitted(name, room, text => Measure(text, size)), right, y, size, Palette.Ink, Alignment.MiddleRight, bold);

    /// <summary>What an axis shows, below it; moved where it would leave the drawing.</summary>
    internal void AxisTitle(string text, Scale scale, double y, double size)
    {
        double half = Measure(text, size) / 2;
        Centered(text, Math.Max(half, Math.Min((scale.From + scale.To) / 2, Width - 4 - half)), y, size, Palette.Soft);
    }

    /// <summary>A text in the middle of a place.</summary>
    internal void Centered(string text, double x, double y, double size, Color? color = null, bool bold = false) =>
        Text(text, x, y, size, color, Alignment.MiddleCenter, bold);

    private static float FitTitle(string title, int width)
    {
        float size = 16;
        while (size > 11 && TextWidth(title, size) * 1.12 > width - 20)
        {
            size -= 0.5f;
        }

        return size;
    }

    private double Y(double down) => Bottom - down;
}
