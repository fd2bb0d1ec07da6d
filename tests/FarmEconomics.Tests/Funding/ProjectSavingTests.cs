using FarmEconomics.Budgets;
using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Units;
using FarmEconomics.Water.Power;
using Xunit;

namespace FarmEconomics.Tests.Funding;

public class ProjectSavingTests
{
    [Fact]
    public void Needed_DemoColdRoom_IsItsCostTimesTheCapitalRecoveryFactor()
    {
        Investment investment = Of("").Investment!;

        // CRF(5 %, 15) = 0.0963423: 4,910 and 14,800; an hour at 16.
        Assert.Equal((473.04m, 1425.87m), (investment.NeededWithGrant.Yearly.Value, investment.NeededWithoutGrant.Yearly.Value));
        Assert.Equal((29.565m, 89.116875m), (investment.NeededWithGrant.Hours.Value, investment.NeededWithoutGrant.Hours.Value));
    }

    [Theory]
    [InlineData("")]
    [InlineData("; indirect_percent=10")]
    [InlineData("; project_salvage=900")]
    public void Needed_WhenExactlyThatIsSaved_TheNetPresentValueIsNothing(string more)
    {
        SavingNeeded needed = Of(more.TrimStart(';')).Investment!.NeededWithGrant;
        FundingWriteUp saved = Of(FormattableString.Invariant($"other_saving={needed.Yearly.Value}") + more);
        Close.To(0m, saved.Investment!.WithGrant!.NetPresentValue, 0.06m);
    }

    [Fact]
    public void WithoutGrant_HasNoIndirectCharges()
    {
        FundingWriteUp with = Of("indirect_percent=10; hours_saved=60");
        decimal indirect = with.Grant!.Of(null).Funder + with.Grant.Of(null).Match;

        Assert.True(indirect > 0m);
        Assert.Equal(with.Grant.Total - indirect, -with.Investment!.WithoutGrant!.Amounts[0]);
        Assert.Equal(Of("hours_saved=60").Investment!.WithoutGrant!.NetPresentValue, with.Investment.WithoutGrant.NetPresentValue);
    }

    [Fact]
    public void SavingPattern_LetsSavingsGrowAndTheLastGoOn()
    {
        CapitalBudget budget = Of("other_saving=1000; saving_pattern=50, 80, 100; project_life_years=5").Investment!.WithGrant!;
        Assert.Equal([500m, 800m, 1000m, 1000m, 1000m], budget.Amounts.Skip(1));
    }

    [Fact]
    public void GrantMonth_Later_LowersTheLowPointAndAfterTheYearIsLeftOut()
    {
        FundingWriteUp at = Of(""), late = Of("grant_month=12"), after = Of("project_month=10; grant_month=2");

        Assert.Equal(new DateOnly(2026, 3, 1), at.GrantComes);
        Assert.True(late.NextYear.LowPoint <= at.NextYear.LowPoint);
        Assert.Equal(at.NextYear.Closing[^1], late.NextYear.Closing[^1]);
        Assert.Equal(late.NextYear.Closing[10], late.NextYearBeforeGrant.Closing[10]);
        Assert.Equal(new DateOnly(2027, 2, 1), after.GrantComes);
        Assert.DoesNotContain(after.NextYear.Lines, line => line.Name == "Grant");
        Assert.Equal(at.NextYear.Closing[^1] - at.Grant!.Funder, after.NextYear.Closing[^1]);
    }

    [Fact]
    public void PowerPrice_PanelsHalfIdle_IsNothingByAYearsUseAndAnotherRuleCanStandInItsPlace()
    {
        FundingWriteUp With(IMarginalPower? rule) =>
            FundingWriteUp.Of(FundingWriteUpTests.Demo, 2025, "Larger cold room", FundingAssumptions.Parse("power_saved_kwh=-300"), rule);
        FundingWriteUp idle = With(new YearlyMarginalPower()), byDays = With(null);

        Assert.Equal(0m, idle.Investment!.Facts!.PowerPrice.Each.Value);
        Assert.Equal(0m, idle.Investment.YearlySaving.Value);
        Assert.Equal(-60m, With(new FlatPrice()).Investment!.YearlySaving.Value);

        // Half idle over the year, and still short on dark days: a part of each kWh is the generator's, at 0.85.
        decimal price = byDays.Investment!.Facts!.PowerPrice.Each.Value!.Value;
        Assert.Equal(PowerSeason.Of(FundingWriteUpTests.Demo.Records, 2025).MarginalPerKwh.Value, price);
        Assert.InRange(price, 0.001m, 0.85m);
        Assert.Contains("of a kWh more would be the generator's", byDays.Investment.Facts.PowerPrice.Because, StringComparison.Ordinal);
        Assert.Equal(-75m, Of("power_saved_kwh=-300; power_price=0.25").Investment!.YearlySaving.Value);
    }

    [Fact]
    public void PowerPrice_NearlyAllUsed_IsWhatTheNextCapacityCosts()
    {
        // 1,000 kWh of capacity; a load of 100 W day and night from January 1 to December 31 is 876 kWh.
        SeasonReview season = Panels(1000m);
        MarginalPrice price = StoreFacts.Of(season, season.Records.FindPool("cellar")!).PowerPrice;

        Close.To(0.1295m, price.Each.Value!.Value, 0.00005m); // 1,000 x CRF(5 %, 10) / 1,000 kWh
        Assert.Contains("88%", price.Because, StringComparison.Ordinal);
    }

    /// <summary>The fan takes 2.4 kWh every day: with 2 made, all of a kWh less would have been the generator's; with 3, none.</summary>
    [Theory]
    [InlineData(2.0, 1.5, 1.5)]
    [InlineData(3.0, 1.5, 0.0)]
    public void PowerPrice_WithABattery_IsThePartOfAKwhThatWasMissingTimesTheGenerators(double made, double cost, double price)
    {
        SeasonReview season = Panels(1000m, new PowerSupply
        {
            PanelKw = 1m,
            PanelYield = new MonthFigures([.. Enumerable.Repeat((decimal)made, 12)]),
            BatteryKwh = 0.01m,
            GeneratorKw = 1m,
            GeneratorCostPerKwh = (decimal)cost,
        });
        MarginalPrice found = StoreFacts.Of(season, season.Records.FindPool("cellar")!).PowerPrice;

        Close.To((decimal)price, found.Each.Value!.Value, 0.0001m);
        Assert.Contains(price > 0 ? "fell short on 365 days" : "were enough every day", found.Because, StringComparison.Ordinal);
    }

    [Fact]
    public void PowerPrice_WithABatteryButNoPriceOfWhatIsMissing_GoesByAYearsUse()
    {
        SeasonReview season = Panels(
            1000m,
            new PowerSupply
            {
                PanelKw = 1m,
                PanelYield = new MonthFigures([.. Enumerable.Repeat(2m, 12)]),
                BatteryKwh = 1m,
            }
        );
        Assert.Contains("88%", StoreFacts.Of(season, season.Records.FindPool("cellar")!).PowerPrice.Because, StringComparison.Ordinal);
    }

    private static SeasonReview Panels(decimal capacity, PowerSupply? supply = null)
    {
        FarmRecords records = new FarmBuilder()
            .AsOf("2025-12-31")
            .Crop("beets", perCrate: 10m, store: "cellar")
            .Bed("bed")
            .Planting("b", "beets", "bed", 40, "2025-05-01", "2025-08-01")
            .Channel("market", ChannelKind.Market)
            .Pool("cellar", "crate-days")
            .Pool("power", "measured", capacity: capacity)
            .Load("fan", "power", "cellar", 100m, 24m, "2025-01-01", "2025-12-31")
            .Asset("panels", "power", "2025-01-01", 1000m, 10m)
            .Pick("2025-07-01", "b", 20)
            .Sell("2025-07-02", "beets", "market", 20, 2m)
            .Review()
            .Records;
        return FarmReview
            .Of(
                FarmRecords.Link(records.Tables, records.Settings with { InterestPercent = 5m, Supply = supply ?? records.Settings.Supply })
            )
            .Season(2025);
    }

    private static FundingWriteUp Of(string assumed) => FundingWriteUp.Of(FundingWriteUpTests.Demo, 2025, "Larger cold room", FundingAssumptions.Parse(assumed));

    private sealed class FlatPrice : IMarginalPower
    {
        public MarginalPrice Of(SeasonReview season, PoolResult power) => new(Result.Known(0.2m), "a test");
    }
}
