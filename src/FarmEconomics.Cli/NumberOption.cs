using FarmEconomics.Records;
using FarmEconomics.Records.Reading;

namespace FarmEconomics.Cli;

/// <summary>A number given to an option. Its decimal mark is a point or the farm's own, so it is read when the farm is known.</summary>
/// <param name="Name">The option.</param>
/// <param name="Text">What was given.</param>
/// <param name="Least">The least it may be.</param>
/// <param name="Most">The most it may be.</param>
internal sealed record NumberOption(string Name, string Text, decimal Least, decimal Most)
{
    /// <summary>The number on this farm.</summary>
    /// <exception cref="WrongUseException">It is none there, or out of range.</exception>
    internal decimal On(Notation notation) => Number(notation.DecimalMark) ?? throw new WrongUseException(Fault(notation));

    internal decimal? Number(char decimalMark) =>
        TypedNumber.Read(Text, decimalMark) is { } number && number >= Least && number <= Most ? number : null;

    internal string Fault(Notation notation) =>
        notation.Text($"{Name} takes a number from {Least:#,0.####} to {Most:#,0.####}, "
            + $"with a decimal {(notation.DecimalMark == ',' ? "comma" : "point")} where need be and no marks between thousands, "
            + $"not '{Text}'.");
}
