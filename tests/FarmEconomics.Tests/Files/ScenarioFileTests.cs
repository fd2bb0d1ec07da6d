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
