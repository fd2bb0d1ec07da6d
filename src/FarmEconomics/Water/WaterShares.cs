namespace FarmEconomics.Water;

/// <summary>How an amount of water is shared over blocks so that least is lost.</summary>
internal sealed class WaterShares
{
    private const int MostCombinations = 1 << 20;

    private readonly IReadOnlyList<BlockOutlook> outlooks;
    private readonly double[] set;
    private readonly int[] most;
    private readonly int[] whole;

    private WaterShares(IReadOnlyList<BlockOutlook> outlooks, WaterAtHand hand, double limit)
    {
        this.outlooks = outlooks;
        Curves = [.. outlooks.Select(outlook => outlook.Curve())];
        set = [.. outlooks.Select(outlook => outlook.Block.SetLiters is not { } liters ? 0
            : hand.InSprinklerHours ? liters / outlook.Block.SprinklerLiters!.Value : liters)];
        most = [.. set.Select((size, i) => size > 0 && Curves[i].Most > 0 ? Math.Min(hand.Days, (int)Math.Floor(limit / size)) : 0)];
        whole = [.. Enumerable.Range(0, set.Length).Where(i => most[i] > 0)];
        Bound = Gains(GainCurve.Share(Curves, limit));
        int[] sets = Combinations() <= MostCombinations ? Best(limit) : Greedy(limit);
        Amounts = Divide(sets, limit);
        Sets = [.. set.Select((size, i) => size > 0 ? sets[i] : (int?)null)];
        Saved = Gain(Amounts);
        double[] even = Even(outlooks, limit);
        if (Array.TrueForAll(set, size => size == 0) && Gain(even) > Saved)
        {
            (Amounts, Saved) = (even, Gain(even));
        }

        Bound = Math.Max(Bound, Saved);
    }

    internal IReadOnlyList<GainCurve> Curves { get; }

    /// <summary>What each block gets.</summary>
    internal double[] Amounts { get; }

    /// <summary>How many whole sets that is; null where the block may be watered in part.</summary>
    internal int?[] Sets { get; }

    /// <summary>Money saved.</summary>
    internal double Saved { get; }

    /// <summary>What the linear program would save, in which every block may be watered in part.</summary>
    internal double Bound { get; }

    internal static WaterShares Of(IReadOnlyList<BlockOutlook> outlooks, WaterAtHand hand, double limit) => new(outlooks, hand, limit);

    /// <summary>The same depth on every block.</summary>
    internal static double[] Even(IReadOnlyList<BlockOutlook> outlooks, double limit)
    {
        double all = outlooks.Sum(outlook => outlook.PerMm);
        return [.. outlooks.Select(outlook => all > 0 ? limit * outlook.PerMm / all : 0)];
    }

    private double Combinations() => whole.Aggregate(1.0, (all, i) => all * (most[i] + 1));

    private double Gains(double[] amounts) => amounts.Select((amount, i) => Curves[i].Gain(amount)).Sum();

    private double Gain(double[] amounts) => amounts.Select((amount, i) => outlooks[i].Unwatered - outlooks[i].Loss(amount)).Sum();

    /// <summary>Whole sets as given, the rest to the blocks that may be watered in part.</summary>
    private double[] Divide(int[] sets, double limit)
    {
        double left = limit - Enumerable.Range(0, sets.Length).Sum(i => sets[i] * set[i]);
        double[] parts = GainCurve.Share([.. Curves.Select((curve, i) => set[i] > 0 ? new GainCurve([]) : curve)], Math.Max(0, left));
        return [.. parts.Select((part, i) => part + (sets[i] * set[i]))];
    }

    private int[] Best(double limit)
    {
        GainCurve rest = Together([.. Curves.Where((_, i) => set[i] == 0)]);
        double[][] gains = [.. whole.Select(i => Enumerable.Range(0, most[i] + 1)
            .Select(count => outlooks[i].Unwatered - outlooks[i].Loss(count * set[i])).ToArray())];
        int[] now = new int[whole.Length];
        int[] best = new int[whole.Length];
        double bestGain = double.NegativeInfinity;
        Try(0, limit, 0);
        int[] sets = new int[set.Length];
        for (int i = 0; i < whole.Length; i++)
        {
            sets[whole[i]] = best[i];
        }

        return sets;

        void Try(int place, double left, double gain)
        {
            if (place == whole.Length)
            {
                double all = gain + rest.Gain(left);
                if (all > bestGain + 1e-12)
                {
                    bestGain = all;
                    now.CopyTo(best, 0);
                }

                return;
            }

            for (int count = 0; count <= most[whole[place]] && count * set[whole[place]] <= left; count++)
            {
                now[place] = count;
                Try(place + 1, left - (count * set[whole[place]]), gain + gains[place][count]);
            }

            now[place] = 0;
        }
    }

    // One set after the other, where a unit of it saves most, as long as it fits.
    private int[] Greedy(double limit)
    {
        int[] sets = new int[set.Length];
        double left = limit;
        while (true)
        {
            int best = -1;
            double most = 0;
            foreach (int i in whole.Where(i => sets[i] < this.most[i] && set[i] <= left))
            {
                double slope = (outlooks[i].Loss(sets[i] * set[i]) - outlooks[i].Loss((sets[i] + 1) * set[i])) / set[i];
                (best, most) = slope > most ? (i, slope) : (best, most);
            }

            if (best < 0)
            {
                return sets;
            }

            sets[best]++;
            left -= set[best];
        }
    }

    private static GainCurve Together(IReadOnlyList<GainCurve> curves)
    {
        List<(double, double)> points = [];
        (double amount, double gain) = (0, 0);
        foreach ((double length, double slope) in curves.SelectMany(curve => curve.Pieces).OrderByDescending(piece => piece.Slope))
        {
            (amount, gain) = (amount + length, gain + (length * slope));
            points.Add((amount, gain));
        }

        return new GainCurve(points);
    }
}
