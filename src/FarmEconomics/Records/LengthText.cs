using System.Runtime.CompilerServices;
using System.Text;

namespace FarmEconomics.Records;

/// <summary>An interpolated text whose own words follow the farm's unit of length, while what is put into it stays as it is.</summary>
[InterpolatedStringHandler]
public readonly struct LengthText
{
    private readonly StringBuilder built;
    private readonly LengthUnit unit;

    /// <summary>Starts a text; called by the compiler.</summary>
    /// <param name="literalLength">Characters of the text's own words.</param>
    /// <param name="formattedCount">How many values are put in.</param>
    /// <param name="unit">The farm's unit.</param>
    public LengthText(int literalLength, int formattedCount, LengthUnit unit)
    {
        built = new StringBuilder(literalLength + (formattedCount * 8));
        this.unit = unit;
    }

    /// <summary>Adds the text's own words, in the farm's unit.</summary>
    /// <param name="words">The words as written for feet.</param>
    public void AppendLiteral(string words) => built.Append(unit.Label(words));

    /// <summary>Adds a value as it is.</summary>
    /// <typeparam name="T">Its type.</typeparam>
    /// <param name="value">The value.</param>
    public void AppendFormatted<T>(T value) => AppendFormatted(value, null);

    /// <summary>Adds a value as it is, in a format.</summary>
    /// <typeparam name="T">Its type.</typeparam>
    /// <param name="value">The value.</param>
    /// <param name="format">Its format, or null.</param>
    public void AppendFormatted<T>(T value, string? format) => built.Append(value is IFormattable formattable ? formattable.ToString(format, null) : value?.ToString());

    /// <summary>The text.</summary>
    public override string ToString() => built.ToString();
}
