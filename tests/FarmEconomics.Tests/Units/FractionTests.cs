using CsCheck;
using FarmEconomics.Costing;
using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Units;

/// <summary>Half a cent that stands on a third of something: 28 digits would lose it.</summary>
public class FractionTests
{
    [Fact]
    public void Half_OnAThird_IsKept()
    {
        Assert.Equal(new Money(53.13m), ((Fraction)212.5m / 3m * 9m / 12m).ToMoney());
        Assert.Equal(new Money(-53.13m), ((Fraction)(-212.5m) / 3m * 9m / 12m).ToMoney());
        Assert.Equal(new Money(53.12m), ((Fraction)212.4999m / 3m * 9m / 12m).ToMoney());
        Assert.Throws<DivideByZeroException>(() => (Fraction)1m / 0m);
    }

    [Fact]
    public void ToMoney_AnyDecimal_IsWhatRoundingADecimalGives() => Gen.Int[-100_000_000, 100_000_000].Select(n => n / 10000m).Sample(
        amount => Assert.Equal(Money.Rounded(amount), ((Fraction)amount).ToMoney()), iter: 5000);

    [Fact]
    public void Quotient_AnyThird_RoundsAsWholeNumbersDo() => Gen.Select(Gen.Int[-1_000_000, 1_000_000], Gen.Int[1, 999]).Sample(
        (top, bottom) =>
        {
            long twice = (200L * Math.Abs((long)top)) + bottom;
            Assert.Equal(new Money(Math.Sign(top) * (twice / (2L * bottom)) / 100m), ((Fraction)(decimal)top / (decimal)bottom).ToMoney());
        },
        iter: 5000);

    [Theory]
    [InlineData(OwnershipMethod.DepreciationAndInterest)]
    [InlineData(OwnershipMethod.CapitalRecovery)]
    public void YearlyCost_OfPartOfAYear_KeepsHalfACent(OwnershipMethod method)
    {
        // 212.50 over 3 years, 9 months: 53.125.
        AssetRow asset = new RowValues { ["asset"] = "pump", ["pool"] = "well", ["in_service"] = FarmBuilder.Day("2025-04-01"), ["cost"] = 212.50m, ["life_years"] = 3m }.Row<AssetRow>();
        Assert.Equal(53.13m, Ownership.Of(asset, 2025, new FarmSettings { InterestPercent = 0m, OwnershipMethod = method })[0].Farm.Amount);
    }

    [Fact]
    public void CapitalRecovery_OverOneYear_KeepsHalfACent()
    {
        // One year at 5 %: 100.10 x 1.05 = 105.105.
        AssetRow asset = new RowValues { ["asset"] = "pump", ["pool"] = "well", ["in_service"] = FarmBuilder.Day("2025-01-01"), ["cost"] = 100.10m, ["life_years"] = 1m }.Row<AssetRow>();
        Assert.Equal(105.11m, Ownership.Of(asset, 2025, new FarmSettings { InterestPercent = 5m })[0].Farm.Amount);
    }

    [Fact]
    public void LoanInterest_OfAMonth_KeepsHalfACent()
    {
        // 1,821.00 at 7 % a year, monthly: 10.6225; 1,803.00: 10.5175; 942.00 at 7 %: 5.495.
        LoanTerms terms = new("loan", 942m, 0.07m, 12, 12, FarmBuilder.Day("2025-02-01"), Repayment.InterestOnly);
        Assert.Equal(5.50m, LoanSchedule.Of(terms).Payments[0].Interest);
    }

    [Fact]
    public void ClosingStock_OnAThird_KeepsHalfACent()
    {
        // 3 lb sold for 2.03 and 7.5 lb on hand: 7.5 x 2.03 / 3 = 5.075.
        FarmBuilder farm = new FarmBuilder().Crop("beets").Bed("bed").Planting("b", "beets", "bed", 10, "2025-05-01", "2025-09-01").Channel("stall", ChannelKind.Market)
            .Pick("2025-09-01", "b", 10.5m).Sell("2025-09-02", "beets", "stall", 3, amount: 2.03m).AsOf("2025-12-31");
        Assert.Equal(5.08m, farm.Season(2025).Farm.Sums.ClosingStock.Amount);
    }
}
