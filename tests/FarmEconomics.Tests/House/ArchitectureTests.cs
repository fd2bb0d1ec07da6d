using System.Text.RegularExpressions;
using System.Xml.Linq;
using FarmEconomics.Budgets;
using Xunit;

namespace FarmEconomics.Tests.House;

/// <summary>What keeps the house in order beside the order of its rooms: the core calls no file, clock or screen, files stay small.</summary>
public partial class ArchitectureTests
{
    private static readonly string Core = Path.Combine("src", "FarmEconomics");

    /// <summary>Longer than 400 lines, each with its reason.</summary>
    private static readonly string[] LongFiles =
    [
        "src/FarmEconomics/Records/Rows.cs", // one small type per table of the grower's, side by side on purpose
    ];

    [Fact]
    public void Core_FilesStandInTheRoomTheirNamespaceSays() => Assert.All(Repository.Sources(Core), file =>
    {
        string room = Path.GetDirectoryName(Path.GetRelativePath(Path.Combine(Repository.Root, Core), file))!.Replace(Path.DirectorySeparatorChar, '.');
        Assert.Contains($"namespace {(room.Length == 0 ? "FarmEconomics" : "FarmEconomics." + room)};", File.ReadAllText(file), StringComparison.Ordinal);
    });

    [Fact]
    public void Core_ReferencesOnlyANumericsLibrary()
    {
        XDocument project = XDocument.Load(Path.Combine(Repository.Root, Core, "FarmEconomics.csproj"));
        Assert.Equal(["MathNet.Numerics"], project.Descendants("PackageReference").Select(reference => (string)reference.Attribute("Include")!));
        Assert.Empty(project.Descendants("ProjectReference"));
        Assert.DoesNotContain(
            typeof(FarmReview).Assembly.GetReferencedAssemblies(),
            name => !name.Name!.StartsWith("System", StringComparison.Ordinal) && name.Name != "MathNet.Numerics" && name.Name != "netstandard");
    }

    [Theory]
    [InlineData(@"\bDateTime(Offset)?\.(Now|UtcNow|Today)\b", "the clock")]
    [InlineData(@"\bTimeProvider\b|\bStopwatch\b", "the clock")]
    [InlineData(@"\b(File|Directory|FileInfo|DirectoryInfo|FileStream|StreamReader|StreamWriter)\.?\s*[.(]", "files")]
    [InlineData(@"\bConsole\.", "the screen")]
    [InlineData(@"\bnew Random\(\)|\bRandom\.Shared\b|\bGuid\.NewGuid\b", "chance without a seed")]
    [InlineData(@"\bCultureInfo\.(CurrentCulture|CurrentUICulture)\b", "the machine's language")]
    [InlineData(@"\bEnvironment\.(?!NewLine\b)", "the machine")]
    [InlineData(@"\bHttpClient\b|\bProcess\.Start\b", "the world outside")]
    public void Core_NeverCalls(string pattern, string what)
    {
        Regex forbidden = new(pattern);
        Assert.Empty(Repository.Sources(Core).Where(file => forbidden.IsMatch(Code(file))).Select(file => $"{Repository.Name(file)} calls {what}"));
    }

    /// <summary>Text for people is a look: what finds a line, a column or a page asks for its enum or type.</summary>
    [Fact]
    public void Sources_FindNothingByItsEnglishText() => Assert.Empty(
        Repository.Files("src").Where(file => Path.GetExtension(file) is ".cs" or ".js" && !Repository.Name(file).StartsWith("src/FarmEconomics.DemoFarm/", StringComparison.Ordinal))
            .SelectMany(file => TextAsKey().Matches(Code(file)).Select(match => $"{Repository.Name(file)}: {match.Value}")));

    [Theory]
    [InlineData("""lines.First(line => line.Name == "Net return")""", true)]
    [InlineData("""column.Heading is "Output" or "Labor" """, true)]
    [InlineData("""sheet.Name switch { "Cash last year" => 1 }""", true)]
    [InlineData("""setting.Name == "owner_wage" """, false)]
    [InlineData("""line.Item == FarmStatementItem.NetReturnOfFarm""", false)]
    public void KeyCheck_OnCodeThatAsksForText_FindsIt(string code, bool found) => Assert.Equal(found, TextAsKey().IsMatch(code));

    [Fact]
    public void Sources_StayUnderFourHundredLines() => Assert.Empty(
        Repository.Sources("src").Concat(Repository.Sources("tests")).Where(file => File.ReadLines(file).Count() > 400).Select(Repository.Name).Except(LongFiles));

    /// <summary>What is committed reads the same wherever it was made: no file names the folder the repository lies in here, or the home of who runs the tests.</summary>
    [Fact]
    public void Repository_NamesNoPlaceOnThisMachine()
    {
        string home = Environment.GetFolderPath(Environment.SpecialFolder.UserProfile);
        string[] places = [.. new[] { Repository.Root, home }.Where(place => place.Length > 1).Select(place => place.TrimEnd(Path.DirectorySeparatorChar) + Path.DirectorySeparatorChar)];
        string[] texts = [".cs", ".csproj", ".props", ".sln", ".md", ".json", ".ipynb", ".csv", ".yml", ".sh", ".config", ".editorconfig", ".css", ".html", ".sql"];
        List<string> found = [];
        foreach (string file in Repository.Files().Where(file => texts.Contains(Path.GetExtension(file)) || Path.GetExtension(file).Length == 0))
        {
            string text = File.ReadAllText(file);
            found.AddRange(places.Where(place => text.Contains(place, StringComparison.Ordinal)).Select(place => $"{Repository.Name(file)} names {place}"));
        }

        Assert.Empty(found);
    }

    /// <summary>A file's code without its comments, so that a cref in the docs is no dependency.</summary>
    private static string Code(string file) => Comment().Replace(File.ReadAllText(file), "");

    [GeneratedRegex("""\b(Name|name|Heading|heading|Title|Label|Caption|NetReturnLabel)\s*(==|!=|is( not)?|switch\s*\{)\s*\(?"([A-Z][a-z]+|[^"\n]* [^"\n]*)"|textContent\s*===?\s*['"]""")]
    private static partial Regex TextAsKey();

    [GeneratedRegex(@"//[^\n]*")]
    private static partial Regex Comment();
}
