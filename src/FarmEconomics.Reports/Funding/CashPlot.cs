using System.Globalization;
using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Plots;
using FarmEconomics.Reports.Tables;
using ScottPlot;
using Palette = FarmEconomics.Reports.Plots.Palette;

namespace FarmEconomics.Reports.Funding;

/// <summary>Cash at the end of each month, last year's and next year's, with the low point of the next.</summary>
public static class CashPlot
{
    private const int Height = 348;

    /// <summary>Draws it.</summary>
    /// <param name="writeUp">The write-up.</param>
    /// <param name="onPhone">Whether for a screen of 400 pixels.</param>
    public static Figure Of(FundingWriteUp writeUp, bool onPhone = false)
    {
        ArgumentNullException.ThrowIfNull(writeUp);
        if (writeUp.Tax.NetUnknown is { } unknown)
        {
            return SeasonPlots.Nothing($"Cash by month: not available ({unknown})");
        }

        Notation notation = writeUp.Season.Notation;
        CashFlow last = writeUp.LastYear, next = writeUp.NextYear;
        string low = $"{next.Months[next.LowMonth].ToString("MMMM", CultureInfo.InvariantCulture)} {next.Months[next.LowMonth].Year}";
        string lowest = notation.InWords(next.LowPoint, Look.WholeMoney);
        Canvas canvas = new($"Cash is lowest at the end of {low}: {lowest}", onPhone, Height);
        double left = onPhone ? 62 : 84, right = onPhone ? canvas.Width - 14 : 730, bottom = canvas.Bottom - 30;
        (double top, int ticks) = onPhone ? (30, 4) : (14, 5);
        Scale money = Scale.Covering(last.Closing.Concat(next.Closing).Select(amount => (double)amount), bottom, top, ticks);
        Scale months = new(0, CashFlow.MonthCount - 1, left + 20, right - (onPhone ? 8 : 0));
        LineChart.Rules(canvas, money, (left, right), tick => BlockNumber.Of((decimal)tick, Look.WholeMoney, notation));
        LineChart.Months(canvas, months, bottom, next.Months);
        LineChart.Line(canvas, (months, money), last.Closing, Palette.Middle, LinePattern.Dashed);
        LineChart.Line(canvas, (months, money), next.Closing, Palette.GainText, LinePattern.Solid);
        canvas.Dot(months[next.LowMonth], money[(double)next.LowPoint], 11, Palette.GainText, Palette.GainText);
        for (int i = 0; i < CashFlow.MonthCount; i++)
        {
            string month = next.Months[i].ToString("MMMM", CultureInfo.InvariantCulture);
            canvas.Tip(months[i] - 10, 14, 20, bottom - 14, $"{month}: {In(last, i)}, {In(next, i)}");
        }

        Name(canvas, (money, right), last, next);
        return canvas.ToFigure(
            $"Two lines of cash at the end of each month. Last year ends at {notation.InWords(last.Closing[^1], Look.WholeMoney)}; "
            + $"next year, by last year's pattern and the factors assumed, is lowest at the end of {low} with {lowest} and ends at "
            + $"{notation.InWords(next.Closing[^1], Look.WholeMoney)}.");

        string In(CashFlow year, int month) =>
            $"{BlockNumber.Of(year.Closing[month], Look.WholeMoney, notation)} in {year.Months[month].Year}";
    }

    private static void Name(Canvas canvas, (Scale Money, double Right) on, CashFlow last, CashFlow next)
    {
        if (LineChart.RunTogether(on.Money, next.Closing, last.Closing))
        {
            string both = $"{last.Months[0].Year} and {next.Months[0].Year}";
            LineChart.NameOfBoth(canvas, on, both, next.Closing, Palette.GainText);
            return;
        }

        (string pattern, string records) = ($"{next.Months[0].Year}, by its pattern", $"{last.Months[0].Year}, records");
        LineChart.Names(canvas, on, (pattern, next.Closing, Palette.GainText), (records, last.Closing));
    }
}
