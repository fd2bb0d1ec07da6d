using Bogus;

namespace FarmEconomics.DemoFarm;

/// <summary>What left the farm, day by day: the stock decides what can go, the week decides through which channel.</summary>
internal sealed class SalesBook
{
    /// <summary>A row of sales; the quantity in the unit it went out in.</summary>
    public sealed record Sale(
        DateOnly Date,
        CropSpec Crop,
        string Channel,
        decimal Quantity,
        string? Unit,
        decimal Size,
        decimal? Price,
        decimal? Amount
    )
    {
        /// <summary>Money of the row, to the cent; null where it carries none.</summary>
        public decimal? Money => Amount ?? (Price is { } price ? Math.Round(price * Quantity, 2, MidpointRounding.AwayFromZero) : null);
    }

    private const decimal SmallestOrder = 10m;

    private readonly Randomizer random = FarmFacts.RandomFor(3);
    private readonly List<Sale> sales = [];
    private readonly Dictionary<string, decimal> weekly = [];
    private readonly ILookup<DateOnly, HarvestBook.Pick> picks;
    private readonly List<Stock> stocks = [.. CropList.All.Select(c => new Stock(c))];

    private SalesBook(IReadOnlyList<HarvestBook.Pick> picks) => this.picks = picks.ToLookup(p => p.Date);

    public static IReadOnlyList<Sale> Sell(IReadOnlyList<HarvestBook.Pick> picks)
    {
        var book = new SalesBook(picks);
        for (var day = FarmFacts.FirstDay; day <= FarmFacts.AsOf; day = day.AddDays(1))
        {
            book.Day(day);
        }

        return book.sales;
    }

    private void Day(DateOnly day)
    {
        if (FarmFacts.ShareDay(day))
        {
            Boxes(day);
        }

        foreach (var stock in stocks)
        {
            foreach (var pick in picks[day].Where(p => p.Planting.Crop == stock.Crop))
            {
                stock.Put(day, pick.Quantity);
            }

            if (day.DayOfWeek == DayOfWeek.Monday && stock.Crop.Keeps)
            {
                weekly[stock.Crop.Name] = WeeklyPart(stock, day);
                if (day.Day <= 7)
                {
                    Give(stock, day, FarmFacts.Compost, stock.Sound(day) * 0.02m);
                }
            }

            Sell(stock, day);
            ClearOut(stock, day);
        }
    }

    private void Sell(Stock stock, DateOnly day)
    {
        switch (day.DayOfWeek)
        {
            case DayOfWeek.Tuesday when FarmFacts.InTerm(day) && SchoolsTake(stock.Crop):
                Wholesale(stock, day, FarmFacts.Schools, stock.Crop.Keeps ? 0.16m : InShareSeason(day) ? 0.22m : 0.6m);
                break;
            case DayOfWeek.Thursday:
                if (FarmFacts.EveningMarketHeld(day))
                {
                    Stall(stock, day, FarmFacts.MarketTwo, stock.Crop.Keeps ? 0.2m : stock.Crop.StorageDays <= 2 ? 0.6m : 0.3m);
                }

                Stall(stock, day, FarmFacts.Pickup, stock.Crop.Keeps ? 0.1m : stock.Crop.StorageDays <= 2 ? 0.75m : 0.25m);
                break;
            case DayOfWeek.Friday:
                Wholesale(stock, day, FarmFacts.Shop, stock.Crop.Keeps ? 0.18m : MarketTomorrow(day) ? 0.28m : 0.8m);
                break;
            case DayOfWeek.Saturday:
                bool held = FarmFacts.MarketHeld(day);
                decimal part = !held ? 0.3m : stock.Crop.Keeps ? 0.46m : 0.96m;
                Stall(stock, day, held ? FarmFacts.Market : FarmFacts.Pickup, part);
                break;
            case DayOfWeek.Sunday:
                OurTable(stock, day);
                break;
        }
    }

    private static bool InShareSeason(DateOnly day)
    {
        var since = day.DayNumber - FarmFacts.FirstBox(day.Year).DayNumber;
        return since >= -1 && since < FarmFacts.ShareWeeks * 7;
    }

    /// <summary>School kitchens cook what children eat by the pan: no shoots, no herbs.</summary>
    private static bool SchoolsTake(CropSpec crop) =>
        crop.Group is not ("microgreens" or "herbs" or "perennials") && crop.Name != "Eggplant";

    private static bool MarketTomorrow(DateOnly day) => FarmFacts.MarketHeld(day.AddDays(1));

    /// <summary>What the store lets go in a week: enough for the boxes and the stall, no more than lasts until the end of winter.</summary>
    private static decimal WeeklyPart(Stock stock, DateOnly day)
    {
        var sound = stock.Sound(day);
        var end = new DateOnly(day.Month >= 5 ? day.Year + 1 : day.Year, 3, 20);
        var weeks = Math.Max(1, Math.Min((end.DayNumber - day.DayNumber) / 7, stock.Crop.StorageDays / 7));
        var fresh = stock.Crop.Portion * FarmFacts.Members(day.Year) * (InShareSeason(day) ? 1.05m : 0.15m);
        return Math.Min(sound, Math.Max(sound / weeks, fresh));
    }

    private decimal Offered(Stock stock, DateOnly day) =>
        stock.Crop.Keeps ? Math.Min(stock.Sound(day), weekly.GetValueOrDefault(stock.Crop.Name)) : stock.Sound(day);

    /// <summary>The schools and the shop take whole cases where the crop has one, and loose goods below that.</summary>
    private void Wholesale(Stock stock, DateOnly day, string channel, decimal part)
    {
        if (HeldTooLong(stock, day, channel))
        {
            return;
        }

        var wanted = Offered(stock, day) * part * Noise();
        var schools = channel == FarmFacts.Schools;
        var pack = SellingUnits.For(stock.Crop.Name, wholesale: true);
        var size =
            pack != null && wanted >= pack.Size * 0.75m && stock.Sound(day) >= pack.Size ? pack.Size
            : stock.Crop.Unit == "lb" ? stock.Crop.Step
            : 1m;
        var count = Math.Floor(Math.Min(Math.Max(wanted, size), stock.Sound(day)) / size);
        if (count <= 0m || wanted < size * 0.7m)
        {
            return;
        }

        var isPack = pack != null && size == pack.Size;
        var quantity = isPack ? count : count * size;
        Add(stock, day, channel, quantity, isPack ? pack!.Unit : stock.Crop.Unit, isPack ? size : 1m,
            PriceList.Wholesale(stock.Crop, day, isPack ? size : 1m, schools));
    }

    /// <summary>
    /// Fills the week's boxes until they hold a little more than members pay for them: what won't keep first, then by chance.
    /// </summary>
    private void Boxes(DateOnly day)
    {
        var members = FarmFacts.Members(day.Year);
        var worth = members * FarmFacts.SharePrice(day.Year) / FarmFacts.ShareWeeks * (1m + (random.Int(0, 120) / 1000m));
        var order = stocks
            .Where(s => s.Crop.Portion > 0m)
            .Select(s =>
                (
                    Stock: s,
                    Turn: random.Int(0, 99)
                        + (
                            s.Crop.Keeps ? 35
                            : s.Crop.Group == "greens" ? -25
                            : 0
                        )
                )
            );
        foreach (var (stock, _) in order.OrderBy(o => o.Turn).ThenBy(o => o.Stock.Crop.Name, StringComparer.Ordinal).ToList())
        {
            // Where there isn't enough for all, members choose: a third of the portions is the least worth putting out.
            var all = members * stock.Crop.Portion;
            var offered = Math.Min(all, stock.Sound(day) * (stock.Crop.Keeps ? 0.28m : 0.88m));
            var step = stock.Crop.Unit == "lb" ? 0.5m : 1m;
            var quantity = Math.Floor(offered / step) * step;
            if (worth <= 0m || quantity < all / 3m)
            {
                continue;
            }

            worth -= quantity * PriceList.Market(stock.Crop, day, 1m);
            Add(stock, day, FarmFacts.Share, quantity, stock.Crop.Unit, 1m, null);
        }
    }

    private void Stall(Stock stock, DateOnly day, string channel, decimal part)
    {
        if (LeftForSchools(stock, day))
        {
            return;
        }

        var pack = SellingUnits.For(stock.Crop.Name, wholesale: false);
        var size = pack?.Size ?? (stock.Crop.Unit == "lb" ? stock.Crop.Step : 1m);
        var count = Math.Floor(Offered(stock, day) * part * Noise() / size);
        count = Math.Min(count, Math.Floor(stock.Sound(day) / size));
        if (count <= 0m)
        {
            return;
        }

        var price = PriceList.Market(stock.Crop, day, pack?.Size ?? 1m);
        // Nobody orders two beets: what isn't worth a trip to the porch stays on hand.
        if (channel == FarmFacts.Pickup && count * price < SmallestOrder)
        {
            return;
        }

        // At the end of a short-lived glut the last of the table goes cheaper.
        if (channel == FarmFacts.Market && !stock.Crop.Keeps && random.Int(0, 99) < 6)
        {
            price = Math.Round(price * 0.8m, 2, MidpointRounding.AwayFromZero);
        }

        Add(stock, day, channel, pack != null ? count : count * size, pack?.Unit ?? stock.Crop.Unit, pack?.Size ?? 1m, price);
        Oversell(stock, day, channel, price);
    }

    private void OurTable(Stock stock, DateOnly day)
    {
        var size = stock.Crop.Unit == "lb" ? 0.5m : 1m;
        if (stock.Sound(day) >= size && random.Int(0, 99) < 24)
        {
            Give(stock, day, FarmFacts.Household, Math.Min(stock.Sound(day), size * random.Int(1, stock.Crop.Keeps ? 6 : 3)));
        }
    }

    /// <summary>What won't keep until the next day it could be sold goes to the food shelf, and what is past that to the compost.</summary>
    private void ClearOut(Stock stock, DateOnly day)
    {
        var ending = stock.Ending(day, 1);
        if (ending <= 0m || LeftForSchools(stock, day))
        {
            return;
        }

        var given = Math.Floor(ending * 0.7m / stock.Crop.Step) * stock.Crop.Step;
        if (stock.Crop.Keeps)
        {
            given = Math.Floor(ending * 0.4m / stock.Crop.Step) * stock.Crop.Step;
        }

        Give(stock, day, FarmFacts.Donation, given, exact: true);
        Give(stock, day, FarmFacts.Compost, ending - given, exact: true);
    }

    private void Give(Stock stock, DateOnly day, string channel, decimal quantity, bool exact = false)
    {
        var part = exact ? quantity : Math.Floor(quantity / stock.Crop.Step) * stock.Crop.Step;
        if (part > 0m)
        {
            Add(stock, day, channel, part, stock.Crop.Unit, 1m, null);
        }
    }

    private void Add(Stock stock, DateOnly day, string channel, decimal quantity, string unit, decimal size, decimal? price)
    {
        stock.Draw(quantity * size);
        // Some rows carry the amount in the till instead of a price, some no unit where it is the crop's own.
        var asAmount = price != null && random.Int(0, 99) < 12;
        var amount = asAmount ? Math.Round(price!.Value * quantity, 2, MidpointRounding.AwayFromZero) : (decimal?)null;
        var noUnit = unit == stock.Crop.Unit && random.Int(0, 99) < 5;
        sales.Add(new Sale(day, stock.Crop, channel, quantity, noUnit ? null : unit, size, asAmount ? null : price, amount));
    }

    private decimal Noise() => 0.85m + (random.Int(0, 300) / 1000m);

    /// <summary>
    /// Planned gap: on the last market day of the oversold crop everything goes, and a little that was never written down.
    /// </summary>
    private void Oversell(Stock stock, DateOnly day, string channel, decimal price)
    {
        if (stock.Crop.Name != PlannedGaps.CropOversold || channel != FarmFacts.Market || day != PlannedGaps.DayOversold)
        {
            return;
        }

        var rest = stock.All;
        stock.Draw(rest);
        sales.Add(new Sale(day, stock.Crop, channel, rest + PlannedGaps.Oversold, stock.Crop.Unit, 1m, price, null));
    }

    /// <summary>Planned gap: the lot is kept back for the schools, which fetch it four days late.</summary>
    private static bool LeftForSchools(Stock stock, DateOnly day) =>
        stock.Crop.Name == PlannedGaps.CropHeldTooLong && day >= PlannedGaps.DayKeptBack && day < PlannedGaps.DayFetchedLate;

    private bool HeldTooLong(Stock stock, DateOnly day, string channel)
    {
        if (stock.Crop.Name != PlannedGaps.CropHeldTooLong || day != PlannedGaps.DayFetchedLate || channel != FarmFacts.Schools)
        {
            return false;
        }

        Add(stock, day, channel, stock.All, stock.Crop.Unit, 1m, PriceList.Wholesale(stock.Crop, day, 1m, true));
        return true;
    }
}
