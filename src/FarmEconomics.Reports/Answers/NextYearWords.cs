using System.Globalization;
using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Planning;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Answers;

/// <summary>The page on next year in sentences and figures: cash first, then own hours, then both as one.</summary>
internal sealed class NextYearWords(ShownPlan plan)
{
    private const int Named = 3;

    // Less is no more than rounding.
    private const decimal Noticed = 0.5m;
    private readonly Notation notation = plan.Farm.Notation;

    private int Year => plan.Model.CropYear;

    private (string Finding, string ToDo)? NoPrices => PlanWords.NoPrices(plan.Farm.Season);

    /// <summary>The finding.</summary>
    internal string Headline => plan switch
    {
        { Source: not PlanSource.Records } when NoPrices is { Finding: var finding } => finding,
        { Outlook.SalesUnknown: not null } => $"Your plan for {Year}",
        { Source: PlanSource.Records } when NoPrices is not null => $"Your plan for {Year}",
        { Source: PlanSource.Records } => $"Your plan for {Year}: {Cash}",
        { Source: PlanSource.LikeLastYear } => $"{Year} planned like {plan.Farm.Season.CropYear}",
        { Chosen: null, Mix.Short.Count: 0 } => ConflictWords.NoneFound,
        { Chosen: null } => "No plan keeps within your limits",
        { Gain: null } => $"A mix for {Year} that keeps within your limits",
        { Gain: > 0m, CostsUnknown: not null } => $"By sales alone another mix would bring {Size(plan.MoreCash)} more in {Year}",
        { Gain: > 0m } => $"Another mix of the same crops in {Year}: {Cash}",
        { Gain: < -1m } => $"In lengths this long no plan for {Year} is as good as this year's plantings",
        _ => $"This year's plantings are as good as any for {Year}",
    };

    /// <summary>Two sentences.</summary>
    internal Prose Why => new(Prose.Text(plan switch
    {
        { Source: not PlanSource.Records } when NoPrices is { ToDo: var toDo } => toDo,
        { Source: PlanSource.Best, Chosen: null, Mix: { } mix } =>
            $"{Phrase.Sentence(ConflictWords.AtOdds(mix, notation))} Shown here are the plantings of {plan.Farm.Season.CropYear} again.",
        { Source: PlanSource.Best, Mix: { } mix } =>
            $"{SalesAlone()}{WithoutPrice()}{Changes()} {PlanWords.Dearest(mix, notation)}",
        { Source: PlanSource.Records } => $"It stands in plan.csv and plan_sales.csv. {Changes()}",
        _ when !plan.HasSolver =>
            WithoutPrice() + "This computer has no solver, so no best mix was looked for; the season's sowings stand a year later, "
                + "at the yields your seasons let expect.",
        _ => WithoutPrice() + "The season's sowings stand a year later, at the yields your seasons let expect.",
    }));

    /// <summary>How sure that is.</summary>
    internal string HowSure
    {
        get
        {
            int seasons = plan.Farm.Review.CropYearsPicked.Count(year => year <= plan.Farm.Season.CropYear);
            string rests = plan.Source == PlanSource.Records ? "yields, hours and prices are those of your plan"
                : "yields are means of all your sowings, not of lucky ones";
            return $"How sure: {Phrase.Spelled(seasons, "season")} on record; {rests}. Next year's weather and market will differ.";
        }
    }

    /// <summary>At most four figures.</summary>
    internal FiguresBlock Figures =>
        new(
            NextYearBlock.Figures,
            plan.Outlook.SalesUnknown is not null ? [Hours()]
            : plan.Source == PlanSource.LikeLastYear || NoPrices is not null || (plan.Mix is not null && plan.Chosen is null)
                ? [Hours(), LowestCash(), BreakEven()]
                : [MoreCash(), MoreHours(), LowestCash(), BreakEven()]
        );

    /// <summary>The sentence over the chart of lengths.</summary>
    internal string ChangesHeading(IReadOnlyList<CropLength> lengths)
    {
        int up = lengths.Count(crop => crop.After - crop.Before >= 0.5m), down = lengths.Count(crop => crop.Before - crop.After >= 0.5m);
        return down == 0 ? $"{notation.Count(up, "crop gets", "crops get")} more room"
            : up == 0 ? $"{notation.Count(down, "crop gets", "crops get")} less room"
            : $"{notation.Count(up, "crop gets", "crops get")} more room, {down} less";
    }

    /// <summary>The sentence over the chart of cash.</summary>
    internal string CashHeading
    {
        get
        {
            string when = plan.Outlook.Months[Lowest].Month.ToString("MMMM", CultureInfo.InvariantCulture);
            decimal low = plan.Closing[Lowest];
            return plan.Opening is null
                ? low < 0m ? $"By the end of {when} {Size(low)} must be there or be borrowed" : "The year pays for itself as it goes"
                : low < 0m ? $"Cash is short by {Size(low)} at the end of {when}" : $"Cash is lowest at the end of {when}: {Size(low)}";
        }
    }

    /// <summary>The sentence over the chart of hours.</summary>
    internal string HoursHeading
    {
        get
        {
            PlanWeek most = plan.Outlook.Weeks.MaxBy(week => week.Hours)!;
            int tight = plan.Outlook.Weeks.Count(week => week.IsShort);
            int full = plan.Outlook.Weeks.Count(week => week.Short > Noticed) - tight;
            return notation.Text($"The fullest week is that of {most.From:MMMM d}, {most.Hours:0} hours of {most.Own + most.Hired:0}")
                + (
                    tight > 0 ? $"; {notation.Count(tight, "week is", "weeks are")} short"
                    : full > 0 ? $"; {notation.Count(full, "week is", "weeks are")} over by up to a twentieth"
                    : ""
                );
        }
    }

    /// <summary>What to do, problems where they arise first.</summary>
    internal Prose ToDo
    {
        get
        {
            List<string> points = [.. PlanWords.Problems(plan.Outlook, notation).Take(8).Select(Prose.Text)];
            if (plan.Outlook.Problems.Count > 8)
            {
                points.Add($"{notation.Count(plan.Outlook.Problems.Count - 8, "more place", "more places")} where the plan doesn't fit, "
                    + $"in plan_problems.csv of the command plan.");
            }

            if (points.Count == 0)
            {
                points.Add(
                    plan.Outlook.HoursUnknown is { } why
                        ? $"No bed is taken twice; whether hours are short isn't known: {why}."
                        : "No bed is taken twice, and no week is short of hours"
                            + (plan.Outlook.Weeks.Any(week => week.Short > Noticed) ? " by more than a twentieth." : ".")
                );
            }

            points.Add(plan.Source == PlanSource.Records
                ? "Change a row of plan.csv or plan_sales.csv, in a spreadsheet or where the farm is opened; hours, beds and cash follow."
                : "Take it over as plan.csv and plan_sales.csv (the command plan writes them; "
                    + "so does the opened farm when you press the button), then change what you like: hours, beds and cash follow.");
            return new Prose(string.Join('\n', points.Select(point => "- " + point)));
        }
    }

    private string OwnHourCounts => plan.Model.Hours.OwnCost > 0
        ? $"at {notation.InWords((decimal)plan.Model.Hours.OwnCost, Look.Rate)} each"
        : "nothing";

    /// <summary>What a plan rests on.</summary>
    internal Prose RestsOn => new(string.Join("\n\n", new[]
    {
        notation.Text($"Sown only in weeks, under covers and for as long as you did before. "
            + $"Yields lean on the mean of all your sowings of the crop: "
            + $"{PlanSettings.MeanCounts:0} sowings near a week count as much as that mean. "
            + $"Own hours count {OwnHourCounts}, at most as many in a week as limits.csv says, "
            + $"else as you worked in all but the fullest tenth of weeks. "
            + $"Channels take what they took at list price in those weeks; more of it at a falling price. "
            + $"Members' boxes keep their value."),
        "Members' payments, other income, costs that don't vary with crops, taxes and what you draw are the season's before. "
            + "Purchases of equipment aren't in the cash.",
        "Left to you: "
            + (plan.Model.Rotation.Count > 0 ? "" : "which family follows which in a bed, ")
            + "the soil, and how the days of a week fall.",
    }.Concat(PlanWords.InterestUnknown(plan.Farm.Settings, plan.Credit) is { } interest ? [interest] : Array.Empty<string>())
        .Concat(plan.Mix is { } mix && PlanWords.NotKept(mix, notation) is { } cash ? [cash] : Array.Empty<string>())
        .Concat(plan.Model.NotChecked.Select(one => $"Not checked: {Prose.Text(one)}."))));

    private int Lowest => Enumerable.Range(0, plan.Closing.Count).MinBy(i => plan.Closing[i]);

    /// <summary>Cash, then own hours; less cash stands first and is said.</summary>
    private string Cash
    {
        get
        {
            string more = (plan.MoreCash >= 0m ? "more" : "less") + (plan.CostsUnknown is null ? " cash" : " in sales");
            if (plan.HoursUnknown is not null)
            {
                return $"{Size(plan.MoreCash)} {more}";
            }

            string hours = notation.Text($"{Math.Abs(plan.MoreOwnHours):#,0}");
            return $"{Size(plan.MoreCash)} {more} " + (Math.Abs(plan.MoreOwnHours) < 0.5m ? "for the same hours of your own"
                : $"{(plan.MoreOwnHours > 0m ? "for" : "and")} {hours} {(plan.MoreOwnHours > 0m ? "more" : "fewer")} "
                    + $"{Phrase.Noun(hours, "hour")} of your own");
        }
    }

    private string SalesAlone() => PlanWords.SalesAlone(plan.Outlook) is { } caution ? $"{caution} " : "";

    internal string WithoutPrice() => PlanWords.WithoutPrice(plan.Farm.Season) is { } caution ? $"{caution} " : "";

    private string Changes()
    {
        List<CropLength> lengths = [.. plan.Lengths()];
        string[] more =
        [
            .. lengths
                .Where(crop => crop.After - crop.Before >= 0.5m)
                .OrderByDescending(crop => crop.After - crop.Before)
                .Take(Named)
                .Select(crop => crop.Crop),
        ];
        string[] less =
        [
            .. lengths
                .Where(crop => crop.Before - crop.After >= 0.5m && crop.After > 0m)
                .OrderByDescending(crop => crop.Before - crop.After)
                .Take(Named)
                .Select(crop => crop.Crop),
        ];
        string[] none =
        [
            .. lengths.Where(crop => crop is { After: 0m, Before: > 0m }).OrderByDescending(crop => crop.Before).Select(crop => crop.Crop),
        ];
        string[] parts =
        [
            .. more.Length > 0 ? [$"more {Phrase.List(more)}"] : Array.Empty<string>(),
            .. less.Length > 0 ? [$"less {Phrase.List(less)}"] : Array.Empty<string>(),
            .. none.Length > 0
                ? [$"no {Phrase.List([.. none.Take(Named)])}{(none.Length > Named ? $" ({none.Length - Named} more left out)" : "")}"]
                : Array.Empty<string>(),
        ];
        return parts.Length == 0 ? "It grows the same lengths." : $"It grows {string.Join("; ", parts)}.";
    }

    private KeyFigure MoreCash()
    {
        // Of the two figures beside it, so that they agree: the mix's own gain counts hours there aren't dearer.
        decimal hour = (decimal)plan.Model.Hours.OwnCost;
        string worth = plan.Chosen is not null && plan.HoursUnknown is null && hour > 0m
            ? $"; {Signed(plan.MoreCash - (plan.MoreOwnHours * hour))} after your own hours at {notation.InWords(hour, Look.Rate)}"
            : "";
        string what = plan.CostsUnknown is { } why ? $"sales in the year (no cash is told: {why})" : "cash in the year";
        return new(
            "more-cash",
            Signed(plan.MoreCash),
            plan.MoreCash,
            $"{what}, against the plantings of {plan.Farm.Season.CropYear} again{(plan.HasSolver ? ", sold as well" : "")}{worth}"
        );
    }

    private KeyFigure MoreHours()
    {
        if (plan.HoursUnknown is { } why)
        {
            return new("more-own-hours", "", null, $"hours aren't known: {why}");
        }

        string hired = notation.Text($"{Math.Abs(plan.MoreHiredHours):#,0}");
        string paid = plan.Model.Hours.HiredCostKnown ? "in the cash already" : "at a wage nothing on record tells";
        return new(
            "more-own-hours",
            Sign(plan.MoreOwnHours) + notation.Text($"{Math.Abs(plan.MoreOwnHours):#,0}"),
            plan.MoreOwnHours,
            "of your own hours"
                + (
                    Math.Abs(plan.MoreHiredHours) < 0.5m
                        ? "; hired hours stay"
                        : $"; and {hired} {(plan.MoreHiredHours > 0m ? "more" : "fewer")} hired ones, {paid}"
                )
        );
    }

    private KeyFigure Hours() =>
        plan.Outlook.HoursUnknown is { } why
            ? new("hours", "", null, $"hours aren't known: {why}")
            : new(
                "hours",
                notation.Number(plan.Outlook.Weeks.Sum(week => week.Hours), Look.Count),
                plan.Outlook.Weeks.Sum(week => week.Hours),
                "hours of work"
            );

    private KeyFigure LowestCash() =>
        plan.Outlook.CostsUnknown is { } why ? new("lowest-cash", "", null, $"cash isn't known: {why}")
        : plan.Opening is null
            ? new(
                "line-of-credit",
                BlockNumber.Of(plan.Credit.Most, Look.WholeMoney, notation),
                plan.Credit.Most,
                "the most to borrow, starting with no cash"
            )
        : new(
            "lowest-cash",
            BlockNumber.Of(plan.Closing[Lowest], Look.WholeMoney, notation),
            plan.Closing[Lowest],
            $"lowest cash, end of {Looks.Month(plan.Outlook.Months[Lowest].Month)}"
                + (plan.Credit.Most > 0m ? $"; {BlockNumber.Of(plan.Credit.Most, Look.WholeMoney, notation)} must be borrowed" : "")
        );

    private KeyFigure BreakEven() => plan.Outlook.BreakEven.Value is { } even
        ? new(
            "break-even",
            BlockNumber.Of(even, Look.WholeMoney, notation),
            even,
            $"of sales and shares pay the year's bills; the plan has "
                + $"{BlockNumber.Of(plan.Outlook.Months.Sum(month => month.Sales + month.Shares), Look.WholeMoney, notation)}")
        : new("break-even", "", null, $"no break-even: {plan.Outlook.BreakEven.Reason}");

    private string Size(decimal amount) => BlockNumber.Size(amount, notation);

    private string Signed(decimal amount) => Sign(amount) + Size(amount);

    private static string Sign(decimal amount) => amount >= 0.5m ? "+" : amount <= -0.5m ? $"{BlockNumber.Minus}" : "";
}
