using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;
using ScottPlot;

namespace FarmEconomics.Reports.Plots;

/// <summary>One crop week by week: what it sold for, channel by channel, above what was picked.</summary>
public static class PriceAndYield
{
    private const int Width = 900;
    private const int Height = 440;
    private static readonly MarkerShape[] Shapes =
    [
        MarkerShape.FilledCircle,
        MarkerShape.FilledSquare,
        MarkerShape.FilledTriangleUp,
        MarkerShape.FilledDiamond,
        MarkerShape.FilledTriangleDown,
    ];

    /// <summary>The crop with the most output of the season: what the figure shows when no crop is named.</summary>
    public static string LargestCrop(SeasonReview season) =>
        season.Crops.OrderByDescending(crop => crop.Output.Amount).FirstOrDefault()?.Name
        ?? throw new InvalidOperationException($"No crop has a planting in {season.CropYear}.");

    /// <summary>The figure for the lots of the crop that belong to the crop year, also where they were sold after it ended.</summary>
    public static Figure Of(SeasonReview season, string crop)
    {
        EnterpriseBudget budget = season.FindBudget(crop)
            ?? throw new ArgumentException(
                $"{crop} has no planting in {season.CropYear}. Crops of that year: {string.Join(", ", season.Crops.Select(candidate => candidate.Name))}.",
                nameof(crop)
            );
        List<(DateOnly Week, decimal Quantity)> picked = season
            .LotsOf(budget.Crop!)
            .GroupBy(lot => WeeklyUse.MondayOf(lot.Date))
            .Select(week => (week.Key, week.Sum(lot => lot.Quantity)))
            .OrderBy(week => week.Key)
            .ToList();
        List<(string Channel, List<(DateOnly Week, decimal Price)> Prices)> prices = season
            .PartsOf(budget.Crop!)
            .Where(part =>
                part.Enterprise is not null && part.Disposition.Channel.IsPriced && part.Quantity > 0m && part.Amount.Amount > 0m
            )
            .GroupBy(part => part.Disposition.Channel.Name)
            .Select(channel =>
                (
                    channel.Key,
                    channel
                        .GroupBy(part => WeeklyUse.MondayOf(part.Disposition.Row.Date))
                        .Select(week => (Week: week.Key, Price: week.Sum(part => part.Amount.Amount) / week.Sum(part => part.Quantity)))
                        .OrderBy(week => week.Week)
                        .ToList()
                )
            )
            .OrderByDescending(channel => channel.Item2.Count)
            .ToList();
        if (picked.Count == 0)
        {
            return SeasonPlots.Nothing($"{budget.Name}: nothing picked in {season.CropYear}");
        }

        DateOnly first = picked
            .Select(week => week.Week)
            .Concat(prices.SelectMany(channel => channel.Prices.Select(week => week.Week)))
            .Min();
        DateOnly last = picked
            .Select(week => week.Week)
            .Concat(prices.SelectMany(channel => channel.Prices.Select(week => week.Week)))
            .Max();
        (DateOnly bestWeek, decimal best) = picked.MaxBy(week => week.Quantity);
        string unit = budget.Crop!.Unit;
        Canvas canvas = new($"{budget.Name}: {season.Notation.Number(budget.Sums.Harvested, Look.Quantity)} {unit} picked in {season.Notation.Count(picked.Count, "week")}, most in the week of {bestWeek:MMM d}", Width, Height);
        double ends = prices.Count == 0 ? 20 : prices.Max(channel => Canvas.TextWidth(channel.Channel, 11.5)) + 18;
        Scale time = new(first.DayNumber - 4, last.DayNumber + 11, 64, Width - ends);
        Scale up = Scale.Covering(prices.SelectMany(channel => channel.Prices).Select(week => (double)week.Price), 200, 24, 4);
        Scale down = Scale.Covering(picked.Select(week => (double)week.Quantity), canvas.Bottom - 24, 240, 3);
        Months(canvas, time, first, last, canvas.Bottom - 24);
        Panel(canvas, season.Notation, time, up, $"price per {unit} ({season.Notation.Sign}), weekly average", 4);
        Panel(canvas, season.Notation, time, down, $"picked ({unit} a week)", 3);
        foreach ((DateOnly week, decimal quantity) in picked)
        {
            double x = time[week.DayNumber];
            canvas.Rect(
                x,
                down[(double)quantity],
                Math.Max(2, time[week.DayNumber + 6] - x),
                down[0] - down[(double)quantity],
                Palette.Light
            );
        }

        DrawPrices(canvas, prices, time, up);
        return canvas.ToFigure($"{budget.Name} by week in {season.CropYear}: picked {season.Notation.Number(budget.Sums.Harvested, Look.Quantity)} {unit}, most ({season.Notation.Number(best, Look.Quantity)}) in the week of {Looks.Day(bestWeek)}. Average price per {unit}: "
            + (prices.Count == 0 ? "none recorded." : Phrase.List(prices.ConvertAll(channel =>
                $"{channel.Channel} {season.Notation.InWords(channel.Prices.Min(week => week.Price), Look.Rate)} to {season.Notation.InWords(channel.Prices.Max(week => week.Price), Look.Rate)}")) + "."));
    }

    private static void DrawPrices(
        Canvas canvas,
        List<(string Channel, List<(DateOnly Week, decimal Price)> Prices)> prices,
        Scale time,
        Scale up
    )
    {
        double lowest = double.MinValue;
        int i = 0;
        foreach (
            (string channel, List<(DateOnly Week, decimal Price)> weeks) in prices.OrderBy(channel => up[(double)channel.Prices[^1].Price])
        )
        {
            Color color = Palette.Of(i);
            for (int k = 1; k < weeks.Count; k++)
            {
                canvas.Line(X(weeks[k - 1]), up[(double)weeks[k - 1].Price], X(weeks[k]), up[(double)weeks[k].Price], color, 1.2);
            }

            foreach ((DateOnly Week, decimal Price) week in weeks)
            {
                canvas.Dot(X(week), up[(double)week.Price], 7, color, Palette.White, Shapes[i % Shapes.Length]);
            }

            // Labels stand at the right edge in the order of the last prices, a line apart at least.
            double y = Math.Max(up[(double)weeks[^1].Price], lowest + 15);
            lowest = y;
            canvas.Line(X(weeks[^1]), up[(double)weeks[^1].Price], time.To + 4, y, Palette.Rule, 0.8);
            canvas.Dot(time.To + 8, y, 7, color, Palette.White, Shapes[i % Shapes.Length]);
            canvas.Text(channel, time.To + 15, y, 11.5);
            i++;
        }

        double X((DateOnly Week, decimal Price) week) => time[week.Week.DayNumber + 3];
    }

    private static void Panel(Canvas canvas, Notation notation, Scale time, Scale up, string axis, int about)
    {
        foreach (double tick in up.Ticks(about))
        {
            canvas.Line(time.From, up[tick], time.To, up[tick], Palette.Rule);
            canvas.Text(notation.Text($"{tick:#,0.##}"), time.From - 6, up[tick], 11, Palette.Soft, Alignment.MiddleRight);
        }

        canvas.Text(axis, 10, up.To - 13, 11.5, Palette.Soft);
    }

    private static void Months(Canvas canvas, Scale time, DateOnly first, DateOnly last, double y)
    {
        for (DateOnly month = new(first.Year, first.Month, 1); month <= last.AddDays(7); month = month.AddMonths(1))
        {
            if (month.DayNumber >= time.Min)
            {
                canvas.Line(time[month.DayNumber], 24, time[month.DayNumber], y, Palette.Rule, 0.6, LinePattern.Dotted);
                canvas.Text(
                    month.Month == 1 ? month.ToString("MMM yyyy") : month.ToString("MMM"),
                    time[month.DayNumber] + 2,
                    y + 12,
                    11,
                    Palette.Soft
                );
            }
        }
    }
}
