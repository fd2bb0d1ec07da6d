using System.Globalization;
using FarmEconomics.Budgets;
using FarmEconomics.Files;
using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.WholeWay.Tests.Ends;

/// <summary>Every assumption at the ends of what is taken, and beyond: a write-up or a sentence, never an overflow.</summary>
public class FundingAssumptionExtremesTests
{
    private static readonly Lazy<FarmReview> Demo = new(() => FarmFolder.Open(Path.Combine(TestFolders.Repository, "demo-data")).Review!);

    public static TheoryData<string> Names => [.. FundingAssumptions.None.All(Notation.Default).Select(assumption => assumption.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Of_AssumptionAtItsExtremes_IsWorkedOutOrRefusedWithASentence(string name)
    {
        string project = Demo.Value.Records.Tables.Funding[0].Project.Trim();
        foreach (string value in new[] { "1000000000", "-1000000000", "0.000001", "0", "100", "40", "1000", "1e28", "79228162514264337593543950335", "-79228162514264337593543950335", "0.0000000000000000000000000001", "NaN", "" })
        {
            FundingAssumptions assumptions;
            try
            {
                assumptions = FundingAssumptions.Parse($"{name}={value}");
            }
            catch (ArgumentException told)
            {
                Assert.Contains(name, told.Message, StringComparison.Ordinal);
                continue;
            }

            if (decimal.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out decimal number) && assumptions.All(Notation.Default).First(one => one.Name == name).Unit is not ("words" or "word" or "classes" or "pool" or "text" or "percents"))
            {
                Assert.InRange(number, -1_000_000_000m, 1_000_000_000m);
            }

            try
            {
                Assert.DoesNotContain(FundingWriteUp.Of(Demo.Value, 2025, project, assumptions).Checks, check => check.Difference != 0m);
            }
            catch (ArgumentException told)
            {
                Assert.NotEmpty(told.Message);
            }
        }
    }
}
