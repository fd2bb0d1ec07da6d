using System.Globalization;
using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Plots;
using FarmEconomics.Reports.Tables;
using ScottPlot;
using Palette = FarmEconomics.Reports.Plots.Palette;

namespace FarmEconomics.Reports.Funding;

/// <summary>Cash at the end of each month, last year's and next year's, with the low point of the next.</summary>
public static class CashPlot
{
    private const int Width = 900;
    private const int Height = 380;
    private const double Left = 84;
    private const double Right = 730;
    private const double Top = 14;

    /// <summary>Draws it.</summary>
    /// <param name="writeUp">The write-up.</param>
    public static Figure Of(FundingWriteUp writeUp)
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
        Canvas canvas = new($"Cash is lowest at the end of {low}: {lowest}", Width, Height);
        double bottom = canvas.Bottom - 44;
        Scale money = Scale.Covering(last.Closing.Concat(next.Closing).Select(amount => (double)amount), bottom, Top);
        Scale months = new(0, CashFlow.MonthCount - 1, Left + 20, Right);
        LineChart.Rules(canvas, money, (Left, Right), tick => notation.InWords((decimal)tick, Look.WholeMoney));
        for (int i = 0; i < CashFlow.MonthCount; i++)
        {
            canvas.Centered(next.Months[i].ToString("MMM", CultureInfo.InvariantCulture), months[i], bottom + 14, 10.5, Palette.Soft);
        }

        canvas.Text(
            $"end of the month; cash in {notation.Currency}{(next.OpeningCash is null ? ", from an unknown beginning taken as 0" : "")}",
            (Left + Right) / 2,
            bottom + 32,
            10.5,
            Palette.Soft,
            Alignment.MiddleCenter
        );
        LineChart.Line(canvas, (months, money), last.Closing, Palette.Middle, LinePattern.Dashed);
        LineChart.Line(canvas, (months, money), next.Closing, Palette.Dark, LinePattern.Solid);
        double lastEnd = money[(double)last.Closing[^1]], nextEnd = money[(double)next.Closing[^1]];
        if (Math.Abs(lastEnd - nextEnd) < 16)
        {
            (lastEnd, nextEnd) = lastEnd >= nextEnd ? (nextEnd + 16, nextEnd) : (lastEnd, lastEnd + 16);
        }

        canvas.Text($"{last.Months[0].Year}, records", Right + 10, lastEnd, 12, Palette.Soft);
        canvas.Text($"{next.Months[0].Year}, by its pattern", Right + 10, nextEnd, 12, Palette.Dark, bold: true);
        canvas.Dot(months[next.LowMonth], money[(double)next.LowPoint], 11, Palette.Dark, Palette.Dark);
        return canvas.ToFigure(
            $"Two lines of cash at the end of each month. Last year ends at {notation.InWords(last.Closing[^1], Look.WholeMoney)}; next year, by last year's pattern and the factors assumed, "
            + $"is lowest at the end of {low} with {lowest} and ends at {notation.InWords(next.Closing[^1], Look.WholeMoney)}.");
    }
}
