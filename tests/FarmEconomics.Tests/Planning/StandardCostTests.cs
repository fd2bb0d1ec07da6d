using System.Text.Json;
using FarmEconomics.Planning.Variances;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.Published;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>Variances against published exercises; where a source slips, what is right is asserted and the file says so.</summary>
public class StandardCostTests
{
    private static readonly JsonElement File = Fixture.Load("planning/standard-cost");

    [Fact]
    public void PriceAndUse_OfLaborAndMaterial_MeetTheExercises()
    {
        int held = 0;
        foreach (JsonElement one in File.List("labor_and_material"))
        {
            JsonElement answers = one.GetProperty("answers");
            foreach (string what in new[] { "material", "labor" }.Where(what => one.TryGetProperty(what, out _)))
            {
                JsonElement input = one.GetProperty(what);
                (decimal allowed, decimal used, decimal planned, decimal cost) = (input.Number("allowed"), input.Number("used"), input.Number("price"), input.Number("cost"));
                decimal price = StandardCost.Price(used, planned, cost), use = StandardCost.Use(allowed, used, planned);
                Assert.Equal((allowed * planned) - cost, price + use);
                foreach ((string part, decimal value) in new[] { ("price", price), ("use", use), ("total", price + use) })
                {
                    if (answers.TryGetProperty($"{what}_{part}", out JsonElement answer))
                    {
                        Assert.Equal(answer.Number(), value);
                        held++;
                    }
                }
            }
        }

        Assert.Equal(11, held);
        JsonElement ketchup = File.GetProperty("ketchup");
        decimal[] uses = [.. ketchup.Numbers("allowed").Select((allowed, i) => StandardCost.Use(allowed, ketchup.Numbers("used")[i], ketchup.Numbers("price")[i]))];
        Assert.Equal(ketchup.Numbers("answers"), uses);
        Assert.Equal(-26.30m, uses.Sum());
    }

    [Fact]
    public void SalesMixAndQuantity_SumToVolume()
    {
        foreach (JsonElement one in File.List("sales"))
        {
            decimal[] mix = StandardCost.SalesMix(one.Numbers("planned"), one.Numbers("actual"), one.Numbers("margin"));
            decimal[] quantity = StandardCost.SalesQuantity(one.Numbers("planned"), one.Numbers("actual"), one.Numbers("margin"));
            Close.To(one.Number("volume"), mix.Sum() + quantity.Sum(), 0.000001m);
            if (one.TryGetProperty("mix", out _))
            {
                Fixture.Near(one.Numbers("mix"), mix, 0.000001m);
                Fixture.Near(one.Numbers("quantity"), quantity, 0.000001m);
            }
            else
            {
                Close.To(one.Number("mix_total"), mix.Sum(), 0.000001m);
            }
        }
    }

    [Fact]
    public void YieldMixAndWaste_MeetTheExercises()
    {
        Assert.All(File.List("yield"), one => Assert.Equal(
            one.Number("answer"), StandardCost.Yield(one.Number("input"), one.Number("output"), one.Number("planned_input"), one.Number("planned_output"), one.Number("price"))));
        foreach (JsonElement one in File.List("mix"))
        {
            decimal[] mix = StandardCost.InputMix(one.Numbers("shares"), one.Numbers("used"), one.Numbers("price"));
            Assert.Equal(one.TryGetProperty("total", out JsonElement total) ? total.Number() : one.Numbers("answers").Sum(), mix.Sum());
        }

        JsonElement waste = File.GetProperty("waste");
        Assert.Equal((425m, 175m), StandardCost.Waste(waste.Number("good"), waste.Number("spoiled"), waste.Number("usual")));
        JsonElement backwards = File.GetProperty("backwards");
        Assert.Equal(backwards.Number("answer"), StandardCost.Use(backwards.Number("allowed"), backwards.Number("used"), backwards.Number("price")));
    }
}
