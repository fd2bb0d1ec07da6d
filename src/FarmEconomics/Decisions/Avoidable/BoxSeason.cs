using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Avoidable;

/// <summary>The boxes of one share channel in one crop year, in delivery weeks: sevens of days from the first delivery.</summary>
internal sealed class BoxSeason
{
    private readonly DateOnly first;
    private readonly Dictionary<int, List<Disposition>> weeks;
    private readonly Dictionary<(int Week, Crop Crop), decimal> quantities;
    private readonly Dictionary<Crop, decimal> most;

    internal BoxSeason(Channel channel, int window, List<Disposition> leavings, Money paid, Dictionary<Crop, decimal> most)
    {
        Channel = channel;
        Window = window;
        Paid = paid;
        this.most = most;
        first = leavings.Min(leaving => leaving.Row.Date);
        weeks = leavings.GroupBy(leaving => WeekOf(leaving.Row.Date)).ToDictionary(week => week.Key, week => week.ToList());
        quantities = leavings
            .GroupBy(leaving => (WeekOf(leaving.Row.Date), leaving.Crop))
            .ToDictionary(item => item.Key, item => item.Sum(leaving => leaving.Quantity));
    }

    internal Channel Channel { get; }

    internal int Window { get; }

    /// <summary>What members paid for the crop year.</summary>
    internal Money Paid { get; }

    /// <summary>Payments over delivery weeks, to the cent.</summary>
    internal Money PaidPerWeek => Money.Rounded(Math.Max(0m, Paid.Amount) / weeks.Count);

    internal Money AllListValue => Money.Sum(weeks.Keys.Select(ListValue));

    /// <summary>The most each crop ever had in one week's boxes of a channel, all years on record.</summary>
    internal static Dictionary<Crop, decimal> Most(IEnumerable<IGrouping<(Channel Channel, int Window), Disposition>> years)
    {
        Dictionary<Crop, decimal> most = [];
        foreach (IGrouping<(Channel Channel, int Window), Disposition> year in years)
        {
            DateOnly start = year.Min(leaving => leaving.Row.Date);
            foreach (
                IGrouping<(int, Crop), Disposition> week in year.GroupBy(leaving =>
                    ((leaving.Row.Date.DayNumber - start.DayNumber) / 7, leaving.Crop)
                )
            )
            {
                most[week.Key.Item2] = Math.Max(most.GetValueOrDefault(week.Key.Item2), week.Sum(leaving => leaving.Quantity));
            }
        }

        return most;
    }

    internal int WeekOf(DateOnly day) => (day.DayNumber - first.DayNumber) / 7;

    internal DateOnly FirstDay(int week) => first.AddDays(7 * week);

    /// <summary>The first day of a week on which boxes went out.</summary>
    internal DateOnly DayOf(int week) => weeks[week].Min(leaving => leaving.Row.Date);

    /// <summary>List value of a week's boxes; credits count 0.</summary>
    internal Money ListValue(int week) => Money.Sum(weeks[week].Select(leaving => new Money(Math.Max(0m, leaving.ListValue.Amount))));

    internal decimal Quantity(int week, Crop crop) => quantities.GetValueOrDefault((week, crop));

    internal decimal MostEver(Crop crop) => most.GetValueOrDefault(crop);
}
