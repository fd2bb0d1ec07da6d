using System.Globalization;
using System.Text.RegularExpressions;

namespace FarmEconomics.Records.Reading;

/// <summary>
/// Numbers a person types beside the records: into a field, an option, an assumption. The decimal mark is a point or the farm's own;
/// thousands aren't parted.
/// </summary>
public static partial class TypedNumber
{
    /// <summary>Reads a number.</summary>
    /// <param name="text">The text.</param>
    /// <param name="decimalMark">The farm's decimal mark, <c>.</c> or <c>,</c>.</param>
    /// <returns>The number; null when it is none, or may mean two: 1.500 where a comma is the mark could be 1500.</returns>
    public static decimal? Read(string text, char decimalMark)
    {
        ArgumentNullException.ThrowIfNull(text);
        string digits = text.Trim();
        if (decimalMark == ',')
        {
            if (LikeThousands().IsMatch(digits))
            {
                return null;
            }

            digits = digits.Contains('.', StringComparison.Ordinal) ? digits : digits.Replace(',', '.');
        }

        return decimal.TryParse(
            digits,
            NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint,
            CultureInfo.InvariantCulture,
            out decimal number
        )
            ? number
            : null;
    }

    [GeneratedRegex("^[-+]?[1-9][0-9]{0,2}[.][0-9]{3}$", RegexOptions.CultureInvariant)]
    private static partial Regex LikeThousands();
}
