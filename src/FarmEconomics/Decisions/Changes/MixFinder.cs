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

    private readonly BedTime beds;
    private readonly List<List<BedTime.Gap>> gaps;
    private readonly List<(EnterpriseBudget Crop, CropGrowth Growth)> crops;
    private readonly IReadOnlyDictionary<string, decimal> already;
    private readonly Dictionary<(int Gap, EnterpriseBudget Crop), decimal> feet = [];

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
        this.beds = beds;
        this.already = already ?? new Dictionary<string, decimal>();
        this.gaps =
        [
            .. gaps.GroupBy(gap => (gap.Bed, gap.From, gap.To))
                .Select(group => group.ToList())
                .OrderByDescending(group => group[0].BedFeet),
        ];
        this.crops =
        [
            .. crops
                .Where(crop => !crop.Crop.Crop!.Perennial)
                .Select(crop => (crop, Mix: Fill([crop])))
                .Where(alone => alone.Mix.Change.Amount > 0m)
                .OrderByDescending(alone => alone.Mix.Change.Amount)
                .ThenBy(alone => alone.crop.Crop.Name, StringComparer.Ordinal)
                .Take(Tried)
                .Select(alone => alone.crop),
        ];
        Best = Combinations().Select(Fill).OrderByDescending(mix => mix.Change.Amount).ThenBy(mix => mix.Crops.Count).FirstOrDefault();
    }

    /// <summary>The mix with what it adds, without what the crop before it brought; null when nothing that fits adds anything.</summary>
    internal Mix? Best { get; }

    private IEnumerable<List<(EnterpriseBudget, CropGrowth)>> Combinations()
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

    private Mix Fill(List<(EnterpriseBudget Crop, CropGrowth Growth)> mix)
    {
        decimal[] before = [.. mix.Select(one => already.GetValueOrDefault(one.Crop.Name))];
        decimal[] has = [.. before];
        decimal[] start = [.. mix.Select((one, i) => has[i] > 0m ? one.Growth.Gain(has[i], todaysPriceOnly: true) : 0m)];
        decimal[] gains = [.. start];
        for (int gap = 0; gap < gaps.Count; gap++)
        {
            int best = -1;
            decimal most = 0m, bestGain = 0m;
            for (int i = 0; i < mix.Count; i++)
            {
                decimal more = FeetIn(gap, mix[i].Crop);
                decimal gain = more > 0m ? mix[i].Growth.Gain(has[i] + more, todaysPriceOnly: true) : 0m;
                if (more > 0m && gain - gains[i] > most)
                {
                    (best, most, bestGain) = (i, gain - gains[i], gain);
                }
            }

            if (best >= 0)
            {
                has[best] += FeetIn(gap, mix[best].Crop);
                gains[best] = bestGain;
            }
        }

        return new Mix(
            [
                .. mix.Select((one, i) => (one.Crop.Name, has[i] - before[i]))
                    .Where(one => one.Item2 > 0m)
                    .OrderByDescending(one => one.Item2),
            ],
            new Money(gains.Sum() - start.Sum())
        );
    }

    private decimal FeetIn(int gap, EnterpriseBudget crop)
    {
        if (!feet.TryGetValue((gap, crop), out decimal fits))
        {
            feet[(gap, crop)] = fits = beds.FittingFeet(gaps[gap], crop);
        }

        return fits;
    }
}
