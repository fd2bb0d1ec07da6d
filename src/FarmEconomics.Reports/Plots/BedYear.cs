using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Words;
using FarmEconomics.Tracing;
using ScottPlot;

namespace FarmEconomics.Reports.Plots;

/// <summary>The whole farm week by week: how much of each block or structure held a crop.</summary>
public static class BedYear
{
    private const double Row = 26;

    /// <summary>The figure: the darker a week, the fuller the beds; the yearly share stands at the right.</summary>
    /// <param name="season">The season.</param>
    /// <param name="onPhone">True: for a window of 400 px.</param>
    public static Figure Of(SeasonReview season, bool onPhone = false)
    {
        int width = Canvas.WidthFor(onPhone);
        IReadOnlyList<string> places = BedMap.Places(season);
        double right = onPhone ? 42 : 70, left = NamesWidth(places, onPhone);
        (DateOnly from, DateOnly to) = (season.Settings.StartOf(season.CropYear), season.Settings.EndOf(season.CropYear));
        int weeks = (to.DayNumber - from.DayNumber + 6) / 7;
        List<double[]> held = places.Select(place => Held(season, place, from, to, weeks)).ToList();
        ILookup<string, decimal> beds = BedMap.BedsOf(season).ToLookup(BedMap.PlaceOf, bed => bed.LengthFt);
        double[] lengths = [.. places.Select(place => (double)beds[place].Sum())];
        double[] farm = Enumerable.Range(0, weeks)
            .Select(week => places.Select((_, i) => held[i][week] * lengths[i]).Sum() / Math.Max(1, lengths.Sum()))
            .ToArray();
        int fullest = Array.IndexOf(farm, farm.Max());
        string when = season.Notation.Text($"{from.AddDays(7 * fullest):MMM d}");
        string title = $"Beds were fullest in the week of {when}: {Percent(farm[fullest])} of all bed length held a crop";
        Canvas canvas = new(title, width, (int)(34 + 56 + (Row * (places.Count + 1)) + 12));
        DrawKey(canvas, onPhone ? 4 : left);
        Scale scale = new(0, weeks, left, width - right);
        for (DateOnly month = from; month < to; month = month.AddMonths(onPhone ? 2 : 1))
        {
            canvas.Text(month.ToString("MMM"), scale[(month.DayNumber - from.DayNumber) / 7.0] + 2, 36, 11, Palette.Soft);
        }

        canvas.Text(onPhone ? "year" : "of the year", width - 6, 36, 11, Palette.Soft, Alignment.MiddleRight);
        for (int i = 0; i < places.Count; i++)
        {
            DrawRow(canvas, scale, 46 + (i * Row), (places[i], PartOf(held[i])), held[i]);
        }

        DrawRow(canvas, scale, 46 + (places.Count * Row) + 6, ("All beds", PartOf(farm)), farm, bold: true);
        return canvas.ToFigure(
            $"Weeks of {season.CropYear} by block and structure, shaded by the part of the bed length that held a crop. Over the year: "
            + $"{Phrase.List(places.Select((place, i) => $"{place} {PartOf(held[i])}").ToList())}; all beds {PartOf(farm)}, "
            + $"fullest in the week of {from.AddDays(7 * fullest):yyyy-MM-dd} with {Percent(farm[fullest])}.");

        string PartOf(double[] values) => Percent(Over(values, from, to));

        string Percent(double part) => season.Notation.Text($"{part * 100:0}%");
    }

    private static double NamesWidth(IReadOnlyList<string> places, bool onPhone) => Math.Clamp(
        places.Select(place => Canvas.TextWidth(place, 11.5, onPhone)).DefaultIfEmpty(0).Max() + 12,
        onPhone ? 88 : 110,
        Canvas.WidthFor(onPhone) * 0.4);

    private static void DrawKey(Canvas canvas, double left)
    {
        double x = SeasonPlots.Key(canvas, left, 10, Palette.Shade(0), "empty");
        x = SeasonPlots.Key(canvas, x + 14, 10, Palette.Shade(0.5), "half full");
        SeasonPlots.Key(canvas, x + 14, 10, Palette.Shade(1), "full");
    }

    private static void DrawRow(
        Canvas canvas, Scale scale, double y, (string Name, string Part) said, double[] weeks, bool bold = false)
    {
        canvas.Name(said.Name, scale.From - 6, y + (Row / 2), 11.5, scale.From - 8, bold);
        for (int week = 0; week < weeks.Length; week++)
        {
            canvas.Rect(scale[week], y + 2, scale[week + 1] - scale[week], Row - 4, Palette.Shade(weeks[week]), Palette.White, 0.5);
        }

        canvas.Text(said.Part, canvas.Width - 6, y + (Row / 2), 11.5, align: Alignment.MiddleRight);
    }

    /// <summary>
    /// The block or structure whose beds held crops the most, in length times days: whose map is drawn when none is named.
    /// </summary>
    public static string MostUsed(SeasonReview season) =>
        Shares(season)
            .OrderByDescending(place =>
                place.Share * (double)BedMap.BedsOf(season).Where(bed => BedMap.PlaceOf(bed) == place.Place).Sum(bed => bed.LengthFt)
            )
            .FirstOrDefault()
            .Place
        ?? throw new InvalidOperationException("The records hold no beds.");

    /// <summary>Part of the year's bed time each block or structure held a crop, 0 to 1, in the order of the beds table.</summary>
    internal static List<(string Place, double Share)> Shares(SeasonReview season)
    {
        (DateOnly from, DateOnly to) = (season.Settings.StartOf(season.CropYear), season.Settings.EndOf(season.CropYear));
        int weeks = (to.DayNumber - from.DayNumber + 6) / 7;
        return BedMap.Places(season).Select(place => (place, Over(Held(season, place, from, to, weeks), from, to))).ToList();
    }

    /// <summary>The mean over the year; the last week may be a short one.</summary>
    private static double Over(double[] weeks, DateOnly from, DateOnly to)
    {
        int last = to.DayNumber - from.DayNumber - (7 * (weeks.Length - 1));
        return ((weeks.SkipLast(1).Sum() * 7) + (weeks[^1] * last)) / (to.DayNumber - from.DayNumber);
    }

    private static double[] Held(SeasonReview season, string place, DateOnly from, DateOnly to, int weeks)
    {
        List<BedRow> rows = [.. BedMap.BedsOf(season).Where(bed => BedMap.PlaceOf(bed) == place)];
        HashSet<string> beds = rows.Select(bed => bed.Bed.Trim()).ToHashSet(StringComparer.OrdinalIgnoreCase);
        double length = (double)rows.Sum(bed => bed.LengthFt);
        double[] held = new double[weeks];
        foreach (BedStay bed in season.Trace.Stays.Where(bed => beds.Contains(bed.Bed.Name)))
        {
            for (int week = 0; week < weeks; week++)
            {
                DateOnly start = from.AddDays(7 * week);
                DateOnly end = start.AddDays(7) < to ? start.AddDays(7) : to;
                int days = Math.Min(bed.Out.DayNumber, end.DayNumber) - Math.Max(bed.In.DayNumber, start.DayNumber);
                held[week] += Math.Max(0, days) * (double)bed.Row.BedFeet / (end.DayNumber - start.DayNumber) / Math.Max(1, length);
            }
        }

        return held;
    }
}
