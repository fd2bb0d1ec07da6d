using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Season;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;
using ScottPlot;

namespace FarmEconomics.Reports.Plots;

/// <summary>Pictures of shared costs: what they are made of, who drew power and heat, what filled the cold room.</summary>
public static class SharedPlots
{
    /// <summary>Each pool's cost: running (cash, labor) against ownership.</summary>
    public static Figure OwnershipAgainstRunning(SeasonReview season, bool onPhone = false)
    {
        List<PoolResult> pools = PoolTables.Busy(season).Where(pool => pool.Total.Amount > 0m).ToList();
        decimal total = pools.Sum(pool => pool.Total.Amount);
        if (pools.Count == 0)
        {
            return SeasonPlots.Nothing($"No shared cost is on record for {season.CropYear}");
        }

        Notation notation = season.Notation;
        decimal owning = pools.Sum(pool => pool.Ownership.Amount);
        string title = season.Known.Ownership is { } why
            ? $"Running cost of what is shared in {season.CropYear}; what owning costs isn't known ({why})"
            : $"{Phrase.Percent(owning / total)} of {notation.InWords(total, Look.WholeMoney)} of shared cost is the cost of owning";
        int columns = BarColumns.ColumnsFor(pools.Count, onPhone);
        Canvas canvas = new(title, onPhone, BarColumns.HeightFor(pools.Count, columns, onPhone));
        double x = SeasonPlots.Key(canvas, 10, 12, Palette.Light, "cash");
        x = SeasonPlots.Key(canvas, x + 18, 12, Palette.Middle, "labor");
        SeasonPlots.Key(canvas, x + 18, 12, Palette.Dark, "owning");
        List<BarItem> bars = pools.ConvertAll(pool => new BarItem(
            pool.Pool.Name,
            [(double)pool.Cash.Amount, (double)pool.Labor.Amount, (double)pool.Ownership.Amount],
            Whole(pool.Total)));
        new BarColumns(canvas, bars, [Palette.Light, Palette.Middle, Palette.Dark], 26)
            .Draw(columns, $"{notation.Currency} in {season.CropYear}", value => notation.Text($"{value:#,0}"));
        IEnumerable<string> first = pools.Take(8)
            .Select(pool => $"{pool.Pool.Name} {Whole(pool.Cash)}, {Whole(pool.Labor)} and {Whole(pool.Ownership)}");
        return canvas.ToFigure($"Stacked bars of {notation.Count(pools.Count, "shared cost")} in {season.CropYear}, "
            + $"cash, labor and owning: {Phrase.List([.. first])}.");

        string Whole(Units.Money amount) => notation.Number(amount.Amount, Look.WholeMoney);
    }

    /// <summary>What the loads drew, month by month.</summary>
    public static Figure PowerByMonth(SeasonReview season, bool onPhone = false)
    {
        List<(DateOnly Month, decimal Used, Dictionary<string, decimal> ByUser)> months = Power(season);
        List<string> users = months
            .SelectMany(month => month.ByUser)
            .GroupBy(pair => pair.Key)
            .OrderByDescending(group => group.Sum(pair => pair.Value))
            .Select(group => group.Key)
            .ToList();
        if (users.Count == 0)
        {
            return SeasonPlots.Nothing("Power by month: not available (no loads.csv, or no load in the year)");
        }

        List<string> shown = users.Take(users.Count > Palette.Count ? Palette.Count - 1 : Palette.Count).ToList();
        Canvas canvas =
            new($"What the loads drew in {season.CropYear}", onPhone, BarColumns.HeightFor(12, 1, onPhone) + (onPhone ? 50 : 20));
        List<Color> colors = Enumerable.Range(0, Palette.Count).Select(i => Palette.Of(i)).ToList();
        double top = SeasonPlots.Keys(canvas, [.. colors.Zip(users.Count > shown.Count ? shown.Append("others") : shown)], between: 14);
        string InWords(decimal used) => season.Notation.Text($"{used:#,0}");
        new BarColumns(
            canvas,
            months.ConvertAll(month => new BarItem(
                month.Month.ToString("MMM"),
                [
                    .. shown.Select(user => (double)month.ByUser.GetValueOrDefault(user)),
                    .. users.Count > shown.Count
                        ? [(double)month.ByUser.Where(pair => !shown.Contains(pair.Key)).Sum(pair => pair.Value)] : Array.Empty<double>(),
                ],
                $"{InWords(month.Used)} kWh"
            )),
            colors,
            Math.Max(top, 46)).Draw(1, "kWh a month", value => season.Notation.Text($"{value:#,0}"));
        return canvas.ToFigure($"Stacked bars by month of {season.CropYear}: kWh drawn by the loads. "
            + string.Join("; ", months.Select(month => $"{month.Month:MMM} {InWords(month.Used)}")) + ".");
    }

    internal static List<(DateOnly Month, decimal Used, Dictionary<string, decimal> ByUser)> Power(SeasonReview season)
    {
        List<(DateOnly, decimal, Dictionary<string, decimal>)> months = [];
        for (
            DateOnly month = season.Settings.StartOf(season.CropYear);
            month < season.Settings.EndOf(season.CropYear);
            month = month.AddMonths(1)
        )
        {
            Dictionary<string, decimal> byUser = new(StringComparer.OrdinalIgnoreCase);
            foreach (LoadRow load in season.Records.Tables.Loads)
            {
                DateOnly last = month.AddMonths(1).AddDays(-1);
                decimal energy = LoadEnergy.KilowattHours(load, month, season.Records.CostsUntil < last ? season.Records.CostsUntil : last);
                if (energy > 0m)
                {
                    byUser[load.User.Trim()] = byUser.GetValueOrDefault(load.User.Trim()) + energy;
                }
            }

            months.Add((month, byUser.Values.Sum(), byUser));
        }

        return months;
    }
}
