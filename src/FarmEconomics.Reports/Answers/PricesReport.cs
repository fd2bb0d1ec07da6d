using FarmEconomics.Pricing;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Pricing;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Answers;

/// <summary>The blocks of the page on prices and shares.</summary>
public enum PricesBlock
{
    /// <summary>The finding.</summary>
    Headline,

    /// <summary>Short, when you can, keep, boxes.</summary>
    Figures,

    /// <summary>The crops that fell short most.</summary>
    Short,

    /// <summary>Every crop's price.</summary>
    Sheet,

    /// <summary>What a share must cost.</summary>
    Share,

    /// <summary>The channels.</summary>
    Channels,

    /// <summary>The folds, by part.</summary>
    Details,
}

/// <summary>What may be asked of it.</summary>
public sealed record PricesParameters : ReportParameters
{
    /// <summary>The channel looked at.</summary>
    [Field(
        "Channel looked at",
        "a market, stand or wholesale channel; empty = the one with the most sales",
        Choice = "channel with prices"
    )]
    public string Channel { get; init; } = "";

    /// <summary>Wanted return per labor hour.</summary>
    [Field(
        "Wanted return per labor hour",
        "0 = a quarter above what an hour cost this season",
        Unit = "money",
        Lowest = 0,
        Highest = 10000
    )]
    public decimal TargetPerHour { get; init; }

    /// <summary>Wanted net return in percent of the price.</summary>
    [Field(
        "Wanted net return in percent of the price",
        "above 0 it counts instead of the return per hour",
        Unit = "%",
        Lowest = 0,
        Highest = 99
    )]
    public decimal TargetMargin { get; init; }

    /// <summary>Price step.</summary>
    [Field("Price step", "the steps your prices go in", Unit = "money", Lowest = 0.01, Highest = 100)]
    public decimal Step { get; init; } = 0.25m;

    /// <summary>Where goods move from.</summary>
    [Field("Goods move from", "empty = where an hour earned least", Choice = "selling channel")]
    public string MoveFrom { get; init; } = "";

    /// <summary>Where goods move to.</summary>
    [Field("Goods move to", "empty = where an hour earned most", Choice = "selling channel")]
    public string MoveTo { get; init; } = "";

    /// <summary>How much of each crop moves.</summary>
    [Field("How much of each crop moves", "in percent of what went through the first channel", Unit = "%", Lowest = 0.01, Highest = 100)]
    public decimal MovePercent { get; init; } = 20m;

    /// <summary>The price there, times.</summary>
    [Field("Price there, times", "0.9 = more goods there bring it down by a tenth", Lowest = 0.01, Highest = 100)]
    public decimal MovePrice { get; init; } = 1m;

    /// <summary>Members with a full box.</summary>
    [Field("Members with a full box", "the records don't hold it; 0 = not known", Lowest = 0, Highest = 100000)]
    public decimal Members { get; init; }

    /// <summary>Members with a half box.</summary>
    [Field("Members with a half box", "0 = none; counts beside full boxes or the price of a share", Lowest = 0, Highest = 100000)]
    public decimal HalfMembers { get; init; }

    /// <summary>The price of a full share.</summary>
    [Field("Price of a full share", "0 = worked out from income and members", Unit = "money", Lowest = 0, Highest = 100000)]
    public decimal SharePrice { get; init; }

    /// <summary>Wanted net return of the share.</summary>
    [Field("Wanted net return of the share", "in percent of its price", Unit = "%", Lowest = 0, Highest = 99)]
    public decimal ShareMargin { get; init; } = 10m;

    /// <summary>A plan of the boxes.</summary>
    [Field(
        "Plan of the boxes",
        "a CSV file with what one full box is to hold (week, crop, quantity, unit); needs members; empty = none",
        Unit = "file"
    )]
    public string Plan { get; init; } = "";
}

/// <summary>What to raise, what to keep, and the price of a share.</summary>
public sealed class PricesReport : Report<PricesParameters>
{
    /// <inheritdoc/>
    public override ReportId Id => ReportId.Prices;

    /// <inheritdoc/>
    public override string? Tab => "Prices and shares";

    /// <inheritdoc/>
    public override IReadOnlyList<Block> Make(ReviewedFarm farm, PricesParameters parameters, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(farm);
        ArgumentNullException.ThrowIfNull(parameters);
        PriceTerms asked = new()
        {
            WantedPerHour = parameters.TargetPerHour > 0m ? parameters.TargetPerHour : null,
            WantedMarginPercent = parameters.TargetMargin > 0m ? parameters.TargetMargin : null,
            Step = parameters.Step,
        };
        PriceBook book = asked == new PriceTerms() ? farm.Prices : PriceBook.Of(farm.Review, farm.Season.CropYear, asked);
        cancellation.ThrowIfCancellationRequested();
        ShareTerms terms = new()
        {
            Members = parameters.Members > 0m ? parameters.Members : null,
            HalfMembers = parameters.HalfMembers,
            Price = parameters.SharePrice > 0m ? parameters.SharePrice : null,
            WantedMarginPercent = parameters.ShareMargin,
        };
        ShareReport shares = ShareReport.Of(book, terms);
        PriceReport prices = PriceReport.Of(book, parameters.Channel);
        return
        [
            .. Channel(farm, book, parameters.Channel, shares.Pricing),
            .. PriceParts.Share(book, shares.Pricing) is { } share ? [share] : Array.Empty<Block>(),
            PriceParts.Channels(book),
            .. Crops(farm, book, parameters.Channel, prices),
            PriceParts.ChannelsFold(book, parameters, prices),
            .. shares.Pricing is null ? Array.Empty<Block>() : [PriceParts.ShareFold(book, parameters, terms, shares)],
            PriceParts.Method(book),
        ];
    }

    /// <inheritdoc/>
    public override (string Question, Prose Answer)? InALine(ReviewedFarm farm)
    {
        ArgumentNullException.ThrowIfNull(farm);
        if (Found(farm.Prices, "") is not { } found)
        {
            return ("What should I charge?", new Prose($"{NoPrices(farm)}."));
        }

        string shortfall =
            found.Raise.Count > 0
                ? $" Those to raise came in {BlockNumber.Of(found.Short, Look.WholeMoney, farm.Notation)} short of full cost."
                : "";
        return ("What should I charge?", new Prose($"{Prose.Text(PriceFirstScreen.Finding(found, farm.Notation))}.{shortfall}"));
    }

    // Without a channel that has prices there is only the share to speak of.
    private static PriceFindings? Found(PriceBook book, string channel) =>
        book.Prices.Count == 0 ? null : new PriceFindings(book, PriceSentences.ChannelOf(book, channel));

    private static string NoPrices(ReviewedFarm farm) =>
        farm.Season.Dispositions.Any(sale => sale.Channel.IsPriced)
            ? $"What the crops of {farm.Season.CropYear} sold for isn't known"
            : $"Nothing of {farm.Season.CropYear} was sold at a market, a stand or to a buyer";

    private static IEnumerable<Block> Channel(ReviewedFarm farm, PriceBook book, string channel, SharePricing? shares)
    {
        if (Found(book, channel) is not { } found)
        {
            return
            [
                new HeadlineBlock(
                    PricesBlock.Headline,
                    NoPrices(farm),
                    new Prose(farm.Season.Farm.Known.Value is { } why
                        ? Prose.Text($"{Phrase.Sentence(why)}.")
                        : "So there are no prices to set."),
                    PriceFirstScreen.Sure(farm)
                ),
            ];
        }

        PriceFirstScreen first = new(farm, found, shares);
        return [first.Headline, first.Figures, .. first.Short() is { } plot ? [plot] : Array.Empty<Block>(), PriceList.Of(farm, found)];
    }

    private static IEnumerable<Block> Crops(ReviewedFarm farm, PriceBook book, string channel, PriceReport prices) =>
        Found(book, channel) is not { } found
            ? []
            :
            [
                Carried.Fold(
                    PricesBlock.Details,
                    "crops",
                    "Crop by crop: both break-even prices, list and reference prices, other units",
                    ("figure", new Picture(prices.Figure)),
                    ("steps", PriceList.Steps(farm, found)),
                    ("against", PriceList.Against(farm, found)),
                    ("units", prices.Units())
                ) with
                {
                    ScreenOnly = true,
                },
                Carried.Fold(
                    PricesBlock.Details,
                    "seasons",
                    "Month by month, and at a normal yield",
                    ("months", prices.Months()),
                    ("normal", prices.NormalYield()),
                    ("references", prices.References())
                ) with
                {
                    ScreenOnly = true,
                },
            ];
}
