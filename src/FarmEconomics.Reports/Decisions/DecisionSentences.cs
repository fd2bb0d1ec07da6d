using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Decisions;

/// <summary>Verdicts in plain words, every number from the records.</summary>
public static class DecisionSentences
{
    /// <summary>Verdicts on all crops as a table of words.</summary>
    public static ReportTable Verdicts(Verdicts verdicts)
    {
        ArgumentNullException.ThrowIfNull(verdicts);
        FarmSettings farm = verdicts.Season.Settings;
        ReportTable table = new ReportTable(Heading(verdicts), farm.Notation)
            .Opens()
            .Column("Crop")
            .Column("Cash without it", Look.WholeMoney)
            .Column("Own hours freed", Look.Hours)
            .Column("The farm would lose", Look.WholeMoney)
            .Column("Noise", Look.WholeMoney)
            .Column("Left over", Look.Rate, per: farm.LengthUnit.Label("bed-foot-week"))
            .Column("Verdict, with what would change it");
        foreach (Verdict verdict in verdicts.Crops)
        {
            ReportCell Known(Units.Money money) => ReportCell.Known(money, verdict.WhyUnknown);
            table.Row(
                verdict.Budget.Name,
                Known(verdict.Without.Cash),
                verdict.WhyUnknown is null ? verdict.Without.OwnHours : ReportCell.Missing(verdict.WhyUnknown),
                Known(verdict.Mean),
                Known(verdict.Noise),
                verdict.NetPerBedFootWeek,
                Of(verdict, farm)
            );
        }

        return table.Note("Cash and own hours: the season reviewed, without the crop. What the farm would lose: "
            + "the mean of the seasons on record at today's prices and wages, own hours at their value; a negative figure is a gain.")
            .Note("Noise: a difference smaller than this is more than the records can tell.")
            .Note(verdicts.Simulation.HasChance ? DecisionTables.NeverSeen : ChanceWords.TooFew(verdicts.Simulation))
            .Note(Rule(verdicts));
    }

    /// <summary>The same line by line, for a terminal: a crop, its verdict, its figures.</summary>
    public static string VerdictLines(Verdicts verdicts, int width = TextLines.Width)
    {
        ArgumentNullException.ThrowIfNull(verdicts);
        FarmSettings farm = verdicts.Season.Settings;
        List<string> lines = [Heading(verdicts), ""];
        foreach (Verdict verdict in verdicts.Crops)
        {
            lines.Add(verdict.Budget.Name);
            lines.AddRange(TextLines.Wrapped(Of(verdict, farm), width - 4).Select(line => "    " + line));
        }

        lines.Add("");
        lines.AddRange(TextLines.Wrapped(Rule(verdicts), width));
        return string.Join('\n', lines) + "\n";
    }

    /// <summary>
    /// A verdict in words: cash first where it falls, then where it points, cash and own hours, and what would change it.
    /// </summary>
    public static string Of(Verdict verdict, FarmSettings farm)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        ArgumentNullException.ThrowIfNull(farm);
        if (verdict.Direction == Direction.Unknown)
        {
            return $"The records can't tell: {verdict.WhyUnknown}.";
        }

        List<string> said =
        [
            verdict.LowersCash ? "Less cash: " + Advice(verdict, farm) : Phrase.Sentence(Advice(verdict, farm)),
            Means(verdict, farm.Notation),
            verdict.BeyondLimit.Count > 0 ? ChangeSentences.BeyondLimit(verdict.BeyondLimit, farm.Notation) : "",
            Seasons(verdict, farm.Notation),
        ];
        said.Add(Needs(verdict, farm.Notation));
        if (verdict.HoursByRule.Value is > 0.005m and { } byRule)
        {
            said.Add($"{Phrase.Sentence(Phrase.Percent(byRule))} of its hours were divided by rule.");
        }

        return string.Join(" ", said.Where(sentence => sentence.Length > 0));
    }

    private static string Heading(Verdicts verdicts) =>
        verdicts.Season.Notation.Text(
            $"Drop or change, fix, keep or grow after {verdicts.Season.CropYear}? "
                + $"Best {verdicts.Season.Farm.Known.NetReturnLabel} per bed-foot-week first"
        );

    private static string Rule(Verdicts verdicts) => verdicts.Season.Notation.Text(
        $"Drop or change: a loss on the mean of at least two seasons, in the last too, beyond the noise; "
            + $"or other crops in its beds add more than the noise and {verdicts.Settings.MixShare * 100m:0}% of its output, "
            + $"never in a perennial's. Grow: {verdicts.Settings.GrowStep * 100m:0}% more, or the room there is, "
            + $"adds more than the noise. Both ask for the same sign whether own hours count or not. What a market takes, it takes once: "
            + $"crops that add least for their bed time change first. Steps of growing more are judged one by one: "
            + $"a free bed holds only one of them. ")
        + "Trips stay until nothing is sold through a channel; boxes are refilled to what members paid. "
        + "Soil, rotation, customers and family say more than these figures do.";

    internal static string Advice(Verdict verdict, FarmSettings farm)
    {
        Notation notation = farm.Notation;
        string Money(decimal amount) => notation.InWords(Math.Abs(amount), Look.WholeMoney);
        string Feet(decimal feet) => notation.Number(feet, Look.Quantity);
        string name = verdict.Budget.Name;
        decimal net = verdict.Budget.NetReturn.Amount;
        return verdict.Direction switch
        {
            Direction.DropOrChange when verdict.BetterMix is { } mix => notation.Text(
                $"change to {Phrase.List([.. mix.Crops.Select(one => notation.Text($"{one.Crop} ({Feet(one.BedFeet)} bed-feet)"))])} in "
                    + $"its beds."
            ),
            Direction.DropOrChange =>
                $"drop it, or change how it is grown: in {verdict.Seasons.Count(season => season.Contribution.Amount < 0m)} of "
                    + $"{verdict.Seasons.Count} seasons it brought less than the costs that go with it.",
            Direction.Grow when verdict.InPlaceOf.Count > 0 => $"grow it in the beds of "
                + $"{Phrase.List([.. verdict.InPlaceOf.Select(one => notation.Text($"{one.Crop} ({Feet(one.BedFeet)} bed-feet)"))])}.",
            Direction.Grow when verdict.More!.StopsAtElasticity.Value is { } turns => notation.Text(
                $"grow {Feet(verdict.More.BedFeet)} bed-feet more; it stops paying at an elasticity of {turns:0.##}."),
            Direction.Grow => notation.Text($"grow {Feet(verdict.More!.BedFeet)} bed-feet more."),
            Direction.Fix when verdict.TurnsAtWage.Value is { } wage =>
                $"fix it: it pays only while your own hours count for less than {notation.InWords(wage, Look.Money)}.",
            Direction.Fix when verdict.LosesPaidHoursOnly =>
                "fix it: it loses only if the hired hours in it, which are paid all the same, would earn their wage elsewhere.",
            Direction.Fix when verdict.Mean.Amount < 0m && verdict.Seasons.Count == 1 =>
                "fix it and watch it: it brought less than the costs that go with it, but one season is too little to drop it.",
            Direction.Fix when verdict.Mean.Amount < 0m =>
                "fix it and watch it: it lost on the mean of its seasons, but not in enough of them to drop it.",
            Direction.Fix =>
                $"fix it: it fell {Money(net)} short of its {verdict.Budget.Known.FullCostLabel}, "
                    + $"but without it the farm would lose {Money(verdict.Mean.Amount)} a year.",
            Direction.TooClose =>
                $"too close to call: without it the farm would {(verdict.Mean.Amount < 0m ? "gain" : "lose")} "
                    + $"{Money(verdict.Mean.Amount)} a year, less than the {Money(verdict.Noise.Amount)} the records can tell.",
            _ => $"keep it: it earned its {verdict.Budget.Known.FullCostLabel} and {Money(net)} more.{WhyNotMore(verdict, notation)}",
        };
    }

    private static string WhyNotMore(Verdict verdict, Notation notation) => verdict.More switch
    {
        _ when verdict.Budget.Crop?.Perennial == true => " More of it would take years to bear, which a season's records don't tell.",
        null => " There is no room for more under its cover while it stands.",
        { Means.Net.Amount: <= 0m } when verdict.Budget.Sums.Sales == Units.Money.Zero =>
            " Boxes and your household take no more of it, and nobody else bought any.",
        { Means.Net.Amount: <= 0m } => " The market is full: more of it would bring less than it costs.",
        { Short.Count: > 0 } more => $" More of it would run short of {Phrase.List([.. more.Short.Select(Named)])}.",
        { Means.WithoutOwnHours.Amount: <= 0m } => " More of it would take cash.",
        _ => "",
    };

    private static string Named(ShortOf thing) => thing switch
    {
        ShortOf.Hours => "hours",
        ShortOf.Store => "store space",
        _ => "room",
    };

    private static string Means(Verdict verdict, Notation notation)
    {
        string title = verdict.Direction switch
        {
            Direction.Grow when verdict.More is not null => "With more of it",
            Direction.DropOrChange when verdict.WithMix is not null => "With them",
            _ => "Without it",
        };
        return $"{title}: {MeansWords.Of(verdict.Advised, notation)}.";
    }

    private static string Seasons(Verdict verdict, Notation notation)
    {
        string each = string.Join(
            ", ",
            verdict.Seasons.Select(season => $"{season.CropYear} {notation.Number(season.Contribution.Amount, Look.WholeMoney)}")
        );
        return verdict.Seasons.Count == 1
            ? $"Only {verdict.Seasons[0].CropYear} tells what it adds."
            : $"What it added, at today's prices: {each} (noise {notation.Number(verdict.Noise.Amount, Look.WholeMoney)}).";
    }

    internal static string Needs(Verdict verdict, Notation notation)
    {
        if (verdict.Direction == Direction.Grow && verdict.Needs.WhyUnknown is null && verdict.Budget.NetReturn.Amount < 0m)
        {
            return $"It still fell {notation.InWords(-verdict.Budget.NetReturn.Amount, Look.WholeMoney)} short of its "
                + $"{verdict.Budget.Known.FullCostLabel}.";
        }

        if (verdict.Needs.WhyUnknown is { } why)
        {
            return $"What would change this isn't known: {why}.";
        }

        List<string> ways = [];
        string unit = verdict.Budget.Crop?.Unit ?? "unit";
        bool up =
            verdict.Direction is Direction.DropOrChange or Direction.Fix
            || (verdict.Direction == Direction.TooClose && verdict.Mean.Amount < 0m);
        if (verdict.Needs.Price.Value is { } price && (price > 0m) == up)
        {
            ways.Add($"{notation.InWords(Math.Abs(price), Look.Rate)} {(up ? "more" : "less")} {UnitWords.Per(unit)}");
        }

        if (verdict.Needs.Yield.Value is { } yield && (yield > 0m) == up && Math.Abs(yield) < 10m)
        {
            ways.Add($"{Phrase.Percent(Math.Abs(yield))} {(up ? "more" : "less")} yield");
        }

        if (up && verdict.Needs.Hours.Value is { } hours)
        {
            string time = notation.Number(hours, Look.Count);
            ways.Add($"{time} {Phrase.Noun(time, "hour")} less");
        }

        return ways.Count == 0 ? "No price, yield or hours alone would change this."
            : up ? $"It needs {string.Join(", or ", ways)}."
            : Turning(verdict, string.Join(", or ", ways));
    }

    /// <summary>
    /// Where less turns it. More of a crop that fell a cent short of its full cost pays as before, and one too close to call stays so on
    /// either side of nothing: there the figures don't turn the verdict, and it says what they turn.
    /// </summary>
    private static string Turning(Verdict verdict, string ways) => verdict.Direction switch
    {
        Direction.Grow => $"At {ways}, it would no longer earn its {verdict.Budget.Known.FullCostLabel}.",
        Direction.TooClose => $"At {ways}, it would bring no more than the costs that go with it.",
        _ => $"It would take {ways} to change this.",
    };
}
