using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Avoidable;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;
using static FarmEconomics.Tests.Building.FarmBuilder;

namespace FarmEconomics.Tests.Decisions.Avoidable;

/// <summary>
/// What a crop sold by channel and week, on paper (docs/methods.md, section 16). Kale's list price is 2. The 7 days from May 21 are week 20
/// of the crop year.
/// </summary>
public class CropSalesByHandTests
{
    /// <summary>
    /// At list price the stall took 100 lb in week 20 of 2024, and 25 + 15 for 88 of the 60 lb of 2025, the others at half price: the most
    /// is 100, at today's 2.20. 500 lb of the year after aren't known of yet.
    /// </summary>
    [Fact]
    public void Most_AtListPrice_BringsWhatItBroughtLast()
    {
        (CropSales sales, Channel stall, _) = Sales(AtList());
        Assert.Equal((100m, 2.20m), sales.MostAtList(stall, 20));
        Assert.Equal((100m, 2.20m), sales.MostAtList(stall, 22));
        Assert.Equal((100m, 2.20m), sales.MostAtList(stall, 18));
        Assert.Equal((0m, null), sales.MostAtList(stall, 23));
        Assert.Equal((0m, null), sales.MostAtList(stall, 17));
        Assert.Equal((60m, 0m), (sales.Sold(2025, stall, 20), sales.Sold(2026, stall, 20)));
        Assert.Equal(20, sales.WeekOf(Day("2025-05-27")));
        Assert.Equal(21, sales.WeekOf(Day("2025-05-28")));
    }

    /// <summary>
    /// Near week 20: 100 lb for 200 in 2024, all at list; in 2025 60 lb for 88 + 20 of a list value of 120, which is 0.9 of it. In week
    /// 22 of 2024 5 of 100 lb were thrown out, a twentieth: not all was wanted, and 95 at list price aren't the most.
    /// </summary>
    [Fact]
    public void Near_IsAWeekAYearWithWhatItPaid()
    {
        FarmBuilder farm = AtList()
            .Channel("heap", ChannelKind.Waste)
            .Sell("2024-06-05", "Kale", "stall", 95m, price: 2m)
            .Sell("2024-06-05", "Kale", "heap", 5m);
        (CropSales sales, Channel stall, _) = Sales(farm);
        Assert.Equal(
            [(2024, 100.0, 2.0, 1.0, true), (2024, 95.0, 2.0, 1.0, false), (2025, 60.0, 2.0, 0.9, true)],
            sales.Near(stall, 20)
        );
        Assert.Equal([(2024, 95.0, 2.0, 1.0, false)], sales.Near(stall, 24));
        Assert.Empty(sales.Near(stall, 25));
        Assert.Equal((0m, null), sales.MostAtList(stall, 24));
    }

    /// <summary>
    /// The shop never pays list: 4 + 6 lb in week 20 for 4 + 6, 30 in week 21 for 45, 20 in week 22 for 25. The median week is 20 lb, and
    /// 60 lb brought 80. What the stall takes at list changes nothing. Two weeks beyond the last it counts still.
    /// </summary>
    [Fact]
    public void Most_OfAChannelThatNeverPaysList_IsItsMedianWeek()
    {
        FarmBuilder farm = AtList()
            .Channel("shop", ChannelKind.Wholesale)
            .Sell("2025-05-21", "Kale", "shop", 4m, price: 1m)
            .Sell("2025-05-22", "Kale", "shop", 6m, price: 1m)
            .Sell("2025-05-28", "Kale", "shop", 30m, price: 1.5m)
            .Sell("2025-06-04", "Kale", "shop", 20m, price: 1.25m);
        (CropSales sales, Channel stall, SeasonReview season) = Sales(farm);
        Channel shop = season.Records.Channels.Single(channel => channel.Name == "shop");
        foreach (int week in new[] { 18, 20, 21, 22, 24 })
        {
            Assert.Equal((20m, 80m / 60m), sales.MostAtList(shop, week));
        }

        Assert.Equal((0m, null), sales.MostAtList(shop, 17));
        Assert.Equal((0m, null), sales.MostAtList(shop, 25));
        Assert.Equal((100m, 2.20m), sales.MostAtList(stall, 20));
        Assert.Equal([stall, shop], sales.Channels);
    }

    /// <summary>Channels come in the order of their table, whichever sold first.</summary>
    [Fact]
    public void Channels_ComeAsInTheirTable()
    {
        FarmBuilder farm = AtList().Channel("shop", ChannelKind.Wholesale).Sell("2024-05-01", "Kale", "shop", 4m, price: 2m);
        Assert.Equal(["stall", "shop"], Sales(farm).Sales.Channels.Select(channel => channel.Name));
    }

    /// <summary>Before there was a price, list or realized, nothing is near.</summary>
    [Fact]
    public void Near_WithoutAListPrice_IsLeftOut()
    {
        FarmBuilder farm = AtList().Without<PriceRow>(_ => true).Without<SaleRow>(_ => true);
        farm.Sell("2025-05-21", "Kale", "stall", 40m, price: 0m);
        (CropSales sales, Channel stall, _) = Sales(farm);
        Assert.Empty(sales.Near(stall, 20));
    }

    private static (CropSales Sales, Channel Stall, SeasonReview Season) Sales(FarmBuilder farm)
    {
        SeasonReview season = farm.Season(2025);
        CropSales sales = SeasonCosts.Of(season).Avoidable.SalesOf(season.CropNamed("Kale").Crop!);
        return (sales, season.Records.Channels.Single(channel => channel.Name == "stall"), season);
    }

    private static FarmBuilder AtList() =>
        new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m })
            .AsOf("2026-12-31")
            .Bed("One")
            .Channel("stall", ChannelKind.Market)
            .Crop("Kale")
            .Price("Kale", 2m)
            .Planting("K24", "Kale", "One", 100m, "2024-03-01", "2024-09-01")
            .Planting("K25", "Kale", "One", 100m, "2025-03-01", "2025-09-01")
            .Planting("K26", "Kale", "One", 100m, "2026-03-01", "2026-09-01")
            .Pick("2024-04-28", "K24", 250m)
            .Pick("2025-05-20", "K25", 200m)
            .Pick("2026-05-20", "K26", 500m)
            .Sell("2024-05-21", "Kale", "stall", 100m, price: 2m)
            .Sell("2025-05-21", "Kale", "stall", 25m, price: 2.20m)
            .Sell("2025-05-22", "Kale", "stall", 15m, price: 2.20m)
            .Sell("2025-05-23", "Kale", "stall", 20m, price: 1m)
            .Sell("2026-05-21", "Kale", "stall", 500m, price: 2m);
}
