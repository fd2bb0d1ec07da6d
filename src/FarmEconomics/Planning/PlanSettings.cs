namespace FarmEconomics.Planning;

/// <summary>The assumptions a plan rests on; none has a published source, they are our own and printed with every plan.</summary>
public sealed record PlanSettings
{
    /// <summary>What an own hour is worth, money; null: as farm.csv says, else as workers.csv did, else 0.</summary>
    public decimal? OwnWage { get; init; }

    /// <summary>Cash at the beginning of the year planned, money; null: not known, and cash by month isn't limited.</summary>
    public decimal? OpeningCash { get; init; }

    /// <summary>What customers still owe at that time for what the season sold, money.</summary>
    public decimal UnpaidInvoices { get; init; }

    /// <summary>Price elasticity of demand in every channel, by size; null: each channel's own, 2 unless it says otherwise.</summary>
    public decimal? Elasticity { get; init; }

    /// <summary>Least bed-feet of a crop over the year, by its name: the grower's wish.</summary>
    public IReadOnlyDictionary<string, decimal> Least { get; init; } = new Dictionary<string, decimal>();

    /// <summary>Most bed-feet of a crop over the year, by its name: the grower's wish.</summary>
    public IReadOnlyDictionary<string, decimal> Most { get; init; } = new Dictionary<string, decimal>();

    /// <summary>So many plantings near a week count as much as the crop's mean: b = n / (n + this).</summary>
    public static double MeanCounts => 4.0;

    /// <summary>How many weeks on either side are near.</summary>
    public static int NearWeeks => 2;

    /// <summary>Plantings of a crop at most so many weeks apart are of one season, and between them it may be sown in any week.</summary>
    public static int GapWeeks => 6;

    /// <summary>The part of weekly own hours on record that is the most one counts on, 0 to 1.</summary>
    public static double OwnHoursPart => 0.9;

    /// <summary>How far what a channel takes moves from week to week, as the standard deviation of its logarithm.</summary>
    public static double DemandSpread => 0.2;

    /// <summary>
    /// What a bed-foot more or fewer than this year must bring, as a part of what a bed-foot brings on average; found on the invented farms
    /// of docs/advice.md.
    /// </summary>
    public static double ChangePart => 0.05;

    /// <summary>The part of the best plan's gain another plan must still earn, 0 to 1.</summary>
    public static double NearlyAsGood => 0.98;

    /// <summary>How many times the dearer of an own and a hired hour one costs that nobody has, where given lengths are scored.</summary>
    public static double MissingHours => 3.0;

    /// <summary>The worst part of the seasons a robust plan looks at, 0 to 1.</summary>
    public static double WorstPart => 0.2;

    /// <summary>How many seasons are drawn to judge a plan by.</summary>
    public static int DrawnSeasons => 1000;

    /// <summary>How many weighted seasons, chosen among the drawn ones, a plan is made for.</summary>
    public static int ChosenSeasons => 4;
}
