using System.Text;

namespace FarmEconomics.Records.Schema;

/// <summary>The form in which headings, settings and words of a list are compared: without case, spaces, hyphens and underscores.</summary>
public static class HeadingKey
{
    /// <summary>The key of a name.</summary>
    /// <param name="name">The name as written.</param>
    /// <returns>The name in lower case without spaces, hyphens and underscores.</returns>
    public static string Of(string name)
    {
        var key = new StringBuilder(name.Length);
        foreach (char c in name)
        {
            if (!char.IsWhiteSpace(c) && c is not ('-' or '_' or '\uFEFF'))
            {
                key.Append(char.ToLowerInvariant(c));
            }
        }

        return key.ToString();
    }
}
