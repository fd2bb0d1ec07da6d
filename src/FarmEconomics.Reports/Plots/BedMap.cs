using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;
using FarmEconomics.Tracing;
using ScottPlot;

namespace FarmEconomics.Reports.Plots;

/// <summary>Beds by weeks: what stood where and when, and which beds stood empty.</summary>
public static class BedMap
{

    /// <summary>The blocks and structures of the farm, in the order of the beds table, so that each can have its own map.</summary>
    public static IReadOnlyList<string> Places(SeasonReview season) =>
        BedsOf(season).Select(PlaceOf).Distinct(StringComparer.OrdinalIgnoreCase).ToList();

    /// <summary>
    /// The map of one block or structure in the crop year: a bar for each planting, colored by its gross margin per bed-foot-week beside
    /// the farm's; what each bed earned stands at its right.
    /// </summary>
    /// <param name="season">The season.</param>
    /// <param name="place">The block or structure.</param>
    /// <param name="onPhone">True: for a window of 400 px.</param>
    public static Figure Of(SeasonReview season, string place, bool onPhone = false)
    {
        int width = Canvas.WidthFor(onPhone);
        (double least, double right) = onPhone ? (62, 44) : (86, 64);
        FarmSettings settings = season.Settings;
        (DateOnly from, DateOnly to) = (settings.StartOf(season.CropYear), settings.EndOf(season.CropYear));
        List<BedRow> beds = [.. BedsOf(season).Where(bed => PlaceOf(bed).Equals(place, StringComparison.OrdinalIgnoreCase))];
        Dictionary<string, List<BedStay>> byBed = StaysByBed(season, from, to);
        string unit = settings.LengthUnit.Label("bed-foot-week");
        double names = beds.Select(bed => Canvas.TextWidth(bed.Bed, 11, onPhone)).DefaultIfEmpty(0).Max() + 12;
        double left = Math.Clamp(names, least, width * 0.4);
        double row = Math.Clamp(380.0 / Math.Max(1, beds.Count), 16, 30);
        BedColors colors = new(season);
        double key = onPhone ? 4 : left, top = 40 + colors.KeyHeight(key, width);
        Canvas canvas = new($"What each bed earned: {place}, gross margin per {unit}", width, (int)(34 + 6 + top + (row * beds.Count) + 8));
        Scale scale = new(0, to.DayNumber - from.DayNumber, left, width - right);
        DrawCalendar(canvas, scale, (from, to, onPhone ? 2 : 1), top, top + (row * beds.Count));
        colors.DrawKey(canvas, key, 10, width);
        Dictionary<string, EnterpriseBudget> earned = season
            .Beds.GroupBy(bed => bed.Name, StringComparer.OrdinalIgnoreCase)
            .ToDictionary(bed => bed.Key, bed => bed.First(), StringComparer.OrdinalIgnoreCase);
        List<string> told = [];
        for (int i = 0; i < beds.Count; i++)
        {
            List<BedStay> plantings = byBed.GetValueOrDefault(beds[i].Bed.Trim(), []);
            double y = top + (i * row);
            string brought = earned.GetValueOrDefault(beds[i].Bed.Trim())?.GrossMarginPerBedFootWeek.Value is { } rate
                ? settings.Notation.InWords(rate, Look.Rate)
                : "";
            canvas.Name(beds[i].Bed, left - 6, y + (row / 2), 11, left - 8);
            canvas.Text(brought, width - 6, y + (row / 2), 11, align: Alignment.MiddleRight);
            DrawBed(canvas, scale, plantings, beds[i].LengthFt, from, to, y, row, colors.Of);
            string crops = plantings.Count == 0 ? "empty" : string.Join(", ", plantings.Select(stay => stay.Planting.Crop.Name).Distinct());
            told.Add($"{beds[i].Bed}: {crops}{(brought.Length > 0 ? $", {brought}" : "")}");
        }

        return canvas.ToFigure($"Map of {settings.Notation.Count(beds.Count, "bed")} in {place} over {season.CropYear}: "
            + $"held a crop {Phrase.Percent(Held(beds, byBed, from, to))} of the time. Crops and gross margin per {unit}: "
            + $"{string.Join("; ", told)}.");
    }

    private static Dictionary<string, List<BedStay>> StaysByBed(SeasonReview season, DateOnly from, DateOnly to) => season
        .Trace.Stays.Where(bed => bed.In < to && bed.Out > from)
        .GroupBy(bed => bed.Bed.Name, StringComparer.OrdinalIgnoreCase)
        .ToDictionary(
            group => group.Key,
            group => group.OrderBy(bed => bed.In).ThenByDescending(bed => bed.Row.BedFeet).ToList(),
            StringComparer.OrdinalIgnoreCase);

    private static decimal Held(List<BedRow> beds, Dictionary<string, List<BedStay>> byBed, DateOnly from, DateOnly to)
    {
        decimal there = beds.Sum(bed => bed.LengthFt * (to.DayNumber - from.DayNumber));
        decimal held = beds.Sum(bed =>
            byBed.GetValueOrDefault(bed.Bed.Trim(), []).Sum(planting => planting.Row.BedFeet * Days(planting, from, to))
        );
        return there > 0m ? Math.Min(1m, held / there) : 0m;
    }

    /// <summary>The beds of the crop year: none given up before it or laid out after it, unless something stood there.</summary>
    internal static IReadOnlyList<BedRow> BedsOf(SeasonReview season)
    {
        (DateOnly from, DateOnly to) = (season.Settings.StartOf(season.CropYear), season.Settings.EndOf(season.CropYear));
        Dictionary<string, List<BedStay>> stays = StaysByBed(season, from, to);
        return
        [
            .. season.Records.Tables.Beds.Where(bed =>
                ((bed.From ?? from) < to && (bed.To ?? from) >= from) || stays.ContainsKey(bed.Bed.Trim())),
        ];
    }

    /// <summary>Where a bed lies: its structure, else its block.</summary>
    internal static string PlaceOf(BedRow bed) =>
        !string.IsNullOrWhiteSpace(bed.Structure) ? bed.Structure.Trim()
        : string.IsNullOrWhiteSpace(bed.Block) ? "open field"
        : bed.Block.Trim();

    private static int Days(BedStay planting, DateOnly from, DateOnly to) =>
        Math.Max(0, Math.Min(planting.Out.DayNumber, to.DayNumber) - Math.Max(planting.In.DayNumber, from.DayNumber));

    private static void DrawCalendar(
        Canvas canvas, Scale scale, (DateOnly From, DateOnly To, int NamedEvery) year, double top, double bottom)
    {
        canvas.Rect(scale.From, top, scale.To - scale.From, bottom - top, Palette.Pale);
        for (int i = 0; year.From.AddMonths(i) is var month && month < year.To; i++)
        {
            double x = scale[month.DayNumber - year.From.DayNumber];
            canvas.Line(x, top - 4, x, bottom, Palette.Rule);
            canvas.Text(i % year.NamedEvery == 0 ? month.ToString("MMM") : "", x + 4, top - 9, 11, Palette.Soft);
        }
    }

    /// <summary>Plantings that share a bed stand one below the other, each as thick as the part of the bed it takes.</summary>
    private static void DrawBed(
        Canvas canvas,
        Scale scale,
        List<BedStay> plantings,
        decimal length,
        DateOnly from,
        DateOnly to,
        double y,
        double row,
        Func<BedStay, Color> color
    )
    {
        List<(BedStay Planting, decimal Start)> placed = [];
        foreach (BedStay planting in plantings)
        {
            decimal start = 0m;
            foreach (
                (BedStay other, decimal at) in placed
                    .Where(item => item.Planting.In < planting.Out && planting.In < item.Planting.Out)
                    .OrderBy(item => item.Start)
            )
            {
                start = start + planting.Row.BedFeet <= at ? start : Math.Max(start, at + other.Row.BedFeet);
            }

            placed.Add((planting, start));
            double thick = (double)Math.Min(1m, planting.Row.BedFeet / Math.Max(1m, length)) * (row - 3);
            double at2 = y + 1.5 + Math.Min((double)(start / Math.Max(1m, length)) * (row - 3), row - 3 - thick);
            double left = scale[Math.Max(0, planting.In.DayNumber - from.DayNumber)];
            double right = scale[Math.Min(to.DayNumber, planting.Out.DayNumber) - from.DayNumber];
            Color fill = color(planting);
            canvas.Rect(left, at2, Math.Max(1.5, right - left), thick, fill, Palette.Soft, 0.6);
            double size = Math.Clamp(thick * 1.1, 8, 10.5);
            if (thick >= 6.5 && Canvas.TextWidth(planting.Planting.Crop.Name, size) + 5 <= right - left)
            {
                canvas.Text(planting.Planting.Crop.Name, left + 3, at2 + (thick / 2), size, Palette.On(fill));
            }
        }
    }
}
