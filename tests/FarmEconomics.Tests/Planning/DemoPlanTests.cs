using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Short;
using FarmEconomics.Files;
using FarmEconomics.Files.Results;
using FarmEconomics.Files.Start;
using FarmEconomics.Planning;
using FarmEconomics.Planning.Programs;
using FarmEconomics.Reports.Planning;
using FarmEconomics.Tests.Files;
using FarmEconomics.Tests.House;
using FarmEconomics.Water;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>The demo farm's next year: the model from its records, the best mix, and the proof.</summary>
public class DemoPlanTests
{
    private static readonly string Folder = Path.Combine(Repository.Root, "demo-data");
    private static readonly Lazy<FarmReview> Demo = new(() => FarmFolder.Open(Folder).Review!);
    private static readonly Lazy<PlanModel> Model = new(() => PlanFacts.Of(Demo.Value, SeasonCosts.Of(Season)));

    private static SeasonReview Season => Demo.Value.Season(2025);

    [Fact]
    public void BestMix_OfTheDemo_GainsAndIsProvedToTheCent()
    {
        BestMix mix = BestMix.Of(Model.Value, Programs.Solver);

        Assert.True(mix.Best!.Worth > mix.Today.Worth);
        Programs.Near(mix.Duality.Primal, mix.Duality.Dual, 0.005);
        PlanLengths simpler = mix.Simpler()!;
        Assert.True(simpler.Feet.Sum() < mix.Best.Feet.Sum() && simpler.Worth >= mix.Today.Worth + (0.979 * (mix.Best.Worth - mix.Today.Worth)));
        PlanLengths chosen = mix.Rounded(simpler, 5.0);
        PlanQuantities quantities = mix.QuantitiesOf(chosen.Feet)!;
        PlanDraft draft = DraftMaker.Of(Season.Records, Model.Value, chosen.Feet, quantities);
        PlanProof proof = PlanProof.Of(Season.Records, Model.Value, draft, quantities, chosen.Feet);

        Assert.True(proof.Holds, $"{proof}");
        Programs.Near(proof.Objective, (double)proof.Planned.Amount, 25.0);
        Assert.DoesNotContain(PlanOutlook.Of(Season, Model.Value, draft).Problems, problem => problem.Kind != PlanProblemKind.Hours);
    }

    /// <summary>
    /// What a unit more is worth is asked in the run the best mix came from: the same as in a program made anew, and nothing else changes
    /// by it.
    /// </summary>
    [Fact]
    public void Worths_AskedWithTheBestMix_AreThoseOfAProgramMadeAnew()
    {
        BestMix mix = BestMix.Of(Model.Value, Programs.Solver, worths: 3), without = BestMix.Of(Model.Value, Programs.Solver);
        PlanProgram program = new(Model.Value);
        using ILinearRun run = Programs.Solver.Open(program.Model);
        IReadOnlyList<BindingLimit> anew = LimitWorths.Of(without.Binding.Take(3), program, run, run.Solve());

        Assert.Equal(3, mix.Worths.Count);
        Assert.Equal(anew.Select(limit => limit.Key), mix.Worths.Select(limit => limit.Key));
        Programs.Near([.. anew.Select(limit => limit.More!.Value)], [.. mix.Worths.Select(limit => limit.More!.Value)], 0.001);
        Programs.Near([.. anew.Select(limit => limit.Less!.Value)], [.. mix.Worths.Select(limit => limit.Less!.Value)], 0.001);
        Programs.Near(without.Best!.Worth, mix.Best!.Worth, 0.001);
        Assert.Equal(without.Rounded(without.Simpler()!, 5.0).Feet, mix.SimplerIn(5.0)!.Feet);
    }

    [Fact]
    public void Model_OfTheDemo_NeedsTheHoursThatWereWorked()
    {
        double planned = Model.Value.Hours.Fixed.Sum() + Model.Value.Sowings.Sum(sowing =>
            (sowing.Standing.Count > 0 ? sowing.Bounds.Least : sowing.Today) * (sowing.Hours.Sum() + (sowing.Yield.Sum() * Model.Value.Crops[sowing.Crop].HandlingHours)));
        double worked = (double)Season.Records.Labor.Where(row => row.Date.Year == 2025).Sum(row => row.Hours);

        // Hours of 2025 against the mean of the seasons at this year's lengths: near, not the same.
        Assert.InRange(planned, 0.75 * worked, 1.25 * worked);
    }

    [Fact]
    public void Model_OfTheDemo_TakesWaterAndPowerOfTheDrySeason()
    {
        PlanWater water = Model.Value.Water!;
        double needed = Enumerable
            .Range(0, Model.Value.Sowings.Count)
            .Sum(i =>
                water.Need[i].Sum()
                * (Model.Value.Sowings[i].Standing.Count > 0 ? Model.Value.Sowings[i].Bounds.Least : Model.Value.Sowings[i].Today)
            );
        double season = WaterAndPower.Of(SeasonCosts.Of(Season)).Water!.Needed / WaterMath.LitersPerGallon / 1000.0;

        Assert.Equal([double.PositiveInfinity, 29.4], new[] { 5, 30 }.Select(week => water.Limit[week])); // February has no weather; 7 days of 4,200 gallons
        Assert.InRange(needed, 0.5 * season, 2.0 * season);
        Assert.All(water.LostPerUnit, lost => Assert.InRange(lost, 0.0, 5000.0));

        // A measured pump took 362.4 kWh an acre-foot, 1.1 a thousand gallons (Janzen 1977); the demo's is invented and should be near.
        Assert.InRange(water.Power!.PerUnit, 0.5, 2.0);
        Assert.Equal(2 * 24 * 7, water.Power.Generator);
    }

    [Fact]
    public void Plan_WrittenAndReadBack_IsTheSamePlan()
    {
        PlanDraft draft = LikeLastYear.Of(Season, Model.Value);
        PlanOutlook outlook = PlanOutlook.Of(Season, Model.Value, draft);
        string folder = TestFolders.Make([.. Directory.GetFiles(Folder, "*.csv").Select(file => (Path.GetFileName(file), File.ReadAllText(file)))]);
        string written = TestFolders.Make();
        PlanTables.Write(Season.Settings, draft, outlook, PlanWords.Credit(outlook, Season.Settings), written);
        File.Copy(Path.Combine(written, "plan.csv"), Path.Combine(folder, "plan.csv"), overwrite: true);
        File.Copy(Path.Combine(written, "plan_sales.csv"), Path.Combine(folder, "plan_sales.csv"), overwrite: true);

        FarmFolder farm = FarmFolder.Open(folder);

        Assert.Equal(0, farm.ErrorCount);
        PlanDraft read = PlanOnFile.Of(farm.Review!.Records, 2026)!;
        Assert.Equal(draft.Plantings.Count, read.Plantings.Count);
        Assert.Equal(draft.Sales.Sum(sale => sale.Quantity * sale.Price), read.Sales.Sum(sale => sale.Quantity * sale.Price));
        Assert.Equal(draft.Plantings.Sum(one => one.Hours), read.Plantings.Sum(one => one.Hours));
        Assert.Equal(draft.Plantings.Sum(one => one.BedFeet), read.Plantings.Sum(one => one.BedFeet));
        Assert.All(outlook.Months, month => Assert.Equal(month.Net, month.Sales + month.Shares + month.OtherIncome - month.Supplies - month.Wages - month.Running));
    }

    [Fact]
    public void Plan_ChangedInASpreadsheetAndReadBack_HoldsTheChangeAndTellsWhatNoLongerFits()
    {
        PlanDraft draft = LikeLastYear.Of(Season, Model.Value);
        string folder = TestFolders.Make([
            .. Directory.GetFiles(Folder, "*.csv").Select(file => (Path.GetFileName(file), File.ReadAllText(file))),
        ]);
        IReadOnlyList<string>[][] tables =
        [
            .. PlanRecords.Rows(Season.Settings, draft).Select(table => table.Rows.Prepend(table.Headings).ToArray()),
        ];

        // As a spreadsheet saves it: a mark in front, every text in quotes, lines ended with both, the columns in another order, a row
        // more.
        List<string> first = [.. tables[0][1]];
        first[4] = "900";
        tables[0][1] = first;
        File.WriteAllText(
            Path.Combine(folder, "plan.csv"),
            "\uFEFF" + string.Concat(tables[0].Select(row => string.Join(",", row.Reverse().Select(text => $"\"{text}\"")) + "\r\n"))
        );
        File.WriteAllText(
            Path.Combine(folder, "plan_sales.csv"),
            "\uFEFF"
                + string.Concat(
                    tables[1]
                        .Append(["2026", first[2], "Saturday Market", "99999", "", "1", "2026-07-01", "4"])
                        .Select(row => string.Join(",", row.Select(text => $"\"{text}\"")) + "\r\n")
                )
        );

        FarmFolder farm = FarmFolder.Open(folder);

        Assert.Equal(0, farm.ErrorCount);
        PlanDraft read = PlanOnFile.Of(farm.Review!.Records, 2026)!;
        Assert.Equal(draft.Plantings.Count, read.Plantings.Count);
        Assert.Equal(draft.Plantings.Sum(one => one.BedFeet) - draft.Plantings[0].BedFeet + 900m, read.Plantings.Sum(one => one.BedFeet));
        PlanOutlook outlook = PlanOutlook.Of(
            farm.Review!.Season(2025),
            PlanFacts.Of(farm.Review, SeasonCosts.Of(farm.Review.Season(2025))),
            read
        );
        Assert.Contains(outlook.Problems, problem =>
            problem is { Kind: PlanProblemKind.Bed } && problem.Where == first[3] && problem.Plantings.Contains(first[1])
        );
        Assert.Contains(outlook.Problems, problem => problem.Kind == PlanProblemKind.Sales && problem.Where == first[2]);
    }

    [Fact]
    public void Plan_LikeLastYear_LosesNoLengthAndSellsNoMoreThanItPicks()
    {
        PlanDraft draft = LikeLastYear.Of(Season, Model.Value);
        decimal asked = (decimal)Model.Value.Sowings.Sum(sowing => sowing.Standing.Count > 0 ? sowing.Bounds.Least : sowing.Today);

        Dictionary<string, decimal> widths = Season.Records.Tables.Beds.ToDictionary(
            bed => bed.Bed.Trim(),
            bed => (bed.WidthIn ?? Season.Settings.StandardBedWidthIn) / Season.Settings.StandardBedWidthIn
        );
        Assert.Equal(asked, draft.Plantings.Sum(one => one.BedFeet * widths[one.Bed]), 0);
        Assert.DoesNotContain(PlanOutlook.Of(Season, Model.Value, draft).Problems, problem => problem.Kind == PlanProblemKind.Sales);
    }
}
