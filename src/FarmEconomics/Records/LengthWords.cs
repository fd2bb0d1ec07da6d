namespace FarmEconomics.Records;

/// <summary>Words for lengths in the farm's unit.</summary>
public static class LengthWords
{
    private static readonly (string Feet, string Meters)[] Pairs =
    [
        ("bed-feet", "bed-meters"), ("Bed-feet", "Bed-meters"), ("bed-foot", "bed-meter"), ("Bed-foot", "Bed-meter"),
        ("bed_feet", "bed_meters"), ("bed_foot", "bed_meter"), ("bed feet", "bed meters"), ("bed foot", "bed meter"),
    ];

    /// <summary>The short name of the unit.</summary>
    /// <param name="unit">The farm's unit.</param>
    /// <returns><c>ft</c> or <c>m</c>.</returns>
    public static string Short(this LengthUnit unit) => unit == LengthUnit.M ? "m" : "ft";

    /// <summary>A label or heading of a result in the farm's unit: <c>per bed-foot</c> becomes <c>per bed-meter</c>.</summary>
    /// <param name="unit">The farm's unit.</param>
    /// <param name="text">The label as written for feet.</param>
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
}
