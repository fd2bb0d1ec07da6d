using FarmEconomics.Files.Importing;
using FarmEconomics.Files.Importing.Drafts;
using FarmEconomics.Files.Start;
using Xunit;

namespace FarmEconomics.Tests.Files.Importing;

/// <summary>Cells left blank because the one above goes on, and lists of plantings with several days. Every file is invented; that people
/// write so is common practice, no source.</summary>
public class BlankCellsTests
{
    private const string Invoices = "Invoice #,Date,Customer,Item,Qty,Amount\n"
        + "1001,06/25/2025,Blue Door,Kale,4,16.00\n,,,Beets,20,45.00\n,,,Subtotal,,61.00\n"
        + "1002,06/26/2025,Corner Shop,Kale,24,42.00\n,,,Beets,3,9.00\n";

    [Fact]
    public void Lines_OfAnInvoice_AreOfItsDayAndCustomer()
    {
        ImportPlan plan = Drafted.PlanText("invoices.csv", Invoices, null);

        Assert.Equal(
            [
                "2025-06-25 Kale Blue Door 4 16.00", "2025-06-25 Beets Blue Door 20 45.00", "2025-06-26 Kale Corner Shop 24 42.00",
                "2025-06-26 Beets Corner Shop 3 9.00",
            ],
            Drafted.Rows(plan));
        Assert.Contains("4 blank cells are read as the same as above.", plan.Remarks);
        Assert.Contains(Draft("invoices.csv", Invoices).Lines,
            line => line.Note == "? Blue Door, Corner Shop; blank in 2 rows: read as the same as above");
    }

    [Theory]
    [InlineData("Date,Crop,Qty\n6/25/2025,Kale,4\n,Beets,5\n6/26/2025,Kale,6\n,Beets,7\n")]
    [InlineData("Date,Crop,Qty\n6/25/2025,Kale,4\n6/25/2025,Beets,5\n6/26/2025,Kale,6\n,Beets,7\n")]
    [InlineData("Crop,Date,Qty\nKale,6/25/2025,4\n,6/26/2025,6\nBeets,6/25/2025,5\n,6/26/2025,7\n")]
    public void DayOrCrop_WrittenOnce_GoesOn(string text) => Assert.Equal(
        ["2025-06-25 Beets 5", "2025-06-25 Kale 4", "2025-06-26 Beets 7", "2025-06-26 Kale 6"],
        Drafted.Rows(Drafted.PlanText("picked.csv", text, null)).Order(StringComparer.Ordinal));

    /// <summary>One day missing among many is more likely forgotten.</summary>
    [Fact]
    public void Day_MissingOnce_IsHeldBack()
    {
        string days = string.Concat(Enumerable.Range(13, 12).Select(day => $"6/{day}/2025,Kale,4\n"));
        string text = "Date,Crop,Qty\n" + days + ",Kale,5\n6/28/2025,Kale,5\n";
        ImportPlan plan = Drafted.PlanText("picked.csv", text, null);

        Assert.Equal(14, Assert.Single(plan.HeldBack).Line);
        Assert.Equal(13, plan.Rows.Count);
    }

    /// <summary>No customer on a register's list is whoever came by, not the customer before.</summary>
    [Fact]
    public void Customer_MissingAlone_IsNotTheOneAbove()
    {
        ImportPlan plan = Drafted.PlanText("register.csv",
            "Date,Customer,Item,Qty,Amount\n6/25/2025,Blue Door,Kale,4,16.00\n6/25/2025,,Kale,1,4.00\n6/26/2025,,Kale,1,4.00\n", null);

        Assert.Equal("2025-06-25 Kale Blue Door 4 16.00", Assert.Single(Drafted.Rows(plan)));
        Assert.Equal([3, 4], plan.HeldBack.Select(row => row.Line).Order());
    }

    /// <summary>The bed's weeks began in the seedling house: the day it was seeded was taken for the day it was set out.</summary>
    [Fact]
    public void DaySetOut_IsTheDayInTheBed_NotTheDayItWasSeeded() => Assert.Equal(
        "Kale North 100 2025-04-28 2025-03-20 2025-08-15",
        Fields(Drafted.PlanText("plantings.csv",
            "Seeded,Crop,Bed,Bed ft,Transplanted,Removed\n3/20/2025,Kale,North,100,4/28/2025,8/15/2025\n", null), "crop", "bed", "bed_feet",
            "in_bed", "sown", "out_of_bed"));

    [Theory]
    [InlineData("Date sown,What,Where,Bed ft\n3/20/2025,Kale,North,100\n", "no column says when it was set in the bed", "2025-03-20")]
    [InlineData("Date sown,What,Where,Bed ft,Date out\n3/20/2025,Kale,North,100,4/28/2025\n", "taken for the day it was set in the bed",
        "2025-04-28")]
    public void DayInTheBed_NoHeadingSays_IsToBeLookedAt(string text, string why, string day)
    {
        DraftLine line = Draft("log.csv", text).Lines.Single(line => line.Column == "in_bed");

        Assert.StartsWith("?", line.Note, StringComparison.Ordinal);
        Assert.EndsWith(why + (why.StartsWith("no ", StringComparison.Ordinal) ? ": right for what was sown there" : ""), line.Note,
            StringComparison.Ordinal);
        Assert.Equal($"Kale North 100 {day} 2025-03-20",
            Fields(Drafted.PlanText("log.csv", text, null), "crop", "bed", "bed_feet", "in_bed", "sown"));
    }

    /// <summary>"What" in a bank's list is what was paid for.</summary>
    [Fact]
    public void What_BesideMoneyInAndOut_IsNoCrop() => Assert.Equal("expenses",
        Draft("bank.csv", "Date,What,Out,In\n6/25/2025,Seed house,84.20,\n6/26/2025,Market,,266.40\n").Table);

    /// <summary>A bag of 3 lb holds 3 lb; a crop is one however its items are written.</summary>
    [Fact]
    public void Start_TakesUnitsOffTheNamesOfCrops()
    {
        FirstTables tables = FirstTables.From([
            Drafted.Source("a.csv", "Date,Crop,Picked\n6/25/2025,Carrots (bu),4\n6/25/2025,Salad mix (lb),6\n"),
            Drafted.Source("b.csv", "Date,Customer,Item,Qty,Amount\n6/25/2025,Inn,Salad mix - 3 lb bag,2,48.00\n"
                + "6/25/2025,Inn,Carrots bunch,2,5.00\n")]);

        Assert.Equal("crop,unit,storage_days\nCarrots,bu,\nSalad mix,lb,\n", tables.Files["crops"]);
        Assert.Equal("crop,unit,base_units\nSalad mix,3 lb bag,3\n", tables.Files["units"]);
        Assert.Contains("units.csv: Carrots: how many bu is 1 bunch?", tables.Remarks);
    }

    [Fact]
    public void Start_AsksForOneOfAUnitInTheSingular() => Assert.Contains("units.csv: Kale: how many lb is 1 case?", FirstTables.From([
        Drafted.Source("a.csv", "Date,Crop,Picked (lb)\n6/25/2025,Kale,4\n"),
        Drafted.Source("b.csv", "Date,Customer,Item,Cases,Amount\n6/25/2025,Inn,Kale,2,48.00\n")]).Remarks);

    [Fact]
    public void Table_ThatIsNone_IsAnsweredWithThoseThereAre()
    {
        ArgumentException fault = Assert.Throws<ArgumentException>(() =>
            ImportDraft.Of(new ImportRequest(Drafted.Source("m.csv", Invoices)) { Table = "share_payments" }));

        Assert.Contains("these there are: ", fault.Message, StringComparison.Ordinal);
        Assert.Contains(" income,", fault.Message, StringComparison.Ordinal);
    }

    /// <summary>A name of a table in any case.</summary>
    [Fact]
    public void Table_WrittenWithACapital_IsThatTable() => Assert.Equal("sales",
        ImportDraft.Of(new ImportRequest(Drafted.Source("m.csv", Invoices)) { Table = "Sales" }).Table, ignoreCase: true);

    private static ImportDraft Draft(string name, string text) => ImportDraft.Of(new ImportRequest(Drafted.Source(name, text)));

    private static string Fields(ImportPlan plan, params string[] columns) =>
        string.Join(' ', columns.Select(column => Assert.Single(plan.Rows).Fields[plan.Columns.ToList().IndexOf(column)]));
}
