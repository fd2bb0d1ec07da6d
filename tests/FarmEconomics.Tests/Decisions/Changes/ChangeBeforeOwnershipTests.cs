using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Reports.Decisions;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Changes;

/// <summary>
/// A change on the farm of <see cref="ChangeFarm"/> with and without an interest rate. Without one the cooler's cost a year isn't known,
/// so nothing said of a change may claim full cost.
/// </summary>
public class ChangeBeforeOwnershipTests
{
    private static ChangeAnswer Drop(decimal? interest) =>
        ChangeFarm.Judge(ChangeFarm.Build().With(settings => settings with { InterestPercent = interest }))
            .Judge(new Change(ChangeKind.Drop, "Leeks"));

    /// <summary>
    /// Leeks: 160 less 10 of seed, 40 of picking and the shop's 30; the farm would be 80 worse off. Rent of 100 and, with interest, 25 of
    /// the cooler leave 20 or 45 too little.
    /// </summary>
    [Theory]
    [InlineData(null, "Leeks fell short of its cost before ownership cost, so by that it looks $20 better off")]
    [InlineData(0, "Leeks fell short of its full cost, so by that it looks $45 better off")]
    public void Sentences_NameTheCostThatIsKnown(int? interest, string expected)
    {
        string said = ChangeSentences.Rest(Drop(interest), Notation.Default);
        Assert.Contains(expected, said, StringComparison.Ordinal);
        Assert.Equal(interest is not null, said.Contains("full cost", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(null, "cost before ownership cost", "net return before ownership cost")]
    [InlineData(0, "full cost", "net return")]
    public void TablesAndPlot_NameTheCostThatIsKnown(int? interest, string cost, string net)
    {
        ChangeAnswer answer = Drop(interest);
        string both = ChangeTables.BothAnswers(answer, Notation.Default).ToPlainText();
        string table = ChangeTables.BeforeAndAfter(answer, Notation.Default).ToPlainText();
        string plot = DecisionPlots.BeforeAndAfter(answer, Notation.Default).Alt;
        Assert.Contains(cost, both, StringComparison.Ordinal);
        Assert.Equal(interest is not null, both.Contains("full cost", StringComparison.Ordinal));
        Assert.Contains($"{net} before and after", table, StringComparison.Ordinal);
        Assert.Contains($"change of the crops' {net},", plot, StringComparison.Ordinal);
    }
}
