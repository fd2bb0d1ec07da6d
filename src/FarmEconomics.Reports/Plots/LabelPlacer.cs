namespace FarmEconomics.Reports.Plots;

/// <summary>
/// Puts labels beside points so that no two overlap and none covers a point: each label tries places around its point, near ones
/// first; one that finds none is left out. Important points come first, so it is the crowd in the middle that goes without.
/// </summary>
internal sealed class LabelPlacer(double left, double top, double right, double bottom)
{
    private const double Height = 14;
    private readonly List<(double X, double Y, double W, double H)> taken = [];

    /// <summary>Keeps a rectangle free.</summary>
    internal void Block(double x, double y, double w, double h) => taken.Add((x, y, w, h));

    /// <summary>
    /// A place for a label of that width by its left middle, or null; <c>Far</c> when a leader line should tie it to its point.
    /// </summary>
    internal (double X, double Y, bool Far)? Place(double x, double y, double width)
    {
        foreach (double distance in new[] { 9d, 16, 26, 38 })
        {
            for (int k = 0; k < 16; k++)
            {
                // Right first, then around by turns above and below.
                double angle = (k % 2 == 0 ? 1 : -1) * ((k + 1) / 2) * Math.PI / 8;
                double px = x + (distance * Math.Cos(angle));
                double py = y + (distance * Math.Sin(angle));
                double labelLeft = Math.Cos(angle) switch { > 0.3 => px, < -0.3 => px - width, _ => px - (width / 2) };
                (double X, double Y, double W, double H) box = (labelLeft, py - (Height / 2), width, Height);
                if (
                    box.X >= left
                    && box.X + box.W <= right
                    && box.Y >= top
                    && box.Y + box.H <= bottom
                    && !taken.Exists(other => Overlap(box, other))
                )
                {
                    taken.Add(box);
                    return (labelLeft, py, distance > 10);
                }
            }
        }

        return null;
    }

    private static bool Overlap((double X, double Y, double W, double H) a, (double X, double Y, double W, double H) b) =>
        a.X < b.X + b.W && b.X < a.X + a.W && a.Y < b.Y + b.H && b.Y < a.Y + a.H;
}
