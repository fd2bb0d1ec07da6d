using System.Text;
using FarmEconomics.Files;
using FarmEconomics.Files.Editing;
using Xunit;

namespace FarmEconomics.Tests.Files.Editing;

/// <summary>A row corrected, added, taken out and put back; what is refused, and that nothing else changes.</summary>
public class RecordsEditorTests
{
    private const string Harvests = "date,crop,planting,quantity,note\r\n2025-05-10,,L1,40,\"a, b\"\r\n2025-06-10,,K1,thirty, spaced  \r\n";
    private readonly string folder = TestFolders.MakeBad("sound");

    public RecordsEditorTests() => File.WriteAllText(Place, Harvests);

    private string Place => Path.Combine(folder, "harvests.csv");

    private RecordsEditor Editor => new(folder, TimeProvider.System);

    [Fact]
    public void Save_ACorrection_ChangesThatFieldAloneAndUndoPutsItBack()
    {
        EditableRow row = Editor.Row("harvests.csv", 3)!;

        EditOutcome saved = Editor.Save(new RowChange("harvests.csv", row.Version, 3, new Dictionary<string, string> { ["quantity"] = "30" }));

        Assert.True(saved.Saved, saved.Message);
        Assert.Equal(["2025-06-10", "", "K1", "thirty", "spaced"], row.Fields);
        Assert.Equal(Harvests.Replace("thirty", "30", StringComparison.Ordinal), File.ReadAllText(Place));
        Assert.Equal(Harvests, File.ReadAllText(Assert.Single(Directory.GetFiles(Path.Combine(folder, "history")))));
        Assert.Equal(0, FarmFolder.Open(folder).ErrorCount);
        Assert.True(Editor.Undo("harvests.csv").Saved);
        Assert.Equal(Harvests, File.ReadAllText(Place));
        Assert.Empty(Directory.GetFiles(Path.Combine(folder, "history")));
        Assert.Empty(Directory.GetFiles(folder, ".*"));
    }

    [Fact]
    public void Save_AddedAndTakenOut_AreUndoneOneByOne()
    {
        string first = Editor.Row("harvests.csv", 0)!.Version;

        EditOutcome added = Editor.Save(new RowChange("harvests.csv", first, 0, new Dictionary<string, string> { ["date"] = "2025-05-12", ["planting"] = "L1", ["quantity"] = "4", ["note"] = "say \"hi\", twice" }));
        EditOutcome taken = Editor.Save(new RowChange("harvests.csv", added.Version!, 3, null));

        Assert.True(taken.Saved, taken.Message);
        Assert.Equal("date,crop,planting,quantity,note\r\n2025-05-10,,L1,40,\"a, b\"\r\n2025-05-12,,L1,4,\"say \"\"hi\"\", twice\"\r\n", File.ReadAllText(Place));
        Assert.True(Editor.Undo("harvests.csv").Saved);
        Assert.True(Editor.Undo("harvests.csv").Saved);
        Assert.Equal(Harvests, File.ReadAllText(Place));
        Assert.False(Editor.Undo("harvests.csv").Saved);
    }

    [Fact]
    public void Save_FileChangedMeanwhile_IsRefusedAndUndoneOnlyOverItsOwnChange()
    {
        string version = Editor.Row("harvests.csv", 3)!.Version;
        File.AppendAllText(Place, "2025-06-11,,K1,5,\r\n");
        string changed = File.ReadAllText(Place);

        Assert.Contains("changed meanwhile", Editor.Save(new RowChange("harvests.csv", version, 3, new Dictionary<string, string> { ["quantity"] = "30" })).Message, StringComparison.Ordinal);
        Assert.Equal(changed, File.ReadAllText(Place));
        EditOutcome saved = Editor.Save(new RowChange("harvests.csv", Editor.Row("harvests.csv", 3)!.Version, 3, new Dictionary<string, string> { ["quantity"] = "30" }));
        File.AppendAllText(Place, "2025-06-12,,K1,5,\r\n");

        Assert.True(saved.Saved);
        Assert.False(Editor.Undo("harvests.csv").Saved);
    }

    [Theory]
    [InlineData("quantity", "forty", "E111")]
    [InlineData("planting", "nobody", "E203")]
    [InlineData("date", "May 10", "E114")]
    public void Save_WhatTheChecksRefuse_IsNotSaved(string column, string text, string code)
    {
        EditOutcome outcome = Editor.Save(new RowChange("harvests.csv", Editor.Row("harvests.csv", 2)!.Version, 2, new Dictionary<string, string> { [column] = text }));

        Assert.False(outcome.Saved);
        Assert.Contains(outcome.Problems, problem => problem.Code == code);
        Assert.Equal(Harvests, File.ReadAllText(Place));
        Assert.False(Directory.Exists(Path.Combine(folder, "history")));
    }

    [Fact]
    public void Save_ThroughALink_WritesWhereItLeadsWithItsRights()
    {
        if (OperatingSystem.IsWindows())
        {
            Assert.Skip("links need rights there");
            return;
        }

        string real = Path.Combine(TestFolders.Make(("real.csv", Harvests)), "real.csv");
        File.SetUnixFileMode(real, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead);
        File.Delete(Place);
        File.CreateSymbolicLink(Place, real);

        EditOutcome saved = Editor.Save(new RowChange("harvests.csv", Editor.Row("harvests.csv", 3)!.Version, 3, new Dictionary<string, string> { ["quantity"] = "30" }));

        Assert.True(saved.Saved, saved.Message);
        Assert.Equal(real, new FileInfo(Place).LinkTarget);
        Assert.Contains("K1,30,", File.ReadAllText(real), StringComparison.Ordinal);
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead, File.GetUnixFileMode(real));
    }

    [Fact]
    public void Save_LettersTheFilesEncodingLacks_AreRefused()
    {
        File.WriteAllBytes(Place, Encoding.Latin1.GetBytes(Harvests.Replace("a, b", "Höhe", StringComparison.Ordinal)));
        EditableRow row = Editor.Row("harvests.csv", 3)!;

        Assert.Contains("CSV UTF-8", Editor.Save(new RowChange("harvests.csv", row.Version, 3, new Dictionary<string, string> { ["note"] = "雨" })).Message, StringComparison.Ordinal);
        Assert.True(Editor.Save(new RowChange("harvests.csv", row.Version, 3, new Dictionary<string, string> { ["note"] = "Höhe", ["quantity"] = "30" })).Saved);
        Assert.Contains("K1,30,Höhe", Encoding.Latin1.GetString(File.ReadAllBytes(Place)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("../harvests.csv")]
    [InlineData("nothing.csv")]
    [InlineData("history/harvests.csv")]
    public void Row_OfWhatIsNoTable_IsRefused(string file) => Assert.Throws<FileNotFoundException>(() => Editor.Row(file, 2));

    [Fact]
    public void WhyNot_OfAWorkbook_SaysWhereToChangeIt() => Assert.Contains("spreadsheet", new RecordsEditor(Path.Combine(folder, "farm.xlsx"), TimeProvider.System).WhyNot!, StringComparison.Ordinal);
}
