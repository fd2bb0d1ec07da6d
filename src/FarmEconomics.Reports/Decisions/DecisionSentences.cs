using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Decisions;

/// <summary>Verdicts and changes in plain words, every number reckoned from the records.</summary>
public static class DecisionSentences
{
    /// <summary>Verdicts on all crops as a table of words.</summary>
    public static ReportTable Verdicts(Verdicts verdicts)
    {
        FarmSettings farm = verdicts.Season.Settings;
        ReportTable table = new ReportTable(Heading(verdicts), farm.Notation)
            .Opens().Column("Crop").Column("Net return", Look.WholeMoney).Column("Without it the farm would lose", Look.WholeMoney).Column("Net return", Look.Rate, per: farm.LengthUnit.Label("bed-foot-week")).Column("Loss").Column("Verdict, with reasons");
        foreach (Verdict verdict in verdicts.Crops)
        {
            table.Row(verdict.Budget.Name, ReportCell.Known(verdict.Budget.NetReturn, verdict.WhyUnknown), ReportCell.Known(verdict.Contribution, verdict.WhyUnknown), verdict.NetPerBedFootWeek, verdict.WhyUnknown is { } why ? ReportCell.Missing(why) : ChanceWords.Cell(verdict.Outcome), Of(verdict, verdicts.Settings, farm));
        }

        return table.Note("What the farm would lose without a crop = its output less the costs that go with it. A negative figure is what the farm would gain by leaving the beds empty.")
            .Note(verdicts.Simulation.HasChance ? DecisionTables.NeverSeen : ChanceWords.TooFew(verdicts.Simulation))
            .Note(Rule(verdicts.Settings, farm))
            .Note(OneSeason);
    }

    /// <summary>The same line by line, for a terminal: a crop, its figures, its verdict.</summary>
    public static string VerdictLines(Verdicts verdicts, int width = 100)
    {
        FarmSettings farm = verdicts.Season.Settings;
        Notation notation = farm.Notation;
        List<string> lines = [Heading(verdicts), ""];
        foreach (Verdict verdict in verdicts.Crops)
        {
            lines.Add(verdict.WhyUnknown is null
                ? farm.Notation.Text($"{verdict.Budget.Name}: net return {notation.InWords(verdict.Budget.NetReturn.Amount, Look.WholeMoney)}, {Phrase.Of(verdict.NetPerBedFootWeek, notation)} per bed-foot-week, {ChanceWords.Lost(verdict.Outcome)}")
                : verdict.Budget.Name);
            lines.AddRange(Wrapped(Of(verdict, verdicts.Settings, farm), width).Select(line => "    " + line));
        }

        lines.Add("");
        lines.AddRange(Wrapped(Rule(verdicts.Settings, farm), width));
        lines.AddRange(Wrapped(OneSeason, width));
        return string.Join('\n', lines) + "\n";
    }

    private const string OneSeason = "The figures rest on your records of one season; soil, rotation, customers and family say more than they do.";

    /// <summary>A verdict in words: where it points, why, what it turns on.</summary>
    public static string Of(Verdict verdict, VerdictSettings settings, FarmSettings farm)
    {
        Notation notation = farm.Notation;
        string Money(decimal amount) => notation.InWords(amount, Look.WholeMoney);
        string name = verdict.Budget.Name;
        if (verdict.Direction == Direction.Unknown)
        {
            return $"The records can't tell: {verdict.WhyUnknown}.";
        }

        decimal net = verdict.Budget.NetReturn.Amount;
        decimal helps = verdict.Contribution.Amount;
        string text = verdict.Direction switch
        {
            Direction.Drop => $"Drop, or change how it is grown: it brought in {Money(-helps)} less than the costs that go with it, so even empty beds would have done better.",
            Direction.Replace => notation.Text($"Look at {verdict.BestFit!.Crop} in its place: {name} fell {Money(-net)} short of its full cost, and {notation.Number(verdict.BestFit.BedFeet, Look.Quantity)} bed-feet of {verdict.BestFit.Crop} would earn the farm {Money(verdict.BestFit.Swap.NetChange.Amount)} more. Left empty, the farm would lose {Money(helps)}."),
            Direction.Mend => $"Keep for now, and mend: it fell {Money(-net)} short of its full cost, but without it the farm would be {Money(helps)} poorer"
                + (verdict.BestFit is { } fit ? $", and the best that fits its beds, {fit.Crop}, would {Gain(fit.Swap.NetChange.Amount)}." : ", and no other crop fits its beds and dates."),
            Direction.Grow => notation.Text($"Could grow: it earns its full cost and {Money(net)} more, and {settings.GrowStep * 100m:0} % more of it would add {Money(verdict.GrowthGain.Value ?? 0m)}{(settings.Elasticity is null ? "" : " after a lower price")}.")
                + (verdict.Room.Value is { } room && room < settings.GrowStep * verdict.Budget.Sums.BedFeet.Value ? Room(room) : ""),
            _ => $"Keep: it earns its full cost and {Money(net)} more." + (verdict.GrowthGain.Value is { } gain ? gain <= 0m
                ? notation.Text($" {settings.GrowStep * 100m:0} % more of it would bring nothing{(settings.Elasticity is null ? "" : " at the lower price")}.") : $" It fails too often to grow more ({ChanceWords.Lost(verdict.Outcome)})." : ""),
        };
        return text + Ahead(verdict, farm) + Turns(verdict, farm.Notation) + (verdict.WeakPoints.Count > 0 ? $" Weak: {Phrase.List(verdict.WeakPoints)}." : "");

        string Room(decimal room) => room >= 1m
            ? notation.Text($" But there is room for only {notation.Number(room, Look.Quantity)} bed-feet more under its cover while it stands.")
            : " But there is no room for more under its cover while it stands.";

        string Gain(decimal change) => change >= 0m ? $"earn only {Money(change)} more" : $"cost the farm {Money(-change)}";
    }

    /// <summary>A change in words: both answers, and why they differ where they do.</summary>
    public static string Of(ChangeAnswer answer, Notation notation)
    {
        string Amount(decimal amount) => notation.InWords(Math.Abs(amount), Look.WholeMoney);
        if (answer.WhyUnknown is { } why)
        {
            decimal costs = (PartialBudget.Sum(answer.Partial.ReducedCosts) - PartialBudget.Sum(answer.Partial.AddedCosts)).Amount;
            return $"{answer.Change.Title}: the records can't tell whether it pays: {why}. Known are the costs: {Amount(costs)} {(costs < 0m ? "would come" : "would go")}.";
        }

        decimal full = answer.FullCostChange.Amount;
        decimal now = answer.AvoidableChange.Amount;
        string BetterOrWorse(decimal change) => change > 0m ? $"{Amount(change)} better off" : change < 0m ? $"{Amount(change)} worse off" : "neither better nor worse off";
        List<string> said = [$"{answer.Change.Title}: at full cost the farm looks {BetterOrWorse(full)}; counting only what really comes and goes, it is {BetterOrWorse(now)}."];
        decimal apart = Math.Abs(full - now);
        if (answer.Disagree)
        {
            said.Add(full > 0m
                ? $"The two disagree because {Amount(apart)} of the cost that full costing puts on {answer.Change.Crop} does not go away with it: it stays and lands on the other crops{(answer.FeetAdded > 0m ? " and on what takes its place" : "")}."
                : $"The two disagree because full costing charges {Amount(apart)} of shared cost to the new beds, which the farm pays already.");
            said.Add(answer.Change.Kind is ChangeKind.Drop or ChangeKind.Shrink
                ? "So it pays to keep it until something better takes its beds; in the long run its price or yield must rise."
                : "So it pays now; in the long run something must pay the shared cost.");
        }
        else if (apart >= 0.5m)
        {
            said.Add($"Both point the same way; {Amount(apart)} of shared cost moves between the crops and changes nothing for the farm.");
        }

        if (answer.Freed.Count > 0)
        {
            string left = answer.Change.Kind == ChangeKind.Swap ? "frees" : "leaves empty";
            said.Add(notation.Text($"It {left} {notation.Number(answer.Freed.Sum(week => week.BedFootWeeks), Look.Count)} bed-foot-weeks and {notation.Number(answer.Freed.Sum(week => week.Hours), Look.Count)} hours."));
        }

        if (answer.Change.Kind == ChangeKind.Drop)
        {
            Fit? best = answer.Fits.Count > 0 ? answer.Fits[0] : null;
            said.Add(best is null ? "No other crop of that season fits its beds and dates under the same cover."
                : notation.Text($"The best that fits is {best.Crop} ({notation.Number(best.BedFeet, Look.Quantity)} bed-feet): the farm would be {BetterOrWorse(best.Swap.NetChange.Amount)} with it in place of {answer.Change.Crop}{(answer.Change.Elasticity is null ? $", if the market took {Phrase.Percent(best.Growth)} more of it at the same price, which it seldom does: set an elasticity" : "")}."));
        }

        said.AddRange(Cautions(answer));
        return string.Join(" ", said);
    }

    /// <summary>The same, for a page.</summary>
    public static Prose Prose(ChangeAnswer answer, Notation notation) => new(Display.Prose.Text(Of(answer, notation)));

    /// <summary>The answer of the notebook: what to drop, what to replace, what to grow.</summary>
    public static Prose Answer(Verdicts verdicts)
    {
        List<string> said = [];
        Say(Direction.Drop, "doesn't pay even what goes with it", "don't pay even what goes with them");
        Say(Direction.Replace, "falls short of its full cost, and something that fits its beds would do better", "fall short of their full cost, and something that fits their beds would do better");
        Say(Direction.Mend, "falls short of its full cost but still helps the farm", "fall short of their full cost but still help the farm");
        Say(Direction.Grow, "could be grown more", "could be grown more");
        Say(Direction.Unknown, "can't be judged by these records", "can't be judged by these records");
        said.Add(ChanceWords.Farm(verdicts.Simulation, verdicts.Season));
        return new Prose(string.Join(" ", said));

        void Say(Direction direction, string one, string many)
        {
            List<string> names = verdicts.Crops.Where(verdict => verdict.Direction == direction).Select(verdict => Phrase.Bold(verdict.Budget.Name)).ToList();
            if (names.Count > 0)
            {
                said.Add($"{Phrase.List(names)} {(names.Count == 1 ? one : many)}.");
            }
        }
    }

    private static string Heading(Verdicts verdicts) =>
        verdicts.Season.Notation.Text($"Drop, shrink or grow after {verdicts.Season.CropYear}? Best net return per bed-foot-week first");

    private static string Rule(VerdictSettings settings, FarmSettings farm) => farm.Notation.Text(
        $"Thresholds, yours to set: growing more is suggested among the best {settings.GrowBestPart * 100m:0} % of crops per bed-foot-week with a chance of a loss of at most {settings.GrowAtMostLossChance * 100m:0} % (never lost where the years are too few for a chance), where {settings.GrowStep * 100m:0} % more still adds to the farm"
        + $"{(settings.Elasticity is { } elasticity ? farm.Notation.Text($" at a price elasticity of {elasticity:0.##}") : " at the price as it was")}; another crop instead where it earns {farm.Notation.InWords(settings.SwapGain, Look.WholeMoney)} more in the season.");

    private static string Ahead(Verdict verdict, FarmSettings farm) => verdict.NextBelow is null ? ""
        : verdict.ChanceAhead.Value is not { } chance ? verdict.PriceToStayAhead.Value is not { } alone ? "" : farm.Notation.Text($" It stays ahead of {verdict.NextBelow} per bed-foot-week unless the price falls below {farm.Notation.InWords(alone, Look.Rate)} (it was {Phrase.Of(verdict.Budget.AveragePrice, farm.Notation)}).")
        : verdict.PriceToStayAhead.Value is { } price
            ? farm.Notation.Text($" It stays ahead of {verdict.NextBelow} per bed-foot-week unless the price falls below {farm.Notation.InWords(price, Look.Rate)} (it was {Phrase.Of(verdict.Budget.AveragePrice, farm.Notation)}); in simulated seasons it is ahead in {Phrase.Percent(chance)}.")
            : farm.Notation.Text($" It is ahead of {verdict.NextBelow} per bed-foot-week in {Phrase.Percent(chance)} of simulated seasons.");

    private static string Turns(Verdict verdict, Notation notation)
    {
        if (verdict.TurnsOn is not { } turn)
        {
            return " No single change of price, yield or labor cost below 100 % turns this.";
        }

        string way = turn.Change >= 0m ? "higher" : "lower";
        string what = verdict.Budget.NetReturn.Amount >= 0m ? "its full cost is no longer met" : verdict.Contribution.Amount >= 0m ? "it no longer helps the farm" : "it would help the farm";
        return notation.Text($" Weakest assumption: with a {turn.Input} {Math.Abs(turn.Change) * 100m:0.#} % {way}, {what}.");
    }

    private static IEnumerable<string> Cautions(ChangeAnswer answer)
    {
        Notation notation = answer.Change.Notation;
        if (answer.ReplacementDoesNotFit)
        {
            yield return notation.Text($"Mind that {answer.Change.Replacement}'s plantings don't fit the time {answer.Change.Crop} frees under that cover; it is reckoned bed-foot for bed-foot, {notation.Number(answer.FeetAdded, Look.Quantity)} of them.");
        }
        else if (answer.Change.Kind == ChangeKind.Swap)
        {
            yield return notation.Text($"{notation.Number(answer.FeetAdded, Look.Quantity)} bed-feet of {answer.Change.Replacement} fit, with the dates of its plantings that season.");
        }

        if (answer.Room is { } room && room < answer.FeetAdded)
        {
            yield return notation.Text($"Mind that there is room for only {notation.Number(room, Look.Quantity)} bed-feet more under its cover while it stands.");
        }

        if (answer.FeetAdded > 0m)
        {
            yield return answer.Change.Elasticity is { } elasticity
                ? notation.Text($"Growing more lowers the whole crop's price by {(1m - answer.PriceFactor) * 100m:0.#} % at an elasticity of {Math.Abs(elasticity):0.##}.")
                : "The price is taken to stay as it was although more is sold: set an elasticity to see what a softer market does.";
        }

        if (answer.BeyondLimit.Count > 0)
        {
            WeekBeyondLimit worst = answer.BeyondLimit.MaxBy(week => week.Hours - week.Limit)!;
            yield return $"{Phrase.Sentence(notation.Count(answer.BeyondLimit.Count, "week"))} would need more hours than there are, most in the week of {Looks.Day(worst.Monday)}: {notation.Number(worst.Hours, Look.Hours)} of {notation.Number(worst.Limit, Look.Hours)}.";
        }
    }

    /// <summary>A text broken at words; control characters of records are blanked.</summary>
    public static IEnumerable<string> Wrapped(string text, int width)
    {
        string line = "";
        foreach (string word in string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c)).Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > width)
            {
                yield return line;
                line = "";
            }

            line += line.Length > 0 ? " " + word : word;
        }

        if (line.Length > 0)
        {
            yield return line;
        }
    }
}
