namespace FarmEconomics.Records;

/// <summary>
/// Words for lengths in the farm's unit: the one place that turns texts written for feet into those of a farm that measures in meters.
/// Nothing is converted, only named.
/// </summary>
public static class LengthWords
{
    private static readonly (string Feet, string Meters)[] Pairs =
    [
        ("feet above the sea", "meters above the sea"), ("inches of water", "millimeters of water"),
        ("bed-feet", "bed-meters"), ("Bed-feet", "Bed-meters"), ("bed-foot", "bed-meter"), ("Bed-foot", "Bed-meter"),
        ("bed_feet", "bed_meters"), ("bed_foot", "bed_meter"), ("bed feet", "bed meters"), ("bed foot", "bed meter"),
        ("feet of bed", "meters of bed"), ("a foot", "a meter"), ("inches", "centimeters"),
        ("lb, bunch", "kg, bunch"), ("0.3125 lb", "0.14 kg"), ("gallon", "liter"), ("Gallon", "Liter"),
        ("An acre", "A hectare"), ("an acre", "a hectare"), ("acre", "hectare"),
    ];

    /// <summary>The short name of the unit.</summary>
    /// <param name="unit">The farm's unit.</param>
    /// <returns><c>ft</c> or <c>m</c>.</returns>
    public static string Short(this LengthUnit unit) => unit == LengthUnit.M ? "m" : "ft";

    /// <summary>The short name of the unit of widths.</summary>
    /// <param name="unit">The farm's unit of lengths.</param>
    /// <returns><c>in</c> or <c>cm</c>.</returns>
    public static string WidthShort(this LengthUnit unit) => unit == LengthUnit.M ? "cm" : "in";

    /// <summary>A label or heading of a result in the farm's unit: <c>per bed-foot</c> becomes <c>per bed-meter</c>.</summary>
    /// <param name="unit">The farm's unit.</param>
    /// <param name="text">The label as written for feet; our own words only, no names from the records.</param>
    /// <returns>The label.</returns>
    public static string Label(this LengthUnit unit, string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (unit == LengthUnit.M)
        {
            foreach ((string feet, string meters) in Pairs)
            {
                text = text.Replace(feet, meters, StringComparison.Ordinal);
            }
        }

        return text;
    }

    /// <summary>
    /// A word of a grower's table as documented for feet: <c>bed-meter-days</c> or <c>Bed metre days</c> of a farm in meters becomes
    /// <c>bed-foot-days</c>.
    /// </summary>
    /// <param name="unit">The farm's unit.</param>
    /// <param name="word">The word as written.</param>
    /// <returns>The word with its length in feet; the same for a farm in feet.</returns>
    public static string Documented(this LengthUnit unit, string word)
    {
        ArgumentNullException.ThrowIfNull(word);
        if (unit != LengthUnit.M)
        {
            return word;
        }

        string like = word.Replace("metre", "meter", StringComparison.OrdinalIgnoreCase);
        return like.Replace("meters", "feet", StringComparison.OrdinalIgnoreCase)
            .Replace("meter", "foot", StringComparison.OrdinalIgnoreCase);
    }
}
