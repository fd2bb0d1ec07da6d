using FarmEconomics.Pricing;
using FarmEconomics.Records;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Pricing;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Answers;

/// <summary>The first screen of the page on prices in sentences and figures.</summary>
internal sealed class PriceFirstScreen(ReviewedFarm farm, PriceFindings found, SharePricing? shares)
{
    private const int Drawn = 6;
    private readonly Notation notation = farm.Notation;

    internal HeadlineBlock Headline => new(PricesBlock.Headline, Finding(found, notation), Why(), Sure(farm));

    internal static string Sure(ReviewedFarm farm) =>
        $"{SeasonWords.SureLine(farm).TrimEnd('.')}. Whether customers pay more, no record tells.";

    /// <summary>"Saturday Market: raise 13 prices, 10 more when you can, keep 13".</summary>
    internal static string Finding(PriceFindings found, Notation notation)
    {
        int raise = found.Raise.Count,
            later = found.Count(PriceStanding.WhenYouCan),
            keep = found.Count(PriceStanding.Keep),
            none = found.Count(PriceStanding.CannotBePriced);
        if (found.WhyUnknown is not null)
        {
            return $"{found.Channel.Name}: what prices would pay full cost isn't known";
        }

        List<string> parts = [];
        if (raise > 0)
        {
            parts.Add($"raise {notation.Count(raise, "price")}");
        }

        if (later > 0)
        {
            parts.Add(raise > 0 ? $"{later} more when you can" : $"raise {notation.Count(later, "price")} when you can");
        }

        if (keep > 0)
        {
            parts.Add($"keep {(parts.Count > 0 ? $"{keep}" : notation.Count(keep, "price"))}");
        }

        return $"{found.Channel.Name}: {(parts.Count > 0 ? string.Join(", ", parts) : $"{notation.Count(none, "crop")} can't be priced")}";
    }

    internal FiguresBlock Figures => new(PricesBlock.Figures, [ShortFigure(), Later(), Kept(), Boxes()]);

    /// <summary>The crops that fell short most; null when none did.</summary>
    internal PlotBlock? Short()
    {
        IReadOnlyList<CropPrice> raise = found.Raise;
        if (raise.Count == 0)
        {
            return null;
        }

        List<CropPrice> drawn = [.. raise.Take(raise.Count <= Drawn + 1 ? raise.Count : Drawn)];
        decimal part = -drawn.Sum(price => price.AgainstFullCost.Value ?? 0m);
        string heading =
            drawn.Count == raise.Count
                ? $"Where {Money(found.Short)} was missing"
                : $"{Phrase.Sentence(Phrase.Spelled(drawn.Count))} crops make {Money(part)} of the {Money(found.Short)}";
        return new PlotBlock(
            PricesBlock.Short,
            heading,
            $"Short of full cost at {found.Channel.Name}, {notation.Sign} in {farm.Season.CropYear}: "
                + $"what it sold for, and at least what to ask.",
            new Chart(PriceList.Against(farm, found))
            {
                Bars = new BarList(
                    $"How far {notation.Count(drawn.Count, "crop")} fell short of full cost at {found.Channel.Name}",
                    [.. drawn.Select(Bar)]
                ),
            }
        );
    }

    private Bar Bar(CropPrice price)
    {
        decimal size = price.BaseUnits(price.SellingUnit), missing = -(price.AgainstFullCost.Value ?? 0m);
        string got = PriceTables.Times(price.Realized, size).Value is { } had ? notation.Number(had, Look.Rate) : "";
        string asked = price.Advice(price.SellingUnit).Price.Value is { } want ? notation.Number(want, Look.Rate) : "";
        return new Bar(
            $"{price.Crop.Name}: {got} to {asked}",
            missing,
            Money(missing),
            $"{price.Crop.Name}: {Money(missing)} short; {UnitWords.Per(price.SellingUnit)} sold for {got}, at least {asked}"
        )
        {
            IsLoss = true,
        };
    }

    private Prose Why()
    {
        if (found.WhyUnknown is { } why)
        {
            return new Prose($"{Phrase.Sentence(Prose.Text(why))}.");
        }

        string first = found.Raise.Count > 0
            ? $"{Phrase.Sentence(notation.Count(found.Raise.Count, "crop"))} sold below full cost and came in **{Money(found.Short)}** "
                + $"short over the season."
            : NoneCanBePriced ? ""
            : NothingToAsk() ?? "No crop that can be priced sold below full cost.";
        return new Prose((first + (found.Count(PriceStanding.CannotBePriced) == 0 ? Best() : $" {CannotBePriced()}")).Trim());
    }

    // Where no price leaves what is wanted, none is told; sold below full cost they were all the same.
    private string? NothingToAsk()
    {
        List<CropPrice> below = [.. found[PriceStanding.Unknown].Where(price => price.AgainstFullCost.Value < 0m)];
        return below.Count == 0 ? null
            : $"{Phrase.Sentence(notation.Count(below.Count, "crop"))} sold below full cost, and what to ask isn't known: "
                + $"{Prose.Text(below[0].Advice(below[0].SellingUnit).Price.Reason ?? "")}.";
    }

    private bool NoneCanBePriced => found.Count(PriceStanding.CannotBePriced) == found.Book.In(found.Channel).Count();

    private string CannotBePriced()
    {
        List<CropPrice> none = [.. found[PriceStanding.CannotBePriced]];
        (string it, string keep) = none.Count == 1 ? ("it", "it") : ("they", "them");
        return $"{Phrase.List([.. none.Take(3).Select(Link), .. none.Count > 3 ? [$"{none.Count - 3} more"] : Array.Empty<string>()])} "
            + $"can't be priced, since full cost is far above anything {it} ever sold for, and came in "
            + $"**{Money(found.ShortOf(PriceStanding.CannotBePriced))}** short: "
            + PageTarget.Link($"see whether to keep {keep}", PageTarget.Page(ReportCatalog.Name(ReportId.DropOrGrow)))
            + ".";
    }

    private string Best() =>
        found.Book.In(found.Channel).Where(price => price.AgainstFullCost.Value > 0m).MaxBy(price => price.AgainstFullCost.Value)
            is { } most
            ? $" {Link(most)} paid best: {Money(most.AgainstFullCost.Value!.Value)} above full cost."
            : "";

    private string Link(CropPrice price) => PageTarget.Link(price.Crop.Name, PageTarget.Crop(farm.Slugs[price.Crop.Name]));

    private KeyFigure ShortFigure() =>
        found.WhyUnknown is { } why
            ? new("short", "", null, $"what was short isn't known: {why}")
            : NoneCanBePriced
                ? ShortOn(PriceStanding.CannotBePriced, "can't be priced")
                : found.Raise.Count > 0 ? ShortOn(PriceStanding.Raise, "can be priced")
                : new("short", Money(0m), 0m, "short of full cost: no crop that can be priced was");

    private KeyFigure ShortOn(PriceStanding standing, string which) =>
        new(
            "short",
            Money(found.ShortOf(standing)),
            found.ShortOf(standing),
            $"short of full cost, on {notation.Count(found.Count(standing), "crop")} that {which}"
        );

    private KeyFigure Later()
    {
        if (found.WhyUnknown is { } why)
        {
            return new("when-you-can", "", null, $"which crops pay every cost isn't known: {why}");
        }

        int count = found.Count(PriceStanding.WhenYouCan);
        return new(
            "when-you-can",
            $"{count}",
            (decimal)count,
            $"{(count == 1 ? "crop pays" : "crops pay")} every cost, but {PriceFindings.LessThanWanted(found.Book)}"
        );
    }

    private KeyFigure Kept()
    {
        if (found.WhyUnknown is { } why)
        {
            return new("keep", "", null, $"which prices are fine isn't known: {why}");
        }

        int count = found.Count(PriceStanding.Keep);
        return new("keep", $"{count}", (decimal)count, count == 1 ? "crop is fine: keep the price" : "crops are fine: keep the price");
    }

    private KeyFigure Boxes()
    {
        if (shares?.Contents is { Weeks.Count: > 0 } contents)
        {
            return contents.ValueOverPrice is { Value: { } ratio }
                ? new("boxes", BlockNumber.Percent(ratio, notation), ratio, "of what members paid was in the boxes, at list price")
                : new("boxes", "", null, $"what the boxes were worth of their price isn't known: {contents.ValueOverPrice.Reason}");
        }

        List<ChannelComparison> known = [.. ChannelComparison.Of(found.Book).Where(channel => channel.ReturnPerHour.IsAvailable)];
        ChannelComparison? best = known.MaxBy(channel => channel.ReturnPerHour.Value);
        return best?.ReturnPerHour.Value is { } hour
            ? new(
                "hour",
                BlockNumber.Of(hour, Look.Rate, notation),
                hour,
                $"an hour earned at {best.Channel.Name}{(known.Count > 1 ? ", the most of your channels" : "")}"
            )
            : new("hour", "", null, "what an hour earned isn't known");
    }

    private string Money(decimal amount) => BlockNumber.Of(amount, Look.WholeMoney, notation);
}
