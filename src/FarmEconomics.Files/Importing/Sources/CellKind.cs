using System.Text.RegularExpressions;
using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Importing.Sources;

/// <summary>What a cell looks like.</summary>
internal enum CellKind
{
    Blank, Day, Number, Money, Quantity, Time, Text,
}

/// <summary>Looks at single cells.</summary>
internal static partial class CellKinds
{
    private static readonly ColumnSchema AnyPrice = new("price", ColumnType.Price, "");

    public static CellKind Of(string text)
    {
        text = text.Trim();
        return text.Length == 0 ? CellKind.Blank

            // With a decimal comma points part thousands, and 07.06.2025 could pass for a number.
            : text.Count(c => c == '.') == 2 && DateForms.IsDay(text) ? CellKind.Day
            : IsNumber(text) ? (text.AsSpan().IndexOfAny("$€£") >= 0 ? CellKind.Money : CellKind.Number)
            : ClockText.Minutes(text) is not null && !DateForms.IsDay(text) || ClockText.IsPunches(text)
                || HoursText.TryRead(text, '.', out _) ? CellKind.Time
            : DateForms.IsDay(text) ? CellKind.Day
            : QuantityText.TryRead(text, '.', out _) ? CellKind.Quantity
            : CellKind.Text;
    }

    /// <summary>True for a number as any file may write it: signs, currency, groups, either decimal mark.</summary>
    public static bool IsNumber(string text) => Read(text, '.') is not null || Read(text, ',') is not null;

    /// <summary>The number of a text with any number of decimals; null when it is none.</summary>
    public static decimal? Read(string text, char mark)
    {
        text = text.Trim();
        if (text.Length is 0 or > 60 || text is "$" or "€" or "£")
        {
            return null;
        }

        // Money reading knows currency signs, groups and accounting negatives; more decimals than money has are cut off first and put back.
        int at = text.LastIndexOf(mark);
        Match tail = at < 0 ? Match.Empty : Decimals().Match(text, at + 1);
        string plain = tail.Success && tail.Index == at + 1 ? text[..at] + text[(at + 1 + tail.Length)..] : text;
        if (plain.Length == 0 || !plain.Any(char.IsAsciiDigit))
        {
            plain = text[..Math.Max(at, 0)] + "0" + (tail.Success ? text[(at + 1 + tail.Length)..] : text[Math.Max(at, 0)..]);
        }

        if (NumberText.Read(plain, AnyPrice, mark, out decimal value) != NumberFault.None)
        {
            return null;
        }

        if (!tail.Success || tail.Index != at + 1)
        {
            return value;
        }

        bool below = value < 0m || plain.AsSpan().IndexOfAny("(-\u2212") >= 0;
        string digits = tail.Value.Length > 20 ? tail.Value[..20] : tail.Value;
        decimal part = digits.Length == 0 ? 0m : decimal.Parse("0." + digits, System.Globalization.CultureInfo.InvariantCulture);
        return below ? value - part : value + part;
    }

    [GeneratedRegex(@"\G[0-9]*(?=[^0-9.,]*$)", RegexOptions.CultureInvariant)]
    private static partial Regex Decimals();
}
