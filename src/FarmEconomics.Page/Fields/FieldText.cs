using System.Text.RegularExpressions;
using FarmEconomics.Records;
using FarmEconomics.Records.Reading;

namespace FarmEconomics.Page.Fields;

/// <summary>Reads what a person typed into a field.</summary>
internal static class FieldText
{
    /// <summary>A number as people write it: with the farm's decimal mark or a dot, perhaps a sign of currency or percent.</summary>
    internal static decimal? Number(string text, char decimalMark)
    {
        string digits = string.Concat(text.Where(c => !char.IsWhiteSpace(c) && c is not ('$' or '€' or '£' or '%' or '\u2212')));
        digits = text.TrimStart().StartsWith('\u2212') ? "-" + digits : digits;
        return TypedNumber.Read(digits, decimalMark);
    }

    /// <summary>What is wrong with a value, in a sentence for beside the field; null when nothing is.</summary>
    internal static string? Fault(PageField field, string text, char decimalMark)
    {
        switch (field.Kind)
        {
            case FieldKind.Choice:
                return field.Options.Any(option => option.Value == text)
                    ? null
                    : $"“{text}” is not among the choices; choose one from the list.";
            case FieldKind.Whole or FieldKind.Number:
                if (Number(text, decimalMark) is not { } number)
                {
                    return text.Length == 0
                        ? $"Give a number{Bounds(field, decimalMark)}."
                        : text.All(char.IsAsciiDigit)
                        ? $"{text} is out of range; give a number{Bounds(field, decimalMark)}."
                        : $"“{text}” is not a number; write "
                            + (WithoutThousands(text, decimalMark) ?? "digits, such as " + Example(field, decimalMark)) + ".";
                }

                if (field.Kind == FieldKind.Whole && (number != decimal.Truncate(number) || number is > int.MaxValue or < int.MinValue))
                {
                    return "Give a whole number.";
                }

                if (Foreign(field, text) is { } sign)
                {
                    return $"“{text}” has a {sign} sign; give the value itself, such as {Example(field, decimalMark)}.";
                }

                return number < field.Lowest || number > field.Highest
                    ? $"{text} is out of range; give a number{Bounds(field, decimalMark)}."
                    : null;
            default:
                return text.Length > 2000 ? "That is too long; 2,000 letters are the most." : null;
        }
    }

    // Pages part thousands, and a number copied from one isn't read: what to write instead is told, never guessed.
    private static string? WithoutThousands(string text, char decimalMark) =>
        Regex.IsMatch(text, decimalMark == ',' ? @"^\D?\d{1,3}([.]\d{3})+(,\d+)?$" : @"^\D?\d{1,3}(,\d{3})+([.]\d+)?$")
            ? $"it as {text.Replace(decimalMark == ',' ? "." : ",", "", StringComparison.Ordinal)}" : null;

    private static string Example(PageField field, char decimalMark) => field.Kind == FieldKind.Whole ? "12" : $"4{decimalMark}50";

    // 10% of a wage is no wage of 10, and 5 dollars are no 5%.
    private static string? Foreign(PageField field, string text)
    {
        bool isPercent = field.Unit?.Contains('%', StringComparison.Ordinal) == true;
        return isPercent ? text.IndexOfAny(['$', '€', '£']) is >= 0 and int at ? text[at].ToString() : null
            : text.Contains('%', StringComparison.Ordinal) ? "%" : null;
    }

    /// <summary>The bounds in words, to end "give a number"; empty when there are none.</summary>
    internal static string Bounds(PageField field, char decimalMark) =>
        Range(field, decimalMark) is not { } range ? ""
        : range.EndsWith("more", StringComparison.Ordinal) ? $" of {range}"
        : $" from {range}";

    /// <summary>The range in short: <c>0 to 99</c>, <c>0 or more</c> where no one would reach the top; null when there is none.</summary>
    internal static string? Range(PageField field, char decimalMark)
    {
        Notation notation = Notation.Default with { DecimalMark = decimalMark };
        return field is not { Lowest: { } lowest, Highest: { } highest } ? null
            : highest >= 10_000m ? notation.Text($"{lowest:0.##} or more")
            : notation.Text($"{lowest:0.##} to {highest:0.##}");
    }
}
