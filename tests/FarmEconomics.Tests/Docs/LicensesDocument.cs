using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Xml.Linq;
using FarmEconomics.Tests.House;

namespace FarmEconomics.Tests.Docs;

/// <summary>
/// Writes docs/licenses.md from the locked packages of every project of the solution and the license each package names itself.
/// </summary>
internal static class LicensesDocument
{
    private const string Before = """
        # Licenses

        FarmEconomics is under the MIT license ([LICENSE](../LICENSE)).
        This list is made by a test from the locked packages and what each says of itself; run the tests with `FARM_REWRITE=1` after a change.
        Why each of those we chose is there stands in [decisions.md](decisions.md).

        """;

    private const string Shipped = """

        ## In what is shipped

        The packages of the library and of the tool hold or ask for these.
        The letters of pages and plots (`src/FarmEconomics.Reports/Fonts`) are under the SIL Open Font License 1.1, beside them.
        Google.OrTools brings, as natives of one system each, Abseil, Protocol Buffers, RE2, zlib and bzip2, the solvers SCIP and PDLP (Apache-2.0), HiGHS (MIT), and CBC, CLP, CGL, OSI and CoinUtils of COIN-OR (EPL-2.0, unchanged).

        """;

    private const string Others = """

        ## Only to build and test

        Nothing of these is in what is shipped.
        Benchmarks and mutation testing, no part of the solution, have more: decisions.md names them.

        """;

    /// <summary>Licenses read in the package's own file, or at its address, where it names none by a word of the SPDX list.</summary>
    private static readonly Dictionary<string, string> Read = new(StringComparer.OrdinalIgnoreCase)
    {
        ["Apache.Arrow"] = "Apache-2.0",
        ["Bogus"] = "MIT AND BSD-3-Clause",
        ["K4os.Compression.LZ4"] = "MIT",
        ["Microsoft.AspNetCore.Html.Abstractions"] = "Apache-2.0",
        ["System.Data.DataSetExtensions"] = "MIT",
    };

    internal static IReadOnlyList<Package> Packages { get; } = Find();

    internal static string Write()
    {
        StringBuilder text = new(Before);
        text.Append(Shipped);
        AppendTable(text, Packages.Where(package => package.IsShipped));
        text.Append(Others);
        AppendTable(text, Packages.Where(package => !package.IsShipped));
        return text.ToString();
    }

    private static void AppendTable(StringBuilder text, IEnumerable<Package> packages)
    {
        text.Append("\n| package | version | license |\n|---|---|---|\n");
        foreach (Package package in packages)
        {
            text.Append(CultureInfo.InvariantCulture, $"| {package.Name} | {package.Version} | {package.License} |\n");
        }
    }

    private static List<Package> Find()
    {
        SortedDictionary<(string Name, string Version), bool> found = [];
        foreach (string folder in Projects())
        {
            string name = Path.GetFileName(folder);
            bool isShipped =
                folder.StartsWith(Path.Combine(Repository.Root, "src"), StringComparison.Ordinal) && name != "FarmEconomics.DemoFarm";
            foreach ((string package, string version) in Locked(Path.Combine(folder, "packages.lock.json")))
            {
                found[(package, version)] = isShipped || found.GetValueOrDefault((package, version));
            }
        }

        return
        [
            .. found.Select(one => new Package(one.Key.Name, one.Key.Version, License(one.Key.Name, one.Key.Version), one.Value)),
            .. Natives(),
        ];
    }

    private static IEnumerable<string> Projects() =>
        File.ReadLines(Path.Combine(Repository.Root, "FarmEconomics.sln"))
            .Where(line => line.Contains(".csproj\"", StringComparison.Ordinal))
            .Select(line => Path.GetDirectoryName(Path.Combine(Repository.Root, line.Split('"')[5].Replace('\\', '/')))!);

    private static IEnumerable<(string Name, string Version)> Locked(string file)
    {
        using JsonDocument locked = JsonDocument.Parse(File.ReadAllText(file));
        return
        [
            .. locked
                .RootElement.GetProperty("dependencies")
                .EnumerateObject()
                .SelectMany(framework => framework.Value.EnumerateObject())
                .Where(package => package.Value.TryGetProperty("resolved", out _))
                .Select(package => (package.Name, package.Value.GetProperty("resolved").GetString()!)),
        ];
    }

    /// <summary>The solver's packages, which no lock file holds but a list of checksums; the natives of one system only are downloaded.</summary>
    private static IEnumerable<Package> Natives() =>
        File.ReadLines(Path.Combine(Repository.Root, "src", "FarmEconomics.Solver", "packages.sha512"))
            .Select(line => line.Split("  ")[^1].Replace(".nupkg", "", StringComparison.Ordinal))
            .Select(name => (Name: name, At: name.IndexOf(".9.", StringComparison.Ordinal)))
            .Select(part => new Package(part.Name[..part.At], part.Name[(part.At + 1)..], "Apache-2.0", IsShipped: true));

    private static string License(string name, string version)
    {
        string root = Environment.GetEnvironmentVariable("NUGET_PACKAGES")
            ?? Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".nuget", "packages");
        string id = name.ToLowerInvariant();
        XElement metadata = XDocument.Load(Path.Combine(root, id, version.ToLowerInvariant(), $"{id}.nuspec")).Root!.Elements().First();
        XElement? license = metadata.Elements().FirstOrDefault(element => element.Name.LocalName == "license");
        return license?.Attribute("type")?.Value == "expression" ? license.Value : Read.GetValueOrDefault(name, "not read yet");
    }

    /// <summary>A package of the lock files.</summary>
    internal sealed record Package(string Name, string Version, string License, bool IsShipped);
}
