namespace FarmEconomics.Water;

/// <summary>What there is to water with, over the days asked for: liters, or sprinklers times hours.</summary>
/// <param name="From">The first day of watering: today, or the day asked for.</param>
/// <param name="Days">Days it is to last for; each gets an equal part.</param>
/// <param name="Amount">How much there is in all, in liters or in sprinkler-hours; 0 or more.</param>
/// <param name="InSprinklerHours">True when it is counted in sprinkler-hours.</param>
public sealed record WaterAtHand(DateOnly From, int Days, double Amount, bool InSprinklerHours);

/// <summary>A block of the list to take to the field.</summary>
/// <param name="Block">The block.</param>
/// <param name="Amount">What it gets, in liters or sprinkler-hours.</param>
/// <param name="Sets">How many whole sets that is; null where it may be watered in part.</param>
/// <param name="Unwatered">Money lost in the days ahead if it gets nothing.</param>
/// <param name="Lost">Money lost with what it gets.</param>
/// <param name="Wanted">What it would take to lose nothing that water can save.</param>
public sealed record TriageLine(WaterBlock Block, double Amount, int? Sets, double Unwatered, double Lost, double Wanted)
{
    /// <summary>Money saved by what it gets.</summary>
    public double Saved => Unwatered - Lost;

    /// <summary>Money saved per unit of what it gets; 0 where it gets none.</summary>
    public double SavedPerUnit => Amount > 0 ? Saved / Amount : 0;
}

/// <summary>
/// Who gets the water when there isn't enough: the amounts by block that lose least over the days of watering and the six after. Blocks
/// that
/// may be watered in part by the drop of loss per unit, which is the optimum of the linear program; whole sets by trying every combination
/// up to a million, else by the same order, with the gap to the linear program told.
/// </summary>
public sealed class WaterTriage
{
    /// <summary>Days looked at after the last of watering: water put on today is drawn on for about a week.</summary>
    public const int DaysAfter = 6;

    private readonly List<BlockOutlook> outlooks;
    private readonly WaterAtHand hand;

    private WaterTriage(List<BlockOutlook> outlooks, WaterAtHand hand, IReadOnlyList<(SowingWater Sowing, string Why)> notRanked)
    {
        this.outlooks = outlooks;
        this.hand = hand;
        NotRanked = notRanked;
        WaterShares best = WaterShares.Of(outlooks, hand, hand.Amount);
        Lines = [.. outlooks.Select((outlook, i) => new TriageLine(outlook.Block, best.Amounts[i], best.Sets[i], outlook.Unwatered,
            outlook.Loss(best.Amounts[i]), best.Curves[i].Most)).OrderByDescending(line => line.SavedPerUnit)
                .ThenByDescending(line => line.Unwatered)
            .ThenBy(line => line.Block.Index)];
        Gap = best.Bound - best.Saved;
    }

    /// <summary>Every block in which something stands, what saves most per unit first.</summary>
    public IReadOnlyList<TriageLine> Lines { get; }

    /// <summary>Sowings that stand there and weigh nothing, each with the reason.</summary>
    public IReadOnlyList<(SowingWater Sowing, string Why)> NotRanked { get; }

    /// <summary>Money lost in the days ahead if nothing is watered.</summary>
    public double Unwatered => Lines.Sum(line => line.Unwatered);

    /// <summary>Money lost all the same.</summary>
    public double Lost => Lines.Sum(line => line.Lost);

    /// <summary>How much more the linear program, which may part whole sets, would save at most; about 0 where there are none.</summary>
    public double Gap { get; }

    /// <summary>Ranks the blocks of a farm for what there is to water with.</summary>
    /// <param name="farm">The farm's water, days ahead included.</param>
    /// <param name="hand">What there is.</param>
    /// <param name="stillToCome">The money a sowing is still to bring from a day on, less what goes with it; null where it isn't
    /// known.</param>
    /// <returns>The list.</returns>
    public static WaterTriage Of(FarmWater farm, WaterAtHand hand, Func<SowingWater, DateOnly, double?> stillToCome)
    {
        ArgumentNullException.ThrowIfNull(farm);
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(stillToCome);
        List<(SowingWater, string)> notRanked = [];
        Dictionary<WaterBlock, List<SowingOutlook>> standing = [];
        foreach (SowingWater sowing in farm.Sowings.Where(one => one.Span.Holds(hand.From)))
        {
            if (hand.InSprinklerHours && sowing.Block.SprinklerLiters is null)
            {
                notRanked.Add((sowing, "blocks.csv doesn't say what a sprinkler gives there"));
            }
            else if (stillToCome(sowing, hand.From) is { } money)
            {
                double depletion = WaterBalance.Of(sowing, farm.Log, hand.From).Depletion;
                (standing.TryGetValue(sowing.Block, out List<SowingOutlook>? there) ? there : standing[sowing.Block] = [])
                    .Add(new SowingOutlook(sowing, hand.From, hand.Days + DaysAfter, depletion, money));
            }
            else
            {
                notRanked.Add((sowing, "what it is still to bring isn't known"));
            }
        }

        return new WaterTriage([.. standing.OrderBy(pair => pair.Key.Index).Select(pair => new BlockOutlook(pair.Key, pair.Value, hand.Days,
            pair.Key.LitersPerMm / (hand.InSprinklerHours ? pair.Key.SprinklerLiters!.Value : 1)))], hand, notRanked);
    }

    /// <summary>Money saved with another amount at hand.</summary>
    /// <param name="amount">Liters or sprinkler-hours, 0 or more.</param>
    /// <returns>Money.</returns>
    public double SavedWith(double amount) => WaterShares.Of(outlooks, hand, Math.Max(0, amount)).Saved;

    /// <summary>Money lost when every block gets the same depth of water, be it in whole sets or not.</summary>
    public double LostEvenly => outlooks.Select((outlook, i) => outlook.Loss(WaterShares.Even(outlooks, hand.Amount)[i])).Sum();
}
