using FarmEconomics.Pricing;
using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;
using FarmEconomics.Units;

namespace FarmEconomics.Reports.Pricing;

/// <summary>Advice on prices in words: "at least 3.75", "keep 4.00", "can't be priced".</summary>
public static class PriceWords
{
    /// <summary>What a mark beside a price of a crop that wasn't sold there says.</summary>
    internal const string Elsewhere =
        "Not sold there that season: its part of the channel's cost is taken as that of the crops that were, in proportion to sales.";

    /// <summary>The advice without a unit.</summary>
    public static string Of(PriceAdvice advice, Notation notation)
    {
        ArgumentNullException.ThrowIfNull(advice);
        return advice.Kind switch
        {
            AdviceKind.AtLeast => $"at least {notation.Number(advice.Price.Value!.Value, Look.Rate)}",
            AdviceKind.Keep => $"keep {notation.Number(advice.Price.Value!.Value, Look.Rate)}",
            AdviceKind.CannotBePriced => "can't be priced",
            _ => Looks.NotAvailable,
        };
    }

    /// <summary>The advice as a cell: its reason, or that it is for a normal yield, is a mark.</summary>
    internal static ReportCell Cell(PriceAdvice advice, Notation notation, string? mark = null) => advice.Kind == AdviceKind.Unknown
        ? ReportCell.Missing(advice.Price.Reason ?? "not recorded")
        : ((ReportCell)Of(advice, notation))
            .Marked(advice.Kind == AdviceKind.CannotBePriced ? Phrase.Sentence(advice.Price.Reason!) + "." : mark
            ?? (advice.AtNormalYield ? "The yield failed by the crop's own record: the price is for a normal yield." : null));

    /// <summary>What moving a part of every crop to another channel would have brought, in money and hours.</summary>
    internal static Prose Moves(PriceBook book, IReadOnlyList<ChannelMove> moves, decimal percent)
    {
        Notation notation = book.Season.Notation;
        List<ChannelMove> known = [.. moves.Where(move => move.ShortRun.IsAvailable && move.Quantity > 0m)];
        if (known.Count == 0)
        {
            return new Prose($"What moving goods would bring can't be "
                + $"told{(moves.Count > 0 && moves[0].ShortRun.Reason is { } reason ? $" ({Prose.Text(reason)})" : "")}.");
        }

        List<ChannelMove> hours = [.. known.Where(move => move.LongRun.IsAvailable)];
        List<ChannelMove> gain = [.. known.Where(move => move.ShortRun.Value > 0m).OrderByDescending(move => move.ShortRun.Value)];
        string text = $"Moving {notation.Text($"{percent:0.##}")}% of what went through {Phrase.Bold(known[0].From.Name)} to "
            + $"{Phrase.Bold(known[0].To.Name)} would have brought {More(known.Sum(move => move.ShortRun.Value!.Value))} after fees, "
            + $"at the prices there and with stand, driving and hours as they were.";
        string some = hours.Count == known.Count ? ""
            : $" ({hours.Count} of {notation.Count(known.Count, "crop")}; the others never went there)";
        text += hours.Count == 0 ? ""
            : $" If those follow the goods: {More(hours.Sum(move => move.LongRun.Value!.Value))}, "
                + $"and {Hours(hours.Sum(move => move.Hours.Value!.Value))}{some}.";
        return new Prose(text
            + (gain.Count > 0
                ? $" Most from {Phrase.List(gain.Take(3), move => move.Crop.Name, Gained)}."
                : " No crop would have gained."));

        string Gained(ChannelMove move) => notation.InWords(move.ShortRun.Value!.Value, Look.WholeMoney);

        string More(decimal money) => $"{notation.InWords(Math.Abs(money), Look.WholeMoney)} {(money < 0m ? "less" : "more")}";

        string Hours(decimal change) => $"{notation.Number(Math.Abs(change), Look.Hours)} hours {(change < 0m ? "less" : "more")}";
    }

    /// <summary>
    /// What a tenth more on the price would do at an elasticity the grower names, and the price at which more no longer pays; one channel.
    /// </summary>
    public static ReportTable Elastic(PriceBook book, Channel channel, decimal elasticity)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(channel);
        Notation notation = book.Season.Notation;
        string title = notation.Text($"A price 10% higher at an elasticity of {Math.Abs(elasticity):0.##}, {channel.Name}");
        ReportTable table = new ReportTable(title, notation)
            .Opens()
            .Column("Crop").Column("Unit").Column("Sold for", Look.Rate).Column("Sold", Look.Percent)
            .Column("Sales after fees", Look.WholeMoney).Column("Picking, packing, selling", Look.WholeMoney)
            .Column("Left over", Look.WholeMoney).Column("Best price", Look.Rate)
            .Note("Each figure but the last is after less before. Best price: where a unit more earns just what picking, "
                + "packing and selling it costs, if the elasticity held all the way there; it seldom does far from the price you have.")
            .Note(notation.Text($"The elasticity is yours: no record of one farm tells it. Fresh vegetables in shops: "
                + $"mostly under 1 (Naanwaab and Yeboah 2012); all vegetables about {0.6m} (Andreyeva, Long and Brownell 2010, "
                + $"from memory). A single stand among others faces more."));
        foreach (CropPrice price in book.In(channel))
        {
            table.Row(ElasticRow(price, elasticity));
        }

        return table;
    }

    private static IReadOnlyList<ReportCell> ElasticRow(CropPrice price, decimal elasticity)
    {
        const decimal Raise = 1.1m;
        decimal quantity = PriceMath.QuantityFactor(Raise, elasticity);
        decimal size = price.BaseUnits(price.SellingUnit), kept = 1m - (price.FeePercent / 100m);
        Result sales = price.Realized.Value is { } got ? Result.Known(got * kept * price.Sold.Quantity * ((Raise * quantity) - 1m))
            : price.Realized;
        Result handling = price.Handling.Value is { } cost ? Result.Known(cost * price.Sold.Quantity * (quantity - 1m)) : price.Handling;
        Result left =
            sales.Value is { } more && handling.Value is { } less ? Result.Known(more - less)
            : sales.IsAvailable ? handling
            : sales;
        Result best = PriceMath.BestPrice(price.Handling, price.FeePercent, elasticity);
        return
        [
            price.Crop.Name, price.SellingUnit, PriceTables.Times(price.Realized, size), quantity - 1m, sales, handling, left,
            PriceTables.Times(best, size),
        ];
    }
}
