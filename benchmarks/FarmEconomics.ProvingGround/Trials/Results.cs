namespace FarmEconomics.ProvingGround.Trials;

/// <summary>The policies that are tried; "nothing" is what each is measured against.</summary>
internal enum Policy
{
    RuleOfThumb,
    Verdicts,
    PlainProgram,
    BestMix,
    RobustMix,
    BestSizes,
    Best,
}

/// <summary>What a policy did in a world, against nothing changed.</summary>
/// <param name="Seed">The world.</param>
/// <param name="Policy">The policy.</param>
/// <param name="Gain">Mean gain a season, own hours at the owner's wage, $.</param>
/// <param name="Cash">Mean gain in cash, $.</param>
/// <param name="OwnHours">Own hours more, a season.</param>
/// <param name="WorstFifth">Mean of the worst fifth of seasons less the mean of nothing's worst fifth, $.</param>
internal sealed record PolicyResult(int Seed, Policy Policy, double Gain, double Cash, double OwnHours, double WorstFifth);

/// <summary>A verdict on a crop beside what is true.</summary>
/// <param name="Seed">The world.</param>
/// <param name="Crop">The crop.</param>
/// <param name="Move">What the program said.</param>
/// <param name="Said">What the program says it gains, $ a season; what it says dropping gains where nothing was advised; null where it says it with another crop.</param>
/// <param name="Gain">What doing it, and nothing else, gains a season, $; 0 where nothing was said.</param>
internal sealed record VerdictResult(int Seed, string Crop, string Move, double? Said, double Gain)
{
    /// <summary>The gain of <see cref="Gain"/> in cash, $.</summary>
    internal required double Cash { get; init; }

    /// <summary>What the program says about <see cref="Cash"/>, $; null where it says nothing.</summary>
    internal double? SaidCash { get; init; }

    /// <summary>True when it lowers cash and the program doesn't say so.</summary>
    internal bool LowersCashUnsaid => Cash < 0.0 && SaidCash is not < 0.0;

    /// <summary>What dropping the crop alone truly gains, advised or not, $.</summary>
    internal required double DropGain { get; init; }

    /// <summary>What a fifth more of it alone truly gains, within the room, advised or not, $.</summary>
    internal required double GrowGain { get; init; }
}

/// <summary>A world as it was tried.</summary>
/// <param name="Seed">Its seed.</param>
/// <param name="Crops">How many crops it grows.</param>
/// <param name="Skill">How good the grower is already, 0 to 1.</param>
/// <param name="Logged">Part of labor rows that name a crop, 0 to 1.</param>
/// <param name="Nothing">Value and cash of a mean season with nothing changed, $.</param>
internal sealed record WorldResult(int Seed, int Crops, double Skill, double Logged, (double Value, double Cash) Nothing)
{
    internal required IReadOnlyList<PolicyResult> Policies { get; init; }

    internal required IReadOnlyList<VerdictResult> Verdicts { get; init; }

    /// <summary>What there is to gain: the most any policy gains, knowing the truth or not.</summary>
    internal double Attainable => Policies.Max(policy => policy.Gain);
}
