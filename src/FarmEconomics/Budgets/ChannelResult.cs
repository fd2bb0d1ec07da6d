using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Budgets;

/// <summary>One channel in one crop year; costs and hours are those naming the channel.</summary>
/// <param name="Channel">The channel.</param>
/// <param name="CropYear">The crop year of the produce.</param>
/// <param name="QuantityValue">What left through it, as it stands in output: sale amounts, share income, household use at list
/// value.</param>
/// <param name="Fees">The channel's fees.</param>
/// <param name="DirectCosts">Books rows naming the channel, without wages: the margin is before labor.</param>
/// <param name="Hours">Hours naming the channel.</param>
/// <param name="Known">What the season's records can't tell.</param>
public sealed record ChannelResult(
    Channel Channel,
    int CropYear,
    Money QuantityValue,
    Money Fees,
    Money DirectCosts,
    Hours Hours,
    Availability Known
)
{
    /// <summary>Value less fees and direct costs, before labor.</summary>
    public Money Margin => QuantityValue - Fees - DirectCosts;

    /// <summary>Margin per hour naming the channel.</summary>
    public Result MarginPerHour => (Known.NoGrossMargin ?? Known.Hours) is { } reason
        ? Result.NotAvailable(reason)
        : Hours.Value == 0m ? Result.NotAvailable("no hours name this channel") : Margin / Hours;

    internal static List<ChannelResult> Of(ChargeBook book, int year, Availability known)
    {
        List<ChannelResult> results = [];
        ILookup<Pool, Charge> byPool = book
            .ByYear[year].InPools.Where(charge => charge.Pool!.Channel is not null).ToLookup(charge => charge.Pool!);
        foreach (Channel channel in book.Trace.Records.Channels)
        {
            (Int128 value, Int128 fees, bool incomplete) = Through(book.Trace, channel, year);
            Pool pool = book.Trace.Records.PoolOf(channel);
            List<Charge> named = byPool[pool].ToList();
            Money costs = Money.Sum(
                named.Where(charge => charge.Origin is ExpenseRow && charge.Stream == CostStream.Cash).Select(charge => charge.Amount)
            );
            results.Add(
                new ChannelResult(
                    channel,
                    year,
                    ExactUnits.Money(value),
                    ExactUnits.Money(fees),
                    costs,
                    new Hours(named.Sum(charge => charge.Hours)),
                    incomplete ? known with { Value = "a part of what went through it has no price on record" } : known
                )
            );
        }

        return results;
    }

    private static (Int128 Value, Int128 Fees, bool Incomplete) Through(FarmTrace trace, Channel channel, int year)
    {
        bool household = channel.Kind == ChannelKind.Household;
        (Int128 value, Int128 fees, bool incomplete) = (0, 0, false);
        foreach (Enterprise enterprise in trace.Enterprises.Where(enterprise => enterprise.CropYear == year))
        {
            ChannelSum sum = trace.Valuer.Results.Of(enterprise, channel);
            value += household ? sum.ListValue : sum.Amount;
            fees += sum.Fee;
            incomplete |= sum.ValueIncomplete;
        }

        PartTable parts = trace.Ledger.Parts;
        foreach (
            int part in trace
                .Valuer.Results.UnassignedIn(year)
                .Where(part => parts.Dispositions.Channel[parts.Disposition[part]] == channel.Index)
        )
        {
            value += household ? parts.ListValue(part) : parts.Amount(part);
            fees += parts.Fee(part);
            incomplete |= new DispositionPart(parts, part).Disposition.ValueIncomplete;
        }

        return (value, fees, incomplete);
    }
}
