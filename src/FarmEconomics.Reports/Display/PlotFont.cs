using ScottPlot;
using SkiaSharp;

namespace FarmEconomics.Reports.Display;

/// <summary>The font of every plot, brought along because a bare machine has none and labels would vanish silently.</summary>
/// <remarks>
/// Page Sans, a subset of the open font Source Sans 3 (license beside the files in Fonts/), the same as the pages use. Safe to call from
/// several threads.
/// </remarks>
public static class PlotFont
{
    /// <summary>The family's name, as it stands in vector pictures.</summary>
    public const string Name = "Page Sans";

    private static readonly Lazy<bool> Registered = new(Register);

    /// <summary>Makes it the font of every plot, whatever family a plot asks for. Further calls do nothing.</summary>
    public static void Use() => _ = Registered.Value;

    /// <summary>Width of a text in this font, regular weight, in the units of <paramref name="size"/>: for keeping labels apart.</summary>
    public static double Width(string text, double size)
    {
        using SKFont font = new(Typeface.Value, (float)size);
        return font.MeasureText(text);
    }

    /// <summary>The font in a size, for who draws without a plot.</summary>
    internal static SKFont In(double size) => new(Typeface.Value, (float)size);

    /// <summary>True where the font has every letter of a text: a picture shows an empty box for one it lacks.</summary>
    internal static bool Holds(string text)
    {
        using SKFont font = new(Typeface.Value);
        return font.ContainsGlyphs(text);
    }

    private static readonly Lazy<SKTypeface> Typeface = new(() =>
        new EmbeddedFontResolver().CreateTypeface(Name, FontWeight.Normal, FontSlant.Upright, FontSpacing.Normal)!
    );

    /// <summary>A text cut to a width, with an ellipsis where it is longer.</summary>
    internal static string Fitted(string text, double width, Func<string, double> measure)
    {
        if (measure(text) <= width)
        {
            return text;
        }

        int length = text.Length;
        while (length > 1 && measure(text[..length] + "…") > width)
        {
            length--;
        }

        return text[..length].TrimEnd() + "…";
    }

    private static bool Register()
    {
        // First in the list: the same letters on every machine, whatever fonts are installed.
        Fonts.FontResolvers.Insert(0, new EmbeddedFontResolver());
        Fonts.Default = Name;
        Fonts.Sans = Name;
        return true;
    }

    private sealed class EmbeddedFontResolver : IFontResolver
    {
        private readonly Lazy<SKTypeface> regular = new(() => Load("PageSans-400.ttf"));
        private readonly Lazy<SKTypeface> bold = new(() => Load("PageSans-600.ttf"));

        public SKTypeface? CreateTypeface(string fontName, FontWeight weight, FontSlant slant, FontSpacing spacing) =>
            // Whatever family is asked for: a plot made before Use(), or by someone else, shows its labels too.
            weight >= FontWeight.SemiBold ? bold.Value : regular.Value;

        public SKTypeface? CreateTypeface(string fontName, bool bold, bool italic) =>
            CreateTypeface(fontName, bold ? FontWeight.Bold : FontWeight.Normal, FontSlant.Upright, FontSpacing.Normal);

        private static SKTypeface Load(string file)
        {
            using Stream stream = typeof(PlotFont).Assembly.GetManifestResourceStream("FarmEconomics.Reports.Fonts." + file)
                ?? throw new InvalidOperationException($"The font {file} is missing from the program.");
            using SKData data = SKData.Create(stream);
            return SKTypeface.FromData(data);
        }
    }
}
