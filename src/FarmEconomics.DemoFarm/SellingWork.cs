namespace FarmEconomics.DemoFarm;

/// <summary>Hours of selling: the stall, the boxes, the rounds to shop and kitchen, the stand at the lane.</summary>
internal static class SellingWork
{
    public static IEnumerable<Chore> Chores(IReadOnlyList<SalesBook.Sale> sales)
    {
        foreach (var day in sales.GroupBy(s => (s.Date, s.Channel)))
        {
            var (date, channel) = day.Key;
            switch (channel)
            {
                case FarmFacts.Market:
                    var summer = date.Month is >= 5 and <= 10;
                    yield return new Chore(date, "Market day", summer ? 6m : 4.5m, Hands.Owners, Channel: channel);
                    if (summer)
                    {
                        yield return new Chore(date, "Market day", 3.5m, Hands.StallHelper, Channel: channel);
                    }

                    break;
                case FarmFacts.Share:
                    yield return new Chore(date, "Fill and hand out boxes", 3.5m, Hands.Crew, Channel: channel);
                    yield return new Chore(date, "Fill and hand out boxes", 1m, Hands.Volunteer, Channel: channel);
                    break;
                case FarmFacts.Shop or FarmFacts.Kitchen:
                    yield return new Chore(date, "Deliver", channel == FarmFacts.Shop ? 1.25m : 1m, Hands.Owners, Channel: channel);
                    break;
                case FarmFacts.Stand when date.DayOfWeek == DayOfWeek.Thursday:
                    yield return new Chore(date, "Fill the stand", 0.5m, Hands.Owners, Channel: channel);
                    break;
            }
        }
    }
}
