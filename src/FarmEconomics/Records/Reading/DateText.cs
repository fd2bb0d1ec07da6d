using System.Globalization;

namespace FarmEconomics.Records.Reading;

/// <summary>Reads days: ISO 8601 always, and the farm's own format when it has one.</summary>
public static class DateText
{
    /// <summary>Reads a day.</summary>
    /// <param name="text">The text.</param>
    /// <param name="format">The farm's own format as <see cref="NormalizeFormat"/> gives it, or null.</param>
    /// <param name="value">The day.</param>
    /// <returns>Whether it is a day of the calendar.</returns>
    public static bool TryRead(ReadOnlySpan<char> text, string? format, out DateOnly value)
    {
        text = text.Trim();
        if (text.Length == 10 && text[4] == '-' && text[7] == '-'
            && TryDigits(text[..4], out int year) && TryDigits(text[5..7], out int month) && TryDigits(text[8..], out int day))
        {
            bool exists = year >= 1 && month is >= 1 and <= 12 && day >= 1 && day <= DateTime.DaysInMonth(year, month);
            value = exists ? new DateOnly(year, month, day) : default;
            return exists;
        }

        value = default;
        return format is not null && DateOnly.TryParseExact(text, format, CultureInfo.InvariantCulture, DateTimeStyles.None, out value);
    }

    /// <summary>
    /// Checks a date format: the letters d, m and y (in any case) with separators, such as <c>DD/MM/YYYY</c> or <c>m-d-yy</c>;
    /// <c>mmm</c> stands for the short English name of the month.
    /// </summary>
    /// <param name="format">The format as written.</param>
    /// <returns>The format for <see cref="TryRead"/>, or null when it is none.</returns>
    public static string? NormalizeFormat(string format)
    {
        string lower = format.Trim().ToLowerInvariant();
        foreach (char c in lower)
        {
            if (c is not ('d' or 'm' or 'y' or '/' or '-' or '.' or ' ' or ','))
            {
                return null;
            }
        }

        // One letter stands for one or two digits, so that 6/3/2025 and 06/03/2025 are both read.
        return Count('d') is 1 or 2 && Count('m') is >= 1 and <= 4 && Count('y') is 2 or 4
            && lower.Contains(new string('d', Count('d')), StringComparison.Ordinal)
            && lower.Contains(new string('m', Count('m')), StringComparison.Ordinal)
            && lower.Contains(new string('y', Count('y')), StringComparison.Ordinal)
            ? lower
                .Replace("dd", "d", StringComparison.Ordinal)
                .Replace(new string('m', Count('m')), Count('m') <= 2 ? "M" : new string('M', Count('m')), StringComparison.Ordinal)
            : null;

        int Count(char letter) => lower.Count(c => c == letter);
    }

    /// <summary>The same, or a form of days that say no year, which stands behind it instead: <c>M/D 2025</c>.</summary>
    /// <param name="form">The form as written.</param>
    /// <returns>The format, null when it is none; what goes behind each day before it is read.</returns>
    internal static (string? Format, string Behind) FormOf(string form) =>
        form.Trim() is { Length: > 5 } whole && whole[^5] == ' ' && whole[^4..].All(char.IsAsciiDigit)
            && NormalizeFormat(whole[..^4] + "YYYY") is { } format ? (format, whole[^5..]) : (NormalizeFormat(form), "");

    private static bool TryDigits(ReadOnlySpan<char> text, out int value)
    {
        value = 0;
        foreach (char c in text)
        {
            if (!char.IsAsciiDigit(c))
            {
                return false;
            }

            value = (value * 10) + (c - '0');
        }

        return true;
    }
}
