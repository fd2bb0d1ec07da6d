using FarmEconomics.Budgets;
using FarmEconomics.Funding;
using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Planning;

/// <summary>A plan in sentences and tables.</summary>
public static partial class PlanWords
{
    private const int Named = 3;

    /// <summary>Why a mix by sales alone is to be taken with care, or its cash isn't told.</summary>
    /// <param name="outlook">The outlook of a plan.</param>
    /// <returns>A sentence; null where costs are on record.</returns>
    public static string? SalesAlone(PlanOutlook outlook) =>
        outlook switch
        {
            { CostsUnknown: null } => null,
            { SeasonCostsUnknown: null, CostsUnknown: var why } => $"Cash isn't known: {why}.",
            { HoursUnknown: null } => "Costs aren't on record: crops that cost much look better here than they are.",
            _ => "Costs and hours aren't on record: crops that cost much or take many hours look better here than they are.",
        };

    /// <summary>
    /// What became of crops without a price on record: nothing tells their worth, so they keep their lengths and bring no cash in a plan.
    /// </summary>
    /// <param name="season">The season.</param>
    /// <returns>A sentence; null where every crop has a price.</returns>
    public static string? WithoutPrice(SeasonReview season)
    {
        ArgumentNullException.ThrowIfNull(season);
        string[] crops = [.. season.Crops.Where(crop => crop.Known.Value is not null).Select(crop => crop.Name)];
        return crops.Length == 0 ? null
            : $"{(crops.Length > Named ? season.Notation.Count(crops.Length, "crop") : Phrase.List(crops))} "
                + $"{(crops.Length == 1 ? "has" : "have")} no price on record: "
                + $"{(crops.Length == 1 ? "it keeps its" : "they keep their")} length, and no sales of "
                + $"{(crops.Length == 1 ? "it" : "them")} are in the cash.";
    }

    /// <summary>That no mix can be chosen; null where one can.</summary>
    /// <param name="season">The season.</param>
    /// <returns>The finding, without its period, and what to do.</returns>
    public static (string Finding, string ToDo)? NoPrices(SeasonReview season)
    {
        ArgumentNullException.ThrowIfNull(season);
        return PlanOutlook.NoPrices(season) is null ? null
            : ($"What to grow in {season.CropYear + 1} can't be told: no price is on record",
                $"Put the prices you sell at into prices.csv. Shown here are the plantings of {season.CropYear} again.");
    }

    /// <summary>What the best mix gains, and what limits it; or what can't be kept.</summary>
    /// <param name="mix">The mix.</param>
    /// <param name="chosen">The lengths that are told; null: none was found.</param>
    /// <param name="notation">How the farm writes.</param>
    /// <param name="isSteady">True where the lengths told are those of the steady plan.</param>
    /// <returns>Sentences for a terminal.</returns>
    public static string Headline(BestMix mix, PlanLengths? chosen, Notation notation, bool isSteady = false)
    {
        ArgumentNullException.ThrowIfNull(mix);
        ArgumentNullException.ThrowIfNull(notation);
        if (chosen is null)
        {
            return ConflictWords.Sentence(mix, notation);
        }

        string what =
            mix.Gain(chosen) is not { } gain ? "can't be set beside this year's plantings"
            : gain > 0m ? $"would bring {notation.InWords(gain, Look.WholeMoney)} more a year than this year's plantings"
            : "brings no more than this year's plantings";
        string hours = HoursAt(mix, notation) is { } at ? $", with {at}" : "";
        return $"The {(isSteady ? "steady plan" : "best mix")} {what}{hours}. {Dearest(mix, notation)}";
    }

    /// <summary>What an hour counts where plans are held against each other; null where nothing on record takes any.</summary>
    internal static string? HoursAt(BestMix mix, Notation notation) =>
        mix.Model.Sowings.All(sowing => sowing.Hours.All(hours => hours == 0.0)) && mix.Model.Crops.All(crop => crop.HandlingHours == 0.0)
            ? null
            : $"your own hours at {notation.InWords((decimal)mix.Model.Hours.OwnCost, Look.Rate)} "
                + $"(hours there aren't count {Phrase.Spelled((int)PlanSettings.MissingHours)} times)";

    /// <summary>Length of each crop beside this year's.</summary>
    public static ReportTable Crops(BestMix mix, PlanLengths chosen, Notation notation)
    {
        ArgumentNullException.ThrowIfNull(mix);
        ArgumentNullException.ThrowIfNull(chosen);
        ArgumentNullException.ThrowIfNull(notation);
        ReportTable table = new ReportTable(notation.Text($"What to grow in {mix.Model.CropYear}"), notation)
            .Column("Crop")
            .Column("This year", Look.Quantity, notation.Label("bed-feet"))
            .Column("Plan", Look.Quantity, notation.Label("bed-feet"))
            .Column("Change", Look.Quantity, notation.Label("bed-feet"))
            .Column("Sowings", Look.Count)
            .Column("First in bed", Look.Date)
            .Column("Last in bed", Look.Date);
        DateOnly start = mix.Model.Start;
        for (int c = 0; c < mix.Model.Crops.Count; c++)
        {
            int[] own = [.. Enumerable.Range(0, mix.Model.Sowings.Count).Where(i => mix.Model.Sowings[i].Crop == c)];
            decimal before = (decimal)own.Sum(i => mix.Today.Feet[i]),
                after = (decimal)own.Sum(i => chosen.Feet[i]);
            int[] weeks =
            [
                .. own.Where(i => chosen.Feet[i] > 0.25 && mix.Model.Sowings[i].Standing.Count == 0).Select(i => mix.Model.Sowings[i].Week),
            ];
            table.Row(
                mix.Model.Crops[c].Name,
                before,
                after,
                after - before,
                weeks.Length,
                weeks.Length > 0 ? start.AddDays(7 * weeks.Min()) : (ReportCell)"",
                weeks.Length > 0 ? start.AddDays(7 * weeks.Max()) : (ReportCell)""
            );
        }

        return table.Note("Sown only in weeks, under covers and for as long as you did before; "
            + "yields lean on the mean of all your sowings, so that lucky ones don't count too much.");
    }

    /// <summary>That cash falls short whatever is grown, and what to write down; null where it doesn't.</summary>
    internal static string? NotKept(BestMix mix, Notation notation)
    {
        return mix.CashShort is not { } most
            ? null
            : $"Whatever is sown, cash is short by {notation.InWords((decimal)most.By, Look.WholeMoney)} at the end of "
                + $"{MonthOf(mix.Model, most.Month)}, so the plan isn't held to cash by month. "
                + "With what you can borrow in limits.csv (line of credit) it is.";
    }

    /// <summary>The name of a month of the year planned.</summary>
    internal static string MonthOf(PlanModel model, int month) =>
        model.Start.AddMonths(month).ToString("MMMM", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>Crops the plan leaves out.</summary>
    public static ReportTable LeftOut(BestMix mix, Notation notation)
    {
        ArgumentNullException.ThrowIfNull(mix);
        ArgumentNullException.ThrowIfNull(notation);
        return new ReportTable("Left out, and by how much", notation).InOrder().Of<LeftOut>()
            .Column("Crop", one => mix.Model.Crops[one.Crop].Name)
            .Column("Misses by", Look.Rate, one => (decimal)one.Misses, per: notation.Label("bed-foot"))
            .Rows(mix.LeftOut);
    }

    /// <summary>A plan's cash with a line of credit at the farm's interest, from what there is on; draws at the end of a month.</summary>
    /// <param name="outlook">The outlook.</param>
    /// <param name="farm">The farm's settings.</param>
    /// <param name="opening">Cash at the beginning.</param>
    /// <returns>The line.</returns>
    public static CreditLine Credit(PlanOutlook outlook, FarmSettings farm, decimal opening = 0m)
    {
        ArgumentNullException.ThrowIfNull(outlook);
        ArgumentNullException.ThrowIfNull(farm);
        return CreditLine.Of(
            [.. outlook.Months.Select(month => month.Left)],
            opening,
            0m,
            new CreditLineTerms((farm.InterestPercent ?? 0m) / 100m, 0m, 0.01m, DrawTiming.End)
        );
    }

    /// <summary>That what is borrowed costs more than is told; null where nothing is borrowed, or interest is on record.</summary>
    /// <param name="farm">The farm's settings.</param>
    /// <param name="credit">The line of credit.</param>
    /// <returns>A sentence.</returns>
    public static string? InterestUnknown(FarmSettings farm, CreditLine credit)
    {
        ArgumentNullException.ThrowIfNull(farm);
        ArgumentNullException.ThrowIfNull(credit);
        return credit.Most > 0m && farm.InterestPercent is null
            ? "What is borrowed costs interest, which isn't counted: farm.csv has no interest_percent."
            : null;
    }

    /// <summary>Cash month by month.</summary>
    public static ReportTable Cash(PlanOutlook outlook, CreditLine credit, Notation notation)
    {
        ArgumentNullException.ThrowIfNull(outlook);
        ArgumentNullException.ThrowIfNull(credit);
        ArgumentNullException.ThrowIfNull(notation);
        bool buys = outlook.Months.Any(month => month.BoughtIn != 0m);
        ReportTable table = new ReportTable("Cash month by month", notation).InOrder()
            .Column("Month from", Look.Date)
            .Column("Sales and shares", Look.WholeMoney)
            .Column("Supplies and packaging", Look.WholeMoney);
        table = (buys ? table.Column("Bought in for boxes", Look.WholeMoney) : table)
            .Column("Wages", Look.WholeMoney)
            .Column("Other costs", Look.WholeMoney)
            .Column("Taxes and draws", Look.WholeMoney)
            .Column("Line of credit", Look.WholeMoney)
            .Column("Cash at the end", Look.WholeMoney);
        foreach ((PlanMonth month, CreditLineMonth line) in outlook.Months.Zip(credit.Months))
        {
            table.Row([
                month.Month,
                month.Sales + month.Shares + month.OtherIncome + month.Invoices,
                Cost(month.Supplies),
                .. buys ? [Cost(month.BoughtIn)] : Array.Empty<ReportCell>(),
                Cost(month.Wages),
                Cost(month.Running + line.Interest),
                Cost(month.Drawn),
                Cost(line.Owed),
                Cost(line.Closing),
            ]);
        }

        ReportCell Cost(decimal amount) => ReportCell.Known(amount, outlook.CostsUnknown);
        return table.Note("Members' payments, other income, costs that don't vary with crops, "
            + "taxes and what you draw are the season's before. Purchases of equipment are left out.")
            .Note(Unpaid(outlook.Months[0].Invoices, notation))
            .Note(outlook.BreakEven.Value is { } even
                ? $"The year comes out even, before taxes and what you draw, "
                    + $"with sales and shares of {notation.InWords(even, Look.WholeMoney)}."
                : $"No break-even: {outlook.BreakEven.Reason}.");
    }

    private static string? Unpaid(decimal invoices, Notation notation) => invoices == 0m ? null
        : $"Invoices of {notation.InWords(invoices, Look.WholeMoney)} unpaid at the beginning are taken as paid in the first month, "
            + "and as much as unpaid again at the end: no record says when an invoice is paid.";

    /// <summary>What won't work, a sentence each.</summary>
    public static IReadOnlyList<string> Problems(PlanOutlook outlook, Notation notation)
    {
        ArgumentNullException.ThrowIfNull(outlook);
        ArgumentNullException.ThrowIfNull(notation);
        return [.. outlook.Problems.Select(one => Problem(one, notation))];
    }

    /// <summary>What won't work, in a sentence.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="notation">How the farm writes.</param>
    /// <param name="withPlantings">Names the plantings concerned.</param>
    public static string Problem(PlanProblem problem, Notation notation, bool withPlantings = true)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(notation);
        string plantingsAlone = string.Join(", ", problem.Plantings);
        string plantings = withPlantings && plantingsAlone.Length > 0 ? $" ({plantingsAlone})" : "";
        return problem.Kind switch
        {
            PlanProblemKind.Rotation => notation.Text(
                $"{problem.Where}, from {problem.Day:MMM d}: {problem.Family} comes again too soon, "
                    + $"on {problem.Short:0.#} bed-feet{plantings}."
            ),
            PlanProblemKind.NotPlanned => $"{plantingsAlone} stands in {problem.Where} and isn't in the plan: "
                + "neither its harvest nor its hours are counted.",
            PlanProblemKind.LeavesEarly => notation.Text(
                $"{problem.Where} is out on {problem.Day:MMM d}: {problem.Short:#,0.#} {problem.Unit} usually picked later lost{plantings}."
            ),
            PlanProblemKind.Outside when plantingsAlone.Length == 0 => notation.Text(
                $"{problem.Where}: sales of the week of {problem.Day:MMM d, yyyy} lie outside the year planned; "
                    + $"what lies outside it isn't in its cash."
            ),
            PlanProblemKind.OutOfSeason => notation.Text(
                $"{problem.Where}, week of {problem.Day:MMM d}: far from every week it came into a bed here, those of "
                    + $"{problem.OnRecord!.First:MMM d} to {problem.OnRecord.Last:MMM d} ({problem.OnRecord.Sowings} sowings in "
                    + $"{problem.OnRecord.Seasons} seasons){plantings}."
            ),
            PlanProblemKind.Outside => notation.Text($"{problem.Where}, {problem.Day:MMM d, yyyy}: outside the year planned{plantings}."),
            PlanProblemKind.Trays => notation.Text($"From the week of {problem.Day:MMM d}: ")
                + $"up to {notation.Count((int)Math.Ceiling(problem.Short), "tray")} more than there is room for.",
            PlanProblemKind.Credit => notation.Text($"End of {problem.Day:MMMM}: ")
                + $"{notation.InWords(problem.Short, Look.WholeMoney)} more must be borrowed "
                + "than the line of credit in limits.csv lets be.",
            PlanProblemKind.Hours => notation.Text($"Week of {problem.Day:MMM d}: {problem.Short:0.#} hours short."),
            PlanProblemKind.Sales =>
                notation.Text($"{problem.Where}: {problem.Short:#,0.#} {problem.Unit} more are to be sold than picked."),
            _ => notation.Text(
                $"{problem.Where}, from {problem.Day:MMM d}: {problem.Short:0.#} bed-feet more than there are{plantings}."
            ),
        };
    }
}
