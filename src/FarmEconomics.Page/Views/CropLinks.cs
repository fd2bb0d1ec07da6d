using System.Net;
using System.Text.RegularExpressions;
using FarmEconomics.Reports.Frame;

namespace FarmEconomics.Page.Views;

/// <summary>Makes every figure of a crop a link to its explanation, in the tables that mark their rows with the crop's name.</summary>
internal static partial class CropLinks
{
    /// <summary>Adds the links.</summary>
    /// <param name="html">Tables as the library writes them: a marked row names its crop, a marked cell the part of the
    /// explanation.</param>
    /// <param name="query">The query of the page, without a question mark: year and settings go along.</param>
    internal static string Add(string html, string query) => Row().Replace(html, row =>
    {
        string crop = WebUtility.HtmlDecode(row.Groups["crop"].Value);
        return Cell().Replace(row.Value, cell =>
        {
            string part = cell.Groups["part"].Value;
            string href = $"/explain?crop={Uri.EscapeDataString(crop)}{(query.Length > 0 ? "&" + query : "")}#{part}";
            return $"{cell.Groups["open"].Value}<a href=\"{PageShell.Encode(href)}\">{cell.Groups["text"].Value}</a>";
        });
    });

    [GeneratedRegex("<tr data-opens=\"(?<crop>[^\"]*)\">.*?</tr>", RegexOptions.Singleline)]
    private static partial Regex Row();

    [GeneratedRegex("(?<open><td[^>]*\\sdata-part=\"(?<part>[a-z]+)\"[^>]*>)(?<text>[^<]+)")]
    private static partial Regex Cell();
}
