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
    public const string Kitchen = "Millrace Kitchen";
    public const string Stand = "Lane Stand";
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
    public static int Members(int year) => year switch { 2023 => 34, 2024 => 35, _ => 36 };

    /// <summary>What a share costs for the season of <see cref="ShareWeeks"/> boxes.</summary>
    public static decimal SharePrice(int year) => year switch { 2023 => 575m, 2024 => 598m, _ => 615m };

    public const int ShareWeeks = 23;

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

    /// <summary>True when the market is held that day: every Saturday May to October, the first and third of the other months.</summary>
    public static bool MarketHeld(DateOnly day) =>
        day.DayOfWeek == DayOfWeek.Saturday
        && (day.Month is >= 5 and <= 10 || (day.Day - 1) / 7 is 0 or 2);

    /// <summary>True when a share box goes out that day.</summary>
    public static bool ShareDay(DateOnly day)
    {
        var since = day.DayNumber - FirstBox(day.Year).DayNumber;
        return since >= 0 && since % 7 == 0 && since / 7 < ShareWeeks;
    }
}
