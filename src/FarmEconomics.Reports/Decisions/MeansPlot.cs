using FarmEconomics.Decisions;
using FarmEconomics.Records;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Plots;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;
using ScottPlot;
using Palette = FarmEconomics.Reports.Plots.Palette;
using Scale = FarmEconomics.Reports.Plots.Scale;

namespace FarmEconomics.Reports.Decisions;

/// <summary>Columns of the chart's data.</summary>
public enum MeansColumn
{
    /// <summary>The crop.</summary>
    Crop,

    /// <summary>The mean of its seasons.</summary>
    Mean,

    /// <summary>What the records can tell.</summary>
    Noise,

    /// <summary>The lowest season.</summary>
    Lowest,

    /// <summary>The highest season.</summary>
    Highest,
}

/// <summary>
/// What the farm would lose without each crop: a ring for every season on record, a diamond for their mean, a band for what the records
/// can't tell apart.
/// </summary>
internal static class MeansPlot
{
    private const int Row = 26;
    private const int Top = 30;
    private const double BoldWidth = 1.1;

    /// <summary>The crops nearest to dropping.</summary>
    /// <param name="verdicts">The verdicts.</param>
    /// <param name="count">How many at most.</param>
    internal static List<Verdict> Nearest(Verdicts verdicts, int count = 14) =>
        [.. verdicts.Crops.Where(verdict => verdict.WhyUnknown is null).OrderBy(verdict => verdict.Mean.Amount).Take(count)];

    /// <summary>The chart for a page and for a phone, with its data.</summary>
    internal static Chart Of(Verdicts verdicts, string title = " ")
    {
        List<Verdict> crops = Nearest(verdicts);
        return new Picture(onPhone => Draw(verdicts, crops, title, onPhone)).AsChart(Data(verdicts.Season.Notation, crops));
    }

    private static ReportTable Data(Notation notation, List<Verdict> crops)
    {
        ReportTable table = new ReportTable("What the farm would lose in a year without the crop", notation)
            .Column("Crop")
            .As(MeansColumn.Crop)
            .Column("Mean", Look.WholeMoney)
            .As(MeansColumn.Mean)
            .Column("Can't be told apart", Look.WholeMoney)
            .As(MeansColumn.Noise)
            .Column("Lowest season", Look.WholeMoney)
            .As(MeansColumn.Lowest)
            .Column("Highest season", Look.WholeMoney)
            .As(MeansColumn.Highest);
        foreach (Verdict verdict in crops)
        {
            table.Row(
                verdict.Budget.Name,
                verdict.Mean,
                verdict.Noise,
                verdict.Seasons.Min(season => season.Contribution.Amount),
                verdict.Seasons.Max(season => season.Contribution.Amount)
            );
        }

        return table;
    }

    private static Figure Draw(Verdicts verdicts, List<Verdict> crops, string title, bool narrow)
    {
        Notation notation = verdicts.Season.Notation;
        double size = narrow ? 13 : 12.5;
        int height = 34 + Top + (crops.Count * Row) + 34;
        Canvas canvas = new(title, narrow, height);
        double left = canvas.NamesWidth(crops.Select(verdict => verdict.Budget.Name), size, canvas.Width * 0.4) + 16;
        IEnumerable<decimal> amounts = crops.SelectMany(verdict =>
            verdict.Seasons.Select(season => season.Contribution.Amount).Concat([verdict.Noise.Amount, -verdict.Noise.Amount]));
        string with = narrow ? "with it" : "farm better off with it";
        double right = canvas.Width - 12;
        Scale scale = DecisionPlots.Covering(amounts.Append(0m), left, right);
        // Where every crop lies left of 0, the words right of it keep their room.
        double end = scale[0] + 8 + (canvas.Measure(with, size) * BoldWidth);
        scale = end <= right ? scale : DecisionPlots.Covering(amounts.Append(0m), left, right - (end - right));
        double bottom = Top + (crops.Count * Row);
        foreach (double at in scale.Ticks(narrow ? 4 : 7))
        {
            canvas.Line(scale[at], Top, scale[at], bottom, at == 0 ? Palette.Soft : Palette.Rule);
            canvas.Centered(BlockNumber.Of((decimal)at, Look.WholeMoney, notation), scale[at], bottom + 14, size - 0.5, Palette.Soft);
        }

        bool room = scale[0] - left > 190;
        string without = narrow || !room ? "better off without" : "farm better off without it";
        canvas.Text(without, scale[0] - 8, 14, size, Palette.LossText, Alignment.MiddleRight, bold: true);
        canvas.Text(with, scale[0] + 8, 14, size, Palette.GainText, Alignment.MiddleLeft, bold: true);
        foreach ((int index, Verdict verdict) in crops.Index())
        {
            Crop(canvas, verdict, scale, (left, Top + ((index + 0.5) * Row), size));
            canvas.Tip(0, Top + (index * Row), canvas.Width, Row, Tip(verdict, notation));
        }

        return canvas.ToFigure(
            "What the farm would lose in a year without each of the crops nearest to dropping. "
                + string.Join(" ", crops.Take(6).Select(verdict => Tip(verdict, notation)))
        );
    }

    private static void Crop(Canvas canvas, Verdict verdict, Scale scale, (double Left, double Y, double Size) at)
    {
        double noise = (double)verdict.Noise.Amount;
        canvas.Rect(scale[-noise], at.Y - 8, scale[noise] - scale[-noise], 16, Palette.Pale, Palette.Middle);
        canvas.Line(scale[0], at.Y - 10, scale[0], at.Y + 10, Palette.Soft);
        canvas.Name(verdict.Budget.Name, at.Left - 8, at.Y, at.Size, at.Left - 16, verdict.Direction == Direction.DropOrChange);
        foreach (SeasonContribution season in verdict.Seasons)
        {
            Color color = season.Contribution.Amount < 0m ? Palette.LossText : Palette.GainText;
            canvas.Dot(scale[(double)season.Contribution.Amount], at.Y, 8, color, color);
            canvas.Dot(scale[(double)season.Contribution.Amount], at.Y, 5, Palette.White, Palette.White);
        }

        Color mean = verdict.Mean.Amount < 0m ? Palette.LossText : Palette.GainText;
        canvas.Dot(scale[(double)verdict.Mean.Amount], at.Y, 11, mean, mean, MarkerShape.FilledDiamond);
    }

    private static string Tip(Verdict verdict, Notation notation)
    {
        string Money(decimal amount) => BlockNumber.Of(amount, Look.WholeMoney, notation);
        return $"{verdict.Budget.Name}: {Money(verdict.Mean.Amount)} on the mean "
            + $"({Phrase.List([.. verdict.Seasons.Select(season => $"{season.CropYear} {Money(season.Contribution.Amount)}")])}); "
            + $"{Money(verdict.Noise.Amount)} can't be told apart.";
    }
}
