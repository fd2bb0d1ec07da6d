using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Decisions.Losses;
using FarmEconomics.Records;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Explain;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Plots;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;
using FarmEconomics.Tracing;

namespace FarmEconomics.Reports.Answers;

/// <summary>Columns of the tables on a crop's page.</summary>
public enum CropColumn
{
    /// <summary>The sowing.</summary>
    Sowing,

    /// <summary>The year.</summary>
    Year,

    /// <summary>Bed-feet.</summary>
    Length,

    /// <summary>Picked per bed-foot.</summary>
    Picked,

    /// <summary>Price received.</summary>
    SoldFor,

    /// <summary>Break-even price.</summary>
    BreakEven,

    /// <summary>Brought in.</summary>
    BroughtIn,

    /// <summary>Labor hours.</summary>
    Hours,

    /// <summary>After every cost.</summary>
    LeftOver,

    /// <summary>A line of the budget.</summary>
    Line,

    /// <summary>Its amount.</summary>
    Amount,

    /// <summary>The week.</summary>
    Week,

    /// <summary>Picked in the week.</summary>
    PickedQuantity,

    /// <summary>Sold in the week.</summary>
    SoldQuantity,
}

/// <summary>Charts and tables of a crop's page.</summary>
internal sealed class CropParts(ReviewedFarm farm, EnterpriseBudget crop)
{
    private readonly SeasonReview season = farm.Season;
    private readonly Notation notation = farm.Notation;
    private readonly List<Sowing> sowings = [.. farm.Sowings.All.Where(sowing => sowing.Crop == crop)];

    private string Unit => crop.Crop!.Unit;

    /// <summary>Its sowings as bars where there are two or more, and as a table.</summary>
    internal IEnumerable<Block> Sowings()
    {
        List<Sowing> known = sowings.FindAll(sowing => sowing.Budget.NetReturnPerBedFoot.IsAvailable);
        int paid = known.Count(sowing => sowing.Paid == true);
        string its = sowings.Count == 1 ? "its sowing" : $"its {Phrase.Spelled(sowings.Count, "sowing")}";
        string heading = known.Count == 0 ? $"What {its} left isn't known"
            : known.Count == 1
            ? $"One sowing, {BlockNumber.Of(known[0].Budget.NetReturnPerBedFoot.Value!.Value, Look.Rate, notation)} "
                + $"{notation.Label("a bed-foot")}"
            : paid == known.Count ? $"Every one of {known.Count} sowings paid" : $"{paid} of {known.Count} sowings paid";
        if (known.Count > 1)
        {
            List<Bar> bars = known.ConvertAll(sowing => Bar(sowing));
            yield return new PlotBlock(
                CropBlock.Sowings,
                heading,
                notation.Text($"Left over per bed-foot, {notation.Sign}, {season.CropYear}, with the sowing's total beside it."),
                new Chart((ReportTable?)null)
                {
                    Bars = new BarList(notation.Text($"Left over per bed-foot of {known.Count} sowings of {crop.Name}"), bars),
                }
            );
        }

        yield return new TableBlock(CropBlock.SowingTable, known.Count > 1 ? null : heading, SowingTable()) { Rows = 12 };
    }

    /// <summary>What a unit sold for, channel by channel, beside the break-even price.</summary>
    internal IEnumerable<Block> Channels()
    {
        List<(string Channel, decimal Price, decimal Quantity)> channels = [.. season.PartsOf(crop.Crop!)
            .Where(part => part.Enterprise is not null
                && part.Quantity > 0m
                && part.Amount != Units.Money.Zero
                && (part.Disposition.Channel.IsPriced || part.Disposition.Channel.Kind == ChannelKind.Share))
            .GroupBy(part => part.Disposition.Channel.Name)
            .Select(group =>
                (group.Key, group.Sum(part => part.Amount.Amount) / group.Sum(part => part.Quantity), group.Sum(part => part.Quantity)))
            .OrderByDescending(channel => channel.Item2)];
        if (channels.Count == 0)
        {
            yield break;
        }

        decimal? even = crop.BreakEvenPrice.Value is > 0m and { } price ? price : null;
        decimal below = even is { } need ? channels.Where(channel => channel.Price < need).Sum(channel => channel.Quantity) : 0m;
        string heading = even is null
            ? $"What {UnitWords.Per(Unit)} sold for"
            : below == 0m
                ? "Every channel paid more than full cost"
                : notation.Text($"{UnitWords.Of(below, Unit, notation)} went out below full cost");
        List<Bar> bars = channels.ConvertAll(channel => new Bar(channel.Channel, channel.Price,
            notation.Text($"{Rate(channel.Price)} · {UnitWords.Of(channel.Quantity, Unit, notation)}"),
            notation.Text($"{channel.Channel}: {Rate(channel.Price)} {UnitWords.Per(Unit)}, "
                + $"{UnitWords.Of(channel.Quantity, Unit, notation)}"))
        { IsLoss = channel.Price < even });
        yield return new PlotBlock(
            CropBlock.Channels,
            heading,
            $"{notation.Sign} {UnitWords.Per(Unit)} by channel, {season.CropYear}, "
                + $"with the quantity sold.{(even is null ? "" : " Break-even is the average over all channels.")}",
            new Chart((ReportTable?)null)
            {
                Bars = new BarList(
                    $"Price of {crop.Name} by channel", bars)
                { Mark = even, MarkText = even is { } mark ? $"break-even {Rate(mark)}" : "" }
            });
    }

    /// <summary>Hours by stage; null where none are known.</summary>
    internal Block? Hours()
    {
        if (crop.Known.Hours is not null || crop.LaborHours.Value <= 0m)
        {
            return null;
        }

        List<(Stage Stage, decimal Hours)> stages = [.. Enum.GetValues<Stage>()
            .Select(stage => (stage, crop.Sums.HoursByStage[(int)stage]))
            .Where(stage => stage.Item2 > 0m)
            .OrderByDescending(stage => stage.Item2)];
        // Whole hours of few would not add up to what is said above them.
        Look look = crop.LaborHours.Value < 100m ? Look.Hours : Look.Count;
        List<Bar> bars = stages.ConvertAll(stage => new Bar(
            SeasonPlots.StageName(stage.Stage),
            stage.Hours,
            notation.Number(stage.Hours, look),
            $"{SeasonPlots.StageName(stage.Stage)}: {notation.Number(stage.Hours, Look.Hours)} hours"));
        string estimated = crop.Sums.EstimatedHours > 0.5m
            ? $" {notation.Number(crop.Sums.EstimatedHours, Look.Count)} of them "
                + $"{(crop.Sums.EstimatedHours < 1.5m ? "is" : "are")} estimated."
            : "";
        return new PlotBlock(
            CropBlock.Hours,
            $"{SeasonPlots.StageName(stages[0].Stage)} took the most hours",
            $"Hours, {season.CropYear}; {notation.Number(crop.LaborHours.Value, look)} in all, shared work included.{estimated}",
            new Chart((ReportTable?)null) { Bars = new BarList($"Hours of {crop.Name} by stage of work", bars) { IsHalf = true } });
    }

    /// <summary>Where its costs come from; null where none is known. Those not known are named: no total stands without them.</summary>
    internal Block? Cost()
    {
        BudgetLine[] lines =
        [
            BudgetLine.OwnerLabor,
            BudgetLine.HiredLabor,
            BudgetLine.Infrastructure,
            BudgetLine.Selling,
            BudgetLine.Materials,
            BudgetLine.Overhead,
            BudgetLine.Establishment,
        ];
        List<(BudgetLine Line, decimal Amount)> costs =
        [
            .. lines
                .Select(line => (line, crop.Line(line).Value ?? 0m))
                .Where(cost => cost.Item2 != 0m && (cost.line != BudgetLine.Establishment || cost.Item2 > 0m))
                .OrderByDescending(cost => cost.Item2),
        ];
        if (costs.Count == 0)
        {
            return null;
        }

        List<string> unknown = [.. lines.Where(line => crop.Line(line).Missing is not null).Select(line => Name(line).ToLowerInvariant())];
        decimal all = costs.Sum(cost => cost.Amount),
            labor = costs.Where(cost => cost.Line is BudgetLine.OwnerLabor or BudgetLine.HiredLabor).Sum(cost => cost.Amount);
        string total = unknown.Count == 0 ? $"{Money(all)} in all" : $"not known: {Phrase.List(unknown)}";
        List<Bar> bars = costs.ConvertAll(cost => new Bar(
            Name(cost.Line), cost.Amount, Money(cost.Amount), $"{Name(cost.Line)}: {BlockNumber.Of(cost.Amount, Look.Money, notation)}"));
        return new PlotBlock(
            CropBlock.Cost,
            labor > 0m && unknown.Count == 0
                ? $"Labor is {BlockNumber.Percent(labor / all, notation)} of its cost"
                : "Where its costs come from",
            $"{notation.Sign}, {season.CropYear}; {total}.",
            new Chart((ReportTable?)null) { Bars = new BarList($"Cost of {crop.Name}", bars) { IsHalf = true } });
    }

    /// <summary>Its years, where there are two or more.</summary>
    internal IEnumerable<Block> Years()
    {
        CropOverYears years = CropOverYears.Of(farm.Review, crop.Name, season.CropYear);
        if (years.Years.Count < 2)
        {
            yield break;
        }

        ReportTable table = new ReportTable("Each year in its own money; not corrected for rising prices.", notation).InOrder()
            .Column("Year", Look.Year).As(CropColumn.Year)
            .Column("Picked", Look.Rate, unit: notation.Text($"{UnitWords.Many(Unit)} a bed-foot")).As(CropColumn.Picked)
            .Column("Sold for", Look.Rate, unit: $"{notation.Sign} {UnitWords.Per(Unit)}").As(CropColumn.SoldFor)
            .Column("Brought in", Look.WholeMoney).As(CropColumn.BroughtIn)
            .Column("Hours", Look.Count).As(CropColumn.Hours).Column("Left over", Look.WholeMoney).As(CropColumn.LeftOver);
        foreach (EnterpriseBudget year in years.Years.Select(year => year.Budget))
        {
            table.Row(
                year.CropYear,
                year.YieldPerBedFoot,
                year.AveragePrice,
                ReportCell.Of(year.Line(BudgetLine.Output)),
                ReportCell.Known(year.LaborHours.Value, year.Known.Hours),
                ReportCell.Of(year.Line(BudgetLine.NetReturn)));
        }

        yield return new TableBlock(CropBlock.Years, YearsHeading([.. years.Years.Select(year => year.Budget)]), table);
    }

    /// <summary>In how many of the years it paid its way; a year whose net return isn't known counts for neither side.</summary>
    private static string YearsHeading(IReadOnlyList<EnterpriseBudget> years)
    {
        List<EnterpriseBudget> known = [.. years.Where(year => year.Line(BudgetLine.NetReturn).Missing is null)];
        int paid = known.Count(year => year.NetReturn.Amount >= 0m);
        string all = Phrase.Spelled(known.Count, "year");
        string unknown = known.Count == years.Count ? "" : $"; of {Phrase.Spelled(years.Count - known.Count)} it isn't known";
        string every = unknown.Length == 0 && known.Count > 1 ? $"{Phrase.AllOf(known.Count)} years" : all;
        return known.Count == 0 ? $"What it sold for, over {Phrase.Spelled(years.Count)} years"
            : (paid == known.Count ? $"It paid its way in {every}"
                : paid == 0 ? $"It fell short in {every}"
                : $"It paid its way in {Phrase.Spelled(paid)} of {all}") + unknown;
    }

    /// <summary>The budget; every amount leads to its rows.</summary>
    internal ReportTable Budget(string slug)
    {
        ReportTable table = new ReportTable($"{crop.Name}, {season.CropYear}. Each amount leads to its rows.", notation).InOrder()
            .Column("Line").As(CropColumn.Line).Column("Amount", Look.Money).As(CropColumn.Amount);
        (BudgetLine Line, RowsBlock? Part)[] lines =
        [
            (BudgetLine.Output, RowsBlock.Output),
            (BudgetLine.Materials, RowsBlock.Materials),
            (BudgetLine.Selling, RowsBlock.Selling),
            (BudgetLine.GrossMargin, null),
            (BudgetLine.Labor, RowsBlock.Labor),
            (BudgetLine.Infrastructure, RowsBlock.Infrastructure),
            (BudgetLine.Overhead, RowsBlock.Overhead),
            (BudgetLine.Establishment, RowsBlock.Establishment),
            (BudgetLine.NetReturn, null),
        ];
        foreach ((BudgetLine line, RowsBlock? part) in lines.Where(each => CropExplanation.Has(crop, each.Line)))
        {
            ReportCell amount = ReportCell.Of(crop.Line(line));
            table.Row(
                (line.Sign() < 0 ? "less " : "") + Name(line).ToLowerInvariant(),
                part is null ? amount : amount.To(PageTarget.Rows(slug, ((BlockKey)part).Id)));
        }

        return table;
    }

    /// <summary>Picked and sold, week by week.</summary>
    internal ReportTable Weeks()
    {
        ReportTable table = new ReportTable($"Weeks by their Monday, {season.CropYear}", notation)
            .Column("Week of", Look.Date).As(CropColumn.Week)
            .Column("Picked", Look.Quantity, unit: Unit).As(CropColumn.PickedQuantity).WithBar()
            .Column("Sold", Look.Quantity, unit: Unit).As(CropColumn.SoldQuantity)
            .Column("Sold for", Look.Rate, unit: $"{notation.Sign} {UnitWords.Per(Unit)}").As(CropColumn.SoldFor);
        Dictionary<DateOnly, decimal> picked = season.LotsOf(crop.Crop!)
            .GroupBy(lot => WeeklyUse.MondayOf(lot.Date))
            .ToDictionary(week => week.Key, week => week.Sum(lot => lot.Quantity));
        ILookup<DateOnly, DispositionPart> sold = season.PartsOf(crop.Crop!)
            .Where(part => part.Enterprise is not null && part.Quantity > 0m && part.Disposition.IsSold)
            .ToLookup(part => WeeklyUse.MondayOf(part.Disposition.Row.Date));
        foreach (DateOnly week in picked.Keys.Concat(sold.Select(week => week.Key)).Distinct().Order())
        {
            decimal quantity = sold[week].Sum(part => part.Quantity);
            table.Row(
                week,
                picked.GetValueOrDefault(week),
                quantity,
                quantity > 0m ? sold[week].Sum(part => part.Amount.Amount) / quantity : (ReportCell)"");
        }

        return table;
    }

    private Bar Bar(Sowing sowing)
    {
        decimal foot = sowing.Budget.NetReturnPerBedFoot.Value!.Value;
        string total = Money(sowing.Budget.NetReturn.Amount);
        return new Bar(
            Name(sowing),
            foot,
            $"{Rate(foot)} · {total}",
            notation.Text($"{sowing.Budget.Name}: {Rate(foot)} a bed-foot, {total} in all"));
    }

    private ReportTable SowingTable()
    {
        ReportTable table = new ReportTable(
            $"{(sowings.Count == 1 ? "Its sowing" : $"{sowings.Count} sowings")} of {season.CropYear}.", notation)
            .Column("Sowing").As(CropColumn.Sowing)
            .Column("Length", Look.Count, unit: notation.Label("bed-feet")).As(CropColumn.Length).HiddenOnPhone()
            .Column("Picked", Look.Rate, unit: notation.Text($"{UnitWords.Many(Unit)} a bed-foot")).As(CropColumn.Picked)
            .Column("Sold for", Look.Rate, unit: $"{notation.Sign} {UnitWords.Per(Unit)}").As(CropColumn.SoldFor)
            .Column("Break-even", Look.Rate, unit: $"{notation.Sign} {UnitWords.Per(Unit)}").As(CropColumn.BreakEven)
            .Column("Hours", Look.Count).As(CropColumn.Hours).HiddenOnPhone().Column("Left over", Look.WholeMoney).As(CropColumn.LeftOver);
        foreach (Sowing sowing in sowings)
        {
            table.Row(Cells(sowing.Budget, $"{Name(sowing)}, {Stay(sowing)}"));
        }

        return sowings.Count > 1 ? table.Total(Cells(crop, crop.Name)) : table;
    }

    private static IReadOnlyList<ReportCell> Cells(EnterpriseBudget budget, string name) =>
    [
        name, budget.Sums.BedFeet.Value, budget.YieldPerBedFoot, budget.AveragePrice, budget.BreakEvenPrice,
        ReportCell.Known(budget.LaborHours.Value, budget.Known.Hours), ReportCell.Of(budget.Line(BudgetLine.NetReturn)),
    ];

    // Where it stood, where that tells all sowings apart; else each by its own name, never one of twenty by its tunnel.
    private string Name(Sowing sowing) =>
        sowings.All(one => Place(one).Length > 0) && sowings.Select(Place).Distinct().Count() == sowings.Count
            ? Place(sowing)
            : sowing.Budget.Name;

    private static string Place(Sowing sowing) => sowing.Budget.Enterprises[0].Stays is { Count: > 0 } stays
        && stays.Select(stay => stay.Bed.Structure).Distinct().ToList() is [{ } only]
        ? only.ToString() ?? ""
        : "";

    // What stands yet has no last day: the closing date frees no bed.
    private static string Stay(Sowing sowing)
    {
        if (sowing.Budget.Enterprises[0].Stays is not { Count: > 0 } stays)
        {
            return Looks.ShortDay(sowing.Sown);
        }

        DateOnly first = stays.Min(stay => stay.In);
        return stays.Any(stay => stay.Row.OutOfBed is null && stay.Planting.Crop.Perennial) ? $"since {Looks.LongDay(first)}"
            : $"{Looks.ShortDay(first)} to {Looks.ShortDay(stays.Max(stay => stay.Out))}";
    }

    private string Rate(decimal value) => BlockNumber.Of(value, Look.Rate, notation);

    private string Money(decimal value) => BlockNumber.Of(value, Look.WholeMoney, notation);

    private static string Name(BudgetLine line) => line switch
    {
        BudgetLine.Output => "Sales and use",
        BudgetLine.OwnerLabor => "Your own hours",
        BudgetLine.HiredLabor => "Hired hours",
        BudgetLine.Infrastructure => "Equipment, buildings",
        BudgetLine.Selling => "Selling",
        BudgetLine.Materials => "Seed, supplies",
        BudgetLine.Overhead => "Overhead",
        BudgetLine.Establishment => "Establishment",
        BudgetLine.GrossMargin => "Gross margin",
        BudgetLine.Labor => "Labor",
        _ => "Left over",
    };
}
