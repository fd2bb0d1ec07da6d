using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tracing;
using Xunit;

namespace FarmEconomics.Tests.Costing;

/// <summary>The charges of a small farm, each with what it says of itself (docs/methods.md 4 to 7).</summary>
public class ChargeOrderTests
{
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { InterestPercent = 5m, OwnerWage = 10m }).AsOf("2025-12-31")
        .Crop("beets").Bed("bed").Planting("a", "beets", "bed", 30, "2025-05-01", "2025-09-01")
        .Planting("b", "beets", "bed", 10, "2025-05-01", "2025-09-01").Worker("Di", WorkerKind.Owner).Worker("Al", WorkerKind.Hired, 10);

    private static ChargeBook Book(FarmBuilder farm) => ChargeBook.Of(farm.Review().Trace);

    /// <summary>The books come first, then labor, then what assets and land cost.</summary>
    [Fact]
    public void Charges_ComeAsBooksLaborOwnership()
    {
        ChargeBook book = Book(Farm().With(settings => settings with { LandRent = 100m }).Pool("shed", "bed-feet")
            .Asset("barn", "shed", "2020-01-01", 1000, 10).Work("2025-06-01", "Di", 1, "grow", planting: "a")
            .Spend("2025-05-01", 5, "seed"));
        Assert.Equal([CostStream.Cash, CostStream.OwnerLabor, CostStream.Ownership, CostStream.Ownership],
            book.Charges.Select(charge => charge.Stream));
        Assert.Equal([false, true, true, true], book.Charges.Select(charge => charge.Imputed));
        Assert.Equal(100m, book.Charges[3].Amount.Amount);
    }

    /// <summary>
    /// 40 lb at 2 of a crop that was never planted, through a channel that takes a tenth: the fee of 8 is no crop's. Of beets it is theirs.
    /// </summary>
    [Fact]
    public void Fee_OfACropThatWasNeverPlanted_IsNoPlantings()
    {
        FarmBuilder farm = Farm().Crop("kale").Channel("shop", ChannelKind.Wholesale, fee: 10m).Pick("2025-06-30", "a", 10)
            .Sell("2025-07-01", "kale", "shop", 40, 2).Sell("2025-07-01", "beets", "shop", 10, 2);
        Charge[] fees = [.. Book(farm).Fees];
        Assert.Equal([(2m, "a", null), (8m, null, Unallocated.NotAssigned)],
            fees.OrderBy(fee => fee.Amount.Amount).Select(fee => (fee.Amount.Amount, fee.Enterprise?.Planting.Name, fee.Unallocated)));
        Assert.All(fees, fee => Assert.True(fee.Imputed && fee.IsFee));
    }

    /// <summary>
    /// Land of known value and unknown interest leaves the pool of land unknown in years that have begun, and in no later one.
    /// </summary>
    [Fact]
    public void PoolsWithoutOwnership_AreThoseOfYearsThatHaveBegun()
    {
        ChargeBook book = Book(Farm().With(settings => settings with { InterestPercent = null, LandValue = 5000m })
            .Spend("2025-12-30", 5, "seed", cropYear: 2026));
        Assert.Equal(["land"], book.PoolsWithoutOwnership(2025).Select(pool => pool.Name));
        Assert.Empty(book.PoolsWithoutOwnership(2026));
    }

    /// <summary>
    /// Two rows of hired hours at 10, each of 4 hours over both plantings, 30 and 10 feet, and 8.00 paid on top: 30 and 10 of each row's
    /// 40, and 3 and 1 of each row's 4. What is paid on top is told once, where the percent would have stood in for it.
    /// </summary>
    [Fact]
    public void PaidOnTopOfWages_IsSplitRowByRowAsTheHoursAre()
    {
        FarmBuilder farm = Farm().Work("2025-06-01", "Al", 4, "grow", crop: "beets").Work("2025-06-02", "Al", 4, "grow", crop: "beets")
            .Spend("2025-12-31", 8, "payroll taxes");
        ChargeBook book = Book(farm.With(settings => settings with { PayrollBurdenPercent = 7m }));
        Assert.Equal([(30m, "a"), (10m, "b"), (3m, "a"), (1m, "b"), (30m, "a"), (10m, "b"), (3m, "a"), (1m, "b")],
            book.Charges.Where(charge => charge.Stream == CostStream.HiredLabor && charge.Origin is not ExpenseRow)
                .Select(charge => (charge.Amount.Amount, charge.Enterprise!.Planting.Name)));
        Assert.Single(book.Problems, problem => problem.Code == "W512");
        ChargeBook without = Book(farm.With(settings => settings with { PayrollBurdenPercent = 0m }));
        Assert.DoesNotContain(without.Problems, problem => problem.Code == "W512");
    }

    /// <summary>Two rows of 5 hours at 10 and 100 of wages in the books: an hour costs 10, as the workers table has it.</summary>
    [Fact]
    public void HourOfTheBooks_IsThatOfAllHiredHours()
    {
        FarmBuilder farm = Farm().Work("2025-06-01", "Al", 5, "grow", crop: "beets").Work("2025-06-02", "Al", 5, "grow", crop: "beets")
            .Spend("2025-12-31", 100, "wages");
        Assert.DoesNotContain(Book(farm).Problems, problem => problem.Code == "W511");
    }

    /// <summary>A farm on which nobody works unpaid is told of an owner's hours, and not of a row of none.</summary>
    [Theory]
    [InlineData(0, 0)]
    [InlineData(2, 1)]
    public void UnpaidHours_OnAFarmWithout_AreToldOnceThereAreAny(int hours, int told)
    {
        ChargeBook book = Book(Farm().With(settings => settings with { UnpaidHours = UnpaidHours.None })
            .Work("2025-06-01", "Di", hours, "grow", crop: "beets"));
        string[] codes = [.. book.Problems.Select(problem => problem.Code)];
        Assert.Equal(told, codes.Count(code => code == ProblemCodes.UnpaidHoursAfterAll));
    }

    /// <summary>Hours of overhead that a standard adds go with the length of beds; those of the log are fixed.</summary>
    [Fact]
    public void OverheadOfAStandard_GoesWithTheLengthOfBeds()
    {
        ChargeBook book = Book(Farm().Standard("beets", Stage.Overhead, 6, RatePer.BedFoot)
            .Work("2025-06-01", "Di", 1, "grow", planting: "a"));
        Charge[] added = [.. book.Charges.Where(charge => charge.Stage == Stage.Overhead)];
        Assert.NotEmpty(added);
        Assert.All(added, charge => Assert.Equal(CostDriver.Length, charge.VariesWith));
    }

    /// <summary>
    /// Two lots by hand: of 10 lb picked 4 are sold on the third day and 6 stop keeping after 5; the parts held are those, in this order.
    /// </summary>
    [Fact]
    public void Holding_OfALot_IsEachPartWithItsDays()
    {
        FarmBuilder farm = new FarmBuilder().AsOf("2025-12-31").Crop("kale", storageDays: 5).Bed("bed")
            .Channel("market", ChannelKind.Market)
            .Planting("k", "kale", "bed", 10, "2025-05-01", "2025-09-01").Pick("2025-06-01", "k", 10)
            .Sell("2025-06-04", "kale", "market", 4, 1);
        Lot lot = Assert.Single(farm.Review().Trace.LotsOfYear(2025));
        Assert.Equal([new Holding(4m, 3), new Holding(6m, 5)], Holding.Of(lot, FarmBuilder.Day("2025-12-31")));
    }
}
