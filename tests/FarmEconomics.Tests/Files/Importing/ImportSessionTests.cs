using System.Text;
using FarmEconomics.Files.Importing.Sessions;
using Xunit;

namespace FarmEconomics.Tests.Files.Importing;

/// <summary>A file brought in step by step, as the page does it: what is added is what was seen, once.</summary>
public class ImportSessionTests
{
    private const string Till = "Date,Item,Qty,Net Sales\n5/17/2025,lettuce,3,$12.00\n5/18/2025,Kalee,2,$8.00\n5/19/2025,Rhubarb,1,$2.00\n";

    [Fact]
    public void OpenQuestionAndNames_AnsweredAndSeen_AreAddedOnce()
    {
        string folder = TestFolders.MakeBad("sound");
        using ImportSession session = Begin(folder, "till.csv", Till);

        ImportLook look = session.Look();
        Assert.Equal(
            ("channel", "market", "channels"),
            Assert.Single(look.Draft!.Questions.Select(question => (question.Column, question.Answer, question.NamesOf!)))
        );
        Assert.Equal(
            ["crops Kalee kale 1", "crops Rhubarb  1"],
            look.Names.Select(name => $"{name.Table} {name.Alias} {name.Name} {name.Rows}")
        );
        Assert.Equal(["kale", "lettuce"], look.Names[0].Choices);
        Assert.Equal(["2025-05-17 lettuce market 3 12.00"], Drafted.Rows(look.Plan!));

        Assert.Empty(session.Give([new("crops", "Kalee", "kale"), new("crops", "Rhubarb", "")]));
        Assert.Equal(
            "Nothing was added: what would be added is not what you saw. Look at it again, then press Add.",
            session.Add(look.Version).Message
        );
        Assert.Equal(Directory.GetFiles(TestFolders.MakeBad("sound")).Length, Directory.GetFiles(folder).Length);

        (bool added, string message) = session.Add(session.Look().Version);
        Assert.True(added, message);
        Assert.Equal("2 rows added to sales, in sales.till.csv.", message);
        Assert.Equal("table,alias,name\ncrops,Kalee,kale\n", File.ReadAllText(Path.Combine(folder, "aliases.till.csv")));

        ImportLook after = session.Look();
        Assert.Empty(after.Plan!.Rows);
        Assert.Equal(2, after.Plan.AlreadyThere.Count);
        Assert.False(session.Add(after.Version).Added);
        Assert.Contains("Rhubarb", after.Plan.HeldBackCsv, StringComparison.Ordinal);
    }

    [Fact]
    public void DateWithTwoReadings_IsAskedWithBoth_AndReadAsAnswered()
    {
        using ImportSession session = Begin(TestFolders.MakeBad("sound"), "till.csv", "Date,Item,Qty,Net Sales\n6/7/2025,kale,3,$12.00\n");

        ImportLook look = session.Look();
        Assert.Null(look.Plan);
        var date = Assert.Single(look.Draft!.Questions, question => question.IsOpen);
        Assert.Equal(
            ["M/D/YYYY: 6/7/2025 is Jun 7, 2025", "D/M/YYYY: 6/7/2025 is Jul 6, 2025"],
            date.Readings.Select(reading => $"{reading.Key}: {reading.Value}")
        );
        Assert.False(session.Answer("another draft", [new(date.Line, "D/M/YYYY")]));
        Assert.True(session.Answer(look.DraftVersion, [new(date.Line, "D/M/YYYY")]));

        Assert.Equal(["2025-07-06 kale market 3 12.00"], Drafted.Rows(session.Look().Plan!));
    }

    // What no heading tells is asked with the columns that may hold it, never with one of other things.
    [Fact]
    public void ColumnNotToldByItsHeading_IsChosenAmongThoseOfTheFile()
    {
        using ImportSession session = Begin(TestFolders.MakeBad("sound"), "fields.csv",
            "Plot,How long it is,Since\nEast,\"1,200\",3/4/2020\nWest,96,3/5/2020\n");
        Assert.Contains("say what its rows are.", session.Look().Fault, StringComparison.Ordinal);
        Assert.DoesNotContain("--", session.Look().Fault, StringComparison.Ordinal);

        session.Turn(new ImportView { Table = "beds" });
        ImportLook look = session.Look();
        var length = Assert.Single(look.Draft!.Questions, question => question.IsOpen);
        Assert.Equal(["the column How long it is: such as 1,200"], length.Columns.Select(column => column.Value));
        Assert.True(session.Answer(look.DraftVersion, [new(length.Line, length.Columns[0].Key)]));

        Assert.Equal(["East 1200", "West 96"], Drafted.Rows(session.Look().Plan!));
    }

    [Fact]
    public void NameNobodyKnows_IsRefusedWithANearOne()
    {
        using ImportSession session = Begin(TestFolders.MakeBad("sound"), "till.csv", Till);

        Assert.Equal(
            ["crops has no \"kalle\"; did you mean kale?"],
            session.Give([new("crops", "Kalee", "kalle")]).Select(fault => fault.Why)
        );
        Assert.Equal("", session.Look().Names.Single(name => name.Alias == "Rhubarb").Name);
    }

    [Fact]
    public void AnotherSheetOrTable_IsReadAnew()
    {
        using ImportSession session = Begin(TestFolders.MakeBad("sound"), "notes.csv", "a,b\n1,2\n");
        Assert.Contains("can't be told", session.Look().Fault, StringComparison.Ordinal);

        session.Turn(new ImportView { Table = "harvests" });

        Assert.Null(session.Look().Fault);
        Assert.Contains(session.Look().Draft!.Questions, question => question is { Column: "date", IsOpen: true });
    }

    [Theory]
    [InlineData("../../etc/x.csv", "x.csv")]
    [InlineData("C:\\farm\\x.csv", "x.csv")]
    [InlineData(".map.csv", "map.csv")]
    [InlineData("..", "file")]
    public void Name_WithFolders_LosesThem(string sent, string kept)
    {
        using ImportSession session = Begin(TestFolders.MakeBad("sound"), sent, Till);
        Assert.Equal(kept, session.Name);
    }

    private static ImportSession Begin(string folder, string name, string text) =>
        ImportSession.Begin(folder, name, new MemoryStream(Encoding.UTF8.GetBytes(text)));
}
