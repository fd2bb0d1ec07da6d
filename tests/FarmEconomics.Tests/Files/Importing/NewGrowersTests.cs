using FarmEconomics.Files.Importing;
using FarmEconomics.Files.Importing.Drafts;
using FarmEconomics.Files.Start;
using Xunit;

namespace FarmEconomics.Tests.Files.Importing;

/// <summary>Notes of growers who begin: what was read wrongly, or went nowhere, without a word. Every file is invented.</summary>
public class NewGrowersTests
{
    private const string Settings = "setting,value\nlength_unit,m\n";

    /// <summary>Two of "Salad mix 1/2 lb" are two half pounds: 1 lb, not 2.</summary>
    [Theory]
    [InlineData("Salad mix 1/2 lb", "1/2 lb")]
    [InlineData("Salad mix (5oz)", "5oz")]
    [InlineData("Salad mix 0.25 lb", "0.25 lb")]
    [InlineData("Salad mix ½ lb", "½ lb")]
    [InlineData("Salad mix 1 lb", "lb")]
    [InlineData("Salad mix lb", "lb")]
    public void Item_OfASize_IsCountedByThatSize(string item, string unit)
    {
        string text = $"Date,Item,Qty,Net Sales\n6/27/2025,{item},2,$12.00\n";
        Assert.Equal($"2025-06-27 {item} market 2 {unit} 12.00",
            Assert.Single(Drafted.Rows(Drafted.PlanText("register.csv", text, null, "channel=market"))));
    }

    [Fact]
    public void Item_OfALargerSize_IsNotTakenForASmallerOne()
    {
        ImportPlan plan = Drafted.PlanText("register.csv",
            "Date,Item,Qty,Net Sales\n6/27/2025,Mix 5 oz,2,$8.00\n6/27/2025,Beans 15 oz,3,$9.00\n6/27/2025,Peas oz,4,$4.00\n",
            null, "channel=market");

        Assert.Equal(
            [
                "2025-06-27 Mix 5 oz market 2 5 oz 8.00",
                "2025-06-27 Beans 15 oz market 3 15 oz 9.00",
                "2025-06-27 Peas oz market 4 oz 4.00",
            ],
            Drafted.Rows(plan));
    }

    /// <summary>A half pound is no other spelling of a pound: units.csv has to say how much it is, 0.5 lb, so 2 of them are 1 lb.</summary>
    [Fact]
    public void Size_TheUnitsDontKnow_IsHeldBackWithoutAGuess()
    {
        (string, string)[] farm = [("crops.csv", "crop,unit\nSalad mix,lb\nKale,bunches\n"),
            ("channels.csv", "channel,kind\nmarket,market\n"),
            ("aliases.csv", "table,alias,name\ncrops,Salad mix 1/2 lb,Salad mix\ncrops,Kale 1/2 bunch,Kale\n")];
        string text = "Date,Item,Qty,Net Sales\n6/27/2025,Salad mix 1/2 lb,2,$12.00\n6/27/2025,Kale 1/2 bunch,2,$4.00\n";
        ImportPlan plan = Drafted.PlanText("register.csv", text, TestFolders.Make(farm));

        Assert.Empty(plan.Rows);
        Assert.All(plan.UnknownNames, name => Assert.Equal(("units", ""), (name.Table, name.Name)));
        Assert.Equal(2, plan.UnknownNames.Count);
        ImportPlan told = Drafted.PlanText("register.csv", text, TestFolders.Make(
            [.. farm, ("units.csv", "crop,unit,base_units\nSalad mix,1/2 lb,0.5\nKale,1/2 bunch,0.5\n")]));
        Assert.Equal(2, told.Rows.Count);
    }

    [Fact]
    public void Start_FromARegisterAlone_CountsAnItemByItsSize() => Assert.Contains("Salad mix,1/2 lb,",
        FirstTables.From([Drafted.Source("picked.csv", "Date,Crop,Picked\n2025-06-07,Salad mix 1/2 lb,4\n")]).Files["crops"],
        StringComparison.Ordinal);

    /// <summary>Winter 2024-25: January's days are of 2025, and no day is read as one of the year before.</summary>
    [Theory]
    [InlineData("picked-2024.csv", "Crop,11/9,12/21,1/11\nkale,2,3,4\n")]
    [InlineData("picked-2024.csv", "Crop,1/11,12/21,12/14,11/9\nkale,4,3,3,2\n")]
    [InlineData("picked-2024.csv", "Date,Crop,Qty\n12/21,kale,3\n1/11,kale,4\n1/18,kale,4\n")]
    [InlineData("picked.csv", "Winter 2024,,\nDate,Crop,Qty\n12/14,kale,3\n12/21,kale,3\n1/11,kale,4\n")]
    public void Days_OverNewYearWithoutAYear_AreReadAsNone(string name, string text)
    {
        ImportPlan plan = Drafted.PlanText(name, text, null);

        Assert.Empty(plan.Rows);
        Assert.NotEmpty(plan.HeldBack);
        ImportDraft draft = ImportDraft.Of(new ImportRequest(Drafted.Source(name, text)));
        Assert.Contains("run over New Year, so 2024 is the year of some alone", draft.Lines.Single(line => line.Column == "date").Note,
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Winter 2024-25", false)]
    [InlineData("Winter 2024/2025", false)]
    [InlineData("Winter 2024", true)]
    [InlineData("Printed 2024-11", true)]
    public void Title_OfTwoYears_TellsNone(string title, bool one) => Assert.Equal(one ? 1 : 0,
        Drafted.PlanText("picked-2024.csv", $"{title},,\nDate,Crop,Qty\n11/25,kale,3\n", null).Rows.Count);

    /// <summary>Crop after crop, the days of one season turn back more than once, or by less than half a year.</summary>
    [Theory]
    [InlineData("Date,Crop,Qty\n3/1,kale,3\n11/25,kale,3\n3/2,chard,3\n12/1,chard,3\n3/3,peas,1\n")]
    [InlineData("Date,Crop,Qty\n6/1,kale,3\n10/25,kale,3\n6/2,chard,3\n10/30,chard,3\n")]
    [InlineData("Date,Crop,Qty\n2/1,kale,3\n11/25,kale,3\n")]
    public void Days_OfOneYear_AreRead(string text) =>
        Assert.Equal(text.Count(c => c == '\n') - 1, Drafted.PlanText("picked-2025.csv", text, null).Rows.Count);

    [Fact]
    public void Mapping_OfASheetThatGrewIntoJanuary_IsNotRemembered()
    {
        string folder = TestFolders.Make(("imports.csv", "import,table,column,source_column,constant,when,match,becomes,format,note\n"
            + "picks,harvests,date,(heading),,,,,M/D 2024,\npicks,harvests,crop,Crop,,,,,,\npicks,harvests,quantity,(cell),,,,,,\n"));
        Assert.True(Remembers("Crop,11/9,12/21\nkale,2,3\n"));
        Assert.False(Remembers("Crop,11/9,12/21,1/11\nkale,2,3,4\n"));

        bool Remembers(string text) =>
            RecordsImport.Remembers(new ImportRequest(Drafted.Source("picks-2024.csv", text)) { Folder = folder });
    }

    /// <summary>6.6. reads alike both ways; the next file's 5.6. is June 5.</summary>
    [Theory]
    [InlineData("6.6.2025", null, "D.M.YYYY")]
    [InlineData("6/6/2025", null, "M/D/YYYY")]
    [InlineData("6/6/2025", "D/M/YYYY", "D/M/YYYY")]
    public void Days_ThatReadAlikeBothWays_AreReadTheFarmsWay(string day, string? form, string read)
    {
        string source = Drafted.Source("picked.csv", $"Date,Crop,Qty\n{day},kale,3\n");
        string? folder = form is null ? null : TestFolders.Make(("farm.csv", $"setting,value\ndate_format,{form}\n"));

        ImportDraft draft = ImportDraft.Of(new ImportRequest(source) { Folder = folder });
        Assert.Contains($"[{read}]", draft.Lines.Single(line => line.Column == "date").From, StringComparison.Ordinal);
    }

    /// <summary>A farm in meters has no column bed_feet, and feet are no meters.</summary>
    [Theory]
    [InlineData("Length m", "25.5", "25.5")]
    [InlineData("Length", "25.5", "25.5")]
    [InlineData("Bed feet", "25.5", null)]
    public void Plantings_OfAFarmInMeters_AreInMeters(string heading, string length, string? read)
    {
        string folder = TestFolders.Make(("farm.csv", Settings), ("crops.csv", "crop,unit\nKale,kg\n"),
            ("beds.csv", "bed,length_m\nB1,60\n"));
        ImportPlan plan = Drafted.PlanText("beds.csv",
            $"Crop,Bed,{heading},Planted,Out\nKale,B1,{length},4/20/2025,6/25/2025\n", folder);

        Assert.Equal(read is null ? [] : [$"Kale B1 {read} 2025-04-20 2025-06-25"], Drafted.Rows(plan));
        if (read is null)
        {
            Assert.Equal("E242", Assert.Single(plan.Problems).Code);
            return;
        }

        plan.Apply();
        Assert.StartsWith("crop,bed,bed_meters,", File.ReadAllText(Path.Combine(folder, plan.FileName)), StringComparison.Ordinal);
    }

    /// <summary>Twelve under "kg" are kilograms, whatever the crop is counted in.</summary>
    [Theory]
    [InlineData("kg", "kg")]
    [InlineData("Quantity kg", "kg")]
    [InlineData("Picked (kg)", "kg")]
    [InlineData("lbs", "lbs")]
    [InlineData("Qty", "")]
    public void Heading_ThatNamesAUnit_IsTheUnit(string heading, string unit) => Assert.Equal($"2025-06-27 kale 12 {unit}".TrimEnd(),
        Assert.Single(Drafted.Rows(Drafted.PlanText("picked.csv", $"Date,Crop,{heading}\n6/27/2025,kale,12\n", null))));

    [Fact]
    public void Heading_OfAUnitTheRecordsWriteOtherwise_IsTheirs() => Assert.Equal("2025-06-27 kale 12 lb",
        Assert.Single(Drafted.Rows(Drafted.PlanText("picked.csv", "Date,Crop,lbs\n6/27/2025,kale,12\n", TestFolders.Make(
            ("crops.csv", "crop,unit\nkale,lb\n"), ("beds.csv", "bed,length_ft\n1,50\n"),
            ("plantings.csv", "planting,crop,bed,bed_feet,in_bed\nk,kale,1,50,2025-04-20\n"))))));

    /// <summary>Tips and fees of a register go nowhere; the grower is told.</summary>
    [Fact]
    public void Columns_ThatAreNotRead_AreNamed()
    {
        ImportPlan plan = Drafted.PlanText("register.csv",
            "Date,Item,Qty,Net Sales,Tip,Card Fee,Empty\n6/27/2025,Kale,2,$8.00,$1.00,($0.41),\n", null, "channel=market");

        Assert.Contains("Not read: 2 columns (Tip, Card Fee).", plan.Remarks);
        Assert.DoesNotContain(Drafted.PlanText("picked.csv", "Date,Crop,Qty\n6/27/2025,kale,12\n", null).Remarks,
            remark => remark.StartsWith("Not read", StringComparison.Ordinal));
    }

    [Fact]
    public void Start_AFileThatCantBeTold_StopsNoOthers()
    {
        FirstTables first = FirstTables.From([Drafted.Source("picked.csv", "Date,Crop,Picked\n2025-06-07,Kale,4 lb\n"),
            Drafted.Source("hours.csv", "Date,Who,Time,What\n2025-06-07,me,all morning,harvest\n")]);

        Assert.Contains("Kale,lb,", first.Files["crops"], StringComparison.Ordinal);
        Assert.Contains(first.Remarks, remark => remark.StartsWith("hours.csv: nothing is drafted from it.", StringComparison.Ordinal));
    }

    /// <summary>What members pay is no cost.</summary>
    [Fact]
    public void Payments_OfMembers_AreIncome()
    {
        ImportPlan plan = Drafted.PlanText("payments.csv",
            "Date,Member,Amount\n5/31/2025,Ames,$300.00\n6/15/2025,Boyd,$150.00\n", null, "channel=Shares");

        Assert.Equal("income", plan.Table);
        Assert.Equal(["2025-05-31 Shares 300.00", "2025-06-15 Shares 150.00"], Drafted.Rows(plan));
    }

    /// <summary>What is paid in parts, each with its day: a row a payment, and none where nothing was paid.</summary>
    [Theory]
    [InlineData("Member,Share,Paid 1,Date 1,Paid 2,Date 2")]
    [InlineData("Member,Share,Payment,Date,Payment 2,Date 2")]
    [InlineData("Member,Share,1st payment,1st date,2nd payment,2nd date")]
    public void Payments_InColumnsWithNumbers_AreARowEach(string headings)
    {
        string text = headings + "\nAmes,full,$300.00,3/1/2025,$150.00,5/31/2025\nBoyd,half,$150.00,3/15/2025,,\nCole,half,,,,\n"
            + "Total,,$450.00,,$150.00,\n";
        ImportPlan plan = Drafted.PlanText("members.csv", text, null, "channel=Shares");

        Assert.Equal("income", plan.Table);
        Assert.Equal(["2025-03-01 Shares 300.00", "2025-03-15 Shares 150.00", "2025-05-31 Shares 150.00"], Drafted.Rows(plan));
        Assert.Equal([450m, 150m], plan.Sums.Select(sum => sum.InSource));
        Assert.All(plan.Sums, sum => Assert.True(sum.Agrees));
        Assert.Contains(plan.Remarks, remark => remark.Contains("a row for each time", StringComparison.Ordinal));
        Assert.Contains("Not read: 1 row with nothing in the columns that come again (line 4).", plan.Remarks);
    }

    [Fact]
    public void Payments_ImportedAgainAfterTheSecondPart_AddThatAlone()
    {
        string folder = TestFolders.Make(("crops.csv", "crop,unit\nKale,lb\n"), ("channels.csv", "channel,kind\nShares,csa\n"));
        const string Head = "Member,Paid 1,Date 1,Paid 2,Date 2\n";
        Drafted.PlanText("members.csv", Head + "Ames,$300.00,3/15/2025,,\n", folder, "channel=Shares").Apply();
        ImportPlan plan = Drafted.PlanText("members.csv", Head + "Ames,$300.00,3/15/2025,$150.00,5/31/2025\n", folder, "channel=Shares");

        Assert.Equal(["2025-05-31 Shares 150.00"], Drafted.Rows(plan));
        Assert.Single(plan.AlreadyThere);
    }

    /// <summary>One kind of column that is numbered, or columns that differ, are no parts of one thing.</summary>
    [Theory]
    [InlineData("Date,Crop,Bed 1,Bed 2,Lb\n6/15/2025,Kale,A,B,12\n")]
    [InlineData("Date,Crop,Bed 1,Note 1,Bed 2,Lb\n6/15/2025,Kale,A,wet,B,12\n")]
    public void Columns_OfOneKindWithNumbers_StayWhatTheyAre(string text) =>
        Assert.Equal(["2025-06-15 Kale 12 lb"], Drafted.Rows(Drafted.PlanText("picked.csv", text, null)));
}
