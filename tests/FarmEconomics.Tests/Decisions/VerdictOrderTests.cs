using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions;

/// <summary>In which order verdicts stand.</summary>
public class VerdictOrderTests
{
    /// <summary>
    /// 100 ft of each, as long: kale earns 400 - 30, beans 100 - 30, peas 20 - 90. Chard cost 30 and no row tells where it went: that
    /// isn't a loss of 30, so it stands below peas.
    /// </summary>
    [Fact]
    public void Crops_StandByNetReturnPerBedFootWeek_AndWhatIsUnknownLast()
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 0m })
            .AsOf("2025-12-31")
            .Channel("stall", ChannelKind.Market)
            .Worker("me", WorkerKind.Owner);
        (string Crop, decimal Sold, decimal Seed)[] crops =
            [("Peas", 20m, 90m), ("Chard", 0m, 30m), ("Beans", 100m, 30m), ("Kale", 400m, 30m)];
        foreach ((string crop, decimal sold, decimal seed) in crops)
        {
            farm.Bed(crop)
                .Crop(crop, storageDays: 7m)
                .Price(crop, 1m)
                .Planting(crop, crop, crop, 100m, "2025-05-01", "2025-08-01")
                .Pick("2025-07-01", crop, 400m)
                .Work("2025-07-01", "me", 0.01m, "harvest", crop: crop)
                .Spend("2025-05-01", seed, "seed", crop: crop);
            if (sold > 0m)
            {
                farm.Sell("2025-07-02", crop, "stall", sold, price: 1m);
            }
        }

        FarmReview review = farm.Review();
        Verdicts verdicts = Verdicts.Of(review, SeasonCosts.Of(review.Season(2025)));
        Assert.Equal(["Kale", "Beans", "Peas", "Chard"], verdicts.Crops.Select(verdict => verdict.Budget.Name));
    }
}
