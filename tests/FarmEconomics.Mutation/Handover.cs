using System.Reflection;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests;

/// <summary>Hands the mutated library over to <c>judge</c>: the only test while the tester makes it.</summary>
public class Handover
{
    [Fact]
    public void Library_OnceItIsMutated_IsHandedOver()
    {
        Assembly library = typeof(Money).Assembly;
        string place = Environment.GetEnvironmentVariable("HANDOVER") ?? "";

        // The tester runs it once before it changes anything.
        if (place.Length > 0 && !File.Exists(place) && library.GetTypes().Any(type => type.Name == "MutantControl"))
        {
            File.Copy(library.Location, place);
        }
    }
}
