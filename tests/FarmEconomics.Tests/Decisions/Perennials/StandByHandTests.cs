using FarmEconomics.Decisions.Perennials;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Perennials;

/// <summary>Whether a stand should stay, by what it brings and what else its beds bring (docs/methods.md, sections 8 and 17).</summary>
public class StandByHandTests
{
    /// <summary>Berries of 2022 on 20 ft, in two sorts; 2024 and 2025 bore. Kale of 2025 on a bed of 40 ft sold for so much.</summary>
    private static FarmBuilder Farm(decimal kale = 200m, decimal? bearing = 5m) => new FarmBuilder(new FarmSettings
    {
        InterestPercent = 0m,
        UnpaidHours = UnpaidHours.None,
    }).AsOf("2025-12-31").Crop("kale").Perennial("berries", bearing).Bed("one").Bed("two", 40m).Channel("market", ChannelKind.Market)
        .Planting("late", "berries", "one", 20m, "2022-05-01").Planting("early", "berries", "one", 20m, "2022-05-01")
        .Spend("2022-05-01", 300m, "plants", planting: "late").Spend("2022-05-01", 100m, "plants", planting: "early")
        .Spend("2023-05-01", 20m, "mulch", planting: "late").Spend("2024-05-01", 40m, "mulch", planting: "late")
        .Spend("2025-05-01", 60m, "mulch", planting: "late")
        .Pick("2024-07-01", "late", 40m).Sell("2024-07-01", "berries", "market", 40m, 5m, planting: "late")
        .Pick("2025-07-01", "late", 80m).Sell("2025-07-01", "berries", "market", 80m, 5m, planting: "late")
        .Planting("k", "kale", "two", 40m, "2025-05-01", "2025-08-01").Pick("2025-07-01", "k", 100m)
        .Sell("2025-07-01", "kale", "market", 100m, amount: kale);

    private static Stand Late(FarmBuilder farm, int year = 2025) => Stand.Of(farm.Review(), year)
        .Single(stand => stand.Planting.Name == "late");

    /// <summary>
    /// 200 - 40 and 400 - 60: 250 on the mean, 12.50 a foot; its 320 of 2022 and 2023 over five years are 64 a year, 3.20 a foot.
    /// </summary>
    [Fact]
    public void Stand_ByHand_BringsTheMeanOfItsBearingYears()
    {
        Stand late = Late(Farm());

        Assert.Equal([(2022, false), (2023, false), (2024, true), (2025, true)], late.Years.Select(year => (year.CropYear, year.Bears)));
        Assert.Equal((2024, 2, 5m, 3m), (late.FirstBearingYear, late.Borne, late.BearingYears.Value, late.Remaining.Value));
        Assert.Equal((320m, 64m), (late.EstablishmentCost.Value, late.AnnualPart.Value));
        Assert.Equal((12.5m, 9.3m, 5m), (late.RemainingPerBedFoot.Value, late.AgainPerBedFoot.Value, late.InsteadPerBedFoot.Value));
        Assert.Equal(400m - 60m - 64m, late.NetOf(late.Years[^1]).Value);
        Assert.True(late.ShouldStay);
        Assert.Equal(["late", "early"], Stand.Of(Farm().Review(), 2025).Select(stand => stand.Planting.Name));
    }

    /// <summary>
    /// Kale at 500 brings 12.50 a foot of bed as well, at 520 13.00; with its two bearing years over nothing is left to stay for.
    /// </summary>
    [Fact]
    public void ShouldStay_WhileItBringsAtLeastAsMuch()
    {
        Assert.True(Late(Farm(500m)).ShouldStay);
        Assert.False(Late(Farm(520m)).ShouldStay);
        Stand over = Late(Farm(500m, bearing: 2m));
        Assert.Equal((0m, null), (over.Remaining.Value, over.ShouldStay));
    }

    /// <summary>Before it bears, neither its establishment nor what it brings is told, unless the grower wrote the one.</summary>
    [Fact]
    public void Stand_ThatHasNotBorne_SaysSo()
    {
        Stand early = Stand.Of(Farm().Review(), 2025)[1];
        Assert.Equal((null, 0), (early.FirstBearingYear, early.Borne));
        Assert.Equal("it hasn't borne yet", early.EstablishmentCost.Reason);
        Assert.Equal("it hasn't borne yet", early.RemainingPerBedFoot.Reason);
        Assert.Null(early.ShouldStay);

        FarmBuilder written = Farm();
        written.Set(written.Tables.Crops[1], CropRow.EstablishmentCostColumn, 15m);
        Assert.Equal(300m, Stand.Of(written.Review(), 2025)[1].EstablishmentCost.Value);
        Stand before = Late(Farm(), 2023);
        Assert.Equal((2, "it hasn't borne yet"), (before.Years.Count, before.EstablishmentCost.Reason));
    }

    /// <summary>A stand dug out in 2024 is none of 2025; its bed, empty, brings nothing and isn't counted.</summary>
    [Fact]
    public void Stand_DugOutBefore_IsNoneOfTheYear()
    {
        FarmBuilder farm = Farm();
        farm.Set(farm.Tables.Plantings[1], PlantingRow.OutOfBedColumn, FarmBuilder.Day("2024-11-01"));

        Assert.Equal(["late"], Stand.Of(farm.Review(), 2025).Select(stand => stand.Planting.Name));
        Assert.Equal(["late", "early"], Stand.Of(farm.Review(), 2024).Select(stand => stand.Planting.Name));
    }

    /// <summary>In 2024 hands were hired at a wage nobody wrote: what labor left isn't known, of that year nor on the mean.</summary>
    [Fact]
    public void Remaining_WithAYearNobodyKnows_IsNotKnown()
    {
        FarmBuilder farm = Farm().Task("pick", Stage.Harvest).Worker("Ada", WorkerKind.Hired)
            .Work("2024-07-01", "Ada", 2m, "pick", crop: "berries");
        Stand late = Late(farm);

        Assert.Equal((true, false), (late.Years[^1].MarginAfterLabor.IsAvailable, late.Years[2].MarginAfterLabor.IsAvailable));
        Assert.Equal(late.Years[2].MarginAfterLabor.Reason, late.RemainingPerBedFoot.Reason);
        Assert.Null(late.ShouldStay);
    }
}
