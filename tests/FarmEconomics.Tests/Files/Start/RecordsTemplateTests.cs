using FarmEconomics.EndToEnd.Tests.Support;
using FarmEconomics.Files;
using FarmEconomics.Files.Results;
using FarmEconomics.Files.Start;
using FarmEconomics.Records.Schema;
using Xunit;

namespace FarmEconomics.Tests.Files.Start;

public class RecordsTemplateTests
{
    [Fact]
    public void Write_FilledInByScript_FolderAndWorkbookGiveTheSameReview()
    {
        string parent = TestFolders.Make();
        (string folder, string workbook) = (Path.Combine(parent, "farm"), Path.Combine(parent, "farm.xlsx"));
        RecordsTemplate.Write(folder, minimal: false);
        RecordsTemplate.Write(workbook, minimal: false);
        foreach (string sound in Directory.EnumerateFiles(Path.Combine(TestFolders.BadRecords, "sound"), "*.csv"))
        {
            FilledTemplates.FillFolder(folder, sound);
            FilledTemplates.FillWorkbook(workbook, sound);
        }

        FarmFolder fromFolder = FarmFolder.Open(folder);
        FarmFolder fromWorkbook = FarmFolder.Open(workbook);

        Assert.Equal(0, fromFolder.ErrorCount);
        Assert.Equal(fromFolder.Problems.Select(problem => problem.Code), fromWorkbook.Problems.Select(problem => problem.Code));
        Assert.Equal(Tables(fromFolder), Tables(fromWorkbook));
    }

    [Fact]
    public void Write_Minimal_HoldsTheFiveTablesAndNothingToComplainOf()
    {
        string folder = Path.Combine(TestFolders.Make(), "farm");
        RecordsTemplate.Write(folder, minimal: true);

        Assert.Equal(["beds.csv", "crops.csv", "harvests.csv", "plantings.csv", "sales.csv"], Directory.EnumerateFiles(folder, "*.csv").Select(Path.GetFileName).Order());
        Assert.Equal("crop,unit,group,family,storage_days,perennial", File.ReadAllText(Path.Combine(folder, "crops.csv")).Trim());
        Assert.DoesNotContain("kc_ini", File.ReadAllText(Path.Combine(folder, "about.md")), StringComparison.Ordinal);
        Assert.Empty(FarmFolder.Open(folder).Problems);
        Assert.Empty(FarmFolder.Open(RecordsTemplate.Write(Path.Combine(folder, "new.xlsx"), minimal: false)[0]).Problems);
    }

    [Fact]
    public void Write_WhereSomethingStands_ChangesNothing()
    {
        string folder = TestFolders.Make(("crops.csv", "mine"), ("mine.xlsx", "mine"));

        Assert.Throws<IOException>(() => RecordsTemplate.Write(folder, minimal: true));
        Assert.Throws<IOException>(() => RecordsTemplate.Write(Path.Combine(folder, "mine.xlsx"), minimal: true));
        Assert.Throws<IOException>(() => RecordsTemplate.Write(Path.Combine(folder, "crops.csv"), minimal: true));

        Assert.Equal(["crops.csv", "mine.xlsx"], Directory.EnumerateFiles(folder).Select(Path.GetFileName).Order());
        Assert.All(Directory.EnumerateFiles(folder), file => Assert.Equal("mine", File.ReadAllText(file)));
    }

    [Fact]
    public void Write_IntoAFolderWithFilesOfOthers_NamesOneAndWritesNothing()
    {
        string folder = TestFolders.Make(("letter.txt", "mine"));

        string said = Assert.Throws<IOException>(() => RecordsTemplate.Write(folder, minimal: true)).Message;

        Assert.Contains("such as letter.txt; nothing was written", said, StringComparison.Ordinal);
        Assert.Equal(["letter.txt"], Directory.EnumerateFileSystemEntries(folder).Select(Path.GetFileName));
    }

    [Fact]
    public void NewFiles_OneThatCannotBeWritten_LeavesNoneAndNoFolder()
    {
        string parent = TestFolders.Make();
        Dictionary<string, byte[]> files = new() { ["a.csv"] = [1], ["not/there.csv"] = [2] };

        Assert.ThrowsAny<IOException>(() => NewFiles.Write(Path.Combine(parent, "new", "farm"), files));
        Assert.ThrowsAny<IOException>(() => NewFiles.Write(parent, files));

        Assert.Empty(Directory.EnumerateFileSystemEntries(parent));
    }

    [Fact]
    public void NewFiles_OneThatIsThere_LeavesItAndTakesTheOthersBack()
    {
        string folder = TestFolders.Make(("b.csv", "mine"));

        Assert.ThrowsAny<IOException>(() => NewFiles.Write(folder, new Dictionary<string, byte[]> { ["a.csv"] = [1], ["b.csv"] = [2] }));

        Assert.Equal(["b.csv"], Directory.EnumerateFileSystemEntries(folder).Select(Path.GetFileName));
        Assert.Equal("mine", File.ReadAllText(Path.Combine(folder, "b.csv")));
    }

    [Fact]
    public void Examples_OfEveryColumn_CanBeRead()
    {
        foreach (TableSchema table in RecordSchema.Tables)
        {
            string[] examples = [.. table.Columns.Select(column => ColumnExamples.Of(table, column))];
            string text = string.Join(',', table.Columns.Select(column => column.Name)) + "\n" + string.Join(',', examples) + "\n";

            RecordsReading reading = RecordsFolder.Read(TestFolders.Make(($"{table.Name}.csv", text)));

            Assert.DoesNotContain(reading.Problems, problem => problem.Source.File == $"{table.Name}.csv");
            Assert.Equal(1, reading.Files.Single().RowsRead);
        }
    }

    private static Dictionary<string, string> Tables(FarmFolder farm)
    {
        string folder = TestFolders.Make();
        ResultTables.Write(farm.Review!.Season(2025), [], folder);
        return Directory.EnumerateFiles(folder).ToDictionary(path => Path.GetFileName(path)!, File.ReadAllText);
    }
}
