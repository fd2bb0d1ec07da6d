using FarmEconomics.Files;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using Xunit;

namespace FarmEconomics.Tests.Files;

public class BadRecordsTests
{
    // A file that changes meanwhile can't stand in a folder; RobustReadingTests shows it.
    private static readonly string[] WithoutFolder = ["E132"];

    public static TheoryData<string> Codes => [.. ProblemCatalog.All.Select(kind => kind.Code).Except(WithoutFolder)];

    [Theory]
    [MemberData(nameof(Codes))]
    public void Check_SmallestBadFolder_SaysExactlyWhatIsExpected(string code)
    {
        Assert.True(Directory.Exists(Path.Combine(TestFolders.BadRecords, code)), $"No BadRecords/{code} for a code of the catalog.");
        IReadOnlyList<Problem> problems = AllProblems(TestFolders.MakeBad(code));

        Assert.Contains(problems, problem => problem.Code == code);
        CompareWithExpected(code, problems);
    }

    [Fact]
    public void Check_SoundFolder_FindsNothing() => Assert.Empty(AllProblems(Path.Combine(TestFolders.BadRecords, "sound")));

    [Fact]
    public void Check_FolderWithTwentyFaults_ReportsTwenty()
    {
        IReadOnlyList<Problem> problems = AllProblems(Path.Combine(TestFolders.BadRecords, "twenty-faults"));

        CompareWithExpected("twenty-faults", problems);
        Assert.Equal(20, problems.Count);
    }

    [Fact]
    public void BadRecords_EveryFolder_IsOfACodeOfTheCatalog()
    {
        string[] others = ["sound", "twenty-faults"];
        IEnumerable<string?> folders = Directory.EnumerateDirectories(TestFolders.BadRecords).Select(Path.GetFileName);

        Assert.All(folders.Except(others), folder => Assert.Contains(ProblemCatalog.All, kind => kind.Code == folder));
    }

    private static IReadOnlyList<Problem> AllProblems(string folder) => FarmFolder.Open(folder).Problems;

    private static void CompareWithExpected(string folder, IReadOnlyList<Problem> problems)
    {
        string path = Path.Combine(TestFolders.BadRecords, folder, "expected.txt");
        string text = string.Concat(problems.Select(problem => ProblemText.Format(problem, Notation.Default) + "\n"));
        if (TestFolders.Rewrite)
        {
            File.WriteAllText(path, text);
        }

        Assert.Equal(File.ReadAllText(path), text);
    }
}
