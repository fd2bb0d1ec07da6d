using SkiaSharp;

namespace FarmEconomics.Reports.Display;

/// <summary>A picture with words below it.</summary>
internal static class CaptionedPng
{
    /// <summary>Picture pixels for one CSS pixel.</summary>
    internal const int Scale = 2;

    private const int LineHeight = 20;
    private const int Margin = 20;
    private const double Size = 13;

    internal static byte[] Of(byte[] png, string caption, int width)
    {
        using SKBitmap picture = SKBitmap.Decode(png);
        List<string> lines = Lines(caption, width - (2 * Margin));
        using SKSurface surface = SKSurface.Create(
            new SKImageInfo(picture.Width, picture.Height + (((lines.Count * LineHeight) + Margin) * Scale)));
        surface.Canvas.Clear(SKColor.Parse(PageColors.Paper));
        surface.Canvas.DrawBitmap(picture, 0, 0);
        using SKFont font = PlotFont.In(Size * Scale);
        using SKPaint paint = new() { Color = SKColor.Parse(PageColors.Soft), IsAntialias = true };
        foreach ((int index, string line) in lines.Index())
        {
            surface.Canvas.DrawText(line, Margin * Scale, picture.Height + ((index + 1) * LineHeight * Scale), font, paint);
        }

        using SKImage image = surface.Snapshot();
        using SKData data = image.Encode(SKEncodedImageFormat.Png, quality: 100);
        return data.ToArray();
    }

    /// <summary>The words in lines no wider than a width; a word that is wider stands alone.</summary>
    internal static List<string> Lines(string text, double width)
    {
        List<string> lines = [];
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            string longer = lines.Count == 0 ? word : $"{lines[^1]} {word}";
            if (lines.Count > 0 && PlotFont.Width(longer, Size) <= width)
            {
                lines[^1] = longer;
            }
            else
            {
                lines.Add(word);
            }
        }

        return lines;
    }
}
