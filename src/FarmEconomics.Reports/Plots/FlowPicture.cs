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

        List<(string From, string Carrier, string To, double Amount)> flows = WithoutSmall(Flows(season, origins));
        List<string> spent = origins.ConvertAll(pool => pool.Pool.Name);
        Column left = new(spent, name => flows.Where(flow => flow.From == name).Sum(flow => flow.Amount));
        Column middle = new(Carriers(flows, spent), name => flows.Where(flow => flow.Carrier == name).Sum(flow => flow.Amount));
        Column right = new(Bearers(flows), name => flows.Where(flow => flow.To == name).Sum(flow => flow.Amount));
        Notation notation = season.Notation;
        double total = flows.Sum(flow => flow.Amount), detour = flows.Where(flow => flow.Carrier != flow.From).Sum(flow => flow.Amount);
        Canvas canvas = new(
            $"{Words(detour, notation)} of {Words(total, notation)} for equipment and buildings reached its users "
                + "by way of another shared cost",
            Width,
            Height);
        canvas.Text("spent in", 20, 10, 11.5, Palette.Soft);
        canvas.Text("handed over by", 372, 10, 11.5, Palette.Soft);
        canvas.Text("borne by", 720, 10, 11.5, Palette.Soft);
        int most = new[] { left, middle, right }.Max(column => column.Names.Count);
        Drawing drawing = new(canvas, notation, (canvas.Bottom - 34 - (Gap * (most - 1))) / total,
            name => spent.IndexOf(name) is >= 0 and var i ? Palette.Of(i) : Palette.Middle);
        drawing.Bands(left, middle, (from, to) => flows.Where(flow => flow.From == from && flow.Carrier == to).Sum(flow => flow.Amount),
            172, 392);
        drawing.Bands(middle, right, (from, to) => flows.Where(flow => flow.Carrier == from && flow.To == to).Sum(flow => flow.Amount),
            392 + Node, 706);
        drawing.Nodes(left, 172 - Node, 154, Alignment.MiddleRight);
        drawing.Nodes(middle, 392, 392 + Node + 5, Alignment.MiddleLeft);
        (drawing with { ColorOf = _ => Palette.Ink }).Nodes(right, 706, 706 + Node + 5, Alignment.MiddleLeft);
        return canvas.ToFigure($"Flow of {Words(total, notation)} of infrastructure cost in {season.CropYear}. Spent in: "
            + $"{left.Said(notation)}. "
            + $"Handed over by: {middle.Said(notation)}. Borne by: {right.Said(notation)}.");
    }

    /// <summary>Pools that hand over next to nothing are one.</summary>
    private static List<(string From, string Carrier, string To, double Amount)> WithoutSmall(
        List<(string From, string Carrier, string To, double Amount)> flows)
    {
        double total = flows.Sum(flow => flow.Amount);
        HashSet<string> small =
        [
            .. flows.GroupBy(flow => flow.Carrier)
                .Where(group => group.Sum(flow => flow.Amount) < total * 0.012)
                .Select(group => group.Key),
        ];
        return flows.ConvertAll(flow => small.Contains(flow.Carrier) ? flow with { Carrier = "others" } : flow);
    }

    /// <summary>Pools that hand over, in the order of those spent in, then by name.</summary>
    private static List<string> Carriers(List<(string From, string Carrier, string To, double Amount)> flows, List<string> spent) =>
    [
        .. spent.Where(name => flows.Exists(flow => flow.Carrier == name)),
        .. flows.Select(flow => flow.Carrier).Distinct().Where(name => !spent.Contains(name)).Order(StringComparer.Ordinal),
    ];

    /// <summary>Who bears it, most first; what no crop bears last.</summary>
    private static List<string> Bearers(List<(string From, string Carrier, string To, double Amount)> flows) =>
    [
        .. flows.GroupBy(flow => flow.To)
            .OrderBy(group => Ends.Contains(group.Key))
            .ThenByDescending(group => group.Sum(flow => flow.Amount))
            .Select(group => group.Key),
    ];

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

    private static string Words(double amount, Notation notation) => notation.InWords((decimal)amount, Look.WholeMoney);

    /// <summary>The names that stand above each other, and the money of each.</summary>
    private sealed record Column(List<string> Names, Func<string, double> Amount)
    {
        internal string Said(Notation notation) => Phrase.List(Names.ConvertAll(name => $"{name} {Words(Amount(name), notation)}"));

        /// <summary>Where each name begins, in the middle of the height.</summary>
        internal Dictionary<string, double> Stack(double unit, double bottom)
        {
            double height = (Names.Sum(Amount) * unit) + (Gap * (Names.Count - 1));
            double y = 24 + Math.Max(0, (bottom - 34 - height) / 2);
            Dictionary<string, double> at = [];
            foreach (string name in Names)
            {
                at[name] = y;
                y += (Amount(name) * unit) + Gap;
            }

            return at;
        }
    }

    /// <summary>Draws on a canvas at so many pixels a unit of money.</summary>
    private sealed record Drawing(Canvas Canvas, Notation Notation, double Unit, Func<string, Color> ColorOf)
    {
        internal void Bands(Column from, Column to, Func<string, string, double> amount, double x1, double x2)
        {
            Dictionary<string, double> fromAt = from.Stack(Unit, Canvas.Bottom), toAt = to.Stack(Unit, Canvas.Bottom);
            Dictionary<string, double> used = to.Names.ToDictionary(name => name, _ => 0d);
            foreach (string source in from.Names)
            {
                double y1 = fromAt[source];
                foreach (string target in to.Names)
                {
                    double thick = amount(source, target) * Unit;
                    if (thick < 0.05)
                    {
                        continue;
                    }

                    double y2 = toAt[target] + used[target];
                    used[target] += thick;
                    Canvas.Polygon(Band(x1, y1, x2, y2, thick), ColorOf(source).WithAlpha(.45));
                    y1 += thick;
                }
            }
        }

        internal void Nodes(Column column, double x, double textX, Alignment align)
        {
            Dictionary<string, double> at = column.Stack(Unit, Canvas.Bottom);
            double lowest = 0;
            foreach (string name in column.Names)
            {
                double height = Math.Max(1, column.Amount(name) * Unit);
                Canvas.Rect(x, at[name], Node, height, ColorOf(name));
                double y = Math.Max(at[name] + (height / 2), lowest + 13.5);
                lowest = y;
                string amount = Notation.Number((decimal)column.Amount(name), Look.WholeMoney);
                Canvas.Text($"{name} {amount}", textX, y, 11.5, align: align, halo: true);
            }
        }
    }
}
