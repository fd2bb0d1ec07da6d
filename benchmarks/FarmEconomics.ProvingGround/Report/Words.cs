using FarmEconomics.ProvingGround.Advice;
using FarmEconomics.ProvingGround.Trials;

namespace FarmEconomics.ProvingGround.Report;

/// <summary>How the page says things.</summary>
internal static class Words
{
    internal static string Of(Policy policy) => policy switch
    {
        Policy.RuleOfThumb => "rule of thumb",
        Policy.Verdicts => "the program's verdicts",
        Policy.PlainProgram => "plain linear program on the records",
        Policy.BestMix => "the program's best mix",
        Policy.RobustMix => "the program's steady plan",
        Policy.BestSizes => "sizes of today's sowings, knowing the truth",
        _ => "best, knowing the truth",
    };

    internal static string Of(Move move) => move switch
    {
        Move.Drop => "drop",
        Move.Another => "other crops instead",
        Move.Grow => "grow where there is room",
        _ => "grow in the beds of others",
    };

    internal static string Percent(double part) => Number(part * 100.0) + "%";

    internal static string Money(double amount) => (Math.Round(amount) < 0 ? "−$" : "$") + Math.Abs(Math.Round(amount)).ToString("N0");

    internal static string Number(double value) => (Math.Round(value) < 0 ? "−" : "") + Math.Abs(Math.Round(value)).ToString("N0");
}
