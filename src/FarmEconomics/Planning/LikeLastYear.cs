using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tracing;

namespace FarmEconomics.Planning;

/// <summary>
/// A plan that repeats a season: its plantings a year later, at the yield expected of their week and cover, and what was sold of each crop
/// by channel and week, in proportion to the yield expected, at the season's prices; boxes first, as they were: members have paid for them.
/// Needs no solver.
/// </summary>
public static class LikeLastYear
{
    /// <summary>Makes the plan.</summary>
    /// <param name="season">The season.</param>
    /// <param name="model">The model of the year after it.</param>
    /// <returns>The plan.</returns>
    public static PlanDraft Of(SeasonReview season, PlanModel model)
    {
        ArgumentNullException.ThrowIfNull(season);
        ArgumentNullException.ThrowIfNull(model);
        double[] feet = [.. model.Sowings.Select(sowing => sowing.Standing.Count > 0 ? sowing.Bounds.Least : sowing.Today)];
        double[] expected = new double[model.Crops.Count];
        Dictionary<(int Crop, int Week), double> picked = [];
        for (int i = 0; i < feet.Length; i++)
        {
            for (int week = 0; week < PlanModel.Weeks; week++)
            {
                double units = feet[i] * model.Sowings[i].Yield[week];
                expected[model.Sowings[i].Crop] += units;
                picked[(model.Sowings[i].Crop, week)] = picked.GetValueOrDefault((model.Sowings[i].Crop, week)) + units;
            }
        }

        return DraftMaker.Of(season.Records, model, feet, PlanQuantities.OfSales(picked, Sales(season, model, expected)));
    }

    private static IEnumerable<PlannedSale> Sales(SeasonReview season, PlanModel model, double[] expected)
    {
        for (int c = 0; c < model.Crops.Count; c++)
        {
            Crop crop = season.Records.Crop(model.Crops[c].Name);
            double harvested = (double)season.LotsOf(crop).Sum(lot => lot.Quantity);

            // What was sold without a harvest on record says nothing of a harvest to come.
            double factor = harvested > 0.0 ? expected[c] / harvested : 0.0;
            (double boxes, double others) = Factors(season, crop, factor);
            foreach (IGrouping<(Channel Channel, int Week), DispositionPart> sold in season.PartsOf(crop)
                .Where(IsSold)
                .GroupBy(part => (part.Disposition.Channel, WorkFacts.WeekOf(season.Settings, part.Disposition.Date))))
            {
                double units = (double)sold.Sum(part => part.Quantity);
                double money = (double)
                    sold.Sum(part => sold.Key.Channel.Kind == ChannelKind.Share ? part.ListValue.Amount : part.Amount.Amount);

                // Rows of a plan name no fee.
                yield return new PlannedSale(
                    c,
                    sold.Key.Week,
                    sold.Key.Channel.Name,
                    units * (sold.Key.Channel.Kind == ChannelKind.Share ? boxes : others),
                    money / units,
                    Fee: 0.0
                );
            }
        }
    }

    /// <summary>
    /// How much more or less goes into boxes and elsewhere, where all that was sold times a factor is to be sold: boxes as before, as far
    /// as it goes, and the rest elsewhere.
    /// </summary>
    private static (double Boxes, double Others) Factors(SeasonReview season, Crop crop, double factor)
    {
        double boxed = 0.0, other = 0.0;
        foreach (DispositionPart part in season.PartsOf(crop).Where(IsSold))
        {
            (boxed, other) = part.Disposition.Channel.Kind == ChannelKind.Share
                ? (boxed + (double)part.Quantity, other)
                : (boxed, other + (double)part.Quantity);
        }

        double all = (boxed + other) * factor;
        double boxes = boxed > 0.0 ? Math.Min(1.0, all / boxed) : 0.0;
        return (boxes, other > 0.0 ? Math.Max(0.0, all - (boxes * boxed)) / other : 0.0);
    }

    private static bool IsSold(DispositionPart part) =>
        part.Enterprise is not null && part.Disposition.Channel.IsSold && part.Quantity > 0m;
}
