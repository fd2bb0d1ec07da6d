using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Records.Reading;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Pricing;

/// <summary>One crop in one week's boxes, all boxes together.</summary>
/// <param name="Crop">The crop.</param>
/// <param name="Quantity">Quantity in the crop's unit.</param>
/// <param name="ListValue">At list price.</param>
/// <param name="Income">Its part of the share income, by list value (relative sales value); 0 in a plan.</param>
/// <param name="Cost">Production cost, or why it isn't known.</param>
public sealed record ShareItem(Crop Crop, decimal Quantity, Money ListValue, Money Income, Result Cost)
{
    /// <summary>True where a part of it has no price on record and stands in the list value with 0.</summary>
    internal bool ListValueIncomplete { get; init; }

    /// <summary>Why its list value isn't known; null where it is.</summary>
    internal string? NoListValue => ShareContents.NoListValueOf([this]);
}

/// <summary>One week of boxes; weeks count in sevens of days from the first delivery.</summary>
/// <param name="Number">The week, from 1.</param>
/// <param name="First">The week's first day; null in a plan without dates.</param>
/// <param name="Items">What was in the boxes.</param>
public sealed record ShareWeek(int Number, DateOnly? First, IReadOnlyList<ShareItem> Items)
{
    /// <summary>List value of all boxes.</summary>
    public Money ListValue => Money.Sum(Items.Select(item => item.ListValue));

    /// <summary>Production cost of all boxes.</summary>
    public Result Cost => ShareContents.Total(Items.Select(item => item.Cost));

    /// <summary>Why its list value isn't known; null where it is.</summary>
    internal string? NoListValue => ShareContents.NoListValueOf(Items);
}

/// <summary>A line of a plan: what one full box is to hold in a week.</summary>
/// <param name="Week">The week, from 1.</param>
/// <param name="Crop">The crop's name.</param>
/// <param name="Quantity">Quantity in one full box, above 0.</param>
/// <param name="Unit">Its unit; null: the crop's own.</param>
public sealed record PlannedItem(int Week, string Crop, decimal Quantity, string? Unit = null);

/// <summary>What a share's boxes held over a season, from the records, or are to hold, from a plan.</summary>
/// <param name="Channel">The share channel.</param>
/// <param name="CropYear">The crop year in whose twelve months the boxes go out.</param>
/// <param name="Weeks">The weeks with boxes.</param>
/// <param name="Income">What members paid for the season; zero in a plan.</param>
/// <param name="Fees">The channel's fees.</param>
/// <param name="Planned">True when the contents come from a plan.</param>
public sealed record ShareContents(Channel Channel, int CropYear, IReadOnlyList<ShareWeek> Weeks, Money Income, Money Fees, bool Planned)
{
    /// <summary>List value over the season.</summary>
    public Money ListValue => Money.Sum(Weeks.Select(week => week.ListValue));

    /// <summary>Production cost over the season.</summary>
    public Result Cost => Total(Weeks.Select(week => week.Cost));

    /// <summary>Why list value over the season isn't known; null where it is.</summary>
    internal string? NoListValue => NoListValueOf(Weeks.SelectMany(week => week.Items));

    /// <summary>List value over what members paid, over the season; above 1 they got more than they paid for.</summary>
    public Result ValueOverPrice => Part(NoListValue, ListValue.Amount);

    private Result Part(string? unknown, decimal listValue) => unknown is { } why ? Result.NotAvailable(why)
        : Result.Of(listValue, Income.Amount, $"no income of {Channel.Name} in {CropYear}");

    /// <summary>The season's boxes crop by crop, largest list value first.</summary>
    public IReadOnlyList<ShareItem> ByCrop =>
        Weeks
            .SelectMany(week => week.Items)
            .GroupBy(item => item.Crop)
            .Select(group => new ShareItem(
                group.Key,
                group.Sum(item => item.Quantity),
                Money.Sum(group.Select(item => item.ListValue)),
                Money.Sum(group.Select(item => item.Income)),
                Total(group.Select(item => item.Cost))
            )
            { ListValueIncomplete = group.Any(item => item.ListValueIncomplete) })
            .OrderByDescending(item => item.ListValue.Amount)
            .ThenBy(item => item.Crop.Index)
            .ToList();

    /// <summary>List value of a week over that week's part of the payments (the season's, in equal parts by week).</summary>
    /// <param name="week">One of the weeks.</param>
    /// <returns>The quotient.</returns>
    public Result ValueOverPriceIn(ShareWeek week)
    {
        ArgumentNullException.ThrowIfNull(week);
        return Part(week.NoListValue, week.ListValue.Amount * Weeks.Count);
    }

    /// <summary>What the records say went into the boxes between the first and the last day of a crop year.</summary>
    /// <param name="book">The year's prices.</param>
    /// <param name="channel">The share channel.</param>
    /// <returns>The contents; no weeks when nothing went out.</returns>
    public static ShareContents Recorded(PriceBook book, Channel channel)
    {
        ArgumentNullException.ThrowIfNull(book);
        RequireShare(channel);
        int year = book.Season.CropYear;
        List<Disposition> dispositions = book.Season.Dispositions.Where(disposition => disposition.Channel == channel).ToList();
        Money income = book.Season.Trace.ShareIncome.GetValueOrDefault((channel, year));
        Money fees = Money.Sum(dispositions.Select(disposition => disposition.Fee));
        if (dispositions.Count == 0)
        {
            return new ShareContents(channel, year, [], income, fees, Planned: false);
        }

        DateOnly first = dispositions.Min(disposition => disposition.Row.Date);
        BoxCosts costs = new(book);
        List<ShareWeek> weeks = dispositions
            .GroupBy(disposition => (disposition.Row.Date.DayNumber - first.DayNumber) / 7)
            .OrderBy(week => week.Key)
            .Select(week => new ShareWeek(week.Key + 1, first.AddDays(7 * week.Key), Items(week, costs)))
            .ToList();
        return new ShareContents(channel, year, weeks, income, fees, Planned: false);
    }

    /// <summary>What a plan puts into the boxes, at the year's list prices and production cost.</summary>
    /// <param name="book">The year's prices.</param>
    /// <param name="channel">The share channel.</param>
    /// <param name="plan">What one full box holds, week by week.</param>
    /// <param name="fullBoxes">How many full boxes' worth go out each week, above 0.</param>
    /// <param name="day">The day list prices are taken of; null: the last day of the crop year.</param>
    /// <returns>The contents.</returns>
    /// <exception cref="ArgumentException">The plan names a crop or unit that isn't known, or a quantity not above 0.</exception>
    public static ShareContents FromPlan(
        PriceBook book,
        Channel channel,
        IEnumerable<PlannedItem> plan,
        decimal fullBoxes,
        DateOnly? day = null
    )
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(plan);
        RequireShare(channel);
        PriceTerms.Require(fullBoxes > 0m, nameof(fullBoxes), "Boxes are above 0.");
        BoxCosts costs = new(book);
        DateOnly priced = day ?? book.Review.Records.Settings.EndOf(book.Season.CropYear).AddDays(-1);
        List<ShareWeek> weeks = plan.GroupBy(item => item.Week)
            .OrderBy(week => week.Key)
            .Select(week => new ShareWeek(
                week.Key,
                null,
                week.Select(item => Planned1(book, channel, item, fullBoxes, priced, costs)).ToList()
            ))
            .ToList();
        return new ShareContents(channel, book.Season.CropYear, weeks, Money.Zero, Money.Zero, Planned: true);
    }

    internal static string? NoListValueOf(IEnumerable<ShareItem> items)
    {
        List<string> crops = [.. items.Where(item => item.ListValueIncomplete).Select(item => item.Crop.Name).Distinct()];
        return crops.Count > 0 ? Availability.NoPriceOf(crops) : null;
    }

    internal static Result Total(IEnumerable<Result> rates)
    {
        decimal sum = 0m;
        foreach (Result rate in rates)
        {
            if (rate.Value is not { } value)
            {
                return rate;
            }

            sum += value;
        }

        return Result.Known(sum);
    }

    private static List<ShareItem> Items(IEnumerable<Disposition> dispositions, BoxCosts costs) =>
        dispositions
            .GroupBy(disposition => disposition.Crop)
            .OrderBy(crop => crop.Key.Index)
            .Select(crop => new ShareItem(
                crop.Key,
                crop.Sum(disposition => disposition.Quantity),
                Money.Sum(crop.Select(disposition => disposition.ListValue)),
                Money.Sum(crop.Select(disposition => disposition.Amount)),
                Total(
                    crop.SelectMany(disposition => disposition.Parts)
                        .Select(part => costs.Of(crop.Key, part.Enterprise?.CropYear, part.Quantity))
                )
            )
            { ListValueIncomplete = crop.Any(disposition => disposition.ValueIncomplete) })
            .ToList();

    private static ShareItem Planned1(PriceBook book, Channel channel, PlannedItem item, decimal boxes, DateOnly day, BoxCosts costs)
    {
        Crop crop = book.Review.Records.FindCrop(item.Crop)
            ?? throw new ArgumentException($"Week {item.Week} of the plan names the crop '{item.Crop}', which the crops table doesn't hold"
                + (NearestName.Find(item.Crop, book.Review.Records.Crops.Select(known => known.Name)) is { } nearest
                    ? $"; did you mean {nearest}?"
                    : "."));
        if (item.Quantity <= 0m || (item.Unit is { } unit && !crop.Units.ContainsKey(unit.Trim())))
        {
            throw new ArgumentException(book.Season.Notation.Text($"Week {item.Week} of the plan: "
                + $"{item.Quantity} {item.Unit} of {crop.Name}; a quantity is above 0, in a unit the crop has."));
        }

        decimal quantity = crop.ToBase(item.Quantity, item.Unit) * boxes;
        (decimal amount, decimal units) = book.Season.Trace.Valuer.Prices.Of(crop, channel, day)
            ?? throw new ArgumentException(
                $"{crop.Name} has no list price and was never sold for one: give it a row in the prices table before planning with it."
            );
        Money listed = ((Fraction)quantity * amount / units).ToMoney();
        return new ShareItem(crop, quantity, listed, Money.Zero, costs.Of(crop, book.Season.CropYear, quantity));
    }

    private static void RequireShare(Channel channel)
    {
        ArgumentNullException.ThrowIfNull(channel);
        if (channel.Kind != ChannelKind.Share)
        {
            throw new ArgumentException(
                $"{channel.Name} is a channel of kind {channel.Kind.ToString().ToLowerInvariant()}, not a share.",
                nameof(channel)
            );
        }
    }
}

/// <summary>
/// Production cost of what is in the boxes, from the crop year each lot belongs to: January's carrots are last year's crop.
/// </summary>
internal sealed class BoxCosts(PriceBook book)
{
    private readonly Dictionary<int, (PriceRules Rules, Dictionary<Crop, CropCost> Costs)> years = new()
    {
        [book.Season.CropYear] = (book.Rules, book.Costs.ToDictionary(cost => cost.Crop)),
    };

    internal Result Of(Crop crop, int? year, decimal quantity)
    {
        if (year is not { } cropYear)
        {
            return Result.NotAvailable($"some {crop.Name} in the boxes belongs to no planting");
        }

        if (!years.TryGetValue(cropYear, out (PriceRules Rules, Dictionary<Crop, CropCost> Costs) known))
        {
            years[cropYear] = known = (
                new PriceRules(book.Review.Season(cropYear), book.Rules.Terms),
                CropCost.Of(book.Review, cropYear).ToDictionary(cost => cost.Crop));
        }

        return (
                known.Rules.FullMissing
                ?? known.Costs.GetValueOrDefault(crop)?.Budget.Known.Value
                ?? known.Costs.GetValueOrDefault(crop)?.Budget.Known.Establishment
            )
                is { } reason
                ? Result.NotAvailable(reason)
            : known.Costs.GetValueOrDefault(crop)?.PerUnit() is { } unit ? Result.Known(unit.Full * quantity)
            : Result.NotAvailable($"no {crop.Name} of {cropYear} was sold: no unit to spread its cost over");
    }
}
