using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Losses;

/// <summary>
/// Where every unit of a season's plantings went, culled ones included, and what it brought or would have brought net of packing and fees.
/// Each part's money is rounded to the cent once; every total is a sum
/// of parts. What left without having been picked is in <see cref="SoldUnpicked"/> alone.
/// </summary>
public sealed class PickedTree
{
    private static readonly OncePer<SeasonCosts, PickedTree> Found = new(costs => new PickedTree(costs));
    private readonly Dictionary<Crop, NetPrice> prices;

    private PickedTree(SeasonCosts costs)
    {
        Season = costs.Season;
        prices = Season.Crops.ToDictionary(crop => crop.Crop!, crop => new NetPrice(costs, crop));
        Parts = [.. Season.Lots.SelectMany(Fates).GroupBy(piece => piece.Key).Select(Add)
            .OrderBy(part => part.Crop.Index).ThenBy(part => part.Week).ThenBy(part => part.Fate).ThenBy(part => part.Channel?.Index)
                .ThenBy(part => part.DaysHeld)];
        SoldUnpicked = Money.Sum(Season.DispositionParts.Where(part => part.Lot is null && part.Enterprise is not null)
            .Select(part => part.Amount));
    }

    private sealed record Key(Crop Crop, DateOnly Week, Fate Fate, Channel? Channel, int? DaysHeld);

    private sealed record Piece(Key Key, decimal Quantity, Money Amount, Money Fee);

    /// <summary>The season.</summary>
    public SeasonReview Season { get; }

    /// <summary>The parts, by crop, week, fate, channel and days held.</summary>
    public IReadOnlyList<PickedPart> Parts { get; }

    /// <summary>Sales of what no harvest stands behind: not picked as far as the records tell, so in no part.</summary>
    public Money SoldUnpicked { get; }

    /// <summary>Lays out where the harvest of a season went.</summary>
    /// <param name="costs">The season's costs.</param>
    /// <returns>The parts.</returns>
    public static PickedTree Of(SeasonCosts costs)
    {
        ArgumentNullException.ThrowIfNull(costs);
        return Found.Of(costs);
    }

    /// <summary>True for what was picked and earned nothing: culled, past keeping, thrown out or given away.</summary>
    /// <param name="fate">Where it went.</param>
    /// <returns>True for a loss.</returns>
    public static bool IsLoss(Fate fate) => fate is Fate.Culled or Fate.PastKeeping or Fate.ThrownOut or Fate.GivenAway;

    /// <summary>The value of the parts that have one.</summary>
    /// <param name="which">Which parts.</param>
    /// <returns>The money; what has no value is left out, see <see cref="WithoutValue"/>.</returns>
    public Money Value(Func<PickedPart, bool> which) =>
        Money.Sum(Parts.Where(part => part.Value is not null && which(part)).Select(part => part.Value!.Value));

    /// <summary>Crops of which something has no value, each with the reason.</summary>
    public IReadOnlyList<(Crop Crop, string Reason)> WithoutValue =>
        [.. Parts.Where(part => part.WhyUnknown is not null).Select(part => (part.Crop, part.WhyUnknown!)).Distinct()];

    private IEnumerable<Piece> Fates(Lot lot)
    {
        DateOnly closing = Season.Records.AsOf;
        DateOnly week = WeeklyUse.MondayOf(lot.Date);
        if (lot.Culled > 0m)
        {
            yield return new Piece(new Key(lot.Enterprise.Crop, week, Fate.Culled, null, null), lot.Culled, Money.Zero, Money.Zero);
        }

        foreach (DispositionPart draw in lot.Draws)
        {
            yield return new Piece(new Key(lot.Enterprise.Crop, week, FateOf(draw.Disposition), draw.Disposition.Channel, draw.DaysHeld),
                draw.Quantity, draw.Amount, draw.Fee);
        }

        if (lot.Remaining > 0m)
        {
            bool keeps = lot.KeptUntil >= closing;
            yield return new Piece(new Key(lot.Enterprise.Crop, week, keeps ? Fate.OnHand : Fate.PastKeeping, null,
                Math.Max(0, (keeps ? closing : lot.KeptUntil).DayNumber - lot.Date.DayNumber)), lot.Remaining, Money.Zero, Money.Zero);
        }
    }

    private static Fate FateOf(Disposition leaving) => leaving.IsSold ? Fate.Sold : leaving.Channel.Kind switch
    {
        ChannelKind.Household => Fate.Eaten,
        ChannelKind.Donation => Fate.GivenAway,
        ChannelKind.Waste => Fate.ThrownOut,
        _ => Fate.OtherUse,
    };

    private PickedPart Add(IGrouping<Key, Piece> pieces)
    {
        Key key = pieces.Key;
        decimal quantity = pieces.Sum(piece => piece.Quantity);
        PickedPart part = new(key.Crop, key.Week, key.Fate, key.Channel, key.DaysHeld, quantity);
        NetPrice price = prices[key.Crop];
        if (price.WhyUnknown is { } why)
        {
            return part with { WhyUnknown = why };
        }

        Money packing = Money.Rounded(quantity * price.PackingPerUnit);
        return key.Fate == Fate.Sold
            ? part with
            {
                Amount = Money.Sum(pieces.Select(piece => piece.Amount)),
                Deducted = Money.Sum(pieces.Select(piece => piece.Fee)) + packing,
            }
            : part with { Amount = Money.Rounded(quantity * price.Price), Deducted = Money.Rounded(quantity * price.FeePerUnit) + packing };
    }
}
