using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions;

/// <summary>
/// Why a break-even isn't told: what isn't known first, and only where it is needed (docs/methods.md, sections 8 and 14).
/// </summary>
public class BreakEvenReasonsTests
{
    private static FarmBuilder Farm(bool bills = true, bool sold = true, decimal? wage = 20m, decimal? interest = 5m, decimal? bears = null)
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { OwnerWage = wage, InterestPercent = interest }).AsOf("2025-12-31").Bed("One")
            .Channel("stall", ChannelKind.Market).Channel("heap", ChannelKind.Waste).Worker("me", WorkerKind.Owner)
            .Crop("Rhubarb", perennial: true, bears: bears).Price("Rhubarb", 3m).Planting("R", "Rhubarb", "One", 50m, "2023-05-01")
            .Pick("2025-07-01", "R", 100m).Sell("2025-07-02", "Rhubarb", sold ? "stall" : "heap", 100m, price: sold ? 3m : null)
            .Work("2025-07-01", "me", 1m, "harvest", crop: "Rhubarb");
        farm = bills ? farm.Spend("2025-05-01", 30m, "compost", crop: "Rhubarb") : farm;
        return interest is null ? farm.Pool("tractor", "bed-feet").Asset("tractor", "tractor", "2023-01-01", 900m, 10m) : farm;
    }

    /// <summary>Full for the farm, textbook for the crop, textbook for the farm.</summary>
    private static string?[] Reasons(FarmBuilder farm, out Availability known)
    {
        SeasonReview season = farm.Season(2025);
        EnterpriseBudget rhubarb = season.CropNamed("Rhubarb");
        known = rhubarb.Known;
        IReadOnlyList<BreakEvenPair> pairs = BreakEvenPair.Of(rhubarb, SeasonCosts.Of(season).Model(rhubarb));
        Assert.All(pairs.Skip(1), pair => Assert.Equal(pair.Price.Reason, pair.YieldPerBedFoot.Reason));
        return [.. pairs.Skip(1).Select(pair => pair.Price.Reason)];
    }

    [Fact]
    public void BreakEven_WithoutBills_SaysSoBeforeTheHours()
    {
        string?[] reasons = Reasons(Farm(bills: false, wage: null), out Availability known);
        Assert.NotNull(known.OwnerLabor);
        Assert.NotEqual(known.OwnerLabor, known.NoNetReturn);
        Assert.Equal([known.NoNetReturn, known.NoNetReturn, known.NoNetReturn], reasons);
    }

    [Fact]
    public void BreakEven_OfOwnHoursWithoutAWage_SaysSoBeforeTheTractor()
    {
        string?[] reasons = Reasons(Farm(wage: null, interest: null), out Availability known);
        Assert.NotNull(known.Ownership);
        Assert.NotNull(known.OwnerLabor);
        Assert.Equal([known.OwnerLabor, known.OwnerLabor, known.OwnerLabor], reasons);
    }

    /// <summary>What the tractor costs to own doesn't go with the crop: for the farm, in the short run, it may be unknown.</summary>
    [Fact]
    public void BreakEven_OfUnknownOwnership_IsUnknownForTheCropOnly()
    {
        string?[] reasons = Reasons(Farm(interest: null), out Availability known);
        Assert.NotNull(known.Ownership);
        Assert.Equal([null, known.Ownership, null], reasons);
        Assert.Equal(["nothing sold", known.Ownership, "nothing sold"], Reasons(Farm(sold: false, interest: null), out _));
    }

    /// <summary>Nor does what the stand cost before it bore, which nobody wrote down.</summary>
    [Fact]
    public void BreakEven_OfUnknownEstablishment_IsUnknownForTheCropOnly()
    {
        string?[] reasons = Reasons(Farm(bears: 8m), out Availability known);
        Assert.NotNull(known.Establishment);
        Assert.Null(known.Ownership);
        Assert.Equal([null, known.Establishment, null], reasons);
        reasons = Reasons(Farm(interest: null, bears: 8m), out known);
        Assert.NotEqual(known.Ownership, known.Establishment);
        Assert.Equal([null, known.Ownership, null], reasons);
    }

    [Fact]
    public void BreakEven_OfNothingSold_SaysSo() =>
        Assert.Equal(["nothing sold", "nothing sold", "nothing sold"], Reasons(Farm(sold: false), out _));

    /// <summary>A stall that keeps all: no price leaves anything, though there is one of today.</summary>
    [Fact]
    public void BreakEven_WhereTheFeeTakesAll_SaysThat()
    {
        FarmBuilder farm = Farm();
        farm.Set(farm.Tables.Channels[0], ChannelRow.FeePercentColumn, 100m);
        SeasonReview season = farm.Season(2025);
        EnterpriseBudget rhubarb = season.CropNamed("Rhubarb");
        Assert.Equal(
            "the channel's fee takes all of the sales",
            BreakEvenPair.Of(rhubarb, SeasonCosts.Of(season).Model(rhubarb))[1].Price.Reason);
    }
}
