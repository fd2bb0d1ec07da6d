using System.Text.RegularExpressions;

namespace FarmEconomics.EndToEnd.Tests.Support;

/// <summary>
/// Finds the lines of a stack trace, "at Namespace.Class.Method(...)", in what a program said; words that begin a wrapped line with "at" are
/// none.
/// </summary>
internal static partial class StackTraces
{
    public static bool StandIn(string said) => Frame().IsMatch(said);

    public static void AssertNone(string said) => Assert.DoesNotMatch(Frame(), said);

    [GeneratedRegex(@"^\s+at [^\s(]+\.[^\s(]+\(", RegexOptions.Multiline)]
    private static partial Regex Frame();
}
