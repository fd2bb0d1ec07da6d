using FarmEconomics.Files.Importing;
using FarmEconomics.Files.Start;
using Xunit;

namespace FarmEconomics.Tests.Files.Importing;

/// <summary>Picking sheets as they hang by the door: days down without a year, crops across, who picked beside them. Every row is
/// invented.</summary>
public class PickingSheetTests
{
    private const string Sheet = "Picked 2025,,,,\n\nDay,Kale,Carrots,Salad mix,Who\n5/15,12 bunches,,8 lb,Mia\n5/22,9 bunches,20 lb,,Jo\n";

    [Fact]
    public void Days_DownWithoutAYear_AreOfTheOneInTheTitle()
    {
        ImportPlan plan = Drafted.PlanText("picks.csv", Sheet, null);

        Assert.Equal("harvests", plan.Table);
        Assert.Equal(
            ["2025-05-15 Kale 12 bunches", "2025-05-15 Salad mix 8 lb", "2025-05-22 Kale 9 bunches", "2025-05-22 Carrots 20 lb"],
            Drafted.Rows(plan));
    }

    [Fact]
    public void Days_WithoutAnyYear_AreAskedForInOneLine()
    {
        ImportPlan plan = Drafted.PlanText("picks.csv", Sheet.Replace(" 2025", "", StringComparison.Ordinal), null);

        Assert.Equal("harvests", plan.Table);
        Assert.Empty(plan.Rows);
    }

    /// <summary>Numbers alone under names nobody knows, beside who it was, are hours by task; under crops of the farm they are what was
    /// picked.</summary>
    [Fact]
    public void Numbers_BesideWhoItWas_ArePickedWhereTheHeadingsAreCrops()
    {
        const string Bare = "Date,Kale,Carrots,Salad mix,Who\n2025-05-15,12,,8,Mia\n2025-05-22,9,20,,Jo\n";
        string farm = TestFolders.Make(("crops.csv", "crop,unit\nKale,bunch\nCarrots,lb\nSalad mix,lb\n"));

        Assert.Equal("harvests", Drafted.PlanText("week.csv", Bare, farm).Table);
        Assert.Equal("labor", Drafted.PlanText("week.csv", "Date,Weeding,Washing,Driving,Who\n2025-05-15,2,,1,Mia\n2025-05-22,3,2,,Jo\n",
            farm, "task=grow").Table);
    }

    /// <summary>Where the field's own notes say no unit, what a register sold by tells it.</summary>
    [Fact]
    public void Start_UnitsInARegistersItems_AreThoseOfTheCrops()
    {
        var first = FirstTables.From([
            Drafted.Source("beds.csv", "Crop,Bed,Feet,In,Out\nKale,A,90,4/20/2025,10/25/2025\nCarrots,B,90,4/20/2025,10/25/2025\n"),
            Drafted.Source("register.csv", "Date,Item,Qty,Net Sales\n6/27/2025,Kale bunch,2,$6.00\n6/27/2025,Carrots lb,2,$6.00\n"),
        ]);

        Assert.Equal("crop,unit,storage_days\nCarrots,lb,\nKale,bunch,\n", first.Files["crops"]);
    }

    /// <summary>What a size holds of the crop's own unit is exact; what else it is sold by is asked for.</summary>
    [Fact]
    public void Start_UnitsACropIsSoldBy_StandInUnits()
    {
        var first = FirstTables.From([
            Drafted.Source("picks-2025.csv", Sheet),
            Drafted.Source("register.csv", "Date,Item,Qty,Net Sales\n6/27/2025,Salad mix 1/2 lb,2,$6.00\n6/27/2025,Salad mix 5oz,2,$6.00\n"
                + "6/27/2025,Carrots bunch,2,$6.00\n6/27/2025,Kale bunch,2,$6.00\n"),
        ]);

        Assert.Equal("crop,unit,base_units\nSalad mix,1/2 lb,0.5\nSalad mix,5oz,0.3125\n", first.Files["units"]);
        Assert.Equal(["units.csv: Carrots: how many lb is 1 bunch?"],
            first.Remarks.Where(remark => remark.StartsWith("units.csv", StringComparison.Ordinal)));
    }
}
