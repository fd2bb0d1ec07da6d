using FarmEconomics.Files;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using Xunit;

namespace FarmEconomics.Tests.Files;

public class ProblemSummaryTests
{
    [Fact]
    public void Lines_NameMisspelledInThreeFiles_IsToldOnceWithItsFix()
    {
        string folder = TestFolders.MakeBad("sound");
        File.AppendAllText(Path.Combine(folder, "harvests.csv"), "");
        File.WriteAllText(Path.Combine(folder, "sales.csv"), "date,crop,channel,quantity,amount\n2025-05-10,lettuce,market,40,60.00\n" + string.Concat(Enumerable.Range(1, 85).Select(i => $"2025-06-10,Kalle,market,{i},2.00\n")));
        File.WriteAllText(Path.Combine(folder, "prices.csv"), "crop,price\nkalle,2\n");
        File.WriteAllText(Path.Combine(folder, "input_rates.csv"), "pool,crop,rate,per\npackaging,Kalle,1,unit\n");

        string[] lines = [.. ProblemSummary.Lines(FarmFolder.Open(folder).Problems, folder, Notation.Default)];

        Assert.Equal(
            [
                $"In {folder}:",
                "error E201: There is no crop \"Kalle\" in crops.csv: 87 rows in sales.csv and 2 other files, "
                    + "first at input_rates.csv:2:11, with $170.00 of money in them.",
                "    did you mean kale? One line in aliases.csv fixes all: crops,Kalle,kale",
            ],
            lines);
    }

    [Fact]
    public void Lines_TwoColumnsMissing_NamesBoth()
    {
        string folder = TestFolders.MakeBad("sound");
        File.WriteAllText(Path.Combine(folder, "income.csv"), "date\n2025-06-10\n");

        string[] lines = [.. ProblemSummary.Lines(FarmFolder.Open(folder).Problems, folder, Notation.Default)];

        Assert.Contains(
            "error E103: income lacks the columns channel and amount, so none of its rows can be read: income.csv:1:1.",
            lines
        );
    }

    [Fact]
    public void Lines_OneRowToldSeveralTimes_IsOneRow()
    {
        Problem[] problems =
        [
            .. Enumerable.Repeat(ProblemCatalog.Make("W502", new SourceLine("crops.csv", 3), "units_per_crate", "Look."), 6),
        ];

        string told = ProblemSummary.Lines(problems, "records", Notation.Default).ElementAt(1);
        Assert.Equal("warning W502: No size of a crate: 6 times at crops.csv:3:1.", told);
    }

    [Fact]
    public void Lines_ManyWarningsAndFewErrors_FitAScreenWithTheErrorsOfMostMoneyFirst()
    {
        List<Problem> problems = [];
        for (int i = 0; i < 1_507; i++)
        {
            problems.Add(ProblemCatalog.Make("W202", new SourceLine("sales.csv", i + 2), null, $"The row says the same as line {i}."));
        }

        foreach (string code in new[] { "W203", "W204", "W401", "W402", "W403", "W404", "W405", "W406" })
        {
            problems.Add(ProblemCatalog.Make(code, new SourceLine("labor.csv", 3), "hours", "Look."));
        }

        problems.Add(ProblemCatalog.Make("E228", new SourceLine("sales.csv", 9), "quantity", "Little.") with { Money = 5m });
        problems.Add(ProblemCatalog.Make("E222", new SourceLine("sales.csv", 99), "crop", "Much.") with { Money = 500m });
        problems.Add(ProblemCatalog.Make("E103", new SourceLine("beds.csv", 0), null, "beds lacks the column bed."));

        string[] lines = [.. ProblemSummary.Lines(problems, "records", Notation.Default)];

        Assert.InRange(lines.Length, 1, 24);
        Assert.Equal(["E103", "E222", "E228", "W202"], lines.Where(line => line.StartsWith("error", StringComparison.Ordinal) || line.StartsWith("warning", StringComparison.Ordinal)).Take(4).Select(line => line.Split(' ')[1].TrimEnd(':')));
        Assert.Contains(lines, line => line.StartsWith("warning W202: Row twice: 1,507 rows in sales.csv, first at sales.csv:2:1.", StringComparison.Ordinal));
        Assert.Equal("... and 5 more kinds of problems, in 5 places.", lines[^1]);
        Assert.True(ProblemSummary.LeavesOut(problems));

        // Where problems are what was asked for, each further kind has a line.
        string[] all = [.. ProblemSummary.Lines(problems, "records", Notation.Default, everyKind: true)];
        Assert.Equal(12, all.Select(line => line.TrimStart())
            .Count(line => line.StartsWith("error ", StringComparison.Ordinal) || line.StartsWith("warning ", StringComparison.Ordinal)));
        Assert.EndsWith(":", Assert.Single(all, line => line.Contains("more kinds", StringComparison.Ordinal)), StringComparison.Ordinal);
        Assert.Equal(1, lines.Count(line => line.Contains(Path.GetFullPath("records"), StringComparison.Ordinal)));
    }

    [Fact]
    public void Lines_FileWithoutANeededColumn_ComeBeforeWhatIsWrongWithSingleRows()
    {
        string folder = TestFolders.MakeBad("sound");
        File.WriteAllText(Path.Combine(folder, "sales.csv"), "Date;Crop;Channel;Qty;Amount\n2025-06-10;kale;market;3;6.00\n");
        string expenses = "date,category,amount\n" + string.Concat(Enumerable.Repeat("6/31/2025,seed,90.00\n", 9));
        File.WriteAllText(Path.Combine(folder, "expenses.csv"), expenses);

        string[] lines = [.. ProblemSummary.Lines(FarmFolder.Open(folder).Problems, folder, Notation.Default)];

        Assert.Equal("error E103: sales lacks the column quantity, so none of its rows can be read: sales.csv:1:1.", lines[1]);
        Assert.Contains(lines.Skip(2), line => line.StartsWith("error E114: Not a date: 9 rows in expenses.csv", StringComparison.Ordinal));
    }

    [Fact]
    public void Lines_NoProblem_AreNone() => Assert.Empty(ProblemSummary.Lines([], "records", Notation.Default));

    [Fact]
    public void Write_EveryProblem_IsARowOfTheList()
    {
        string folder = TestFolders.MakeBad("twenty-faults");
        IReadOnlyList<Problem> problems = FarmFolder.Open(Path.Combine(TestFolders.BadRecords, "twenty-faults")).Problems;
        string list = Path.Combine(folder, "list.csv");

        ProblemList.Write(problems, list);

        using CsvHelper.CsvReader reader = CsvHelper.CsvReader.FromFile(list);
        int rows = 0;
        while (reader.Read())
        {
            rows++;
        }

        Assert.Equal(20, rows);
        Assert.Throws<IOException>(() => ProblemList.Write(problems, list));
    }
}
