using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tracing;
using Xunit;

namespace FarmEconomics.Tests.Costing;

/// <summary>The charges themselves: where the grower's own categories land, what is imputed, and in which years.</summary>
public class ChargeBookTests
{
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { InterestPercent = 0m }).Crop("beets").Crop("kale").Bed("bed").Channel("market", ChannelKind.Market, 10)
        .Planting("a", "beets", "bed", 10, "2025-05-01", "2025-09-01").Planting("b", "beets", "bed", 30, "2025-05-01", "2025-09-01").Worker("Al", WorkerKind.Hired, 10).Worker("Di", WorkerKind.Owner, 12).AsOf("2025-12-31");

    [Fact]
    public void CategoryOfHiredWorkWithoutALine_StandsOnTheLaborLine()
    {
        EnterpriseBudget farm = Farm().Category("picking crew", ExpenseClass.Labor).Spend("2025-06-01", 40, "picking crew", crop: "beets").Season(2025).Farm;
        Assert.Equal((40m, 0m), (farm.Sums.HiredLabor.Amount, farm.Sums.Materials.Amount));
    }

    [Fact]
    public void CategoryWithoutAPool_GoesToGeneralOverhead()
    {
        SeasonReview season = Farm().Category("odds and ends", ExpenseClass.Operating).Spend("2025-06-01", 40, "odds and ends").Season(2025);
        Assert.Equal(40m, season.PoolNamed("general overhead").Total.Amount);
        Assert.Equal(40m, season.Farm.Sums.Overhead.Amount);
    }

    [Fact]
    public void CostThatVariesWithQuantity_OfACropNotPickedYet_IsSplitByBedFeet() => Assert.Equal(
        [10m, 30m],
        Farm().Spend("2025-05-01", 40, "packaging", crop: "beets").Season(2025).Plantings.Select(budget => budget.Sums.Selling.Amount));

    [Fact]
    public void Years_AreInOrderWhateverTheOrderOfTheRows() => Assert.Equal(
        [2021, 2022, 2023, 2025],
        Farm().Spend("2021-06-05", 1, "seed").Spend("2023-05-01", 1, "seed").Spend("2022-05-01", 1, "seed").Review().Charges.Years);

    [Fact]
    public void Fee_OfASaleThatFoundNoCrop_IsNotAssigned()
    {
        // 10 % of 20.00: kale was never planted.
        SeasonReview season = Farm().Sell("2025-06-01", "kale", "market", 10, 2).Season(2025);
        Assert.Equal(2m, season.UnallocatedTotal(Unallocated.NotAssigned));
        season.AssertProven();
    }

    [Fact]
    public void Imputed_IsWhatNoRowOfTheBooksStandsBehind()
    {
        ChargeBook book = Farm().Pick("2025-06-01", "a", 10).Sell("2025-06-01", "beets", "market", 10, 2).Pool("room", "bed-feet").Asset("cooler", "room", "2025-01-01", 1000, 10, farmPercent: 60)
            .Work("2025-06-01", "Al", 1, "grow").Work("2025-06-01", "Di", 1, "grow").Spend("2025-06-01", 4, "seed").Review().Charges;
        Assert.Equal(
            [(true, false, 10m), (true, false, 12m), (true, false, 40m), (true, false, 60m), (true, true, 2m), (false, false, 4m)],
            book.Charges.Concat(book.Fees).Select(charge => (charge.Imputed, charge.IsFee, charge.Amount.Amount)).OrderByDescending(charge => charge.Imputed).ThenBy(charge => charge.IsFee).ThenBy(charge => charge.Amount));
    }

    [Fact]
    public void WagesInTheBooks_AreNotImputed()
    {
        ChargeBook book = Farm().Work("2025-06-01", "Al", 1, "grow").Spend("2025-06-30", 15, "wages").Review().Charges;
        Charge charge = Assert.Single(book.Charges);
        Assert.Equal((false, 15m, CostStream.HiredLabor), (charge.Imputed, charge.Amount.Amount, charge.Stream));
    }

    [Fact]
    public void OwnerHoursOfAStandard_WithoutAWage_AreNotAvailableAndNoRowIsBlamed()
    {
        // A standard fills in 6 min a bed-foot; nobody is logged, so no row of the labor table is to be mended.
        FarmBuilder farm = Farm().Standard("beets", Stage.Grow, 6, RatePer.BedFoot);
        ChargeBook book = farm.Review().Charges;
        Assert.Equal(4m, farm.Season(2025).Farm.LaborHours.Value); // 40 x 6 min
        Assert.DoesNotContain(book.Problems, problem => problem.Code is "W506" or "W408");
        Assert.Contains(2025, book.YearsWithoutOwnerWage.Union(book.YearsWithoutHiredWage));
    }

    [Fact]
    public void Nothing_IsRefused()
    {
        Assert.Throws<ArgumentNullException>(() => ChargeBook.Of(null!));
        Assert.Throws<ArgumentNullException>(() => FarmTrace.Of(null!));
    }
}
