using FarmEconomics.Files;
using FarmEconomics.Files.Importing;
using Xunit;

namespace FarmEconomics.Tests.Files.Importing;

/// <summary>A garden's harvests of a year, kept long and wide (Garden/README.md has the source): both come in whole, with nothing typed again.</summary>
public class GardenTests
{
    private const decimal Grams = 432_255m;
    private static readonly string Place = Path.Combine(TestFolders.Repository, "tests", "FarmEconomics.Tests", "Files", "Importing", "Garden");

    [Fact]
    public void Long_EachOfTheHarvests_ComesIn()
    {
        ImportPlan plan = Drafted.Plan(Path.Combine(Place, "harvests-long.csv"), null);

        Assert.Equal(("harvests", 781, 781), (plan.Table, plan.RowsInSource, plan.Rows.Count));
        Assert.Empty(plan.HeldBack);
        Assert.Equal(Grams, plan.Rows.Sum(row => decimal.Parse(row.Fields[2])));
    }

    [Fact]
    public void Wide_SameTotalsByCropAndDay_AndTheSheetsOwnTotalsAgree()
    {
        ImportPlan lines = Drafted.Plan(Path.Combine(Place, "harvests-long.csv"), null);
        ImportPlan wide = Drafted.Plan(Path.Combine(Place, "harvests-wide.csv"), null);

        Assert.Empty(wide.HeldBack);
        Assert.Equal(Sums(lines), Sums(wide));
        Assert.Equal(33, wide.Sums.Count);
        Assert.All(wide.Sums, sum => Assert.True(sum.Agrees, sum.What));
        Assert.Contains(wide.Sums, sum => sum.InSource == Grams);
    }

    [Fact]
    public void Wide_ACellChanged_DoesNotAddUp()
    {
        string[] rows = File.ReadAllLines(Path.Combine(Place, "harvests-wide.csv"));
        rows[1] = rows[1].Replace(",20,", ",200,", StringComparison.Ordinal);

        ImportPlan plan = Drafted.PlanText("harvests.csv", string.Join('\n', rows), null);

        Assert.Equal(["Lettuce (g), total in line 116", "Total of line 2", "Total, all rows", "Total, total in line 116"], plan.Sums.Where(sum => !sum.Agrees).Select(sum => sum.What).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Wide_IntoAFarmWithOneCropMissing_AddsTheRestOnceAndHoldsThatBack()
    {
        string folder = Farm("Lettuce", "Tomatoes", "Zucchini");

        ImportPlan first = Drafted.Plan(Path.Combine(Place, "harvests-wide.csv"), folder);
        int added = first.Rows.Count;
        first.Apply();
        ImportPlan again = Drafted.Plan(Path.Combine(Place, "harvests-wide.csv"), folder);

        Assert.Equal(first.RowsInSource, added + first.UnknownNames.Sum(name => name.Rows));
        Assert.Contains(first.UnknownNames, name => name is { Table: "crops", Alias: "Beans" });
        Assert.Equal(added, FarmFolder.Open(folder).Reading.Tables.Harvests.Count - 2);
        Assert.Empty(again.Rows);
        Assert.Equal(added, again.AlreadyThere.Count);
    }

    private static string Farm(params string[] crops)
    {
        string folder = TestFolders.MakeBad("sound");
        File.AppendAllLines(Path.Combine(folder, "crops.csv"), crops.Where(crop => crop != "Lettuce").Select(crop => $"{crop},g"));
        File.WriteAllText(Path.Combine(folder, "units.csv"), "crop,unit,base_units\nlettuce,g,0.004\n");
        File.AppendAllLines(Path.Combine(folder, "plantings.csv"), crops.Select(crop => $"{crop} 2020,{crop},A1,1,2020-04-01,2020-12-01,"));
        File.WriteAllText(Path.Combine(folder, "beds.csv"), "bed,length_ft\nA1,100\n");
        return folder;
    }

    private static List<string> Sums(ImportPlan plan) =>
    [
        .. plan.Rows.GroupBy(row => $"{row.Fields[0]} {row.Fields[1].ToLowerInvariant().Replace("jalapeño", "hot", StringComparison.Ordinal)}")
            .Select(group => $"{group.Key} {group.Sum(row => decimal.Parse(row.Fields[2]))}").Order(StringComparer.Ordinal),
    ];
}
