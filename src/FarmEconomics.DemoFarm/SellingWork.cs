namespace FarmEconomics.DemoFarm;

/// <summary>Hours of selling: the markets, the boxes, the rounds to shop and schools, the orders for pickup.</summary>
internal static class SellingWork
{
    public static IEnumerable<Chore> Chores(IReadOnlyList<SalesBook.Sale> sales) => MarketsLost().Concat(Days(sales));

    // A market lost to the weather still took the drive there and back.
    private static IEnumerable<Chore> MarketsLost()
    {
        for (var day = FarmFacts.FirstDay; day <= FarmFacts.AsOf; day = day.AddDays(1))
        {
            if (SeasonWeather.MarketLost(day))
            {
                var channel = FarmFacts.MarketDue(day) ? FarmFacts.Market : FarmFacts.MarketTwo;
                yield return new Chore(day, "Market day", 2m, Hands.Owners, Channel: channel);
            }
        }
    }

    private static IEnumerable<Chore> Days(IReadOnlyList<SalesBook.Sale> sales)
    {
        foreach (var day in sales.GroupBy(s => (s.Date, s.Channel)))
        {
            var (date, channel) = day.Key;
            switch (channel)
            {
                case FarmFacts.Market:
                    var summer = date.Month is >= 5 and <= 10;
                    yield return new Chore(date, "Market day", summer ? 7.5m : 5.5m, Hands.Owners, Channel: channel);
                    if (summer)
                    {
                        yield return new Chore(date, "Market day", 3.5m, Hands.StallHelper, Channel: channel);
                    }

                    break;
                case FarmFacts.MarketTwo:
                    yield return new Chore(date, "Market day", 4.5m, Hands.Owners, Channel: channel);
                    break;
                case FarmFacts.Share:
                    yield return new Chore(date, "Fill and hand out boxes", 4.5m, Hands.Crew, Channel: channel);
                    yield return new Chore(date, "Fill and hand out boxes", 1m, Hands.Volunteer, Channel: channel);
                    break;
                case FarmFacts.Shop or FarmFacts.Schools:
                    yield return new Chore(date, "Deliver", channel == FarmFacts.Shop ? 1.25m : 1.5m, Hands.Owners, Channel: channel);
                    break;
                case FarmFacts.Pickup:
                    yield return new Chore(date, "Pack orders", 1.25m, Hands.Owners, Channel: channel);
                    break;
            }
        }
    }
}
