using FarmEconomics.Pricing;
using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Plots;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Pricing;

/// <summary>Pictures of prices. Each title says the finding, each figure has its text alternative.</summary>
public static class PricePlots
{
    /// <summary>What each crop brought in above or below full cost through one channel.</summary>
    public static Figure AgainstFullCost(PriceBook book, Channel channel, bool onPhone = false)
    {
        Notation notation = book.Season.Notation;
        List<CropPrice> crops = book.In(channel)
            .Where(price => price.AgainstFullCost.IsAvailable)
            .OrderByDescending(price => price.AgainstFullCost.Value)
            .ToList();
        if (crops.Count == 0)
        {
            return SeasonPlots.Nothing($"Prices against full cost: not available ({book.In(channel).Select(price => price.AgainstFullCost.Reason).FirstOrDefault() ?? $"nothing sold through {channel.Name}"})");
        }

        int below = crops.Count(price => price.AgainstFullCost.Value < 0m);
        string title = below == 0
            ? $"Every crop covered its full cost through {channel.Name} in {book.Season.CropYear}"
            : $"{Phrase.Sentence(notation.Count(below, "crop"))} of {crops.Count} brought less than full cost through {channel.Name} in {book.Season.CropYear}";
        int columns = BarColumns.ColumnsFor(crops.Count, onPhone);
        Canvas canvas = new(title, onPhone, BarColumns.HeightFor(crops.Count, columns, onPhone));
        double x = SeasonPlots.Key(canvas, 10, 12, Palette.Dark, "above full cost");
        SeasonPlots.Key(canvas, x + 18, 12, Palette.Loss, "below");
        new BarColumns(
            canvas,
            crops.ConvertAll(price => new BarItem(
                price.Crop.Name,
                [Math.Max(0, (double)price.AgainstFullCost.Value!.Value), Math.Min(0, (double)price.AgainstFullCost.Value.Value)],
                notation.Number(price.AgainstFullCost.Value.Value, Look.WholeMoney))),
            [Palette.Dark, Palette.Loss],
            26
        ).Draw(columns, $"{notation.Currency} against full cost", value => notation.Text($"{value:#,0}"));
        return canvas.ToFigure(
            $"Bars: what {notation.Count(crops.Count, "crop")} brought in through {channel.Name} against full cost. Most above: "
                + Phrase.List(crops.Take(3).Select(Said).ToList())
                + ". Furthest below: "
                + Phrase.List(crops.AsEnumerable().Reverse().Take(3).Select(Said).ToList())
                + "."
        );

        string Said(CropPrice price) => $"{price.Crop.Name} {notation.InWords(price.AgainstFullCost.Value!.Value, Look.WholeMoney)}";
    }

    /// <summary>List value of the boxes week by week against what members paid a week.</summary>
    public static Figure ShareWeeks(PriceBook book, SharePricing shares, bool onPhone = false)
    {
        ShareContents contents = shares.Contents;
        Notation notation = book.Season.Notation;
        if (contents.Weeks.Count == 0)
        {
            return SeasonPlots.Nothing($"Boxes week by week: nothing went out through {contents.Channel.Name} in {contents.CropYear}");
        }

        decimal boxes = shares.FullBoxes.Value ?? 1m;
        string of = shares.FullBoxes.IsAvailable ? "of a full box" : "of all boxes";
        double[] values = contents.Weeks.Select(week => (double)(week.ListValue.Amount / boxes)).ToArray();
        double[] costs = contents
            .Weeks.Select(week =>
                (double)(shares.BoxCost(week).Value ?? ((week.Cost.Value ?? 0m) + ((shares.Handling.Value ?? 0m) / contents.Weeks.Count)))
            )
            .ToArray();
        bool costKnown = shares.TotalCost.IsAvailable;
        double paid = (double)(contents.Income.Amount / boxes / contents.Weeks.Count);
        int under = paid > 0 ? values.Count(value => value < paid) : 0;
        string title =
            contents.Income.Amount == 0m
                ? $"{contents.Channel.Name}: a box is worth {notation.InWords((decimal)values.Average(), Look.Rate)} a week on average"
            : under == 0 ? $"{contents.Channel.Name}: the box was worth its price in every one of {contents.Weeks.Count} weeks"
            : $"{contents.Channel.Name}: in {under} of {contents.Weeks.Count} weeks the box was worth less than a week's part of its price";
        Canvas canvas = new(title, onPhone, 340);
        // On a phone the words of both lines stand below the weeks.
        double left0 = onPhone ? 44 : 64, right = canvas.Width - (onPhone ? 10 : 130), below = onPhone ? 44 : 0;
        Scale up = Scale.Covering(values.Append(paid).Concat(costs), canvas.Bottom - 44 - below, 28, 4);
        foreach (double tick in up.Ticks(4))
        {
            canvas.Line(left0, up[tick], right, up[tick], Palette.Rule);
            canvas.Text(notation.Text($"{tick:#,0}"), left0 - 6, up[tick], 10.5, Palette.Soft, ScottPlot.Alignment.MiddleRight);
        }

        double slot = (right - left0 - 6) / values.Length;
        for (int i = 0; i < values.Length; i++)
        {
            double left = left0 + 6 + (i * slot);
            canvas.Rect(left, up[values[i]], slot * 0.72, up[0] - up[values[i]], Palette.Light);
            if (!onPhone || i % 2 == 0)
            {
                canvas.Centered(contents.Weeks[i].Number.ToString(), left + (slot * 0.36), canvas.Bottom - 32 - below, 10.5, Palette.Soft);
            }

            if (costKnown)
            {
                canvas.Line(left, up[costs[i]], left + (slot * 0.72), up[costs[i]], Palette.Loss, 3);
            }
        }

        canvas.Text($"list value {of} ({notation.Sign})", left0, 12, 11.5);
        canvas.Centered("week of delivery", left0 + 6 + ((right - left0 - 6) / 2.0), canvas.Bottom - 12 - below, 10.5, Palette.Soft);
        if (costKnown)
        {
            double beside = up[costs[^1]] + (paid > 0 && Math.Abs(up[costs[^1]] - up[paid]) < 14 ? 14 : 0);
            canvas.Text("cost, with handling", onPhone ? left0 : right + 8, onPhone ? canvas.Bottom - 12 : beside, 11.5, Palette.LossText);
        }

        if (paid > 0)
        {
            canvas.Line(left0, up[paid], right + (onPhone ? 0 : 2), up[paid], Palette.Dark, 2);
            string price = $"price paid {notation.InWords((decimal)paid, Look.Rate)}";
            canvas.Text(price, onPhone ? left0 : right + 8, onPhone ? canvas.Bottom - 32 : up[paid], 11.5, Palette.Dark);
        }

        return canvas.ToFigure($"Bars: list value {of} in each of {contents.Weeks.Count} weeks, from {notation.InWords((decimal)values.Min(), Look.Rate)} to {notation.InWords((decimal)values.Max(), Look.Rate)}"
            + (paid > 0 ? $", against {notation.InWords((decimal)paid, Look.Rate)} a week that members paid" : "")
            + (costKnown ? $"; red strokes: what it cost, {notation.InWords((decimal)costs.Average(), Look.Rate)} on average." : "."));
    }
}
