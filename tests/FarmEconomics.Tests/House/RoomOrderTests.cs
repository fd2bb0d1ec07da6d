using Xunit;

namespace FarmEconomics.Tests.House;

/// <summary>
/// The order of rooms, by the symbols of the built assemblies: data flows one way, and no two namespaces know each other both ways.
/// </summary>
public class RoomOrderTests
{
    /// <summary>
    /// Pairs of namespaces that still know each other, each with its reason. Nothing is added here: a pair that is parted goes.
    /// </summary>
    private static readonly (string One, string Other, string Why)[] Pairs =
    [
        ("FarmEconomics.Records", "FarmEconomics.Records.Schema", "rows declare their table, and the words of a basis are listed beside the declarations"),
        ("FarmEconomics.Records", "FarmEconomics.Records.Storage", "rows are views of columns, and columns hold kinds and places that stand with the rows"),
        ("FarmEconomics.Records", "FarmEconomics.Records.Checks", "a table's declaration names its checks"),
        ("FarmEconomics.Records.Checks", "FarmEconomics.Records.Schema", "a table's declaration names its checks, which read declarations"),
        ("FarmEconomics.Records.Schema", "FarmEconomics.Records.Storage", "a declared column is the column that stores it"),
        ("FarmEconomics.Records.Checks", "FarmEconomics.Records.Reading", "settings are read with the problems that checks name"),
        ("FarmEconomics.Records.Checks", "FarmEconomics.Records.Completeness", "control totals are checked and listed"),
        ("FarmEconomics.Decisions", "FarmEconomics.Decisions.Chances", "a verdict holds its chances, which are drawn from the what-if model"),
        ("FarmEconomics.Decisions", "FarmEconomics.Decisions.Avoidable", "a season's costs say what goes with a crop, which is told from them"),
        ("FarmEconomics.Decisions.Avoidable", "FarmEconomics.Decisions.Changes", "a change takes what goes with a crop, and boxes are filled as a change moves them"),
        ("FarmEconomics.Decisions", "FarmEconomics.Decisions.Changes", "a verdict holds its changes, which are judged with avoidable costs"),
        ("FarmEconomics.Files", "FarmEconomics.Files.Reading", "a folder is read table by table into what the folder's reading holds"),
        ("FarmEconomics.Files.Inputs", "FarmEconomics.Files.Reading", "an input tells its headings, which the reader checks"),
        ("FarmEconomics.Files.Inputs", "FarmEconomics.Files.Workbooks.Reading", "a sheet is an input"),
        ("FarmEconomics.Files.Importing", "FarmEconomics.Files.Reading", "headings are checked alike for imported files"),
        ("FarmEconomics.Reports.Shared", "FarmEconomics.Reports.Words", "sentences stand apart from the tables they speak of"),
        ("FarmEconomics.Reports.Plots", "FarmEconomics.Reports.Words", "sentences stand apart from the pictures they speak of"),
        ("FarmEconomics.Page", "FarmEconomics.Page.Faults", "the server's faults are pages of it"),
        ("FarmEconomics.Page", "FarmEconomics.Page.Runs", "runs are started by routes and shown on pages"),
    ];

    public static TheoryData<string> ProjectNames => [.. HouseRooms.Assemblies];

    [Theory]
    [MemberData(nameof(ProjectNames))]
    public void Rooms_UseEarlierOnesOnly(string project)
    {
        List<string> reaching = [];
        foreach (((string from, string to), string type) in Uses(project))
        {
            if (HouseRooms.Place(from) < HouseRooms.Place(to))
            {
                reaching.Add($"{from}.{type} uses {to}");
            }
        }

        Assert.Equal("", string.Join('\n', reaching.Order(StringComparer.Ordinal)));
    }

    [Theory]
    [MemberData(nameof(ProjectNames))]
    public void Namespaces_NeverKnowEachOtherBothWays(string project)
    {
        IReadOnlyDictionary<(string From, string To), string> uses = Uses(project);
        Assert.Equal("", string.Join('\n', uses.Where(use => string.CompareOrdinal(use.Key.From, use.Key.To) < 0 && uses.ContainsKey((use.Key.To, use.Key.From))
                && !Pairs.Any(pair => (pair.One, pair.Other) == use.Key))
            .Select(use => $"{use.Key.From} ({use.Value}) and {use.Key.To} ({uses[(use.Key.To, use.Key.From)]})")));
    }

    [Fact]
    public void Pairs_AreStillNeeded()
    {
        List<(string From, string To)> all = [.. HouseRooms.Assemblies.SelectMany(project => Uses(project).Keys)];
        Assert.All(Pairs, pair => Assert.True(all.Contains((pair.One, pair.Other)) && all.Contains((pair.Other, pair.One)), $"{pair.One} and {pair.Other} no longer know each other"));
    }

    [Fact]
    public void Uses_OfTheLibrary_AreSeenInSignaturesAndInCode()
    {
        IReadOnlyDictionary<(string From, string To), string> uses = Uses("FarmEconomics");
        Assert.Contains(("FarmEconomics.Budgets", "FarmEconomics.Tracing"), uses.Keys);
        Assert.DoesNotContain(("FarmEconomics.Tracing", "FarmEconomics.Budgets"), uses.Keys);
    }

    private static IReadOnlyDictionary<(string From, string To), string> Uses(string project) => NamespaceUses.Of(Path.Combine(AppContext.BaseDirectory, $"{project}.dll"));
}
