namespace FarmEconomics.Water;

/// <summary>What a sowing's part of a block is about to lose, by what is put on: the balance of the days ahead.</summary>
/// <param name="Sowing">The sowing.</param>
/// <param name="From">The first day.</param>
/// <param name="Days">How many are looked at.</param>
/// <param name="Depletion">Depletion the evening before, mm.</param>
/// <param name="Stake">The money it is still to bring.</param>
internal readonly record struct SowingOutlook(SowingWater Sowing, DateOnly From, int Days, double Depletion, double Stake)
{
    /// <summary>The most water of any use, mm: what fills the soil and the days' need.</summary>
    internal double Most(int doses)
    {
        double most = Depletion;
        for (int i = 0; i < Math.Min(Days, doses); i++)
        {
            most += Sowing.Need(From.AddDays(i));
        }

        return most;
    }

    /// <summary>The money lost over the days ahead with so many mm put on in equal doses on the first days.</summary>
    internal double Loss(double water, int doses) =>
        Sowing.LostAhead(From, Days, Depletion, (water / doses, doses)) * Stake;
}

/// <summary>A block's days ahead: all sowings that stand in it get the same depth of water.</summary>
internal sealed class BlockOutlook
{
    private const double Precision = 1e-7;
    private const int DeepestHalving = 9;

    private readonly int doses;
    private readonly double perMm;

    /// <summary>An outlook.</summary>
    /// <param name="block">The block.</param>
    /// <param name="sowings">What stands in it and has a value.</param>
    /// <param name="doses">Days on which it is watered, in equal parts.</param>
    /// <param name="perMm">Units of what is short that a mm at the roots takes.</param>
    internal BlockOutlook(WaterBlock block, IReadOnlyList<SowingOutlook> sowings, int doses, double perMm)
    {
        Block = block;
        Sowings = sowings;
        this.doses = doses;
        this.perMm = perMm;
        Unwatered = Loss(0);
        Most = Unwatered > 0 ? sowings.Max(sowing => sowing.Most(doses)) * perMm : 0;
    }

    internal WaterBlock Block { get; }

    internal IReadOnlyList<SowingOutlook> Sowings { get; }

    /// <summary>The money lost if nothing is put on.</summary>
    internal double Unwatered { get; }

    /// <summary>The most of any use, in units of what is short.</summary>
    internal double Most { get; }

    /// <summary>Units of what is short that a mm at the roots takes.</summary>
    internal double PerMm => perMm;

    /// <summary>The money lost with an amount of what is short put on.</summary>
    internal double Loss(double amount)
    {
        double loss = 0;
        foreach (SowingOutlook sowing in Sowings)
        {
            loss += sowing.Loss(amount / perMm, doses);
        }

        return loss;
    }

    /// <summary>What amounts gain: halved until each piece is straight.</summary>
    internal GainCurve Curve()
    {
        List<(double, double)> points = [(0, 0)];
        if (Most > 0)
        {
            double all = Unwatered - Loss(Most);
            Halve(points, (0, 0), (Most, all), DeepestHalving);
        }

        return new GainCurve(points);
    }

    /// <summary>The same in a few equal steps, for where many are needed.</summary>
    internal GainCurve Curve(int steps)
    {
        List<(double, double)> points = [];
        for (int i = 1; i <= steps && Most > 0; i++)
        {
            double amount = Most * i / steps;
            points.Add((amount, Unwatered - Loss(amount)));
        }

        return new GainCurve(points);
    }

    private void Halve(List<(double Amount, double Gain)> points, (double Amount, double Gain) from, (double Amount, double Gain) to,
        int deeper)
    {
        double half = (from.Amount + to.Amount) / 2;
        (double Amount, double Gain) middle = (half, Unwatered - Loss(half));
        bool bent = Math.Abs(middle.Gain - ((from.Gain + to.Gain) / 2)) > Precision * Unwatered;
        if (deeper > 0 && (bent || deeper > DeepestHalving - 3))
        {
            Halve(points, from, middle, deeper - 1);
            Halve(points, middle, to, deeper - 1);
            return;
        }

        points.Add(middle);
        points.Add(to);
    }
}
