using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;
using ScottPlot;

namespace FarmEconomics.Reports.Plots;

/// <summary>
/// Where the money of the infrastructure pools went: from the pool it was spent in, through the pool that handed it over at last, to the
/// crop groups, the household and what stood idle. Bands are as wide as their money. Circles are in it: what a pool passes round and
/// gets back leaves by the pool that hands it over.
/// </summary>
public static class FlowPicture
{
    private const int Width = 900;
    private const int Height = 480;
    private const double Node = 13;
    private const double Gap = 6;

    /// <summary>The figure.</summary>
    public static Figure Of(SeasonReview season)
    {
        List<PoolResult> origins = season
            .Pools.Where(pool => pool.Pool.Line == StatementLine.Infrastructure && pool.Total.Amount > 0m)
            .OrderByDescending(pool => pool.Total.Amount)
            .ToList();
        if (origins.Count == 0)
        {
            return SeasonPlots.Nothing($"No infrastructure pool held any cost in {season.CropYear}");
        }

        Notation notation = season.Notation;
        List<(string From, string Carrier, string To, double Amount)> flows = Flows(season, origins);
        double total = flows.Sum(flow => flow.Amount);
        HashSet<string> small = flows
            .GroupBy(flow => flow.Carrier)
            .Where(group => group.Sum(flow => flow.Amount) < total * 0.012)
            .Select(group => group.Key)
            .ToHashSet();
        flows = flows.ConvertAll(flow => small.Contains(flow.Carrier) ? flow with { Carrier = "other pools" } : flow);
        double detour = flows.Where(flow => flow.Carrier != flow.From).Sum(flow => flow.Amount);
        List<string> left = origins.ConvertAll(pool => pool.Pool.Name);
        List<string> middle = left.Where(name => flows.Exists(flow => flow.Carrier == name))
            .Concat(flows.Select(flow => flow.Carrier).Distinct().Where(name => !left.Contains(name)).Order(StringComparer.Ordinal))
            .ToList();
        List<string> right = flows
            .GroupBy(flow => flow.To)
            .OrderBy(group => Ends.Contains(group.Key))
            .ThenByDescending(group => group.Sum(flow => flow.Amount))
            .Select(group => group.Key)
            .ToList();
        Canvas canvas = new(
            $"{Words(detour, notation)} of {Words(total, notation)} of infrastructure cost reached its users through another pool",
            Width,
            Height
        );
        canvas.Text("spent in", 20, 10, 11.5, Palette.Soft);
        canvas.Text("handed over by", 372, 10, 11.5, Palette.Soft);
        canvas.Text("borne by", 720, 10, 11.5, Palette.Soft);
        double unit = (canvas.Bottom - 34 - (Gap * (new[] { left.Count, middle.Count, right.Count }.Max() - 1))) / total;
        Dictionary<string, double> leftAt = Stack(
            left,
            name => flows.Where(flow => flow.From == name).Sum(flow => flow.Amount),
            unit,
            canvas.Bottom
        );
        Dictionary<string, double> middleAt = Stack(
            middle,
            name => flows.Where(flow => flow.Carrier == name).Sum(flow => flow.Amount),
            unit,
            canvas.Bottom
        );
        Dictionary<string, double> rightAt = Stack(
            right,
            name => flows.Where(flow => flow.To == name).Sum(flow => flow.Amount),
            unit,
            canvas.Bottom
        );
        Color ColorOf(string name) => left.IndexOf(name) is >= 0 and var i ? Palette.Of(i) : Palette.Middle;
        Bands(
            canvas,
            left,
            middle,
            leftAt,
            middleAt,
            (from, to) => flows.Where(flow => flow.From == from && flow.Carrier == to).Sum(flow => flow.Amount),
            unit,
            172,
            392,
            ColorOf
        );
        Bands(
            canvas,
            middle,
            right,
            middleAt,
            rightAt,
            (from, to) => flows.Where(flow => flow.Carrier == from && flow.To == to).Sum(flow => flow.Amount),
            unit,
            392 + Node,
            706,
            ColorOf
        );
        Nodes(
            canvas,
            left,
            leftAt,
            name => flows.Where(flow => flow.From == name).Sum(flow => flow.Amount),
            unit,
            172 - Node,
            154,
            Alignment.MiddleRight,
            ColorOf,
            notation
        );
        Nodes(
            canvas,
            middle,
            middleAt,
            name => flows.Where(flow => flow.Carrier == name).Sum(flow => flow.Amount),
            unit,
            392,
            392 + Node + 5,
            Alignment.MiddleLeft,
            ColorOf,
            notation
        );
        Nodes(
            canvas,
            right,
            rightAt,
            name => flows.Where(flow => flow.To == name).Sum(flow => flow.Amount),
            unit,
            706,
            706 + Node + 5,
            Alignment.MiddleLeft,
            _ => Palette.Ink,
            notation
        );
        return canvas.ToFigure(
            $"Flow of {Words(total, notation)} of infrastructure cost in {season.CropYear}. Spent in: {List(left, name => flows.Where(flow => flow.From == name).Sum(flow => flow.Amount), notation)}. "
                + $"Handed over by: {List(middle, name => flows.Where(flow => flow.Carrier == name).Sum(flow => flow.Amount), notation)}. Borne by: {List(right, name => flows.Where(flow => flow.To == name).Sum(flow => flow.Amount), notation)}."
        );
    }

    private static readonly string[] Ends = ["household", "unused capacity", "not assigned"];

    /// <summary>F = N R with N = (I - Q)^-1: each origin's money, by the pool that hands it over and the target that bears it.</summary>
    internal static List<(string From, string Carrier, string To, double Amount)> Flows(SeasonReview season, List<PoolResult> origins)
    {
        List<(string From, string Carrier, string To, double Amount)> flows = [];
        int pools = season.Pools.Count;
        foreach ((SharedCosts shares, Func<PoolResult, decimal> money) in new (SharedCosts, Func<PoolResult, decimal>)[]
        {
            (season.Network.Running, pool => (pool.Cash + pool.Labor).Amount), (season.Network.Owning, pool => pool.Ownership.Amount),
        })
        {
            foreach (PoolResult origin in origins)
            {
                double[] own = new double[pools];
                own[origin.Pool.Index] = (double)money(origin);
                double[] through = own.Sum() > 0 ? shares.GrossFlows(own) : own;
                for (int k = 0; k < pools; k++)
                {
                    if (through[k] < 0.005)
                    {
                        continue;
                    }

                    foreach (IGrouping<string, double> target in Direct(season, shares, k).GroupBy(share => share.To, share => share.Share))
                    {
                        flows.Add((origin.Pool.Name, season.Pools[k].Pool.Name, target.Key, through[k] * target.Sum()));
                    }
                }
            }
        }

        return flows.Where(flow => flow.Amount > 0.005).ToList();
    }

    private static IEnumerable<(string To, double Share)> Direct(SeasonReview season, SharedCosts shares, int pool)
    {
        int crops = season.Network.Enterprises.Count;
        for (int t = 0; t < crops + 3; t++)
        {
            decimal through = 0m;
            for (int m = 0; m < season.Pools.Count; m++)
            {
                decimal passed = shares.PassedTo(pool, m);
                through += passed > 0m ? passed * shares.Shares[m, t] : 0m;
            }

            yield return (
                t < crops ? season.Network.Enterprises[t].Crop.Group : Ends[t - crops],
                (double)Math.Max(0m, shares.Shares[pool, t] - through)
            );
        }
    }

    private static Dictionary<string, double> Stack(List<string> names, Func<string, double> amount, double unit, double bottom)
    {
        double height = (names.Sum(amount) * unit) + (Gap * (names.Count - 1));
        double y = 24 + Math.Max(0, (bottom - 34 - height) / 2);
        Dictionary<string, double> at = [];
        foreach (string name in names)
        {
            at[name] = y;
            y += (amount(name) * unit) + Gap;
        }

        return at;
    }

    private static void Bands(
        Canvas canvas, List<string> from, List<string> to, Dictionary<string, double> fromAt, Dictionary<string, double> toAt,
        Func<string, string, double> amount, double unit, double x1, double x2, Func<string, Color> color)
    {
        Dictionary<string, double> used = to.ToDictionary(name => name, _ => 0d);
        foreach (string source in from)
        {
            double y1 = fromAt[source];
            foreach (string target in to)
            {
                double thick = amount(source, target) * unit;
                if (thick < 0.05)
                {
                    continue;
                }

                double y2 = toAt[target] + used[target];
                used[target] += thick;
                canvas.Polygon(Band(x1, y1, x2, y2, thick), color(source).WithAlpha(.45));
                y1 += thick;
            }
        }
    }

    private static IEnumerable<(double X, double Y)> Band(double x1, double y1, double x2, double y2, double thick)
    {
        const int Steps = 20;
        IEnumerable<(double X, double Y)> upper = Enumerable.Range(0, Steps + 1).Select(k =>
        {
            double t = (double)k / Steps;
            return (x1 + ((x2 - x1) * t), y1 + ((y2 - y1) * t * t * (3 - (2 * t))));
        });
        return upper.Concat(upper.Reverse().Select(point => (point.X, point.Y + thick)));
    }

    private static void Nodes(
        Canvas canvas,
        List<string> names,
        Dictionary<string, double> at,
        Func<string, double> amount,
        double unit,
        double x,
        double textX,
        Alignment align,
        Func<string, Color> color,
        Notation notation
    )
    {
        double lowest = 0;
        foreach (string name in names)
        {
            double height = Math.Max(1, amount(name) * unit);
            canvas.Rect(x, at[name], Node, height, color(name));
            double y = Math.Max(at[name] + (height / 2), lowest + 13.5);
            lowest = y;
            canvas.Text($"{name} {notation.Number((decimal)amount(name), Look.WholeMoney)}", textX, y, 11.5, align: align, halo: true);
        }
    }

    private static string Words(double amount, Notation notation) => notation.InWords((decimal)amount, Look.WholeMoney);

    private static string List(List<string> names, Func<string, double> amount, Notation notation) =>
        Phrase.List(names.ConvertAll(name => $"{name} {Words(amount(name), notation)}"));
}
