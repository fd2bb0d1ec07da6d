using FarmEconomics.Records;

namespace FarmEconomics.Decisions.Changes;

/// <summary>What is done with a crop.</summary>
public enum ChangeKind
{
    /// <summary>Not grown; its beds stay empty.</summary>
    Drop,

    /// <summary>Fewer bed-feet of it.</summary>
    Shrink,

    /// <summary>More bed-feet of it.</summary>
    Grow,

    /// <summary>Not grown, another crop in its place.</summary>
    Swap,
}

/// <summary>A change to be judged against the season as it was.</summary>
/// <param name="Kind">What is done.</param>
/// <param name="Crop">The crop, in any case.</param>
/// <param name="Feet">Bed-feet, for shrink and grow; above 0.</param>
/// <param name="Replacement">The crop that takes its place, for swap.</param>
/// <param name="Elasticity">
/// Price elasticity of demand in every channel, by size: 2 means 2% more sold for a price 1% lower. Null: each channel's own, 2 unless it
/// says otherwise. Not 0; the sign doesn't matter to the user, who may write -2. Boxes and the household take nothing more at any price.
/// </param>
public sealed record Change(ChangeKind Kind, string Crop, decimal Feet = 0m, string? Replacement = null, decimal? Elasticity = null)
{
    /// <summary>How the farm writes, and the unit <see cref="Feet"/> is in; whoever judges the change sets the farm's.</summary>
    public Notation Notation { get; init; } = Notation.Default;

    /// <summary>"Drop Beets", "Grow Carrots by 50 bed-feet".</summary>
    public string Title => Kind switch
    {
        ChangeKind.Drop => $"Drop {Crop}",
        ChangeKind.Shrink => Notation.Text($"Shrink {Crop} by {Feet:0.#} bed-feet"),
        ChangeKind.Grow => Notation.Text($"Grow {Crop} by {Feet:0.#} bed-feet"),
        _ => $"Swap {Crop} for {Replacement}",
    };
}
