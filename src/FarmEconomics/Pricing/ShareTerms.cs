namespace FarmEconomics.Pricing;

/// <summary>What the records don't tell about a share: how many boxes, what for, what if. Immutable.</summary>
public sealed record ShareTerms
{
    /// <summary>Members with a full box; null: worked out from the income and <see cref="Price"/>, else not known.</summary>
    public decimal? Members { get; init; }

    /// <summary>Members with a half box, 0 or more.</summary>
    public decimal HalfMembers { get; init; }

    /// <summary>What a half box holds of a full one, above 0 to 1.</summary>
    public decimal HalfContents { get; init; } = 0.5m;

    /// <summary>Price of a full share for the season; null: the income over the full boxes' worth of members.</summary>
    public decimal? Price { get; init; }

    /// <summary>Wanted net return in percent of the price, 0 to under 100.</summary>
    public decimal WantedMarginPercent { get; init; } = 10m;

    /// <summary>How many percent of the members don't come back, 0 to under 100.</summary>
    public decimal FewerMembersPercent { get; init; } = 10m;

    /// <summary>How many percent of an average week's box is missing in a bad week, 0 to 100.</summary>
    public decimal BadWeekPercent { get; init; } = 50m;

    /// <summary>Discount for paying early in percent of the price, 0 to under 100.</summary>
    public decimal EarlyDiscountPercent { get; init; } = 5m;

    /// <summary>The part of the members who would take the discount, 0 to 1.</summary>
    public decimal EarlyMembers { get; init; } = 0.5m;

    /// <summary>How many months earlier their money comes, 0 or more.</summary>
    public decimal MonthsEarlier { get; init; } = 4m;

    /// <summary>Cost of money in percent a year; null: the farm's interest_percent.</summary>
    public decimal? InterestPercent { get; init; }

    /// <summary>Throws when a term is out of its range.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A term is out of its range; the message says which range.</exception>
    public void Check()
    {
        PriceTerms.Require(Members is null or > 0m, nameof(Members), "Members are above 0.");
        PriceTerms.Require(HalfMembers >= 0m, nameof(HalfMembers), "Members with a half box are 0 or more.");
        PriceTerms.Require(HalfContents is > 0m and <= 1m, nameof(HalfContents), "A half box holds above 0 and at most all of a full one.");
        PriceTerms.Require(Price is null or > 0m, nameof(Price), "The price of a share is above 0.");
        PriceTerms.Require(
            WantedMarginPercent is >= 0m and < 100m,
            nameof(WantedMarginPercent),
            "The wanted margin is from 0 to under 100 percent."
        );
        PriceTerms.Require(
            FewerMembersPercent is >= 0m and < 100m,
            nameof(FewerMembersPercent),
            "Members lost are from 0 to under 100 percent."
        );
        PriceTerms.Require(
            BadWeekPercent is >= 0m and <= 100m,
            nameof(BadWeekPercent),
            "What is missing in a bad week is from 0 to 100 percent."
        );
        PriceTerms.Require(
            EarlyDiscountPercent is >= 0m and < 100m,
            nameof(EarlyDiscountPercent),
            "The discount is from 0 to under 100 percent."
        );
        PriceTerms.Require(EarlyMembers is >= 0m and <= 1m, nameof(EarlyMembers), "The part of members who pay early is from 0 to 1.");
        PriceTerms.Require(MonthsEarlier >= 0m, nameof(MonthsEarlier), "Months earlier are 0 or more.");
        PriceTerms.Require(InterestPercent is null or >= 0m, nameof(InterestPercent), "Interest is 0 or more.");
    }
}
