using System.Globalization;
using System.Text.RegularExpressions;
using FarmEconomics.Files.Importing.Sources;
using FarmEconomics.Records;
using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Editing;

/// <summary>What a person types into a field of a row, as the records write it: only where it can mean one thing.</summary>
public static partial class TypedFields
{
    /// <summary>A text as the records write it: 4/15/2025 is 2025-04-15, 1,200 is 1200; 4/6/2025 stays, since it may be two days.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="column">The column it is for.</param>
    /// <param name="settings">The farm's settings.</param>
    /// <returns>The text to write; the same where the records read it, or it may mean two things, or nothing.</returns>
    public static string Written(string text, ColumnSchema column, FarmSettings settings)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(column);
        ArgumentNullException.ThrowIfNull(settings);
        return column.Type switch
        {
            ColumnType.Date => Day(text, settings.DateFormat) ?? text,
            ColumnType.Number when settings.DecimalMark == '.' && Thousands().IsMatch(text.Trim()) => text.Trim().Replace(",", "",
                StringComparison.Ordinal),
            _ => text,
        };
    }

    private static string? Day(string text, string? format)
    {
        if (DateText.TryRead(text, format, out _))
        {
            return null;
        }

        DateOnly[] days =
        [
            .. DateForms.Of([text], out int read)
                .Select(form => DateForms.TryRead(text, form, out DateOnly day) ? day : default)
                .Where(day => read > 0 && day != default)
                .Distinct(),
        ];
        return days.Length == 1 ? days[0].ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) : null;
    }

    [GeneratedRegex("^[1-9][0-9]{0,2}(,[0-9]{3})+([.][0-9]+)?$", RegexOptions.CultureInvariant)]
    private static partial Regex Thousands();
}
