using FarmEconomics.Budgets;
using FarmEconomics.Reports.Answers;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Tables;
using Xunit;

namespace FarmEconomics.Tests.Answers;

public class SharedCostsReportTests
{
    private static IReadOnlyList<Block> Make(ReviewedFarm farm, SharedCostsParameters? asked = null) => new SharedCostsReport().Make(farm, asked ?? new SharedCostsParameters(), TestContext.Current.CancellationToken);

    [Fact]
    public void Table_OfTheDemoFarm_HoldsEveryCentOfSharedCost()
    {
        SeasonReview season = AnswerFarms.Demo.Season;
        ReportTable costs = Make(AnswerFarms.Demo).Table(SharedCostsBlock.Costs);
        Assert.Equal(season.Pools.Sum(pool => pool.Total.Amount), costs.Rows.Sum(row => row[2].Number));
        Assert.Equal(season.Pools.Sum(pool => pool.Ownership.Amount), costs.TotalRow![4].Number);
        Assert.Equal(season.Pools.Sum(pool => pool.ToCrops.Amount), costs.Rows.Sum(row => row[5].Number));
    }

    [Fact]
    public void Figures_OfTheDemoFarm_AreThoseOfTheTable()
    {
        IReadOnlyList<KeyFigure> figures = Make(AnswerFarms.Demo).OfType<FiguresBlock>().Single().Figures;
        ReportTable costs = Make(AnswerFarms.Demo).Table(SharedCostsBlock.Costs);
        Assert.Equal([costs.TotalRow![2].Number, costs.TotalRow[4].Number, costs.TotalRow[6].Number], figures.Take(3).Select(figure => (decimal?)figure.Value));
    }

    [Fact]
    public void Interest_NotGiven_LeavesOwningBlankWithTheReason()
    {
        ReviewedFarm farm = AnswerFarms.Of(("crops.csv", "crop,unit\nKale,bunch\n"), ("beds.csv", "bed,length_ft\nB,50\n"), ("plantings.csv", "planting,crop,bed,bed_feet,in_bed,out_of_bed\nK,Kale,B,50,2025-05-01,2025-08-01\n"),
            ("harvests.csv", "date,planting,quantity\n2025-07-01,K,10\n"), ("channels.csv", "channel,kind\nStall,market\n"), ("sales.csv", "date,crop,channel,quantity,unit_price\n2025-07-02,Kale,Stall,10,2\n"),
            ("expenses.csv", "date,amount,category,pool\n2025-06-01,50,fuel,truck\n"), ("categories.csv", "category,class,statement_line\nfuel,operating,overhead\n"), ("pools.csv", "pool,basis,statement_line\ntruck,sales-value,infrastructure\n"),
            ("assets.csv", "asset,pool,in_service,cost,life_years\ntruck,truck,2020-01-01,5000,10\n"));
        IReadOnlyList<Block> page = Make(farm);
        KeyFigure owning = page.OfType<FiguresBlock>().Single().Figures.Single(figure => figure.Name == "owning");
        Assert.Equal("", owning.Shown);
        Assert.Contains("interest_percent", owning.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Farm_WithoutSharedCost_SaysSo()
    {
        ReviewedFarm farm = AnswerFarms.Of(("crops.csv", "crop,unit\nKale,bunch\n"), ("beds.csv", "bed,length_ft\nB,50\n"), ("plantings.csv", "planting,crop,bed,bed_feet,in_bed,out_of_bed\nK,Kale,B,50,2025-05-01,2025-08-01\n"), ("harvests.csv", "date,planting,quantity\n2025-07-01,K,10\n"), ("channels.csv", "channel,kind\nHome,household\n"), ("sales.csv", "date,crop,channel,quantity\n2025-07-02,Kale,Home,5\n"));
        Assert.Equal("No shared cost is on record for 2025", Make(farm).OfType<HeadlineBlock>().Single().Headline);
    }
}
