using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Chances;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Plots;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;
using FarmEconomics.Units;
using ScottPlot;
using Palette = FarmEconomics.Reports.Plots.Palette;

namespace FarmEconomics.Reports.Decisions;

/// <summary>The pictures of what-if and change: swings, simulated outcomes, the farm before and after.</summary>
public static class DecisionPlots
{
    /// <summary>One-at-a-time swings around the net return as it was.</summary>
    public static Figure Swings(SensitivityModel model, Notation notation, decimal fraction = 0.2m, int count = 10, bool onPhone = false)
    {
        List<Swing> swings = [.. Swing.Of(model, fraction).Where(swing => swing.Size != Money.Zero).Take(count)];
        if (swings.Count == 0)
        {
            return SeasonPlots.Nothing($"{model.Name}: nothing to swing");
        }

        decimal net = model.NetReturn(1m, 1m);
        string title = notation.Text($"{model.Name}: a {fraction * 100m:0}% change of {swings[0].Input} moves the net return most, "
            + $"by {notation.InWords(swings[0].Size.Amount / 2m, Look.WholeMoney)} either way");
        Canvas canvas = new(title, onPhone, 130 + (26 * swings.Count));
        double names = swings.Max(swing => canvas.Measure(swing.Input, 11.5)) + 20, bottom = canvas.Bottom - 40;
        (double from, double to) = (names + (onPhone ? 46 : 70), canvas.Width - (onPhone ? 56 : 90));
        Scale scale = Covering(swings.SelectMany(swing => new[] { swing.AtLow.Amount, swing.AtHigh.Amount }).Append(net), from, to);
        string size = notation.Text($"{fraction * 100m:0}%");
        SeasonPlots.Key(canvas, SeasonPlots.Key(canvas, 10, 12, Palette.Dark, size + " less") + 20, 12, Palette.Light, size + " more");
        Axis(canvas, notation, scale, 28, bottom, $"{model.NetReturnLabel} in {notation.Currency}", onPhone ? 2 : 7);
        double row = (bottom - 28) / swings.Count, y = 28;
        for (int i = 0; i < swings.Count; i++, y = 28 + (i * row))
        {
            Bar(swings[i].AtLow.Amount, y, Palette.Dark);
            Bar(swings[i].AtHigh.Amount, y, Palette.Light);
            canvas.Text(swings[i].Input, 10, y + (row / 2), 11.5);
        }

        canvas.Line(scale[(double)net], 26, scale[(double)net], bottom, Palette.Ink, 1.5);
        IEnumerable<string> first = swings.Take(5)
            .Select(swing => $"{swing.Input} {FromTo(swing.AtLow.Amount, swing.AtHigh.Amount, notation)}");
        return canvas.ToFigure(notation.Text($"Bars: net return of {model.Name} ({notation.InWords(net, Look.WholeMoney)} as it was) "
            + $"when one thing changes by {fraction * 100m:0}%, largest swing first: {Phrase.List([.. first])}."));

        void Bar(decimal at, double y, Color color)
        {
            double a = scale[(double)Math.Min(at, net)], b = scale[(double)Math.Max(at, net)];
            canvas.Rect(a, y + (row * 0.15), b - a, row * 0.7, color);
            (double x, Alignment align) = at < net ? (a - 4, Alignment.MiddleRight) : (b + 4, Alignment.MiddleLeft);
            canvas.Text(notation.Number(at, Look.WholeMoney), x, y + (row / 2), 10.5, Palette.Ink, align);
        }
    }

    private static string FromTo(decimal from, decimal to, Notation notation) =>
        $"{notation.InWords(from, Look.WholeMoney)} to {notation.InWords(to, Look.WholeMoney)}";

    /// <summary>
    /// Simulated net returns of every crop: P5 to P95, the middle, and the season as it was; its years where they are too few.
    /// </summary>
    public static Figure Distributions(Verdicts verdicts, bool onPhone = false)
    {
        Notation notation = verdicts.Season.Notation;
        if (!verdicts.Simulation.HasChance)
        {
            return YearsPlot.Of(verdicts, onPhone);
        }

        List<Verdict> crops =
        [
            .. verdicts
                .Crops.Where(verdict => verdict.Direction != Direction.Unknown && verdict.Outcome.WhyNoChance is null)
                .OrderByDescending(verdict => verdict.Outcome.P50.Amount),
        ];
        if (crops.Count == 0)
        {
            return SeasonPlots.Nothing("No crop can be simulated from these records");
        }

        int sure = crops.Count(verdict => verdict.Outcome.P5.Amount >= 0m);
        int never = crops.Count(verdict => verdict.Outcome.P95.Amount < 0m);
        int rows = RowsOf(crops.Count, onPhone);
        Canvas canvas = new(
            $"{Phrase.Sentence(notation.Count(sure, "crop"))} of {crops.Count} meet{(sure == 1 ? "s" : "")} "
                + $"{verdicts.Season.Farm.Known.FullCostLabel} in 19 simulated seasons of 20; "
                + $"{never} miss{(never == 1 ? "es" : "")} it in 19 of 20",
            onPhone,
            onPhone ? 170 + (18 * rows) : Math.Clamp(130 + (17 * rows), 200, 480));
        RangeKey(canvas);
        double top = onPhone ? 44 : 26;
        InColumns(canvas, notation, (crops, top, (canvas.Bottom - 36 - top) / rows),
            verdict => [verdict.Outcome.P5.Amount, verdict.Outcome.P95.Amount, verdict.Budget.NetReturn.Amount],
            (verdict, scale, y) => RangeOf(canvas, verdict, scale, y));
        return canvas.ToFigure($"Ranges: simulated net returns of {notation.Count(crops.Count, "crop")}, 5th to 95th percentile. "
            + $"Best middle: {Phrase.List(crops.Take(3).Select(Range).ToList())}. "
            + $"Worst: {Phrase.List(crops.TakeLast(3).Select(Range).ToList())}.");

        string Range(Verdict verdict) =>
            $"{verdict.Budget.Name} {FromTo(verdict.Outcome.P5.Amount, verdict.Outcome.P95.Amount, notation)}";
    }

    private static void RangeKey(Canvas canvas)
    {
        bool onPhone = canvas.OnPhone;
        double second = onPhone ? 30 : 12;
        string ends = onPhone
            ? "19 in 20 better than the left, 1 in 20 than the right"
            : "19 in 20 better than the left end, 1 in 20 better than the right";
        canvas.Line(12, 12, 50, 12, Palette.Dark, 4);
        canvas.Text(ends, 56, 12, 11);
        Ring(canvas, onPhone ? 16 : 450, second);
        canvas.Text("half better, half worse", onPhone ? 26 : 460, second, 11);
        canvas.Dot(onPhone ? 206 : 620, second, 8, Palette.Loss, Palette.White, MarkerShape.FilledDiamond);
        canvas.Text("the season as it was", onPhone ? 216 : 630, second, 11);
    }

    private static void RangeOf(Canvas canvas, Verdict verdict, Scale scale, double y)
    {
        Outcome outcome = verdict.Outcome;
        double low = scale[(double)outcome.P5.Amount], high = scale[(double)outcome.P95.Amount];
        canvas.Line(low, y, high, y, outcome.P95.Amount < 0m ? Palette.Middle : Palette.Dark, 4);
        Ring(canvas, scale[(double)outcome.P50.Amount], y);
        canvas.Dot(scale[(double)verdict.Budget.NetReturn.Amount], y, 7, Palette.Loss, Palette.White, MarkerShape.FilledDiamond);
    }

    /// <summary>How many rows so many crops take, in the columns there is room for.</summary>
    internal static int RowsOf(int crops, bool onPhone) => ((crops - 1) / BarColumns.ColumnsFor(crops, onPhone)) + 1;

    /// <summary>Crops in columns side by side, each column with a scale of its own that covers the amounts of its crops and 0.</summary>
    internal static void InColumns(
        Canvas canvas,
        Notation notation,
        (List<Verdict> Crops, double Top, double Row) shown,
        Func<Verdict, IEnumerable<decimal>> amounts,
        Action<Verdict, Scale, double> draw)
    {
        (List<Verdict> crops, double top, double row) = shown;
        int columns = BarColumns.ColumnsFor(crops.Count, canvas.OnPhone), rows = RowsOf(crops.Count, canvas.OnPhone);
        double columnWidth = (canvas.Width - 20.0 - (20 * (columns - 1))) / columns;
        double names = canvas.NamesWidth(crops.Select(verdict => verdict.Budget.Name), 11, columnWidth * 0.4) + 16;
        string text = $"net return in {notation.Currency}{(columns > 1 ? "; the columns have scales of their own" : "")}";
        for (int column = 0; column < columns; column++)
        {
            List<Verdict> own = [.. crops.Skip(column * rows).Take(rows)];
            double left = 10 + (column * (columnWidth + 20));
            Scale scale = Covering(own.SelectMany(amounts).Append(0m), left + names, left + columnWidth - 8);
            Axis(canvas, notation, scale, top, top + (own.Count * row), text, columns > 1 || canvas.OnPhone ? 4 : 7);
            for (int i = 0; i < own.Count; i++)
            {
                double y = top + ((i + 0.5) * row);
                canvas.Name(own[i].Budget.Name, left + names - 8, y, 11, names - 16);
                draw(own[i], scale, y);
            }
        }
    }

    /// <summary>The farm before and after a change: how the net return of each crop changes, the largest changes first.</summary>
    public static Figure BeforeAndAfter(ChangeAnswer answer, Notation notation, int count = 14, bool onPhone = false)
    {
        List<CropChange> rows = ChangesOf(answer, count);
        decimal before = answer.Crops.Sum(crop => crop.Before.Amount);
        decimal change = answer.AvoidableChange.Amount;
        bool whole = answer.CropsUnknown.Count == 0;
        string finding = answer.WhyUnknown is { } why
            ? $"what the farm would be is not known, {why}"
            : $"the farm would be {notation.InWords(Math.Abs(change), Look.WholeMoney)} {(change < 0m ? "poorer" : "richer")}";
        Canvas canvas = new($"{answer.Change.Title}: {finding}", onPhone, 170 + (20 * Math.Max(1, rows.Count)));
        string net = answer.Known.NetReturnLabel;
        string key = onPhone
            ? $"change of each crop's {net}, shared cost moved"
            : $"change of each crop's {net}, with shared cost moved (before > after)";
        canvas.Text(key, 10, 12, 11.5);
        if (rows.Count > 0)
        {
            decimal elsewhere = answer.Elsewhere.Sum(line => line.Change.Amount);
            rows.AddRange(elsewhere == 0m ? [] : [new("outside the crops", 0m, elsewhere)]);
            rows.AddRange(whole ? [new("the farm", before, before + change)] : []);
            DrawChanges(canvas, notation, rows, whole);
        }

        string farm = whole ? $"the farm goes from {FromTo(before, before + change, notation)}" : finding;
        IEnumerable<string> largest = rows.Take(5).Select(row => $"{row.Name} {FromTo(row.Before, row.After, notation)}");
        return canvas.ToFigure($"Bars: change of the crops' {net}, {answer.Change.Title}; {farm}. "
            + $"Largest changes: {Phrase.List([.. largest])}.");
    }

    private sealed record CropChange(string Name, decimal Before, decimal After);

    /// <summary>The crops that change most, the others as one.</summary>
    private static List<CropChange> ChangesOf(ChangeAnswer answer, int count)
    {
        List<CropChange> all =
        [
            .. answer
                .Crops.Where(crop => crop.Before != crop.After && !answer.CropsUnknown.ContainsKey(crop.Crop))
                .OrderByDescending(crop => Math.Abs((crop.After - crop.Before).Amount))
                .Select(crop => new CropChange(crop.Crop, crop.Before.Amount, crop.After.Amount)),
        ];
        List<CropChange> rest = all.Count > count + 1 ? all[count..] : [];
        return rest.Count == 0 ? all
            : [.. all.Take(count), new($"{rest.Count} other crops", rest.Sum(row => row.Before), rest.Sum(row => row.After))];
    }

    private static void DrawChanges(Canvas canvas, Notation notation, List<CropChange> rows, bool farmIsLast)
    {
        bool onPhone = canvas.OnPhone;
        double names = canvas.NamesWidth(rows.Select(row => row.Name), 11.5, canvas.Width * (onPhone ? 0.35 : 0.4)) + 20;
        double bottom = canvas.Bottom - 40;
        (double from, double to) = (names + (onPhone ? 50 : 70), canvas.Width - (onPhone ? 46 : 180));
        Scale scale = Covering(rows.Select(row => row.After - row.Before).Append(0m), from, to);
        Axis(canvas, notation, scale, 28, bottom, $"change of net return in {notation.Currency}", onPhone ? 2 : 7);
        double height = (bottom - 28) / rows.Count;
        for (int i = 0; i < rows.Count; i++)
        {
            (string name, decimal was, decimal becomes) = rows[i];
            double y = 28 + ((i + 0.5) * height);
            bool all = i == rows.Count - 1 && farmIsLast;
            decimal by = becomes - was;
            double a = scale[(double)Math.Min(by, 0m)], b = scale[(double)Math.Max(by, 0m)];
            canvas.Name(name, names, y, 11.5, names - 10, all);
            canvas.Rect(a, y - (height * 0.36), b - a, height * 0.72, by < 0m ? Palette.Loss : Palette.Dark);
            string shown = (by > 0m ? "+" : "") + notation.Number(by, Look.WholeMoney);
            (double x, Alignment align) = by < 0m ? (a - 4, Alignment.MiddleRight) : (b + 4, Alignment.MiddleLeft);
            canvas.Text(shown, x, y, 11, Palette.Ink, align, bold: all);
            if (!onPhone)
            {
                string both = $"{notation.Number(was, Look.WholeMoney)} > {notation.Number(becomes, Look.WholeMoney)}";
                canvas.Text(both, canvas.Width - 12, y, 11, Palette.Soft, Alignment.MiddleRight, bold: all);
            }
        }
    }

    /// <summary>A white dot with a dark rim.</summary>
    internal static void Ring(Canvas canvas, double x, double y)
    {
        canvas.Dot(x, y, 9, Palette.Dark, Palette.Dark);
        canvas.Dot(x, y, 5, Palette.White, Palette.White);
    }

    internal static Scale Covering(IEnumerable<decimal> values, double from, double to)
    {
        double[] all = [.. values.Select(value => (double)value)];
        double room = Math.Max((all.Max() - all.Min()) * 0.03, 1);
        return new Scale(all.Min() - room, all.Max() + room, from, to);
    }

    internal static void Axis(Canvas canvas, Notation notation, Scale scale, double top, double bottom, string text, int about = 7)
    {
        foreach (double tick in scale.Ticks(about))
        {
            canvas.Line(scale[tick], top, scale[tick], bottom + 3, Math.Abs(tick) < 1e-9 ? Palette.Soft : Palette.Rule);
            canvas.Centered(notation.Text($"{tick:#,0}"), scale[tick], bottom + 11, 10.5, Palette.Soft);
        }

        canvas.AxisTitle(text, scale, bottom + 26, 10.5);
    }
}
