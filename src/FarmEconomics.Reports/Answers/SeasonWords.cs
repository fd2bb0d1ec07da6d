using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Answers;

/// <summary>The first screen of the season's page in sentences and figures.</summary>
internal sealed class SeasonWords(ReviewedFarm farm)
{
    private readonly SeasonReview season = farm.Season;
    private readonly Notation notation = farm.Notation;

    private EnterpriseBudget Whole => season.Farm;

    private FarmStatementLine FarmNet => FarmStatement.Of(season).First(line => line.Item == FarmStatementItem.NetReturnOfFarm);

    /// <summary>The finding.</summary>
    internal string Headline => season.Crops.Count == 0 ? $"There are no plantings of {season.CropYear} in the records"
        : FarmNet.Amount is { } sofar && HasJustBegun(farm)
            ? $"{season.CropYear} is not half over: through {Looks.LongDay(farm.Review.Records.AsOf)} it "
                + (sofar >= 0m ? $"left {Money(sofar)} after every cost" : $"is {BlockNumber.Size(sofar, notation)} short of every cost")
                + ", your own hours included"
        : FarmNet.Amount is { } net ? net >= 0m
            ? $"{season.CropYear} paid every cost, your own hours included, and left {Money(net)}"
            : $"{season.CropYear} fell {BlockNumber.Size(net, notation)} short of paying every cost, your own hours included"
        : Whole.Known.Value is null
            ? $"In {season.CropYear} {Phrase.Spelled(season.Crops.Count, "crop")} brought in {Money(Whole.Output.Amount)}"
        : $"In {season.CropYear} you grew {Phrase.Spelled(season.Crops.Count, "crop")}; {Unpriced()}";

    /// <summary>Two sentences on why.</summary>
    internal Prose Why => new(FarmNet.Amount is null
        ? $"What was left isn't known: {Prose.Text(FarmNet.Reason)}. {Best()}"
        : $"{LostAlways()}{Earned()}");

    /// <summary>How sure that is, in a line.</summary>
    internal string HowSure => SureLine(farm);

    /// <summary>At most four figures.</summary>
    internal FiguresBlock Figures => new(SeasonBlock.Figures, [BroughtIn(), Cost(), OwnHour(), Cash()]);

    /// <summary>"42% of the hours were divided by rule; three seasons are on record."</summary>
    internal static string SureLine(ReviewedFarm farm)
    {
        SeasonReview season = farm.Season;
        decimal hours = season.Farm.LaborHours.Value;
        decimal logged = season
            .Farm.Enterprises.SelectMany(season.DirectCharges)
            .Where(charge => charge.Hours > 0m && !charge.Estimated)
            .Sum(charge => charge.Hours);
        decimal byRule = hours - logged;
        int years = farm.Review.CropYearsPicked.Count(year => year <= season.CropYear);
        string seasons = (years == 0 ? "no harvest is" : $"{Phrase.Spelled(years, "season")} {(years == 1 ? "is" : "are")}") + " on record"
            + (HasJustBegun(farm) ? $"; what {season.CropYear} is still to bring and to cost isn't in it" : "");
        return farm.Season.Known.Hours is { } none ? $"How sure: {none}; {seasons}."
            : hours > 0m ? $"How sure: {BlockNumber.Percent(byRule / hours, farm.Notation)} of the hours were divided by rule; {seasons}."
            : $"How sure: {seasons}.";
    }

    // By the rule that tells the season just ended: half of it is over at the closing date.
    private static bool HasJustBegun(ReviewedFarm farm) => !farm.Review.IsHalfOver(farm.Season.CropYear);

    private string Money(decimal amount) => BlockNumber.Of(amount, Look.WholeMoney, notation);

    private string Unpriced()
    {
        int without = season.Crops.Count(crop => crop.Known.Value is not null);
        return season.Crops.Count == 1 ? "it has no price yet" : without == season.Crops.Count ? "none has a price yet"
            : without == 1 ? "one has no price yet" : "some have no price yet";
    }

    private string LostAlways()
    {
        List<Verdict> lost =
        [
            .. farm.Verdicts.Crops.Where(verdict =>
                verdict.Direction == Direction.DropOrChange
                && verdict.Seasons.Count > 1
                && verdict.Seasons.All(year => year.Contribution.Amount < 0m)
            ),
        ];
        if (lost.Count == 0)
        {
            return "";
        }

        int[] years = [.. lost.Select(verdict => verdict.Seasons.Count).Distinct()];
        string who = lost.Count <= 2
            ? Phrase.List(lost.ConvertAll(verdict => Link(verdict.Budget.Name)))
            : Phrase.Spelled(lost.Count, "crop");
        return $"Without {who} the farm would have been better off in "
            + $"{(years.Length == 1 ? $"{Phrase.AllOf(years[0])} years" : "every year")} on record. ";
    }

    private string Earned()
    {
        List<EnterpriseBudget> earners = [.. season.Crops.Where(crop => crop.NetReturn.Amount > 0m)
            .OrderByDescending(crop => crop.NetReturn.Amount)];
        int below = season.Crops.Count(crop => crop.NetReturn.Amount < 0m);
        if (season.Crops.Count == 1)
        {
            return $"{Link(season.Crops[0].Name)}, the only crop, {(below == 0 ? "paid" : "didn't pay")} its full cost.";
        }

        if (earners.Count == 0)
        {
            return "No crop paid its full cost.";
        }

        if (season.Crops.Count < 4)
        {
            return $"{Link(earners[0].Name)} earned most.";
        }

        string who = Phrase.List([.. earners.Take(3).Select(crop => Link(crop.Name))]);
        return (earners.Count < 3 ? $"Only {who} earned more than full cost; " : $"{who} earned most of what was left over; ")
            + (below == 0
                ? "every crop paid its way."
                : $"{Phrase.Spelled(below, "crop")} didn't pay {(below == 1 ? "its" : "their")} way.");
    }

    private string Best()
    {
        List<EnterpriseBudget> ranked =
        [
            .. season
                .Crops.Where(crop => crop.OutputPerBedFootWeek.IsAvailable)
                .OrderByDescending(crop => crop.OutputPerBedFootWeek.Value)
                .Take(3),
        ];
        return ranked.Count == 0 || season.Crops.Count == 1
            ? ""
            : notation.Text($"Per bed-foot-week {Phrase.List(ranked.ConvertAll(crop => Link(crop.Name)))} brought in most.");
    }

    private string Link(string crop) => PageTarget.Link(crop, PageTarget.Crop(farm.Slugs[crop]));

    private KeyFigure BroughtIn() =>
        Whole.Known.Value is { } why
            ? new("brought-in", "", null, $"what the crops brought in isn't known: {why}")
            : new(
                "brought-in",
                Money(Whole.Output.Amount),
                Whole.Output.Amount,
                $"{(season.Crops.Count == 1 ? "the crop" : "the crops")} brought in"
            );

    private KeyFigure Cost()
    {
        if (Whole.Known.NoFullNetReturn is { } why)
        {
            return new("cost", "", null, $"what they cost isn't known: {why}");
        }

        decimal own = Whole.Line(BudgetLine.OwnerLabor).Value ?? 0m;
        return new(
            "cost",
            Money(Whole.TotalCost.Amount),
            Whole.TotalCost.Amount,
            (season.Crops.Count == 1 ? "it cost" : "they cost") + (own > 0m ? $", {Money(own)} of it your own hours" : "")
        );
    }

    private KeyFigure OwnHour()
    {
        decimal own = season.Trace.LaborByWindow[season.CropYear].Where(use => use.Kind == WorkerKind.Owner).Sum(use => use.Hours);
        if (farm.WriteUp.Accrual is { } accrual && own > 0m)
        {
            decimal hour = accrual.NetFarmIncome / own;
            return new(
                "own-hour",
                BlockNumber.Of(hour, Look.Rate, notation),
                hour,
                $"your own hour brought: {Money(accrual.NetFarmIncome)} over {notation.Number(own, Look.Count)} hours you logged"
            );
        }

        return Whole.ReturnToLaborPerHour.Value is { } any
            ? new(
                "hour",
                BlockNumber.Of(any, Look.Rate, notation),
                any,
                "an hour earned after all other costs, paid and unpaid hours alike"
            )
            : new("hour", "", null, $"what an hour earned isn't known: {Whole.ReturnToLaborPerHour.Reason}");
    }

    private KeyFigure Cash()
    {
        CashBook book = farm.WriteUp.Cash;
        if (farm.WriteUp.Tax.NetUnknown is { } why)
        {
            return new("cash", "", null, $"what cash came home isn't known: {why}");
        }

        decimal drawn = -book.Sum(CashKind.Drawings);
        decimal household = -book.Sum(CashKind.HouseholdPart);
        string after = (drawn, household) switch
        {
            ( > 0m, > 0m) => $", after {Money(drawn)} drawn and {Money(household)} of household bills",
            ( > 0m, _) => $", after {Money(drawn)} drawn",
            (_, > 0m) => $", after {Money(household)} of household bills",
            _ => "",
        };
        // Loans paid out in the year are in the bank as well: a season loan drawn and paid back leaves what it was.
        decimal change = farm.WriteUp.LastYear.In.Sum() - farm.WriteUp.LastYear.Out.Sum();
        string where = Counted is { } counted && Math.Abs(counted - change) > Math.Abs(change) * Unexplained
            ? $"by the records; the balance sheets say {BlockNumber.Size(counted, notation)} {(counted < 0m ? "less" : "more")}"
            : "in the bank";
        return new("cash", BlockNumber.Size(change, notation), change, $"{(change < 0m ? "less" : "more")} {where}{after}");
    }

    // Ours: less than a twentieth is what a count of cash leaves.
    private const decimal Unexplained = 0.05m;

    /// <summary>What cash changed by as the balance sheets at both ends count it; null where one of them doesn't.</summary>
    private decimal? Counted => farm.WriteUp.Closing?.Cash - farm.WriteUp.Opening?.Cash;
}
