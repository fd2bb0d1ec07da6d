using System.Net;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

namespace FarmEconomics.Reports.Display;

/// <summary>Turns a plot's SVG file into an element that can stand inside an HTML page, many to a page.</summary>
internal static partial class FigureSvg
{
    /// <summary>Strips the prologue, adds a viewBox, a role and a label, and makes the ids the figure's own.</summary>
    /// <remarks>The prefix comes from the content, so the same records give the same bytes.</remarks>
    public static string Inline(string xml, string alt, int width, int height)
    {
        int start = xml.IndexOf("<svg", StringComparison.Ordinal);
        int body = xml.IndexOf('>', start) + 1;
        string inner = xml[body..];
        // The writer numbers ids on through the whole process; numbered anew, the same plot gives the same bytes.
        Dictionary<string, int> numbers = [];
        inner = Retag(inner, id => $"\u0001{Number(numbers, id)}");
        string prefix = "f" + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(alt + "\n" + inner)))[..10] + "-";
        inner = inner.Replace("\u0001", prefix, StringComparison.Ordinal);
        inner = inner.Replace($"font-family=\"{PlotFont.Name}\"", $"font-family=\"{PlotFont.Name}, Segoe UI, system-ui, sans-serif\"", StringComparison.Ordinal);
        inner = Layout().Replace(inner, "");
        return $"<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" "
            + $"viewBox=\"0 0 {width} {height}\" width=\"{width}\" height=\"{height}\" role=\"img\" aria-label=\"{WebUtility.HtmlEncode(alt)}\">"
            + inner.Trim();
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

    [GeneratedRegex("<[^<>]+>")]
    private static partial Regex Tag();

    [GeneratedRegex("\\sid=\"([^\"]*)\"")]
    private static partial Regex IdAttribute();

    [GeneratedRegex("(url\\(|href=\")#([^)\"]*)")]
    private static partial Regex IdUse();

    // The indentation the SVG writer puts around tags and inside text elements.
    [GeneratedRegex("(?<=>)\\s*\\n\\s*|\\s*\\n\\s*(?=<)")]
    private static partial Regex Layout();
}
