using System.Runtime.CompilerServices;

namespace FarmEconomics.Tests.Support;

/// <summary>
/// Tests told apart because they take long: they run where FARMECONOMICS_SLOW=1 asks for them, as CI does, and are skipped elsewhere.
/// </summary>
internal static class SlowTests
{
    public const string Why = "Takes long; runs with FARMECONOMICS_SLOW=1.";

    public static bool Asked { get; } = Environment.GetEnvironmentVariable("FARMECONOMICS_SLOW") == "1";
}

/// <summary>A test that takes long.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class SlowFactAttribute : Xunit.FactAttribute
{
    public SlowFactAttribute([CallerFilePath] string? file = null, [CallerLineNumber] int line = -1)
        : base(file, line) => (Skip, SkipUnless, SkipType) = (SlowTests.Why, nameof(SlowTests.Asked), typeof(SlowTests));
}

/// <summary>Cases of a test that takes long.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class SlowTheoryAttribute : Xunit.TheoryAttribute
{
    public SlowTheoryAttribute([CallerFilePath] string? file = null, [CallerLineNumber] int line = -1)
        : base(file, line) => (Skip, SkipUnless, SkipType) = (SlowTests.Why, nameof(SlowTests.Asked), typeof(SlowTests));
}
