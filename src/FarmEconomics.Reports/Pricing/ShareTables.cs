using FarmEconomics.Pricing;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Pricing;

/// <summary>A share as tables: week by week, crop by crop, and what it must cost.</summary>
public static class ShareTables
{
    /// <summary>Each week's boxes.</summary>
    public static ReportTable Weeks(PriceBook book, SharePricing shares)
    {
        ShareContents contents = shares.Contents;
        TableOf<ShareWeek> columns = new ReportTable($"{contents.Channel.Name} week by week, {contents.CropYear}", book.Season.Notation)
            .Note("Value in % of price: list value against the week's part of what members paid (the season's, in equal parts).")
            .Note(shares.FullBoxes.IsAvailable
                ? "Cost of a box: its contents at full production cost and its part of packing and handing out."
                : $"Values per box are not available: {shares.FullBoxes.Reason}.")
            .Of<ShareWeek>()
            .Column("Week", week => $"{week.Number}")
            .Column("From", Look.Date, week => week.First is { } first ? first : "")
            .Column("Crops", Look.Count, week => week.Items.Count)
            .Column("List value, all boxes", Look.Money, week => ReportCell.Known(week.ListValue, week.NoListValue))
            .Column("Contents cost, all boxes", Look.Money, week => week.Cost)
            .Column("Value in % of price", Look.Percent, week => contents.ValueOverPriceIn(week));
        List<ReportCell> season =
            ["Season", "", contents.ByCrop.Count, Listed(contents), contents.Cost, contents.ValueOverPrice];
        if (shares.FullBoxes.IsAvailable)
        {
            columns.Column("List value of a full box", Look.Rate, week => shares.BoxValue(week))
                .Column("Cost of a full box", Look.Rate, week => shares.BoxCost(week));
            season.AddRange(["", ""]);
        }

        ReportTable table = columns.Rows(contents.Weeks);
        return contents.Weeks.Count == 0 ? table : table.Total(season);
    }

    /// <summary>The season's boxes crop by crop, with the share income imputed to each.</summary>
    public static ReportTable Crops(PriceBook book, ShareContents contents)
    {
        ReportTable table = new ReportTable($"What was in {contents.Channel.Name}, {contents.CropYear}", book.Season.Notation)
            .Opens()
            .Column("Crop")
            .Column("Quantity", Look.Quantity)
            .Column("Unit")
            .Column("List value", Look.Money)
            .Column("Share income imputed", Look.Money)
            .Column("Production cost", Look.Money)
            .Note("Share income goes to the crops by list value (relative sales value); the parts sum to the income to the cent.");
        foreach (ShareItem item in contents.ByCrop)
        {
            ReportCell listed = ReportCell.Known(item.ListValue, item.NoListValue);
            table.Row(item.Crop.Name, item.Quantity, item.Crop.Unit, listed, item.Income, item.Cost);
        }

        return contents.Weeks.Count == 0 ? table : table.Total("All crops", "", "", Listed(contents), contents.Income, contents.Cost);
    }

    private static ReportCell Listed(ShareContents contents) => ReportCell.Known(contents.ListValue, contents.NoListValue);

    /// <summary>What a share must cost, and what if.</summary>
    public static ReportTable Price(PriceBook book, SharePricing shares, ShareTerms terms)
    {
        Notation notation = book.Season.Notation;
        string who = notation.Text($"{terms.FewerMembersPercent:0.##}% fewer members");
        ReportTable table = new ReportTable($"What a share of {shares.Contents.Channel.Name} must cost", notation)
            .Column("Figure").Column("Amount", Look.Money).Column("What it says");
        foreach ((string figure, ReportCell amount, string says) in Figures(shares, terms, who, notation))
        {
            table.Row(figure, amount, says);
        }

        string counted = terms.Members is null
            ? "the income over the price of a share: the records hold no number of boxes"
            : terms.HalfMembers > 0m ? "given for this run; half boxes count by their contents" : "given for this run";
        string boxes = shares.FullBoxes.Value is { } count
            ? notation.Text($"Full boxes' worth of members: {count:0.##}, {counted}.")
            : $"Full boxes' worth of members: not available ({shares.FullBoxes.Reason}).";
        string discount = shares.HighestEarlyDiscountPercent.Value is { } percent
            ? notation.Text($"A discount for paying {terms.MonthsEarlier:0.##} months early is worth giving up to "
                + $"{percent:0.##}%: beyond that, borrowing costs less.")
            : $"The highest discount worth giving is not available ({shares.HighestEarlyDiscountPercent.Reason}).";
        string fewer = shares.FewerMembersValueOverPrice.Value is { } ratio
            ? notation.Text($"With {who}, the others' boxes would be worth {ratio * 100m:0}% of their price if they shared "
                + $"what was grown. After a bad week the season's boxes are worth {(shares.BadWeekValueOverPrice.Value ?? 0m) * 100m:0}% "
                + $"of their price.")
            : $"Value in % of price is not available ({shares.FewerMembersValueOverPrice.Reason}).";
        return table.Note(boxes).Note(fewer).Note(discount);
    }

    // Only a farm that has half boxes is told what they must cost.
    private static (string Figure, ReportCell Amount, string Says)[] HalfFigures(
        SharePricing shares, ShareTerms terms, Notation notation) =>
        terms.HalfMembers <= 0m
            ? []
            :
            [
                ("half share that covers cost", shares.HalfCostPrice, notation.Text($"{terms.HalfContents * 100m:0.##}% of the contents.")),
                (
                    notation.Text($"half share with {terms.WantedMarginPercent:0.##}% left over"),
                    shares.HalfTargetPrice,
                    "More than half of a full share: the box is packed and handed out all the same."
                ),
            ];

    private static IEnumerable<(string Figure, ReportCell Amount, string Says)> Figures(
        SharePricing shares, ShareTerms terms, string who, Notation notation) =>
        [
            (
                "price of a full share now",
                shares.PricePaid,
                terms.Price is null ? "What members paid, over the full boxes' worth of members." : "Given for this run."
            ),
            ("contents of a full share", shares.ContentsCost, "Production cost over the season."),
            (
                "packing and handing out, per box",
                shares.HandlingPerBox,
                terms.HalfMembers > 0m ? "The channel's own cost; a half box takes as much as a full one." : "The channel's own cost."
            ),
            ("price that covers cost", shares.CostPrice, "Full share."),
            (notation.Text($"price with {terms.WantedMarginPercent:0.##}% left over"), shares.TargetPrice, "Full share."),
            .. HalfFigures(shares, terms, notation),
            (
                "all members together paid",
                shares.Contents.Planned ? ReportCell.Missing("a plan has no income yet") : shares.Contents.Income,
                "Share income of the crop year."
            ),
            (
                "all members together, to cover cost",
                shares.IncomeToCover,
                "Contents, packing and handing out; known without knowing how many members there are."
            ),
            (
                notation.Text($"all members together, with {terms.WantedMarginPercent:0.##}% left over"),
                shares.IncomeForTarget,
                "The same with the wanted margin."
            ),
            ("left over this season", shares.NetReturn, "What members paid less fees and all cost."),
            (
                $"with {who}",
                shares.FewerMembersChange,
                "Change in money when the season is grown all the same and nothing is sold elsewhere."
            ),
            ($"price that makes up for {who}", shares.FewerMembersPrice, "Full share."),
            (
                "a bad week",
                shares.BadWeekValue,
                notation.Text($"List value missing when {terms.BadWeekPercent:0.##}% of an average week fails.")
            ),
            (
                notation.Text($"price with {terms.EarlyDiscountPercent:0.##}% off for paying early"),
                shares.PriceWithEarlyDiscount,
                notation.Text(
                    $"Full price at which the income stays, when {terms.EarlyMembers * 100m:0.##}% of members take it."
                )
            ),
        ];

    /// <summary>Price and members against each other.</summary>
    public static ReportTable Members(PriceBook book, SharePricing shares, params IReadOnlyList<decimal> members)
    {
        ReportTable table = new ReportTable("Price of a full share by number of members", book.Season.Notation)
            .Column("Members", Look.Count).Column("Price that covers cost", Look.Rate).Column("Price with the wanted margin", Look.Rate);
        if (!shares.FullBoxes.IsAvailable)
        {
            return table.Note($"Not available: {shares.FullBoxes.Reason}.");
        }

        foreach (decimal count in members)
        {
            table.Row(count, shares.PriceFor(count, 0m), shares.PriceFor(count));
        }

        if (shares.PricePaid.Value is { } price)
        {
            table.Note($"At {book.Season.Notation.InWords(price, Look.Rate)} a share, {Cover(shares.MembersToCover(price))} cover cost "
                + $"when the contents grow with members; "
                + $"once the season is grown, {Cover(shares.MembersToCoverGrown(price))} are needed.");
        }

        return table;

        string Cover(Units.Result rate) =>
            rate.Value is { } count ? book.Season.Notation.Text($"{count:0} members") : $"no number of members ({rate.Reason})";
    }
}
