using FarmEconomics.Files;
using FarmEconomics.Pricing;
using FarmEconomics.Records;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Pricing;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Answers;

/// <summary>The columns of the table of channels.</summary>
public enum PriceChannelColumn
{
    /// <summary>The channel.</summary>
    Channel,

    /// <summary>Sales.</summary>
    Sales,

    /// <summary>Left over after every cost.</summary>
    LeftOver,

    /// <summary>Hours behind it.</summary>
    Hours,

    /// <summary>What an hour earned.</summary>
    AnHour,

    /// <summary>Thrown out, given away, unsold.</summary>
    NotSold,
}

/// <summary>The parts of the page on prices below its first table: the share, the channels, and the folds.</summary>
internal static class PriceParts
{
    /// <summary>The share in two sentences; null without one.</summary>
    internal static ProseBlock? Share(PriceBook book, SharePricing? shares)
    {
        if (shares is null)
        {
            return null;
        }

        Notation notation = book.Season.Notation;
        ShareContents contents = shares.Contents;
        if (contents.Weeks.Count == 0)
        {
            return new ProseBlock(
                PricesBlock.Share,
                $"Nothing went out through {contents.Channel.Name} in {contents.CropYear}",
                new Prose("What a share must cost can't be told.")
            );
        }

        string Money(decimal value) => BlockNumber.Of(value, value < 100m ? Look.Rate : Look.WholeMoney, notation);
        string heading = (shares.CostPrice.Value, shares.PricePaid.Value) switch
        {
            ({ } cost, { } paid) => $"A full share of {contents.Channel.Name} must cost at least {Money(cost)}; members paid {Money(paid)}",
            _ when shares.IncomeToCover.Value is { } all =>
                $"{contents.Channel.Name} had to bring {Money(all)}; members paid {Money(contents.Income.Amount)}",
            _ => $"What a share of {contents.Channel.Name} must cost isn't known",
        };
        string worth = contents.NoListValue is { } why ? $"What the boxes were worth isn't known: {Prose.Text(why)}. "
            : contents.ValueOverPrice.Value is { } ratio
            ? $"Over {notation.Count(contents.Weeks.Count, "week")} the boxes were worth {Money(contents.ListValue.Amount)} at list "
                + $"price, {BlockNumber.Percent(ratio, notation)} of what members paid. "
            : $"Over {notation.Count(contents.Weeks.Count, "week")} the boxes were worth {Money(contents.ListValue.Amount)} "
                + $"at list price. ";
        string missing = shares.CostPrice.IsAvailable ? "" : shares.IncomeToCover.IsAvailable
            ? "What one share must cost needs the number of members, which the records don't hold."
            : $"{Phrase.Sentence(Prose.Text(shares.IncomeToCover.Reason))}.";
        return new ProseBlock(PricesBlock.Share, heading, new Prose(worth + (missing.Length > 0 ? missing : Least(contents, notation))));
    }

    /// <summary>The channels beside each other, by what an hour earned.</summary>
    internal static TableBlock Channels(PriceBook book)
    {
        List<ChannelComparison> channels =
        [
            .. ChannelComparison
                .Of(book)
                .OrderByDescending(channel => channel.ReturnPerHour.Value ?? decimal.MinValue)
                .ThenBy(channel => channel.Channel.Index),
        ];
        ReportTable table = new ReportTable(
            $"Left over is after every cost, your own hours included. Not sold: thrown out, given away or left, "
                + $"at what the crop sold for on average, {book.Season.CropYear}.",
            book.Season.Notation
        )
            .Column("Channel").As(PriceChannelColumn.Channel)
            .Column("Sales", Look.WholeMoney).As(PriceChannelColumn.Sales)
            .Column("Left over", Look.WholeMoney).As(PriceChannelColumn.LeftOver)
            .WithBar()
            .Column("Hours", Look.Count)
            .As(PriceChannelColumn.Hours)
            .HiddenOnPhone()
            .Column("An hour earned", Look.Rate)
            .As(PriceChannelColumn.AnHour)
            .Column("Not sold", Look.WholeMoney)
            .As(PriceChannelColumn.NotSold)
            .HiddenOnPhone();
        foreach (ChannelComparison channel in channels)
        {
            table.Row(
                channel.Channel.Name,
                ReportCell.Known(channel.Sales, channel.Known.Value),
                channel.NetReturn,
                ReportCell.Known(channel.Hours, channel.Known.Hours),
                channel.ReturnPerHour,
                ReportCell.Known(channel.ThrownOut + channel.GivenAway + channel.Unsold, channel.Known.Value)
            );
        }

        return new TableBlock(PricesBlock.Channels, ChannelsHeading(channels, book.Season.Notation), table);
    }

    /// <summary>Everything about the share, planned boxes included.</summary>
    internal static FoldBlock ShareFold(PriceBook book, PricesParameters asked, ShareTerms terms, ShareReport shares)
    {
        List<(string, object)> shown =
        [
            ("weeks", new Picture(shares.Weeks)),
            ("price", shares.Price()),
            ("members", shares.Members()),
            ("week-table", shares.WeekTable()),
            ("crops", shares.CropTable()),
        ];
        if (asked.Plan.Length > 0 && asked.Members > 0m)
        {
            shown.Add(("planned", ShareReport.Planned(book, terms, SharePlanFile.Read(asked.Plan), asked.Members).Price()));
        }
        else if (asked.Plan.Length > 0)
        {
            shown.Add(("planned", new Prose("A plan of the boxes needs the number of members with a full box.")));
        }

        return Carried.Fold(PricesBlock.Details, "share", "The share: price, members, weeks and crops", shown);
    }

    /// <summary>The channels in full, and goods moved between them.</summary>
    internal static FoldBlock ChannelsFold(PriceBook book, PricesParameters asked, PriceReport prices) =>
        Carried.Fold(
            PricesBlock.Details,
            "channels",
            "Channels: costs, losses, and moving goods from one to another",
            ("table", PriceTables.Channels(book)),
            ("moves-words", prices.MovesInWords(asked.MoveFrom, asked.MoveTo, asked.MovePercent, asked.MovePrice)),
            ("moves", prices.Moves(asked.MoveFrom, asked.MoveTo, asked.MovePercent, asked.MovePrice))
        );

    /// <summary>How "at least" is worked out, and what it rests on.</summary>
    internal static FoldBlock Method(PriceBook book) =>
        Carried.Fold(
            PricesBlock.Details,
            "method",
            "How “at least” is worked out, and what it rests on",
            (
                "words",
                new Prose(
                    "Full cost of the crop there, divided by what was sold, plus the fee, "
                        + "with what you want for each hour or from each price, rounded up to the next step. "
                        + "Never below what you already get. Your own hours count."
                )
            ),
            ("sure", PriceSentences.HowSure(book)),
            ("assumptions", PriceTables.Assumptions(book))
        );

    private static string Least(ShareContents contents, Notation notation)
    {
        ShareWeek? least = contents
            .Weeks.Where(week => contents.ValueOverPriceIn(week).IsAvailable)
            .MinBy(week => contents.ValueOverPriceIn(week).Value);
        return least is null
            ? ""
            : $"Week {least.Number} held least: {BlockNumber.Percent(contents.ValueOverPriceIn(least).Value!.Value, notation)} of "
                + $"that week's part.";
    }

    private static string ChannelsHeading(List<ChannelComparison> channels, Notation notation)
    {
        List<ChannelComparison> known = channels.FindAll(channel => channel.ReturnPerHour.IsAvailable);
        return known.Count < 2 ? "Your channels"
            : $"An hour earned most at {known[0].Channel.Name}: {Hour(known[0])}; least at {known[^1].Channel.Name}: {Hour(known[^1])}";

        string Hour(ChannelComparison channel) => BlockNumber.Of(channel.ReturnPerHour.Value!.Value, Look.Rate, notation);
    }
}
