using Bogus;

namespace FarmEconomics.DemoFarm;

/// <summary>The seed, the names and the dates of the invented farm: one place, so that another farm is one edit away.</summary>
/// <remarks>Every name here is made up, the place included. Nothing is taken from a real farm.</remarks>
public static class FarmFacts
{
    public const int Seed = 20_230_101;

    public const string FarmName = "Quillfrost Acre";
    public const string Market = "Saturday Market";
    public const string Share = "Harvest Share";
    public const string Shop = "Juniper Shop";
    public const string Schools = "Millrace Schools";
    public const string Pickup = "Porch Pickup";
    public const string MarketTwo = "Depot Market";
    public const string Household = "Our Table";
    public const string Donation = "Food Shelf";
    public const string Compost = "Compost Heap";
    public const string Workshops = "Workshops";

    public const string OwnerOne = "Maren";
    public const string OwnerTwo = "Tobit";
    public const string Lead = "Isolde";
    public const string CrewTwo = "Fenn";
    public const string CrewThree = "Kasimir";
    public const string MarketHelper = "Pru";
    public const string Volunteer = "Aldous";

    /// <summary>Members of the share program by year; the third season is the largest.</summary>
    public static int Members(int year) => year switch { 2023 => 41, 2024 => 41, _ => 42 };

    /// <summary>What a share costs for the season of <see cref="ShareWeeks"/> boxes.</summary>
    public static decimal SharePrice(int year) => year switch { 2023 => 590m, 2024 => 605m, 2025 => 620m, _ => 640m };

    public const int ShareWeeks = 20;

    /// <summary>First Wednesday a box is handed out.</summary>
    public static DateOnly FirstBox(int year)
    {
        var day = new DateOnly(year, 6, 1);
        while (day.DayOfWeek != DayOfWeek.Wednesday)
        {
            day = day.AddDays(1);
        }

        return day;
    }

    public static readonly DateOnly FirstDay = new(2023, 1, 1);
    public static readonly DateOnly AsOf = new(2026, 2, 28);
    public static readonly int[] Years = [2023, 2024, 2025];

    /// <summary>A random source of its own for each topic, so that a change in one table leaves the others as they were.</summary>
    public static Randomizer RandomFor(int topic) => new(Seed + topic);

    /// <summary>
    /// True when the Saturday market is held that day: every Saturday May to October, the first and third of the other months, save those
    /// lost to the weather.
    /// </summary>
    public static bool MarketHeld(DateOnly day) => MarketDue(day) && !SeasonWeather.MarketLost(day);

    /// <summary>True when the Saturday market stands in the calendar.</summary>
    public static bool MarketDue(DateOnly day) =>
        day.DayOfWeek == DayOfWeek.Saturday
        && (day.Month is >= 5 and <= 10 || (day.Day - 1) / 7 is 0 or 2);

    /// <summary>
    /// True when the evening market at the depot is held: Thursdays from June to the middle of September, save those lost to the weather.
    /// </summary>
    public static bool EveningMarketHeld(DateOnly day) => EveningMarketDue(day) && !SeasonWeather.MarketLost(day);

    /// <summary>True when the evening market stands in the calendar.</summary>
    public static bool EveningMarketDue(DateOnly day) =>
        day.DayOfWeek == DayOfWeek.Thursday && day.DayOfYear is >= 152 and <= 258;

    /// <summary>
    /// True in the school term: the school kitchens buy nothing from the middle of June to late August, nor at midwinter.
    /// </summary>
    public static bool InTerm(DateOnly day) => day.DayOfYear is (> 6 and < 165) or (> 236 and < 354);

    /// <summary>True when a share box goes out that day.</summary>
    public static bool ShareDay(DateOnly day)
    {
        var since = day.DayNumber - FirstBox(day.Year).DayNumber;
        return since >= 0 && since % 7 == 0 && since / 7 < ShareWeeks;
    }
}
