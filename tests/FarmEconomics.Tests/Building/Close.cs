using Xunit;

namespace FarmEconomics.Tests.Building;

/// <summary>Equality within a tolerance, for figures that sources round or that are not rounded in between.</summary>
internal static class Close
{
    internal static void To(decimal expected, decimal actual, decimal tolerance) =>
        Assert.True(Math.Abs(expected - actual) <= tolerance, $"expected {expected} within {tolerance}, got {actual}");
}
