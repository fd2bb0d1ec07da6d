using FarmEconomics.EndToEnd.Tests.Support;
using FarmEconomics.Notebooks;
using FarmEconomics.Reports.Frame;

namespace FarmEconomics.EndToEnd.Tests.Served;

/// <summary>The parameters cell as fields: type, label, unit, range, choice and help out of each line.</summary>
public class NotebookParameterTests
{
    [Fact]
    public void Line_WithEverything_IsReadWhole()
    {
        ReportField step = Assert.Single(Read("decimal step = 0.25m; // Price step [money; 0.01 to 100]: the steps your prices go in"));
        Assert.Equal(new ReportField("step", ParameterType.Number, 0.25m, "Price step", "the steps your prices go in") { Unit = "money", Lowest = 0.01m, Highest = 100m }, step);
    }

    [Fact]
    public void Line_WithHelpOnly_IsCalledAfterItsVariable()
    {
        ReportField crop = Assert.Single(Read("string main_crop = \"\"; // the crop: \"Carrots\", say"));
        Assert.Equal(("Main crop", "the crop: \"Carrots\", say", ""), (crop.Label, crop.Help, (string)crop.Default));
    }

    [Theory]
    [InlineData("int n = -3;", -3)]
    [InlineData("bool yes = true;", true)]
    [InlineData("double d = 2;", 2.0)]
    [InlineData("string s = \"a; b \\\"c\\\"\";", "a; b \"c\"")]
    public void Value_OfEachType_IsRead(string line, object value) => Assert.Equal(value, Assert.Single(Read(line)).Default);

    [Theory]
    [InlineData("var x = 3;")]
    [InlineData("int x;")]
    [InlineData("int x = DateTime.Now.Year;")]
    [InlineData("Console.WriteLine();")]
    public void Line_ThatIsNoDeclaration_IsNamed(string line) =>
        Assert.Contains(line, Assert.Throws<NotebookException>(() => Read(line)).Message, StringComparison.Ordinal);

    [Fact]
    public void EveryShippedNotebook_HasFieldsWithLabelsAndHelp()
    {
        foreach (string path in Directory.GetFiles(Path.Combine(Repository.Root, "notebooks"), "*.ipynb"))
        {
            IReadOnlyList<ReportField> parameters = NotebookParameter.Of(NotebookDocument.Load(path));
            Assert.Equal(["records", "year", "settings", "skip_bad_rows"], parameters.Take(4).Select(parameter => parameter.Name));
            Assert.All(parameters, parameter => Assert.True(parameter.Label.Length > 0 && parameter.Help.Length > 0 && !parameter.Label.Contains('_', StringComparison.Ordinal), parameter.Name));
            Assert.All(parameters.Where(parameter => parameter.Type is not ParameterType.Text and not ParameterType.YesNo && parameter.Choice is null), parameter => Assert.NotNull(parameter.Lowest));
        }
    }

    private static IReadOnlyList<ReportField> Read(string source)
    {
        System.Text.Json.Nodes.JsonObject cell = new()
        {
            ["cell_type"] = "code",
            ["metadata"] = new System.Text.Json.Nodes.JsonObject { ["tags"] = new System.Text.Json.Nodes.JsonArray("parameters") },
            ["source"] = source,
            ["outputs"] = new System.Text.Json.Nodes.JsonArray(),
        };
        return NotebookParameter.Of(NotebookDocument.Parse(new System.Text.Json.Nodes.JsonObject { ["nbformat"] = 4, ["nbformat_minor"] = 5, ["metadata"] = new System.Text.Json.Nodes.JsonObject(), ["cells"] = new System.Text.Json.Nodes.JsonArray(cell) }.ToJsonString()));
    }
}
