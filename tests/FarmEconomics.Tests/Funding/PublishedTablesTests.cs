using System.Text.Json;
using CsCheck;
using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.Published;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Funding;

/// <summary>Tables and rules as published: depreciation, object classes, indirect rate, match, tax lines, measures.</summary>
public class PublishedTablesTests
{
    [Fact]
    public void Macrs_EveryPublishedCell_AgreesAndFollowsFromDecliningBalance()
    {
        List<JsonElement> classes = Fixture.Load("macrs-half-year").List("classes").ToList();
        Assert.Equal([3, 5, 7, 10, 15, 20], classes.Select(item => item.GetProperty("recovery_years").GetInt32()));
        Assert.Equal(66, classes.Sum(item => item.Numbers("percents").Length));
        Assert.All(classes, item =>
        {
            int years = item.GetProperty("recovery_years").GetInt32();
            Assert.Equal(item.Numbers("percents"), MacrsTable.Percent(years));
            Fixture.Near([.. DecliningBalance(years, item.Text("method").StartsWith("200", StringComparison.Ordinal) ? 2m : 1.5m)], [.. MacrsTable.Percent(years)], 0.0101m);
        });
    }

    [Fact]
    public void Macrs_AnyBasis_SumsToTheBasisAndHalvesTheYearOfDisposal() => Check.Sample(
        Gen.Select(Gen.Int[0, 100_000_000], Gen.Int[0, 5].Select(i => new[] { 3, 5, 7, 10, 15, 20 }[i])), (cents, years) =>
        {
            decimal basis = cents / 100m;
            IReadOnlyList<decimal> kept = MacrsTable.Schedule(basis, years);
            Assert.Equal(basis, kept.Sum());
            Assert.All(kept, amount => Assert.True(amount >= 0m));
            IReadOnlyList<decimal> sold = MacrsTable.Schedule(basis, years, yearsHeld: 3);
            Assert.Equal([kept[0], kept[1], Money.Rounded(kept[2] / 2m).Amount, .. kept.Skip(3).Select(_ => 0m)], sold);
        });

    [Fact]
    public void Macrs_FarmClasses_AreInTheTable() =>
        Assert.All(Fixture.Load("macrs-farm-classes").List("classes"), item => Assert.Contains(item.GetProperty("years").GetInt32(), MacrsTable.RecoveryYears));

    [Fact]
    public void ObjectClasses_AsOnTheForm_InItsOrder()
    {
        string[] form = [.. Fixture.Load("grant-object-classes").List("lines").Select(line => line.Text("name"))];
        Assert.Equal(form[..8].Select(HeadingKey.Of), Enum.GetValues<ObjectClass>().Select(value => HeadingKey.Of(value.ToString())));
        Assert.Equal(12, form.Length);
    }

    [Fact]
    public void Indirect_WorkedExample_LeavesEquipmentOutOfTheBase()
    {
        JsonElement worked = Fixture.Load("indirect-rate").GetProperty("worked");
        FarmRecords records = Project([.. Enum.GetValues<ObjectClass>().Where(kind => worked.TryGetProperty(Words.Of(kind), out _)).Select(kind => (kind, worked.Number(Words.Of(kind)), (decimal?)100m))]);
        GrantBudget budget = GrantBudget.Of(records, "shed", FundingAssumptions.Parse($"indirect_percent={Fixture.Load("indirect-rate").Number("rate_max") * 100m}"));
        Assert.Equal((worked.Number("indirect"), 0m), budget.Of(null));
        Assert.Equal(worked.Number("total"), budget.Total);
        Assert.False(budget.IndirectNeedsNegotiatedRate);
    }

    [Fact]
    public void RequiredMatch_PublishedExamples_WithinTheirDollar()
    {
        JsonElement fixture = Fixture.Load("match-examples");
        Assert.All(fixture.List("rows"), row =>
        {
            Close.To(row.Number("match"), GrantBudget.RequiredMatch(row.Number("award"), row.Number("share")), fixture.Number("tolerance"));
            FarmRecords records = Project((ObjectClass.Other, row.Number("award"), null));
            GrantBudget budget = GrantBudget.Of(records, "Shed", FundingAssumptions.Parse($"match_percent={100m - (row.Number("share") * 100m)}"));
            Close.To(row.Number("match"), budget.MatchNeeded.Value!.Value, fixture.Number("tolerance"));
        });
    }

    [Fact]
    public void TaxLines_AsOnTheForm_AndFoundByTheirLabels()
    {
        List<JsonElement> lines = Fixture.Load("schedule-f-expenses").List("lines").ToList();
        Assert.Equal(lines.Take(lines.Count - 2).Select(line => (line.Text("line"), line.Text("name"))), TaxLines.All.Select(line => (line.Number, line.Name)));
        Assert.All(TaxLines.All, line => Assert.Equal((line, line), (TaxLines.Find(line.Name.ToUpperInvariant()), TaxLines.Find(line.Number))));
        Assert.Equal(["24b", "21b", "22", "14", "32a-32f", "29"], new[] { "Rent or lease, other", "Interest, other", "Labor hired", "Depreciation", "Other expenses", "taxes" }.Select(label => TaxLines.Find(label)!.Number));
        Assert.Null(TaxLines.Find("Bribes"));
        Assert.Null(TaxLines.Find(" "));
        Assert.All(Defaults.Categories.Where(category => category.Class is ExpenseClass.Operating or ExpenseClass.Labor or ExpenseClass.Interest), category => Assert.NotNull(TaxLines.Find(category.TaxLine)));
    }

    [Fact]
    public void Measures_PublishedAverages_MeetTheIdentities()
    {
        JsonElement fixture = Fixture.Load("financial-measures-worked");
        string[] columns = [.. fixture.List("columns").Select(column => column.GetString()!)];
        foreach (JsonProperty group in fixture.GetProperty("groups").EnumerateObject())
        {
            Dictionary<string, decimal> published = columns.Zip(group.Value.EnumerateArray().Select(cell => cell.Number())).ToDictionary();

            // A farm of 1000 of revenue with the published ratios gives them back, and what they imply of each other.
            decimal assets = 1000m / (published["asset_turnover_pct"] / 100m);
            decimal debt = assets * published["debt_asset_pct"] / 100m;
            decimal income = published["nfi_ratio_pct"] * 10m, interest = published["int_ratio_pct"] * 10m;
            decimal unpaid = income + interest - (published["opm_pct"] * 10m);
            MeasureInputs inputs = Unknown() with
            {
                GrossRevenue = Result.Known(1000m),
                OperatingExpense = Result.Known(published["opex_ratio_pct"] * 10m),
                Depreciation = Result.Known(published["dep_ratio_pct"] * 10m),
                Interest = Result.Known(interest),
                NetFarmIncome = Result.Known(income),
                UnpaidLabor = Result.Known(unpaid),
                TotalAssets = Result.Known(assets),
                TotalLiabilities = Result.Known(debt),
                AverageAssets = Result.Known(assets),
                AverageEquity = Result.Known(assets - debt),
            };
            IReadOnlyList<Measure> measures = FinancialMeasures.Of(inputs);
            decimal Percent(string name) => measures.First(measure => measure.Name == name).Value.Value!.Value * 100m;
            Close.To(100m, Percent("Operating expense ratio") + Percent("Depreciation expense ratio") + Percent("Interest expense ratio") + Percent("Net farm income ratio"), 0.15m);
            Close.To(published["roa_pct"], Percent("Rate of return on farm assets"), 0.1m);
            Close.To(published["equity_asset_pct"], Percent("Equity to assets"), 0.6m);
            Close.To(published["debt_equity_pct"], Percent("Debt to equity"), 3m);
            Assert.Contains("current farm assets (unknown)", measures.First(measure => measure.Name == "Current ratio").Value.Reason, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Measures_PublishedFormulas_NameTheSameInputs()
    {
        IReadOnlyList<Measure> measures = FinancialMeasures.Of(Unknown());
        (string Published, string Ours)[] pairs =
        [
            ("Current ratio", "Current ratio"), ("Working capital", "Working capital"), ("Debt/asset ratio", "Debt to assets"), ("Asset turnover ratio", "Asset turnover"),
            ("Depreciation expense ratio", "Depreciation expense ratio"),
        ];
        foreach ((string published, string ours) in pairs)
        {
            Assert.Equal(Fixture.Load("financial-measures").List("measures").First(item => item.Text("name") == published).Text("formula"), measures.First(measure => measure.Name == ours).Formula);
        }

        Assert.All(measures, measure => Assert.False(measure.Value.IsAvailable));
    }

    internal static MeasureInputs Unknown()
    {
        Result unknown = Result.NotAvailable("unknown");
        return new MeasureInputs
        {
            CurrentAssets = unknown,
            CurrentLiabilities = unknown,
            TotalAssets = unknown,
            TotalLiabilities = unknown,
            AverageAssets = unknown,
            AverageEquity = unknown,
            GrossRevenue = unknown,
            OperatingExpense = unknown,
            Depreciation = unknown,
            Interest = unknown,
            NetFarmIncome = unknown,
            UnpaidLabor = unknown,
            OffFarmIncome = unknown,
            IncomeTax = unknown,
            FamilyLiving = unknown,
            TermInterest = unknown,
            TermPrincipal = unknown,
        };
    }

    private static FarmRecords Project(params (ObjectClass Kind, decimal Amount, decimal? Percent)[] rows)
    {
        RecordTables tables = new();
        foreach ((ObjectClass Kind, decimal Amount, decimal? Percent) row in rows)
        {
            tables.Add<FundingRow>(new RowValues { ["project"] = "Shed", ["item"] = "item", ["object_class"] = row.Kind, ["amount"] = row.Amount, ["funder_percent"] = row.Percent });
        }

        return FarmRecords.Link(tables, new FarmSettings());
    }

    // 1 / years x factor of what is left, half of it in the first year, straight line over the years left once that gives more.
    private static IEnumerable<decimal> DecliningBalance(int years, decimal factor)
    {
        decimal left = 100m;
        for (int year = 0; year <= years; year++)
        {
            decimal remaining = year == 0 ? years : years - year + 0.5m;
            decimal amount = Math.Max(left * factor / years, left / remaining) * (year == 0 ? 0.5m : 1m);
            amount = year == years ? left : year == 0 ? left * factor / years / 2m : amount;
            left -= amount;
            yield return amount;
        }
    }
}
