using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Decisions;

/// <summary>A change in plain words: cash and hours first, then the boxes, both answers, and what could take its place.</summary>
public static class ChangeSentences
{
    /// <summary>The first two lines: cash, hired hours, own hours and value; then what an own hour would have to bring.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="notation">How the farm writes.</param>
    public static IReadOnlyList<string> First(ChangeAnswer answer, Notation notation)
    {
        ArgumentNullException.ThrowIfNull(answer);
        if (answer.WhyCostsUnknown is { } costless)
        {
            return
            [
                $"{Title(answer, notation)}: the records can't tell whether it pays: {costless}.",
                "What costs would come or go isn't known either.",
            ];
        }

        if (answer.WhyUnknown is { } why)
        {
            decimal costs = (PartialBudget.Sum(answer.Partial.ReducedCosts) - PartialBudget.Sum(answer.Partial.AddedCosts)).Amount;
            return
            [
                $"{Title(answer, notation)}: the records can't tell whether it pays: {why}.",
                $"Known are the costs: {notation.InWords(Math.Abs(costs), Look.WholeMoney)} {(costs < 0m ? "would come" : "would go")}.",
            ];
        }

        return [$"{Title(answer, notation)}: {MeansWords.Of(answer.Means, notation)}.", MeansWords.OwnHours(answer.Means, notation)];
    }

    /// <summary>What follows them.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="notation">How the farm writes.</param>
    public static string Rest(ChangeAnswer answer, Notation notation)
    {
        ArgumentNullException.ThrowIfNull(answer);
        if (answer.WhyUnknown is not null)
        {
            return string.Join(" ", Cautions(answer));
        }

        List<string> said = [BothAnswers(answer, notation)];
        if (MeansWords.Boxes(answer.Refill, notation) is { Length: > 0 } boxes)
        {
            said.Add(boxes);
        }

        if (answer.Change.Kind == ChangeKind.Drop)
        {
            said.Add(Place(answer, notation));
        }

        said.AddRange(Cautions(answer));
        return string.Join(" ", said);
    }

    /// <summary>All of it, for a page.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="notation">How the farm writes.</param>
    public static Prose Prose(ChangeAnswer answer, Notation notation)
    {
        IReadOnlyList<string> first = First(answer, notation);
        return new(
            string.Join(
                "\n\n",
                [$"**{Display.Prose.Text(first[0])}** {Display.Prose.Text(first[1])}", Display.Prose.Text(Rest(answer, notation))]
            )
        );
    }

    private static string Title(ChangeAnswer answer, Notation notation) => answer.Change.Kind switch
    {
        ChangeKind.Drop => $"Without {answer.Change.Crop}",
        ChangeKind.Shrink => notation.Text($"With {notation.Number(answer.FeetGone, Look.Quantity)} bed-feet less of {answer.Change.Crop}"),
        ChangeKind.Grow => notation.Text($"With {notation.Number(answer.FeetAdded, Look.Quantity)} bed-feet more of {answer.Change.Crop}"),
        _ => $"With {answer.Change.Replacement} in place of {answer.Change.Crop}",
    };

    private static string BothAnswers(ChangeAnswer answer, Notation notation)
    {
        string Amount(decimal amount) => notation.InWords(Math.Abs(amount), Look.WholeMoney);
        string BetterOrWorse(decimal change) =>
            change > 0m ? $"{Amount(change)} better off"
            : change < 0m ? $"{Amount(change)} worse off"
            : "neither better nor worse off";
        decimal full = answer.FullCostChange.Amount,
            now = answer.AvoidableChange.Amount;
        bool changedHands = Math.Abs(answer.Means.OwnHours) < 0.5m && Math.Abs(answer.Means.OwnHoursValue.Amount) >= 0.5m;
        string hours = changedHands ? "all hours at the cost of who worked them" : "own hours at their value";
        string text = $"With {hours} the farm would be {BetterOrWorse(now)}.", cost = answer.Known.FullCostLabel;
        return !answer.Disagree ? text
            : full > 0m
            ? $"{text} {answer.Change.Crop} fell short of its {cost}, so by that it looks {BetterOrWorse(full)}; "
                + $"the two disagree because {Amount(full - now)} of what {cost} puts on it does not go away with it."
            : answer.FeetAdded == 0m
            ? $"{text} By {cost} it looks {BetterOrWorse(full)}; "
                + $"the two disagree because by {cost} what members paid for it goes along, "
                + $"{Amount(full - now)} more than what stays of its costs and filling the boxes again."
            : $"{text} By {cost} it looks {BetterOrWorse(full)}; "
                + $"the two disagree because {cost} charges {Amount(full - now)} to the new beds that the farm pays already.";
    }

    private static string Place(ChangeAnswer answer, Notation notation)
    {
        if (answer.BestMix is not { } mix)
        {
            // What fits is told by what it adds at lower prices, too: the mix alone stops where today's price does.
            const string Nothing = "nothing that fits its beds and dates under the same cover adds to the farm";
            return answer.Fits.FirstOrDefault(fit => fit.Swap.NetChange.Amount > answer.AvoidableChange.Amount) is not { } best
                ? $"{Phrase.Sentence(Nothing)}."
                : notation.Text($"At today's price {Nothing}. Sold below it, {notation.Number(best.BedFeet, Look.Quantity)} bed-feet of ")
                    + $"{best.Crop} would: the farm would be {Size(best.Swap.NetChange.Amount, notation)} off than now.";
        }

        string crops = Phrase.List([
            .. mix.Crops.Select(one => notation.Text($"{one.Crop} ({notation.Number(one.BedFeet, Look.Quantity)} bed-feet)")),
        ]);
        return $"The best that fits in its place, as far as channels take it: {crops}; "
            + $"the farm would be {Size(mix.Change.Amount, notation)} off than now.";
    }

    private static string Size(decimal change, Notation notation) =>
        $"{notation.InWords(Math.Abs(change), Look.WholeMoney)} {(change >= 0m ? "better" : "worse")}";

    private static IEnumerable<string> Cautions(ChangeAnswer answer)
    {
        Notation notation = answer.Change.Notation;
        if (answer.ReplacementDoesNotFit)
        {
            yield return notation.Text($"{answer.Change.Replacement}'s plantings don't fit the time {answer.Change.Crop} frees under that "
                + $"cover; it is counted bed-foot for bed-foot, {notation.Number(answer.FeetAdded, Look.Quantity)} of them.");
        }
        else if (answer.Change.Kind == ChangeKind.Swap)
        {
            yield return notation.Text($"{notation.Number(answer.FeetAdded, Look.Quantity)} bed-feet of {answer.Change.Replacement} fit, "
                + $"with the dates of its plantings that season.");
        }

        if (answer.Room is { } room && room < answer.FeetAdded)
        {
            yield return notation.Text(
                $"There is room for only {notation.Number(room, Look.Quantity)} bed-feet more under its cover while it stands."
            );
        }

        if (answer.FeetAdded > 0m)
        {
            yield return Market(answer);
        }

        if (answer.BeyondLimit.Count > 0)
        {
            yield return BeyondLimit(answer.BeyondLimit, notation);
        }
    }

    /// <summary>"12 weeks would need more hours than there are, most in the week of May 5: 136.3 of 120."</summary>
    internal static string BeyondLimit(IReadOnlyList<WeekBeyondLimit> weeks, Notation notation)
    {
        WeekBeyondLimit worst = weeks.MaxBy(week => week.Hours - week.Limit)!;
        return $"{Phrase.Sentence(notation.Count(weeks.Count, "week"))} would need more hours than there are, "
            + $"most in the week of {Looks.ShortDay(worst.Monday)}: "
            + $"{notation.Number(worst.Hours, Look.Hours)} of {notation.Number(worst.Limit, Look.Hours)}.";
    }

    private static string Market(ChangeAnswer answer)
    {
        Notation notation = answer.Change.Notation;
        string left = answer.NotTaken > 0m ? $", and {Phrase.Percent(answer.NotTaken)} of what more is picked finds no buyer" : "";
        string taken =
            answer.NotTaken == 1m ? "None of what more is picked finds a buyer."
            : answer.BelowTodaysPrice == 0m && answer.NotTaken == 0m
                ? "Channels took as much before at today's price."
                : $"{Phrase.Sentence(Phrase.Percent(answer.BelowTodaysPrice))} of what more is sold goes below today's price{left}.";
        return $"{taken}{Turns(answer, notation)} Boxes and your household take no more.";
    }

    /// <summary>What doesn't pay can't stop paying; in the place of another crop, what that one leaves is no part of it.</summary>
    private static string Turns(ChangeAnswer answer, Notation notation) => answer.TurnsAtElasticity.Value is not { } turns ? ""
        : answer.Change.Kind == ChangeKind.Swap
            ? notation.Text($" More {answer.Change.Replacement} pays for itself from an elasticity of {turns:0.##} on.")
        : answer.AvoidableChange.Amount > 0m ? notation.Text($" It stops paying at an elasticity of {turns:0.##}.")
        : notation.Text($" It would pay from an elasticity of {turns:0.##} on.");
}
