using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Faults;

public sealed class StackTracesTests
{
    [Fact]
    public void StandIn_ThrownException_IsFound()
    {
        Exception thrown = Assert.Throws<FormatException>(() => int.Parse("two", System.Globalization.CultureInfo.InvariantCulture));

        Assert.True(StackTraces.StandIn(thrown.ToString()), thrown.ToString());
    }

    [Fact]
    public void StandIn_WrappedTextThatBeginsWithAt_IsNot() =>
        Assert.False(StackTraces.StandIn("  the crops kept for seed are counted\n       at their value. What w (see methods)\n"));
}
