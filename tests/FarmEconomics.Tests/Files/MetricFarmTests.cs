using FarmEconomics.Files;
using FarmEconomics.Files.Results;
using Xunit;

namespace FarmEconomics.Tests.Files;

public class MetricFarmTests
{
    [Fact]
    public void Open_FarmInMeters_GivesItsFiguresPerMeterAndNothingIsConverted()
    {
        string folder = TestFolders.MakeBad("sound");
        string feet = Crops(FarmFolder.Open(folder));
        ToMeters(folder);

        string meters = Crops(FarmFolder.Open(folder));

        Assert.Equal(feet.Replace("bed_feet", "bed_meters", StringComparison.Ordinal).Replace("bed_foot", "bed_meter", StringComparison.Ordinal), meters);
    }

    [Fact]
    public void Read_FeetOnAFarmInMeters_IsAnError()
    {
        string folder = TestFolders.MakeBad("sound");
        File.WriteAllText(Path.Combine(folder, "farm.csv"), "setting,value\nlength_unit,m\n");

        Assert.Equal(["E103 beds.csv", "E103 plantings.csv"], FarmFolder.Open(folder).Problems.Where(problem => problem.Code[0] == 'E').Select(problem => $"{problem.Code} {problem.Source.File}"));
    }

    [Fact]
    public void Read_WidthsInCentimeters_CountAgainstTheStandardWidth()
    {
        string folder = TestFolders.MakeBad("sound");
        ToMeters(folder);
        File.WriteAllText(Path.Combine(folder, "farm.csv"), "setting,value\nstandard_bed_width_cm,80\nlength_unit,m\n");
        File.WriteAllText(Path.Combine(folder, "beds.csv"), "bed,length_m,width_cm\nA1,100,120\n");

        RecordsReading reading = RecordsFolder.Read(folder);

        Assert.Equal((80m, 120m, 100m), (reading.FarmSettings.StandardBedWidthIn, reading.Tables.Beds[0].WidthIn, reading.Tables.Beds[0].LengthFt));
    }

    private static void ToMeters(string folder)
    {
        File.WriteAllText(Path.Combine(folder, "farm.csv"), "setting,value\nlength_unit,m\n");
        Rename("beds.csv", "length_ft", "length_m");
        Rename("plantings.csv", "bed_feet", "Bed Meters");

        void Rename(string file, string from, string to)
        {
            string path = Path.Combine(folder, file);
            File.WriteAllText(path, File.ReadAllText(path).Replace(from, to, StringComparison.Ordinal));
        }
    }

    private static string Crops(FarmFolder farm)
    {
        string folder = TestFolders.Make();
        ResultTables.Write(farm.Review!.Season(2025), [], folder);
        return File.ReadAllText(Path.Combine(folder, "crops.csv"));
    }
}
