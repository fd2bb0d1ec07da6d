namespace FarmEconomics.Planning.Programs;

/// <summary>
/// A linear program: choose quantities within their bounds and under limits so that the objective is the most. Quantities and limits are
/// known by the order they were added in. Not safe to share between threads while it is being made.
/// </summary>
public sealed class LinearModel
{
    private readonly List<Quantity> quantities = [];
    private readonly List<Limit> limits = [];
    private readonly List<Entry> entries = [];

    /// <summary>The quantities to choose.</summary>
    public IReadOnlyList<Quantity> Quantities => quantities;

    /// <summary>The limits.</summary>
    public IReadOnlyList<Limit> Limits => limits;

    /// <summary>How much of each limit a unit of each quantity takes; a pair that stands here twice counts with the sum.</summary>
    public IReadOnlyList<Entry> Entries => entries;

    /// <summary>Adds a quantity to choose.</summary>
    /// <param name="name">What it is called.</param>
    /// <param name="worth">What one more unit adds to the objective.</param>
    /// <param name="most">The most it can be; infinity: no bound.</param>
    /// <param name="least">The least it can be.</param>
    /// <param name="isWhole">True where only whole numbers will do.</param>
    /// <returns>Its place.</returns>
    public int AddQuantity(string name, double worth, double most = double.PositiveInfinity, double least = 0.0, bool isWhole = false)
    {
        quantities.Add(new Quantity(name, worth, least, most, isWhole));
        return quantities.Count - 1;
    }

    /// <summary>Adds a limit.</summary>
    /// <param name="name">What it is called.</param>
    /// <param name="least">The least the sum may come to; minus infinity: no bound.</param>
    /// <param name="most">The most the sum may come to; infinity: no bound.</param>
    /// <returns>Its place.</returns>
    public int AddLimit(string name, double least, double most)
    {
        limits.Add(new Limit(name, least, most));
        return limits.Count - 1;
    }

    /// <summary>Says how much of a limit a unit of a quantity takes.</summary>
    /// <param name="limit">The limit's place.</param>
    /// <param name="quantity">The quantity's place.</param>
    /// <param name="takes">What a unit takes; below 0 where it gives.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such limit or quantity.</exception>
    public void Set(int limit, int quantity, double takes)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(limit, limits.Count);
        ArgumentOutOfRangeException.ThrowIfNegative(limit);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(quantity, quantities.Count);
        ArgumentOutOfRangeException.ThrowIfNegative(quantity);
        if (takes != 0.0)
        {
            entries.Add(new Entry(limit, quantity, takes));
        }
    }
}

/// <summary>A quantity to choose.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Worth">What one more unit adds to the objective.</param>
/// <param name="Least">The least it can be.</param>
/// <param name="Most">The most it can be.</param>
/// <param name="IsWhole">True where only whole numbers will do.</param>
public sealed record Quantity(string Name, double Worth, double Least, double Most, bool IsWhole);

/// <summary>A limit on a weighted sum of quantities.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Least">The least the sum may come to.</param>
/// <param name="Most">The most the sum may come to.</param>
public sealed record Limit(string Name, double Least, double Most);

/// <summary>How much of a limit a unit of a quantity takes.</summary>
/// <param name="Limit">The limit's place.</param>
/// <param name="Quantity">The quantity's place.</param>
/// <param name="Takes">What a unit takes.</param>
public readonly record struct Entry(int Limit, int Quantity, double Takes);
