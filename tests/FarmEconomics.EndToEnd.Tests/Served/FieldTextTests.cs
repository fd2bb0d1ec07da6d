using FarmEconomics.Page.Fields;

namespace FarmEconomics.EndToEnd.Tests.Served;

/// <summary>What people type into a field, read or explained.</summary>
public class FieldTextTests
{
    private static readonly PageField Step = new("step", "Price step", FieldKind.Number, "0.25", "") { Lowest = 0.01m, Highest = 100m };

    [Theory]
    [InlineData("4.50", '.', 4.50)]
    [InlineData(" $ 4.50 ", '.', 4.50)]
    [InlineData("4,50", ',', 4.50)]
    [InlineData("4.50", ',', 4.50)]
    [InlineData("-3 %", '.', -3)]
    [InlineData("\u22123", '.', -3)]
    public void Number_AsPeopleWriteIt_IsRead(string text, char mark, double number) => Assert.Equal((decimal)number, FieldText.Number(text, mark));

    [Theory]
    [InlineData("4,50", '.')]
    [InlineData("1,234.5", '.')]
    [InlineData("four", '.')]
    [InlineData("", '.')]
    [InlineData("1e3", '.')]
    public void Number_ThatCouldMeanTwoThingsOrNothing_IsNotGuessed(string text, char mark) => Assert.Null(FieldText.Number(text, mark));

    [Theory]
    [InlineData("0.5", null)]
    [InlineData("0", "0 is out of range; give a number from 0.01 to 100.")]
    [InlineData("99999999999999999999999999999999", "99999999999999999999999999999999 is out of range; give a number from 0.01 to 100.")]
    [InlineData("", "Give a number from 0.01 to 100.")]
    [InlineData("abc", "“abc” is not a number; write digits, such as 4.50.")]
    public void Fault_OfANumber_SaysWhatWouldDo(string text, string? fault) => Assert.Equal(fault, FieldText.Fault(Step, text, '.'));

    [Fact]
    public void Fault_OfAChoice_NamesWhatIsNotOnTheList() => Assert.Equal(
        "“Carots” is not among the choices; choose one from the list.",
        FieldText.Fault(new("crop", "Crop", FieldKind.Choice, "", "") { Options = [new("", "any"), new("Carrots", "Carrots")] }, "Carots", '.'));
}
