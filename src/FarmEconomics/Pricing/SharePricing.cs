using FarmEconomics.Budgets;
using FarmEconomics.Units;

namespace FarmEconomics.Pricing;

/// <summary>
/// What a share must cost. A full box costs g to fill over the season; handling (the channel's own cost) is H. With N full boxes' worth of
/// contents in B boxes: price of a full share = (g + H / B) / (1 - fee - margin). Members to cover cost at price p = H / (p (1 - fee) - g)
/// while contents grow with members; once the season is grown, all cost / (p (1 - fee)). Source: cost-volume-profit arithmetic (OpenStax,
/// Principles of Accounting vol. 2, break-even chapter).
/// </summary>
public sealed class SharePricing
{
    private readonly ShareTerms terms;
    private readonly string? boxesMissing;
    private readonly decimal equivalents;
    private readonly decimal boxes;
    private readonly decimal feePercent;
    private readonly Result goods;

    private SharePricing(PriceBook book, ShareContents contents, ShareTerms terms)
    {
        terms.Check();
        this.terms = terms;
        Contents = contents;
        feePercent = contents.Channel.Row.FeePercent ?? 0m;
        decimal? full = terms.Members ?? (terms.Price is { } price && contents.Income.Amount > 0m
            ? (contents.Income.Amount / price) - (terms.HalfMembers * terms.HalfContents)
            : null);
        boxesMissing = contents.Weeks.Count == 0 ? $"nothing went out through {contents.Channel.Name} in {contents.CropYear}"
            : full is null ? "the records don't say how many boxes went out: give the number of members, or the price of a share"
            : full < 0m ? "the half boxes alone hold more than the income pays for at that price: give the number of members"
            : full <= 0m && terms.HalfMembers <= 0m ? "no members"
            : null;
        boxes = (full ?? 0m) + terms.HalfMembers;
        equivalents = (full ?? 0m) + (terms.HalfMembers * terms.HalfContents);
        PoolResult pool = book.Season.Pools.First(item => item.Pool.Channel == contents.Channel);
        Handling = book.Rules.FullMissing is { } missing ? Result.NotAvailable(missing) : Result.Known(pool.Total.Amount);
        goods = contents.Cost;
        Interest = (terms.InterestPercent ?? book.Review.Records.Settings.InterestPercent) is { } interest
            ? Result.Known(interest)
            : Result.NotAvailable("no interest_percent among the settings");
    }

    /// <summary>What the boxes held.</summary>
    public ShareContents Contents { get; }

    /// <summary>The channel's own cost over the season: boxes, driving, hours handing out.</summary>
    public Result Handling { get; }

    /// <summary>Cost of money in percent a year.</summary>
    public Result Interest { get; }

    /// <summary>Full boxes' worth of members; half boxes count by their contents.</summary>
    public Result FullBoxes => boxesMissing is null ? Result.Known(equivalents) : Result.NotAvailable(boxesMissing);

    /// <summary>What a full share costs now: the given price, else income over full boxes.</summary>
    public Result PricePaid => terms.Price is { } price ? Result.Known(price)
        : boxesMissing is not null ? Result.NotAvailable(boxesMissing)
        : Contents.Income.Amount > 0m ? Result.Known(Contents.Income.Amount / equivalents)
        : Result.NotAvailable($"no income of {Contents.Channel.Name} in {Contents.CropYear}");

    /// <summary>All cost of the share: contents and handling, fees left out.</summary>
    public Result TotalCost => goods.Combine(Handling, (a, b) => a + b);

    /// <summary>What the contents of one full box cost over the season.</summary>
    public Result ContentsCost => goods.Combine(FullBoxes, (cost, count) => cost / count);

    /// <summary>What handling one box costs over the season, full or half.</summary>
    public Result HandlingPerBox =>
        boxesMissing is null ? Handling.Combine(Result.Known(boxes), (cost, count) => cost / count) : Result.NotAvailable(boxesMissing);

    /// <summary>List value of one full box in a week.</summary>
    /// <param name="week">One of the weeks.</param>
    /// <returns>Money.</returns>
    public Result BoxValue(ShareWeek week)
    {
        ArgumentNullException.ThrowIfNull(week);
        return week.NoListValue is { } why ? Result.NotAvailable(why)
            : Result.Known(week.ListValue.Amount).Combine(FullBoxes, (value, count) => value / count);
    }

    /// <summary>Cost of one full box in a week: its contents and its week's part of handling.</summary>
    /// <param name="week">One of the weeks.</param>
    /// <returns>Money.</returns>
    public Result BoxCost(ShareWeek week)
    {
        ArgumentNullException.ThrowIfNull(week);
        return week
            .Cost.Combine(FullBoxes, (cost, count) => cost / count)
            .Combine(HandlingPerBox, (cost, handling) => cost + (handling / Contents.Weeks.Count));
    }

    /// <summary>Price of a full share that covers cost.</summary>
    public Result CostPrice => BoxPrice(1m, 0m);

    /// <summary>Price of a full share that gives the wanted margin.</summary>
    public Result TargetPrice => BoxPrice(1m, terms.WantedMarginPercent);

    /// <summary>Price of a half share that covers cost: half the contents, but a whole box to pack and hand out.</summary>
    public Result HalfCostPrice => BoxPrice(terms.HalfContents, 0m);

    /// <summary>Price of a half share that gives the wanted margin.</summary>
    public Result HalfTargetPrice => BoxPrice(terms.HalfContents, terms.WantedMarginPercent);

    /// <summary>Price of a full share for another number of members, all with full boxes that hold the same.</summary>
    /// <param name="members">Members, above 0.</param>
    /// <param name="marginPercent">Wanted margin in percent of the price; null: that of the terms.</param>
    /// <returns>Money per share and season.</returns>
    public Result PriceFor(decimal members, decimal? marginPercent = null)
    {
        PriceTerms.Require(members > 0m, nameof(members), "Members are above 0.");
        return PriceMath.GrossUp(
            ContentsCost.Combine(Handling, (box, all) => box + (all / members)),
            feePercent,
            marginPercent ?? terms.WantedMarginPercent
        );
    }

    /// <summary>Members that cover cost while contents grow with members; a whole number.</summary>
    /// <param name="price">Price of a full share.</param>
    /// <returns>Members, or why no number of them would do.</returns>
    public Result MembersToCover(decimal price)
    {
        Result left = ContentsCost.Map(box => Kept(price) - box);
        return left.Value is <= 0m
            ? Result.NotAvailable("what a box holds costs more than its price leaves: more members only lose more")
            : Handling.Combine(left, (all, perMember) => PriceMath.Ceiling(all / perMember));
    }

    /// <summary>Members that cover the season's cost once the season is grown; a whole number.</summary>
    /// <param name="price">Price of a full share, above 0.</param>
    /// <returns>Members.</returns>
    public Result MembersToCoverGrown(decimal price) =>
        TotalCost.Value is { } cost
            ? Kept(price) > 0m
                ? Result.Known(PriceMath.Ceiling(cost / Kept(price)))
                : Result.NotAvailable("the channel's fee takes the whole price")
            : TotalCost;

    /// <summary>What all members together must pay to cover cost; known without knowing how many they are.</summary>
    public Result IncomeToCover => PriceMath.GrossUp(TotalCost, feePercent);

    /// <summary>What all members together must pay to leave the wanted margin.</summary>
    public Result IncomeForTarget => PriceMath.GrossUp(TotalCost, feePercent, terms.WantedMarginPercent);

    /// <summary>What members paid less fees and all cost.</summary>
    public Result NetReturn => Contents.Planned ? Result.NotAvailable("a plan has no income yet")
        : TotalCost.Map(cost => (Contents.Income - Contents.Fees).Amount - cost);

    /// <summary>Change in money when that percent of members stays away and the season is grown all the same; negative.</summary>
    public Result FewerMembersChange => Contents.Planned ? Result.NotAvailable("a plan has no income yet")
        : Result.Known(-(Contents.Income - Contents.Fees).Amount * terms.FewerMembersPercent / 100m);

    /// <summary>What the others' boxes are worth over what they pay, when they share what was grown for those who stayed away.</summary>
    public Result FewerMembersValueOverPrice => Contents.ValueOverPrice.Map(ratio => ratio / (1m - (terms.FewerMembersPercent / 100m)));

    /// <summary>The price that would bring the same income from the members that are left.</summary>
    public Result FewerMembersPrice => PricePaid.Map(price => price / (1m - (terms.FewerMembersPercent / 100m)));

    /// <summary>List value missing from all boxes in a bad week: that percent of an average week.</summary>
    public Result BadWeekValue => Contents.Weeks.Count == 0
        ? Result.NotAvailable($"nothing went out through {Contents.Channel.Name} in {Contents.CropYear}")
        : Contents.NoListValue is { } why ? Result.NotAvailable(why)
        : Result.Known(Contents.ListValue.Amount / Contents.Weeks.Count * terms.BadWeekPercent / 100m);

    /// <summary>Value over price for the season after one bad week that nothing makes up for.</summary>
    public Result BadWeekValueOverPrice => Contents.ValueOverPrice.Value is { } ratio && Contents.Weeks.Count > 0
        ? Result.Known(ratio * (1m - (terms.BadWeekPercent / 100m / Contents.Weeks.Count)))
        : Contents.Weeks.Count == 0 ? BadWeekValue : Contents.ValueOverPrice;

    /// <summary>
    /// The highest discount for paying early, in percent, that costs no more than borrowing the money: 1 - 1 / (1 + i x months / 12).
    /// </summary>
    public Result HighestEarlyDiscountPercent =>
        Interest.Map(interest => 100m * (1m - (1m / (1m + (interest / 100m * terms.MonthsEarlier / 12m)))));

    /// <summary>The full price at which the early discount leaves the income as it is: price / (1 - discount x part of members).</summary>
    public Result PriceWithEarlyDiscount => PricePaid.Map(price => price / (1m - (terms.EarlyDiscountPercent / 100m * terms.EarlyMembers)));

    /// <summary>Prices a share.</summary>
    /// <param name="book">The year's prices.</param>
    /// <param name="contents">What the boxes held or are to hold.</param>
    /// <param name="terms">What the records don't tell.</param>
    /// <returns>The prices; figures that can't be told say why.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A term is out of its range.</exception>
    public static SharePricing Of(PriceBook book, ShareContents contents, ShareTerms terms)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(contents);
        ArgumentNullException.ThrowIfNull(terms);
        return new SharePricing(book, contents, terms);
    }

    private decimal Kept(decimal price) => price * (1m - (feePercent / 100m));

    private Result BoxPrice(decimal contents, decimal marginPercent) =>
        PriceMath.GrossUp(ContentsCost.Combine(HandlingPerBox, (box, handling) => (contents * box) + handling), feePercent, marginPercent);
}
