using FarmEconomics.Files;
using FarmEconomics.Files.Importing;
using FarmEconomics.Records;
using Xunit;

namespace FarmEconomics.Tests.Files.Importing;

public class RecordsImportTests
{
    private static readonly string Shapes = Path.Combine(TestFolders.Repository, "demo-data", "imports");

    [Fact]
    public void Plan_CardReader_ShowsRowsAndWritesNothing()
    {
        string folder = Farm();
        string before = Listing(folder);

        ImportPlan plan = RecordsImport.Plan(Path.Combine(Shapes, "card-reader.csv"), "sales", Path.Combine(Shapes, "card-reader.map.csv"), folder);

        // The same two bunches twice within a minute: added as two sales, and told.
        Assert.Equal("W202", Assert.Single(plan.Problems).Code);
        Assert.Equal(["date", "crop", "channel", "quantity", "amount"], plan.Columns);
        Assert.Equal(["2025-05-17 lettuce market 3 4.50", "2025-05-17 kale market 2 5.00", "2025-05-17 kale market 2 5.00"], plan.Rows.Select(row => string.Join(' ', row.Fields)));
        Assert.Single(plan.LeftOut);
        Assert.Equal(before, Listing(folder));
    }

    [Fact]
    public void Apply_Twice_AddsEachRowOnceAndKeepsItsPlace()
    {
        string folder = Farm();
        string source = Path.Combine(Shapes, "card-reader.csv");
        ImportPlan plan = RecordsImport.Plan(source, "sales", Path.Combine(Shapes, "card-reader.map.csv"), folder);

        plan.Apply();
        FarmFolder farm = FarmFolder.Open(folder);
        ImportPlan again = RecordsImport.Plan(source, "sales", "till", folder);

        Assert.Equal(0, farm.ErrorCount);
        Assert.Equal(5, farm.Reading.Tables.Sales.Count);
        Assert.Contains("card-reader.csv,7,", File.ReadAllText(Path.Combine(folder, "sales.card-reader.csv")), StringComparison.Ordinal);
        Assert.Empty(again.Rows);
        Assert.Equal(3, again.AlreadyThere.Count);
        Assert.False(again.CanApply);
    }

    /// <summary>Whoever does what the error says has the row.</summary>
    [Fact]
    public void ABlankValue_IsGivenByTheLineOfTheMappingItsErrorNames()
    {
        const string Mapping = "import,table,column,source_column,match,becomes\nbank,expenses,date,Day,,\nbank,expenses,amount,Paid,,\n";
        const string Plain = "bank,expenses,category,Category,,\n";
        string folder = TestFolders.Make(("bank.csv", "Day,Paid,Category\n2025-04-02,120.50,seed\n2025-04-05,33.10,\n"),
            ("asked.map.csv", Mapping + Plain), ("answered.map.csv", Mapping + "bank,expenses,category,Category,blank,supplies\n" + Plain));
        ImportPlan Plan(string mapping) =>
            RecordsImport.Plan(Path.Combine(folder, "bank.csv"), "expenses", Path.Combine(folder, mapping), Farm());

        Problem problem = Assert.Single(Plan("asked.map.csv").Problems);
        Assert.Equal(
            ("E110", "Fill in \"Category\" there, or say in the mapping what blank ones are: above the line of category another with the "
                + "same column and source_column, blank under match, and what they are under becomes. Where a blank means the same as "
                    + "above, as in merged cells: same-as-above under format."),
            (problem.Code, problem.Hint));
        Assert.Equal("2025-04-05 33.10 supplies", string.Join(' ', Plan("answered.map.csv").Rows[1].Fields));
    }

    [Fact]
    public void RemoveLeftovers_OfAnyTable_LeavesWhatTheGrowerKeeps()
    {
        string folder = TestFolders.Make(
            (".sales.till.csv.new-0123456789ab", "half"), (".labor_standards.till-2.csv.new-0123456789ab", "half"),
            (".labor_standards.till.csv.bak", "kept"), ("labor_standards.csv", "kept"));

        ImportPlan.RemoveLeftovers(folder);

        Assert.Equal([".labor_standards.till.csv.bak", "labor_standards.csv"], Directory.EnumerateFiles(folder).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Plan_LaterExportThatOverlaps_AddsOnlyWhatIsNew()
    {
        string folder = Farm();
        string text = File.ReadAllText(Path.Combine(Shapes, "card-reader.csv"));
        RecordsImport.Plan(Path.Combine(Shapes, "card-reader.csv"), "sales", Path.Combine(Shapes, "card-reader.map.csv"), folder).Apply();
        string later = Path.Combine(TestFolders.Make(("card-reader.csv", text.TrimEnd('\n') + "\n05/24/2025 09:15,KALE BU,1,$2.50,Sale\n")), "card-reader.csv");

        ImportPlan plan = RecordsImport.Plan(later, "sales", "till", folder);
        plan.Apply();

        Assert.Single(plan.Rows);
        Assert.Equal("sales.card-reader-2.csv", plan.FileName);
        Assert.Null(plan.MappingFileName);
        Assert.Equal(6, FarmFolder.Open(folder).Reading.Tables.Sales.Count);
    }

    [Fact]
    public void Plan_Bank_TurnsSignsAndReadsCommas()
    {
        ImportPlan plan = RecordsImport.Plan(Path.Combine(Shapes, "bank.csv"), "expenses", Path.Combine(Shapes, "bank.map.csv"), Farm());

        Assert.Empty(plan.Problems);
        Assert.Equal(["2025-03-03 1240.50 seed Oldfield Seed Co-op", "2025-03-08 -20.00 seed Oldfield Seed Co-op"], plan.Rows.Select(row => string.Join(' ', row.Fields)));
    }

    [Fact]
    public void Plan_TimeSheet_TakesWorkersAndTasks()
    {
        ImportPlan plan = RecordsImport.Plan(Path.Combine(Shapes, "time-sheet.csv"), "labor", Path.Combine(Shapes, "time-sheet.map.csv"), Farm());

        Assert.Empty(plan.Problems);
        Assert.Equal(["2025-05-10 Ada 3.25 harvest", "2025-05-11 Ada 1.5 weeding"], plan.Rows.Select(row => string.Join(' ', row.Fields)));
    }

    [Fact]
    public void Plan_RowsInError_AreToldByTheirSourceLineAndNotAdded()
    {
        string folder = Farm();
        string source = Path.Combine(TestFolders.Make(("till.csv", "When,Item,Count,Paid,Type\n05/17/2025 08:10,LETT HD,three,$4.50,Sale\n05/17/2025 08:11,CHARD,1,$4.50,Sale\n")), "till.csv");

        ImportPlan plan = RecordsImport.Plan(source, "sales", Path.Combine(Shapes, "card-reader.map.csv"), folder);

        Assert.Equal(["E111 till.csv:2", "E201 till.csv:3"], plan.Problems.Select(problem => $"{problem.Code} {problem.Source}"));
        Assert.False(plan.CanApply);
        Assert.Throws<InvalidOperationException>(plan.Apply);
    }

    [Fact]
    public void Plan_MappingWithAFault_IsToldInTheMapping()
    {
        string map = Path.Combine(TestFolders.Make(("map.csv", "import,table,column,source_column\nx,sales,prize,Paid\n")), "map.csv");

        Problem problem = Assert.Single(RecordsImport.Plan(Path.Combine(Shapes, "card-reader.csv"), "sales", map, Farm()).Problems);

        Assert.Equal(("E242", "map.csv:2", "planting"), (problem.Code, problem.Source.ToString(), problem.Nearest ?? "planting"));
    }

    private static string Farm() => TestFolders.MakeBad("sound");

    private static string Listing(string folder) => string.Join('\n', Directory.EnumerateFiles(folder).Order(StringComparer.Ordinal).Select(path => path + File.ReadAllText(path)));
}
