namespace FarmEconomics.Tests.House;

/// <summary>The rooms of all projects, in the order data flows.</summary>
internal static class HouseRooms
{
    private static readonly string[] Library =
    [
        "FarmEconomics.Units",
        "FarmEconomics.Records",
        "FarmEconomics.Tracing",
        "FarmEconomics.Costing",
        "FarmEconomics.Budgets",
        "FarmEconomics.Water",
        "FarmEconomics.Decisions",
        "FarmEconomics.Planning",
        "FarmEconomics.Pricing",
        "FarmEconomics.Funding",
    ];

    internal static IReadOnlyList<string> All { get; } =
        [.. Library, "FarmEconomics.Files", "FarmEconomics.Reports", "FarmEconomics.Notebooks", "FarmEconomics.Page"];

    /// <summary>The built assemblies that are looked into.</summary>
    internal static IReadOnlyList<string> Assemblies { get; } =
    [
        "FarmEconomics",
        "FarmEconomics.Files",
        "FarmEconomics.Reports",
        "FarmEconomics.Solver",
        "FarmEconomics.Notebooks",
        "FarmEconomics.Page",
    ];

    internal static bool IsOfTheLibrary(string room) => Library.Contains(room);

    /// <summary>The room a namespace is in; none where it is in none.</summary>
    internal static string? Of(string name) =>
        All.FirstOrDefault(room => name == room || name.StartsWith(room + ".", StringComparison.Ordinal));

    /// <summary>Where a namespace stands in the order; what is in no room comes last.</summary>
    internal static int Place(string name) => Of(name) is { } room ? All.ToList().IndexOf(room) : All.Count;
}
