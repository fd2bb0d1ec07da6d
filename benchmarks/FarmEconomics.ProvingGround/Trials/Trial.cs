using FarmEconomics.Budgets;
using FarmEconomics.Files;
using FarmEconomics.ProvingGround.Advice;
using FarmEconomics.ProvingGround.Folders;
using FarmEconomics.ProvingGround.Plans;
using FarmEconomics.ProvingGround.Play;
using FarmEconomics.ProvingGround.World;

namespace FarmEconomics.ProvingGround.Trials;

/// <summary>Tries one world: writes its records, has them reviewed, and plays the same next seasons under each policy.</summary>
internal sealed class Trial
{
    private const double GrowStep = 0.2;
    private readonly Farm farm;
    private readonly double[][] best;
    private readonly SeasonDraw[] draws;
    private readonly SeasonPlay play;
    private readonly Outcome[] nothing;

    private Trial(int seed, int seasons)
    {
        (farm, best) = WorldMaker.Make(seed);
        draws = [.. Enumerable.Range(0, seasons).Select(i => new SeasonDraw(farm, $"trial {i}"))];
        play = new SeasonPlay(farm);
        nothing = Play(farm.Today);
    }

    /// <summary>Tries a world.</summary>
    /// <param name="seed">The world's seed.</param>
    /// <param name="seasons">How many next seasons are played.</param>
    /// <param name="singles">True: every verdict is followed alone as well, which takes most of the time.</param>
    internal static WorldResult Of(int seed, int seasons, bool singles = true)
    {
        Trial trial = new(seed, seasons);
        string folder = Directory.CreateTempSubdirectory("proving-").FullName;
        try
        {
            RecordsWriter.Write(trial.farm, folder);
            return trial.Run(FarmFolder.Open(folder), singles);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private WorldResult Run(FarmFolder records, bool singles)
    {
        if (records.Review is not { } review)
        {
            throw new InvalidOperationException($"World {farm.Seed} wrote records the program refuses: {records.Problems[0].Message}");
        }

        SeasonReview season = review.Season(review.LatestCropYear);
        if (season.Reconciliation.FirstOrDefault(check => !check.Holds) is { } broken)
        {
            throw new InvalidOperationException($"World {farm.Seed}: the review's totals don't agree: {broken}");
        }

        (double[][] bestMix, double[][] robustMix) = Policies.ProgramsPlans(farm, review);
        IReadOnlyList<Advised> advice = VerdictReading.Of(review);
        return new WorldResult(farm.Seed, farm.Crops.Length, farm.Traits.Skill, farm.Traits.Logged,
            (nothing.Average(one => one.Value), nothing.Average(one => one.Cash)))
        {
            Policies =
            [
                Against(Policy.RuleOfThumb, Policies.RuleOfThumb(farm, season)),
                Against(Policy.Verdicts, Policies.Follow(farm, advice)),
                Against(Policy.PlainProgram, Policies.PlainProgram(farm, records)),
                Against(Policy.BestMix, bestMix),
                Against(Policy.RobustMix, robustMix),
                Against(Policy.BestSizes, BestKnown.Plan(farm, sizesOnly: true)),
                Against(Policy.Best, best),
            ],
            Verdicts = !singles ? [] : [.. advice.OrderBy(one => one.Crop, StringComparer.Ordinal).Select(Single)],
        };
    }

    private Outcome[] Play(double[][] plan) => [.. draws.Select(draw => play.Play(plan, draw))];

    private PolicyResult Against(Policy policy, double[][] plan)
    {
        Outcome[] played = Play(plan);
        return new PolicyResult(
            farm.Seed, policy, Mean(played, one => one.Value), Mean(played, one => one.Cash), Mean(played, one => one.OwnHours),
            WorstFifth(played) - WorstFifth(nothing));
    }

    private double Mean(Outcome[] played, Func<Outcome, double> of) => played.Average(of) - nothing.Average(of);

    private static double WorstFifth(Outcome[] played) =>
        played.Select(one => one.Value).Order().Take(Math.Max(1, played.Length / 5)).Average();

    private VerdictResult Single(Advised advised)
    {
        Outcome[] followed = advised.Move == Move.None ? nothing : Play(Policies.FollowAlone(farm, advised));
        Outcome[] dropped = Play(Policies.Follow(farm, [new Advised(advised.Crop, Move.Drop)]));
        double feet = GrowStep * farm.Today[Array.FindIndex(farm.Crops, crop => crop.Name == advised.Crop)].Sum();
        Outcome[] grown = Play(Policies.Follow(farm, [new Advised(advised.Crop, Move.Grow) { Grown = [(advised.Crop, feet)] }]));
        return new VerdictResult(farm.Seed, advised.Crop, advised.Move.ToString(), advised.Said, Mean(followed, one => one.Value))
        {
            SaidCash = advised.SaidCash,
            Cash = Mean(followed, one => one.Cash),
            DropGain = Mean(dropped, one => one.Value),
            GrowGain = Mean(grown, one => one.Value),
        };
    }
}
