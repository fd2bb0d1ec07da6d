using System.Collections;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Budgets;

/// <summary>
/// The ledger of one season, never changed: entries, charges of pools, parts of what was sold or used, and stock. Every line of every
/// planting's budget is the sum of
/// its postings. Sales are made when looked at, from the columns of the trace.
/// </summary>
public sealed class Postings : IReadOnlyList<Posting>
{
    private readonly SeasonReview season;
    private readonly Posting[] costs;
    private readonly IReadOnlyList<DispositionPart> parts;

    internal Postings(SeasonReview season, ChargeBook book)
    {
        this.season = season;
        int year = season.CropYear;
        costs =
        [
            .. book.ByYear[year].Where(charge => charge.Year == year).Select(Entry),
            .. season.Pools.SelectMany(pool => pool.Charges).Select(Charge),
            .. season.Pools.SelectMany(pool => pool.HoursCharged).Select(Hours),
            .. season.Plantings.Where(planting => planting.Sums.Establishment != Money.Zero).Select(Establishment),
            .. season.Plantings.Where(planting => planting.Sums.OnHand > 0m).Select(Stock),
        ];
        parts = season.DispositionParts;
    }

    /// <inheritdoc/>
    public int Count => costs.Length + parts.Count;

    /// <inheritdoc/>
    public Posting this[int index] => index < costs.Length ? costs[index] : Sale(parts[index - costs.Length]);

    /// <inheritdoc/>
    public IEnumerator<Posting> GetEnumerator() => costs.Concat(parts.Select(Sale)).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <summary>What a planting's line is made of.</summary>
    /// <param name="planting">The planting in its crop year.</param>
    /// <param name="line">A line that isn't made of others; of a sale the fee stands on the line of selling.</param>
    /// <returns>Its postings.</returns>
    public IEnumerable<Posting> Of(Enterprise planting, BudgetLine line) =>
        this.Where(posting =>
            posting.Planting == planting && (posting.Line == line || (line == BudgetLine.Selling && posting.Fee != Money.Zero))
        );

    /// <summary>Sums of money, fees, hours and quantities by any key, in the order keys first come.</summary>
    /// <param name="key">What to add up by.</param>
    /// <returns>Each key with its sums.</returns>
    /// <typeparam name="TKey">What is added up by.</typeparam>
    public IReadOnlyList<PostingSum<TKey>> GroupBy<TKey>(Func<Posting, TKey> key)
        where TKey : notnull
    {
        ArgumentNullException.ThrowIfNull(key);
        return
        [
            .. Enumerable
                .GroupBy(this, key)
                .Select(group => new PostingSum<TKey>(
                    group.Key,
                    Money.Sum(group.Select(posting => posting.Amount)),
                    Money.Sum(group.Select(posting => posting.Fee)),
                    group.Sum(posting => posting.Hours),
                    group.Sum(posting => posting.Quantity)
                )),
        ];
    }

    private static BudgetLine LineOf(StatementLine line, CostStream stream) => line != StatementLine.Labor ? BudgetLines.Of(line)
        : stream == CostStream.OwnerLabor ? BudgetLine.OwnerLabor : BudgetLine.HiredLabor;

    private static Posting Entry(Charge charge) => new(PostingKind.Entry, charge.Year, LineOf(charge.Line, charge.Stream))
    {
        Planting = charge.Enterprise,
        Pool = charge.Pool,
        Unallocated = charge.Unallocated,
        Stream = charge.Stream,
        Driver = charge.VariesWith,
        Stage = charge.Stage,
        Estimated = charge.Estimated,
        Source = charge.Origin,
        Amount = charge.Amount,
        Hours = charge.Hours,
    };

    private Posting Charge(PoolCharge charge) => new(PostingKind.Charge, season.CropYear, LineOf(charge.Line, charge.Source.Stream))
    {
        Planting = charge.Enterprise,
        Pool = charge.Source.Pool,
        Unallocated = charge.Unallocated,
        Stream = charge.Source.Stream,
        Amount = charge.Amount,
    };

    private Posting Hours(PoolHours charge) =>
        new(PostingKind.Charge, season.CropYear, charge.Pool.IsOverhead ? BudgetLine.Overhead : BudgetLine.Labor)
        {
            Planting = charge.Enterprise,
            Pool = charge.Pool,
            Unallocated = charge.Unallocated,
            Stage = charge.Stage,
            Hours = charge.Hours,
        };

    private Posting Establishment(EnterpriseBudget planting) => new(PostingKind.Establishment, season.CropYear, BudgetLine.Establishment)
    {
        Planting = planting.Enterprises[0],
        Driver = CostDriver.Fixed,
        Amount = planting.Sums.Establishment,
    };

    private Posting Stock(EnterpriseBudget planting) => new(PostingKind.Stock, season.CropYear, BudgetLine.ClosingStock)
    {
        Planting = planting.Enterprises[0],
        Amount = planting.Sums.ClosingStock,
        Quantity = planting.Sums.OnHand,
    };

    private Posting Sale(DispositionPart part)
    {
        Channel channel = part.Disposition.Channel;
        bool household = channel.Kind == ChannelKind.Household;
        return new(
            PostingKind.Sale,
            season.CropYear,
            household ? BudgetLine.HouseholdUse
                : channel.Kind == ChannelKind.Share ? BudgetLine.ShareIncome
                : BudgetLine.Sales
        )
        {
            Planting = part.Enterprise,
            Unallocated = part.Enterprise is null ? Unallocated.NotAssigned : null,
            Channel = channel,
            Driver = CostDriver.Units,
            Source = part.Disposition.Row,
            Amount = household ? part.ListValue : part.Amount,
            Fee = part.Fee,
            Quantity = part.Quantity,
        };
    }
}

/// <summary>Postings added up.</summary>
/// <typeparam name="TKey">What is added up by.</typeparam>
/// <param name="Key">What they have in common.</param>
/// <param name="Amount">Money.</param>
/// <param name="Fee">Fees of sales.</param>
/// <param name="Hours">Hours.</param>
/// <param name="Quantity">Quantity, in the crops' units.</param>
public sealed record PostingSum<TKey>(TKey Key, Money Amount, Money Fee, decimal Hours, decimal Quantity);
