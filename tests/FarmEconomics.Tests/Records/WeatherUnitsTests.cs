using System.Globalization;
using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.Tests.Records;

/// <summary>Weather written in the other system's unit is told before anything rests on it; weather as it is, is not.</summary>
public class WeatherUnitsTests
{
    /// <summary>Forty days from June 1, each with the same figures; dry on every second day.</summary>
    private static string[] Messages(string unit, string columns, string figures, string rain)
    {
        string Row(int day) => string.Create(CultureInfo.InvariantCulture,
            $"{new DateOnly(2025, 6, 1).AddDays(day):yyyy-MM-dd},{(day % 2 == 0 ? rain : "")},{figures}\n");
        bool metric = unit == "m";
        return
        [
            .. FarmEconomics.Files.FarmFolder.Open(TestFolders.Make(
                ("farm.csv", $"setting,value\nlength_unit,{unit}\n"),
                ("crops.csv", "crop,unit\nKale,kg\n"),
                ("beds.csv", metric ? "bed,length_m\nA,10\n" : "bed,length_ft\nA,10\n"),
                ("plantings.csv", $"planting,crop,bed,{(metric ? "bed_meters" : "bed_feet")},in_bed\nK,Kale,A,10,2025-05-01\n"),
                ("harvests.csv", "date,planting,quantity\n2025-07-01,K,5\n"),
                ("sales.csv", "date,crop,channel,quantity,amount\n2025-07-01,Kale,Stall,5,10\n"),
                ("weather.csv", $"date,{columns}\n{string.Concat(Enumerable.Range(0, 40).Select(Row))}")))
                .Problems.Where(problem => problem.Code == "W205").Select(problem => problem.Message),
        ];
    }

    [Theory]
    [InlineData("ft", "rain_in,tmin_f,tmax_f", "14,28", "0.3",
        "tmax_f is in degrees F, and 28 can't be right: the column reads like degrees C.")]
    [InlineData("ft", "rain_in,tmin_f,tmax_f", "57,82", "8",
        "rain_in is in inches, and 8 can't be right: the column reads like millimeters.")]
    [InlineData("ft", "rain_in,et0_in", "5.2", "0.3", "et0_in is in inches, and 5.2 can't be right: the column reads like millimeters.")]
    [InlineData("m", "rain_mm,tmin_c,tmax_c", "57,82", "8",
        "tmax_c is in degrees C, and 82 can't be right: the column reads like degrees F.")]
    [InlineData("m", "rain_mm,et0_mm", "31", "8", "et0_mm is in mm, and 31 can't be right.")]
    public void Column_InAnotherUnit_IsToldOnce(string unit, string columns, string figures, string rain, string said) =>
        Assert.Equal([said], Messages(unit, columns, figures, rain));

    [Theory]
    [InlineData("ft", "rain_in,tmin_f,tmax_f", "57,82", "2.8")]
    [InlineData("ft", "rain_in,et0_in", "0.4", "0.3")]
    [InlineData("m", "rain_mm,tmin_c,tmax_c", "30,48", "70")]
    [InlineData("m", "rain_mm,et0_mm", "14", "8")]
    public void Column_InItsOwnUnit_IsNotTold(string unit, string columns, string figures, string rain) =>
        Assert.Empty(Messages(unit, columns, figures, rain));
}
