namespace FarmEconomics.Water;

/// <summary>
/// What more and more of something short gains in one place: straight pieces, each worth no more per unit than the one before. Where what
/// was measured isn't so, its upper hull stands in.
/// </summary>
public sealed class GainCurve
{
    private readonly (double Amount, double Gain)[] points;

    /// <summary>Makes a curve from what was measured.</summary>
    /// <param name="measured">Amounts rising from 0, each with what it gains.</param>
    public GainCurve(IReadOnlyList<(double Amount, double Gain)> measured)
    {
        ArgumentNullException.ThrowIfNull(measured);
        List<(double Amount, double Gain)> hull = [(0, 0)];
        foreach ((double Amount, double Gain) point in measured)
        {
            if (point.Amount <= hull[^1].Amount || point.Gain <= hull[^1].Gain)
            {
                continue;
            }

            while (hull.Count > 1 && Slope(hull[^2], hull[^1]) <= Slope(hull[^1], point))
            {
                hull.RemoveAt(hull.Count - 1);
            }

            hull.Add(point);
        }

        points = [.. hull];
    }

    /// <summary>The amount from which on nothing more is gained.</summary>
    public double Most => points[^1].Amount;

    /// <summary>What that gains.</summary>
    public double All => points[^1].Gain;

    /// <summary>The pieces: how long each is, and what a unit of it gains.</summary>
    public IEnumerable<(double Amount, double Slope)> Pieces
    {
        get
        {
            for (int i = 1; i < points.Length; i++)
            {
                yield return (points[i].Amount - points[i - 1].Amount, Slope(points[i - 1], points[i]));
            }
        }
    }

    /// <summary>What an amount gains.</summary>
    /// <param name="amount">0 or more.</param>
    /// <returns>The gain.</returns>
    public double Gain(double amount)
    {
        int i = 1;
        while (i < points.Length && points[i].Amount < amount)
        {
            i++;
        }

        return i == points.Length ? All : points[i - 1].Gain + ((amount - points[i - 1].Amount) * Slope(points[i - 1], points[i]));
    }

    /// <summary>
    /// Shares a limit over places so that together they gain most: the piece worth most per unit first, ties in the order of the places.
    /// With straight pieces and one limit that is the optimum of the linear program.
    /// </summary>
    /// <param name="curves">The places.</param>
    /// <param name="limit">How much there is.</param>
    /// <returns>How much each gets.</returns>
    public static double[] Share(IReadOnlyList<GainCurve> curves, double limit) => Share(curves, limit, (null, double.PositiveInfinity));

    /// <summary>
    /// The same where some places take of a second thing too, such as sprinklers. Where all that do take as much of it per unit, the second
    /// limit is one on a part of the places, and the same order is still the optimum; else it comes near.
    /// </summary>
    /// <param name="curves">The places.</param>
    /// <param name="limit">How much there is.</param>
    /// <param name="second">
    /// What a unit takes of the second thing in each place, 0 or more, null: nothing; and how much of it there is.
    /// </param>
    /// <returns>How much each gets.</returns>
    public static double[] Share(IReadOnlyList<GainCurve> curves, double limit, (IReadOnlyList<double>? Takes, double There) second)
    {
        ArgumentNullException.ThrowIfNull(curves);
        double[] given = new double[curves.Count];
        double there = second.There;
        double left = limit;
        foreach ((int place, double amount, _) in curves.SelectMany((curve, place) =>
            curve.Pieces.Select(piece => (place, piece.Amount, piece.Slope)))
            .OrderByDescending(piece => piece.Slope))
        {
            double takes = second.Takes?[place] ?? 0;
            double taken = Math.Min(left, takes > 0 ? Math.Min(amount, there / takes) : amount);
            given[place] += taken;
            left -= taken;
            there -= taken * takes;
            if (left <= 0)
            {
                break;
            }
        }

        return given;
    }

    private static double Slope((double Amount, double Gain) from, (double Amount, double Gain) to) =>
        (to.Gain - from.Gain) / (to.Amount - from.Amount);
}
