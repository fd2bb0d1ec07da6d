using System.Runtime.CompilerServices;
using System.Text;

namespace FarmEconomics.Records;

/// <summary>
/// An interpolated text in a farm's way of writing: its own words follow the farm's unit of length, the numbers put into it its decimal
/// mark; what else is put into it stays as it is.
/// </summary>
[InterpolatedStringHandler]
public readonly struct NotationText
{
    private readonly StringBuilder built;
    private readonly Notation notation;

    /// <summary>Starts a text; called by the compiler.</summary>
    /// <param name="literalLength">Characters of the text's own words.</param>
    /// <param name="formattedCount">How many values are put in.</param>
    /// <param name="notation">How the farm writes.</param>
    public NotationText(int literalLength, int formattedCount, Notation notation)
    {
        ArgumentNullException.ThrowIfNull(notation);
        built = new StringBuilder(literalLength + (formattedCount * 8));
        this.notation = notation;
    }

    /// <summary>Adds the text's own words, in the farm's unit.</summary>
    /// <param name="words">The words as written for feet.</param>
    public void AppendLiteral(string words) => built.Append(notation.Label(words));

    /// <summary>Adds a value; a number in the farm's way.</summary>
    /// <typeparam name="T">Its type.</typeparam>
    /// <param name="value">The value.</param>
    public void AppendFormatted<T>(T value) => AppendFormatted(value, 0, null);

    /// <summary>Adds a value in a format; a number in the farm's way.</summary>
    /// <typeparam name="T">Its type.</typeparam>
    /// <param name="value">The value.</param>
    /// <param name="format">Its format, or null.</param>
    public void AppendFormatted<T>(T value, string? format) => AppendFormatted(value, 0, format);

    /// <summary>Adds a value at a width; a number in the farm's way.</summary>
    /// <typeparam name="T">Its type.</typeparam>
    /// <param name="value">The value.</param>
    /// <param name="alignment">Its least width; below 0 it stands on the left of it.</param>
    /// <param name="format">Its format, or null.</param>
    public void AppendFormatted<T>(T value, int alignment, string? format = null)
    {
        string text = (value is IFormattable formattable ? formattable.ToString(format, notation.Culture) : value?.ToString()) ?? "";
        built.Append(alignment < 0 ? text.PadRight(-alignment) : text.PadLeft(alignment));
    }

    /// <summary>The text.</summary>
    public override string ToString() => built.ToString();
}
