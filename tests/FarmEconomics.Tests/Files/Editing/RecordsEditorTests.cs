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

    [Fact]
    public void Save_WholeRows_AreReplacedTogetherOrNotAtAllAndUndone()
    {
        RowsChange harvests = new(
            "harvests.csv",
            Editor.VersionOf("harvests.csv"),
            ["quantity", "planting", "date", "crop"],
            [
                ["7", "K1", "2025-06-12", ""],
                ["8", "K1", "2025-06-13", ""],
            ]
        )
        {
            Without = new HashSet<int> { 3 },
        };
        RowsChange plan = new(
            "plan.csv",
            Editor.VersionOf("plan.csv"),
            ["crop_year", "planting", "crop", "bed", "bed_feet", "in_bed", "out_of_bed", "yield", "hours"],
            [
                ["2026", "K 1", "kale", "A1", "5", "2026-05-01", "2026-07-01", "3", "1"],
            ]
        );

        EditOutcome refused = Editor.Save([
            harvests,
            plan with
            {
                Rows =
                [
                    ["2026", "K 1", "kale", "nowhere", "5", "2026-05-01", "2026-07-01", "3", "1"],
                ],
            },
        ]);
        Assert.False(refused.Saved);
        Assert.Contains(refused.Problems, problem => problem.Column == "bed");
        Assert.Equal(Harvests, File.ReadAllText(Place));
        Assert.False(File.Exists(Path.Combine(folder, "plan.csv")));
        Assert.False(Directory.Exists(Path.Combine(folder, "history")));

        EditOutcome saved = Editor.Save([harvests, plan]);
        Assert.True(saved.Saved, saved.Message);
        Assert.Equal(
            "date,crop,planting,quantity,note\r\n2025-05-10,,L1,40,\"a, b\"\r\n2025-06-12,,K1,7,\r\n2025-06-13,,K1,8,\r\n",
            File.ReadAllText(Place)
        );
        Assert.Equal(
            "crop_year,planting,crop,bed,bed_feet,in_bed,out_of_bed,yield,hours\n2026,K 1,kale,A1,5,2026-05-01,2026-07-01,3,1\n",
            File.ReadAllText(Path.Combine(folder, "plan.csv"))
        );
        Assert.Contains("changed meanwhile", Editor.Save([harvests, plan]).Message, StringComparison.Ordinal);

        Assert.True(Editor.Undo("harvests.csv").Saved);
        Assert.True(Editor.Undo("plan.csv").Saved);
        Assert.Equal(Harvests, File.ReadAllText(Place));
        Assert.Single(File.ReadAllLines(Path.Combine(folder, "plan.csv")));
        Assert.Empty(Directory.GetFiles(folder, ".*"));
    }

    [Theory]
    [InlineData("../harvests.csv", "date", "no table")]
    [InlineData("mine.csv", "date", "no table")]
    [InlineData("harvests.csv", "weight", "no column \"weight\"")]
    [InlineData("harvests.csv", "", "can't be changed here")]
    public void Save_WholeRowsThatCannotBe_ChangesNothing(string file, string heading, string says)
    {
        string version = file == "harvests.csv" ? Editor.VersionOf(file) : "";

        EditOutcome outcome = Editor.Save([
            new RowsChange(
                file,
                version,
                heading.Length > 0 ? [heading] : [],
                heading.Length > 0
                    ?
                    [
                        ["5"],
                    ]
                    : []
            )
            {
                Without = heading.Length > 0 ? new HashSet<int>() : new HashSet<int> { 99 },
            },
        ]);

        Assert.False(outcome.Saved);
        Assert.Contains(says, outcome.Message, StringComparison.Ordinal);
        Assert.Equal(Harvests, File.ReadAllText(Place));
    }

    [Fact]
    public void Save_SecondFileChangedWhileTheFirstIsWritten_LeavesBothAsTheyWere()
    {
        string sales = Path.Combine(folder, "sales.csv");
        string changed = File.ReadAllText(sales) + "2025-06-11,kale,market,1,2.50\n";
        RowsChange[] changes = [.. new[] { ("harvests.csv", "planting"), ("sales.csv", "crop") }.Select(file => new RowsChange(
            file.Item1, Editor.VersionOf(file.Item1), [file.Item2], []) { Without = new HashSet<int> { 2 } })];

        EditOutcome outcome = new RecordsEditor(folder, new AtSecondCopy(() => File.WriteAllText(sales, changed))).Save(changes);

        Assert.False(outcome.Saved);
        Assert.StartsWith("sales.csv was changed meanwhile", outcome.Message, StringComparison.Ordinal);
        Assert.Equal(Harvests, File.ReadAllText(Place));
        Assert.Equal(changed, File.ReadAllText(sales));
        Assert.Empty(Directory.GetFiles(Path.Combine(folder, "history")));
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

    /// <summary>A clock that is looked at once for each copy; somebody else saves a file at the second look.</summary>
    private sealed class AtSecondCopy(Action save) : TimeProvider
    {
        private int looks;

        public override DateTimeOffset GetUtcNow()
        {
            if (++looks == 2)
            {
                save();
            }

            return base.GetUtcNow();
        }
    }
}
