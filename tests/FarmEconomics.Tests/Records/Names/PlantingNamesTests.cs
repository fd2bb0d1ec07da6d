using FarmEconomics.Files;
using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.Tests.Records.Names;

public class PlantingNamesTests
{
    [Fact]
    public void Read_PlantingsWithoutNames_AreNamedByCropYearAndNumberInOrderOfTheirDays()
    {
        string folder = TestFolders.MakeBad("sound");
        File.WriteAllText(Path.Combine(folder, "plantings.csv"),
            "planting,crop,bed,bed_feet,in_bed,out_of_bed\nL1,lettuce,A1,10,2025-04-01,2025-06-01\n,lettuce,A1,10,2025-06-01,2025-07-01\n,Lettuce,A1,10,2025-05-01,2025-07-01\nK1,kale,A1,50,2025-04-01,2025-10-01\n\"lettuce 2026, sowing 1\",lettuce,A1,10,2026-06-01,2026-07-01\n,lettuce,A1,10,2026-05-01,2026-07-01\n");

        FarmFolder farm = FarmFolder.Open(folder);

        Assert.Equal(0, farm.ErrorCount);
        Assert.Equal(["L1", "lettuce 2025, sowing 2", "Lettuce 2025, sowing 1", "K1", "lettuce 2026, sowing 1", "lettuce 2026, sowing 2"], farm.Reading.Tables.Plantings.Select(row => row.Planting));
    }

    [Fact]
    public void Read_NoColumnOfNamesAtAll_IsEnough()
    {
        string folder = TestFolders.MakeBad("sound");
        File.WriteAllText(Path.Combine(folder, "plantings.csv"), "crop,bed,bed_feet,in_bed\nlettuce,A1,10,2025-04-01\nkale,A1,50,2025-04-01\n");
        File.WriteAllText(Path.Combine(folder, "harvests.csv"), "date,crop,quantity\n2025-05-10,lettuce,40\n2025-06-10,kale,30\n");

        Assert.NotNull(FarmFolder.Open(folder).Review);
    }
}
