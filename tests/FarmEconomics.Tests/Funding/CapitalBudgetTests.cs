using System.Text.Json;
using CsCheck;
using FarmEconomics.Funding;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.Published;
using Xunit;

namespace FarmEconomics.Tests.Funding;

public class CapitalBudgetTests
{
    // What a source prints with rounded factors is off by their rounding; each tolerance is stated here beside its case.
    private static readonly Dictionary<(string Case, string Figure), decimal> Rounded = new()
    {
        [("machine, 6 years", "npv")] = 0.02m,
        [("older truck 3y", "npv")] = 1m,
        [("older truck 3y", "equal_annuity")] = 1m,
        [("x-ray level", "npv")] = 5m, // factor to 3 decimals
        [("x-ray uneven", "npv")] = 40m, // factors to 3 decimals
        [("postage system", "npv")] = 10m,
        [("drill press level", "npv")] = 5m,
        [("copier", "npv")] = 1m,
        [("after tax, working capital", "npv")] = 15m,
        [("after tax, repair machine", "npv")] = 10m,
    };

    // The book reads these off trial rates of whole percents.
    private static readonly string[] WholePercents = ["copier", "payback weakness I", "payback weakness II", "payback weakness III", "payback weakness IV", "drill press B"];

    public static TheoryData<string> Cases => [.. Fixture.Load("capital-budgets").List("cases").Select(item => item.Text("name"))];

    [Theory]
    [MemberData(nameof(Cases))]
    public void Of_PublishedCase_AgreesWithWhatIsPrinted(string name)
    {
        JsonElement item = Fixture.Load("capital-budgets").List("cases").First(one => one.Text("name") == name);
        CapitalBudget budget = new(item.Numbers("amounts"), item.Number("rate"));
        JsonElement published = item.GetProperty("published");
        Dictionary<string, Func<decimal?>> figures = new()
        {
            ["npv"] = () => budget.NetPresentValue,
            ["payback_years"] = () => budget.Payback.Value,
            ["discounted_payback"] = () => budget.DiscountedPayback.Value,
            ["profitability_index"] = () => budget.ProfitabilityIndex.Value,
            ["equal_annuity"] = () => budget.EqualAnnualValue.Value,
            ["irr"] = () => Assert.Single(budget.RatesOfReturn),
        };
        foreach (JsonProperty figure in published.EnumerateObject().Where(figure => figures.ContainsKey(figure.Name)))
        {
            decimal tolerance = Rounded.TryGetValue((name, figure.Name), out decimal given) ? given
                : figure.Name == "irr" ? (WholePercents.Contains(name) ? 0.0140m : 0.0006m)
                : figure.Name is "npv" or "equal_annuity" ? 0.01m : 0.006m;
            Close.To(figure.Value.Number(), figures[figure.Name]()!.Value, tolerance);
        }

        if (published.TryGetProperty("irr_bracket", out JsonElement bracket))
        {
            decimal[] ends = [.. bracket.EnumerateArray().Select(end => end.Number())];
            Assert.InRange(Assert.Single(budget.RatesOfReturn), ends[0], ends[1]);
        }
    }

    [Fact]
    public void RatesOfReturn_SignsChangeTwice_GivesBoth()
    {
        // OpenStax, Principles of Finance, chapter 16: -350, 950, -620 has two rates; in closed form v = (950 -+ sqrt(950^2 - 4 x 620 x 350)) / (2 x 620).
        IReadOnlyList<decimal> rates = RateOfReturn.All([-350m, 950m, -620m]);
        double root = Math.Sqrt((950.0 * 950) - (4.0 * 620 * 350));
        Assert.Equal(2, rates.Count);
        Close.To((decimal)((1240.0 / (950 + root)) - 1), rates[0], 1e-9m);
        Close.To((decimal)((1240.0 / (950 - root)) - 1), rates[1], 1e-9m);
    }

    [Theory]
    [InlineData("0,0,0", "")]
    [InlineData("-100", "")]
    [InlineData("-100,-5", "")]
    [InlineData("-100,0,121", "0.1")]
    [InlineData("0,-100,110", "0.1")]
    [InlineData("-100,50", "-0.5")]
    [InlineData("1,-2.2,1.21", "0.1")] // a double root
    public void RatesOfReturn_EdgeCases_GiveWhatThereIs(string amounts, string rates) => Assert.Equal(
        rates, string.Join(',', RateOfReturn.All([.. amounts.Split(',').Select(decimal.Parse)]).Select(rate => decimal.Round(rate, 6).ToString("0.######"))));

    [Fact]
    public void RatesOfReturn_PolynomialOfChosenRates_FindsThemAll() => Gen.Int[-50, 200].Array[1, 5].Sample(
        percents =>
        {
            decimal[] wanted = [.. percents.Distinct().Order().Select(percent => percent / 100m)];
            if (wanted.Zip(wanted.Skip(1)).Any(pair => pair.Second - pair.First < 0.05m))
            {
                return;
            }

            // The product of (v (1 + rate) - 1) has exactly these roots.
            decimal[] amounts = [1m];
            foreach (decimal rate in wanted)
            {
                decimal[] next = new decimal[amounts.Length + 1];
                for (int i = 0; i < amounts.Length; i++)
                {
                    next[i] -= amounts[i];
                    next[i + 1] += amounts[i] * (1m + rate);
                }

                amounts = next;
            }

            IReadOnlyList<decimal> found = RateOfReturn.All(amounts);
            Assert.Equal(wanted.Length, found.Count);
            for (int i = 0; i < wanted.Length; i++)
            {
                Close.To(wanted[i], found[i], 1e-6m);
            }
        });

    [Fact]
    public void EqualAnnualValue_OfALevelSaving_IsTheSavingLessTheCapitalRecovery() => Gen.Select(Gen.Int[1, 40], Gen.Decimal[0m, 0.3m]).Sample((years, rate) =>
    {
        rate = decimal.Round(rate, 4);
        CapitalBudget budget = new([-1000m, .. Enumerable.Repeat(200m, years)], rate);
        Close.To(200m - (1000m * FarmEconomics.Costing.Ownership.CapitalRecoveryFactor(rate, years)), budget.EqualAnnualValue.Value!.Value, 1e-6m);
    });
}
