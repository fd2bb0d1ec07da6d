using FarmEconomics.Files.Importing;
using FarmEconomics.Files.Importing.Drafts;
using Xunit;

namespace FarmEconomics.Tests.Files.Importing;

/// <summary>Time sheets with one total a week: a period of seven days, no day of forty hours. The sheets are made up.</summary>
public class WeekTests
{
    [Fact]
    public void WorkersAcross_AWeekARow_GivesPeriodsThatAddUp()
    {
        ImportPlan plan = Drafted.PlanText(
            "crew.csv",
            "Crew hours 2025\nWeek of,June,Sam,Total\n6/16/2025,41.5,38,79.5\n6/23/2025,44,36.25,80.25\nTotal,85.5,74.25,159.75\n",
            null,
            "task=harvest"
        );

        Assert.Equal("labor", plan.Table);
        Assert.Equal(
            [
                "2025-06-16 June 41.5 harvest 2025-06-22",
                "2025-06-16 Sam 38 harvest 2025-06-22",
                "2025-06-23 June 44 harvest 2025-06-29",
                "2025-06-23 Sam 36.25 harvest 2025-06-29",
            ],
            Drafted.Rows(plan)
        );
        Assert.Equal([true, true, true, true], plan.Sums.Select(sum => sum.Agrees));
    }

    [Fact]
    public void WeekEnding_GoesSixDaysBack() =>
        Assert.Equal(
            ["2025-06-09 June 41.5 harvest 2025-06-15"],
            Drafted.Rows(Drafted.PlanText("sheet.csv", "Week ending,Employee,Hours,Job\n6/15/2025,June,41.5,harvest\n", null))
        );

    [Fact]
    public void PeriodStartAndEnd_TellEachOthersForm() =>
        Assert.Equal(
            ["2025-06-01 June 81.5 harvest 2025-06-14"],
            Drafted.Rows(
                Drafted.PlanText(
                    "sheet.csv",
                    "Pay period start,Pay period end,Employee,Hours,Job\n6/1/2025,6/14/2025,June,81.5,harvest\n",
                    null
                )
            )
        );

    [Fact]
    public void WeekDaysAcross_StandOnTheirDays() =>
        Assert.Equal(
            ["2025-06-16 June 8 grow", "2025-06-18 June 7.5 grow", "2025-06-21 June 4 grow"],
            Drafted.Rows(
                Drafted.PlanText(
                    "week.csv",
                    "Week of,Employee,Mon,Tues.,Wednesday,Thu,Fri,Sat,Total\n6/16/2025,June,8,,7.5,,,4,19.5\n",
                    null,
                    "task=grow"
                )
            )
        );

    [Fact]
    public void MoreHoursThanADayHas_IsAskedNotGuessed()
    {
        string source = Path.Combine(
            TestFolders.Make(("sheet.csv", "Date,Employee,Hours,Job\n6/15/2025,June,41.5,harvest\n")),
            "sheet.csv"
        );

        DraftQuestion asked = Assert.Single(ImportDraft.Of(new ImportRequest(source)).Questions);

        Assert.Equal("through", asked.Column);
        Assert.True(asked.IsOpen);
        Assert.Equal(
            ["they are those of a week that begins on 6/15/2025", "they were all worked on 6/15/2025"],
            asked.Readings.Select(reading => reading.Value)
        );
        Assert.Equal(["2025-06-15 June 41.5 harvest 2025-06-21"], Drafted.Rows(Drafted.Plan(source, null, "through=M/D/YYYY;plus-days:6")));
    }

    [Fact]
    public void Period_OfAWeek_IsNoLongDayAndItsEndIsChecked()
    {
        string folder = TestFolders.MakeBad("sound");
        File.WriteAllText(Path.Combine(folder, "workers.csv"), "worker,kind,wage\nAda,hired,15\n");
        File.WriteAllText(Path.Combine(folder, "labor.csv"), "date,worker,hours,task,through\n2025-06-02,Ada,60,harvest,2025-06-08\n2025-06-09,Ada,60,harvest,\n2025-06-20,Ada,6,harvest,2025-06-19\n2025-07-01,Ada,120,harvest,2025-07-07\n");

        IEnumerable<string> found = FarmEconomics
            .Files.FarmFolder.Open(folder)
            .Problems.Where(problem => problem.Source.File == "labor.csv")
            .Select(problem => $"{problem.Source.Line} {problem.Column}");

        Assert.Equal(["3 hours", "4 through", "5 hours"], found);
    }

    [Fact]
    public void TableBesideATable_IsReadAsWell() =>
        Assert.Equal(["2025-06-14 kale 5 lb", "2025-06-15 kale 6 lb", "2025-07-14 kale 7 lb"], Drafted.Rows(Drafted.PlanText("picked.csv", "June,,,,,July\nDate,Crop,Quantity,Unit,,Date,Crop,Quantity,Unit\n6/14/2025,kale,5,lb,,7/14/2025,kale,7,lb\n6/15/2025,kale,6,lb,,,,,\n", null)));

    [Fact]
    public void WideTableAgainWithOtherCrops_IsReadAsWell() =>
        Assert.Equal(
            [
                "2025-06-14 kale 5",
                "2025-06-14 peas 6",
                "2025-06-14 beets 7",
                "2025-07-14 beans 1",
                "2025-07-14 corn 2",
                "2025-07-14 kale 3",
            ],
            Drafted.Rows(
                Drafted.PlanText("picked.csv", "Date,kale,peas,beets\n6/14/2025,5,6,7\n\nDate,beans,corn,kale\n7/14/2025,1,2,3\n", null)
            )
        );

    [Fact]
    public void ItemThatNamesItsUnit_IsCountedInIt() =>
        Assert.Equal(
            [
                "2025-06-14 Salad mix bag market 5 bag 20.00",
                "2025-06-14 Kale (bunch) market 2 bunch 6.00",
                "2025-06-14 Garlic market 1  2.00",
            ],
            Drafted.Rows(
                Drafted.PlanText(
                    "till.csv",
                    "Date,Item,Qty,Net Sales\n6/14/2025,Salad mix bag,5,$20.00\n6/14/2025,Kale (bunch),2,$6.00\n6/14/2025,Garlic,1,$2.00\n",
                    null,
                    "channel=market"
                )
            )
        );

    [Fact]
    public void ListOfPlantings_WithOutAsADay_IsNoListOfBills() =>
        Assert.Equal(
            ["lettuce North 200 2025-04-10 2025-07-01"],
            Drafted.Rows(
                Drafted.PlanText("beds.txt", "Crop\tField\tFeet\tIn bed\tOut\nlettuce\tNorth\t200\t2025-04-10\t2025-07-01\n", null)
            )
        );

    [Fact]
    public void WideTableWithCommas_AddsUpAgainstItsOwnSums()
    {
        ImportPlan plan = Drafted.PlanText("picked.csv", "Date;Lettuce (head);Radish (bunch);Spinach (lb);Sum\n07.06.2025;70;20;12,5;102,5\n14.06.2025;40;25;10;75\nSum;110;45;22,5;177,5\n", null);

        Assert.Equal(6, plan.Rows.Count);
        Assert.Equal(5, plan.Sums.Count);
        Assert.DoesNotContain(plan.Sums, sum => !sum.Agrees);
    }
}
