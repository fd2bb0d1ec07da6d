using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Commands;

/// <summary>The commands that help a grower to records: start, import, and check with its proposals.</summary>
public class RecordsCommandsTests
{
    private static readonly string Imports = Path.Combine(Repository.Root, "demo-data", "imports");
    private static readonly string Sound = Path.Combine(Repository.Root, "tests", "FarmEconomics.Tests", "BadRecords", "sound");

    [Fact]
    public async Task Start_FolderAndWorkbook_ThenCheck_FindNothingWrong()
    {
        using Scratch scratch = new();
        foreach (string place in new[] { scratch.File("farm"), scratch.File("farm.xlsx") })
        {
            Assert.Equal(0, (await Program.RunAsync("start", place)).ExitCode);
            ProgramRun check = await Program.RunAsync("check", place);
            Assert.Equal(0, check.ExitCode);
            Assert.Contains("No problems found.", check.Output, StringComparison.Ordinal);
        }

        ProgramRun again = await Program.RunAsync("start", scratch.File("farm.xlsx"));
        Assert.Equal(2, again.ExitCode);
        Assert.Contains("is there already", again.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Import_DryRunThenApplyThenAgain_AddsOnce()
    {
        using Scratch scratch = new();
        foreach (string file in Directory.EnumerateFiles(Sound))
        {
            File.Copy(file, scratch.File(Path.GetFileName(file)));
        }

        string[] command = ["import", Path.Combine(Imports, "card-reader.csv"), "--as", "sales", "--map", Path.Combine(Imports, "card-reader.map.csv"), "--into", scratch.Folder];
        int before = Directory.GetFiles(scratch.Folder).Length;
        ProgramRun dry = await Program.RunAsync(command);
        Assert.Equal(before, Directory.GetFiles(scratch.Folder).Length);
        ProgramRun apply = await Program.RunAsync([.. command, "--apply"]);
        ProgramRun again = await Program.RunAsync([.. command, "--apply"]);

        Assert.Equal((0, 0, 0), (dry.ExitCode, apply.ExitCode, again.ExitCode));
        Assert.Contains("3 to add, 0 added before, 1 left out", dry.Output, StringComparison.Ordinal);
        Assert.Contains("The records are as they were.", dry.Output, StringComparison.Ordinal);
        Assert.Contains("0 to add, 3 added before", again.Output, StringComparison.Ordinal);
        Assert.Equal(before + 2, Directory.GetFiles(scratch.Folder).Length);
    }

    [Fact]
    public async Task Check_FixNames_ProposesAndLeavesTheRecordsAlone()
    {
        using Scratch scratch = new();
        string messy = Path.Combine(Repository.Root, "demo-data", "messy");

        ProgramRun run = await Program.RunAsync("check", messy, "--fix-names", "--out", scratch.File("proposed.csv"));

        Assert.Equal(1, run.ExitCode);
        Assert.Contains("crops,Head lettce,Head lettuce,", File.ReadAllText(scratch.File("proposed.csv")), StringComparison.Ordinal);
        Assert.Equal(2, (await Program.RunAsync("check", messy, "--fix-names", "--out", Path.Combine(messy, "aliases.csv"))).ExitCode);
        Assert.False(File.Exists(Path.Combine(messy, "aliases.csv")));
    }

    [Fact]
    public async Task Check_NamesFilledIn_AreAddedAtOnceOrNotAtAll()
    {
        using Scratch scratch = new();
        Checksums.Copy(ManyFarms.Sound, scratch.File("farm"));
        File.AppendAllText(
            Path.Combine(scratch.File("farm"), "sales.csv"),
            "2025-05-11,letuce,market,4,6.00\n2025-05-12,Zebra,market,4,6.00\n"
        );

        ProgramRun list = await Program.RunAsync("check", scratch.File("farm"), "--fix-names", "--out", scratch.File("names.csv"));
        Assert.Contains("2 names your records don't know, 1 guess", list.Output, StringComparison.Ordinal);
        string names = File.ReadAllText(scratch.File("names.csv"));
        Assert.Contains("crops,Zebra,,1,sales.csv:5", names, StringComparison.Ordinal);

        File.WriteAllText(scratch.File("names.csv"), names.Replace("Zebra,,", "Zebra,kael,", StringComparison.Ordinal));
        ProgramRun refused = await Program.RunAsync("check", scratch.File("farm"), "--add-names", scratch.File("names.csv"));
        Assert.Contains("nothing was written: \"Zebra\": crops has no \"kael\"", refused.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(Path.Combine(scratch.File("farm"), "aliases.names.csv")));

        File.WriteAllText(scratch.File("names.csv"), names.Replace("Zebra,,", "Zebra,kale,", StringComparison.Ordinal));
        string[] line = ["check", scratch.File("farm"), "--add-names", scratch.File("names.csv")];
        Assert.Equal(2, (await Program.RunAsync([.. line, "--list", scratch.File("names.csv")])).ExitCode);
        Assert.False(File.Exists(Path.Combine(scratch.File("farm"), "aliases.names.csv")));

        ProgramRun added = await Program.RunAsync(line);
        Assert.True(added.ExitCode == 0, added.Output + added.Error);
        Assert.Contains("2 names written to aliases.names.csv", added.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Import_WorkbookOfSeveralSheets_ReadsEachByItsOwnMapping()
    {
        using Scratch scratch = new();
        Checksums.Copy(ManyFarms.Sound, scratch.File("farm"));
        Directory.CreateDirectory(scratch.File("sheets"));
        File.WriteAllText(Path.Combine(scratch.File("sheets"), "May.csv"), "Date,Crop,Quantity\n2025-05-17,kale,3\n");
        File.WriteAllText(Path.Combine(scratch.File("sheets"), "Notes.csv"), "What Bea said\n");
        File.WriteAllText(
            Path.Combine(scratch.File("sheets"), "June.csv"),
            "Date,Crop,Quantity\n2025-06-17,lettuce,4\n2025-06-18,kale,5\n"
        );
        PlainWorkbook.Write(scratch.File("sheets"), scratch.File("book.xlsx"));
        string[] line = ["import", scratch.File("book.xlsx"), "--into", scratch.File("farm"), "--rest", scratch.File("rest.csv")];
        Assert.StartsWith("--rest goes with one sheet; say which with --sheet: ", (await Program.RunAsync(line)).Error,
            StringComparison.Ordinal);

        ProgramRun seen = await Program.RunAsync("import", scratch.File("book.xlsx"), "--into", scratch.File("farm"));
        ProgramRun done = await Program.RunAsync("import", scratch.File("book.xlsx"), "--into", scratch.File("farm"), "--apply");
        ProgramRun again = await Program.RunAsync("import", scratch.File("book.xlsx"), "--into", scratch.File("farm"), "--apply");

        Assert.Contains("Sheet June (1 of 2", seen.Output, StringComparison.Ordinal);
        Assert.True(done.ExitCode == 0, done.Output + done.Error);
        Assert.Equal(2, Directory.GetFiles(scratch.File("farm"), "harvests.book-*.csv").Length);
        Assert.Contains("0 to add, 2 added before", again.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Check_WithControlTotals_ShowsThemBesideTheRecords()
    {
        ProgramRun run = await Program.RunAsync("check", Path.Combine(Repository.Root, "demo-data"));

        Assert.Contains("time standards", run.Output, StringComparison.Ordinal);
        Assert.Matches(@"sales amount +2025-01-01 - 2025-12-31 +86,341\.33", run.Output);
        Assert.DoesNotContain("MISSED", run.Output, StringComparison.Ordinal);
    }
}
