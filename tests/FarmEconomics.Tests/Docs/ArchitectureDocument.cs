using System.Text;
using System.Xml.Linq;
using FarmEconomics.Tests.House;

namespace FarmEconomics.Tests.Docs;

/// <summary>
/// Writes docs/architecture.md: the rooms of the library and the projects around it, with who uses whom as the built assemblies and the
/// projects' references have it. An arrow that follows from two others is left out.
/// </summary>
internal static class ArchitectureDocument
{
    private const string Library = "FarmEconomics";

    private const string Before = """
        # Architecture

        The picture is made from the built code by a test; change the code, then run the tests with `FARM_REWRITE=1`.
        What each room holds stands in [DEVELOPERS.md](../DEVELOPERS.md).

        An arrow leads from what is used to what uses it, the way the data goes; one that follows from others is left out.
        Nobody reaches back, and the library does no input or output, reads no clock, and uses no randomness but by seed.

        """;

    private const string After = """

        ## How a figure comes about

        1. A row of a file becomes a row of a table (`Records`): one array per column, names numbered, sealed once all tables are linked.
        2. A harvest becomes a lot; sales, boxes, losses and the household draw on lots; hours go to plantings (`Tracing`).
        3. The rows of the books and what owning costs become charges, directly or through pools that serve each other (`Costing`).
        4. All of it is one ledger of a season, postings with planting, line, channel, cost driver and source (`SeasonReview.Postings`).
           Every line of every budget is a group-by of it, a line is known or not in one place, and the proof adds the columns up again (`Budgets`).
        5. Decisions, plans, prices and what a lender sees work on that season, or on one worked out again from changed records.
        6. A report is a list of blocks (`Reports`), which the pages, the notebooks and JSON show alike.

        ## Why it is fast

        What an opened farm keeps grows with its rows; nothing may look at every row once per crop, planting or year: `FarmTrace` and `ChargeBook` hold lots, dispositions, hours and charges by crop year.

        Lots, dispositions and their parts are columns, laid out crop by crop, and crops are traced side by side, since no lot is ever drawn on by another crop (`CropLayout`, `RowRanges`).
        A piece of work writes to its own rows only and problems are told in the order of the rows (`CropProblems`), so that every run gives the same bytes.
        What is summed by planting and channel is summed once, while parts are split (`ChannelSums`); the proof adds up the columns themselves (`YearTotals`).
        A charge is large and there are many: who looks for those in pools or on enterprises goes by their places (`ChargesOfYear`), and what of a year is wrong is looked for in all years side by side (`FarmReview.Prepare`).
        Labor, its parts and their charges are plain values in arrays (`LaborTable`, `ChargeList`); `LaborUse` and `Charge` are views made when somebody looks.
        A kind of problem that millions of rows may have is put into words only as often as a list keeps it.

        What several tables and pages need of a season is worked out once, by whoever asks first (`OncePer`), and pages are made side by side.
        What `open` shows is kept by records, season, parameters and files named, so that an answer given once is there at once.
        Times and ratios: [benchmarks.md](benchmarks.md).

        """;

    internal static string Write()
    {
        SortedSet<(string From, string To)> arrows = [];
        foreach (string project in HouseRooms.Assemblies)
        {
            foreach ((string from, string to) in NamespaceUses.Of(Path.Combine(AppContext.BaseDirectory, $"{project}.dll")).Keys)
            {
                Add(arrows, Node(to), Node(from));
            }
        }

        string[] projects = [.. Directory.EnumerateFiles(Path.Combine(Repository.Root, "src"), "*.csproj", SearchOption.AllDirectories)];
        foreach (
            string file in projects
                .Where(file => !HouseRooms.Assemblies.Contains(Path.GetFileNameWithoutExtension(file)))
                .Order(StringComparer.Ordinal)
        )
        {
            foreach (XElement reference in XDocument.Load(file).Descendants("ProjectReference"))
            {
                Add(
                    arrows,
                    Path.GetFileNameWithoutExtension(reference.Attribute("Include")!.Value),
                    Path.GetFileNameWithoutExtension(file)
                );
            }
        }

        return Before + Picture(arrows) + After;
    }

    private static void Add(SortedSet<(string From, string To)> arrows, string from, string to)
    {
        if (from != to && from != Library && to != Library)
        {
            arrows.Add((from, to));
        }
    }

    private static string Picture(SortedSet<(string From, string To)> arrows)
    {
        StringBuilder text = new("\n```mermaid\nflowchart TD\n");
        string[] inside =
        [
            .. HouseRooms.All.Where(room => HouseRooms.IsOfTheLibrary(room) && arrows.Any(arrow => arrow.From == room || arrow.To == room)),
        ];
        text.Append("    subgraph library [the library: records in, figures out]\n");
        foreach (string room in inside)
        {
            text.Append($"        {Short(room)}\n");
        }

        text.Append("    end\n");
        foreach ((string from, string to) in arrows.Where(arrow => !IsRoundabout(arrows, arrow)))
        {
            text.Append($"    {Short(from)} --> {Short(to)}\n");
        }

        return text.Append("```\n").ToString();
    }

    /// <summary>Whether an arrow's end is reached by other arrows too.</summary>
    private static bool IsRoundabout(SortedSet<(string From, string To)> arrows, (string From, string To) arrow)
    {
        HashSet<string> reached = [];
        Queue<string> next = new(arrows.Where(other => other.From == arrow.From && other.To != arrow.To).Select(other => other.To));
        while (next.TryDequeue(out string? node))
        {
            if (node == arrow.To)
            {
                return true;
            }

            if (reached.Add(node))
            {
                arrows.Where(other => other.From == node).Select(other => other.To).ToList().ForEach(next.Enqueue);
            }
        }

        return false;
    }

    private static string Node(string name) =>
        HouseRooms.Of(name) is { } room
            ? room
            : HouseRooms
                .Assemblies.Where(project => project != Library)
                .FirstOrDefault(project => name == project || name.StartsWith(project + ".", StringComparison.Ordinal))
                ?? name;

    private static string Short(string node) => node[(node.IndexOf('.', StringComparison.Ordinal) + 1)..];
}
