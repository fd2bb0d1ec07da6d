using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Planning;

/// <summary>A week of a plan.</summary>
/// <param name="From">Its first day.</param>
/// <param name="Hours">Hours it takes, those that come whatever is grown included.</param>
/// <param name="Own">The most own hours.</param>
/// <param name="Hired">The most hired hours.</param>
/// <param name="Trays">Trays in the nursery.</param>
/// <param name="Crates">Crates picked.</param>
/// <param name="Sales">Sales after fees, shares left out.</param>
public sealed record PlanWeek(DateOnly From, decimal Hours, decimal Own, decimal Hired, decimal Trays, decimal? Crates, decimal Sales)
{
    // Hours fall as those of the nearest sowing: less than this is no more than that guess.
    private const decimal ShortBy = 1.05m;

    /// <summary>Hours short; 0 where there are enough.</summary>
    public decimal Short => Math.Max(0m, Hours - Own - Hired);

    /// <summary>True where more than a twentieth over the hours there are is needed.</summary>
    public bool IsShort => Hours > (Own + Hired) * ShortBy && Short > 0.5m;
}

/// <summary>A month of a plan's cash before a line of credit.</summary>
/// <param name="Month">Its first day.</param>
/// <param name="Sales">Sales after fees.</param>
/// <param name="Shares">Members' payments, as in the season before.</param>
/// <param name="OtherIncome">Other income, as in the season before.</param>
/// <param name="Supplies">Seed, supplies and packaging, when a planting is sown.</param>
/// <param name="Wages">Hired hours at what one costs.</param>
/// <param name="Running">Other running costs, as in the season before.</param>
public sealed record PlanMonth(
    DateOnly Month,
    decimal Sales,
    decimal Shares,
    decimal OtherIncome,
    decimal Supplies,
    decimal Wages,
    decimal Running
)
{
    /// <summary>Taxes, and what the household draws, as in the season before; above 0 where it goes out.</summary>
    public decimal Drawn { get; init; }

    /// <summary>What boxes lack of the season's value, bought in; above 0 where it goes out.</summary>
    public decimal BoughtIn { get; init; }

    /// <summary>
    /// What customers owe at the beginning, in the first month; below 0 in the last: as much is unpaid again then.
    /// </summary>
    public decimal Invoices { get; init; }

    /// <summary>What comes in less what goes out for the farm.</summary>
    public decimal Net => Sales + Shares + OtherIncome + Invoices - Supplies - BoughtIn - Wages - Running;

    /// <summary>What is left of it after taxes and what the household draws.</summary>
    public decimal Left => Net - Drawn;
}

/// <summary>Seed and supplies of a crop.</summary>
/// <param name="Crop">The crop.</param>
/// <param name="Sowings">How many sowings.</param>
/// <param name="BedFeet">Length of bed, at the standard width.</param>
/// <param name="Trays">Trays.</param>
/// <param name="First">The first day seed is needed.</param>
/// <param name="Cost">Money; null: a row of it says none.</param>
public sealed record SupplyNeed(string Crop, int Sowings, decimal BedFeet, decimal Trays, DateOnly First, decimal? Cost);

/// <summary>What a plan does: weeks, cash, what to buy, what won't work. From the rows of the plan tables, whoever wrote them.</summary>
public sealed partial class PlanOutlook
{
    private const decimal RoundingLeaves = 0.005m;
    private readonly SeasonReview season;
    private readonly PlanModel model;
    private readonly PlanDraft draft;
    private readonly DateOnly start;
    private readonly Dictionary<string, BedRow> beds;
    private readonly decimal[] boxed;

    private PlanOutlook(SeasonReview season, PlanModel model, PlanDraft draft)
    {
        (this.season, this.model, this.draft) = (season, model, draft);
        start = season.Settings.StartOf(model.CropYear);
        beds = season.Records.Tables.Beds.ToDictionary(bed => bed.Bed.Trim(), StringComparer.OrdinalIgnoreCase);
        boxed = FindBoxed();
        rowsWithoutHours = RowsWithoutHours();
        rowsWithoutCost = RowsWithoutCost();
        Weeks = FindWeeks();
        Months = FindMonths();
        Supplies =
        [
            .. draft
                .Plantings.Where(one => PaidOn(one) is not null)
                .GroupBy(one => one.Crop)
                .Select(crop => new SupplyNeed(
                    crop.Key,
                    crop.Where(one => !Stays(one)).Select(one => one.Planting).Distinct().Count(),
                    decimal.Round(crop.Sum(one => one.BedFeet * Width(one.Bed)), 2, MidpointRounding.AwayFromZero),
                    crop.Sum(one => one.Trays),
                    crop.Min(one => PaidOn(one)!.Value),
                    crop.Any(one => one.Cost is null) ? null : crop.Sum(one => one.Cost)
                ))
                .OrderBy(one => one.First)
                .ThenBy(one => one.Crop, StringComparer.Ordinal),
        ];
        standing = [.. StandingBeside()];
        Problems = [.. FindProblems().OrderBy(one => one.Day)];
    }

    /// <summary>The weeks.</summary>
    public IReadOnlyList<PlanWeek> Weeks { get; }

    /// <summary>The months.</summary>
    public IReadOnlyList<PlanMonth> Months { get; }

    /// <summary>What to buy, by the first day it is needed.</summary>
    public IReadOnlyList<SupplyNeed> Supplies { get; }

    /// <summary>What won't work.</summary>
    public IReadOnlyList<PlanProblem> Problems { get; }

    /// <summary>Why sales, and with them cash, aren't known: nothing that is sold has a price. Null where something has.</summary>
    public string? SalesUnknown => draft.Sales.Any(sale => sale.Price > 0m) ? null : NoPrices(season);

    /// <summary>Why no mix can be chosen: of nothing that was grown in a season is a price on record. Null where of something is.</summary>
    /// <param name="season">The season.</param>
    public static string? NoPrices(SeasonReview season)
    {
        ArgumentNullException.ThrowIfNull(season);
        return season.Crops.All(crop => crop.Known.Value is not null) ? season.Farm.Known.Value : null;
    }

    /// <summary>
    /// Sales and members' payments at which cash just comes out even over the year: running costs over the part of the money that varying
    /// costs and wages leave. Cost-volume-profit arithmetic: OpenStax, Principles of Accounting vol. 2. Not available where nothing is left
    /// of the money.
    /// </summary>
    public Result BreakEven
    {
        get
        {
            if (CostsUnknown is { } why)
            {
                return Result.NotAvailable(why);
            }

            decimal money = Months.Sum(month => month.Sales + month.Shares);
            CostVolumeProfit year = new(
                money,
                -Months.Sum(month => month.Supplies + month.BoughtIn + month.Wages),
                Months.Sum(month => month.Running) - Months.Sum(month => month.OtherIncome)
            );
            return year.YieldFor(1m, "what varies takes all of the sales").Map(part => part * money);
        }
    }

    /// <summary>Works out a plan's outlook.</summary>
    /// <param name="season">The season before.</param>
    /// <param name="model">The model of the year planned.</param>
    /// <param name="draft">The plan.</param>
    /// <returns>The outlook.</returns>
    public static PlanOutlook Of(SeasonReview season, PlanModel model, PlanDraft draft)
    {
        ArgumentNullException.ThrowIfNull(season);
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(draft);
        return new PlanOutlook(season, model, draft);
    }

    private int WeekOf(DateOnly day) => Math.Clamp((day.DayNumber - start.DayNumber) / 7, 0, PlanModel.Weeks - 1);

    private List<PlanWeek> FindWeeks()
    {
        double[] hours = [.. model.Hours.Fixed];
        decimal[] trays = new decimal[PlanModel.Weeks];
        double[] crates = new double[PlanModel.Weeks];
        foreach (DraftPlanting one in draft.Plantings)
        {
            AddPlanting(one, hours, trays, crates);
        }

        decimal[] sales = new decimal[PlanModel.Weeks];
        foreach ((DateOnly day, decimal money) in SalesByWeek())
        {
            sales[WeekOf(day)] += money;
        }

        return
        [
            .. Enumerable
                .Range(0, PlanModel.Weeks)
                .Select(week => new PlanWeek(
                    start.AddDays(7 * week),
                    Rounded(hours[week]),
                    Rounded(model.Hours.Own[week]),
                    Rounded(model.Hours.Hired[week]),
                    trays[week],
                    draft.Plantings.Any(HasSize) ? Rounded(crates[week]) : null,
                    sales[week]
                )),
        ];
    }

    private int PlaceOf(DraftPlanting one) =>
        Enumerable.Range(0, model.Crops.Count).FirstOrDefault(c => model.Crops[c].Name == one.Crop, -1);

    private int WeekIn(DraftPlanting one) => (int)Math.Floor((one.In.DayNumber - start.DayNumber) / 7.0);

    private PlanSowing? Nearest(DraftPlanting one)
    {
        int crop = PlaceOf(one), week = WeekIn(one);
        return model.Sowings.Where(sowing => sowing.Crop == crop).MinBy(sowing => Math.Abs(sowing.Week - week));
    }

    // A perennial that stands already.
    private bool Stays(DraftPlanting one) => one.In < start && season.Records.FindCrop(one.Crop) is { Perennial: true };

    /// <summary>
    /// The day a row's seed and supplies are needed: the day it is sown. A perennial that stands takes each year's when its picking begins;
    /// null for all else that stands from before: it was paid for then.
    /// </summary>
    private DateOnly? PaidOn(DraftPlanting one) =>
        Stays(one) ? start.AddDays(7 * (Nearest(one)?.PaidIn ?? 0))
        : one.In >= start ? one.Sown ?? one.In
        : null;

    /// <summary>
    /// A planting's hours fall as those of its crop's sowing nearest in time, so many as the row says, but those that fell before the year;
    /// a planting of a crop the model doesn't know, or knows no hours of, spreads them over its stay.
    /// </summary>
    private void AddPlanting(DraftPlanting one, double[] hours, decimal[] trays, double[] crates)
    {
        int week = WeekIn(one), crop = PlaceOf(one);
        PlanSowing? near = Nearest(one);
        AddTrays(one, trays);
        if (near is not null && one.CropYear > model.CropYear)
        {
            // Picked in the year after: only what it takes of this one.
            double feet = (double)(one.BedFeet * Width(one.Bed));
            for (int at = 0; at < PlanModel.Weeks; at++)
            {
                hours[at] += feet * near.Hours[at];
            }

            return;
        }

        double handling = crop < 0 ? 0.0 : model.Crops[crop].HandlingHours;
        double beside = near is null ? 0.0 : HoursBeside(one, near, handling);
        double[] pattern = near is null ? [] : [.. near.Hours.Select((grow, at) => grow + (near.Yield[at] * handling))];
        if (pattern.Sum() <= 0.0)
        {
            int first = Math.Clamp(week, 0, PlanModel.Weeks - 1), last = Math.Max(week, WeekOf(one.Out.AddDays(-1)));
            pattern = [.. Enumerable.Range(0, PlanModel.Weeks).Select(at => at >= first && at <= last ? 1.0 : 0.0)];
            beside = 0.0;
        }

        double all = pattern.Sum() + beside;
        double yields = near is null ? 0.0 : near.Yield.Sum() + (IsPickedAfter(one) ? near.LaterUnits : 0.0);
        double size = crop < 0 ? 0.0 : model.Crops[crop].UnitsPerCrate;
        for (int at = 0; at < PlanModel.Weeks; at++)
        {
            hours[at] += (double)(one.Hours ?? 0m) * pattern[at] / all;
            crates[at] += yields > 0.0 && size > 0.0 ? (double)one.Yield * near!.Yield[at] / yields / size : 0.0;
        }
    }

    // It stands past the end of the year.
    private bool IsPickedAfter(DraftPlanting one) => one.Out > season.Settings.EndOf(model.CropYear);

    /// <summary>Hours of a bed-foot of the nearest sowing that fall before the year, or after it.</summary>
    private double HoursBeside(DraftPlanting one, PlanSowing near, double handling) =>
        ((one.In < start && near.Standing.Count > 0) || IsPickedAfter(one) ? near.HoursBeside : 0.0)
        + (IsPickedAfter(one) ? near.LaterUnits * handling : 0.0);

    private void AddTrays(DraftPlanting one, decimal[] trays)
    {
        for (int at = 0, week = WeekIn(one); at < week && at < PlanModel.Weeks; at++)
        {
            trays[at] += one.Sown is { } sown && at >= WeekOf(sown) && sown < one.In ? one.Trays : 0m;
        }
    }

    private bool HasSize(DraftPlanting one) => model.Crops.Any(crop => Same(crop.Name, one.Crop) && crop.UnitsPerCrate > 0.0);

    private static IEnumerable<DateOnly> DaysOf(DraftSale sale) =>
        Enumerable.Range(0, sale.Weeks).Select(week => sale.From.AddDays(7 * week));

    // What is sold of a store in the year after brings its money then.
    private bool IsInYear(DateOnly day) => day >= start && day < season.Settings.EndOf(model.CropYear);

    private IEnumerable<(DateOnly Day, decimal Money)> SalesByWeek()
    {
        foreach (
            DraftSale sale in draft.Sales.Where(sale =>
                sale.CropYear == model.CropYear && !IsShare(sale)
            )
        )
        {
            decimal net = sale.Quantity * sale.Price * (1m - ((season.Records.Channel(sale.Channel).Row.FeePercent ?? 0m) / 100m));
            foreach (DateOnly day in DaysOf(sale).Where(IsInYear))
            {
                yield return (day, net / sale.Weeks);
            }
        }
    }

    /// <summary>
    /// What the boxes of a week lack of the value members are owed, at what it costs bought in: their payments are in the cash too. Less
    /// than half a percent is what rounding leaves.
    /// </summary>
    private decimal BoughtIn(int week)
    {
        decimal target = (decimal)model.BoxTarget[week];
        decimal lacks = target - boxed[week];
        return lacks > target * RoundingLeaves ? lacks * (decimal)model.BuyIn : 0m;
    }

    /// <summary>Value of the boxes by week, all shares together.</summary>
    private decimal[] FindBoxed()
    {
        decimal[] value = new decimal[PlanModel.Weeks];
        foreach (DraftSale sale in draft.Sales.Where(sale => sale.CropYear == model.CropYear && IsShare(sale)))
        {
            foreach (DateOnly day in DaysOf(sale).Where(IsInYear))
            {
                value[WeekOf(day)] += sale.Quantity * sale.Price / sale.Weeks;
            }
        }

        return value;
    }

    private bool IsShare(DraftSale sale) => season.Records.Channel(sale.Channel).Kind == ChannelKind.Share;

    private List<PlanMonth> FindMonths()
    {
        DateOnly[] months = [.. Enumerable.Range(0, SeasonCash.Months).Select(start.AddMonths)];
        int MonthOf(DateOnly day) => SeasonCash.MonthOf(start, day);
        decimal[][] lines = [.. Enumerable.Range(0, 9).Select(_ => new decimal[SeasonCash.Months])];
        foreach ((DateOnly day, decimal money) in SalesByWeek())
        {
            lines[0][MonthOf(day)] += money;
        }

        foreach ((bool isShare, DateOnly day, decimal money) in SeasonCash.Income(season))
        {
            lines[isShare ? 1 : 2][MonthOf(day.AddYears(1))] += money;
        }

        foreach (DraftPlanting one in draft.Plantings.Where(one => PaidOn(one) is not null))
        {
            lines[3][MonthOf(PaidOn(one)!.Value)] += one.Cost ?? 0m;
        }

        for (int week = 0; week < PlanModel.Weeks; week++)
        {
            lines[4][MonthOf(Weeks[week].From)] += Wages(Weeks[week]);
            lines[7][MonthOf(Weeks[week].From)] += BoughtIn(week);
        }

        foreach ((ExpenseClass of, DateOnly day, decimal money) in SeasonCash.Running(season))
        {
            lines[of is ExpenseClass.Tax or ExpenseClass.Personal ? 6 : 5][MonthOf(day.AddYears(1))] += money;
        }

        decimal unpaid = (decimal)(model.Cash?.Unpaid ?? 0.0);
        (lines[8][0], lines[8][^1]) = (unpaid, -unpaid);
        decimal At(int line, int month) => Money.Rounded(lines[line][month]).Amount;
        return
        [
            .. months.Select((month, i) => new PlanMonth(month, At(0, i), At(1, i), At(2, i), At(3, i), At(4, i), At(5, i))
            { Drawn = At(6, i), BoughtIn = At(7, i), Invoices = At(8, i) }),
        ];
    }

    private decimal Wages(PlanWeek week) =>
        HoursThere ? Math.Max(0m, week.Hours - week.Own) * (decimal)model.Hours.HiredCost : 0m;

    // Over the standard width.
    private decimal Width(string bed) =>
        beds.TryGetValue(bed.Trim(), out BedRow row) && row.WidthIn is { } width ? width / season.Settings.StandardBedWidthIn : 1m;

    private static decimal Rounded(double value) => decimal.Round((decimal)Math.Min(value, 1e12), 4, MidpointRounding.AwayFromZero);
}
