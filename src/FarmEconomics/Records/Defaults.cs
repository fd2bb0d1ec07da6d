namespace FarmEconomics.Records;

/// <summary>Tasks, categories and pools shipped with the program; a grower's row of the same name replaces one.</summary>
public static class Defaults
{
    private static readonly SourceLine BuiltIn = new("built-in", 0);

    /// <summary>Built-in tasks.</summary>
    public static IReadOnlyList<TaskRow> Tasks { get; } =
        [.. Enum.GetValues<Stage>().Select(stage => new TaskRow { Task = stage.ToString().ToLowerInvariant(), Stage = stage, Source = BuiltIn })];

    /// <summary>Built-in categories.</summary>
    public static IReadOnlyList<CategoryRow> Categories { get; } = [];

    /// <summary>Built-in pools.</summary>
    public static IReadOnlyList<PoolRow> Pools { get; } =
    [
        Pool("seed and plants", "input-rates", StatementLine.Materials, VariesWith.Area),
        Pool("fertility and crop supplies", "bed-feet", StatementLine.Materials, VariesWith.Area),
        Pool("packaging", "input-rates", StatementLine.Selling, VariesWith.Quantity),
        Pool("selling general", "sales-value", StatementLine.Selling, VariesWith.Sales),
        Pool("nursery work", "tray-days", StatementLine.Labor, VariesWith.Area),
        Pool("grow work", "bed-foot-days", StatementLine.Labor, VariesWith.Area),
        Pool("harvest work", "quantity-crates", StatementLine.Labor, VariesWith.Quantity),
        Pool("pack work", "quantity-crates", StatementLine.Labor, VariesWith.Quantity),
        Pool("sell work", "sales-value", StatementLine.Labor, VariesWith.Sales),
        Pool("unlogged labor", "bed-foot-days", StatementLine.Labor, VariesWith.Area),
        Pool("general overhead", "bed-foot-days", StatementLine.Overhead, VariesWith.Nothing),
    ];

    private static PoolRow Pool(string name, string basis, StatementLine line, VariesWith variesWith) =>
        new() { Pool = name, Basis = basis, StatementLine = line, VariesWith = variesWith, Source = BuiltIn };
}
