using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Pricing;

/// <summary>
/// Makes prices of costs: floor = what units sold outside boxes must bring for the farm to net what it nets without the crop / (1 - fee);
/// full cost = all cost / (1 - fee); target = (cost but labor + hours x wanted) / (1 - fee), or all cost / (1 - fee - margin). Source:
/// cost-based pricing as extension guides teach it (variable cost as the floor, total cost in the long run, a markup for the return
/// wanted); common practice, no one source.
/// </summary>
public sealed class PriceRules
{
    private readonly Notation notation;

    internal PriceRules(SeasonReview season, PriceTerms terms)
    {
        terms.Check();
        Terms = terms;
        Known = season.Known;
        notation = season.Notation;
        WantedPerHour = terms.WantedPerHour is { } wanted ? Result.Known(wanted) : DefaultWanted(season);
    }

    private PriceRules(PriceRules other)
    {
        (Terms, Known, notation, WantedPerHour) = (other.Terms, other.Known, other.notation, other.WantedPerHour);
    }

    /// <summary>What the grower wants.</summary>
    public PriceTerms Terms { get; }

    /// <summary>What the season's records can't tell.</summary>
    public Availability Known { get; private init; }

    /// <summary>The wanted return per hour that counts.</summary>
    public Result WantedPerHour { get; }

    /// <summary>The target in words.</summary>
    public string TargetInWords => Terms.WantedMarginPercent is { } margin
        ? notation.Text($"{margin:0.##}% of the price left after all cost")
        : WantedPerHour.Value is { } wanted ? notation.Text($"{wanted:0.00} per labor hour") : $"not available: {WantedPerHour.Reason}";

    /// <summary>Why the cost a price must cover isn't known, floor first; null when it is.</summary>
    internal string? FloorMissing => Known.Costs ?? Known.LaborCost ?? Known.OwnerLabor;

    internal string? FullMissing => FloorMissing ?? Known.Ownership ?? Known.Establishment;

    internal string? HoursMissing => Known.Costs ?? Known.Hours ?? Known.Ownership ?? Known.Establishment;

    /// <summary>The same for a crop, which may be a perennial whose establishment isn't known.</summary>
    internal PriceRules For(EnterpriseBudget crop) =>
        crop.Known.Establishment is { } reason ? new PriceRules(this) { Known = Known with { Establishment = reason } } : this;

    internal PriceSet Price(UnitCost production, UnitCost channel, decimal feePercent, Result floorCost)
    {
        UnitCost all = production + channel;
        Result floor = PriceMath.GrossUp(FloorMissing is { } missing ? Result.NotAvailable(missing) : floorCost, feePercent);
        Result full = PriceMath.GrossUp(Of(all.Full, FullMissing), feePercent);
        Result target = Target(all, feePercent);
        bool lifted = target.Value is { } wanted && full.Value is { } cost && wanted < cost;
        return new PriceSet(floor, full, lifted ? full : target, lifted);
    }

    /// <summary>Prices where the channel's own cost follows the price: so much of each unit of money taken there.</summary>
    internal PriceSet PriceElsewhere(UnitCost production, UnitCost perMoney, decimal feePercent, Result floorCost)
    {
        Result floor = PriceMath.GrossUp(FloorMissing is { } missing ? Result.NotAvailable(missing) : floorCost, feePercent);
        Result full = PriceMath.GrossUp(Of(production.Full, FullMissing), feePercent, perMoney.Full * 100m);
        Result target = Terms.WantedMarginPercent is { } margin
            ? PriceMath.GrossUp(Of(production.Full, FullMissing), feePercent, (perMoney.Full * 100m) + margin)
            : WantedPerHour.Value is { } wanted
                ? PriceMath.GrossUp(
                    Of(production.Other + (production.Hours * wanted), HoursMissing),
                    feePercent,
                    (perMoney.Other + (perMoney.Hours * wanted)) * 100m
                )
            : WantedPerHour;
        bool lifted = target.Value is { } asked && full.Value is { } cost && asked < cost;
        return new PriceSet(floor, full, lifted ? full : target, lifted);
    }

    internal Result Target(UnitCost all, decimal feePercent)
    {
        if (Terms.WantedMarginPercent is { } margin)
        {
            return PriceMath.GrossUp(Of(all.Full, FullMissing), feePercent, margin);
        }

        return WantedPerHour.Value is { } wanted
            ? PriceMath.GrossUp(Of(all.Other + (all.Hours * wanted), HoursMissing), feePercent)
            : WantedPerHour;
    }

    private static Result Of(decimal value, string? missing) => missing is null ? Result.Known(value) : Result.NotAvailable(missing);

    private static Result DefaultWanted(SeasonReview season)
    {
        if ((season.Known.Hours ?? season.Known.LaborCost ?? season.Known.OwnerLabor) is { } missing)
        {
            return Result.NotAvailable($"give a wanted return per hour, or a margin ({missing})");
        }

        return (season.Farm.LaborCost / season.Farm.LaborHours).Value is { } cost
            ? Result.Known(decimal.Ceiling(cost * 1.25m))
            : Result.NotAvailable("no labor hours; give a wanted margin");
    }
}
