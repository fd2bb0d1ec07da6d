using FarmEconomics.Decisions;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Plots;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;
using FarmEconomics.Units;
using ScottPlot;
using Palette = FarmEconomics.Reports.Plots.Palette;

namespace FarmEconomics.Reports.Decisions;

/// <summary>Net return of every crop in each year on record: what there is to see where the years are too few for a chance.</summary>
internal static class YearsPlot
{
    internal static Figure Of(Verdicts verdicts, bool onPhone)
    {
        Records.Notation notation = verdicts.Season.Notation;
        List<Verdict> crops = [.. verdicts.Crops.Where(verdict => verdict.Outcome.Years.Count > 0)
            .OrderByDescending(verdict => verdict.Outcome.Years.Average(year => year.NetReturn.Amount))];
        if (crops.Count == 0)
        {
            return SeasonPlots.Nothing("No year of any crop is recorded whole");
        }

        int always = crops.Count(verdict => verdict.Outcome.YearsLost == 0);
        int never = crops.Count(verdict => verdict.Outcome.YearsLost == verdict.Outcome.Years.Count);
        int rows = DecisionPlots.RowsOf(crops.Count, onPhone);
        Canvas canvas = new(
            $"{Phrase.Sentence(notation.Count(always, "crop"))} of {crops.Count} met {verdicts.Season.Farm.Known.FullCostLabel} "
                + $"in every year on record; {never} in none",
            onPhone,
            onPhone ? 150 + (18 * rows) : Math.Clamp(130 + (17 * rows), 200, 480)
        );
        DecisionPlots.Ring(canvas, 16, 12);
        canvas.Text("a year on record, in the money of that year", 26, 12, 11);
        canvas.Dot(onPhone ? 322 : 330, 12, 8, Palette.Loss, Palette.White, MarkerShape.FilledDiamond);
        canvas.Text($"{verdicts.Season.CropYear}", onPhone ? 332 : 340, 12, 11);
        int row = (canvas.Bottom - 36 - 26) / rows; // whole pixels
        DecisionPlots.InColumns(canvas, notation, (crops, 26, row),
            verdict => verdict.Outcome.Years.Select(year => year.NetReturn.Amount),
            (verdict, scale, y) => Years(canvas, verdict, scale, y, verdicts.Season.CropYear));
        return canvas.ToFigure($"Dots: net return of {notation.Count(crops.Count, "crop")} in each year on record. Best on the mean: "
            + $"{Phrase.List(crops.Take(3).Select(Range).ToList())}. Worst: {Phrase.List(crops.TakeLast(3).Select(Range).ToList())}.");

        string Range(Verdict verdict) =>
            $"{verdict.Budget.Name} {notation.InWords(verdict.Outcome.Years.Min(year => year.NetReturn.Amount), Look.WholeMoney)} to "
                + $"{notation.InWords(verdict.Outcome.Years.Max(year => year.NetReturn.Amount), Look.WholeMoney)}";
    }

    private static void Years(Canvas canvas, Verdict verdict, Plots.Scale scale, double y, int reviewed)
    {
        IReadOnlyList<(int CropYear, Money NetReturn)> years = verdict.Outcome.Years;
        canvas.Line(
            scale[(double)years.Min(year => year.NetReturn.Amount)], y, scale[(double)years.Max(year => year.NetReturn.Amount)], y,
            Palette.Rule, 3);
        foreach ((int year, Money net) in years.OrderBy(year => year.CropYear == reviewed))
        {
            if (year == reviewed)
            {
                canvas.Dot(scale[(double)net.Amount], y, 7, Palette.Loss, Palette.White, MarkerShape.FilledDiamond);
            }
            else
            {
                DecisionPlots.Ring(canvas, scale[(double)net.Amount], y);
            }
        }
    }
}
