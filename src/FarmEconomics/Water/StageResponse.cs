namespace FarmEconomics.Water;

/// <summary>Ky by stage of growth, each against the stage's own need; null: the stage has none of its own.</summary>
/// <param name="Initial">Of the initial stage, 0 or more.</param>
/// <param name="Development">Of crop development.</param>
/// <param name="Mid">Of mid-season.</param>
/// <param name="Late">Of the late season.</param>
public readonly record struct StageResponse(double? Initial, double? Development, double? Mid, double? Late)
{
    /// <summary>True where a stage has one.</summary>
    public bool IsSet => Initial is not null || Development is not null || Mid is not null || Late is not null;

    /// <summary>True where every stage has one: the season's counts nowhere.</summary>
    public bool IsWhole => Initial is not null && Development is not null && Mid is not null && Late is not null;

    /// <summary>That of a stage.</summary>
    /// <param name="stage">The stage.</param>
    /// <returns>Ky; null where it has none of its own.</returns>
    public double? Of(GrowthStage stage) => stage switch
    {
        GrowthStage.Initial => Initial,
        GrowthStage.Development => Development,
        GrowthStage.Mid => Mid,
        _ => Late,
    };
}
