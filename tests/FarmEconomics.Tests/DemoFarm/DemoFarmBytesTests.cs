using System.Globalization;
using System.Text;
using FarmEconomics.DemoFarm;
using Xunit;

namespace FarmEconomics.Tests.DemoFarm;

public sealed class DemoFarmBytesTests
{
    [Fact]
    public void DemoData_GeneratedAgain_IsTheCommittedFolderByteForByte()
    {
        var generated = DemoFarmGenerator.Generate();
        var committed = Directory.GetFiles(PlainCsv.Folder(), "*.csv").Select(path => Path.GetFileName(path)!).Order(StringComparer.Ordinal);

        Assert.Equal(generated.Keys.Order(StringComparer.Ordinal), committed);
        foreach (var (name, content) in generated)
        {
            var bytes = File.ReadAllBytes(Path.Combine(PlainCsv.Folder(), name));
            Assert.True(
                bytes.AsSpan().SequenceEqual(new UTF8Encoding(false).GetBytes(content)),
                $"{name} differs from what the generator writes; run: dotnet run --project src/FarmEconomics.DemoFarm -c Release -- demo-data");
        }
    }

    [Fact]
    public void Generator_UnderAnotherCulture_WritesTheSameText()
    {
        var here = DemoFarmGenerator.Generate();
        var before = CultureInfo.CurrentCulture;
        try
        {
            var comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            comma.NumberFormat.NumberDecimalSeparator = ",";
            comma.DateTimeFormat.ShortDatePattern = "dd.MM.yyyy";
            CultureInfo.CurrentCulture = comma;
            Assert.Equal(here, DemoFarmGenerator.Generate());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Tables_AsText_HaveNoCarriageReturnAndEndWithALineFeed()
    {
        Assert.All(DemoFarmGenerator.Generate(), table =>
        {
            Assert.DoesNotContain('\r', table.Value);
            Assert.EndsWith("\n", table.Value, StringComparison.Ordinal);
        });
    }
}
