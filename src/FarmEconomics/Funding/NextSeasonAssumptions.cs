using FarmEconomics.Records;

namespace FarmEconomics.Funding;

/// <summary>Next season against last season, and how crops are told per area.</summary>
public sealed record NextSeasonAssumptions
{
    internal const string PathName = "path_width";

    internal static IReadOnlyList<AssumptionEntry> Entries { get; } =
    [
        new NumberEntry("area_factor", "Area next season", "x", "area of next season against last season's, every crop")
        { Most = 1000m, Get = a => a.NextSeason.Area, Set = (a, v) => a with { NextSeason = a.NextSeason with { Area = v } } },
        new NumberEntry("yield_factor", "Yield next season", "x", "yield per length of bed against last season's")
        { Most = 1000m, Get = a => a.NextSeason.Yield, Set = (a, v) => a with { NextSeason = a.NextSeason with { Yield = v } } },
        new NumberEntry("price_factor", "Prices next season", "x", "prices against last season's")
        { Most = 1000m, Get = a => a.NextSeason.Price, Set = (a, v) => a with { NextSeason = a.NextSeason with { Price = v } } },
        new NumberEntry("wage_factor", "Wages next season", "x", "value of an hour, hired and unpaid, against last season's")
        { Most = 1000m, Get = a => a.NextSeason.Wage, Set = (a, v) => a with { NextSeason = a.NextSeason with { Wage = v } } },
        new NumberEntry("cost_factor", "Other costs next season", "x", "all other costs against last season's")
        { Most = 1000m, Get = a => a.NextSeason.Cost, Set = (a, v) => a with { NextSeason = a.NextSeason with { Cost = v } } },
        new NumberEntry(
            PathName, "Path between two beds", "in",
            "with the standard bed width it says how many bed-feet an acre holds ({figure} is common practice, no source)")
        {
            Names = notation => notation.Text($"{UsualPath(notation.LengthUnit)} {notation.LengthUnit.WidthShort()}"),
            Get = a => a.NextSeason.PathWidth,
            Set = (a, v) => a with { NextSeason = a.NextSeason with { PathWidth = v } },
        },
    ];

    /// <summary>Area against last season's, 0 to 1,000.</summary>
    public decimal Area { get; init; } = 1m;

    /// <summary>Yield per length of bed against last season's, 0 to 1,000.</summary>
    public decimal Yield { get; init; } = 1m;

    /// <summary>Prices against last season's, 0 to 1,000.</summary>
    public decimal Price { get; init; } = 1m;

    /// <summary>Value of an hour against last season's, 0 to 1,000.</summary>
    public decimal Wage { get; init; } = 1m;

    /// <summary>All other costs against last season's, 0 to 1,000.</summary>
    public decimal Cost { get; init; } = 1m;

    /// <summary>Path between two beds in inches, or centimeters on a farm that measures in meters; null: 18 in or 45 cm.</summary>
    public decimal? PathWidth { get; init; }

    /// <summary>The width of the paths.</summary>
    /// <param name="unit">The farm's unit of lengths.</param>
    /// <returns>Inches, or centimeters on a farm that measures in meters; 0 or more.</returns>
    public decimal PathWidthIn(LengthUnit unit) => PathWidth ?? UsualPath(unit);

    private static decimal UsualPath(LengthUnit unit) => unit == LengthUnit.M ? 45m : 18m;
}
