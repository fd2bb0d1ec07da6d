namespace FarmEconomics.ProvingGround.World;

/// <summary>An invented farm whose truth is known. Weeks are counted from 0, the week of January 1, to 51.</summary>
internal sealed class Farm
{
    internal const int Weeks = 52;
    internal const int Covers = 2;

    internal required int Seed { get; init; }

    internal required Crop[] Crops { get; init; }

    internal required Outlet[] Outlets { get; init; }

    /// <summary>Bed-feet by cover.</summary>
    internal double[] BedFeet { get; } = new double[Covers];

    internal required Shares Shares { get; init; }

    internal required Labor Labor { get; init; }

    internal required Traits Traits { get; init; }

    /// <summary>Bed-feet sown today, by crop and week.</summary>
    internal double[][] Today { get; set; } = [];

    /// <summary>Hours of a week that no plan changes: trips, box day, overhead.</summary>
    internal double FixedHours(int week) =>
        Labor.Overhead + Outlets.Where(outlet => outlet.IsOpen(week)).Sum(outlet => outlet.TripHours)
            + (Shares.IsOpen(week) ? Shares.BoxHours : 0.0);
}

/// <summary>A channel with prices of its own.</summary>
/// <param name="Name">Its name in the records.</param>
/// <param name="Kind">Its kind in the records.</param>
/// <param name="Fee">Part of sales that goes in fees, 0 to 1.</param>
/// <param name="Season">First and last week it is open.</param>
/// <param name="Trip">Hours and $ a week it is open.</param>
internal sealed record Outlet(string Name, string Kind, double Fee, (int First, int Last) Season, (double Hours, double Money) Trip)
{
    internal double TripHours => Trip.Hours;

    internal bool IsOpen(int week) => week >= Season.First && week <= Season.Last;
}

/// <summary>Boxes that members paid in advance.</summary>
/// <param name="Members">How many.</param>
/// <param name="Payment">$ a member a year.</param>
/// <param name="BuyIn">What a dollar of list value costs to buy in, $.</param>
internal sealed record Shares(int Members, double Payment, double BuyIn)
{
    private const int First = 22;
    private const int Last = 41;

    internal double BoxHours => Members == 0 ? 0.0 : 1.5 + (0.04 * Members);

    /// <summary>List value the boxes of a week must hold: payments of the year over its delivery weeks, $.</summary>
    internal double Target => Members * Payment / (Last - First + 1);

    internal bool IsOpen(int week) => Members > 0 && week is >= First and <= Last;
}

/// <summary>Who works: own hours and hours that can be hired a week, and what they cost.</summary>
internal sealed class Labor
{
    internal double Own { get; set; }

    internal double Hired { get; set; }

    internal required double OwnerWage { get; init; }

    internal required double HiredWage { get; init; }

    internal required double Overhead { get; init; }

    /// <summary>$ an hour hired with payroll taxes.</summary>
    internal double HiredCost => HiredWage * (1.0 + PayrollTax);

    internal const double PayrollTax = 0.09;

    /// <summary>Hours that can be hired in a week: only in the season.</summary>
    internal double HiredIn(int week) => week is >= 12 and <= 46 ? Hired : 0.0;
}

/// <summary>How a world differs from others.</summary>
/// <param name="Beds">Peak use of beds by habit / beds there are; 1 is tight.</param>
/// <param name="Hours">Peak hours by habit / hours there are; above 1 is short.</param>
/// <param name="Market">What channels take / what habit grows.</param>
/// <param name="Logged">Part of labor rows that name a crop, 0 to 1.</param>
/// <param name="Skill">How far today's plan has come from habit to the best, 0 to 1.</param>
internal sealed record Traits(double Beds, double Hours, double Market, double Logged, double Skill)
{
    /// <summary>What prices, wages and costs rose by a year in the records, as a fraction.</summary>
    internal required double Inflation { get; init; }
}
