using FarmEconomics.Records;

namespace FarmEconomics.Funding;

/// <summary>The twelve months a write-up is of: those of the crop year, counted by the dates of the rows.</summary>
/// <param name="Year">The crop year.</param>
/// <param name="Start">The first day.</param>
/// <param name="End">The first day after.</param>
public sealed record FiscalYear(int Year, DateOnly Start, DateOnly End)
{
    /// <summary>True when it is the calendar year, as Schedule F is for nearly every farm.</summary>
    public bool IsCalendarYear => Start is { Month: 1, Day: 1 };

    /// <summary>The months, as names of the first day of each.</summary>
    public IReadOnlyList<DateOnly> Months => [.. Enumerable.Range(0, 12).Select(i => Start.AddMonths(i))];

    /// <summary>The months of a crop year.</summary>
    /// <param name="settings">The settings, for the day it starts.</param>
    /// <param name="year">The crop year.</param>
    /// <returns>The fiscal year.</returns>
    public static FiscalYear Of(FarmSettings settings, int year)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return new FiscalYear(year, settings.StartOf(year), settings.EndOf(year));
    }

    /// <summary>Whether a day lies in it.</summary>
    /// <param name="day">The day.</param>
    /// <returns>True when it does.</returns>
    public bool Holds(DateOnly day) => day >= Start && day < End;

    /// <summary>The month a day lies in, from 0.</summary>
    /// <param name="day">A day in the year.</param>
    /// <returns>0 to 11.</returns>
    public int MonthOf(DateOnly day)
    {
        int month = ((day.Year - Start.Year) * 12) + day.Month - Start.Month;
        return day.Day < Start.Day && day < Start.AddMonths(month) ? month - 1 : month;
    }
}
