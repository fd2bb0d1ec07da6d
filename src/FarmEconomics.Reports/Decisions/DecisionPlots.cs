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
        Canvas canvas = new(notation.Text($"{model.Name}: a {fraction * 100m:0}% change of {swings[0].Input} moves the net return most, by {notation.InWords(swings[0].Size.Amount / 2m, Look.WholeMoney)} either way"), onPhone, 130 + (26 * swings.Count));
        double names = swings.Max(swing => canvas.Measure(swing.Input, 11.5)) + 20;
        double bottom = canvas.Bottom - 40;
        Scale scale = Covering(
            swings.SelectMany(swing => new[] { swing.AtLow.Amount, swing.AtHigh.Amount }).Append(net),
            names + (onPhone ? 46 : 70),
            canvas.Width - (onPhone ? 56 : 90)
        );
        double end = SeasonPlots.Key(canvas, 10, 12, Palette.Dark, notation.Text($"{fraction * 100m:0}% less"));
        SeasonPlots.Key(canvas, end + 20, 12, Palette.Light, notation.Text($"{fraction * 100m:0}% more"));
        Axis(canvas, notation, scale, 28, bottom, $"net return in {notation.Currency}", onPhone ? 2 : 7);
        double row = (bottom - 28) / swings.Count;
        for (int i = 0; i < swings.Count; i++)
        {
            double y = 28 + (i * row);
            Bar(swings[i].AtLow, Palette.Dark);
            Bar(swings[i].AtHigh, Palette.Light);
            canvas.Text(swings[i].Input, 10, y + (row / 2), 11.5);

            void Bar(Money at, Color color)
            {
                double a = scale[(double)Math.Min(at.Amount, net)];
                double b = scale[(double)Math.Max(at.Amount, net)];
                canvas.Rect(a, y + (row * 0.15), b - a, row * 0.7, color);
                bool leftward = at.Amount < net;
                canvas.Text(
                    notation.Number(at.Amount, Look.WholeMoney),
                    leftward ? a - 4 : b + 4,
                    y + (row / 2),
                    10.5,
                    Palette.Ink,
                    leftward ? Alignment.MiddleRight : Alignment.MiddleLeft
                );
            }
        }

        canvas.Line(scale[(double)net], 26, scale[(double)net], bottom, Palette.Ink, 1.5);
        return canvas.ToFigure(notation.Text($"Bars: net return of {model.Name} ({notation.InWords(net, Look.WholeMoney)} as it was) when one thing changes by {fraction * 100m:0}%, largest swing first: ")
            + Phrase.List(swings.Take(5).Select(swing => $"{swing.Input} {notation.InWords(swing.AtLow.Amount, Look.WholeMoney)} to {notation.InWords(swing.AtHigh.Amount, Look.WholeMoney)}").ToList()) + ".");
    }

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
        int columns = BarColumns.ColumnsFor(crops.Count, onPhone);
        int rows = ((crops.Count - 1) / columns) + 1;
        Canvas canvas = new($"{Phrase.Sentence(notation.Count(sure, "crop"))} of {crops.Count} meet{(sure == 1 ? "s" : "")} full cost in 19 simulated seasons of 20; {never} miss{(never == 1 ? "es" : "")} it in 19 of 20", onPhone, onPhone ? 170 + (18 * rows) : Math.Clamp(130 + (17 * rows), 200, 480));
        canvas.Line(12, 12, 50, 12, Palette.Dark, 4);
        canvas.Text(onPhone ? "19 in 20 better than the left, 1 in 20 than the right" : "19 in 20 better than the left end, 1 in 20 better than the right", 56, 12, 11);
        double second = onPhone ? 30 : 12, top = onPhone ? 44 : 26;
        Ring(canvas, onPhone ? 16 : 450, second);
        canvas.Text("half better, half worse", onPhone ? 26 : 460, second, 11);
        canvas.Dot(onPhone ? 206 : 620, second, 8, Palette.Loss, Palette.White, MarkerShape.FilledDiamond);
        canvas.Text("the season as it was", onPhone ? 216 : 630, second, 11);
        double names = crops.Max(verdict => canvas.Measure(verdict.Budget.Name, 11)) + 16;
        double columnWidth = (canvas.Width - 20.0 - (20 * (columns - 1))) / columns;
        double bottom = canvas.Bottom - 36;
        double row = (bottom - top) / rows;
        for (int column = 0; column < columns; column++)
        {
            List<Verdict> own = [.. crops.Skip(column * rows).Take(rows)];
            double left = 10 + (column * (columnWidth + 20));
            Scale scale = Covering(
                own.SelectMany(verdict => new[] { verdict.Outcome.P5.Amount, verdict.Outcome.P95.Amount, verdict.Budget.NetReturn.Amount })
                    .Append(0m),
                left + names,
                left + columnWidth - 8
            );
            Axis(
                canvas,
                notation,
                scale,
                top,
                top + (own.Count * row),
                $"net return in {notation.Currency}{(columns > 1 ? "; the columns have scales of their own" : "")}",
                columns > 1 || onPhone ? 4 : 7
            );
            for (int i = 0; i < own.Count; i++)
            {
                Outcome outcome = own[i].Outcome;
                double y = top + ((i + 0.5) * row);
                canvas.Text(own[i].Budget.Name, left + names - 8, y, 11, Palette.Ink, Alignment.MiddleRight);
                canvas.Line(
                    scale[(double)outcome.P5.Amount],
                    y,
                    scale[(double)outcome.P95.Amount],
                    y,
                    outcome.P95.Amount < 0m ? Palette.Middle : Palette.Dark,
                    4
                );
                Ring(canvas, scale[(double)outcome.P50.Amount], y);
                canvas.Dot(scale[(double)own[i].Budget.NetReturn.Amount], y, 7, Palette.Loss, Palette.White, MarkerShape.FilledDiamond);
            }
        }

        return canvas.ToFigure($"Ranges: simulated net returns of {notation.Count(crops.Count, "crop")}, 5th to 95th percentile. Best middle: {Phrase.List(crops.Take(3).Select(verdict => $"{verdict.Budget.Name} {Range(verdict.Outcome)}").ToList())}. Worst: {Phrase.List(crops.TakeLast(3).Select(verdict => $"{verdict.Budget.Name} {Range(verdict.Outcome)}").ToList())}.");

        string Range(Outcome outcome) =>
            $"{notation.InWords(outcome.P5.Amount, Look.WholeMoney)} to {notation.InWords(outcome.P95.Amount, Look.WholeMoney)}";
    }

    /// <summary>The farm before and after a change: how the net return of each crop changes, the largest changes first.</summary>
    public static Figure BeforeAndAfter(ChangeAnswer answer, Notation notation, int count = 14, bool onPhone = false)
    {
        List<(string Name, decimal Before, decimal After)> rows =
        [
            .. answer
                .Crops.Where(crop => crop.Before != crop.After && !answer.CropsUnknown.ContainsKey(crop.Crop))
                .OrderByDescending(crop => Math.Abs((crop.After - crop.Before).Amount))
                .Select(crop => (crop.Crop, crop.Before.Amount, crop.After.Amount)),
        ];
        decimal elsewhere = answer.Elsewhere.Sum(line => line.Change.Amount);
        List<(string Name, decimal Before, decimal After)> rest = rows.Count > count + 1 ? rows[count..] : [];
        rows =
            rest.Count > 0
                ? [.. rows.Take(count), ($"{rest.Count} other crops", rest.Sum(row => row.Before), rest.Sum(row => row.After))]
                : rows;
        decimal before = answer.Crops.Sum(crop => crop.Before.Amount);
        decimal change = answer.AvoidableChange.Amount;
        bool whole = answer.CropsUnknown.Count == 0;
        string finding = answer.WhyUnknown is { } why
            ? $"what the farm would be is not known, {why}"
            : $"the farm would be {notation.InWords(Math.Abs(change), Look.WholeMoney)} {(change < 0m ? "poorer" : "richer")}";
        Canvas canvas = new($"{answer.Change.Title}: {finding}", onPhone, 170 + (20 * Math.Max(1, rows.Count)));
        canvas.Text(onPhone ? "change of each crop's net return, shared cost moved" : "change of each crop's net return, with shared cost moved (before > after)", 10, 12, 11.5);
        if (rows.Count > 0)
        {
            rows.AddRange(elsewhere == 0m ? [] : [("outside the crops", 0m, elsewhere)]);
            if (whole)
            {
                rows.Add(("the farm", before, before + change));
            }

            double names = rows.Max(row => canvas.Measure(row.Name, 11.5)) + 20;
            double bottom = canvas.Bottom - 40;
            (double from, double to) = (names + (onPhone ? 50 : 70), canvas.Width - (onPhone ? 46 : 180));
            Scale scale = Covering(rows.Select(row => row.After - row.Before).Append(0m), from, to);
            Axis(canvas, notation, scale, 28, bottom, $"change of net return in {notation.Currency}", onPhone ? 2 : 7);
            double height = (bottom - 28) / rows.Count;
            for (int i = 0; i < rows.Count; i++)
            {
                (string name, decimal was, decimal becomes) = rows[i];
                double y = 28 + ((i + 0.5) * height);
                bool all = i == rows.Count - 1 && whole;
                decimal by = becomes - was;
                double a = scale[(double)Math.Min(by, 0m)];
                double b = scale[(double)Math.Max(by, 0m)];
                canvas.Text(name, names, y, 11.5, Palette.Ink, Alignment.MiddleRight, bold: all);
                canvas.Rect(a, y - (height * 0.36), b - a, height * 0.72, by < 0m ? Palette.Loss : Palette.Dark);
                canvas.Text(
                    (by > 0m ? "+" : "") + notation.Number(by, Look.WholeMoney),
                    by < 0m ? a - 4 : b + 4,
                    y,
                    11,
                    Palette.Ink,
                    by < 0m ? Alignment.MiddleRight : Alignment.MiddleLeft,
                    bold: all
                );
                if (!onPhone)
                {
                    string both = $"{notation.Number(was, Look.WholeMoney)} > {notation.Number(becomes, Look.WholeMoney)}";
                    canvas.Text(both, canvas.Width - 12, y, 11, Palette.Soft, Alignment.MiddleRight, bold: all);
                }
            }
        }

        return canvas.ToFigure(
            $"Bars: change of the crops' net return, {answer.Change.Title}; {(whole ? $"the farm goes from {notation.InWords(before, Look.WholeMoney)} to {notation.InWords(before + change, Look.WholeMoney)}" : finding)}. Largest changes: "
                + Phrase.List(
                    rows.Take(5)
                        .Select(row =>
                            $"{row.Name} {notation.InWords(row.Before, Look.WholeMoney)} to {notation.InWords(row.After, Look.WholeMoney)}"
                        )
                        .ToList()
                )
                + "."
        );
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

        canvas.Centered(text, (scale.From + scale.To) / 2, bottom + 26, 10.5, Palette.Soft);
    }
}
