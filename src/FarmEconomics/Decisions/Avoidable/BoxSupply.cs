using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Avoidable;

/// <summary>Produce that could go into a week's boxes instead of where it went.</summary>
/// <param name="Lot">The lot it was picked in.</param>
/// <param name="From">The part of a leaving; null for what never left.</param>
/// <param name="Source">Where it went.</param>
/// <param name="Quantity">Quantity in the crop's unit.</param>
/// <param name="List">List price in the boxes, as an amount above 0 for a quantity.</param>
/// <param name="LostPerUnit">What the farm loses by a unit, 0 or more.</param>
internal sealed record BoxSupply(
    Lot Lot,
    DispositionPart? From,
    RefillSource Source,
    decimal Quantity,
    (decimal Amount, decimal Quantity) List,
    decimal LostPerUnit
)
{
    internal Crop Crop => Lot.Enterprise.Crop;

    /// <summary>List price of a unit.</summary>
    internal decimal ListPrice { get; } = List.Amount / List.Quantity;

    /// <summary>List value of so many units: half a cent that stands on a third of something is half a cent.</summary>
    internal Money Worth(decimal units) => Money.Rounded(units * List.Amount / List.Quantity);

    /// <summary>The same goods on another day of boxes are the same goods.</summary>
    internal static IEqualityComparer<BoxSupply> SameGoods { get; } =
        EqualityComparer<BoxSupply>.Create(
            (one, other) => one?.Lot == other?.Lot && one?.From == other?.From,
            one => HashCode.Combine(one.Lot, one.From)
        );

    /// <summary>What a lot gave that isn't in boxes already. What is still on hand is kept: it counts at its value elsewhere.</summary>
    internal static IEnumerable<BoxSupply> Of(Lot lot, (decimal Amount, decimal Quantity) list, decimal packaging, DateOnly closing)
    {
        foreach (DispositionPart part in lot.Draws)
        {
            // A unit's money first: goods of the same price then lose the same to the last digit.
            (RefillSource Source, decimal Lost)? use =
                part.Quantity <= 0m
                    ? null
                    : part.Disposition.Channel.Kind switch
                    {
                        ChannelKind.Donation or ChannelKind.Waste => (RefillSource.NotSold, 0m),
                        ChannelKind.Household => (RefillSource.Household, part.ListValue.Amount / part.Quantity),
                        ChannelKind.Market or ChannelKind.Stand or ChannelKind.Wholesale => (
                            RefillSource.Sold,
                            ((part.Amount - part.Fee).Amount / part.Quantity) - packaging
                        ),
                        _ => null,
                    };
            if (use is { } known)
            {
                yield return new BoxSupply(lot, part, known.Source, part.Quantity, list, Math.Max(0m, known.Lost));
            }
        }

        if (lot.Remaining > 0m && lot.KeptUntil < closing)
        {
            yield return new BoxSupply(lot, null, RefillSource.NotSold, lot.Remaining, list, 0m);
        }
    }

    /// <summary>Least lost per dollar of list value first; ties by the day picked and the place in the files.</summary>
    internal static int CheapestFirst(BoxSupply one, BoxSupply other)
    {
        int order = (one.LostPerUnit * other.ListPrice).CompareTo(other.LostPerUnit * one.ListPrice);
        order = order != 0 ? order : one.Lot.Date.CompareTo(other.Lot.Date);
        order = order != 0 ? order : one.Lot.Row.Source.Line.CompareTo(other.Lot.Row.Source.Line);
        order = order != 0 ? order : one.Lot.Enterprise.Index.CompareTo(other.Lot.Enterprise.Index);
        order =
            order != 0
                ? order
                : (one.From?.Disposition.Row.Date ?? DateOnly.MaxValue).CompareTo(other.From?.Disposition.Row.Date ?? DateOnly.MaxValue);
        return order != 0
            ? order
            : (one.From?.Disposition.Row.Source.Line ?? int.MaxValue).CompareTo(other.From?.Disposition.Row.Source.Line ?? int.MaxValue);
    }
}
