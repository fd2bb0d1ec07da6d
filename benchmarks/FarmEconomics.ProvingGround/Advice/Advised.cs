namespace FarmEconomics.ProvingGround.Advice;

/// <summary>What a grower is told to do with a crop.</summary>
internal enum Move
{
    /// <summary>Nothing: keep, fix, too close to call, can't tell.</summary>
    None,

    /// <summary>Not grown; beds left empty.</summary>
    Drop,

    /// <summary>Not grown; other crops in its beds.</summary>
    Another,

    /// <summary>More of it, where there is room.</summary>
    Grow,

    /// <summary>More of it, in the beds of crops that are told to change.</summary>
    InPlace,
}

/// <summary>Advice on one crop.</summary>
/// <param name="Crop">The crop.</param>
/// <param name="Move">What to do.</param>
internal sealed record Advised(string Crop, Move Move)
{
    /// <summary>What is grown more, with its bed-feet more.</summary>
    internal IReadOnlyList<(string Crop, double Feet)> Grown { get; init; } = [];

    /// <summary>Other crops that give way, with the part of them that does, 0 to 1.</summary>
    internal IReadOnlyList<(string Crop, double Part)> Shrunk { get; init; } = [];

    /// <summary>
    /// What the program says the farm gains by it, $ a season; what it says dropping would gain where nothing is advised; null where it is
    /// said with another crop.
    /// </summary>
    internal double? Said { get; init; }

    /// <summary>What the program says it does to cash, $ a season; null where it doesn't.</summary>
    internal double? SaidCash { get; init; }
}
