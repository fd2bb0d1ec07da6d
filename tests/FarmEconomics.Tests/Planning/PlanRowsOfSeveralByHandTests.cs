using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// A season repeated and a plan on file where not all was sold, at list price or at all, by hand: the farm of <see cref="PlanByHandTests"/>
/// and that of <see cref="FactsByHandTests"/>.
/// </summary>
public class PlanRowsOfSeveralByHandTests
{
    /// <summary>
    /// List price 5, sold at 2: the plan sells at 2. 20 lb more were picked and eaten at home, which is no sale: 220 lb of 100 feet, and
    /// 100 the year before: 160 expected, 16/22 of each 100 lb sold.
    /// </summary>
    [Fact]
    public void LikeLastYear_SellsWhatWasSoldAtWhatWasPaid()
    {
        FarmBuilder farm = PlanByHandTests
            .Farm()
            .Channel("Home", ChannelKind.Household)
            .Price("Carrots", 5m, "Market")
            .Pick("2025-07-17", "C25", 20m)
            .Sell("2025-07-18", "Carrots", "Home", 20m);
        PlanDraft draft = LikeLastYear.Of(farm.Season(2025), PlanByHandTests.ModelOf(farm));
        Assert.Equal(
            [("Market", 72.727m, 2m, 9), ("Market", 72.727m, 2m, 16)],
            draft.Sales.Select(sale => (sale.Channel, sale.Quantity, sale.Price, sale.From.Day))
        );
    }

    /// <summary>Garlic that stands since October stays, 40 feet of it, beside the 40 sown again and what else there was.</summary>
    [Fact]
    public void LikeLastYear_KeepsWhatStands()
    {
        FarmBuilder farm = FactsByHandTests.Farm();
        PlanDraft draft = LikeLastYear.Of(farm.Season(2025), PlanByHandTests.ModelOf(farm));
        Assert.Equal(
            [("G26", 40m), ("Garlic 2026-1", 40m), ("Leeks 2026-1", 100m), ("R", 20m)],
            draft.Plantings.Select(one => (one.Planting, one.BedFeet)).Order()
        );
    }

    /// <summary>Four trays are written; of nothing sold the price is the one written.</summary>
    [Fact]
    public void OnFile_TakesTraysAndThePriceOfNothing()
    {
        FarmBuilder farm = new FarmBuilder().Crop("Leeks").Unit("Leeks", "case", 12m).Bed("A").Channel("Market", ChannelKind.Market);
        farm.Add<PlanRow>(
            new RowValues
            {
                ["crop_year"] = 2026,
                ["planting"] = "L26",
                ["crop"] = "Leeks",
                ["bed"] = "A",
                ["bed_feet"] = 20m,
                ["in_bed"] = new DateOnly(2026, 5, 1),
                ["out_of_bed"] = new DateOnly(2026, 9, 1),
                ["trays"] = 4m,
                ["yield"] = 50m,
                ["hours"] = 8m,
            }
        );
        farm.Add<PlanSaleRow>(
            new RowValues
            {
                ["crop_year"] = 2026,
                ["crop"] = "Leeks",
                ["channel"] = "Market",
                ["quantity"] = 0m,
                ["unit"] = "case",
                ["price"] = 30m,
                ["from"] = new DateOnly(2026, 7, 10),
            }
        );
        PlanDraft draft = PlanOnFile.Of(farm.Link(), 2026)!;
        Assert.Equal(4m, Assert.Single(draft.Plantings).Trays);
        Assert.Equal(new DraftSale(2026, "Leeks", "Market", 0m, 30m, new DateOnly(2026, 7, 10)), Assert.Single(draft.Sales));
    }
}
