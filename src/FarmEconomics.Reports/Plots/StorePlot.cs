using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Shared;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;
using ScottPlot;

namespace FarmEconomics.Reports.Plots;

/// <summary>What filled a store, by crop and month: crates times days.</summary>
public static class StorePlot
{
    private const int Most = 14;

    /// <summary>The figure for one store; crops with little in it are added up on the last row.</summary>
    public static Figure Of(SeasonReview season, string pool, bool onPhone = false)
    {
        if (pool.Trim().Length == 0)
        {
            return SeasonPlots.Nothing("No shared cost is divided by crate-days, so what filled the stores is not known");
        }

        Pool store = StoreOf(season, pool);
        IReadOnlyDictionary<(Crop Crop, DateOnly Month), decimal> days = StoreDays.Of(season, store);
        decimal total = days.Values.Sum();
        if (total <= 0m)
        {
            return SeasonPlots.Nothing($"Nothing was held in {store.Name} in {season.CropYear}");
        }

        DateOnly first = days.Keys.Min(key => key.Month), last = days.Keys.Max(key => key.Month);
        int months = ((last.Year - first.Year) * 12) + last.Month - first.Month + 1;
        List<(string Name, decimal[] Values)> rows = RowsOf(days, first, months);
        string all = season.Notation.Number(total, Look.Count), share = Phrase.Percent(rows[0].Values.Sum() / total);
        string title = $"{rows[0].Name} filled {share} of the {store.Name}'s {all} crate-days of {season.CropYear}";
        Canvas canvas = new(title, onPhone, 34 + 44 + (24 * rows.Count) + 10);
        double names = canvas.NamesWidth(rows.Select(row => row.Name), 11.5, canvas.Width * 0.4) + 14;
        Scale scale = new(0, months, names, canvas.Width - (onPhone ? 62 : 80));
        NameMonths(canvas, scale, first, months);
        canvas.Text(onPhone ? "all" : "crate-days", canvas.Width - 8, 24, 11, Palette.Soft, Alignment.MiddleRight);
        decimal top = rows.Max(row => row.Values.Max());
        for (int i = 0; i < rows.Count; i++)
        {
            double y = 34 + (i * 24);
            canvas.Name(rows[i].Name, names - 6, y + 12, 11.5, names - 14);
            DrawMonths(canvas, season.Notation, scale, (y, top), rows[i].Values);
            string sum = season.Notation.Number(rows[i].Values.Sum(), Look.Count);
            canvas.Text(sum, canvas.Width - 8, y + 12, 11.5, align: Alignment.MiddleRight);
        }

        IEnumerable<string> most = rows.Take(6).Select(row => $"{row.Name} {season.Notation.Number(row.Values.Sum(), Look.Count)}");
        return canvas.ToFigure($"Crate-days in {store.Name} by crop and month, produce of {season.CropYear}: "
            + $"{Phrase.List([.. most])}; all {all}. Fullest: {Fullest(rows, first, season.Notation)}.");
    }

    private static Pool StoreOf(SeasonReview season, string pool)
    {
        List<Pool> stores = [.. StoreDays.Stores(season)];
        return stores.Find(each => string.Equals(each.Name, pool.Trim(), StringComparison.OrdinalIgnoreCase))
            ?? throw new ArgumentException(
                $"'{pool}' is no store divided by crate-days. Stores: {string.Join(", ", stores.Select(each => each.Name))}.",
                nameof(pool));
    }

    private static void NameMonths(Canvas canvas, Scale scale, DateOnly first, int months)
    {
        for (int m = 0; m < months; m += canvas.OnPhone ? 3 : 1)
        {
            DateOnly month = first.AddMonths(m);
            string name = month.ToString(month.Month == 1 && m > 0 ? "MMM yy" : "MMM");
            canvas.Centered(name, (scale[m] + scale[m + 1]) / 2, 24, 11, Palette.Soft);
        }
    }

    /// <summary>The crops that filled most, month by month, the others as one.</summary>
    private static List<(string Name, decimal[] Values)> RowsOf(
        IReadOnlyDictionary<(Crop Crop, DateOnly Month), decimal> days, DateOnly first, int months)
    {
        List<Crop> crops = days.GroupBy(pair => pair.Key.Crop)
            .OrderByDescending(group => group.Sum(pair => pair.Value))
            .Select(group => group.Key)
            .ToList();
        List<(string Name, decimal[] Values)> rows =
            [.. crops.Take(Most).Select(crop => (crop.Name, Row(days, [crop], first, months)))];
        if (crops.Count > Most)
        {
            rows.Add(($"{crops.Count - Most} other crops", Row(days, crops.Skip(Most).ToHashSet(), first, months)));
        }

        return rows;
    }

    private static void DrawMonths(Canvas canvas, Notation notation, Scale scale, (double Y, decimal Most) row, decimal[] values)
    {
        for (int m = 0; m < values.Length; m++)
        {
            Color fill = Palette.Shade((double)(values[m] / row.Most));
            canvas.Rect(scale[m], row.Y + 1, scale[m + 1] - scale[m], 22, fill, Palette.White, 0.8);
            if (values[m] >= 0.5m && !canvas.OnPhone)
            {
                canvas.Centered(notation.Number(values[m], Look.Count), (scale[m] + scale[m + 1]) / 2, row.Y + 12, 10, Palette.On(fill));
            }
        }
    }

    private static string Fullest(List<(string Name, decimal[] Values)> rows, DateOnly first, Notation notation)
    {
        decimal[] sums = Enumerable.Range(0, rows[0].Values.Length).Select(m => rows.Sum(row => row.Values[m])).ToArray();
        int at = Array.IndexOf(sums, sums.Max());
        return $"{first.AddMonths(at):MMMM yyyy} with {notation.Number(sums[at], Look.Count)}";
    }

    private static decimal[] Row(
        IReadOnlyDictionary<(Crop Crop, DateOnly Month), decimal> days,
        HashSet<Crop> crops,
        DateOnly first,
        int months
    ) =>
        Enumerable
            .Range(0, months)
            .Select(m => days.Where(pair => pair.Key.Month == first.AddMonths(m) && crops.Contains(pair.Key.Crop)).Sum(pair => pair.Value))
            .ToArray();
}
