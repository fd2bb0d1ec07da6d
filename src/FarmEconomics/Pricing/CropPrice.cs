using FarmEconomics.Decisions;
using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Pricing;

/// <summary>
/// Floor, full cost and target of one unit, grossed up for the channel's fee; in the farm's currency per unit, unrounded.
/// </summary>
/// <param name="Floor">The price of units sold outside boxes at which the farm nets what it nets without the crop, refilling of boxes
/// included; below it growing the crop costs the farm money now.</param>
/// <param name="FullCost">Covers everything, its part of fixed and channel cost included: what must be earned in the long run.</param>
/// <param name="Target">Gives the wanted return per hour or margin; never under full cost.</param>
/// <param name="TargetIsFullCost">True when the wanted return is below what labor cost anyway, so that full cost stands in for the
/// target.</param>
public sealed record PriceSet(Result Floor, Result FullCost, Result Target, bool TargetIsFullCost)
{
    /// <summary>The same for another unit.</summary>
    /// <param name="baseUnits">How many of the crop's own units it holds, above 0.</param>
    /// <returns>The prices per that unit.</returns>
    public PriceSet For(decimal baseUnits)
    {
        return new(Floor.Map(Times), FullCost.Map(Times), Target.Map(Times), TargetIsFullCost);

        decimal Times(decimal price) => price * baseUnits;
    }
}

/// <summary>What a crop brought in one month through one channel.</summary>
/// <param name="Month">The first day of the month.</param>
/// <param name="Price">Money per unit of the crop.</param>
public sealed record MonthPrice(DateOnly Month, Result Price);

/// <summary>Somebody else's price, kept apart from the farm's own.</summary>
/// <param name="Row">The row of the prices table.</param>
/// <param name="PerUnit">Per unit of the crop.</param>
public sealed record ReferencePrice(PriceRow Row, decimal PerUnit);

/// <summary>
/// The prices of one crop in one channel, beside what it brought. Prices are per unit of the crop; <see cref="InUnit"/> turns them into
/// another.
/// </summary>
public sealed class CropPrice
{
    private readonly UnitCost cost;
    private readonly PriceTerms terms;
    private readonly PriceRules rules;

    internal CropPrice(CropCost crop, CropChannel sold, PriceRules rules, YieldHistory yields, SensitivityModel model)
    {
        Cost = crop;
        Sold = sold;
        terms = rules.Terms;
        this.rules = rules;
        Yields = yields;
        FeePercent = sold.Channel.Row.FeePercent ?? 0m;
        ChannelPart = sold.ChannelCost.PerUnit(sold.Quantity);
        cost = (crop.PerUnit() ?? default) + ChannelPart;
        Prices = rules.Price(crop.PerUnit()!.Value, ChannelPart, FeePercent, model.FloorCost());
        AtNormalYield = yields.Failed
            ? rules.Price(
                crop.PerUnit(yields.NormalFactor)!.Value, sold.ChannelCost.PerUnit(sold.Quantity, yields.NormalFactor), FeePercent,
                model.FloorCost(yields.NormalFactor))
            : null;
        ByMonth = sold.Parts.GroupBy(part => new DateOnly(part.Disposition.Row.Date.Year, part.Disposition.Row.Date.Month, 1))
            .OrderBy(month => month.Key)
            .Select(month => new MonthPrice(
                month.Key,
                Result.Of(month.Sum(part => part.Amount.Amount), month.Sum(part => part.Quantity), "nothing sold")
            ))
            .ToList();
        AgainstFullCost = Against(Prices.FullCost);
        AgainstTarget = Against(Prices.Target);
    }

    /// <summary>The crop's cost.</summary>
    public CropCost Cost { get; }

    /// <summary>What was sold through the channel.</summary>
    public CropChannel Sold { get; }

    /// <summary>The crop.</summary>
    public Crop Crop => Cost.Crop;

    /// <summary>The channel.</summary>
    public Channel Channel => Sold.Channel;

    /// <summary>The channel's fee in percent of the price.</summary>
    public decimal FeePercent { get; }

    /// <summary>
    /// The channel's own cost (the stand, driving, hours there) per unit: in full cost and target, not in the floor.
    /// </summary>
    public UnitCost ChannelPart { get; }

    /// <summary>Prices at the season's yield.</summary>
    public PriceSet Prices { get; }

    /// <summary>Prices at a normal yield where the season's failed; null where it didn't.</summary>
    public PriceSet? AtNormalYield { get; }

    /// <summary>The crop's yields over the years.</summary>
    public YieldHistory Yields { get; }

    /// <summary>What a unit brought over the season.</summary>
    public Result Realized => Result.Of(Sold.Amount.Amount, Sold.Quantity, "nothing sold");

    /// <summary>What a unit brought, month by month.</summary>
    public IReadOnlyList<MonthPrice> ByMonth { get; }

    /// <summary>The farm's own newest list price for the channel by the end of the season.</summary>
    public Result ListPrice { get; internal init; }

    /// <summary>
    /// The most a unit of the crop ever brought on the mean of a season and channel, or is listed at, the farm's own or somebody else's.
    /// </summary>
    public Result MostEver { get; internal init; }

    /// <summary>The lowest price of one sale of the season there, per unit of the crop.</summary>
    public Result Lowest => Range(prices => prices.Min());

    /// <summary>The highest price of one sale of the season there, per unit of the crop.</summary>
    public Result Highest => Range(prices => prices.Max());

    /// <summary>Somebody else's newest price, per unit of the crop.</summary>
    public Result Reference => References.Count == 0 ? Result.NotAvailable("no reference price")
        : Result.Known(References.MaxBy(price => (price.Row.From ?? DateOnly.MinValue, price.Row.Source.Line))!.PerUnit);

    /// <summary>Somebody else's prices, all rows of them.</summary>
    public IReadOnlyList<ReferencePrice> References { get; internal init; } = [];

    /// <summary>What came in over the season, after fees, above (or, negative, below) full cost; in the farm's currency.</summary>
    public Result AgainstFullCost { get; }

    /// <summary>The same against the target.</summary>
    public Result AgainstTarget { get; }

    /// <summary>
    /// The unit most of the season's sales rows of this channel were written in, of as many the one more was sold in; the one its price is
    /// asked in.
    /// </summary>
    public string SellingUnit =>
        Sold
            .Parts.Select(part => part.Disposition)
            .Distinct()
            .GroupBy(
                disposition => string.IsNullOrWhiteSpace(disposition.Row.Unit) ? Crop.Unit : disposition.Row.Unit.Trim(),
                StringComparer.OrdinalIgnoreCase
            )
            .OrderByDescending(unit => unit.Count())
            .ThenByDescending(unit => unit.Sum(disposition => disposition.Quantity))
            .ThenBy(unit => unit.Key, StringComparer.OrdinalIgnoreCase)
            .First()
            .Key;

    /// <summary>The crop's own unit and those of the units table, in that order.</summary>
    public IReadOnlyList<string> Units => [.. Crop.Units.Keys];

    /// <summary>How many of the crop's own units a unit holds.</summary>
    /// <param name="unit">One of <see cref="Units"/>, in any case.</param>
    /// <returns>Units of the crop.</returns>
    /// <exception cref="KeyNotFoundException">The crop has no such unit.</exception>
    public decimal BaseUnits(string unit) => Crop.ToBase(1m, unit);

    /// <summary>The prices per another unit of the crop.</summary>
    /// <param name="unit">The unit, in any case; the crop's own or one of its units table.</param>
    /// <returns>The prices.</returns>
    /// <exception cref="KeyNotFoundException">The crop has no such unit.</exception>
    public PriceSet InUnit(string unit) => Prices.For(Crop.ToBase(1m, unit));

    /// <summary>
    /// Return per labor hour (money after fees and all cost but labor, over hours) if every unit had brought <paramref name="price"/>.
    /// </summary>
    /// <param name="price">Price per unit of the crop.</param>
    /// <returns>Money per hour.</returns>
    public Result ReturnPerHourAt(decimal price) => rules.HoursMissing is { } reason ? Result.NotAvailable(reason)
        : Result.Of(After(price) - cost.Other, cost.Hours, "no labor hours");

    /// <summary>Net return in percent of the price if every unit had brought <paramref name="price"/>.</summary>
    /// <param name="price">Price per unit of the crop.</param>
    /// <returns>Percent.</returns>
    public Result MarginPercentAt(decimal price) => rules.FullMissing is { } reason ? Result.NotAvailable(reason)
        : Result.Of(100m * (After(price) - cost.Full), price, "a price of 0");

    /// <summary>
    /// What to ask, per another unit of the crop: at least the target (of a normal yield where the season's failed), never below what it
    /// has.
    /// </summary>
    /// <param name="unit">The unit, in any case.</param>
    /// <returns>The advice; its price is per that unit.</returns>
    /// <exception cref="KeyNotFoundException">The crop has no such unit.</exception>
    public PriceAdvice Advice(string unit)
    {
        decimal size = BaseUnits(unit);
        return PriceAdvice.Of(
            (AtNormalYield ?? Prices).For(size),
            PriceAdvice.Greater(Realized, ListPrice).Map(price => price * size),
            MostEver.Map(price => price * size),
            terms,
            AtNormalYield is not null
        );
    }

    /// <summary>
    /// What picking, packing and selling a unit there costs, with what the channel itself takes for each; fees left out. Per unit of the
    /// crop.
    /// </summary>
    public Result Handling => rules.FloorMissing is { } reason ? Result.NotAvailable(reason)
        : Result.Known(
            Math.Max(0m, (Cost.Production.Handling / Cost.Budget.Sums.Sold) + (Sold.ChannelCost.Handling / Sold.Quantity)));

    private Result Range(Func<List<decimal>, decimal> pick)
    {
        List<decimal> prices =
        [
            .. Sold
                .Parts.Select(part => part.Disposition)
                .Distinct()
                .Where(sale => sale.Quantity > 0m && sale.Amount.Amount > 0m)
                .Select(sale => sale.Amount.Amount / sale.Quantity),
        ];
        return prices.Count == 0 ? Result.NotAvailable("nothing sold for money") : Result.Known(pick(prices));
    }

    private decimal After(decimal price) => price * (1m - (FeePercent / 100m));

    private Result Against(Result price) => price.Map(wanted => (Sold.Amount - Sold.Fees).Amount - (After(wanted) * Sold.Quantity));
}
