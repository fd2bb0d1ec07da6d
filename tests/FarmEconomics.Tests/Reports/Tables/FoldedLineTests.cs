using FarmEconomics.Reports.Tables;
using Xunit;

namespace FarmEconomics.Tests.Reports.Tables;

public sealed class FoldedLineTests
{
    [Theory]
    [InlineData("short enough", new[] { "short enough" })]
    [InlineData("one two three four five six", new[] { "one two three four", "    five six" })]
    [InlineData("  set in and longer than it", new[] { "  set in and longer", "      than it" })]
    [InlineData("add this line: crop,Kail,Kale", new[] { "add this line:", "    crop,Kail,Kale" })]
    [InlineData("averyveryverylongwordindeed", new[] { "averyveryverylongwordindeed" })]
    [InlineData("averyveryverylongwordindeed and more", new[] { "averyveryverylongwordindeed", "    and more" })]
    public void Folded_Line_IsBrokenAtWordsOrBeforeWhatIsCopied(string line, string[] expected) =>
        Assert.Equal(expected, TextLines.Folded(line, 20));

    [Fact]
    public void Folded_AnyText_LosesNoWordAndKeepsTheWidth()
    {
        const string Text = "warning W403: 4 lb of Arugula left on 2024-10-08, 4 days after harvest (harvests.csv:2030); it keeps until 2024-10-06: sales.csv:5410:1.";
        for (int width = 40; width <= 100; width++)
        {
            string[] lines = [.. TextLines.Folded(Text, width)];
            Assert.Equal(Text, string.Join(' ', lines.Select(line => line.Trim())));
            Assert.All(lines, line => Assert.InRange(line.Length, 1, width));
        }
    }
}
