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
            string why = book.In(channel).FirstOrDefault()?.AgainstFullCost.Reason ?? $"nothing sold through {channel.Name}";
            return SeasonPlots.Nothing($"Prices against full cost: not available ({why})");
        }

        int below = crops.Count(price => price.AgainstFullCost.Value < 0m);
        string title = below == 0
            ? $"Every crop covered its full cost through {channel.Name} in {book.Season.CropYear}"
            : $"{Phrase.Sentence(notation.Count(below, "crop"))} of {crops.Count} brought less than full cost through {channel.Name} in "
                + $"{book.Season.CropYear}";
        int columns = BarColumns.ColumnsFor(crops.Count, onPhone);
        Canvas canvas = new(title, onPhone, BarColumns.HeightFor(crops.Count, columns, onPhone));
        double x = SeasonPlots.Key(canvas, 10, 12, Palette.Dark, "above full cost");
        SeasonPlots.Key(canvas, x + 18, 12, Palette.Loss, "below");
        List<BarItem> bars = crops.ConvertAll(price => new BarItem(
            price.Crop.Name,
            [Math.Max(0, (double)price.AgainstFullCost.Value!.Value), Math.Min(0, (double)price.AgainstFullCost.Value.Value)],
            notation.Number(price.AgainstFullCost.Value.Value, Look.WholeMoney)));
        new BarColumns(canvas, bars, [Palette.Dark, Palette.Loss], 26)
            .Draw(columns, $"{notation.Currency} against full cost", value => notation.Text($"{value:#,0}"));
        return canvas.ToFigure(
            $"Bars: what {notation.Count(crops.Count, "crop")} brought in through {channel.Name} against full cost. "
            + $"Most above: {Phrase.List(crops.Take(3).Select(Said).ToList())}. "
            + $"Furthest below: {Phrase.List(crops.AsEnumerable().Reverse().Take(3).Select(Said).ToList())}.");

        string Said(CropPrice price) => $"{price.Crop.Name} {notation.InWords(price.AgainstFullCost.Value!.Value, Look.WholeMoney)}";
    }

    private static string? NothingToShow(ShareContents contents) => contents.Weeks.Count > 0 ? contents.NoListValue
        : $"nothing went out through {contents.Channel.Name} in {contents.CropYear}";

    /// <summary>List value of the boxes week by week against what members paid a week.</summary>
    public static Figure ShareWeeks(PriceBook book, SharePricing shares, bool onPhone = false)
    {
        ShareContents contents = shares.Contents;
        Notation notation = book.Season.Notation;
        if (NothingToShow(contents) is { } why)
        {
            return SeasonPlots.Nothing($"Boxes week by week: {why}");
        }

        BoxWeeks boxes = new(shares);
        Canvas canvas = new(TitleOf(boxes, contents, notation), onPhone, 340);
        // On a phone the words of both lines stand below the weeks.
        double left = onPhone ? 44 : 64, right = canvas.Width - (onPhone ? 10 : 130), below = onPhone ? 44 : 0;
        Scale up = Scale.Covering(boxes.Values.Append(boxes.Paid).Concat(boxes.Costs), canvas.Bottom - 44 - below, 28, 4);
        DrawTicks(canvas, notation, up, (left, right));
        DrawWeeks(canvas, boxes, contents, up, (left, right, below));
        string of = shares.FullBoxes.IsAvailable ? "of a full box" : "of all boxes";
        canvas.Text($"list value {of} ({notation.Sign})", left, 12, 11.5);
        canvas.Centered("week of delivery", left + 6 + ((right - left - 6) / 2.0), canvas.Bottom - 12 - below, 10.5, Palette.Soft);
        string paid = notation.InWords((decimal)boxes.Paid, Look.Rate);
        if (boxes.CostKnown)
        {
            double last = up[boxes.Costs[^1]], beside = last + (boxes.Paid > 0 && Math.Abs(last - up[boxes.Paid]) < 14 ? 14 : 0);
            canvas.Text("cost, with handling", onPhone ? left : right + 8, onPhone ? canvas.Bottom - 12 : beside, 11.5, Palette.LossText);
        }

        if (boxes.Paid > 0)
        {
            double y = up[boxes.Paid];
            canvas.Line(left, y, right + (onPhone ? 0 : 2), y, Palette.Dark, 2);
            canvas.Text($"price paid {paid}", onPhone ? left : right + 8, onPhone ? canvas.Bottom - 32 : y, 11.5, Palette.Dark);
        }

        string cost = notation.InWords((decimal)boxes.Costs.Average(), Look.Rate);
        return canvas.ToFigure($"Bars: list value {of} in each of {contents.Weeks.Count} weeks, "
            + $"from {notation.InWords((decimal)boxes.Values.Min(), Look.Rate)} to "
            + $"{notation.InWords((decimal)boxes.Values.Max(), Look.Rate)}"
            + (boxes.Paid > 0 ? $", against {paid} a week that members paid" : "")
            + (boxes.CostKnown ? $"; red strokes: what it cost, {cost} on average." : "."));
    }

    /// <summary>What a full box was worth and cost week by week, and a week's part of what was paid for it.</summary>
    private sealed class BoxWeeks
    {
        internal BoxWeeks(SharePricing shares)
        {
            IReadOnlyList<ShareWeek> weeks = shares.Contents.Weeks;
            decimal boxes = shares.FullBoxes.Value ?? 1m, handling = (shares.Handling.Value ?? 0m) / weeks.Count;
            Values = [.. weeks.Select(week => (double)(week.ListValue.Amount / boxes))];
            Costs = [.. weeks.Select(week => (double)(shares.BoxCost(week).Value ?? ((week.Cost.Value ?? 0m) + handling)))];
            CostKnown = shares.TotalCost.IsAvailable;
            Paid = (double)(shares.Contents.Income.Amount / boxes / weeks.Count);
        }

        internal double[] Values { get; }

        internal double[] Costs { get; }

        internal bool CostKnown { get; }

        internal double Paid { get; }
    }

    private static string TitleOf(BoxWeeks boxes, ShareContents contents, Notation notation)
    {
        string name = contents.Channel.Name;
        int all = contents.Weeks.Count, under = boxes.Paid > 0 ? boxes.Values.Count(value => value < boxes.Paid) : 0;
        return contents.Income.Amount == 0m
                ? $"{name}: a box is worth {notation.InWords((decimal)boxes.Values.Average(), Look.Rate)} a week on average"
            : under == 0 ? $"{name}: the box was worth its price in every one of {all} weeks"
            : $"{name}: in {under} of {all} weeks the box was worth less than a week's part of its price";
    }

    private static void DrawTicks(Canvas canvas, Notation notation, Scale up, (double Left, double Right) across)
    {
        foreach (double tick in up.Ticks(4))
        {
            canvas.Line(across.Left, up[tick], across.Right, up[tick], Palette.Rule);
            canvas.Text(notation.Text($"{tick:#,0}"), across.Left - 6, up[tick], 10.5, Palette.Soft, ScottPlot.Alignment.MiddleRight);
        }
    }

    private static void DrawWeeks(
        Canvas canvas, BoxWeeks boxes, ShareContents contents, Scale up, (double Left, double Right, double Below) at)
    {
        double slot = (at.Right - at.Left - 6) / boxes.Values.Length;
        for (int i = 0; i < boxes.Values.Length; i++)
        {
            double left = at.Left + 6 + (i * slot), value = up[boxes.Values[i]], cost = up[boxes.Costs[i]];
            canvas.Rect(left, value, slot * 0.72, up[0] - value, Palette.Light);
            if (!canvas.OnPhone || i % 2 == 0)
            {
                string number = contents.Weeks[i].Number.ToString();
                canvas.Centered(number, left + (slot * 0.36), canvas.Bottom - 32 - at.Below, 10.5, Palette.Soft);
            }

            if (boxes.CostKnown)
            {
                canvas.Line(left, cost, left + (slot * 0.72), cost, Palette.Loss, 3);
            }
        }
    }
}
