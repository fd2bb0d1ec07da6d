using FarmEconomics.Pricing;
using FarmEconomics.Records;

namespace FarmEconomics.Reports.Answers;

/// <summary>Where a crop's price stands in a channel.</summary>
internal enum PriceStanding
{
    /// <summary>Sold below full cost: raise it.</summary>
    Raise,

    /// <summary>Paid every cost, but less than wanted.</summary>
    WhenYouCan,

    /// <summary>What it sold for, or its list price, is enough.</summary>
    Keep,

    /// <summary>Full cost lies far above anything it ever sold for.</summary>
    CannotBePriced,

    /// <summary>Not sold there in the season; what it would take is known.</summary>
    NotSoldThere,

    /// <summary>Not known.</summary>
    Unknown,
}

/// <summary>The prices of one channel by where they stand: what the first screen of the page says.</summary>
internal sealed class PriceFindings
{
    private readonly ILookup<PriceStanding, CropPrice> byStanding;

    internal PriceFindings(PriceBook book, Channel channel)
    {
        Book = book;
        Channel = channel;
        byStanding = book.In(channel).OrderBy(price => price.AgainstFullCost.Value ?? 0m).ThenBy(price => price.Crop.Index).ToLookup(Of);
        Elsewhere = book.Elsewhere(channel);
        HashSet<Crop> told = [.. book.In(channel).Select(price => price.Crop), .. Elsewhere.Select(price => price.Crop)];
        Without =
        [
            .. book
                .WithoutPrice.Where(item => (item.Channel is null || item.Channel == channel) && !told.Contains(item.Crop))
                .DistinctBy(item => item.Crop),
        ];
    }

    /// <summary>The prices.</summary>
    internal PriceBook Book { get; }

    /// <summary>The channel.</summary>
    internal Channel Channel { get; }

    /// <summary>Crops not sold there, with what they would take.</summary>
    internal IReadOnlyList<ElsewherePrice> Elsewhere { get; }

    /// <summary>Crops that no price can be worked out for.</summary>
    internal IReadOnlyList<CropWithoutPrice> Without { get; }

    /// <summary>Sold below full cost, those that fell short most first.</summary>
    internal IReadOnlyList<CropPrice> Raise => [.. this[PriceStanding.Raise]];

    /// <summary>How much those fell short over the season, 0 or more.</summary>
    internal decimal Short => ShortOf(PriceStanding.Raise);

    /// <summary>How much the crops of one standing fell short of full cost over the season, 0 or more.</summary>
    internal decimal ShortOf(PriceStanding standing) => -this[standing].Sum(price => Math.Min(0m, price.AgainstFullCost.Value ?? 0m));

    /// <summary>Why full cost isn't known of any of them; null when it is.</summary>
    internal string? WhyUnknown => Book.In(Channel).Any(price => price.AgainstFullCost.IsAvailable) ? null
        : Book.In(Channel).Select(price => price.Prices.FullCost.Reason).FirstOrDefault(why => why is not null) ?? "nothing was sold there";

    /// <summary>The crops of one standing, those that fell short most, or gained least, first.</summary>
    internal IEnumerable<CropPrice> this[PriceStanding standing] => byStanding[standing];

    /// <summary>How many crops there are of one standing.</summary>
    internal int Count(PriceStanding standing) => byStanding[standing].Count();

    /// <summary>What is wanted, in words: "less than $25.00 an hour".</summary>
    internal static string LessThanWanted(PriceBook book)
    {
        Notation notation = book.Season.Notation;
        return book.Rules.Terms.WantedMarginPercent is { } margin ? notation.Text($"leave less than {margin:0.##}% of the price")
            : book.Rules.WantedPerHour.Value is { } hour ? $"less than {AnHour(hour, notation)}" : "less than wanted";
    }

    /// <summary>What "at least" pays, in words.</summary>
    internal static string Pays(PriceBook book)
    {
        Notation notation = book.Season.Notation;
        return book.Rules.Terms.WantedMarginPercent is { } margin ? notation.Text($"pays every cost and leaves {margin:0.##}% of the price")
            : book.Rules.WantedPerHour.Value is { } hour ? $"pays every cost and {AnHour(hour, notation)} behind the crop"
            : $"isn't known: {book.Rules.WantedPerHour.Reason}";
    }

    private static string AnHour(decimal hour, Notation notation) =>
        $"{Blocks.BlockNumber.Of(hour, decimal.IsInteger(hour) ? Tables.Look.WholeMoney : Tables.Look.Rate, notation)} an hour";

    private static PriceStanding Of(CropPrice price) => price.Advice(price.SellingUnit).Kind switch
    {
        AdviceKind.Keep => PriceStanding.Keep,
        AdviceKind.CannotBePriced => PriceStanding.CannotBePriced,
        AdviceKind.AtLeast => price.AgainstFullCost.Value < 0m ? PriceStanding.Raise : PriceStanding.WhenYouCan,
        _ => PriceStanding.Unknown,
    };
}
