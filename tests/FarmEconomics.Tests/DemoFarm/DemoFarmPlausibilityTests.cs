using Xunit;

namespace FarmEconomics.Tests.DemoFarm;

/// <summary>
/// Is the invented farm believable? Its records are held against bands whose sources stand beside them in
/// Published/demo-farm-plausibility.csv: SEEN is printed in the source, DERIVED is arithmetic on printed figures,
/// FROM MEMORY and "common practice, no source" are what they say.
/// </summary>
public sealed class DemoFarmPlausibilityTests
{
    public static TheoryData<string, decimal, decimal, string, string> Bands()
    {
        var data = new TheoryData<string, decimal, decimal, string, string>();
        foreach (var row in PlainCsv.Rows(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Published", "demo-farm-plausibility.csv"))))
        {
            data.Add(row["item"], row.Number("low"), row.Number("high"), row["unit"], $"{row["status"]}: {row["source"]}");
        }

        return data;
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
