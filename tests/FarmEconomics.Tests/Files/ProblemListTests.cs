using FarmEconomics.Files;
using Xunit;

namespace FarmEconomics.Tests.Files;

public class ProblemListTests
{
    [Fact]
    public void Write_WhereNoFolderIs_SaysSo()
    {
        string path = Path.Combine(TestFolders.Make(), "nowhere", "list.csv");

        Assert.Equal($"There is no folder for {path}.", Assert.Throws<IOException>(() => ProblemList.Write([], path)).Message);
    }

    [Fact]
    public void Write_WhereNothingMayBeWritten_SaysItInPlainWords()
    {
        // Linux lets nobody make a file there, not even the one who may do all else.
        const string Path = "/sys/list.csv";
        Assert.SkipUnless(Directory.Exists("/sys/kernel"), "There is no /sys here.");

        Assert.StartsWith("/sys/list.csv can't be written: you have no right to write in its folder.",
            Assert.Throws<UnauthorizedAccessException>(() => ProblemList.Write([], Path)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_OverAFileThatIsThere_LeavesItAsItIs()
    {
        string path = Path.Combine(TestFolders.Make(("list.csv", "mine\n")), "list.csv");

        Assert.Throws<IOException>(() => ProblemList.Write([], path));
        Assert.Equal("mine\n", File.ReadAllText(path));
    }
}
