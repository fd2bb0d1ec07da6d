using FarmEconomics.Files;
using FarmEconomics.Files.Editing;
using FarmEconomics.Page.Importing;
using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.Tests.Page;

/// <summary>
/// What a file names for the first time becomes a row of its table where the grower says what it is counted in, or its kind.
/// </summary>
public class NewNamesTests
{
    private const string Beds = "bed,length_ft\nB,50\n";
    private const string Plantings = "planting,crop,bed,bed_feet,in_bed,out_of_bed\n";
    private const string Harvests = "date,planting,quantity\n";
    private const string Sales = "date,crop,channel,quantity,unit_price\n";

    private static string Farm(string crops, params (string Name, string Text)[] more) =>
        TestFolders.Make([("crops.csv", crops), ("beds.csv", Beds), ("plantings.csv", Plantings), ("harvests.csv", Harvests),
            ("sales.csv", Sales), .. more]);

    private static (EditOutcome Outcome, IReadOnlyList<string> Files) Add(string folder, params NewName[] names) =>
        NewNames.Add(new RecordsEditor(folder, TimeProvider.System), RecordsFolder.Read(folder), names);

    private static string Text(string folder, string file) => File.ReadAllText(Path.Combine(folder, file));

    [Theory]
    [InlineData("crops", "unit")]
    [InlineData("channels", "kind")]
    [InlineData("workers", "kind")]
    [InlineData("tasks", "stage")]
    [InlineData("units", null)]
    [InlineData("pools", null)]
    [InlineData("plantings", null)]
    public void Table_WhoseRowsNeedOneThingBesideTheName_CanTakeANewOne(string table, string? needed) =>
        Assert.Equal(needed, NewNames.Needs(table)?.Name);

    [Fact]
    public void FirstYear_WithNoCropYet_GetsThoseOfTheFile_AndPressedTwiceEachOnce()
    {
        string folder = Farm("crop,unit,family\n");
        NewName[] names = [new("crops", "Kale", "bunch"), new("crops", "Rhubarb, forced", "lb"), new("crops", "Chard", "")];

        (EditOutcome outcome, IReadOnlyList<string> files) = Add(folder, names);

        Assert.True(outcome.Saved, outcome.Message);
        Assert.Equal("2 names added to crops.csv.", outcome.Message);
        Assert.Equal(["crops.csv"], files);
        Assert.Equal("crop,unit,family\nKale,bunch,\n\"Rhubarb, forced\",lb,\n", Text(folder, "crops.csv"));
        Assert.False(Add(folder, names).Outcome.Saved);
        Assert.Equal(3, File.ReadAllLines(Path.Combine(folder, "crops.csv")).Length);
    }

    [Fact]
    public void NamesOfSeveralTables_AreAddedAllOrNone()
    {
        string folder = Farm("crop,unit\n", ("channels.csv", "channel,kind,fee_percent\nMarket,market,5\n"));

        (EditOutcome wrong, _) = Add(folder, new NewName("crops", "Kale", "bunch"), new NewName("channels", "Grocer", "shop"));

        Assert.False(wrong.Saved);
        Assert.Contains(wrong.Problems, problem => problem.Message.Contains("shop", StringComparison.Ordinal));
        Assert.Equal("crop,unit\n", Text(folder, "crops.csv"));
        Assert.True(Add(folder, new NewName("crops", "Kale", "bunch"), new NewName("channels", "Grocer", "wholesale")).Outcome.Saved);
        Assert.Equal("crop,unit\nKale,bunch\n", Text(folder, "crops.csv"));
        Assert.Equal("channel,kind,fee_percent\nMarket,market,5\nGrocer,wholesale,\n", Text(folder, "channels.csv"));
    }

    [Fact]
    public void FarmWithDecimalCommas_GetsANewTableWithSemicolons()
    {
        string folder = Farm("crop,unit\nKale,bunch\n", ("farm.csv", "setting;value\ndecimal_mark;,\nlength_unit;ft\n"));

        Assert.True(Add(folder, new NewName("workers", "Éléonore", "owner")).Outcome.Saved);

        string[] lines = File.ReadAllLines(Path.Combine(folder, "workers.csv"));
        Assert.StartsWith("worker;kind", lines[0], StringComparison.Ordinal);
        Assert.StartsWith("Éléonore;owner", lines[1], StringComparison.Ordinal);
    }
}
