using System.Globalization;
using System.Runtime.CompilerServices;

namespace FarmEconomics.Records;

/// <summary>
/// How a farm writes: its currency, its decimal mark and its unit of length. Every number a person reads is written through it;
/// what a program reads (CSV, Parquet, JSON) is not, and stays the same everywhere.
/// </summary>
/// <param name="Currency">ISO 4217 code of all money.</param>
/// <param name="DecimalMark"><c>.</c> or <c>,</c>; thousands are parted by the other of the two.</param>
/// <param name="LengthUnit">The unit of all lengths.</param>
public sealed record Notation(string Currency, char DecimalMark, LengthUnit LengthUnit)
{
    private static readonly CultureInfo WithComma = MakeComma();

    /// <summary>
    /// How a farm writes whose settings say nothing else; also where no farm is known: many farms in one run, a file without its folder.
    /// </summary>
    public static Notation Default { get; } = new FarmSettings().Notation;

    /// <summary>What formats numbers this way. Dates are the same in both: ISO 8601, months by their English names.</summary>
    public CultureInfo Culture => DecimalMark == ',' ? WithComma : CultureInfo.InvariantCulture;

    /// <summary>The currency's sign, or its code where it has no sign of its own here.</summary>
    public string Sign => Currency switch
    {
        "USD" or "CAD" or "AUD" or "NZD" => "$",
        "EUR" => "€",
        "GBP" => "£",
        _ => Currency,
    };

    /// <summary>What stands before an amount: the sign, or the code and a space.</summary>
    public string Prefix => char.IsLetter(Sign[^1]) ? Sign + " " : Sign;

    /// <summary>A label or heading in the farm's unit of length; our own words only, no names from the records.</summary>
    /// <param name="words">The words as written for feet.</param>
    /// <returns>The label.</returns>
    public string Label(string words) => LengthUnit.Label(words);

    private static CultureInfo MakeComma()
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        NumberFormatInfo numbers = culture.NumberFormat;
        (numbers.NumberDecimalSeparator, numbers.NumberGroupSeparator) = (",", ".");
        (numbers.PercentDecimalSeparator, numbers.PercentGroupSeparator) = (",", ".");
        (numbers.CurrencyDecimalSeparator, numbers.CurrencyGroupSeparator) = (",", ".");
        return CultureInfo.ReadOnly(culture);
    }
}

/// <summary>Texts in a farm's way of writing.</summary>
public static class NotationWords
{
    /// <summary>
    /// A text in the farm's way: its own words follow the unit of length, the numbers put into it the decimal mark; names stay as they are.
    /// </summary>
    /// <param name="notation">How the farm writes.</param>
    /// <param name="text">The text as written for feet.</param>
    /// <returns>The text.</returns>
    public static string Text(this Notation notation, [InterpolatedStringHandlerArgument(nameof(notation))] NotationText text) =>
        text.ToString();
}
