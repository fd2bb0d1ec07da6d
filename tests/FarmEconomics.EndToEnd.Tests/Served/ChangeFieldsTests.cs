using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.EndToEnd.Tests.Support;
using FarmEconomics.Files;
using FarmEconomics.Page.Fields;

namespace FarmEconomics.EndToEnd.Tests.Served;

/// <summary>Changes typed into fields come out as the records' own decimal mark has them.</summary>
public sealed class ChangeFieldsTests
{
    [Theory]
    [InlineData("4,50", ',', "4,50")]
    [InlineData("€ 4,50", ',', "4,50")]
    [InlineData("4,50 €", ',', "4,50")]
    [InlineData("4.50", ',', "4,50")]
    [InlineData("1,234", ',', "1,234")]
    [InlineData("4.50", '.', "4.50")]
    [InlineData("+2.5%", ',', "+2,5%")]
    public void Price_InAField_IsWrittenWithTheFarmsDecimalMark(string typed, char mark, string written)
    {
        Dictionary<string, string> values = new() { ["price1.crop"] = "Carrots", ["price1.to"] = typed };

        Assert.Equal($"price of Carrots={written}", ChangeFields.Join(values, mark));
    }

    [Theory]
    [InlineData("4,50", 4.5)]
    [InlineData("1,234", 1.234)]
    [InlineData("4.5", 4.5)]
    public void Price_OnAFarmWithDecimalCommas_IsReadAsWhatItLooksLike(string typed, decimal price)
    {
        using Scratch scratch = new();
        FarmFolder folder = FarmFolder.Open(MetricFarm.Write(Path.Combine(Repository.Root, "demo-data"), scratch.File("metric")));
        string crop = folder.Review!.Records.Crops[0].Name;
        Dictionary<string, string> values = new() { ["price1.crop"] = crop, ["price1.to"] = typed };

        IReadOnlyList<ScenarioChange> changes = ScenarioText.Read(ChangeFields.Join(values, folder.Reading.FarmSettings.DecimalMark), folder.Review.Records, out IReadOnlyList<ScenarioFault> faults);

        Assert.Empty(faults);
        Assert.Equal((price, false), (Assert.Single(changes).Step.Number, changes[0].Step.IsPercent));
    }
}
