using CsCheck;
using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Losses;
using FarmEconomics.Records;
using FarmEconomics.Reports.Season;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.Generators;
using FarmEconomics.Tests.Reports;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Losses;

public class LossTests
{
    private static readonly long Farms = long.TryParse(Environment.GetEnvironmentVariable("FARMECONOMICS_FARMS"), out long farms) ? farms
        : 150;

    /// <summary>100 lb picked and 5 culled; 60 sold at 3.00 with a fee of 5 %, 2 hours of packing at 20, 12 of boxes.</summary>
    private static FarmBuilder Kale() => new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m }).AsOf("2025-12-31")
        .Bed("One").Channel("market", ChannelKind.Market, 5m).Channel("food bank", ChannelKind.Donation).Channel("heap", ChannelKind.Waste)
            .Channel("home", ChannelKind.Household)
        .Worker("me", WorkerKind.Owner).Task("wash", Stage.Pack)
            .Category("boxes", ExpenseClass.Operating, StatementLine.Selling, varies: CostDriver.Quantity)
        .Crop("Kale", storageDays: 10m, perCrate: 25m).Planting("K1", "Kale", "One", 100m, "2025-05-05", "2025-08-02")
            .Pick("2025-07-01", "K1", 100m, culled: 5m)
        .Sell("2025-07-01", "Kale", "home", 7m).Sell("2025-07-02", "Kale", "market", 60m, price: 3m)
            .Sell("2025-07-03", "Kale", "food bank", 10m).Sell("2025-07-04", "Kale", "heap", 8m)
        .Price("Kale", 3m).Work("2025-07-01", "me", 2m, "wash", crop: "Kale").Spend("2025-07-01", 12m, "boxes", crop: "Kale");

    private static PickedTree Tree(FarmBuilder farm) => PickedTree.Of(SeasonCosts.Of(farm.Season(2025)));

    /// <summary>
    /// A pound nets 3.00 - 0.15 fee - 0.40 packing - 0.20 boxes = 2.25: sold 135.00, home 15.75, food bank 22.50, heap 18.00, 15 lb past
    /// keeping 33.75, culled 11.25.
    /// </summary>
    [Fact]
    public void Picked_ByHand_IsWorthItsPriceNetOfPackingAndFees()
    {
        PickedTree tree = Tree(Kale());

        Assert.Equal(
            [(Fate.Sold, "market", 1, 135.00m), (Fate.Eaten, "home", 0, 15.75m), (Fate.GivenAway, "food bank", 2, 22.50m),
                (Fate.ThrownOut, "heap", 3, 18.00m), (Fate.PastKeeping, null, 10, 33.75m), (Fate.Culled, null, (int?)null, 11.25m)],
            tree.Parts.Select(part => (part.Fate, part.Channel?.Name, part.DaysHeld, part.Value!.Value.Amount)));
        Assert.Equal(236.25m, tree.Value(_ => true).Amount);
        Assert.All(tree.Parts, part => Assert.Equal(new DateOnly(2025, 6, 30), part.Week));
        Assert.Contains("Of $236 worth picked, $86 (36%) earned nothing: $34 past keeping, $23 given away, $18 thrown out and $11 culled.", LossTables.Answer(tree).ToPlainText(), StringComparison.Ordinal);
        Assert.Equal(2, LossTables.RequireProof(tree).Rows.Count);
    }

    [Fact]
    public void Picked_StillKeepingAtTheClosingDate_IsOnHand()
    {
        PickedPart rest = Assert.Single(Tree(Kale().AsOf("2025-07-06")).Parts, part => part.Channel is null && part.Fate != Fate.Culled);

        Assert.Equal((Fate.OnHand, 5, 33.75m), (rest.Fate, rest.DaysHeld, rest.Value!.Value.Amount));
    }

    [Fact]
    public void Picked_OfACropNeverSold_HasNoValueAndSaysWhy()
    {
        FarmBuilder farm = Kale().Crop("Chard").Planting("C1", "Chard", "One", 10m, "2025-05-05", "2025-08-02")
            .Pick("2025-07-01", "C1", 10m);
        PickedTree tree = Tree(farm);

        Assert.StartsWith("no price of Chard is on record", Assert.Single(tree.WithoutValue).Reason, StringComparison.Ordinal);
        Assert.Null(tree.Parts.Single(part => part.Crop.Name == "Chard").Value);
        Assert.Equal(236.25m, tree.Value(_ => true).Amount);
        Assert.Contains("Chard", LossTables.Answer(tree).ToPlainText(), StringComparison.Ordinal);
        Assert.StartsWith("no price of Chard", LossTables.ByCrop(tree).Rows[1][1].Reason, StringComparison.Ordinal);
    }

    /// <summary>Everything picked is in the tree once, sold money and all; every view adds up to the same cents.</summary>
    [Fact]
    public void Picked_OfAnyFarm_AddsUpToTheCent() => RandomFarm.Gen.Sample(
        farm =>
        {
            FarmReview review = farm.Farm.Review();
            foreach (int year in review.Trace.CropYears)
            {
                PickedTree tree = PickedTree.Of(SeasonCosts.Of(review.Season(year)));
                LossTables.RequireProof(tree);
                decimal all = tree.Value(_ => true).Amount;
                decimal? told = tree.Parts.Count > 0 && tree.Parts.All(part => part.Value is null) ? null : all;
                Assert.All(new[] { LossTables.ByFate(tree), LossTables.ByCrop(tree), LossTables.ByWeek(tree), LossTables.ByChannel(tree),
                    LossTables.ByDaysHeld(tree) }, table =>
                {
                    int column = table.Columns.ToList().FindIndex(one => one.Heading is "All" or "Worth");
                    Assert.Equal(told, table.TotalRow![column].Number);
                    Assert.Equal(all, table.Rows.Sum(row => row[column].Number ?? 0m));
                });
                foreach (EnterpriseBudget crop in tree.Season.Crops)
                {
                    Close.To(crop.Sums.Harvested + crop.Sums.Culled, tree.Parts.Where(part => part.Crop == crop.Crop)
                        .Sum(part => part.Quantity), 0.0000001m);
                    Close.To(crop.Sums.OnHand, tree.Parts.Where(part => part.Crop == crop.Crop && part.Fate == Fate.OnHand)
                        .Sum(part => part.Quantity), 0.0000001m);
                    Close.To(crop.Sums.Unsold,
                        tree.Parts.Where(part => part.Crop == crop.Crop && part.Fate is Fate.OnHand or Fate.PastKeeping
                        && part.Crop == crop.Crop).Sum(part => part.Quantity), 0.0000001m);
                }

                Assert.NotEmpty(LossTables.Answer(tree).ToPlainText());
            }
        },
        iter: Farms);

    /// <summary>Two sowings of one crop: the early one sells, the late one doesn't; a perennial is no sowing.</summary>
    private static FarmBuilder TwoSowings() => Kale()
        .Planting("K2", "Kale", "One", 50m, "2025-08-03", "2025-10-01", sown: "2025-07-10", trays: 5m).Pick("2025-09-01", "K2", 5m)
        .Work("2025-08-05", "me", 4m, "wash", planting: "K2").Sell("2025-09-02", "Kale", "heap", 5m)
        .Crop("Rhubarb", perennial: true).Planting("R1", "Rhubarb", "One", 1m, "2024-05-05")
            .Planting("R2", "Rhubarb", "One", 1m, "2024-05-05");

    [Fact]
    public void Sowings_ByHand_TellFirstAndLastThatPaidAndTheWorstOfGoodCrops()
    {
        Sowings sowings = Sowings.Of(TwoSowings().Season(2025));
        (EnterpriseBudget crop, IReadOnlyList<Sowing> all, Sowing? first, Sowing? last) = Assert.Single(sowings.ByCrop);

        Assert.Equal("Kale", crop.Name);
        Assert.Equal([new DateOnly(2025, 5, 5), new DateOnly(2025, 7, 10)], all.Select(sowing => sowing.Sown));
        Assert.Equal(("K1", "K1"), (first!.Budget.Name, last!.Budget.Name));
        Sowing worst = Assert.Single(sowings.WorstOfGoodCrops);
        Assert.Equal("K2", worst.Budget.Name);
        Assert.Equal((0.08m, 0.04m), (Sowing.HoursPerBedFoot(worst.Budget).Value!.Value, Sowing.HoursPerBedFoot(crop).Value!.Value));
        Assert.Equal(1m, Sowing.NotSold(worst.Budget).Value);
        Close.To(1m - (60m / 110m), Sowing.NotSold(crop).Value!.Value, 0.0000001m);
        Assert.StartsWith("1 sowing of crops that pay their way fell short: K2 (-$", SowingTables.Answer(sowings)
            .ToPlainText(), StringComparison.Ordinal);
    }

    /// <summary>Washing the kale's four crates took 120 minutes; with a barrel washer the year after, 60 for 2.4 crates.</summary>
    [Fact]
    public void Tasks_OverTwoYears_AreMinutesPerCrateAndPerBedFoot()
    {
        FarmBuilder farm = Kale().AsOf("2026-12-31").Task("weed", Stage.Grow).Task("books", Stage.Overhead)
            .Planting("K3", "Kale", "One", 100m, "2026-05-05", "2026-08-02").Pick("2026-07-01", "K3", 60m)
            .Work("2026-07-01", "me", 1m, "Wash", crop: "Kale").Work("2026-06-01", "me", 5m, "weed").Work("2026-06-01", "me", 9m, "books");
        IReadOnlyList<TaskMinutes> tasks = TaskMinutes.Of(farm.Season(2026));

        Assert.Equal(["weed", "wash"], tasks.Select(task => task.Task));
        Assert.Equal([(2026, 5m, 3m)], tasks[0].Years.Select(year => (year.CropYear, year.Hours, year.Minutes.Value!.Value)));
        Assert.Equal([(2025, 30m), (2026, 25m)], tasks[1].Years.Select(year => (year.CropYear, year.Minutes.Value!.Value)));
        Assert.Equal(TaskPer.Crate, tasks[1].Per);
        Assert.Single(TaskMinutes.Of(farm.Season(2025)));
        Assert.Equal(2, SowingTables.Tasks(farm.Season(2026)).Rows.Count);
    }

    [Fact]
    public void DemoFarm_Losses_AreWhatItsDesignSays()
    {
        SeasonReview season = DemoSeason.Review.Season(2025);
        PickedTree tree = PickedTree.Of(SeasonCosts.Of(season));
        Sowings sowings = Sowings.Of(season);

        LossTables.RequireProof(tree);
        Assert.Empty(tree.WithoutValue);
        Assert.Equal(season.Farm.SalesValue
            - tree.SoldUnpicked, Money.Sum(tree.Parts.Where(part => part.Fate == Fate.Sold).Select(part => part.Amount!.Value)));
        Assert.Equal(12, sowings.WorstOfGoodCrops.Count);
        Assert.Equal(season.Plantings.Count, sowings.All.Count);
        Assert.Equal(season.Farm.NetReturn.Amount, sowings.All.Sum(sowing => sowing.NetReturn.Value!.Value));
        Assert.Equal(season.Lots.Sum(lot => lot.Quantity + lot.Culled), tree.Parts.Sum(part => part.Quantity));
    }
}
