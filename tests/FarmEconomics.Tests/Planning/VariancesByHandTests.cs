using FarmEconomics.Planning.Variances;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// The carrots of <see cref="PlanByHandTests"/> beside a plan for 2025, by hand (docs/methods.md, section 20): 100 feet planned for 250 lb,
/// 20 hours and 40 of seed, sold at 2 less 10% over two weeks from July 10; 200 lb, 15 hours at 15 and 30 of seed came of it.
/// </summary>
public class VariancesByHandTests
{
    /// <summary>
    /// No hours of 2024: an hour is planned at what one cost in 2025, 22 own hours at 15 and a guest's 8, 330 / 30 = 11. Planned 450 - 220
    /// - 40 = 190; came 360 - 225 - 30 = 105. A fifth less yield: 360 - 16 x 11 - 40 = 144, -46. An hour less: +11. 15 hours at 4 more:
    /// -60. Seed +10.
    /// </summary>
    [Fact]
    public void Parts_OfAWholeSeason_AreThoseWorkedOnPaper()
    {
        PlanVariances variances = PlanVariances.Of(Farm().Season(2025))!;
        CropVariance carrots = Assert.Single(variances.Crops);
        Assert.Equal((190m, 105m, -85m), (carrots.Planned.Amount, carrots.Actual.Amount, carrots.Difference.Amount));
        Assert.Equal(
            [(VarianceKind.Yield, -46m), (VarianceKind.Hours, 11m), (VarianceKind.Wage, -60m), (VarianceKind.Spending, 10m)],
            carrots.Parts.Where(part => part.Value.Amount != 0m).Select(part => (part.Key, part.Value.Amount))
        );
        Assert.Equal(
            (190m, 105m, 190m, 105m),
            (variances.Planned.Amount, variances.Actual.Amount, variances.YearPlanned.Amount, variances.Outlook.Amount)
        );
        Assert.Equal((false, new DateOnly(2025, 12, 31)), (variances.IsPartOfYear, variances.UpTo));
        Assert.Equal(-46m, variances.Of(VarianceKind.Yield).Amount);
    }

    /// <summary>
    /// Closed on July 15: 75 of 91 days grown, 5 of 14 days sold. An hour at 18 x 15 / 26. Planned up to then 450 x 5/14 - 20 x 75/91 x
    /// 10.3846 - 40 = -50.46; in the year 450 - 20 x 10.3846 - 40 = 202.31. Came: 100 lb sold, 180 - 225 - 30 = -75. Outlook: -75 + 202.31
    /// + 50.46.
    /// </summary>
    [Fact]
    public void Parts_DuringTheSeason_AreOfThePlanUpToThen()
    {
        PlanVariances variances = PlanVariances.Of(Farm().AsOf("2025-07-15").Season(2025))!;
        Assert.Equal((true, new DateOnly(2025, 7, 15)), (variances.IsPartOfYear, variances.UpTo));
        Assert.Equal(
            (-50.46m, -75m, 202.31m, 177.77m),
            (variances.Planned.Amount, variances.Actual.Amount, variances.YearPlanned.Amount, variances.Outlook.Amount)
        );
    }

    /// <summary>
    /// 10 of the 110 lb of 2024 were culled: that part is planned on top, 250 x (1/11) / (10/11) = 25 lb. None came: culls gain what they
    /// would have lost.
    /// </summary>
    [Fact]
    public void Culls_OfTheSeasonBefore_AreExpectedOnTopOfTheYield()
    {
        CropVariance carrots = Assert.Single(PlanVariances.Of(Farm(culled: 10m).Season(2025))!.Crops);
        // 200 lb grown of which 10/11 would be kept: 181.82 lb bring 327.27 for 14.5454 hours, 160, and 40: 127.27.
        Assert.Equal(127.27m - 190m, carrots.Parts[VarianceKind.Yield].Amount);
        Assert.Equal(144m - 127.27m, carrots.Parts[VarianceKind.Culls].Amount);
    }

    private static FarmBuilder Farm(decimal? culled = null)
    {
        FarmBuilder farm = PlanByHandTests.Farm();
        if (culled is not null)
        {
            farm.Set(farm.Tables.Harvests[0], HarvestRow.CulledColumn, culled);
        }

        return WithPlan(farm, new DateOnly(2025, 5, 1), 250m, 40m, weeks: 2m);
    }

    /// <summary>A farm with a plan of 100 feet of carrots in A that take 20 hours, all of which is to be sold at the market at 2.</summary>
    internal static FarmBuilder WithPlan(FarmBuilder farm, DateOnly inBed, decimal units, decimal cost, decimal weeks) =>
        farm.Add<PlanRow>(
                new RowValues
                {
                    ["crop_year"] = 2025,
                    ["planting"] = "Carrots 2025-1",
                    ["crop"] = "Carrots",
                    ["bed"] = "A",
                    ["bed_feet"] = 100m,
                    ["in_bed"] = inBed,
                    ["out_of_bed"] = new DateOnly(2025, 7, 31),
                    ["yield"] = units,
                    ["hours"] = 20m,
                    ["cost"] = cost,
                }
            )
            .Add<PlanSaleRow>(
                new RowValues
                {
                    ["crop_year"] = 2025,
                    ["crop"] = "Carrots",
                    ["channel"] = "Market",
                    ["quantity"] = units,
                    ["price"] = 2m,
                    ["from"] = new DateOnly(2025, 7, 10),
                    ["weeks"] = weeks,
                }
            );
}
