using FarmEconomics.Files;
using Xunit;

namespace FarmEconomics.Tests.Files;

public class SettingTextTests
{
    [Fact]
    public void Pairs_Several_AreReadTrimmed() => Assert.Equal(
        [KeyValuePair.Create("owner_wage", "22"), KeyValuePair.Create("farm_name", "A = B")],
        SettingText.Pairs(" owner_wage = 22 ;; farm_name=A = B; "));

    [Fact]
    public void Pairs_Blank_AreNone() => Assert.Empty(SettingText.Pairs("  "));

    [Theory]
    [InlineData("owner_wage")]
    [InlineData("=22")]
    [InlineData(" = 22")]
    [InlineData("owner_wage=22; interest")]
    public void Pairs_PartWithoutNameAndValue_IsRefusedNotDropped(string text) =>
        Assert.Contains("is not a setting: write name=value", Assert.Throws<ArgumentException>(() => SettingText.Pairs(text)).Message, StringComparison.Ordinal);
}
