using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Budgets;

/// <summary>
/// Whether overhead is known: it isn't when costs aren't, when nothing is known of labor, or when an overhead pool holds hours without a
/// value or lacks its ownership cost; what the rest of the farm lacks doesn't matter (docs/methods.md, section 8).
/// </summary>
public class OverheadKnownTests
{
    private const string NoWage = "hired hours without a wage and no wages in the books";
    private const string NoOwnerWage = "no owner_wage among the settings";
    private const string NoInterest = "no interest_percent among the settings";

    // The barn is an overhead pool, the shed is none; Al has a wage, Who has none, and Di works for nothing.
    private static FarmBuilder Farm() => new FarmBuilder().Crop("beets").Bed("bed")
        .Planting("b", "beets", "bed", 10, "2025-05-01", "2025-06-30").Pool("barn", "bed-feet", StatementLine.Overhead)
        .Pool("shed", "bed-feet").Worker("Al", WorkerKind.Hired, 10)
        .Worker("Who", WorkerKind.Hired).Worker("Di", WorkerKind.Owner).Spend("2025-05-01", 5, "seed").AsOf("2025-12-31");

    private static string? Overhead(FarmBuilder farm) => farm.Season(2025).Known.Overhead;

    [Fact]
    public void HiredHoursWithoutAWage_InAnOverheadPool_LeaveItUnknown() =>
        Assert.Equal(NoWage, Overhead(Farm().Work("2025-06-01", "Who", 1, "grow", pool: "barn")));

    /// <summary>Who's hours stand on the beets, and what Al's in the barn cost is known: so is overhead, though labor isn't.</summary>
    [Fact]
    public void HiredHoursWithoutAWage_OnACrop_DoNot()
    {
        Availability known = Farm().Work("2025-06-01", "Who", 1, "grow", crop: "beets").Work("2025-06-01", "Al", 2, "grow", pool: "barn")
            .Season(2025).Known;
        Assert.Equal((NoWage, null), (known.LaborCost, known.Overhead));
    }

    [Fact]
    public void HiredHoursWithoutAWage_InAnotherPool_DoNot() => Assert.Null(
        Overhead(Farm().Work("2025-06-01", "Who", 1, "grow", pool: "shed").Work("2025-06-01", "Al", 2, "grow", pool: "barn"))
    );

    /// <summary>A line written down for a day on which nothing was done costs nothing, whoever it names.</summary>
    [Fact]
    public void RowsOfNoHours_CostNothingAtAnyWage()
    {
        Availability known = Farm().Work("2025-06-01", "Who", 0, "grow", pool: "barn").Work("2025-06-01", "Di", 0, "grow", pool: "barn")
            .Work("2025-06-01", "Al", 2, "grow", pool: "barn").Season(2025).Known;
        Assert.Equal((null, null, null), (known.LaborCost, known.OwnerLabor, known.Overhead));
        FarmBuilder worked = Farm().Work("2025-06-01", "Who", 0, "grow").Work("2025-06-01", "Di", 0.1m, "grow");
        Assert.Equal(NoOwnerWage, worked.Season(2025).Known.OwnerLabor);
    }

    [Fact]
    public void WithoutAnyHours_ItIsUnknown() => Assert.Equal("no labor records and no wages in the books", Overhead(Farm()));

    [Fact]
    public void AssetsWithoutInterest_InAnOverheadPool_LeaveItUnknown()
    {
        FarmBuilder farm = Farm().Work("2025-06-01", "Al", 1, "grow", crop: "beets").Asset("shed", "shed", "2025-01-01", 1000, 10);
        Assert.Equal((NoInterest, null), (farm.Season(2025).Known.Ownership, Overhead(farm)));
        Assert.Equal(NoInterest, Overhead(farm.Asset("barn", "barn", "2025-01-01", 1000, 10)));
    }

    /// <summary>Of several reasons the first is told: costs, then hired hours, then the owner's, then the interest.</summary>
    [Fact]
    public void OfSeveralReasons_TheFirstIsTold()
    {
        FarmBuilder farm = Farm().Asset("barn", "barn", "2025-01-01", 1000, 10).Work("2025-06-01", "Di", 1, "grow", pool: "barn");
        Assert.Equal(NoOwnerWage, Overhead(farm));
        Assert.Equal(NoWage, Overhead(farm.Work("2025-06-01", "Who", 1, "grow", pool: "barn")));
        Assert.Equal("no expenses of 2025", Overhead(farm.Without<ExpenseRow>(_ => true).Spend("2024-05-01", 5, "insurance")));
    }

    /// <summary>
    /// 100 of wages were paid and no hours logged, on a farm where nobody works unpaid: labor cost 100, but how many hours isn't known.
    /// </summary>
    [Fact]
    public void WagesWithoutHours_LeaveTheHoursUnknownWhereNobodyWorksUnpaid()
    {
        Availability known = Farm().With(settings => settings with { UnpaidHours = UnpaidHours.None }).Spend("2025-06-01", 100, "wages")
            .Work("2024-06-01", "Al", 1, "grow").Season(2025).Known;
        Assert.Equal(("no labor records of 2025", null, null), (known.Hours, known.LaborCost, known.OwnerLabor));
    }
}
