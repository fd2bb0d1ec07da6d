using FarmEconomics.Budgets;
using FarmEconomics.Planning;
using FarmEconomics.Planning.Variances;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>What a plan doesn't know isn't nothing, and what must be paid is in its cash; by hand (docs/methods.md, section 20).</summary>
public class UnknownInPlansByHandTests
{
    /// <summary>
    /// Chard was sold without a price, carrots at 2. What it would bring isn't known, so the mix leaves its 40 feet as they were, rather
    /// than drop it for carrots; a wish of the grower's goes before.
    /// </summary>
    [Fact]
    public void Crop_WithoutAPrice_KeepsItsLength()
    {
        PlanModel model = PlanByHandTests.ModelOf(WithChard());
        PlanSowing chard = Assert.Single(PlanByHandTests.SowingsOf(model, "Chard"));
        Assert.Equal((40.0, 40.0), chard.Bounds);
        Assert.Equal((0.0, double.PositiveInfinity), PlanByHandTests.SowingsOf(model, "Carrots")[0].Bounds);
        BestMix mix = BestMix.Of(model, Programs.Solver);
        Assert.Equal(40.0, model.Sowings.Select((one, i) => one.Crop == chard.Crop ? mix.Best!.Feet[i] : 0.0).Sum(), 6);
        PlanSettings none = new() { Most = new Dictionary<string, decimal> { ["Chard"] = 0m } };
        PlanModel wished = PlanByHandTests.ModelOf(WithChard(), none);
        Assert.Equal(double.PositiveInfinity, PlanByHandTests.SowingsOf(wished, "Chard")[0].Bounds.Most);
    }

    /// <summary>
    /// Beets grew in 2024 alone, a year without bills: their cost isn't known, carrots' of 2025 is. They keep their 0 feet, unless the
    /// grower says at least how many: 0 is no more than none, but leaves them to the mix.
    /// </summary>
    [Fact]
    public void Crop_WithoutCostsOnRecord_KeepsItsLengthUnlessTheGrowerSaysOtherwise()
    {
        const string Note = "costs of Beets: no season that grew it has any on record, so it keeps its length";
        FarmBuilder Beets() => PlanByHandTests.Farm()
            .Without<ExpenseRow>(row => row.Date.Year == 2024)
            .Crop("Beets")
            .Planting("B24", "Beets", "B", 50m, "2024-05-01", "2024-07-31")
            .Pick("2024-07-10", "B24", 50m)
            .Sell("2024-07-12", "Beets", "Market", 50m, price: 2m)
            .Work("2024-07-10", "Ann", 2m, "harvest", crop: "Beets");
        PlanModel model = PlanByHandTests.ModelOf(Beets());
        Assert.Contains(Note, model.NotChecked);
        Assert.Equal((0.0, 0.0), PlanByHandTests.SowingsOf(model, "Beets")[0].Bounds);

        PlanSettings wish = new() { Least = new Dictionary<string, decimal> { ["Beets"] = 0m } };
        PlanModel wished = PlanByHandTests.ModelOf(Beets(), wish);
        Assert.DoesNotContain(Note, wished.NotChecked);
        Assert.Equal((0.0, double.PositiveInfinity), PlanByHandTests.SowingsOf(wished, "Beets")[0].Bounds);
    }

    /// <summary>Of nothing a price is on record: no sales and no cash are known, but they are of a plan that names its prices.</summary>
    [Fact]
    public void Sales_WithoutAnyPrice_AreNotKnown()
    {
        FarmBuilder farm = Bare().Planting("C25", "Carrots", "A", 100m, "2025-05-01", "2025-07-31").Pick("2025-07-10", "C25", 100m)
            .Sell("2025-07-12", "Carrots", "Market", 100m);
        SeasonReview season = farm.Season(2025);
        PlanModel model = PlanByHandTests.ModelOf(farm);
        Assert.NotNull(PlanOutlook.NoPrices(season));
        Assert.NotNull(PlanOutlook.Of(season, model, LikeLastYear.Of(season, model)).SalesUnknown);
        PlanDraft priced = new(2026, [], [new DraftSale(2026, "Carrots", "Market", 5m, 2m, Day("2026-07-10"))]);
        Assert.Null(PlanOutlook.Of(season, model, priced).SalesUnknown);
        Assert.Null(PlanOutlook.NoPrices(PlanByHandTests.Farm().Season(2025)));
    }

    /// <summary>
    /// Wages of 1,000 in July, and no log of who worked: no hours of a plan tell them, so they come again. With hired hours logged the plan
    /// has its own.
    /// </summary>
    [Fact]
    public void Wages_WithoutALogOfHiredHours_ComeAgain()
    {
        FarmBuilder Farm() => Bare().Planting("C25", "Carrots", "A", 100m, "2025-05-01", "2025-07-31").Pick("2025-07-10", "C25", 100m)
            .Sell("2025-07-12", "Carrots", "Market", 100m, price: 2m)
            .Category("wages", ExpenseClass.Labor, StatementLine.Labor).Spend("2025-07-15", 1000m, "wages");
        FarmBuilder farm = Farm();
        Assert.Equal([1000m], SeasonCash.Running(farm.Season(2025)).Select(row => row.Money));
        PlanModel model = PlanByHandTests.ModelOf(farm);
        DraftPlanting row = new(2026, "C26", "Carrots", "A", 100m, Day("2026-05-01"), Day("2026-07-31"))
        {
            Yield = 100m,
            Hours = 30m,
            Cost = 0m,
        };
        PlanOutlook outlook = PlanOutlook.Of(farm.Season(2025), model, new PlanDraft(2026, [row], []));
        Assert.Equal((1000m, 0m), (outlook.Months[6].Running, outlook.Months.Sum(month => month.Wages)));
        Assert.Equal("there are no hours of 2025 on file", outlook.HoursUnknown);
        Assert.DoesNotContain(outlook.Problems, problem => problem.Kind == PlanProblemKind.Hours);
        FarmBuilder logged = Farm().Worker("Al", WorkerKind.Hired, 20m).Work("2025-07-10", "Al", 50m, "harvest", crop: "Carrots");
        Assert.Empty(SeasonCash.Running(logged.Season(2025)));

        // An owner's hours tell no wages, nor does a hired hand's row of none.
        FarmBuilder own = Farm().Worker("Ann", WorkerKind.Owner).Work("2025-07-10", "Ann", 50m, "harvest", crop: "Carrots");
        Assert.Equal([1000m], SeasonCash.Running(own.Season(2025)).Select(row => row.Money));
        FarmBuilder idle = Farm().Worker("Al", WorkerKind.Hired, 20m).Work("2025-07-10", "Al", 0m, "harvest", crop: "Carrots");
        Assert.Equal([1000m], SeasonCash.Running(idle.Season(2025)).Select(row => row.Money));
    }

    /// <summary>
    /// Al picked 50 hours for a wage nobody wrote down. What a plan's 30 hours of his cost isn't known, so no cash is told, nor kept within
    /// a line of credit; at 20 an hour they are 600. A farm where nobody is hired isn't touched.
    /// </summary>
    [Fact]
    public void HiredHours_WithoutAWageOnRecord_LeaveCashUnknown()
    {
        const string Why = "hired hours have no wage on record";
        FarmBuilder Farm(decimal? wage) => Bare().Worker("Al", WorkerKind.Hired, wage)
            .Planting("C25", "Carrots", "A", 100m, "2025-05-01", "2025-07-31").Pick("2025-07-10", "C25", 100m)
            .Sell("2025-07-12", "Carrots", "Market", 100m, price: 2m)
            .Spend("2025-04-20", 20m, "seed", crop: "Carrots").Work("2025-07-10", "Al", 50m, "harvest", crop: "Carrots");
        DraftPlanting row = new(2026, "C26", "Carrots", "A", 60m, Day("2026-05-01"), Day("2026-07-31"))
        {
            Yield = 60m,
            Hours = 30m,
            Cost = 12m,
        };
        (PlanModel Model, PlanOutlook Outlook) Of(FarmBuilder farm)
        {
            PlanModel model = PlanByHandTests.ModelOf(farm, new PlanSettings { OpeningCash = 100m });
            return (model, PlanOutlook.Of(farm.Season(2025), model, new PlanDraft(2026, [row], [])));
        }

        (PlanModel unknown, PlanOutlook untold) = Of(Farm(null));
        Assert.Equal((false, 15.0), (unknown.Hours.HiredCostKnown, unknown.Hours.HiredCost));
        Assert.Equal((Why, null), (untold.CostsUnknown, untold.SeasonCostsUnknown));
        Assert.Equal(Why, untold.BreakEven.Reason);
        Assert.Null(unknown.Cash);
        Assert.Contains($"cash by month: {Why}", unknown.NotChecked);

        (PlanModel known, PlanOutlook told) = Of(Farm(20m));
        Assert.Equal((true, null), (known.Hours.HiredCostKnown, told.CostsUnknown));
        Assert.Equal(600m, told.Months.Sum(month => month.Wages));
        Assert.NotNull(known.Cash);
        Assert.True(PlanByHandTests.ModelOf(PlanByHandTests.Farm()).Hours.HiredCostKnown);
    }

    /// <summary>
    /// Boxes of the weeks of July 9 and 16 are to hold 100 each. The plan has 60 in one and 100 in the other: 40 are bought in at 1.25 in
    /// July, 50 of money that is in the cash. A plan without boxes has all 200 bought in: members' payments are in its cash.
    /// </summary>
    [Fact]
    public void Boxes_ThatLackProduce_AreBoughtInFromTheCash()
    {
        double[] target = new double[PlanModel.Weeks];
        (target[27], target[28]) = (100.0, 100.0);
        FarmBuilder farm = PlanByHandTests.Farm();
        PlanModel model = PlanByHandTests.ModelOf(farm) with { BoxTarget = target, BuyIn = 1.25 };
        DraftSale Box(string day, decimal units) => new(2026, "Carrots", "Boxes", units, 2m, Day(day));
        PlanOutlook Of(params DraftSale[] sales) => PlanOutlook.Of(farm.Season(2025), model, new PlanDraft(2026, [], sales));
        PlanMonth july = Of(Box("2026-07-09", 30m), Box("2026-07-16", 50m)).Months[6];
        Assert.Equal((50m, -50m), (july.BoughtIn, july.Net));
        Assert.Equal(250m, Of().Months.Sum(month => month.BoughtIn));
        Assert.Equal(0m, Of(Box("2026-07-09", 49.8m), Box("2026-07-16", 50m)).Months[6].BoughtIn); // rounding
    }

    /// <summary>
    /// 100 in January, 300 from members in February as in the season, 800 of seed in March: 400 short. 300 may be owed: 100 more than the
    /// line lets be, at the end of March. A line of 400 is enough.
    /// </summary>
    [Theory]
    [InlineData(300.0, 100.0)]
    [InlineData(400.0, 0.0)]
    public void Credit_BeyondTheLine_IsTold(double line, double by)
    {
        FarmBuilder farm = PlanByHandTests.Farm().Without<ExpenseRow>(row => row.Category is not "equipment");
        PlanModel model = PlanByHandTests.ModelOf(farm) with { Cash = SmallFarm.Cash(100.0, line) };
        DraftPlanting row = new(2026, "C26", "Carrots", "A", 10m, Day("2026-03-05"), Day("2026-07-31"))
        {
            Yield = 0m,
            Hours = 0m,
            Cost = 800m,
        };
        PlanOutlook outlook = PlanOutlook.Of(farm.Season(2025), model, new PlanDraft(2026, [row], []));
        PlanProblem[] told = [.. outlook.Problems.Where(one => one.Kind == PlanProblemKind.Credit)];
        Assert.Equal(by > 0.0 ? [(Day("2026-03-01"), (decimal)by)] : [], told.Select(one => (one.Day, one.Short)));
    }

    /// <summary>12 trays from week 8 to 11 and 3 more from week 10: 15 at the most, 5 over the 10 of the house, told once.</summary>
    [Fact]
    public void Trays_BeyondTheRoom_AreToldOnce()
    {
        FarmBuilder farm = PlanByHandTests.Farm();
        PlanModel model = PlanByHandTests.ModelOf(farm) with { Trays = SmallFarm.Weekly(10.0) };
        DraftPlanting Row(string name, string sown, decimal trays) =>
            new(2026, name, "Carrots", "A", 10m, Day("2026-03-26"), Day("2026-07-31"))
            {
                Sown = Day(sown),
                Trays = trays,
                Yield = 0m,
                Hours = 0m,
                Cost = 0m,
            };
        PlanDraft draft = new(2026, [Row("C1", "2026-02-26", 12m), Row("C2", "2026-03-12", 3m)], []);
        IReadOnlyList<PlanProblem> all = PlanOutlook.Of(farm.Season(2025), model, draft).Problems;
        PlanProblem told = Assert.Single(all, one => one.Kind == PlanProblemKind.Trays);
        Assert.Equal((Day("2026-02-26"), 5m), (told.Day, told.Short));
    }

    /// <summary>Crates of crops without a size aren't 0 crates.</summary>
    [Fact]
    public void Crates_WithoutASize_AreNotKnown()
    {
        FarmBuilder farm = PlanByHandTests.Farm();
        DraftPlanting garlic = new(2026, "G", "Garlic", "A", 10m, Day("2026-03-26"), Day("2026-07-31"))
        {
            Yield = 10m,
            Hours = 0m,
            Cost = 0m,
        };
        PlanModel model = PlanByHandTests.ModelOf(farm);
        PlanOutlook Of(DraftPlanting one) => PlanOutlook.Of(farm.Season(2025), model, new PlanDraft(2026, [one], []));
        Assert.All(Of(garlic).Weeks, week => Assert.Null(week.Crates));
        Assert.NotNull(Of(garlic with { Crop = "Carrots" }).Weeks[0].Crates);
    }

    /// <summary>
    /// 100 feet planned for 250 lb, 20 hours, 40 of seed; 200 lb came, and neither bills nor hours of the year are on record. They count as
    /// planned for what grew: 40 of seed, 16 hours. What differs is 50 lb at 1.80 less 4 hours at 0: nothing was saved.
    /// </summary>
    [Fact]
    public void Variances_OfASeasonWithoutBillsAndHours_AreNoneOfCosts()
    {
        FarmBuilder farm = VariancesByHandTests.WithPlan(PlanByHandTests.Farm(), new DateOnly(2025, 5, 1), 250m, 40m, weeks: 2m)
            .Without<ExpenseRow>(_ => true)
            .Without<LaborRow>(_ => true);
        PlanVariances variances = PlanVariances.Of(farm.Season(2025))!;
        CropVariance carrots = Assert.Single(variances.Crops);
        Assert.Equal(["seed and supplies", "hours"], variances.AsPlanned);
        Assert.Equal(
            [(VarianceKind.Yield, -90m)],
            carrots.Parts.Where(part => part.Value.Amount != 0m).Select(part => (part.Key, part.Value.Amount))
        );
        FarmBuilder known = VariancesByHandTests.WithPlan(PlanByHandTests.Farm(), new DateOnly(2025, 5, 1), 250m, 40m, weeks: 2m);
        Assert.Empty(PlanVariances.Of(known.Season(2025))!.AsPlanned);
    }

    /// <summary>
    /// Rhubarb has stood since 2022 and is planned for 36.4 hours in 2025. Closed on March 15, 73 of its 364 days in the year up to
    /// December 31 have passed, not four fifths of those since 2022: 7.3 hours at 15.
    /// </summary>
    [Fact]
    public void Variances_OfAPerennialDuringTheYear_CountItsDaysInTheYear()
    {
        FarmBuilder farm = Bare().AsOf("2025-03-15").Perennial("Rhubarb").Planting("R", "Rhubarb", "A", 10m, "2022-04-01")
            .Work("2025-03-10", "Ann", 1m, "grow", crop: "Rhubarb")
            .Add<PlanRow>(new RowValues
            {
                ["crop_year"] = 2025,
                ["planting"] = "R",
                ["crop"] = "Rhubarb",
                ["bed"] = "A",
                ["bed_feet"] = 10m,
                ["in_bed"] = Day("2022-04-01"),
                ["out_of_bed"] = Day("2025-12-31"),
                ["yield"] = 10m,
                ["hours"] = 36.4m,
            });
        Assert.Equal(-109.50m, PlanVariances.Of(farm.Season(2025))!.Planned.Amount);
    }

    private static FarmBuilder WithChard() =>
        PlanByHandTests.Farm()
            .Crop("Chard")
            .Planting("Chard 25", "Chard", "B", 40m, "2025-05-01", "2025-07-31")
            .Pick("2025-07-10", "Chard 25", 40m)
            .Sell("2025-07-12", "Chard", "Market", 40m);

    private static DateOnly Day(string iso) => FarmBuilder.Day(iso);

    private static FarmBuilder Bare() =>
        new FarmBuilder(new FarmSettings { OwnerWage = 15m }).AsOf("2025-12-31").Bed("A").Bed("B").Crop("Carrots")
            .Channel("Market", ChannelKind.Market).Worker("Ann", WorkerKind.Owner);
}
