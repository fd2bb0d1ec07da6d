using CsCheck;
using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Reports.Funding;
using Xunit;

namespace FarmEconomics.Tests.Funding;

/// <summary>The rules of the form stand with their source in Published/grant-form-sections.json.</summary>
public class GrantFormTests
{
    private static readonly Gen<RowValues> Row = Gen.Select(
        Gen.Int[0, 7], Gen.Int[0, 3_000_000], Gen.Int[0, 100], Gen.Int[0, 2], Gen.Bool, Gen.Int[1, 5], Gen.Int[1, 4]).Select(row => new RowValues
        {
            ["project"] = "Shed",
            ["item"] = "item",
            ["object_class"] = (ObjectClass)row.Item1,
            ["amount"] = row.Item2 / 100m,
            ["funder_percent"] = (decimal)row.Item3,
            ["match_from"] = (MatchSource)row.Item4,
            ["in_kind"] = row.Item5,
            ["budget_year"] = (decimal)row.Item6,
            ["quarter"] = (decimal)row.Item7,
        });

    [Fact]
    public void Form_AnyProject_TiesOutAcrossItsSections() => Check.Sample(Gen.Select(Row.Array[1, 12], Gen.Int[0, 100]), (rows, percent) =>
    {
        GrantBudget budget = GrantBudget.Of(Records(rows), "Shed", FundingAssumptions.Parse($"indirect_percent={percent}; indirect_funder_percent=60"));

        Assert.All(budget.Form.Checks, check => Assert.True(check.Difference == 0m, $"{check.Name}: {check.Left} against {check.Right}"));
        Assert.Equal(budget.Lines.Where(line => line.Year == 1).Sum(line => line.Total), budget.Form.Total);
        Assert.All(budget.Form.FederalCash.Quarters.Concat(budget.Form.OtherCash.Quarters), quarter => Assert.True(quarter >= 0m));
    });

    [Fact]
    public void Form_OneYearAllInCash_IsTheSameMoneyInEverySection()
    {
        GrantForm form = GrantBudget.Of(Records(
            Of(ObjectClass.Supplies, 1000m, 75m, MatchSource.Applicant, quarter: 2m), Of(ObjectClass.Contractual, 600m, 50m, MatchSource.State, quarter: 4m)), "Shed", FundingAssumptions.None).Form;

        Assert.Equal((1050m, 550m, 1600m), (form.Federal, form.NonFederal, form.Total));
        Assert.Equal((250m, 300m, 0m), (form.From(MatchSource.Applicant), form.From(MatchSource.State), form.From(MatchSource.Other)));
        Assert.Equal([0m, 750m, 0m, 300m], form.FederalCash.Quarters);
        Assert.Equal([0m, 250m, 0m, 300m], form.OtherCash.Quarters);
        Assert.Equal((form.Federal, form.NonFederal), (form.FederalCash.Year, form.OtherCash.Year));
        Assert.Equal([0m, 0m, 0m, 0m], form.LaterFederal);
    }

    [Fact]
    public void Form_LaterYearsAndInKind_StandWhereTheyBelong()
    {
        RowValues kind = Of(ObjectClass.Personnel, 500m, 0m, MatchSource.Other, 1m);
        kind["in_kind"] = true;
        RowValues later = Of(ObjectClass.Other, 800m, 100m, MatchSource.Applicant, 1m);
        later["budget_year"] = 3m;
        GrantForm form = GrantBudget.Of(Records(kind, later), "Shed", FundingAssumptions.None).Form;

        Assert.Equal((0m, 500m, 500m), (form.Federal, form.NonFederal, form.From(MatchSource.Other)));
        Assert.Equal(0m, form.OtherCash.Year);
        Assert.Equal([0m, 800m, 0m, 0m], form.LaterFederal);
    }

    [Theory]
    [InlineData(9999.99, "", true)]
    [InlineData(10000, "", false)]
    [InlineData(9999.99, "equipment_level=2500", false)]
    [InlineData(2499, "equipment_level=2500", true)]
    [InlineData(9999.99, "equipment_level=20000", true)]
    public void Equipment_BelowTheLesserOfBothLevels_IsSaidToBeSupplies(double amount, string assumed, bool below)
    {
        GrantBudget budget = GrantBudget.Of(Records(Of(ObjectClass.Equipment, (decimal)amount, 75m, MatchSource.Applicant, 1m)), "Shed", FundingAssumptions.Parse(assumed));
        Assert.Equal(below, budget.BelowEquipmentLevel.Count == 1);
    }

    [Fact]
    public void Sheet_OfTheDemo_SaysWhatTheLevelOfEquipmentChangesAndWhatIsInKind()
    {
        FundingWriteUp writeUp = FundingWriteUp.Of(FundingWriteUpTests.Demo, 2025, "Larger cold room", FundingAssumptions.None);
        string notes = string.Join(' ', GrantFormSheet.Of(writeUp)!.Table.Notes);

        Assert.Contains("Compressor and controller (runs from the field panels) costs $5,400, less than $10,000 apiece", notes, StringComparison.Ordinal);
        Assert.Contains("In kind, $960.00", notes, StringComparison.Ordinal);
        Assert.Equal((9890m, 4910m), (writeUp.Grant!.Form.Federal, writeUp.Grant.Form.NonFederal));
        Assert.Equal([1050m, 8700m, 0m, 140m], writeUp.Grant.Form.FederalCash.Quarters);
        Assert.Equal(3950m, writeUp.Grant.Form.OtherCash.Year);
    }

    private static RowValues Of(ObjectClass kind, decimal amount, decimal percent, MatchSource source, decimal quarter) => new()
    {
        ["project"] = "Shed",
        ["item"] = "item",
        ["object_class"] = kind,
        ["amount"] = amount,
        ["funder_percent"] = percent,
        ["match_from"] = source,
        ["quarter"] = quarter,
    };

    private static FarmRecords Records(params IReadOnlyList<RowValues> rows)
    {
        RecordTables tables = new();
        tables.Present.Add("funding");
        foreach (RowValues row in rows)
        {
            tables.Add<FundingRow>(row);
        }

        return FarmRecords.Link(tables, new FarmSettings { AsOf = new DateOnly(2025, 12, 31) });
    }
}
