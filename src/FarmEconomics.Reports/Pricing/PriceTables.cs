using FarmEconomics.Pricing;
using FarmEconomics.Records;
using FarmEconomics.Reports.Season;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;
using FarmEconomics.Units;

namespace FarmEconomics.Reports.Pricing;

/// <summary>Prices as tables. Each price is per the unit named beside it.</summary>
public static class PriceTables
{
    private const string Ladder = "Break-even, short run = what would be saved if the crop weren't grown; break-even = full cost, "
        + "with its part of fixed and channel cost; wanted = the wanted return, never under break-even. "
        + "All are grossed up for the channel's fee.";

    /// <summary>What the prices rest on.</summary>
    public static ReportTable Assumptions(PriceBook book)
    {
        (Notation notation, PriceTerms terms) = (book.Season.Notation, book.Rules.Terms);
        return new ReportTable($"What the prices of {book.Season.CropYear} rest on", notation)
            .Column("Assumption").Column("Value").Column("What it means")
            .Row(
                "wanted",
                book.Rules.TargetInWords,
                terms.WantedMarginPercent is not null || terms.WantedPerHour is not null
                    ? "Given for this run."
                    : "Not given: a quarter above what an hour cost the farm this season, rounded up."
            )
            .Row(
                "price step",
                notation.InWords(terms.Step, Look.Rate),
                "At least = the wanted price, rounded up to the next step; keep = what it sold for, or its list price, covers that already."
            )
            .Row(
                "can't be priced",
                notation.Text($"full cost above {terms.FarAbovePercent:0.##}% of the most it ever sold for"),
                "The most = the best mean of a season and channel, list price or reference price on record. Ours, no source."
            )
            .Row(
                "failed yield",
                notation.Text($"under {terms.FailedYieldPercent:0.##}% of normal"),
                "Normal = the median of the crop's own yields per length of bed over the years that are over."
            )
            .Row(
                "units that carry cost",
                "sold",
                "What was eaten and what is on hand, where that counts, come off the cost at their value. "
                    + "What was given away, thrown out or lost rests on what is sold."
            )
            .Row(
                "channel cost",
                "what the channel itself cost",
                "Market stand, driving, hours standing there: divided by sales value over what was sold there; "
                    + "in break-even and wanted, not in break-even, short run."
            );
    }

    /// <summary>Every price of one channel, in the unit most of it was sold in; null: of all channels.</summary>
    public static ReportTable Prices(PriceBook book, Channel? channel = null)
    {
        Notation notation = book.Season.Notation;
        string where = channel is null ? "in every channel" : $"through {channel.Name}";
        TableOf<CropPrice> columns = new ReportTable($"Prices {where}, {book.Season.CropYear}", notation)
            .Opens()
            .Note(Ladder)
            .Note("Against = money that came in after fees, less what the break-even (or the wanted) price would have brought; "
                + "below 0 is a shortfall.")
            .Of<CropPrice>()
            .Column("Crop", price => price.Crop.Name);
        ReportTable table = (channel is null ? columns.Column("Channel", price => price.Channel.Name) : columns)
            .Column("Unit", price => price.SellingUnit)
            .Column("Break-even, short run", Look.Rate, price => Set(price).Floor)
            .Column("Break-even", Look.Rate, price => Set(price).FullCost)
            .Column("Wanted", Look.Rate, price => Wanted(Set(price)))
            .Column("Price", price => PriceWords.Cell(price.Advice(price.SellingUnit), notation))
            .Column("Sold for", Look.Rate, price => Times(price.Realized, Size(price)))
            .Column("Lowest", Look.Rate, price => Times(price.Lowest, Size(price)))
            .Column("Highest", Look.Rate, price => Times(price.Highest, Size(price)))
            .Column("List price", Look.Rate, price => Times(price.ListPrice, Size(price)))
            .Column("Reference", Look.Rate, price => price.References.Count == 0 ? "" : Times(price.Reference, Size(price)))
            .Column("Sold", Look.Quantity, price => price.Sold.Quantity / Size(price))
            .Column("Against break-even over the season", Look.Money, price => price.AgainstFullCost)
            .Column("Against wanted", Look.Money, price => price.AgainstTarget)
            .Rows(book.Prices.Where(price => channel is null || price.Channel == channel));
        Dictionary<Crop, ElsewherePrice> elsewhere = channel is null ? [] : book.Elsewhere(channel).ToDictionary(price => price.Crop);
        foreach (CropWithoutPrice missing in book.WithoutPrice.Where(item => item.Channel is null || item.Channel == channel))
        {
            table.Row(elsewhere.TryGetValue(missing.Crop, out ElsewherePrice? price)
                ? Elsewhere(price, missing, notation)
                : Missing(book, missing, channel));
        }

        return table;

        static decimal Size(CropPrice price) => price.BaseUnits(price.SellingUnit);

        static PriceSet Set(CropPrice price) => price.Prices.For(Size(price));
    }

    private static ReportCell Wanted(PriceSet set) => ((ReportCell)set.Target).Marked(
        set.TargetIsFullCost ? "the wanted return is below what labor cost: full cost stands" : null);

    private static ReportCell[] Elsewhere(ElsewherePrice price, CropWithoutPrice missing, Notation notation)
    {
        decimal size = price.Crop.ToBase(1m, price.Unit);
        PriceSet set = price.Prices.For(size);
        ReportCell none = ReportCell.Missing(missing.Reason);
        return
        [
            price.Crop.Name,
            price.Unit,
            set.Floor,
            ((ReportCell)set.FullCost).Marked(PriceWords.Elsewhere),
            ((ReportCell)set.Target).Marked(PriceWords.Elsewhere),
            PriceWords.Cell(price.Advice, notation, PriceWords.Elsewhere),
            none,
            none,
            none,
            Times(price.ListPrice, size),
            "",
            none,
            none,
            none,
        ];
    }

    private static ReportCell[] Missing(PriceBook book, CropWithoutPrice missing, Channel? channel)
    {
        ReportCell none = ReportCell.Missing(missing.Reason);
        return
        [
            missing.Crop.Name,
            .. channel is null ? new ReportCell[] { "any" } : [],
            missing.Crop.Unit,
            none,
            none,
            none,
            none,
            none,
            none,
            none,
            channel is null ? none : Times(book.ListPriceOf(missing.Crop, channel), 1m),
            "",
            none,
            none,
            none,
        ];
    }

    /// <summary>The price and full cost in every unit a crop has, one channel.</summary>
    public static ReportTable Units(PriceBook book, Channel channel)
    {
        ReportTable table = new ReportTable($"The same per other units, {channel.Name}", book.Season.Notation)
            .Column("Crop")
            .Column("Unit")
            .Column("Holds", Look.Exact)
            .Column("of")
            .Column("Break-even, short run", Look.Rate)
            .Column("Break-even", Look.Rate)
            .Column("Wanted", Look.Rate)
            .Column("Price");
        foreach (CropPrice price in book.In(channel).Where(price => price.Units.Count > 1))
        {
            foreach (string unit in price.Units)
            {
                PriceSet set = price.InUnit(unit);
                table.Row(
                    price.Crop.Name,
                    unit,
                    price.BaseUnits(unit),
                    price.Crop.Unit,
                    set.Floor,
                    set.FullCost,
                    set.Target,
                    PriceWords.Cell(price.Advice(unit), book.Season.Notation)
                );
            }
        }

        return table;
    }

    /// <summary>What a unit brought month by month, one channel, beside full cost.</summary>
    public static ReportTable Months(PriceBook book, Channel channel)
    {
        List<DateOnly> months = book.In(channel)
            .SelectMany(price => price.ByMonth.Select(month => month.Month))
            .Distinct()
            .Order()
            .ToList();
        ReportTable table = new ReportTable($"What a unit sold for at {channel.Name}, month by month", book.Season.Notation)
            .Column("Crop")
            .Column("Unit")
            .Column("Break-even", Look.Rate);
        months.ForEach(month => table.Column(month.ToString("yyyy-MM"), Look.Rate));
        foreach (CropPrice price in book.In(channel))
        {
            string unit = price.SellingUnit;
            decimal size = price.BaseUnits(unit);
            table.Row([
                price.Crop.Name,
                unit,
                Times(price.Prices.FullCost, size),
                .. months.Select<DateOnly, ReportCell>(month =>
                    price.ByMonth.FirstOrDefault(item => item.Month == month) is { } sold ? Times(sold.Price, size) : (string?)null
                ),
            ]);
        }

        return table.Note("An empty cell: none of it was sold there in that month.");
    }

    /// <summary>Crops whose yield failed, at the season's yield and at a normal one.</summary>
    public static ReportTable NormalYield(PriceBook book, Channel channel) =>
        new ReportTable($"Prices at a normal yield, {channel.Name}", book.Season.Notation).Opens().Of<CropPrice>()
            .Column("Crop", price => price.Crop.Name)
            .Column("Unit", price => price.Crop.Unit)
            .Column(book.Season.Settings.LengthUnit.Label("Picked per bed-foot"), Look.Exact, price => price.Yields.Yield)
            .Column("Normal", Look.Exact, price => price.Yields.Normal)
            .Column($"Break-even at the yield of {book.Season.CropYear}", Look.Rate, price => price.Prices.FullCost)
            .Column("Break-even at a normal yield", Look.Rate, price => price.AtNormalYield!.FullCost)
            .Column("Wanted at a normal yield", Look.Rate, price => price.AtNormalYield!.Target)
            .Rows(book.In(channel).Where(price => price.AtNormalYield is not null))
            .Note(
                book.Season.Notation.Text(
                    $"Crops picked under {book.Rules.Terms.FailedYieldPercent:0.##}% of normal. "
                        + $"Normal = the median over the years that are over. "
                        + $"At a normal yield the cost of beds, market days and deliveries, and fixed cost, spread over more units; "
                        + $"picking and packing cost the same per unit. "
                        + $"All other prices here are at the season's own yield."
                )
            );

    /// <summary>Somebody else's prices beside the farm's own, kept apart.</summary>
    public static ReportTable References(PriceBook book, Channel channel)
    {
        ReportTable table = new ReportTable("Reference prices (somebody else's), beside yours", book.Season.Notation)
            .Column("Crop")
            .Column("Unit")
            .Column("Reference", Look.Rate)
            .Column("From", Look.Date)
            .Column($"Sold for at {channel.Name}", Look.Rate)
            .Column("Break-even", Look.Rate)
            .Note("For comparison only.");
        foreach (CropPrice price in book.In(channel))
        {
            foreach (ReferencePrice reference in price.References)
            {
                table.Row(
                    price.Crop.Name,
                    price.Crop.Unit,
                    reference.PerUnit,
                    reference.Row.From is { } from ? from : (ReportCell)"",
                    price.Realized,
                    price.Prices.FullCost
                );
            }
        }

        return table;
    }

    /// <summary>The channels beside each other.</summary>
    public static ReportTable Channels(PriceBook book)
    {
        Notation notation = book.Season.Notation;
        decimal elsewhere = ChannelComparison.LossWithoutChannel(book);
        IReadOnlyList<Crop> unpriced = ChannelComparison.LossesWithoutPrice(book);
        return new ReportTable($"The channels of {book.Season.CropYear} side by side", notation)
            .Note("Hours: growing, picking, packing and selling behind what was sold there. "
                + "Thrown out, given away and unsold are at the price the crop brought on average; "
                + "no record says which channel they were meant for, so they are laid on the channels that drew on the same "
                + "harvest, by quantity.")
            .Note(elsewhere > 0m
                ? $"Harvests that no channel drew on: {notation.InWords(elsewhere, Look.WholeMoney)} more was thrown out, "
                    + $"given away or never sold."
                : null)
            .Note(unpriced.Count == 0
                ? null
                : $"Nothing of {Phrase.List([.. unpriced.Select(crop => crop.Name)])} was sold, so there is no price to tell its loss at: "
                    + $"what was thrown out, given away or left of it is in none of these figures.")
            .Of<ChannelComparison>()
            .Column("Channel", channel => channel.Channel.Name)
            .Column("Kind", channel => SeasonTables.KindOf(book.Season, channel.Channel))
            .Column("Sales", Look.WholeMoney, channel => channel.Sales)
            .Column("Fees", Look.WholeMoney, channel => channel.Fees)
            .Column("Cost of the produce", Look.WholeMoney, channel => WhereKnown(channel, channel.Goods.Full))
            .Column("Channel's own cost", Look.WholeMoney, channel => WhereKnown(channel, channel.ChannelCost.Full))
            .Column("Left over", Look.WholeMoney, channel => channel.NetReturn)
            .Column("Hours", Look.Hours, channel => ReportCell.Known(channel.Hours, channel.Known.Hours))
            .Column("Return to labor", Look.Rate, channel => channel.ReturnPerHour, per: "hour")
            .Column("Thrown out", Look.WholeMoney, channel => channel.ThrownOut)
            .Column("Given away", Look.WholeMoney, channel => channel.GivenAway)
            .Column("Unsold", Look.WholeMoney, channel => channel.Unsold)
            .Rows(ChannelComparison.Of(book));

        static ReportCell WhereKnown(ChannelComparison channel, decimal cost) => ReportCell.Known(cost, channel.Known.NoFullNetReturn);
    }

    /// <summary>What moving a part of every crop from one channel to another would have changed, largest gain first.</summary>
    public static ReportTable Moves(PriceBook book, Channel from, Channel to, decimal percent, decimal priceFactor = 1m)
    {
        Notation notation = book.Season.Notation;
        string times = priceFactor == 1m ? "" : notation.Text($", times {priceFactor:0.###}");
        IEnumerable<ChannelMove> moves = book.In(from)
            .Select(price => ChannelMove.Of(book, price.Crop, from, to, percent, priceFactor))
            .OrderByDescending(move => move.ShortRun.IsAvailable)
            .ThenByDescending(move => move.ShortRun.Value)
            .ThenBy(move => move.Crop.Index);
        return new ReportTable(notation.Text($"If {percent:0.##}% of what went through {from.Name} had gone through {to.Name}"), notation)
            .Note($"Each figure is new less old. The price there is what the crop brought there, else its list price{times}; "
                + $"whether the market takes more at that price, no record tells.")
            .Of<ChannelMove>()
            .Column("Crop", move => move.Crop.Name)
            .Column("Quantity", Look.Quantity, move => move.Quantity)
            .Column("Unit", move => move.Crop.Unit)
            .Column("Price now", Look.Rate, move => move.PriceFrom)
            .Column("Price there", Look.Rate, move => move.PriceTo)
            .Column("Sales", Look.Money, move => move.Sales)
            .Column("Fees", Look.Money, move => move.Fees)
            .Column("Gain if stand and time stay", Look.Money, move => move.ShortRun)
            .Column("Hours", Look.Hours, move => move.Hours)
            .Column("Gain if they follow the goods", Look.Money, move => move.LongRun)
            .Rows(moves);
    }

    internal static Result Times(Result rate, decimal factor) => rate.Value is { } value ? Result.Known(value * factor) : rate;
}
