using System.Globalization;
using FarmEconomics.Records;
using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Funding;

/// <summary>
/// How an assumption is written: the name it is set by, its title in words, and the way between text and its typed place.
/// </summary>
internal abstract record AssumptionEntry(string Name, string Title, string Unit, string Meaning)
{
    private const string Figure = "{figure}";

    /// <summary>The figure its meaning names, as the farm writes it; null: none.</summary>
    public Func<Notation, string>? Names { get; init; }

    /// <summary>Its meaning with the figure in it.</summary>
    public string MeaningIn(Notation notation) =>
        Names is null ? Meaning : notation.Label(Meaning).Replace(Figure, Names(notation), StringComparison.Ordinal);

    /// <summary>Its value as text, decimals with a point; null: not given.</summary>
    public abstract string? TextOf(FundingAssumptions assumptions);

    /// <summary>The assumptions with its value taken from text.</summary>
    /// <exception cref="ArgumentException">Text that can't be its value.</exception>
    public abstract FundingAssumptions Take(FundingAssumptions assumptions, string text, Notation notation);

    /// <summary>Holds its value against its range.</summary>
    /// <exception cref="ArgumentException">A value outside it.</exception>
    public virtual void Validate(FundingAssumptions assumptions, Notation notation)
    {
    }

    /// <summary>Parts of a list, commas between them.</summary>
    protected static string[] Parts(string text) => text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
}

/// <summary>A number.</summary>
internal sealed record NumberEntry(string Name, string Title, string Unit, string Meaning) : AssumptionEntry(Name, Title, Unit, Meaning)
{
    internal const decimal Largest = 1_000_000_000m;
    private const int MostDecimals = 6;

    public decimal Least { get; init; }

    public decimal Most { get; init; } = Largest;

    public bool Whole { get; init; }

    public required Func<FundingAssumptions, decimal?> Get { get; init; }

    public required Func<FundingAssumptions, decimal, FundingAssumptions> Set { get; init; }

    public override string? TextOf(FundingAssumptions assumptions) => Get(assumptions)?.ToString(CultureInfo.InvariantCulture);

    public override FundingAssumptions Take(FundingAssumptions assumptions, string text, Notation notation)
    {
        decimal value =
            TypedNumber.Read(text, notation.DecimalMark) is { } number
            && Math.Abs(number) <= Largest
            && decimal.Round(number, MostDecimals) == number
                ? number
                : throw new ArgumentException(
                    notation.Text(
                        $"{Name} must be a number ({Unit}) between -{Largest:#,0} and {Largest:#,0} with at most {MostDecimals} decimals "
                            + $"and no marks between thousands, not \"{text}\"."
                    ),
                    nameof(text)
                );
        Check(value, notation);
        return Set(assumptions, value);
    }

    public override void Validate(FundingAssumptions assumptions, Notation notation)
    {
        if (Get(assumptions) is { } value)
        {
            Check(value, notation);
        }
    }

    private void Check(decimal value, Notation notation)
    {
        if (Whole && (value < Least || value > Most || value != decimal.Floor(value)))
        {
            throw new ArgumentException(notation.Text($"{Name} must be a whole number from {Least} to {Most}, not {value}."), Name);
        }

        if (value < Least || value > Most)
        {
            throw new ArgumentException(notation.Text($"{Name} can't be {value}; it must be from {Least} to {Most}."), Name);
        }
    }
}

/// <summary>A word of a few.</summary>
internal sealed record WordEntry<T>(string Name, string Title, string Meaning) : AssumptionEntry(Name, Title, "word", Meaning)
    where T : struct, Enum
{
    public required Func<FundingAssumptions, T> Get { get; init; }

    public required Func<FundingAssumptions, T, FundingAssumptions> Set { get; init; }

    public override string TextOf(FundingAssumptions assumptions) => Words.Of(Get(assumptions));

    public override FundingAssumptions Take(FundingAssumptions assumptions, string text, Notation notation) =>
        Words.TryParse(text, out T value)
            ? Set(assumptions, value)
            : throw new ArgumentException($"{Name} must be one of {string.Join(", ", Words.All<T>())}, not \"{text}\".", nameof(text));
}

/// <summary>A name or any text; a blank one is not given.</summary>
internal sealed record TextEntry(string Name, string Title, string Unit, string Meaning) : AssumptionEntry(Name, Title, Unit, Meaning)
{
    public required Func<FundingAssumptions, string?> Get { get; init; }

    public required Func<FundingAssumptions, string?, FundingAssumptions> Set { get; init; }

    public override string? TextOf(FundingAssumptions assumptions) => Get(assumptions);

    public override FundingAssumptions Take(FundingAssumptions assumptions, string text, Notation notation) =>
        Set(assumptions, text.Length == 0 ? null : text);
}

/// <summary>Several object classes.</summary>
internal sealed record ClassesEntry(string Name, string Title, string Meaning) : AssumptionEntry(Name, Title, "classes", Meaning)
{
    public required Func<FundingAssumptions, IReadOnlyList<ObjectClass>> Get { get; init; }

    public required Func<FundingAssumptions, IReadOnlyList<ObjectClass>, FundingAssumptions> Set { get; init; }

    public override string TextOf(FundingAssumptions assumptions) => string.Join(", ", Get(assumptions).Select(Words.Of));

    public override FundingAssumptions Take(FundingAssumptions assumptions, string text, Notation notation) =>
        Set(
            assumptions,
            [
                .. Parts(text)
                    .Select(word =>
                        Words.TryParse(word, out ObjectClass value)
                            ? value
                            : throw new ArgumentException(
                                $"{Name}: there is no object class \"{word}\"; classes: {string.Join(", ", Words.All<ObjectClass>())}.",
                                nameof(text)
                            )
                    ),
            ]
        );
}

/// <summary>Several percentages, one a year.</summary>
internal sealed record PercentsEntry(string Name, string Title, string Meaning) : AssumptionEntry(Name, Title, "percents", Meaning)
{
    private const int MostYears = 40;
    private const decimal Most = 1000m;

    public required Func<FundingAssumptions, IReadOnlyList<decimal>> Get { get; init; }

    public required Func<FundingAssumptions, IReadOnlyList<decimal>, FundingAssumptions> Set { get; init; }

    public override string? TextOf(FundingAssumptions assumptions) =>
        Get(assumptions) is { Count: > 0 } percents
            ? string.Join(", ", percents.Select(percent => percent.ToString(CultureInfo.InvariantCulture)))
            : null;

    public override FundingAssumptions Take(FundingAssumptions assumptions, string text, Notation notation)
    {
        // A comma parts the years, so a decimal comma can't stand here; a point can.
        decimal[] percents = [.. Parts(text).Select(part => TypedNumber.Read(part, '.') ?? throw Wrong(text))];
        return percents.Length is 0 or > MostYears || percents.Any(percent => percent is < -Most or > Most)
            ? throw Wrong(text)
            : Set(assumptions, percents);
    }

    public override void Validate(FundingAssumptions assumptions, Notation notation)
    {
        if (Get(assumptions) is { } percents && (percents.Count > MostYears || percents.Any(percent => percent is < -Most or > Most)))
        {
            throw Wrong(TextOf(assumptions)!);
        }
    }

    private ArgumentException Wrong(string text) =>
        new($"{Name} must be 1 to {MostYears} percentages, one a year, with commas between them (50, 80, 100), not \"{text}\".", Name);
}
