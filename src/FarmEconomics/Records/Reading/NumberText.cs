using System.Globalization;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Records.Reading;

/// <summary>What is wrong with the text of a number.</summary>
public enum NumberFault
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>It can't be read as a number.</summary>
    NotANumber,

    /// <summary>More decimals than the column allows.</summary>
    TooManyDecimals,

    /// <summary>A million million or more.</summary>
    TooLarge,
}

/// <summary>
/// Reads numbers as a grower writes them. Plain columns take digits, one decimal mark and a sign. Money columns also take a
/// currency sign on either side, thousands separators in groups of three, a trailing minus and accounting negatives <c>(12.50)</c>.
/// Percent columns also take a trailing <c>%</c>, columns of hours a time (<see cref="HoursText"/>). Trailing zeros don't count as
/// decimals.
/// </summary>
public static class NumberText
{
    private const int MaxWholeDigits = 12;

    /// <summary>Reads a number.</summary>
    /// <param name="text">The text; must not be blank.</param>
    /// <param name="column">The column it stands in.</param>
    /// <param name="decimalMark">The farm's decimal mark, <c>.</c> or <c>,</c>.</param>
    /// <param name="value">The value, 0 when there is a fault.</param>
    /// <returns>What is wrong with it.</returns>
    public static NumberFault Read(ReadOnlySpan<char> text, ColumnSchema column, char decimalMark, out decimal value)
    {
        value = 0m;
        if (column.Type == ColumnType.Hours && HoursText.TryRead(text, decimalMark, out value))
        {
            return NumberFault.None;
        }

        bool money = column.IsMoney;
        text = text.Trim();
        bool negative = false;
        if (money && text.Length > 2 && text[0] == '(' && text[^1] == ')')
        {
            text = text[1..^1].Trim();
            negative = true;
        }

        if (!TryTakeSigns(ref text, money, column.Type == ColumnType.Percent, ref negative))
        {
            return NumberFault.NotANumber;
        }

        NumberFault fault = ReadDigits(text, money, decimalMark, column.MaxDecimals, out ulong whole, out ulong decimals, out int scale);
        if (fault == NumberFault.None)
        {
            // At most 12 whole digits and 10 decimals: both parts fit 64 bits, their sum the 96 bits of a decimal.
            value = whole + new decimal((int)(uint)decimals, (int)(uint)(decimals >> 32), 0, isNegative: false, (byte)scale);
            value = negative && value != 0m ? -value : value;
        }

        return fault;
    }

    private static bool TryTakeSigns(ref ReadOnlySpan<char> text, bool money, bool percent, ref bool negative)
    {
        bool signed = negative;
        bool currency = !money;
        while (text.Length > 0 && !char.IsAsciiDigit(text[0]) && text[0] is not ('.' or ','))
        {
            if (!TryTakeOne(text[0], ref signed, ref currency, ref negative))
            {
                return false;
            }

            text = text[1..].TrimStart();
        }

        if (percent && text.Length > 0 && text[^1] == '%')
        {
            text = text[..^1].TrimEnd();
        }

        while (money && text.Length > 0 && !char.IsAsciiDigit(text[^1]) && text[^1] is not ('.' or ',' or '+'))
        {
            if (!TryTakeOne(text[^1], ref signed, ref currency, ref negative))
            {
                return false;
            }

            text = text[..^1].TrimEnd();
        }

        return text.Length > 0;
    }

    private static bool TryTakeOne(char c, ref bool signed, ref bool currency, ref bool negative)
    {
        if (c is '-' or '+' or '\u2212')
        {
            bool first = !signed;
            signed = true;
            negative |= c != '+';
            return first;
        }

        bool firstCurrency = !currency;
        currency = true;
        return firstCurrency && char.GetUnicodeCategory(c) == UnicodeCategory.CurrencySymbol;
    }

    private static NumberFault ReadDigits(
        ReadOnlySpan<char> text,
        bool grouped,
        char mark,
        int maxDecimals,
        out ulong wholeDigits,
        out ulong decimalDigits,
        out int scale
    )
    {
        decimalDigits = 0;
        scale = 0;
        int at = text.IndexOf(mark);
        ReadOnlySpan<char> whole = at < 0 ? text : text[..at];
        ReadOnlySpan<char> decimals = at < 0 ? [] : text[(at + 1)..].TrimEnd('0');
        int digitsAfterMark = at < 0 ? 0 : text.Length - at - 1;
        int digits = ReadWhole(whole, grouped, mark, out wholeDigits);
        if ((whole.Length == 0 && digitsAfterMark == 0) || digits < 0)
        {
            return NumberFault.NotANumber;
        }

        foreach (char c in decimals)
        {
            if (!char.IsAsciiDigit(c))
            {
                return NumberFault.NotANumber;
            }

            if (++scale <= maxDecimals)
            {
                decimalDigits = (decimalDigits * 10) + (uint)(c - '0');
            }
        }

        return digits > MaxWholeDigits ? NumberFault.TooLarge : scale > maxDecimals ? NumberFault.TooManyDecimals : NumberFault.None;
    }

    /// <returns>How many digits that count stand before the mark; -1 where something else does.</returns>
    private static int ReadWhole(ReadOnlySpan<char> whole, bool grouped, char mark, out ulong wholeDigits)
    {
        wholeDigits = 0;
        int sinceSeparator = 0;
        int digits = 0;
        char separator = '\0';
        foreach (char c in whole)
        {
            if (char.IsAsciiDigit(c))
            {
                sinceSeparator++;
                digits += digits > 0 || c != '0' ? 1 : 0;
                wholeDigits = digits <= MaxWholeDigits ? (wholeDigits * 10) + (uint)(c - '0') : wholeDigits;
                continue;
            }

            bool known =
                separator == '\0'
                    ? grouped && IsSeparator(c, mark) && sinceSeparator is 1 or 2 or 3
                    : c == separator && sinceSeparator == 3;
            if (!known || !grouped || !IsSeparator(c, mark))
            {
                return -1;
            }

            separator = c;
            sinceSeparator = 0;
        }

        return separator != '\0' && sinceSeparator != 3 ? -1 : digits;
    }

    private static bool IsSeparator(char c, char mark) =>
        c is ' ' or '\u00A0' or '\u202F' or '\u2009' or '\'' or '\u2019' || c == (mark == '.' ? ',' : '.');
}
