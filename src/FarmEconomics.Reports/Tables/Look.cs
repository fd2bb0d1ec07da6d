using System.Globalization;
using FarmEconomics.Records;

namespace FarmEconomics.Reports.Tables;

/// <summary>How a value looks: every number of every table and sentence gets its look here and nowhere else.</summary>
public enum Look
{
    /// <summary>Words.</summary>
    Text,

    /// <summary>Money to the cent, for what must tie out.</summary>
    Money,

    /// <summary>Money in whole units of the currency, for what is compared.</summary>
    WholeMoney,

    /// <summary>Money per something, to the cent; below a cent with the digits that count.</summary>
    Rate,

    /// <summary>Hours to one decimal.</summary>
    Hours,

    /// <summary>A quantity with at most one decimal.</summary>
    Quantity,

    /// <summary>A whole count.</summary>
    Count,

    /// <summary>A share from 0 to 1, shown in percent with one decimal.</summary>
    Percent,

    /// <summary>Any number with up to four decimals, where the exact figure matters.</summary>
    Exact,

    /// <summary>A day in ISO 8601.</summary>
    Date,

    /// <summary>A calendar or crop year: no thousands separator.</summary>
    Year,
}

/// <summary>
/// Turns values into text, in the farm's way of writing. Display rounding only: the numbers themselves are never changed.
/// </summary>
public static class Looks
{
    /// <summary>What a missing value reads as; the reason stands beside it.</summary>
    public const string NotAvailable = "not available";

    /// <summary>A number without a currency sign.</summary>
    public static string Number(this Notation notation, decimal value, Look look) =>
        look switch
        {
            Look.Money => notation.Text($"{Rounded(value, 2):#,0.00}"),
            Look.Rate when Units.Result.DecimalsShown(value) is var decimals => Rounded(value, decimals)
                .ToString("#,0." + new string('0', decimals), notation.Culture),
            Look.WholeMoney or Look.Count => notation.Text($"{Rounded(value, 0):#,0}"),
            Look.Hours => notation.Text($"{Rounded(value, 1):#,0.0}"),
            Look.Quantity => notation.Text($"{Rounded(value, 1):#,0.#}"),
            Look.Percent => notation.Text($"{Rounded(value * 100m, 1):0.0}%"),
            Look.Exact => notation.Text($"{Rounded(value, 4):#,0.####}"),
            Look.Year => notation.Text($"{value:0}"),
            _ => notation.Text($"{value:0.####}"),
        };

    /// <summary>A number with its sign, as a sentence has it: <c>$1,234</c>, <c>-$12.50</c>.</summary>
    public static string InWords(this Notation notation, decimal value, Look look)
    {
        if (look is not (Look.Money or Look.WholeMoney or Look.Rate))
        {
            return notation.Number(value, look);
        }

        string digits = notation.Number(Math.Abs(value), look);
        bool negative = value < 0m && digits.Any(digit => digit is > '0' and <= '9');
        return (negative ? "-" : "") + notation.Prefix + digits;
    }

    /// <summary>A day in ISO 8601.</summary>
    public static string Day(DateOnly day) => day.ToString("yyyy-MM-dd");

    /// <summary>A day of the season, as a sentence has it: <c>Jul 31</c>.</summary>
    internal static string ShortDay(DateOnly day) => day.ToString("MMM d", CultureInfo.InvariantCulture);

    /// <summary>A day with its year, as a sentence has it: <c>Jul 31, 2025</c>.</summary>
    internal static string LongDay(DateOnly day) => day.ToString("MMM d, yyyy", CultureInfo.InvariantCulture);

    /// <summary>A month with its year, as a sentence has it.</summary>
    internal static string Month(DateOnly month) => month.ToString("MMMM yyyy", CultureInfo.InvariantCulture);

    private static decimal Rounded(decimal value, int decimals)
    {
        decimal rounded = decimal.Round(value, decimals, MidpointRounding.AwayFromZero);
        return rounded == 0m ? 0m : rounded; // no "-0"
    }
}
