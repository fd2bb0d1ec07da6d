using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Avoidable;

/// <summary>What a crop sold by channel and week of the crop year, all years on record, beside list prices.</summary>
internal sealed class CropSales
{
    // Ours, without a source: nearly nothing thrown out or given away, two weeks on either side.
    private const decimal MostLost = 0.05m;
    private const int NearWeeks = 2;

    private readonly SeasonReview season;
    private readonly Dictionary<(int Year, Channel Channel, int Week), Sales> sales = [];
    private readonly Dictionary<Channel, (decimal Median, decimal Price)> without = [];
    private readonly HashSet<int> years = [];

    internal CropSales(SeasonReview season, Crop crop, IEnumerable<Disposition> ofCrop)
    {
        this.season = season;
        ListPrices prices = season.Trace.Valuer.Prices;
        List<Disposition> leavings = [.. ofCrop.Where(leaving => leaving.Quantity > 0m && leaving.Window <= season.CropYear)];
        HashSet<(int, int)> clean = CleanWeeks(leavings);
        foreach (Disposition leaving in leavings.Where(leaving => leaving.Channel.IsPriced))
        {
            int week = WeekOf(leaving.Row.Date);
            decimal? list = prices.PerUnit(crop, leaving.Channel, leaving.Row.Date);
            bool full =
                list is { } price
                && leaving.Amount.Amount >= VerdictSettings.AtListPrice * price * leaving.Quantity
                && clean.Contains((leaving.Window, week));
            (int, Channel, int) key = (leaving.Window, leaving.Channel, week);
            Sales before = sales.GetValueOrDefault(key);
            sales[key] = new Sales(
                before.Quantity + leaving.Quantity,
                before.Amount + leaving.Amount.Amount,
                before.AtList + (full ? leaving.Quantity : 0m),
                before.AtListAmount + (full ? leaving.Amount.Amount : 0m)
            )
            {
                ListValue = before.ListValue + ((list ?? 0m) * leaving.Quantity),
                AllSold = clean.Contains((leaving.Window, week)),
            };
            years.Add(leaving.Window);
        }

        Channels = [.. sales.Keys.Select(key => key.Channel).Distinct().OrderBy(channel => channel.Index)];
        foreach (Channel channel in Channels.Where(channel => !sales.Any(one => one.Key.Channel == channel && one.Value.AtList > 0m)))
        {
            List<Sales> all = [.. sales.Where(one => one.Key.Channel == channel).Select(one => one.Value)];
            without[channel] = (Numbers.Median(all.Select(one => one.Quantity)), all.Sum(one => one.Amount) / all.Sum(one => one.Quantity));
        }
    }

    /// <summary>Weeks of a crop year in which nearly nothing was lost.</summary>
    private HashSet<(int, int)> CleanWeeks(List<Disposition> leavings) =>
    [
        .. leavings
            .GroupBy(leaving => (leaving.Window, WeekOf(leaving.Row.Date)))
            .Where(week => week.Where(IsLost).Sum(leaving => leaving.Quantity) < MostLost * week.Sum(leaving => leaving.Quantity))
            .Select(week => week.Key),
    ];

    /// <summary>Market, stand and buyers that ever took the crop.</summary>
    internal IReadOnlyList<Channel> Channels { get; }

    /// <summary>The week of the crop year, from 0.</summary>
    internal int WeekOf(DateOnly day) => (day.DayNumber - season.Settings.StartOf(season.Settings.WindowOf(day)).DayNumber) / 7;

    internal decimal Sold(int year, Channel channel, int week) => sales.GetValueOrDefault((year, channel, week)).Quantity;

    /// <summary>
    /// The most a channel took at list price near a week, and what a unit then brings; where nothing ever sold at list, the median week and
    /// the realized price.
    /// </summary>
    internal (decimal Most, decimal? Price) MostAtList(Channel channel, int week)
    {
        bool sold = Enumerable.Range(week - NearWeeks, (2 * NearWeeks) + 1).Any(near => years.Any(year => Sold(year, channel, near) > 0m));
        if (without.TryGetValue(channel, out (decimal Median, decimal Price) usual))
        {
            return sold ? usual : (0m, null);
        }

        decimal most = 0m;
        decimal? price = null;
        int newest = int.MinValue;
        foreach (int year in years)
        {
            for (int near = week - NearWeeks; near <= week + NearWeeks; near++)
            {
                Sales there = sales.GetValueOrDefault((year, channel, near));
                most = Math.Max(most, there.AtList);
                if (there.AtList > 0m && year >= newest)
                {
                    (newest, price) = (year, there.AtListAmount / there.AtList);
                }
            }
        }

        return (most, price);
    }

    /// <summary>
    /// What a channel took near a week, one entry for each week on record: units, list price, what it paid over list, and whether all there
    /// was sold. Weeks without a list price are left out.
    /// </summary>
    internal IEnumerable<(int Year, double Units, double List, double Paid, bool AllSold)> Near(Channel channel, int week)
    {
        foreach (int year in years)
        {
            for (int near = week - NearWeeks; near <= week + NearWeeks; near++)
            {
                Sales there = sales.GetValueOrDefault((year, channel, near));
                if (there.Quantity > 0m && there.ListValue > 0m)
                {
                    yield return (
                        year,
                        (double)there.Quantity,
                        (double)(there.ListValue / there.Quantity),
                        (double)(there.Amount / there.ListValue),
                        there.AllSold
                    );
                }
            }
        }
    }

    private static bool IsLost(Disposition leaving) => leaving.Channel.Kind is ChannelKind.Waste or ChannelKind.Donation;

    private readonly record struct Sales(decimal Quantity, decimal Amount, decimal AtList, decimal AtListAmount)
    {
        internal decimal ListValue { get; init; }

        internal bool AllSold { get; init; }
    }
}
