using FarmEconomics.Pricing;
using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Recount.Tests;

/// <summary>Holds what the boxes of a share held and cost, and what a share must cost, against the recount.</summary>
internal static class SharePriceComparison
{
    // The same as in Sql/Apart/shares.sql.
    private static readonly (string Name, ShareTerms Terms)[] Terms =
    [
        (
            "by price",
            new ShareTerms
            {
                Price = 640m,
                HalfMembers = 7m,
                HalfContents = 0.6m,
                WantedMarginPercent = 12m,
                FewerMembersPercent = 15m,
                BadWeekPercent = 40m,
                EarlyDiscountPercent = 6m,
                EarlyMembers = 0.3m,
                MonthsEarlier = 5m,
            }
        ),
        ("by members", new ShareTerms { Members = 41m, InterestPercent = 7.25m }),
    ];

    /// <summary>How many known figures were compared, and those that differ.</summary>
    internal static (int Compared, List<string> Differences) Of(Reviewed reviewed, Recount recount)
    {
        recount.RunApart("shares");
        List<string> differences = [];
        int compared = 0;
        foreach (int year in reviewed.Years)
        {
            Dictionary<string, Dictionary<string, object?>> recounted = recount
                .Table("share_prices_result", year)
                .Concat(recount.Table("share_weeks_result", year))
                .ToDictionary(row => Name(row["channel"], row["terms"], row.GetValueOrDefault("week")));
            foreach ((string name, Dictionary<string, Result> theirs) in Program(reviewed, year))
            {
                if (!recounted.Remove(name, out Dictionary<string, object?>? row))
                {
                    differences.Add($"{year} {name}: not in the recount");
                    continue;
                }

                foreach ((string column, Result figure) in theirs)
                {
                    double? ours = row[column] is { } value
                        ? Convert.ToDouble(value, System.Globalization.CultureInfo.InvariantCulture)
                        : null;
                    compared += ours is null ? 0 : 1;
                    if (
                        ours is null != figure.Value is null
                        || Math.Abs((double)(figure.Value ?? 0m) - (ours ?? 0.0)) > 1e-6 * Math.Max(1.0, Math.Abs(ours ?? 0.0))
                    )
                    {
                        differences.Add(FormattableString.Invariant($"{year} {name} {column}: {figure} / {ours}"));
                    }
                }
            }

            differences.AddRange(recounted.Keys.Select(name => $"{year} {name}: only in the recount"));
        }

        return (compared, differences);
    }

    private static string Name(object? channel, object? terms, object? week) => $"{channel}, {terms}, week {week}";

    private static IEnumerable<(string Name, Dictionary<string, Result> Figures)> Program(Reviewed reviewed, int year)
    {
        PriceBook book = PriceBook.Of(reviewed.Review, year);
        foreach (Channel channel in reviewed.Review.Records.Channels.Where(channel => channel.Kind == ChannelKind.Share))
        {
            ShareContents contents = ShareContents.Recorded(book, channel);
            foreach ((string name, ShareTerms terms) in Terms.Where(_ => contents.Weeks.Count > 0))
            {
                SharePricing prices = SharePricing.Of(book, contents, terms);
                yield return (Name(channel.Name, name, null), Season(contents, prices));
                foreach (ShareWeek week in contents.Weeks)
                {
                    yield return (
                        Name(channel.Name, name, week.Number),
                        new()
                        {
                            ["list_value"] = Result.Known(week.ListValue.Amount),
                            ["cost"] = week.Cost,
                            ["box_value"] = prices.BoxValue(week),
                            ["box_cost"] = prices.BoxCost(week),
                        }
                    );
                }
            }
        }
    }

    private static Dictionary<string, Result> Season(ShareContents contents, SharePricing prices) =>
        new()
        {
            ["list_value"] = Result.Known(contents.ListValue.Amount),
            ["income"] = Result.Known(contents.Income.Amount),
            ["fees"] = Result.Known(contents.Fees.Amount),
            ["cost"] = contents.Cost,
            ["value_over_price"] = contents.ValueOverPrice,
            ["handling"] = prices.Handling,
            ["total_cost"] = prices.TotalCost,
            ["full_boxes"] = prices.FullBoxes,
            ["price_paid"] = prices.PricePaid,
            ["contents_cost"] = prices.ContentsCost,
            ["handling_per_box"] = prices.HandlingPerBox,
            ["cost_price"] = prices.CostPrice,
            ["target_price"] = prices.TargetPrice,
            ["half_cost_price"] = prices.HalfCostPrice,
            ["half_target_price"] = prices.HalfTargetPrice,
            ["price_for_55"] = prices.PriceFor(55m),
            ["members_at_900"] = prices.MembersToCover(900m),
            ["members_grown_at_900"] = prices.MembersToCoverGrown(900m),
            ["income_to_cover"] = prices.IncomeToCover,
            ["income_for_target"] = prices.IncomeForTarget,
            ["net_return"] = prices.NetReturn,
            ["fewer_change"] = prices.FewerMembersChange,
            ["fewer_value_over_price"] = prices.FewerMembersValueOverPrice,
            ["fewer_price"] = prices.FewerMembersPrice,
            ["bad_week_value"] = prices.BadWeekValue,
            ["bad_week_value_over_price"] = prices.BadWeekValueOverPrice,
            ["highest_discount"] = prices.HighestEarlyDiscountPercent,
            ["price_with_discount"] = prices.PriceWithEarlyDiscount,
        };
}
