using System.Text.RegularExpressions;
using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Commands;

/// <summary>
/// docs/first-evening.md, typed as it stands: its commands are run and its decisions made in the files it names. The review must have the tables of the same farm
/// written cleanly by hand (Samples/shoebox-written-cleanly, made from the raw files by a script of its own that shares no code with the program).
/// </summary>
public partial class FirstEveningTests
{
    private const int MostDecisions = 20;

    [Fact]
    public async Task Walk_AsItStands_GivesTheTablesOfTheSameFarmWrittenCleanly()
    {
        using Scratch scratch = new();
        Checksums.Copy(Path.Combine(Repository.Root, "demo-data", "shoebox"), scratch.File("shoebox"));
        int decisions = 0;
        foreach (string line in File.ReadLines(Path.Combine(Repository.Root, "docs", "first-evening.md")))
        {
            if (line.Trim() is var typed && typed.StartsWith("farm-economics ", StringComparison.Ordinal))
            {
                // Its tables are looked at, not its notebooks.
                string whole = typed.StartsWith("farm-economics review ", StringComparison.Ordinal) ? typed + " --no-notebooks" : typed;
                ProgramRun run = await Program.RunApartAsync([
                    .. whole.Split(' ').Skip(1).Select(word =>
                        word.StartsWith("shoebox/", StringComparison.Ordinal) || word.StartsWith("my-", StringComparison.Ordinal)
                            ? scratch.File(word) : word),
                ]);
                Assert.True(run.ExitCode == 0 || !typed.EndsWith("--apply", StringComparison.Ordinal), $"{typed}\n{run.Output}{run.Error}");
                Assert.True(run.ExitCode is 0 or 1, $"{typed}\n{run.Output}{run.Error}");
                Assert.DoesNotContain("DOES NOT ADD UP", run.Output, StringComparison.Ordinal);
            }
            else if (line.StartsWith("- ", StringComparison.Ordinal))
            {
                decisions++;
                Decide(line, scratch);
            }
        }

        Assert.InRange(decisions, 1, MostDecisions);
        string cleanly = Path.Combine(Repository.Root, "tests", "FarmEconomics.EndToEnd.Tests", "Samples", "shoebox-written-cleanly");
        ProgramRun clean = await Program.RunApartAsync("review", cleanly, "--out", scratch.File("clean"), "--tables-only");
        Assert.True(clean.ExitCode == 0, clean.Output + clean.Error);
        Assert.Equal(Tables(scratch.File("clean")), Tables(scratch.File("my-review")));
    }

    private static void Decide(string line, Scratch scratch)
    {
        if (Put().Match(line) is { Success: true } put)
        {
            string place = scratch.File(put.Groups["file"].Value);
            string[] rows = File.ReadAllLines(place);
            int column = Array.IndexOf(rows[0].Split(','), put.Groups["column"].Value);
            int at = Array.FindIndex(rows, row => row.Split(',').Contains(put.Groups["key"].Value));
            Assert.True(at > 0 && column >= 0, line);
            rows[at] = string.Join(',', rows[at].Split(',').Select((field, i) => i == column ? put.Groups["value"].Value : field));
            File.WriteAllLines(place, rows);
        }
        else if (Add().Match(line) is { Success: true } add)
        {
            File.AppendAllText(scratch.File(add.Groups["file"].Value), add.Groups["row"].Value + "\n");
        }
        else
        {
            Assert.True(File.Exists(scratch.File(Look().Match(line).Groups["file"].Value)), line);
        }
    }

    // Where a problem stands differs, and nothing else may.
    private static string Tables(string folder) => string.Join('\n', Directory.EnumerateFiles(Path.Combine(folder, "tables"), "*.csv").Where(file => Path.GetFileName(file) != "problems.csv")
        .Order(StringComparer.Ordinal).Select(file => Path.GetFileName(file) + "\n" + File.ReadAllText(file)));

    [GeneratedRegex("^- In `(?<file>[^`]+)`, line `(?<key>[^`]+)`, put `(?<value>[^`]+)` under `(?<column>[^`]+)`", RegexOptions.ExplicitCapture)]
    private static partial Regex Put();

    [GeneratedRegex("^- Add to `(?<file>[^`]+)`: `(?<row>[^`]+)`", RegexOptions.ExplicitCapture)]
    private static partial Regex Add();

    [GeneratedRegex("^- Look through `(?<file>[^`]+)`", RegexOptions.ExplicitCapture)]
    private static partial Regex Look();
}
