using Xunit;

namespace FarmEconomics.Tests;

/// <summary>Hands the mutated library over to <c>judge</c>: the only test while the tester makes it.</summary>
public class Handover
{
    [Fact]
    public void Library_IsThere()
    {
        string mutated = Path.Combine(AppContext.BaseDirectory, "FarmEconomics.dll");
        Assert.True(File.Exists(mutated));
        if (Environment.GetEnvironmentVariable("HANDOVER") is { Length: > 0 } place && !File.Exists(place))
        {
            File.Copy(mutated, place);
        }
    }
}
