using System.Text.RegularExpressions;
using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.Tests.Docs;

/// <summary>docs/methods.md names the class behind every formula; a class that was renamed or moved must not leave the next reader searching.</summary>
public partial class MethodsDocumentTests
{
    private static readonly string Source = Path.Combine(TestFolders.Repository, "src", "FarmEconomics");

    private static readonly Dictionary<string, List<string>> Rooms = FindTypes();

    public static TheoryData<string> Sections => [.. Text().Keys];

    [Theory]
    [MemberData(nameof(Sections))]
    public void ClassesNamed_OfASection_StandInItsRooms(string title)
    {
        string[] rooms = Heading().Match(title).Groups["rooms"].Value.Split(", ", StringSplitOptions.RemoveEmptyEntries);

        Assert.All(Named(Text()[title]), name =>
        {
            Assert.True(Rooms.TryGetValue(name, out List<string>? places), $"{title}: there is no class {name} in src/FarmEconomics.");
            Assert.True(rooms.Length == 0 || places.Exists(rooms.Contains), $"{title}: {name} stands in {string.Join(", ", places)}, not in {string.Join(", ", rooms)}.");
        });
    }

    [Theory]
    [MemberData(nameof(Sections))]
    public void Section_OfFormulas_NamesRoomsAndClasses(string title)
    {
        Match heading = Heading().Match(title);
        if (!heading.Success)
        {
            Assert.Equal("Words", title);
            return;
        }

        Assert.All(heading.Groups["rooms"].Value.Split(", "), room => Assert.True(Directory.Exists(Path.Combine(Source, room)), $"{title}: there is no room {room}."));
        Assert.NotEmpty(Named(Text()[title]));
    }

    [Fact]
    public void Sections_AreNumberedWithoutGaps() => Assert.Equal(
        Enumerable.Range(1, 20),
        Text().Keys.Where(title => Heading().IsMatch(title)).Select(title => int.Parse(Heading().Match(title).Groups["number"].Value)));

    private static Dictionary<string, string> Text()
    {
        string[] sections = File.ReadAllText(Path.Combine(TestFolders.Repository, "docs", "methods.md")).Split("\n## ")[1..];
        return sections.ToDictionary(section => section[..section.IndexOf('\n', StringComparison.Ordinal)].Trim());
    }

    private static List<string> Named(string section) => [.. Quoted().Matches(section).Select(match => match.Groups["name"].Value).Distinct()];

    private static Dictionary<string, List<string>> FindTypes() =>
        Directory.GetDirectories(Source)
            .SelectMany(room => Directory.GetFiles(room, "*.cs", SearchOption.AllDirectories).Select(file => (Room: Path.GetFileName(room), Text: File.ReadAllText(file))))
            .SelectMany(file => Declared().Matches(file.Text).Select(match => (file.Room, Name: match.Groups["name"].Value)))
            .GroupBy(type => type.Name).ToDictionary(type => type.Key, type => type.Select(one => one.Room).Distinct().ToList());

    [GeneratedRegex(@"^(?<number>\d+) [^(]+ \((?<rooms>[A-Za-z, ]+)\)$")]
    private static partial Regex Heading();

    /// <summary>A name of the source between backticks; names of columns and files begin with a small letter.</summary>
    [GeneratedRegex("`(?<name>[A-Z][A-Za-z]+)`")]
    private static partial Regex Quoted();

    [GeneratedRegex(@"\b(?:class|record struct|record|struct|enum) (?<name>[A-Z][A-Za-z]+)\b")]
    private static partial Regex Declared();
}
