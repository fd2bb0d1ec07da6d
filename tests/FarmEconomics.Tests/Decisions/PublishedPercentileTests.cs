using System.Text.Json;
using FarmEconomics.Decisions.Chances;
using FarmEconomics.Tests.Published;
using Xunit;

namespace FarmEconomics.Tests.Decisions;

/// <summary>Which percentile is told: rules give different answers on the same five values, and ours is that of spreadsheets.</summary>
public class PublishedPercentileTests
{
    [Fact]
    public void Percentile_OfThePublishedValues_IsThatOfSpreadsheetsAndNotTheHandbooks()
    {
        JsonElement fixture = Fixture.Load("percentiles");
        Outcome outcome = new("x", [.. fixture.Numbers("values").Select(value => (long)value)], 1);

        decimal told = outcome.Percentile((double)fixture.Number("part")).Amount;

        Assert.Equal(fixture.Number("by_spreadsheets"), told);
        Assert.NotEqual(fixture.Number("by_the_handbook"), told);
    }
}
