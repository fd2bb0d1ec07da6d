using System.Collections.Concurrent;
using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Avoidable;

/// <summary>
/// Refills boxes (docs/methods.md, section 16): a week's boxes are to be worth what they were, but no more than the week's part of the
/// payments. The gap is filled with what costs least per dollar of list value: from lots of other crops that still keep on the day of the
/// boxes, of no crop more in a week than the most it ever had in one, nothing twice; the rest is bought in.
/// </summary>
internal sealed class BoxFiller
{
    // A part of a lot that fills a gap is cut in units of 10^-8, as all quantities are.
    private const int QuantityDecimals = 8;

    private readonly SeasonReview season;
    private readonly Dictionary<Crop, decimal> packaging;
    private readonly List<BoxSeason> seasons = [];
    private readonly ConcurrentDictionary<(BoxSeason, int), List<BoxSupply>> supplies = [];
    private readonly ListPrices prices;

    internal BoxFiller(SeasonReview season, Dictionary<Crop, decimal> packaging)
    {
        this.season = season;
        this.packaging = packaging;
        prices = season.Trace.Valuer.Prices;
        ILookup<(Channel, int), Disposition> boxes = season.Trace.Dispositions.Where(leaving => leaving.Channel.Kind == ChannelKind.Share)
            .ToLookup(leaving => (leaving.Channel, leaving.Window));
        HashSet<(Channel, int)> concerned =
        [
            .. season
                .DispositionParts.Where(part => part.Enterprise is not null && part.Disposition.Channel.Kind == ChannelKind.Share)
                .Select(part => (part.Disposition.Channel, part.Disposition.Window)),
        ];
        foreach ((Channel channel, int window) in concerned.OrderBy(key => key.Item1.Index).ThenBy(key => key.Item2))
        {
            Money paid = season.Trace.ShareIncome.GetValueOrDefault((channel, window));
            seasons.Add(
                new BoxSeason(
                    channel,
                    window,
                    [.. boxes[(channel, window)]],
                    paid,
                    BoxSeason.Most(boxes.Where(group => group.Key.Item1 == channel))
                )
            );
        }
    }

    /// <summary>Refills what crops leave out of the boxes.</summary>
    internal Refill Without(IReadOnlySet<Crop> gone, decimal part, IReadOnlySet<Crop> goneToo)
    {
        List<RefillItem> items = [];
        HashSet<Crop> unavailable = [.. gone, .. goneToo];
        List<BoxWeek> weeks = [];
        HashSet<BoxSeason> touched = [];
        Dictionary<BoxSupply, decimal> used = new(BoxSupply.SameGoods);
        foreach (BoxSeason box in seasons)
        {
            ILookup<int, DispositionPart> missing = gone.SelectMany(season.PartsOf)
                .Where(one => one.Enterprise is not null && one.Disposition.Channel == box.Channel && one.Disposition.Window == box.Window)
                .ToLookup(one => box.WeekOf(one.Disposition.Row.Date));
            foreach (IGrouping<int, DispositionPart> week in missing.OrderBy(week => week.Key))
            {
                Money taken = Money.Rounded(week.Sum(one => Math.Max(0m, one.ListValue.Amount)) * part);
                Money before = box.ListValue(week.Key);
                Money target = new(Math.Min(before.Amount, box.PaidPerWeek.Amount));
                Money gap = new(Math.Max(0m, (target - (before - taken)).Amount));
                if (taken != Money.Zero)
                {
                    touched.Add(box);
                    Fill(box, week.Key, gap, unavailable, used, items);
                    weeks.Add(new BoxWeek(box.Channel, box.FirstDay(week.Key), box.PaidPerWeek, before, taken, gap));
                }
            }
        }

        return new Refill(items, weeks, Money.Sum(touched.Select(box => box.Paid)), Money.Sum(touched.Select(box => box.AllListValue)));
    }

    private void Fill(BoxSeason box, int week, Money gap, HashSet<Crop> gone, Dictionary<BoxSupply, decimal> used, List<RefillItem> items)
    {
        Dictionary<Crop, decimal> room = [];
        DateOnly day = box.DayOf(week);
        foreach (BoxSupply supply in Supplies(box, week).Where(supply => !gone.Contains(supply.Crop)))
        {
            if (gap.Amount <= 0m)
            {
                return;
            }

            decimal free = room.TryGetValue(supply.Crop, out decimal left)
                ? left
                : Math.Max(0m, box.MostEver(supply.Crop) - box.Quantity(week, supply.Crop));
            decimal quantity = Math.Min(free, supply.Quantity - used.GetValueOrDefault(supply));
            Money value = supply.Worth(quantity);
            if (value.Amount > gap.Amount)
            {
                (quantity, value) = (decimal.Round(gap.Amount / supply.ListPrice, QuantityDecimals, MidpointRounding.AwayFromZero), gap);
            }

            if (value.Amount > 0m)
            {
                Money lost = Money.Rounded(quantity * supply.LostPerUnit);
                items.Add(new RefillItem(box.Channel, day, supply.Source, supply.Crop, supply.From, quantity, value, lost));
                room[supply.Crop] = free - quantity;
                used[supply] = used.GetValueOrDefault(supply) + quantity;
                gap -= value;
            }
        }

        if (gap.Amount > 0m)
        {
            Money paid = Money.Rounded(gap.Amount * season.Settings.BuyInPercent / 100m);
            items.Add(new RefillItem(box.Channel, day, RefillSource.BoughtIn, null, null, 0m, gap, paid));
        }
    }

    /// <summary>What could go into a week's boxes, what costs least per dollar of list value first.</summary>
    private List<BoxSupply> Supplies(BoxSeason box, int week) => supplies.GetOrAdd((box, week), _ => FindSupplies(box, week));

    private List<BoxSupply> FindSupplies(BoxSeason box, int week)
    {
        DateOnly day = box.DayOf(week);
        List<BoxSupply> found = [];
        Dictionary<Crop, (decimal Amount, decimal Quantity)?> listed = [];
        foreach (
            Lot lot in season
                .Trace.Lots.TakeWhile(lot => lot.Date <= day)
                .Where(lot => lot.KeptUntil >= day && box.MostEver(lot.Enterprise.Crop) > 0m)
        )
        {
            Crop crop = lot.Enterprise.Crop;
            if (!listed.TryGetValue(crop, out (decimal Amount, decimal Quantity)? price))
            {
                listed[crop] = price = prices.Of(crop, box.Channel, day);
            }

            if (price is { Amount: > 0m } list)
            {
                found.AddRange(BoxSupply.Of(lot, list, packaging.GetValueOrDefault(crop), season.Records.AsOf));
            }
        }

        found.Sort(BoxSupply.CheapestFirst);
        return found;
    }
}
