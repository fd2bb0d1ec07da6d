using FarmEconomics.Pricing;
using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Plots;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Pricing;

/// <summary>A share for a page: every part of it says why when there is nothing to show.</summary>
public sealed class ShareReport
{
    private const string None = "The channels table holds no share.";
    private readonly PriceBook book;
    private readonly ShareTerms terms;
    private readonly SharePricing? shares;

    private ShareReport(PriceBook book, ShareTerms terms, SharePricing? shares)
    {
        this.book = book;
        this.terms = terms;
        this.shares = shares;
    }

    /// <summary>The report on the named share; an empty name: the first of the channels table.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A term is out of its range.</exception>
    public static ShareReport Of(PriceBook book, ShareTerms terms, string share = "") =>
        new(
            book,
            terms,
            PriceSentences.ShareOf(book, share) is { } channel ? SharePricing.Of(book, ShareContents.Recorded(book, channel), terms) : null
        );

    /// <summary>The report on planned boxes of the first share of the channels table.</summary>
    /// <param name="book">The year's prices.</param>
    /// <param name="terms">Members and the like.</param>
    /// <param name="plan">What one full box is to hold, week by week.</param>
    /// <param name="fullBoxes">Full boxes a week, above 0.</param>
    /// <exception cref="ArgumentException">The plan names a crop or unit that isn't known.</exception>
    public static ShareReport Planned(PriceBook book, ShareTerms terms, IEnumerable<PlannedItem> plan, decimal fullBoxes) =>
        new(
            book,
            terms,
            PriceSentences.ShareOf(book, "") is { } channel
                ? SharePricing.Of(book, ShareContents.FromPlan(book, channel, plan, fullBoxes), terms)
                : null
        );

    /// <summary>What it rests on; null without a share.</summary>
    internal SharePricing? Pricing => shares;

    /// <summary>The share in two sentences.</summary>
    public Prose Answer() => shares is null ? new Prose(None) : PriceSentences.Share(book, shares);

    /// <summary>Week by week.</summary>
    public Figure Weeks(bool onPhone = false) => shares is null ? SeasonPlots.Nothing(None) : PricePlots.ShareWeeks(book, shares, onPhone);

    /// <summary>What a share must cost.</summary>
    public ReportTable Price() => shares is null ? Nothing() : ShareTables.Price(book, shares, terms);

    /// <summary>Price by number of members: three steps down and three up from the members there are.</summary>
    public ReportTable Members()
    {
        if (shares is null)
        {
            return Nothing();
        }

        decimal now = Math.Max(1m, decimal.Round(shares.FullBoxes.Value ?? 40m, 0, MidpointRounding.AwayFromZero));
        decimal tenth = Math.Max(1m, decimal.Round(now / 10m, 0, MidpointRounding.AwayFromZero));
        return ShareTables.Members(
            book,
            shares,
            Enumerable.Range(-3, 7).Select(i => now + (i * tenth)).Where(count => count > 0m).ToList()
        );
    }

    /// <summary>The weeks.</summary>
    public ReportTable WeekTable() => shares is null ? Nothing() : ShareTables.Weeks(book, shares);

    /// <summary>The crops in the boxes.</summary>
    public ReportTable CropTable() => shares is null ? Nothing() : ShareTables.Crops(book, shares.Contents);

    /// <summary>Fails when the share income imputed to crops isn't the income to the cent; else says that it is.</summary>
    public Prose RequireProof()
    {
        if (shares is null)
        {
            return new Prose(None);
        }

        decimal imputed = shares.Contents.ByCrop.Sum(item => item.Income.Amount);
        return imputed == shares.Contents.Income.Amount
            ? new Prose(
                $"The share income imputed to crops, {book.Season.Notation.InWords(imputed, Look.Money)}, is the income to the cent."
            )
            : throw new InvalidOperationException(
                book.Season.Notation.Text($"Share income imputed to crops {imputed} is not the income {shares.Contents.Income}.")
            );
    }

    private ReportTable Nothing() => new ReportTable("Shares", book.Season.Notation).Note(None);
}
