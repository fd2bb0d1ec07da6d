using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using FarmEconomics.EndToEnd.Tests.Support;
using FarmEconomics.Notebooks;

namespace FarmEconomics.EndToEnd.Tests.Commands;

/// <summary>A farm in meters, kilograms, euros and decimal commas sees its own units and marks wherever the program says something.</summary>
public sealed partial class MetricFarmTests : IDisposable
{
    /// <summary>Sections of regulations, whose numbers are names.</summary>
    private static readonly string[] Citations = ["200.414"];

    private readonly Scratch scratch = new();
    private readonly string farm;

    public MetricFarmTests() => farm = MetricFarm.Write(Path.Combine(Repository.Root, "demo-data"), scratch.File("farm"));

    public void Dispose() => scratch.Dispose();

    [SlowFact]
    public async Task Review_MetricFarm_SpeaksOfMetersAndEurosOnly()
    {
        string output = scratch.File("out");
        ProgramRun run = await Program.RunAsync("review", farm, "--out", output);

        Assert.True(run.ExitCode == 0, run.Error + run.Output);
        AssertOwnWay("console", run.Output + run.Error);
        string[] pages = Directory.GetFiles(output, "*.html");
        Assert.True(pages.Length > 6);

        // Code cells are the program's own text; styles and pictures hold no words.
        Assert.Multiple([
            .. pages.Select(page => (Action)(() => AssertOwnWay(Path.GetFileName(page), Hidden().Replace(File.ReadAllText(page), "")))),
        ]);
        Assert.Contains("bed-meter-week", File.ReadAllText(Path.Combine(output, "index.html")), StringComparison.Ordinal);
        Assert.Contains("€", File.ReadAllText(Path.Combine(output, "index.html")), StringComparison.Ordinal);
        Assert.Multiple([
            .. Directory
                .GetFiles(Path.Combine(output, "notebooks"), "*.ipynb")
                .Select(notebook =>
                    (Action)(
                        () =>
                            AssertOwnWay(
                                Path.GetFileName(notebook),
                                // A data frame is data for a program, with a program's numbers.
                                string.Concat(
                                    NotebookDocument
                                        .Parse(File.ReadAllText(notebook))
                                        .Cells.Where(cell => !FrameShown().IsMatch(cell.Source))
                                        .Select(cell =>
                                            (cell.Type == "code" ? "" : cell.Source) + string.Concat(cell.Outputs.SelectMany(Texts))
                                        )
                                )
                            )
                    )
                ),
        ]);
        Assert.Multiple([
            .. Directory
                .GetFiles(Path.Combine(output, "tables"), "*.csv")
                .Select(table => (Action)(() => AssertMetric(Path.GetFileName(table), File.ReadAllText(table).Replace('_', ' ')))),
        ]);
    }

    [Theory]
    [InlineData("explain", "--crop", "Carrots")]
    [InlineData("explain", "--crop", "Carrots", "--line", "infrastructure")]
    [InlineData("decide")]
    [InlineData("decide", "--drop", "Broccoli")]
    [InlineData("decide", "--grow", "Carrots", "--by", "15")]
    [InlineData("decide", "--swap", "Broccoli", "Carrots")]
    [InlineData("prices", "--channel", "Porch Pickup")]
    [InlineData("decide", "--shrink", "Carrots", "--by", "10.5", "--elasticity", "2.5")]
    [InlineData("decide", "--shrink", "Carrots", "--by", "10,5", "--elasticity", "2,5")]
    [InlineData("prices", "--channel", "Porch Pickup", "--target-hour", "22,5", "--step", "0,05")]
    [InlineData("whatif", "--change", "price of Carrots=+10,5%", "--change", "wages=-2,5%", "--change", "owner_wage=22,75")]
    [InlineData("check")]
    public async Task Command_MetricFarm_SpeaksOfMetersAndEurosOnly(string command, params string[] options)
    {
        ProgramRun run = await Program.RunAsync([command, farm, .. options]);

        Assert.True(run.ExitCode is 0, run.Error);
        AssertOwnWay(command, run.Output + run.Error);
    }

    [Fact]
    public async Task Files_OfPricesAndWriteUp_SpeakOfMetersAndEurosOnly()
    {
        ProgramRun prices = await Program.RunAsync("prices", farm, "--channel", "Porch Pickup", "--out", scratch.File("prices"));
        ProgramRun writeup = await Program.RunAsync("writeup", farm, "--project", "Larger cold room", "--out", scratch.File("writeup"));

        Assert.True(prices.ExitCode == 0, prices.Error);
        Assert.True(writeup.ExitCode == 0, writeup.Error);
        AssertOwnWay("prices", prices.Output + prices.Error);
        AssertOwnWay("writeup", writeup.Output + writeup.Error);
        string[] files = [.. Directory.GetFiles(scratch.File("prices"), "*", SearchOption.AllDirectories), .. Directory.GetFiles(scratch.File("writeup"), "*", SearchOption.AllDirectories)];
        Assert.Contains(files, file => file.EndsWith(".xlsx", StringComparison.Ordinal));
        foreach (string file in files)
        {
            AssertOwnWay(Path.GetFileName(file), file.EndsWith(".xlsx", StringComparison.Ordinal) ? WorkbookWords(file) : Hidden().Replace(File.ReadAllText(file), ""));
        }
    }

    [Fact]
    public async Task Check_MetricFarmInError_NamesItsOwnColumnsAndWords()
    {
        File.WriteAllText(Path.Combine(farm, "beds.csv"), "bed;length_m;width_cm\nA;-3;x\nB;;75\n");
        File.AppendAllText(Path.Combine(farm, "pools.csv"), "sheds;bed-meter-years;overhead;;;nothing\n");
        File.WriteAllText(Path.Combine(farm, "plantings.csv"), "planting;crop;bed;bed_feet;in_bed\nP;Carrots;A;0;2025-04-01\n");

        ProgramRun run = await Program.RunAsync("check", farm, "--all");

        Assert.Equal(1, run.ExitCode);
        Assert.Contains("length_m", run.Output + run.Error, StringComparison.Ordinal);
        Assert.Contains("bed-meter-days", run.Output + run.Error, StringComparison.Ordinal);
        AssertMetric("check", (run.Output + run.Error).Replace("bed_feet", "", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Numbers_OfOptions_AreReadWithAPointOrTheFarmsMarkAndNeverAsTwoThings()
    {
        ProgramRun pointed = await Program.RunAsync("decide", farm, "--grow", "Carrots", "--by", "10.5");
        ProgramRun own = await Program.RunAsync("decide", farm, "--grow", "Carrots", "--by", "10,5");
        ProgramRun thousands = await Program.RunAsync("decide", farm, "--grow", "Carrots", "--by", "1.500");
        ProgramRun elsewhere = await Program.RunAsync("decide", Path.Combine(Repository.Root, "demo-data"), "--grow", "Carrots", "--by", "10,5");

        Assert.Equal((0, pointed.Output), (own.ExitCode, own.Output));
        Assert.Contains("10,5", own.Output, StringComparison.Ordinal);
        Assert.Equal((2, 2), (thousands.ExitCode, elsewhere.ExitCode));
        Assert.Contains("--by takes a number from 0,01 to 10.000.000, with a decimal comma where need be and no marks between thousands, not '1.500'.", thousands.Error, StringComparison.Ordinal);
        Assert.Contains("--by takes a number from 0.01 to 10,000,000, with a decimal point where need be and no marks between thousands, not '10,5'.", elsewhere.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Check_MetricFarmOutOfRange_NamesRangesAndSumsItsOwnWay()
    {
        string place = Path.Combine(farm, "sales.csv");
        string[] rows = File.ReadAllLines(place);
        File.WriteAllLines(Path.Combine(farm, "beds.csv"), ["bed;length_m;width_cm", "A;-3,5;0,25"]);
        File.WriteAllLines(place, rows.Select((row, i) => i == 1 ? string.Join(';', row.Split(';').Select((field, at) => rows[0].Split(';')[at] == "quantity" ? "-2,5" : field)) : row));

        ProgramRun run = await Program.RunAsync("check", farm, "--all");
        ProgramRun brief = await Program.RunAsync("check", farm);

        Assert.Equal((1, 1), (run.ExitCode, brief.ExitCode));
        Assert.Contains("-3,5", run.Output, StringComparison.Ordinal);
        Assert.Contains("-2,5", run.Output, StringComparison.Ordinal);
        AssertOwnWay("check --all", run.Output + run.Error);
        AssertOwnWay("check", brief.Output + brief.Error);
    }

    internal static void AssertMetric(string where, string text)
    {
        string[] found =
        [
            .. OtherUnit()
                .Matches(text)
                .Take(20)
                .Select(match => $"{where}: ...{text[Math.Max(0, match.Index - 80)..Math.Min(text.Length, match.Index + 60)]}..."),
        ];
        Assert.True(found.Length == 0, string.Join("\n", found));
    }

    /// <summary>Its own units, and no number with a decimal point in what a person sees.</summary>
    private static void AssertOwnWay(string where, string text)
    {
        AssertMetric(where, text);
        string seen = text.Contains('<', StringComparison.Ordinal)
            ? Tag().Replace(string.Join('\n', Said().Matches(text).Select(match => match.Groups[1].Value)) + "\n" + text, "\n") : text;
        string[] pointed = [.. WithPoint().Matches(seen).Where(match => !Thousands().IsMatch(match.Value) && !Citations.Contains(match.Value))
            .Select(match => seen[Math.Max(0, match.Index - 60)..Math.Min(seen.Length, match.Index + 40)].ReplaceLineEndings(" ")).Distinct().Take(12)];
        Assert.True(pointed.Length == 0, $"{where}:\n{string.Join("\n", pointed)}");
    }

    [Theory]
    [InlineData("12.50", true)]
    [InlineData("€0.125", true)]
    [InlineData("-3.5 %", true)]
    [InlineData("1,234.50", true)]
    [InlineData("<td title=\"a part of 2.5\">x</td>", true)]
    [InlineData("1.234,50", false)]
    [InlineData("1.234.567", false)]
    [InlineData("2025-06-30", false)]
    [InlineData("<td data-value=\"12.5\">12,5</td>", false)]
    public void OwnWay_OfATextWithADecimalPoint_IsRefused(string text, bool refused)
    {
        Exception? fault = Record.Exception(() => AssertOwnWay("text", text));
        Assert.Equal(refused, fault is not null);
    }

    private static string WorkbookWords(string file)
    {
        using System.IO.Compression.ZipArchive zip = System.IO.Compression.ZipFile.OpenRead(file);
        // Text between tags only: formulas have $ in their references.
        return string.Concat(zip.Entries.Where(entry => entry.FullName.EndsWith(".xml", StringComparison.Ordinal)).Select(entry =>
        {
            using StreamReader reader = new(entry.Open());
            return string.Concat(WorkbookText().Matches(reader.ReadToEnd()).Select(match => match.Groups[1].Value + "\n"));
        }));
    }

    private static IEnumerable<string> Texts(JsonObject output)
    {
        foreach (JsonNode? part in new[] { output["text"], output["data"]?["text/plain"], output["data"]?["text/html"] })
        {
            yield return part is JsonArray lines ? string.Concat(lines.Select(line => (string?)line)) : (string?)part ?? "";
        }
    }

    [GeneratedRegex(@"\b(foot|feet|ft|inch|inches|acres?|lbs?|pounds?|dollars?|USD)\b|bed[- ]f|\$", RegexOptions.IgnoreCase)]
    private static partial Regex OtherUnit();

    [GeneratedRegex(@"\.Show\(\d*\)")]
    private static partial Regex FrameShown();

    [GeneratedRegex(@"(?<![\w.,])\d[\d.,]*\.\d[\d.,]*")]
    private static partial Regex WithPoint();

    [GeneratedRegex(@"^[1-9]\d{0,2}(\.\d{3})+(,\d+)?[.,]?$")]
    private static partial Regex Thousands();

    [GeneratedRegex(@"<[^>]*>")]
    private static partial Regex Tag();

    [GeneratedRegex(@"\b(?:alt|title|aria-label|placeholder)=""([^""]*)""")]
    private static partial Regex Said();

    [GeneratedRegex(@"<style.*?</style>|<details class=""code"".*?</details>|<pre class=""code"".*?</pre>|<footer>|</footer>", RegexOptions.Singleline)]
    private static partial Regex Hidden();

    [GeneratedRegex(@"<(?:\w+:)?t(?: [^>]*)?>([^<]*)<|formatCode=""[^""]*""")]
    private static partial Regex WorkbookText();
}
