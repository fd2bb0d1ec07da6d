using System.Globalization;
using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Commands;

public class ReviewCommandTests(ReviewedDemo reviewed)
{
    private static readonly string Demo = Path.Combine(Repository.Root, "demo-data");
    private static readonly string Sound = Path.Combine(Repository.Root, "tests", "FarmEconomics.Tests", "BadRecords", "sound");

    [Fact]
    public async Task Review_DemoFarm_WritesEverythingAndProvesIt()
    {
        ProgramRun run = await reviewed.Run;
        string output = await reviewed.Folder;

        Assert.Contains("index.html", run.Output, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(output, "index.html")));
        string[] notebooks = [.. Directory.GetFiles(Path.Combine(Repository.Root, "notebooks"), "*.ipynb").Select(path => Path.GetFileNameWithoutExtension(path)!)];
        Assert.NotEmpty(notebooks);
        Assert.Equal(notebooks.Order(StringComparer.Ordinal), Directory.GetFiles(Path.Combine(output, "notebooks")).Select(path => Path.GetFileNameWithoutExtension(path)!).Order(StringComparer.Ordinal));
        Assert.True(run.Output.IndexOf("index.html", StringComparison.Ordinal) < run.Output.IndexOf("The notebooks, executed", StringComparison.Ordinal));
        string first = File.ReadAllText(Path.Combine(output, "notebooks", notebooks[0] + ".ipynb"));
        Assert.Contains("records = \\\"demo-data\\\";", first, StringComparison.Ordinal);
        string[] crops = File.ReadAllLines(Path.Combine(output, "tables", "crops.csv"));
        Assert.Equal(crops.Length - 1, Directory.GetFiles(Path.Combine(output, "crops"), "*.html").Length);
        Assert.Equal(crops.Length - 1, Directory.GetFiles(Path.Combine(output, "rows"), "*.html").Length);
        foreach (string page in Directory.GetFiles(output, "*.html", SearchOption.AllDirectories))
        {
            string html = File.ReadAllText(page);
            Assert.Single(System.Text.RegularExpressions.Regex.Matches(html, "<script"));
            Assert.Contains("Content-Security-Policy", html, StringComparison.Ordinal);
            Assert.Contains("not tax, legal, lending or food-safety advice", html, StringComparison.Ordinal);
        }

        AssertProof(Path.Combine(output, "tables", "reconciliation.csv"));
        string[] pools = File.ReadAllLines(Path.Combine(output, "tables", "pools.csv"));
        foreach (string[] pool in pools.Skip(1).Select(line => line.Split(',')))
        {
            decimal[] money = [.. pool.Skip(2).Select(text => decimal.Parse(text, CultureInfo.InvariantCulture))];
            Assert.Equal(money[0] + money[1] + money[2], money[6] + money[7] + money[8] + money[9]);
        }
    }

    [Fact]
    public async Task Review_WithoutNotebooks_WritesPagesAndTablesAlone()
    {
        using Scratch scratch = new();
        ProgramRun run = await Program.RunAsync("review", Sound, "--out", scratch.File("out"), "--no-notebooks");
        Assert.True(run.ExitCode == 0, run.Error);
        Assert.True(File.Exists(scratch.File("out/index.html")) && File.Exists(scratch.File("out/tables/crops.csv")));
        Assert.False(Directory.Exists(scratch.File("out/notebooks")));
    }

    // With the notebooks: SurroundingsTests.
    [Fact]
    public async Task Review_RunTwice_WritesTheSameBytes()
    {
        using Scratch scratch = new();
        ProgramRun first = await Program.RunAsync("review", Sound, "--out", scratch.File("a"), "--no-notebooks");
        ProgramRun second = await Program.RunAsync("review", Sound, "--out", scratch.File("b"), "--no-notebooks");

        Assert.True(first.ExitCode == 0, first.Error);
        Assert.True(second.ExitCode == 0, second.Error);
        Assert.Equal(Checksums.Of(scratch.File("a")), Checksums.Of(scratch.File("b")));
    }

    [Theory]
    [InlineData("of Ann & Söhne")]
    [InlineData("book.xlsx")]
    public async Task Review_AnywhereOnTheMachine_WritesTheNameOfTheRecordsAndNeverWhereTheyLie(string name)
    {
        using Scratch scratch = new();
        string place = Path.Combine(scratch.Folder, "somewhere private");
        string records = Path.Combine(place, name);
        Directory.CreateDirectory(place);
        if (name.EndsWith(".xlsx", StringComparison.Ordinal))
        {
            Assert.Equal(0, (await Program.RunAsync("start", records)).ExitCode);
            foreach (string table in Directory.GetFiles(Sound, "*.csv"))
            {
                FilledTemplates.FillWorkbook(records, table);
            }
        }
        else
        {
            Copy(Sound, records);
            File.AppendAllText(Path.Combine(records, "sales.csv"), "2025-05-11,lettuse,market,4,6.25\n");
        }

        // With the notebooks: SurroundingsTests.
        ProgramRun run = await Program.RunAsync("review", records, "--out", scratch.File("out"), "--skip-bad-rows", "--no-notebooks");

        Assert.True(run.ExitCode == 0, run.Error);
        Assert.All(Directory.GetFiles(scratch.File("out"), "*", SearchOption.AllDirectories), file => Assert.DoesNotContain("somewhere private", File.ReadAllText(file), StringComparison.Ordinal));
    }

    [Fact]
    public async Task Review_FiveTablesOnly_SaysWhatIsNotAvailable()
    {
        using Scratch scratch = new();
        string records = Directory.CreateDirectory(scratch.File("records")).FullName;
        foreach (string table in new[] { "crops", "beds", "plantings", "harvests", "sales" })
        {
            File.Copy(Path.Combine(Sound, table + ".csv"), Path.Combine(records, table + ".csv"));
        }

        ProgramRun run = await Program.RunAsync("review", records, "--out", scratch.File("out"), "--no-notebooks");

        Assert.True(run.ExitCode == 0, run.Error);
        string index = File.ReadAllText(scratch.File("out/index.html"));
        Assert.Contains("no expense records", index, StringComparison.Ordinal);
        Assert.Contains("no labor records", index, StringComparison.Ordinal);
        string[] crops = File.ReadAllLines(scratch.File("out/tables/crops.csv"));
        int margin = Array.IndexOf(crops[0].Split(','), "gross_margin");
        Assert.All(crops.Skip(1), row => Assert.Equal("", row.Split(',')[margin]));
    }

    [Fact]
    public async Task Review_RecordsInError_WritesNothingAndEndsWithOne()
    {
        using Scratch scratch = new();
        string records = Copy(Sound, scratch.File("records"));
        File.AppendAllText(Path.Combine(records, "sales.csv"), "2025-05-11,lettuse,market,4,6.00\n");

        ProgramRun run = await Program.RunAsync("review", records, "--out", scratch.File("out"));

        Assert.Equal(1, run.ExitCode);
        Assert.Contains(
            "error E201: There is no crop \"lettuse\" in crops.csv: sales.csv:4:12, with $6.00 of money in it.",
            run.Error,
            StringComparison.Ordinal);
        Assert.Contains("did you mean lettuce? One line in aliases.csv fixes it: crops,lettuse,lettuce", run.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(scratch.File("out")));
    }

    [Theory]
    [InlineData("review")]
    [InlineData("decide")]
    [InlineData("explain", "--crop", "lettuce")]
    [InlineData("prices")]
    [InlineData("whatif")]
    [InlineData("writeup")]
    public async Task AnyResult_RecordsInError_SaysThatNoneWasMadeAndHowToGoOn(string command, params string[] more)
    {
        using Scratch scratch = new();
        string records = Copy(Sound, scratch.File("records"));
        File.AppendAllText(Path.Combine(records, "sales.csv"), "2025-05-11,lettuse,market,4,6.00\n");

        ProgramRun run = await Program.RunAsync([command, records, .. more]);

        Assert.Equal(1, run.ExitCode);
        Assert.Contains("error E201", run.Error, StringComparison.Ordinal);
        Assert.EndsWith("No result was made. Fix the errors, or use --skip-bad-rows to leave those rows out.", run.Error.TrimEnd(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Review_SkipBadRows_ListsThemAndTheirMoneyAtTheTop()
    {
        using Scratch scratch = new();
        string records = Copy(Sound, scratch.File("records"));
        File.AppendAllText(Path.Combine(records, "sales.csv"), "2025-05-11,lettuse,market,4,6.25\n");

        ProgramRun run = await Program.RunAsync("review", records, "--out", scratch.File("out"), "--skip-bad-rows", "--no-notebooks");

        Assert.True(run.ExitCode == 0, run.Error);
        Assert.Contains("6.25", run.Error, StringComparison.Ordinal);
        string index = File.ReadAllText(scratch.File("out/index.html"));
        int skipped = index.IndexOf("6.25", index.IndexOf("<body", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.InRange(skipped, 0, index.IndexOf("<h1>", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Review_FolderWithFilesOfOthers_IsLeftAlone()
    {
        using Scratch scratch = new();
        string taken = Directory.CreateDirectory(scratch.File("taken")).FullName;
        File.WriteAllText(Path.Combine(taken, "letter.txt"), "keep me");

        ProgramRun run = await Program.RunAsync("review", Sound, "--out", taken);

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("nothing was changed", run.Error, StringComparison.Ordinal);
        Assert.Equal(["letter.txt"], Directory.GetFileSystemEntries(taken).Select(Path.GetFileName));
    }

    [Fact]
    public async Task Review_IntoTheRecords_IsRefused()
    {
        using Scratch scratch = new();
        string records = Copy(Sound, scratch.File("records"));

        ProgramRun run = await Program.RunAsync("review", records, "--out", Path.Combine(records, "out"));

        Assert.Equal(2, run.ExitCode);
        Assert.False(Directory.Exists(Path.Combine(records, "out")));
    }

    [Fact]
    public async Task Review_YearWithoutRecords_NamesThoseThereAre()
    {
        using Scratch scratch = new();
        ProgramRun run = await Program.RunAsync("review", Demo, "--year", "1999", "--out", scratch.File("out"));

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("2023, 2024, 2025", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Review_AnotherSetting_ChangesTheFiguresAndReplacesTheOldResult()
    {
        using Scratch scratch = new();
        string records = Copy(Sound, scratch.File("records"));
        File.WriteAllText(Path.Combine(records, "labor.csv"), "date,worker,hours,task,crop\n2025-05-10,Ada,4,harvest,lettuce\n");
        string output = scratch.File("out");
        Assert.Equal(0, (await Program.RunAsync("review", records, "--out", output, "--set", "owner_wage=10", "--tables-only")).ExitCode);
        string cheap = LaborCost(output);
        Assert.Equal(0, (await Program.RunAsync("review", records, "--out", output, "--set", "owner_wage=20", "--tables-only")).ExitCode);

        Assert.Equal("40.00", cheap);
        Assert.Equal("80.00", LaborCost(output));
        Assert.Equal(["out", "records"], Directory.GetFileSystemEntries(scratch.Folder).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    private static string LaborCost(string output)
    {
        string[] crops = File.ReadAllLines(Path.Combine(output, "tables", "crops.csv"));
        return crops[1].Split(',')[Array.IndexOf(crops[0].Split(','), "labor_cost")];
    }

    private static void AssertProof(string path)
    {
        string[] lines = File.ReadAllLines(path);
        Assert.True(lines.Length > 20);
        Assert.All(lines.Skip(1), line => Assert.EndsWith(",0.00", line, StringComparison.Ordinal));
    }

    private static string Copy(string from, string to)
    {
        Directory.CreateDirectory(to);
        foreach (string file in Directory.GetFiles(from))
        {
            File.Copy(file, Path.Combine(to, Path.GetFileName(file)));
        }

        return to;
    }
}
