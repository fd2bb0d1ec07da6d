using System.Net;
using System.Text.RegularExpressions;

namespace FarmEconomics.Files;

/// <summary>
/// Texts that leave the machine name a grower's folder and never say where it lies: that tells a name, a disk, an employer.
/// </summary>
internal static class PathWords
{
    /// <summary>The text with the name alone where it holds the full path; also as HTML and as program text write it.</summary>
    /// <param name="text">The text.</param>
    /// <param name="path">A file or folder, in full.</param>
    internal static string Hidden(string text, string path)
    {
        string full = Path.TrimEndingDirectorySeparator(path);
        string name = Path.GetFileName(full);
        if (name.Length == 0)
        {
            return text;
        }

        string escaped = full.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal);
        foreach (
            string form in new[] { full, escaped, WebUtility.HtmlEncode(full) }
                .Distinct()
                .Where(form => text.Contains(form, StringComparison.Ordinal))
        )
        {
            // Not in the middle of a longer path or word: the folder may be called /a.
            text = Regex.Replace(
                text,
                $@"(?<![\w./\\:<-]){Regex.Escape(form)}(?![\w-])",
                name.Replace("$", "$$", StringComparison.Ordinal),
                RegexOptions.CultureInvariant
            );
        }

        return text;
    }
}
