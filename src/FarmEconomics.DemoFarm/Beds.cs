namespace FarmEconomics.DemoFarm;

/// <summary>A permanent bed, or a shelf of trays.</summary>
internal sealed record Bed(string Name, int Length, int Width, string Block, string? Structure);

/// <summary>
/// Six blocks of sixteen beds in the open, thirty-six inches wide, two unheated tunnels, one heated house and two shelves of trays.
/// </summary>
internal static class Beds
{
    /// <summary>Width of a bed in inches; the paths between, wide enough for a barrow, are two feet.</summary>
    public const int Width = 36;

    public const string TunnelOne = "Long Tunnel";
    public const string TunnelTwo = "Ridge Tunnel";
    public const string WarmHouse = "Warm House";
    public const string Rack = "Tray Room";

    public static readonly string[] Blocks = ["Lane", "Alder", "Wall", "Pond", "Stile", "Far"];

    public static readonly IReadOnlyList<Bed> All = [.. Field(), .. Inside()];

    private static IEnumerable<Bed> Field() =>
        from block in Blocks
        from number in Enumerable.Range(1, 16)
        select new Bed($"{block} {number:00}", 100, Width, block, null);

    private static IEnumerable<Bed> Inside()
    {
        foreach (var (structure, beds, length) in new[] { (TunnelOne, 5, 90), (TunnelTwo, 5, 90), (WarmHouse, 4, 60) })
        {
            for (var i = 1; i <= beds; i++)
            {
                yield return new Bed($"{structure} {i}", length, Width, structure, structure);
            }
        }

        // A tray is 10 by 20 inches and lies across the shelf: 20 inches deep, ten inches of length a tray.
        yield return new Bed("Shelf 1", 16, 20, Rack, Rack);
        yield return new Bed("Shelf 2", 16, 20, Rack, Rack);
    }
}
