using Xunit;

namespace FarmEconomics.Tests.DemoFarm;

/// <summary>
/// Is the invented farm believable? Its records are held against bands whose sources stand beside them in
/// Published/demo-farm-plausibility.csv. The column evidence says what a band rests on: published (printed in the source), derived from
/// published figures, from memory, or common practice without a source.
/// </summary>
public sealed class DemoFarmPlausibilityTests
{
    public static TheoryData<string, decimal, decimal, string, string> Bands()
    {
        var data = new TheoryData<string, decimal, decimal, string, string>();
        foreach (var row in PlainCsv.Rows(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Published", "demo-farm-plausibility.csv"))))
        {
            data.Add(row["item"], row.Number("low"), row.Number("high"), row["unit"], $"{row["evidence"]}: {row["source"]}");
        }

        return data;
    }

    /// <summary>The bands of the panels, again from the daily radiation: 3.6 MJ are a kilowatt-hour.</summary>
    [Fact]
    public void SunBands_FollowFromTheDailyRadiation()
    {
        var days = PlainCsv.Rows(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Published", "greeley-radiation-2022.csv")));
        var bands = Bands().Select(row => row.Data).Where(row => row.Item1.StartsWith("sun: month ", StringComparison.Ordinal)).ToList();

        Assert.Equal(333, days.Count);
        Assert.Equal(8, bands.Count);
        Assert.All(bands, band =>
        {
            var month = int.Parse(band.Item1["sun: month ".Length..]);
            var sum = days.Where(day => day.Date("date")!.Value.Month == month).Sum(day => day.Number("radiation_mj_per_m2"));
            Assert.Equal(Math.Round(sum / 3.6m * 0.72m, 1, MidpointRounding.AwayFromZero), band.Item3);
        });
    }

    [Theory]
    [MemberData(nameof(Bands))]
    public void DemoFarm_AgainstPublishedFigures_LiesInTheBand(string item, decimal low, decimal high, string unit, string source)
    {
        var values = DemoFarmMeasures.Of(item).ToList();

        Assert.NotEmpty(values);
        Assert.All(values, value => Assert.True(value >= low && value <= high, $"{item}: {value:0.00} is outside {low} to {high} {unit} ({source})"));
    }
}
