using FarmEconomics.Pricing;
using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Plots;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Pricing;

/// <summary>The prices of one channel for a page: every part of it says why when there is nothing to show.</summary>
public sealed class PriceReport
{
    private readonly PriceBook book;
    private readonly Channel? channel;

    private PriceReport(PriceBook book, Channel? channel)
    {
        this.book = book;
        this.channel = channel;
    }

    private string Nothing =>
        $"Nothing of {book.Season.CropYear} was sold through a market, stand or wholesale channel: there is no price to speak of.";

    /// <summary>The report on the named channel; an empty name: the priced channel with the most sales.</summary>
    /// <exception cref="ArgumentException">A channel is named that nothing was sold through for a price; the message lists those there
    /// are.</exception>
    public static PriceReport Of(PriceBook book, string channel = "") =>
        new(book, book.Prices.Count == 0 ? null : PriceSentences.ChannelOf(book, channel));

    /// <summary>What each crop brought against full cost.</summary>
    public Figure Figure(bool onPhone = false) =>
        channel is null ? SeasonPlots.Nothing(Nothing) : PricePlots.AgainstFullCost(book, channel, onPhone);

    /// <summary>The same in other units.</summary>
    public ReportTable Units() => Table(PriceTables.Units);

    /// <summary>Where the yield failed.</summary>
    public ReportTable NormalYield() => Table(PriceTables.NormalYield);

    /// <summary>Month by month.</summary>
    public ReportTable Months() => Table(PriceTables.Months);

    /// <summary>Somebody else's prices.</summary>
    public ReportTable References() => Table(PriceTables.References);

    /// <summary>
    /// What moving a part of every crop from one channel to another would have changed. Empty names: from the channel with prices where an
    /// hour earned least to that where it earned most.
    /// </summary>
    /// <exception cref="ArgumentException">A channel is named that isn't there.</exception>
    public ReportTable Moves(string from, string to, decimal percent, decimal priceFactor = 1m) =>
        Ends(from, to) is { } ends
            ? PriceTables.Moves(book, ends.From, ends.To, percent, priceFactor)
            : new ReportTable("Moving goods to another channel", book.Season.Notation).Note(
                "It takes two channels with prices, and they must not be the same."
            );

    /// <summary>The same in words: money, and hours where they are known.</summary>
    /// <exception cref="ArgumentException">A channel is named that isn't there.</exception>
    public Prose MovesInWords(string from, string to, decimal percent, decimal priceFactor = 1m) =>
        Ends(from, to) is { } ends
            ? PriceWords.Moves(
                book,
                [.. book.In(ends.From).Select(price => ChannelMove.Of(book, price.Crop, ends.From, ends.To, percent, priceFactor))],
                percent
            )
            : new Prose("Moving goods takes two channels with prices.");

    private (Channel From, Channel To)? Ends(string from, string to)
    {
        List<Channel> ranked = ChannelComparison
            .Of(book)
            .Where(item => item.Channel.IsPriced)
            .OrderBy(item => item.ReturnPerHour.Value ?? item.Sales.Amount)
            .Select(item => item.Channel)
            .ToList();
        Channel? source = string.IsNullOrWhiteSpace(from) ? ranked.FirstOrDefault() : Named(from);
        Channel? target = string.IsNullOrWhiteSpace(to) ? ranked.LastOrDefault(item => item != source) : Named(to);
        return source is null || target is null || source == target ? null : (source, target);
    }

    private Channel Named(string name) =>
        book.Review.Records.Channels.FirstOrDefault(item => string.Equals(item.Name, name.Trim(), StringComparison.OrdinalIgnoreCase))
        ?? throw new ArgumentException(
            $"There is no channel {name}. Channels: {string.Join(", ", book.Review.Records.Channels)}.",
            nameof(name)
        );

    private ReportTable Table(Func<PriceBook, Channel, ReportTable> make) =>
        channel is null ? new ReportTable("Prices", book.Season.Notation).Note(Nothing) : make(book, channel);
}
