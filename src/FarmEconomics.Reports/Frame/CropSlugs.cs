using System.Globalization;
using System.Text;
using FarmEconomics.Records.Reading;

namespace FarmEconomics.Reports.Frame;

/// <summary>
/// Names of crops as addresses: without accents, ASCII letters and digits in small letters, all else a hyphen, 40 at most; empty or
/// reserved becomes <c>crop</c>; equal ones get -2, -3 in ordinal order of the names.
/// </summary>
public sealed class CropSlugs
{
    private const int Longest = 40;

    // Names a file can't have on every machine.
    private static readonly HashSet<string> Reserved =
    [
        .. new[] { "con", "prn", "aux", "nul", "index" },
        .. Enumerable.Range(1, 9).SelectMany(n => new[] { $"com{n}", $"lpt{n}" }),
    ];
    private readonly Dictionary<string, string> bySlug = [];
    private readonly Dictionary<string, string> byName = new(StringComparer.Ordinal);

    /// <summary>Names the crops.</summary>
    /// <param name="crops">All crops of the farm.</param>
    public CropSlugs(IEnumerable<string> crops)
    {
        ArgumentNullException.ThrowIfNull(crops);
        foreach (string crop in crops.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal))
        {
            string wanted = Of(crop);
            string slug = wanted;
            for (int copy = 2; bySlug.ContainsKey(slug); copy++)
            {
                slug = string.Create(CultureInfo.InvariantCulture, $"{wanted}-{copy}");
            }

            bySlug.Add(slug, crop);
            byName.Add(crop, slug);
        }
    }

    /// <summary>The slug of a crop.</summary>
    /// <param name="crop">Its name.</param>
    /// <exception cref="KeyNotFoundException">The farm has no such crop.</exception>
    public string this[string crop] => byName[crop];

    /// <summary>The crop of a slug; null: none.</summary>
    /// <param name="slug">The slug.</param>
    public string? Find(string slug) => bySlug.GetValueOrDefault(slug);

    /// <summary>The slug a name would have were it alone.</summary>
    /// <param name="name">The name.</param>
    public static string Of(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        StringBuilder built = new();
        foreach (char c in PlainLetters.Of(name))
        {
            if (char.IsAsciiLetterOrDigit(c))
            {
                built.Append(c);
            }
            else if (built.Length > 0 && built[^1] != '-')
            {
                built.Append('-');
            }
        }

        string slug = built.ToString().Trim('-');
        slug = (slug.Length > Longest ? slug[..Longest] : slug).Trim('-');
        return slug.Length == 0 || Reserved.Contains(slug) ? "crop" : slug;
    }
}
