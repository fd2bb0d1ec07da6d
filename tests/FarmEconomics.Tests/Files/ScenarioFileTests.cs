using System.Text;
using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Files;
using FarmEconomics.Files.Results;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Files;

public class ScenarioFileTests
{
    private static readonly FarmRecords Records = new FarmBuilder(new FarmSettings { OwnerWage = 20m }).AsOf("2025-12-31")
        .Bed("One").Crop("Beets").Crop("Kale, red").Planting("B1", "Beets", "One", 10m, "2025-05-01").Channel("Stall", ChannelKind.Market).Link();

    [Fact]
    public void Save_ThenRead_GivesTheScenarios()
    {
        string folder = Make(("records/sales.csv", "x"));
        string path = Path.Combine(folder, "scenarios.csv");
        FarmScenario cheap = FarmScenario.Parse("Cheap", "price of Beets=-10%; price of Kale, red at Stall=2.50", Records, "=if \"shops\" push");
        FarmScenario dear = FarmScenario.Parse("dear wages", "owner_wage=25", Records);
        ScenarioFile.Save(path, Path.Combine(folder, "records"), cheap);
        ScenarioFile.Save(path, Path.Combine(folder, "records"), dear);
        ScenarioFile.Save(path, Path.Combine(folder, "records"), cheap with { Name = "CHEAP", Changes = cheap.Changes.Take(1).ToList() });

        Assert.Equal(
            "scenario,change,note\nCHEAP,price of Beets=-10%,\"'=if \"\"shops\"\" push\"\ndear wages,owner_wage=25,\n",
            File.ReadAllText(path));
        IReadOnlyList<FarmScenario> read = ScenarioFile.Read(path, Records);
        Assert.Equal([("CHEAP", "price of Beets=-10%", "=if \"shops\" push"), ("dear wages", "owner_wage=25", null)], read.Select(scenario => (scenario.Name, scenario.Text, scenario.Note)));
        Assert.Equal([path], Directory.GetFiles(folder));
        Assert.True(ScenarioFile.Remove(path, Path.Combine(folder, "records"), "cheap"));
        Assert.False(ScenarioFile.Remove(path, Path.Combine(folder, "records"), "cheap"));
        Assert.Equal(["dear wages"], ScenarioFile.Texts(path).Select(scenario => scenario.Name));
    }

    public static TheoryData<string, byte[], string> Kept => new()
    {
        { "latin1", Encoding.Latin1.GetBytes("scenario;change;note\r\nGr\u00FCn;owner_wage=25;\u00E9t\u00E9\r\n"), "Gr\u00FCn;owner_wage=25;\u00E9t\u00E9\r\nnew;owner_wage=22;\r\n" },
        { "utf8 with mark", [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes("note\tScenario\tchange\n\u017A\tGr\u00FCn\towner_wage=25\n")], "\u017A\tGr\u00FCn\towner_wage=25\n\tnew\towner_wage=22\n" },
        { "utf16", [0xFF, 0xFE, .. Encoding.Unicode.GetBytes("scenario\tchange\r\nGr\u00FCn\towner_wage=25\r\n")], "Gr\u00FCn\towner_wage=25\r\nnew\towner_wage=22\r\n" },
        { "sep line", Encoding.UTF8.GetBytes("sep=;\nscenario;change\n\"Gr\u00FCn\";owner_wage=25"), "\"Gr\u00FCn\";owner_wage=25\nnew;owner_wage=22\n" },
    };

    [Theory]
    [MemberData(nameof(Kept))]
    public void Save_FileOfAnotherProgram_KeepsEncodingSeparatorAndLineEnds(string what, byte[] before, string rows)
    {
        string folder = Make(("records/sales.csv", "x"));
        string path = Path.Combine(folder, "s.csv");
        File.WriteAllBytes(path, before);

        ScenarioFile.Save(path, Path.Combine(folder, "records"), FarmScenario.Parse("new", "owner_wage=22", Records));

        byte[] after = File.ReadAllBytes(path);
        Encoding encoding = what switch { "latin1" => Encoding.Latin1, "utf16" => Encoding.Unicode, _ => Encoding.UTF8 };
        int heading = Array.IndexOf(before, (byte)'\n', what == "sep line" ? 7 : 0) + (what == "utf16" ? 2 : 1);
        Assert.Equal(before[..heading], after[..heading]);
        Assert.Equal(rows, encoding.GetString(after[heading..]));
        Assert.Equal(["Gr\u00FCn", "new"], ScenarioFile.Read(path, Records).Select(scenario => scenario.Name));
    }

    [Fact]
    public void Save_LettersTheEncodingHasNot_GoesOverToUtf8()
    {
        string folder = Make(("records/sales.csv", "x"));
        string path = Path.Combine(folder, "s.csv");
        File.WriteAllBytes(path, Encoding.Latin1.GetBytes("scenario,change,note\nGr\u00FCn,owner_wage=25,\n"));

        ScenarioFile.Save(path, Path.Combine(folder, "records"), FarmScenario.Parse("\u0179r\u00F3d\u0142o", "owner_wage=22", Records));

        Assert.Equal(["Gr\u00FCn", "\u0179r\u00F3d\u0142o"], ScenarioFile.Texts(path).Select(scenario => scenario.Name));
        Assert.Equal([0xEF, 0xBB, 0xBF], File.ReadAllBytes(path)[..3]);
    }

    [Fact]
    public void Save_ThroughALinkToAPrivateFile_KeepsTheLinkAndTheRights()
    {
        if (OperatingSystem.IsWindows())
        {
            Assert.Skip("rights and links of their own");
            return;
        }

        string folder = Make(("records/sales.csv", "x"), ("far/mine.csv", "scenario,change,note\n"));
        (string path, string target) = (Path.Combine(folder, "s.csv"), Path.Combine(folder, "far", "mine.csv"));
        File.SetUnixFileMode(target, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupWrite);
        File.CreateSymbolicLink(path, "far/mine.csv");

        ScenarioFile.Save(path, Path.Combine(folder, "records"), FarmScenario.Parse("new", "owner_wage=22", Records));

        Assert.Equal("far/mine.csv", new FileInfo(path).LinkTarget);
        Assert.Equal("scenario,change,note\nnew,owner_wage=22,\n", File.ReadAllText(target));
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupWrite, File.GetUnixFileMode(target));
        Assert.Equal([target], Directory.GetFiles(Path.Combine(folder, "far")));
    }

    [Fact]
    public async Task Save_EightAtOnce_KeepsThemAll()
    {
        string folder = Make(("records/sales.csv", "x"));
        string path = Path.Combine(folder, "s.csv");

        await Parallel.ForAsync(0, 8, new ParallelOptions { MaxDegreeOfParallelism = 8, CancellationToken = TestContext.Current.CancellationToken }, async (writer, _) =>
        {
            await Task.Yield();
            for (int i = 0; i < 10; i++)
            {
                ScenarioFile.Save(path, Path.Combine(folder, "records"), FarmScenario.Parse($"s{writer}-{i}", "owner_wage=22", Records));
            }
        });

        Assert.Equal(80, ScenarioFile.Texts(path).Select(scenario => scenario.Name).Distinct().Count());
        Assert.Equal([path], Directory.GetFiles(folder));
    }

    [Fact]
    public void Read_Faults_AllToldWithLineAndColumn()
    {
        string folder = Make(("s.csv", "scenario,change,note\none,price of Beats=+10%,\n,owner_wage=22,\ntwo,,\nthree,\"prices=+1%; wagse=2\",x,y\n"));
        string path = Path.Combine(folder, "s.csv");
        string first = Assert.Throws<FormatException>(() => ScenarioFile.Read(path, Records)).Message;
        Assert.Equal(
            [$"{path}:3:1: the scenario is missing in this row.", $"{path}:4:5: the change is missing in this row.", $"{path}:5:31: a value stands beyond the last heading; put a text that holds the separator in double quotes."],
            first.Split('\n'));

        File.WriteAllText(path, "scenario;change\none;price of Beats=+10%\nthree;\"prices=+1%; wagse=2\"\nfour;owner_wage=1\nfour;owner_wage=2\n");
        string[] second = Assert.Throws<FormatException>(() => ScenarioFile.Read(path, Records)).Message.Split('\n');
        Assert.Equal($"{path}:2:14: There is no crop \"Beats\". Did you mean Beets?", second[0]);
        Assert.StartsWith($"{path}:3:20: \"wagse\" can't be changed", second[1], StringComparison.Ordinal);
        Assert.StartsWith($"{path}:4:1: scenario four: \"owner_wage=1\" sets the same thing already", second[2], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("scenario,change,remark\n", "'remark' is not a column")]
    [InlineData("scenario,note\n", "the column change is missing")]
    [InlineData("", "empty")]
    public void Read_AnotherFile_IsRefusedAndNeverWrittenOver(string text, string expected)
    {
        string folder = Make(("s.csv", text), ("records/sales.csv", "x"));
        string path = Path.Combine(folder, "s.csv");
        Assert.Contains(expected, Assert.Throws<FormatException>(() => ScenarioFile.Read(path, Records)).Message, StringComparison.Ordinal);
        Assert.Throws<FormatException>(() => ScenarioFile.Save(path, Path.Combine(folder, "records"), FarmScenario.Parse("one", "owner_wage=22", Records)));
        Assert.Equal(text, File.ReadAllText(path));
    }

    [Fact]
    public void Save_IntoRecordsOrResults_IsRefused()
    {
        string folder = Make(("records/sales.csv", "x"), ("review/" + ResultMark.FileName, "x"), ("book.xlsx", "x"));
        string records = Path.Combine(folder, "records");
        FarmScenario scenario = FarmScenario.Parse("one", "owner_wage=22", Records);
        Refused(Path.Combine(records, "scenarios.csv"), records, "lies in the records");
        Refused(Path.Combine(folder, "review", "..", "records", "deep.csv"), records, "lies in the records");
        Refused(Path.Combine(folder, "book.xlsx"), Path.Combine(folder, "book.xlsx"), "lies in the records");
        Refused(Path.Combine(folder, "review", "scenarios.csv"), records, "replaces whole");
        Refused(Path.Combine(folder, "nowhere", "scenarios.csv"), records, "There is no folder");
        Refused(folder, records, "is a folder");
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Links need rights of their own on Windows.");
        Directory.CreateSymbolicLink(Path.Combine(folder, "detour"), records);
        Refused(Path.Combine(folder, "detour", "scenarios.csv"), records, "lies in the records");

        void Refused(string path, string of, string why) =>
            Assert.Contains(why, Assert.Throws<IOException>(() => ScenarioFile.Save(path, of, scenario)).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("=1", "owner_wage=22", "starts with a letter or a digit")]
    [InlineData("one", "", "holds no change")]
    public void Save_WhatCannotBeKept_IsRefused(string name, string changes, string why)
    {
        string folder = Make(("records/sales.csv", "x"));
        string path = Path.Combine(folder, "s.csv");
        Assert.Contains(why, Assert.Throws<IOException>(() => ScenarioFile.Save(path, Path.Combine(folder, "records"), FarmScenario.Parse(name, changes, Records))).Message, StringComparison.Ordinal);
        Assert.False(File.Exists(path));
    }

    private static string Make(params (string Name, string Text)[] files)
    {
        string folder = TestFolders.Make();
        foreach ((string name, string text) in files)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(Path.Combine(folder, name))!);
            File.WriteAllText(Path.Combine(folder, name), text);
        }

        return folder;
    }
}
