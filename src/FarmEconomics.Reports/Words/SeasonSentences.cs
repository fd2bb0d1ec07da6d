using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Units;

namespace FarmEconomics.Reports.Words;

/// <summary>A season in sentences. Every name and number comes from the records; what can't be told says why.</summary>
public static class SeasonSentences
{
    private const int Leaders = 3;

    /// <summary>The answer first: what came in, what led by each measure, what lost money.</summary>
    public static Prose Answer(SeasonReview season)
    {
        Notation notation = season.Notation;
        EnterpriseBudget farm = season.Farm;
        if (season.Crops.Count == 0)
        {
            return new Prose($"The records hold no planting of {season.CropYear}, so there is nothing to say about it.");
        }

        if (farm.Known.Value is not null)
        {
            return new Prose(ValueUnknown(season));
        }

        string text = $"In **{season.CropYear}** the {notation.Count(season.Crops.Count, "crop")} of {Phrase.Bold(farm.Name)} brought in "
            + $"**{notation.InWords(farm.Output.Amount, Look.WholeMoney)}**";
        text += season.Known.Costs is { } why
            ? $". What was left after costs isn't known ({why})."
            : season.Notation.Text(
                $". Seed, supplies and selling took {notation.InWords(farm.Output.Amount - farm.GrossMargin.Amount, Look.WholeMoney)}; "
                    + $"the gross margin was **{notation.InWords(farm.GrossMargin.Amount, Look.WholeMoney)}**: "
                    + $"{Phrase.Of(farm.GrossMarginPerBedFoot, notation)} per bed-foot, "
                    + $"{Phrase.Of(farm.GrossMarginPerBedFootWeek, notation)} per bed-foot-week{PerHour(farm, notation)}."
            );
        text +=
            Leading(season, season.Settings.LengthUnit.Label("bed-foot-week"), budget => budget.GrossMarginPerBedFootWeek)
            + Leading(season, "labor hour", budget => budget.GrossMarginPerLaborHour);
        return new Prose(text + Losses(season));
    }

    private static string PerHour(EnterpriseBudget farm, Notation notation) =>
        farm.GrossMarginPerLaborHour is { Value: null, Reason: { } why } ? $"; what it was per labor hour isn't known ({why})"
        : $" and {Phrase.Of(farm.GrossMarginPerLaborHour, notation)} per labor hour";

    /// <summary>How sure the figures are: estimated hours, prices missing, sales without a harvest, money not assigned.</summary>
    public static Prose HowSure(SeasonReview season)
    {
        Notation notation = season.Notation;
        List<string> points = [];
        if (season.Farm.EstimatedShare.Value is { } share)
        {
            List<EnterpriseBudget> weak = season.Crops.Where(crop => crop.EstimatedShare.Value > 0.25m).ToList();
            points.Add(
                $"{Phrase.Percent(share)} of the labor hours are estimated"
                    + (weak.Count > 0 ? $"; more than a quarter for {Names(weak)}" : "; no crop has more than a quarter estimated")
            );
        }
        else
        {
            points.Add($"labor hours: not available ({season.Farm.EstimatedShare.Reason})");
        }

        List<EnterpriseBudget> incomplete = season.Crops.Where(crop => crop.Known.Value is not null).ToList();
        points.Add(incomplete.Count == 0
            ? "everything that left has a price or a list value"
            : $"no price is on record for {Names(incomplete)}, at least for a part of it: what they brought in is not available, "
                + $"nor anything that rests on it");
        List<EnterpriseBudget> unmatched = season.Crops.Where(crop => crop.Sums.Unmatched > 0m).ToList();
        points.Add(unmatched.Count == 0 ? "every sale is matched with a harvest" : $"more left than was picked of {Names(unmatched)}");
        decimal unassigned = season.UnallocatedTotal(Costing.Unallocated.NotAssigned);
        points.Add(
            unassigned == 0m
                ? "no cost is left without a crop"
                : $"{notation.InWords(unassigned, Look.Money)} of cost{season.Known.OwnershipLeftOut}"
                    + $"{(season.Known.Ownership is null ? "" : ",")} found no crop and is charged to none"
        );
        points.Add(
            $"{season.Reconciliation.Count(check => check.Holds)} of {season.Reconciliation.Count} totals agree with your records to the "
                + $"cent, the hour and the unit"
        );
        return new Prose(string.Join("\n", points.Select(point => $"- {Phrase.Sentence(point)}.")));
    }

    /// <summary>The crops whose value is known.</summary>
    private static IEnumerable<EnterpriseBudget> Valued(SeasonReview season) => season.Crops.Where(crop => crop.Known.Value is null);

    /// <summary>The answer where crops have no price: how many have one, what those brought in, and which are left out.</summary>
    private static string ValueUnknown(SeasonReview season)
    {
        Notation notation = season.Notation;
        // What brought nothing in needed no price; that it has one isn't known.
        List<EnterpriseBudget> valued = Valued(season).Where(crop => crop.Output.Amount != 0m).ToList();
        List<EnterpriseBudget> unknown = season.Crops.Where(crop => crop.Known.Value is not null).ToList();
        string text = $"In **{season.CropYear}** {Phrase.Farm(season.Farm.Name)} grew **{notation.Count(season.Crops.Count, "crop")}, "
            + (valued.Count == 0 ? "none of them with a price**. " : $"with prices for {valued.Count}**. ");
        text += valued.Count == 0 ? "What they brought in is not available."
            : $"Those {valued.Count} brought in {notation.InWords(valued.Sum(crop => crop.Output.Amount), Look.WholeMoney)}; "
                + $"what the whole farm brought in is not available.";
        text += $" Without a price, at least for a part, and so in no ranking: {Names(unknown)}. Put a price of each into prices.csv.";
        return text
            + Leading(season, season.Settings.LengthUnit.Label("bed-foot-week"), budget => budget.GrossMarginPerBedFootWeek)
            + Leading(season, "labor hour", budget => budget.GrossMarginPerLaborHour);
    }

    private static string Leading(SeasonReview season, string per, Func<EnterpriseBudget, Result> rate)
    {
        List<EnterpriseBudget> best = season
            .Crops.Where(crop => rate(crop).Value > 0m)
            .OrderByDescending(crop => rate(crop).Value)
            .Take(Leaders)
            .ToList();
        return best.Count == 0
            ? ""
            : $" Per {per}, {Phrase.List(best, crop => crop.Name, crop => season.Notation.InWords(rate(crop).Value!.Value, Look.Rate))} "
                + $"led.";
    }

    private static string Losses(SeasonReview season)
    {
        if (season.Farm.Line(BudgetLine.NetReturn).Missing is { } why)
        {
            return $" What was left after every cost, and which crops lost money, isn't known ({why}).";
        }

        Notation notation = season.Notation;
        List<EnterpriseBudget> losers = season
            .Crops.Where(crop => crop.NetReturn.Amount < 0m)
            .OrderBy(crop => crop.NetReturn.Amount)
            .ToList();
        decimal left = season.Farm.NetReturn.Amount;
        string total = left < 0m
            ? $" After every cost, your own hours included, the crops fell **{notation.InWords(-left, Look.WholeMoney)}** short"
            : $" After every cost, your own hours included, the crops left **{notation.InWords(left, Look.WholeMoney)}**";
        return losers.Count == 0
            ? $"{total}; every crop paid its way."
            : $"{total}. {Phrase.Sentence(notation.Count(losers.Count, "crop"))} didn't pay {(losers.Count == 1 ? "its" : "their")} way"
                + $"{(losers.Count > Leaders ? ", most of all" : ":")} "
                + $"{Phrase.List(losers.Take(Leaders), crop => crop.Name, Net)}.";

        string Net(EnterpriseBudget crop) => notation.InWords(crop.NetReturn.Amount, Look.WholeMoney);
    }

    private static string Names(IReadOnlyList<EnterpriseBudget> crops) =>
        Phrase.List(crops.Select(crop => Phrase.Bold(crop.Name)).ToList());
}
