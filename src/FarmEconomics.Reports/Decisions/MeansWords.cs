using FarmEconomics.Decisions.Avoidable;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;
using FarmEconomics.Units;

namespace FarmEconomics.Reports.Decisions;

/// <summary>Cash, hours and value in words, always in this order; the same wherever a change is told.</summary>
public static class MeansWords
{
    /// <summary>"$1,501 less cash a year, 61 hired hours less, 8 of your own hours freed".</summary>
    /// <param name="means">What a change does.</param>
    /// <param name="notation">How the farm writes.</param>
    public static string Of(MeansChange means, Notation notation)
    {
        ArgumentNullException.ThrowIfNull(means);
        List<string> said = [Cash(means.Cash, notation)];
        if (Math.Abs(means.HiredHours) >= 0.5m)
        {
            said.Add($"{Hours(means.HiredHours)} {(means.HiredHours > 0m ? "fewer" : "more")} hired {Word(means.HiredHours)}");
        }

        said.Add(Math.Abs(means.OwnHours) < 0.5m ? "none of your own hours either way"
            : means.OwnHours > 0m ? $"{Hours(means.OwnHours)} of your own hours freed" : $"{Hours(means.OwnHours)} more of your own hours");
        if (Math.Abs(means.Value.Amount) >= 0.5m)
        {
            said.Add($"{Amount(means.Value, notation)} {(means.Value.Amount > 0m ? "more" : "less")} in value without cash");
        }

        return string.Join(", ", said);

        string Hours(decimal hours) => notation.Number(Math.Abs(hours), Look.Count);

        static string Word(decimal hours) => Math.Abs(hours) is >= 0.5m and < 1.5m ? "hour" : "hours";
    }

    /// <summary>What an own hour would have to bring to make up for it: the second line of every answer.</summary>
    /// <param name="means">What a change does.</param>
    /// <param name="notation">How the farm writes.</param>
    public static string OwnHours(MeansChange means, Notation notation)
    {
        ArgumentNullException.ThrowIfNull(means);
        bool hours = Math.Abs(means.OwnHours) >= 0.5m;
        decimal without = means.WithoutOwnHours.Amount;
        string each = means.PerOwnHour.Value is { } rate ? notation.InWords(Math.Abs(rate), Look.Money) : "";
        string answer = !hours
            ? $"Your own hours stay as they are, so {(without < 0m ? "it costs the farm" : "it earns the farm")} "
                + $"{Amount(means.WithoutOwnHours, notation)} a year."
            : (means.OwnHours > 0m, without < 0m) switch
            {
                (true, true) => $"Your own hours would have to bring in more than {each} each elsewhere.",
                (true, false) => $"It pays even if your own hours bring in nothing elsewhere.",
                (false, false) => $"Your own hours in it would earn {each} each.",
                _ => "It costs money even if your own hours count for nothing.",
            };
        return means.PaidAnyway.Amount < 0.5m
            ? answer
            : $"{answer} That counts {Amount(means.PaidAnyway, notation)} of wages that are paid all the same: "
                + $"gained only if those hours do other work.";
    }

    /// <summary>What filling the boxes again takes; empty where no box changes.</summary>
    /// <param name="refill">The refilling.</param>
    /// <param name="notation">How the farm writes.</param>
    public static string Boxes(Refill refill, Notation notation)
    {
        ArgumentNullException.ThrowIfNull(refill);
        if (refill.Weeks.Count == 0)
        {
            return "";
        }

        if (refill.Items.Count == 0)
        {
            return $"Members' payments stay, and their boxes still hold what they paid for without refilling: "
                + $"{Percent(refill.After)} of their price over the season, {Percent(refill.Before)} now.";
        }

        string from = string.Join(
            "; ",
            refill.Items.GroupBy(item => item.Source).OrderBy(group => group.Key).Select(group => From(group.Key, [.. group], notation))
        );
        return $"Members' payments stay, so their boxes must be filled again: "
            + $"at {Percent(refill.Unfilled)} of their price instead of {Percent(refill.Before)}, "
            + $"they take {notation.InWords(refill.Filled.Amount, Look.WholeMoney)} of other produce ({from}) "
            + $"and then hold {Percent(refill.After)}.";
    }

    private static string Percent(Result rate) => rate.Value is { } part ? Phrase.Percent(part) : "an unknown part";

    private static string From(RefillSource source, List<RefillItem> items, Notation notation)
    {
        string value = notation.InWords(items.Sum(item => item.ListValue.Amount), Look.WholeMoney);
        string lost = notation.InWords(items.Sum(item => item.Lost.Amount), Look.WholeMoney);
        return source switch
        {
            RefillSource.NotSold => $"{value} that was thrown out, given away or never left",
            RefillSource.Household => $"{value} that your household ate",
            RefillSource.Sold => $"{value} of {Names(items)} that sold for {lost} after fee and packaging",
            _ => $"{value} bought in for {lost}",
        };
    }

    private static string Names(List<RefillItem> items)
    {
        List<string> names =
        [
            .. items
                .GroupBy(item => item.Crop!.Name)
                .OrderByDescending(group => group.Sum(item => item.ListValue.Amount))
                .Select(group => group.Key),
        ];
        return names.Count > 3 ? $"{string.Join(", ", names.Take(3))} and others" : Phrase.List(names);
    }

    private static string Cash(Money cash, Notation notation) =>
        Math.Abs(cash.Amount) < 0.5m
            ? "as much cash as now"
            : $"{Amount(cash, notation)} {(cash.Amount < 0m ? "less" : "more")} cash a year";

    private static string Amount(Money money, Notation notation) => notation.InWords(Math.Abs(money.Amount), Look.WholeMoney);
}
