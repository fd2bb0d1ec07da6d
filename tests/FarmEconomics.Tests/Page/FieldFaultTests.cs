using FarmEconomics.Files;
using FarmEconomics.Page.Farm;
using FarmEconomics.Page.Fields;
using FarmEconomics.Reports.Answers;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.Tests.Page;

/// <summary>A value that a page's report would stop at gets a sentence beside its field.</summary>
public class FieldFaultTests
{
    private static readonly string Demo = Path.Combine(TestFolders.Repository, "demo-data");
    private static readonly Lazy<FarmFolder> Folder = new(() => FarmFolder.Open(Demo));
    private static readonly Lazy<OpenedFarm> Farm = new(() => new OpenedFarm(Folder.Value));

    private static FieldForm Read(ReportId report, params (string Key, string Value)[] given)
    {
        IReadOnlyList<ReportField> parameters = ReportCatalog.Get(report).Fields;
        FieldForm form = FieldForm.Read(parameters, Farm.Value, Demo, "none.csv", given.ToDictionary(pair => pair.Key, pair => pair.Value));
        RecordsFit.Check(form, parameters, () => Farm.Value);
        return form;
    }

    [Theory]
    [InlineData(ReportId.Lender, "assumptions", "hours_savd=60", "There is no assumption \"hours_savd\"; did you mean hours_saved?")]
    [InlineData(ReportId.Lender, "assumptions", "hours_saved", "name=value")]
    [InlineData(ReportId.Lender, "assumptions", "hours_saved=many", "must be a number")]
    [InlineData(ReportId.Lender, "assumptions", "project_pool=nowhere", "there is no pool \"nowhere\"")]
    [InlineData(ReportId.Lender, "classes", "Truck=4", "there is no class of 4 years")]
    [InlineData(ReportId.Lender, "classes", "Trck=5", "There is no asset \"Trck\"")]
    [InlineData(ReportId.Lender, "classes", "Truck=soon", "must be a number of years")]
    [InlineData(ReportId.Prices, "plan", "crops.csv", "week")]
    [InlineData(ReportId.Prices, "move_percent", "0", "0.01 to 100")]
    [InlineData(ReportId.SharedCosts, "store", "wood boiler", "not among the choices")]
    [InlineData(ReportId.Season, "set.owner_wage", "0.00001", "at most 4 decimals")]
    [InlineData(ReportId.Season, "set.owner_wage", "+10%", "“+10%” has a % sign; give the value itself, such as 4.50.")]
    [InlineData(ReportId.Prices, "step", "5 %", "has a % sign")]
    [InlineData(ReportId.Prices, "target_margin", "$5", "has a $ sign")]
    [InlineData(ReportId.Water, "gallons", "4,200", "“4,200” is not a number; write it as 4200.")]
    [InlineData(ReportId.Water, "gallons", "42,00", "write digits, such as 4.50.")]
    [InlineData(ReportId.Season, "set.interest_percent", "4.123456", "a percentage of 0 to 100")]
    [InlineData(ReportId.WhatIf, "change.more", "owner_wage=20\nowner_wage=25", "sets the same thing already")]
    public void Field_WithAValueTheNotebookStopsAt_SaysSo(ReportId report, string field, string value, string sentence)
    {
        Assert.Empty(Read(report).Faults);

        FieldForm form = Read(report, (field, value));

        (string key, string fault) = Assert.Single(form.Faults);
        Assert.Equal(field, key);
        Assert.Contains(sentence, fault, StringComparison.Ordinal);
        Assert.DoesNotContain("Parameter", fault, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(ReportId.Lender, "assumptions",
        "hours_saved=60; losses_saved_percent=50; new_loan=5000; new_loan_percent=6; new_loan_years=5")]
    [InlineData(ReportId.Lender, "classes", "Truck=5; Field panels and mounts=5")]
    [InlineData(ReportId.Season, "set.owner_wage", "0.0001")]
    [InlineData(ReportId.Season, "set.owner_wage", "$ 18.50")]
    [InlineData(ReportId.Season, "set.interest_percent", "4.5 %")]
    [InlineData(ReportId.WhatIf, "change.wages", "+5%")]
    public void Field_WithAValueTheNotebookTakes_IsLetThrough(ReportId report, string field, string value) =>
        Assert.Empty(Read(report, (field, value)).Faults);

    [Fact]
    public void Crop_WithoutAPlantingInTheYear_SaysSo()
    {
        (int year, string crop) = Folder.Value.Review!.CropYears.SelectMany(year =>
            Folder.Value.Review!.Records.Crops.Select(crop => crop.Name)
            .Except(Folder.Value.Review!.Season(year).Crops.Select(budget => budget.Name)).Select(crop => (year, crop))).First();

        FieldForm form = Read(ReportId.DropOrGrow, ("year", $"{year}"), ("drop", crop));

        Assert.Equal($"{crop} has no planting in {year}; choose another crop or another year.", Assert.Single(form.Faults).Value);
    }
}
