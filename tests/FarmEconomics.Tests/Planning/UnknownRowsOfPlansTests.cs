using FarmEconomics.Files.Start;
using FarmEconomics.Planning;
using FarmEconomics.Planning.Variances;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>Hours and costs that a plan's rows don't say are not known, and never 0; by hand (docs/methods.md, section 20).</summary>
public class UnknownRowsOfPlansTests
{
    /// <summary>Neither bills nor hours of any season are on file: a plan made of it says none, in its rows and in plan.csv.</summary>
    [Fact]
    public void Draft_OfAFarmWithoutHoursAndBills_SaysNone()
    {
        FarmBuilder farm = PlanByHandTests.Farm().Without<ExpenseRow>(_ => true).Without<LaborRow>(_ => true);
        PlanModel model = PlanByHandTests.ModelOf(farm);
        PlanDraft draft = LikeLastYear.Of(farm.Season(2025), model);
        Assert.NotEmpty(draft.Plantings);
        Assert.All(draft.Plantings, one => Assert.Equal((null, null), (one.Hours, one.Cost)));
        (string file, IReadOnlyList<string> headings, IReadOnlyList<IReadOnlyList<string>> rows) =
            PlanRecords.Rows(farm.Season(2025).Settings, draft)[0];
        Assert.Equal("plan.csv", file);
        foreach (string column in (string[])["hours", "cost"])
        {
            Assert.All(rows, row => Assert.Equal("", row[headings.ToList().IndexOf(column)]));
        }

        PlanOutlook outlook = PlanOutlook.Of(farm.Season(2025), model, draft);
        Assert.Equal(("there are no hours of 2025 on file", "there are no expenses of 2025 on file"),
            (outlook.HoursUnknown, outlook.CostsUnknown));
        Assert.All(outlook.Supplies, need => Assert.Null(need.Cost));
        Assert.DoesNotContain(model.NotChecked, one => one.Contains("keeps its length", StringComparison.Ordinal));
    }

    /// <summary>Blank cells of a plan on file: no hours, no wages and no cash are told of it, with the crop named.</summary>
    [Fact]
    public void Outlook_OfRowsThatSayNoHoursOrCost_NamesThem()
    {
        FarmBuilder farm = WithPlan();
        PlanModel model = PlanByHandTests.ModelOf(farm);
        PlanOutlook Of(Func<DraftPlanting, DraftPlanting> change)
        {
            PlanDraft draft = PlanOnFile.Of(farm.Season(2025).Records, 2025)!;
            DraftPlanting row = change(draft.Plantings[0] with { CropYear = 2026, In = Day("2026-05-01"), Out = Day("2026-07-31") });
            return PlanOutlook.Of(farm.Season(2025), model, new PlanDraft(2026, [row], []));
        }

        PlanOutlook whole = Of(row => row), hourless = Of(row => row with { Hours = null }), costless = Of(row => row with { Cost = null });
        Assert.Equal((null, null), (whole.HoursUnknown, whole.CostsUnknown));
        const string Hours = "the plan's rows of Carrots say no hours", Cost = "the plan's rows of Carrots say no cost";
        Assert.Equal((Hours, Hours, Hours), (hourless.HoursUnknown, hourless.CostsUnknown, hourless.BreakEven.Reason));
        Assert.Equal((null, Cost, Cost), (costless.HoursUnknown, costless.CostsUnknown, costless.BreakEven.Reason));
        Assert.Null(Assert.Single(costless.Supplies).Cost);

        // What came in before the year was paid for then.
        PlanOutlook before = Of(row => row with { Cost = null, In = Day("2025-10-01") });
        Assert.Null(before.CostsUnknown);
    }

    [Fact]
    public void PlanOnFile_WithBlankCells_HoldsThemAsNotKnown()
    {
        FarmBuilder farm = WithPlan();
        farm.Set(farm.Tables.Plan[0], PlanRow.HoursColumn, null);
        farm.Set(farm.Tables.Plan[0], PlanRow.CostColumn, null);
        DraftPlanting row = Assert.Single(PlanOnFile.Of(farm.Season(2025).Records, 2025)!.Plantings);
        Assert.Equal((null, null), (row.Hours, row.Cost));
    }

    /// <summary>
    /// 250 lb planned and no hours; 200 lb took 15, so they count as 18.75: 450 - 18.75 x 11 - 40 = 203.75. A fifth less yield: 360 - 165 -
    /// 40, -48.75. No part is of hours; 15 of them at 4 more -60; seed +10. What came is 105.
    /// </summary>
    [Fact]
    public void Variances_OfAPlanWithoutHours_CountThemAsTheyCame()
    {
        FarmBuilder farm = WithPlan();
        farm.Set(farm.Tables.Plan[0], PlanRow.HoursColumn, null);
        PlanVariances variances = PlanVariances.Of(farm.Season(2025))!;
        CropVariance carrots = Assert.Single(variances.Crops);
        Assert.Equal((203.75m, 105m, 203.75m), (carrots.Planned.Amount, carrots.Actual.Amount, variances.YearPlanned.Amount));
        Assert.Equal(
            [(VarianceKind.Yield, -48.75m), (VarianceKind.Wage, -60m), (VarianceKind.Spending, 10m)],
            carrots.Parts.Where(part => part.Value.Amount != 0m).Select(part => (part.Key, part.Value.Amount))
        );
        Assert.Equal(["hours of Carrots"], variances.AsCame);
        Assert.Empty(PlanVariances.Of(WithPlan().Season(2025))!.AsCame);
    }

    /// <summary>Seed of 30 came on the length that was planned: no part of the difference is of it, and -46 + 11 - 60 are left.</summary>
    [Fact]
    public void Variances_OfAPlanWithoutCost_CountItAsItCame()
    {
        FarmBuilder farm = WithPlan();
        farm.Set(farm.Tables.Plan[0], PlanRow.CostColumn, null);
        PlanVariances variances = PlanVariances.Of(farm.Season(2025))!;
        CropVariance carrots = Assert.Single(variances.Crops);
        Assert.Equal((200m, -95m), (carrots.Planned.Amount, carrots.Difference.Amount));
        Assert.Equal(0m, carrots.Parts[VarianceKind.Spending].Amount);
        Assert.Equal(["seed and supplies of Carrots"], variances.AsCame);
    }

    /// <summary>
    /// Kale stood in 2024 alone, when nobody logged: its hours aren't 0, so the mix doesn't take it for free of work, and says so. Carrots
    /// were logged in 2025. What the grower wishes goes before.
    /// </summary>
    [Fact]
    public void Crop_WhoseSeasonsHaveNoHours_KeepsItsLength()
    {
        FarmBuilder farm = PlanByHandTests.Farm().Crop("Kale").Planting("Kale 24", "Kale", "B", 40m, "2024-05-01", "2024-07-31")
            .Pick("2024-07-10", "Kale 24", 40m).Sell("2024-07-12", "Kale", "Market", 40m, price: 3m);
        PlanModel model = PlanByHandTests.ModelOf(farm);
        PlanSowing kale = PlanByHandTests.SowingsOf(model, "Kale")[0];
        Assert.False(kale.HoursKnown);
        Assert.Equal((0.0, 0.0), kale.Bounds);
        Assert.Contains("hours of Kale: no season that grew it has any on record, so it keeps its length", model.NotChecked);
        Assert.True(PlanByHandTests.SowingsOf(model, "Carrots")[0].HoursKnown);
        PlanSettings wish = new() { Least = new Dictionary<string, decimal> { ["Kale"] = 10m } };
        Assert.Equal(double.PositiveInfinity, PlanByHandTests.SowingsOf(PlanByHandTests.ModelOf(farm, wish), "Kale")[0].Bounds.Most);
    }

    private static FarmBuilder WithPlan() =>
        VariancesByHandTests.WithPlan(PlanByHandTests.Farm(), new DateOnly(2025, 5, 1), 250m, 40m, weeks: 2m);

    private static DateOnly Day(string iso) => FarmBuilder.Day(iso);
}
