using FarmEconomics.Budgets;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Changes;

/// <summary>
/// The best mix of up to three crops for the time that beds are free: each gap goes to the crop of the mix that adds most there, after what
/// it has already, so that none goes beyond what its channels took before at today's price. Tried among the crops that add most alone.
/// </summary>
internal sealed class MixFinder
{
    private const int Tried = 8;

    private readonly int gaps;
    private readonly List<Candidate> crops;

    /// <param name="beds">Who stands in which bed when.</param>
    /// <param name="gaps">The time beds are free.</param>
    /// <param name="crops">Crops to try.</param>
    /// <param name="already">Bed-feet of them that other changes have given to the market already.</param>
    internal MixFinder(
        BedTime beds,
        List<BedTime.Gap> gaps,
        List<(EnterpriseBudget Crop, CropGrowth Growth)> crops,
        IReadOnlyDictionary<string, decimal>? already = null
    )
    {
        this.gaps = gaps.Count;
        this.crops =
        [
            .. crops
                .Select(crop => new Candidate(
                    crop.Crop.Name,
                    crop.Growth,
                    already?.GetValueOrDefault(crop.Crop.Name) ?? 0m,
                    [.. gaps.OrderByDescending(gap => gap.BedFeet).Select(gap => beds.FittingFeet([gap], crop.Crop))]
                ))
                .Select(crop => (crop, Mix: Fill([crop])))
                .Where(alone => alone.Mix.Change.Amount > 0m)
                .OrderByDescending(alone => alone.Mix.Change.Amount)
                .ThenBy(alone => alone.crop.Name, StringComparer.Ordinal)
                .Take(Tried)
                .Select(alone => alone.crop),
        ];
        Best = Combinations().Select(Fill).OrderByDescending(mix => mix.Change.Amount).ThenBy(mix => mix.Crops.Count).FirstOrDefault();
    }

    /// <summary>The mix with what it adds, without what the crop before it brought; null when nothing that fits adds anything.</summary>
    internal Mix? Best { get; }

    private IEnumerable<List<Candidate>> Combinations()
    {
        for (int i = 0; i < crops.Count; i++)
        {
            yield return [crops[i]];
            for (int j = i + 1; j < crops.Count; j++)
            {
                yield return [crops[i], crops[j]];
                for (int k = j + 1; k < crops.Count; k++)
                {
                    yield return [crops[i], crops[j], crops[k]];
                }
            }
        }
    }

    private Mix Fill(List<Candidate> mix)
    {
        decimal[] has = [.. mix.Select(one => one.Before)];
        decimal[] start = [.. mix.Select(one => one.Growth.GainToday(one.Before))];
        decimal[] gains = [.. start];
        for (int gap = 0; gap < gaps; gap++)
        {
            int best = -1;
            decimal most = 0m, bestGain = 0m;
            for (int i = 0; i < mix.Count; i++)
            {
                decimal gain = mix[i].Growth.GainToday(has[i] + mix[i].Feet[gap]);
                if (gain - gains[i] > most)
                {
                    (best, most, bestGain) = (i, gain - gains[i], gain);
                }
            }

            if (best >= 0)
            {
                has[best] += mix[best].Feet[gap];
                gains[best] = bestGain;
            }
        }

        return new Mix(
            [
                .. mix.Select((one, i) => (one.Name, has[i] - one.Before))
                    .Where(one => one.Item2 > 0m)
                    .OrderByDescending(one => one.Item2),
            ],
            new Money(gains.Sum() - start.Sum())
        );
    }

    /// <summary>A crop to try.</summary>
    /// <param name="Name">The crop.</param>
    /// <param name="Growth">What more of it brings.</param>
    /// <param name="Before">Bed-feet more of it that are there already.</param>
    /// <param name="Feet">Bed-feet of it that fit into each gap.</param>
    private sealed record Candidate(string Name, CropGrowth Growth, decimal Before, decimal[] Feet);
}
