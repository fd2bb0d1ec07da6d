using System.Globalization;
using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Plots;
using FarmEconomics.Reports.Tables;
using ScottPlot;
using Bar = FarmEconomics.Reports.Blocks.Bar;
using Palette = FarmEconomics.Reports.Plots.Palette;

namespace FarmEconomics.Reports.Answers;

/// <summary>A plan's pictures: lengths that change, cash by month, hours by week.</summary>
internal static class PlanPlots
{
    private const int Height = 330;
    private const double Least = 0.5;

    /// <summary>The crops whose length changes most, as bars to either side.</summary>
    /// <param name="lengths">Every crop's length.</param>
    /// <param name="most">How many at most.</param>
    /// <param name="data">The same as a table.</param>
    /// <param name="notation">How the farm writes.</param>
    internal static Chart Changes(IReadOnlyList<CropLength> lengths, int most, ReportTable data, Notation notation)
    {
        IEnumerable<Bar> bars = lengths.Where(crop => Math.Abs(crop.After - crop.Before) >= (decimal)Least)
            .OrderByDescending(crop => Math.Abs(crop.After - crop.Before)).ThenBy(crop => crop.Crop, StringComparer.Ordinal).Take(most)
            .OrderByDescending(crop => crop.After - crop.Before).Select(crop => new Bar(
                crop.Crop, crop.After - crop.Before, notation.Text($"{crop.Before:#,0} to {crop.After:#,0}"),
                notation.Label(notation.Text($"{crop.Crop}: {crop.Before:#,0.#} bed-feet now, {crop.After:#,0.#} planned"))));
        return new Chart(data) { Bars = new BarList("Change in length by crop", [.. bars]) };
    }

    /// <summary>Cash at the end of each month, the plan's and that of the season's plantings again.</summary>
    internal static Chart Cash(ShownPlan plan, string title, ReportTable data) =>
        new Picture(onPhone => DrawCash(plan, title, onPhone)).AsChart(data);

    /// <summary>Hours by week against who is there.</summary>
    internal static Chart Hours(ShownPlan plan, string title, ReportTable data) =>
        new Picture(onPhone => DrawHours(plan, title, onPhone)).AsChart(data);

    private static Figure DrawCash(ShownPlan plan, string title, bool narrow)
    {
        Notation notation = plan.Farm.Notation;
        Canvas canvas = new(title, narrow, Height);
        int width = canvas.Width;
        double left = narrow ? 62 : 84, right = width - (narrow ? 14 : 170), bottom = canvas.Bottom - 44;
        Scale money = Scale.Covering(plan.Closing.Concat(plan.ClosingBefore).Select(amount => (double)amount), bottom, 30, narrow ? 4 : 5);
        Scale months = new(0, 11, left + 12, right - 8);
        LineChart.Rules(canvas, money, (left, right), tick => BlockNumber.Of((decimal)tick, Look.WholeMoney, notation));
        LineChart.Months(canvas, months, bottom, [.. plan.Outlook.Months.Select(month => month.Month)]);
        LineChart.Line(canvas, (months, money), plan.ClosingBefore, Palette.Middle, LinePattern.Dashed);
        LineChart.Line(canvas, (months, money), plan.Closing, Palette.GainText, LinePattern.Solid);
        for (int i = 0; i < plan.Closing.Count; i++)
        {
            string cash = BlockNumber.Of(plan.Closing[i], Look.WholeMoney, notation),
                before = BlockNumber.Of(plan.ClosingBefore[i], Look.WholeMoney, notation);
            string tip = $"{plan.Outlook.Months[i].Month:MMMM}, the plan: {cash}; as in {plan.Farm.Season.CropYear}: {before}";
            canvas.Tip(months[i] - 10, 24, 20, bottom - 24, tip);
        }

        string again = $"as in {plan.Farm.Season.CropYear}";
        if (plan.Source == PlanSource.LikeLastYear || LineChart.RunTogether(money, plan.Closing, plan.ClosingBefore))
        {
            string both = plan.Source == PlanSource.LikeLastYear ? again : $"the plan, {again}";
            LineChart.NameOfBoth(canvas, (money, right), both, plan.Closing, Palette.GainText);
        }
        else
        {
            LineChart.Names(canvas, (money, right), ("the plan", plan.Closing, Palette.GainText), (again, plan.ClosingBefore));
        }

        return canvas.ToFigure($"Two lines of cash at the end of each month. "
            + $"The plan ends the year at {notation.InWords(plan.Closing[^1], Look.WholeMoney)}, "
            + $"the plantings of {plan.Farm.Season.CropYear} again at {notation.InWords(plan.ClosingBefore[^1], Look.WholeMoney)}.");
    }

    private static Figure DrawHours(ShownPlan plan, string title, bool narrow)
    {
        Notation notation = plan.Farm.Notation;
        Canvas canvas = new(title, narrow, Height);
        IReadOnlyList<PlanWeek> weeks = plan.Outlook.Weeks;
        double left = narrow ? 40 : 56, right = canvas.Width - (narrow ? 10 : 120), bottom = canvas.Bottom - 40;
        IEnumerable<double> amounts = weeks.SelectMany(week => new[] { (double)week.Hours, (double)(week.Own + week.Hired) });
        Scale hours = Scale.Covering(amounts, bottom, 26, narrow ? 4 : 5), across = new(0, weeks.Count, left, right);
        LineChart.Rules(canvas, hours, (left, right), tick => notation.Number((decimal)tick, Look.Count));
        for (int i = 0; i < weeks.Count; i++)
        {
            PlanWeek week = weeks[i];
            DrawWeek(canvas, (across, hours), i, week);
            string tip = notation.Text(
                $"Week of {week.From:MMM d}: {week.Hours:0} of {week.Own + week.Hired:0} hours, {week.Own:0} of them your own");
            canvas.Tip(across[i], 20, across[i + 1] - across[i], bottom - 20, tip);
            if (i == 0 || week.From.Month != weeks[i - 1].From.Month)
            {
                string month = narrow && week.From.Month % 2 == 0 ? "" : week.From.ToString("MMM", CultureInfo.InvariantCulture);
                canvas.Text(month, across[i] + 4, bottom + 14, 10.5, Palette.Soft);
            }
        }

        PlanWeek last = weeks[^1];
        double own = hours[(double)last.Own], all = hours[(double)(last.Own + last.Hired)];
        if (!narrow)
        {
            canvas.Text(last.Hired > 0m ? "all hands" : "", right + 6, Math.Min(all, own - 17), 12, Palette.Ink);
            canvas.Text("your own", right + 6, own, 12, Palette.Soft);
        }

        return canvas.ToFigure(notation.Text($"Hours of work by week under a line of the hours there are: "
            + $"{weeks.Sum(week => week.Hours):#,0} in all, most in the week of {weeks.MaxBy(week => week.Hours)!.From:MMMM d}."));
    }

    /// <summary>A week's bar, what is over the hours there are in another color, under their line and that of the owners' own.</summary>
    private static void DrawWeek(Canvas canvas, (Scale Across, Scale Hours) on, int i, PlanWeek week)
    {
        decimal all = week.Own + week.Hired;
        double from = on.Across[i], to = on.Across[i + 1], own = on.Hours[(double)week.Own], most = on.Hours[(double)all];
        Bar(0m, Math.Min(week.Hours, all), Palette.Dark);
        Bar(all, week.Hours, Palette.Loss);
        canvas.Line(from, own, to, own, Palette.Soft, 1.6, LinePattern.Dashed);
        canvas.Line(from, most, to, most, Palette.Ink, 1.6);

        void Bar(decimal low, decimal high, Color color)
        {
            if (high > low)
            {
                double top = on.Hours[(double)high];
                canvas.Rect(from + 0.8, top, Math.Max(1, to - from - 1.6), on.Hours[(double)low] - top, color);
            }
        }
    }
}
