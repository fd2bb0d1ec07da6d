using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Commands;

/// <summary>A folder and a workbook with the same content give the same results, through the program.</summary>
public sealed class WorkbookAndFolderTests : IDisposable
{
    private static readonly string Demo = Path.Combine(Repository.Root, "demo-data");
    private static readonly string Sound = Path.Combine(Repository.Root, "tests", "FarmEconomics.Tests", "BadRecords", "sound");

    private readonly Scratch scratch = new();

    public void Dispose() => scratch.Dispose();

    [Fact]
    public async Task Review_DemoAsWorkbookAndAsFolder_GivesEqualTables()
    {
        PlainWorkbook.Write(Demo, scratch.File("demo.xlsx"));

        ProgramRun folder = await Program.RunAsync("review", Demo, "--out", scratch.File("a"), "--tables-only");
        ProgramRun workbook = await Program.RunAsync("review", scratch.File("demo.xlsx"), "--out", scratch.File("b"), "--tables-only");

        Assert.True(folder.ExitCode == 0, folder.Error);
        Assert.True(workbook.ExitCode == 0, workbook.Error);
        AssertEqualTables(scratch.File("a"), scratch.File("b"));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Start_FilledInByScript_ChecksAndReviews(bool metric)
    {
        (string folder, string workbook) = (scratch.File("farm"), scratch.File("farm.xlsx"));
        string records = metric ? Metric(scratch.File("records")) : Sound;
        string[] options = metric ? ["--metric", "--currency", "EUR"] : [];
        Assert.Equal(0, (await Program.RunAsync(["start", folder, .. options])).ExitCode);
        Assert.Equal(0, (await Program.RunAsync(["start", workbook, .. options])).ExitCode);
        foreach (string table in Directory.EnumerateFiles(records, "*.csv"))
        {
            FilledTemplates.FillFolder(folder, table);
            FilledTemplates.FillWorkbook(workbook, table);
        }

        foreach (string farm in new[] { folder, workbook })
        {
            ProgramRun check = await Program.RunAsync("check", farm);
            ProgramRun review = await Program.RunAsync("review", farm, "--out", farm + "-out", "--no-notebooks");
            Assert.True(check.ExitCode == 0, check.Output + check.Error);
            Assert.True(review.ExitCode == 0, review.Error);
            Assert.Contains(metric ? "€" : "$", review.Output, StringComparison.Ordinal);
            Assert.Equal(metric, File.ReadAllText(Path.Combine(farm + "-out", "tables", "crops.csv")).Contains("bed_meters", StringComparison.Ordinal));
        }

        AssertEqualTables(folder + "-out", workbook + "-out");
    }

    [Fact]
    public async Task Start_Metric_SpeaksOfMetersAndKilogramsOnly()
    {
        string folder = scratch.File("farm");
        ProgramRun run = await Program.RunAsync("start", folder, "--metric", "--currency", "EUR", "--decimal-comma", "--minimal");
        ProgramRun wrong = await Program.RunAsync("start", scratch.File("other"), "--currency", "Euros");

        Assert.True(run.ExitCode == 0, run.Error);
        Assert.Equal("setting;value\nlength_unit;m\ncurrency;EUR\ndecimal_mark;,\n", File.ReadAllText(Path.Combine(folder, "farm.csv")));
        Assert.StartsWith("planting;crop;bed;bed_meters;", File.ReadAllText(Path.Combine(folder, "plantings.csv")), StringComparison.Ordinal);
        foreach (string file in Directory.EnumerateFiles(folder))
        {
            // What names both units or codes: the setting that chooses between them, and where its schema stands.
            string text = File.ReadAllText(file).Replace("\"$schema\"", "", StringComparison.Ordinal).Replace("| ft or m | ft |", "", StringComparison.Ordinal).Replace("such as USD | USD |", "", StringComparison.Ordinal);
            MetricFarmTests.AssertMetric(Path.GetFileName(file), text);
        }

        Assert.Equal(0, (await Program.RunAsync("check", folder)).ExitCode);
        Assert.Equal(2, wrong.ExitCode);
        Assert.Contains("three letters", wrong.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(scratch.File("other")));
    }

    private static string Metric(string folder)
    {
        Directory.CreateDirectory(folder);
        foreach (string path in Directory.EnumerateFiles(Sound, "*.csv").Where(path => Path.GetFileName(path) != "farm.csv"))
        {
            string[] lines = File.ReadAllLines(path);
            lines[0] = lines[0].Replace("bed_feet", "bed_meters", StringComparison.Ordinal).Replace("length_ft", "length_m", StringComparison.Ordinal).Replace("width_in", "width_cm", StringComparison.Ordinal);
            File.WriteAllLines(Path.Combine(folder, Path.GetFileName(path)), lines);
        }

        return folder;
    }

    private static void AssertEqualTables(string left, string right)
    {
        // What was found names the file it stands in; the codes are the same.
        string[] names = [.. Directory.GetFiles(Path.Combine(left, "tables")).Select(path => Path.GetFileName(path)!).Order(StringComparer.Ordinal)];
        Assert.True(names.Length > 6);
        Assert.Equal(names, Directory.GetFiles(Path.Combine(right, "tables")).Select(path => Path.GetFileName(path)!).Order(StringComparer.Ordinal));
        foreach (string name in names)
        {
            (string a, string b) = (File.ReadAllText(Path.Combine(left, "tables", name)), File.ReadAllText(Path.Combine(right, "tables", name)));
            if (name == "problems.csv")
            {
                Assert.Equal(PlainCsv.Read(a).Select(row => row[1]).Order(), PlainCsv.Read(b).Select(row => row[1]).Order());
            }
            else
            {
                Assert.True(a == b, $"{name} differs.");
            }
        }
    }
}
