using FarmEconomics.Reports.Frame;
using Xunit;

namespace FarmEconomics.Tests.Reports.Frame;

public class CropSlugsTests
{
    [Theory]
    [InlineData("Salad mix", "salad-mix")]
    [InlineData("Jalapeño", "jalapeno")]
    [InlineData("JALAPEÑO", "jalapeno")]
    [InlineData("Jalapen\u0303o", "jalapeno")]
    [InlineData("Crème de Cassis (black)", "creme-de-cassis-black")]
    [InlineData("🥕", "crop")]
    public void Of_AName_IsAPlainAddress(string name, string slug) => Assert.Equal(slug, CropSlugs.Of(name));
}
