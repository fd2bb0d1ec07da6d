using CsCheck;
using FarmEconomics.Budgets;
using FarmEconomics.Files;
using FarmEconomics.Pricing;
using FarmEconomics.Records;
using FarmEconomics.Reports.Pricing;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.Files;
using FarmEconomics.Tests.Generators;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Pricing;

public class PriceAdviceTests
{
    private static readonly Lazy<FarmReview> Demo = new(() => FarmFolder.Open(Path.Combine(TestFolders.Repository, "demo-data")).Review!);

    private static readonly PriceTerms Terms = new();

    private static PriceSet Set(decimal full, decimal target) => new(Result.Known(1m), Result.Known(full), Result.Known(target), false);

    [Theory]
    [InlineData(2.00, 3.60, 3.50, AdviceKind.AtLeast, 3.75)]
    [InlineData(2.00, 3.60, 3.75, AdviceKind.Keep, 3.75)]
    [InlineData(2.00, 3.60, 4.00, AdviceKind.Keep, 4.00)]
    [InlineData(2.00, 3.60, 3.9967, AdviceKind.Keep, 4.00)]
    public void Advice_OfATarget_IsAtLeastThatOrWhatTheCropHas(double full, double target, double got, AdviceKind kind, double price)
    {
        PriceAdvice advice = PriceAdvice.Of(Set((decimal)full, (decimal)target), Result.Known((decimal)got), Result.Known((decimal)got), Terms);

        Assert.Equal((kind, (decimal)price), (advice.Kind, advice.Price.Value!.Value));
    }

    [Fact]
    public void Advice_FullCostFarAboveTheMostEver_CannotBePriced()
    {
        Assert.Equal(AdviceKind.CannotBePriced, PriceAdvice.Of(Set(6.01m, 7m), Result.Known(4m), Result.Known(4m), Terms).Kind);
        Assert.Equal(AdviceKind.AtLeast, PriceAdvice.Of(Set(6.00m, 7m), Result.Known(4m), Result.Known(4m), Terms).Kind);
        Assert.Equal(AdviceKind.AtLeast,
            PriceAdvice.Of(Set(6.01m, 7m), Result.Known(4m), Result.NotAvailable("no price on record"), Terms).Kind);
        Assert.Equal(AdviceKind.CannotBePriced,
            PriceAdvice.Of(Set(4.10m, 7m), Result.Known(4m), Result.Known(4m), Terms with { FarAbovePercent = 100m }).Kind);
        Assert.Throws<ArgumentOutOfRangeException>(() => (Terms with { FarAbovePercent = 99m }).Check());
    }

    [Fact]
    public void Advice_WithoutATarget_SaysWhy()
    {
        PriceAdvice advice =
            PriceAdvice.Of(new PriceSet(Result.Known(1m), Result.NotAvailable("no expense records"), Result.NotAvailable("no expense records"),
            false), Result.Known(4m), Result.Known(4m), Terms);

        Assert.Equal((AdviceKind.Unknown, "no expense records"), (advice.Kind, advice.Price.Reason));
        Assert.Equal("not available", PriceWords.Of(advice, Notation.Default));
    }

    [Fact]
    public void Words_OfAdvice_AreAGrowers()
    {
        Assert.Equal("at least 3.75",
            PriceWords.Of(PriceAdvice.Of(Set(2m, 3.6m), Result.Known(3m), Result.Known(3m), Terms), Notation.Default));
        Assert.Equal("keep 4.00", PriceWords.Of(PriceAdvice.Of(Set(2m, 3.6m), Result.Known(4m), Result.Known(4m), Terms), Notation.Default));
        Assert.Equal("can't be priced",
            PriceWords.Of(PriceAdvice.Of(Set(20m, 36m), Result.Known(4m), Result.Known(4m), Terms), Notation.Default));
    }

    public static TheoryData<int> Years => [2023, 2024, 2025];

    /// <summary>
    /// No price asked of the demo farm lies below what the crop brought or its list price, nor below its target; what can't be priced costs
    /// half as much again as it ever brought.
    /// </summary>
    [Theory]
    [MemberData(nameof(Years))]
    public void Advice_OfTheDemoFarm_IsNeverBelowWhatACropHas(int year)
    {
        PriceBook book = PriceBook.Of(Demo.Value, year);
        HashSet<AdviceKind> kinds = [];
        foreach (CropPrice price in book.Prices)
        {
            foreach (string unit in price.Units)
            {
                decimal size = price.BaseUnits(unit);
                PriceAdvice advice = price.Advice(unit);
                PriceSet set = (price.AtNormalYield ?? price.Prices).For(size);
                kinds.Add(advice.Kind);
                if (advice.Kind == AdviceKind.CannotBePriced)
                {
                    Assert.True(set.FullCost.Value > 1.5m * price.MostEver.Value * size);
                    Assert.Contains("drop or change", advice.Price.Reason, StringComparison.Ordinal);
                    continue;
                }

                Assert.True(advice.Price.Value >= decimal.Round(price.Realized.Value!.Value * size, 2),
                    $"{price.Crop} {price.Channel} {unit}");
                Assert.True(advice.Price.Value >= (price.ListPrice.Value ?? 0m) * size - 0.005m, $"{price.Crop} {price.Channel} {unit}");
                Assert.True(advice.Price.Value >= set.Target.Value - 0.0000001m, $"{price.Crop} {price.Channel} {unit}");
            }

            Assert.True(price.Lowest.Value <= price.Realized.Value && price.Realized.Value <= price.Highest.Value
                && price.Highest.Value > 0m);
        }

        Assert.Superset(new HashSet<AdviceKind> { AdviceKind.AtLeast, AdviceKind.Keep }, kinds);
    }

    /// <summary>
    /// Kale sells at the market (stall 15, one hour standing there) for 300; carrots go to the shop alone: 100 lb, seed 20, no fee. The
    /// market's 35 over 300 follows the carrots' price.
    /// </summary>
    private static FarmBuilder Two() => new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 0m })
        .Crop("carrots").Unit("carrots", "bag", 2m).Bed("bed").Bed("two").Planting("c", "carrots", "bed", 100, "2025-05-01", "2025-08-01")
            .Pick("2025-07-01", "c", 100m)
        .Channel("market", ChannelKind.Market, 5m).Channel("shop", ChannelKind.Wholesale).Sell("2025-07-01", "carrots", "shop", 100m, 1m)
            .Price("carrots", 1.25m, "market")
        .Crop("kale").Planting("k", "kale", "two", 100, "2025-05-01", "2025-08-01").Pick("2025-07-01", "k", 100m)
            .Sell("2025-07-01", "kale", "market", 100m, 3m)
        .Worker("me", WorkerKind.Owner).Work("2025-07-01", "me", 1m, "sell", channel: "market")
            .Spend("2025-04-01", 20m, "seed", crop: "carrots").Spend("2025-07-01", 15m, "market fees", channel: "market");

    [Fact]
    public void Elsewhere_ByHand_LetsTheChannelsCostFollowThePrice()
    {
        PriceBook book = PriceBook.Of(Two().Review(), 2025, new PriceTerms { WantedPerHour = 30m });
        Channel market = book.Review.Records.Channels.Single(channel => channel.Name == "market");
        ElsewherePrice carrots = Assert.Single(book.Elsewhere(market));

        Assert.Equal("carrots", carrots.Crop.Name);
        Close.To(0.20m / 0.95m, carrots.Prices.Floor.Value!.Value, 0.0000001m);
        Close.To(0.20m / (0.95m - (35m / 300m)), carrots.Prices.FullCost.Value!.Value, 0.0000001m);
        Close.To(0.20m / (0.95m - (15m / 300m) - (30m / 300m)), carrots.Prices.Target.Value!.Value, 0.0000001m);
        Assert.Equal((AdviceKind.Keep, 1.25m), (carrots.Advice.Kind, carrots.Advice.Price.Value!.Value));
        ReportTable table = PriceTables.Prices(book, market);
        Assert.Contains("keep 1.25", table.ToPlainText(), StringComparison.Ordinal);
        Assert.Contains("Not sold there that season", table.ToPlainText(), StringComparison.Ordinal);
        Assert.DoesNotContain(book.Elsewhere(book.Review.Records.Channels.Single(channel => channel.Name == "shop")),
            price => price.Crop.Name == "carrots");
    }

    /// <summary>
    /// The target elsewhere, fed back: what is left of it after fee, channel and production gives the wanted return to every hour.
    /// </summary>
    [Fact]
    public void Elsewhere_TargetFedBack_GivesTheWantedReturn() => Gen.Select(Gen.Int[0, 30], Gen.Int[1, 90], Gen.Int[0, 40]).Sample(
        (fee, wanted, hours) =>
        {
            FarmBuilder farm = Two();
            farm.Without<ChannelRow>(channel => channel.Channel == "market");
            farm.Channel("market", ChannelKind.Market, fee).Work("2025-07-01", "me", 1m + hours, "grow", crop: "carrots");
            PriceBook book = PriceBook.Of(farm.Review(), 2025, new PriceTerms { WantedPerHour = wanted });
            ElsewherePrice carrots =
                Assert.Single(book.Elsewhere(book.Review.Records.Channels.Single(channel => channel.Name == "market")));
            if (carrots.Prices.Target.Value is not { } target)
            {
                Assert.Contains("take the whole price", carrots.Prices.Target.Reason, StringComparison.Ordinal);
            }
            else if (!carrots.Prices.TargetIsFullCost)
            {
                decimal left = (target * (1m - (fee / 100m))) - 0.20m - (target * 15m / 300m);
                Close.To(wanted, left / (((1m + hours) / 100m) + (target / 300m)), 0.0001m);
            }
        },
        iter: 60);

    /// <summary>Arithmetic on published elasticities: a price 10 % higher sells 5.38 % less and brings 4.08 % more at -0.58 (vegetables,
    /// Andreyeva, Long and Brownell 2010, Am. J. Public Health 100:216-222, from memory),
    /// 10.04 % less and 1.04 % less at -1.11 (fresh-cut salads, lower-income shoppers, US store scans).</summary>
    [Theory]
    [InlineData(-0.58, -0.0538, 0.0408)]
    [InlineData(-1.11, -0.1004, -0.0104)]
    public void QuantityFactor_PublishedElasticities_GiveTheirArithmetic(double elasticity, double quantity, double sales)
    {
        decimal factor = PriceMath.QuantityFactor(1.1m, (decimal)elasticity);

        Close.To((decimal)quantity, factor - 1m, 0.00005m);
        Close.To((decimal)sales, (1.1m * factor) - 1m, 0.00005m);
        Assert.Equal(factor, PriceMath.QuantityFactor(1.1m, -(decimal)elasticity));
        Assert.Throws<ArgumentOutOfRangeException>(() => PriceMath.QuantityFactor(0m, 1m));
    }

    /// <summary>
    /// Published own-price elasticities of vegetables, greens and salads of richer shoppers are all within 1: no best price may be named.
    /// </summary>
    [Theory]
    [InlineData(-0.58)]
    [InlineData(-0.37)]
    [InlineData(-0.91)]
    [InlineData(1)]
    [InlineData(0)]
    public void BestPrice_AtAnElasticityOfOneOrLess_IsNotNamed(double elasticity) =>
        Assert.Contains("no price is the best", PriceMath.BestPrice(Result.Known(1m), 5m, (decimal)elasticity).Reason,
            StringComparison.Ordinal);

    [Fact]
    public void BestPrice_AboveOne_BeatsEveryPriceBesideIt() => Gen.Select(Gen.Double[1.05, 6], Gen.Double[0.05, 5], Gen.Int[0, 30])
        .Sample((elasticity, handling, fee) =>
    {
        decimal best = PriceMath.BestPrice(Result.Known((decimal)handling), fee, (decimal)elasticity).Value!.Value;
        decimal Earns(decimal price) =>
            ((price * (1m - (fee / 100m))) - (decimal)handling) * PriceMath.QuantityFactor(price / best, (decimal)elasticity);
        Assert.True(Earns(best) >= Earns(best * 1.02m) && Earns(best) >= Earns(best * 0.98m) && Earns(best) > 0m);
    });

    [Fact]
    public void BestPrice_WithoutHandlingCost_SaysSo()
    {
        Assert.Contains("no cost of picking", PriceMath.BestPrice(Result.Known(0m), 5m, 2m).Reason, StringComparison.Ordinal);
        Assert.Contains("whole price", PriceMath.BestPrice(Result.Known(1m), 100m, 2m).Reason, StringComparison.Ordinal);
        Assert.Equal("why", PriceMath.BestPrice(Result.NotAvailable("why"), 5m, 2m).Reason);
    }

    [Fact]
    public void Elastic_OfTheDemoFarm_NamesABestPriceOnlyAboveOne()
    {
        PriceBook book = PriceBook.Of(Demo.Value, 2025);
        Channel market = PriceSentences.ChannelOf(book);

        Assert.All(PriceWords.Elastic(book, market, 0.6m).Rows,
            row => Assert.Contains("no price is the best", row[^1].Reason, StringComparison.Ordinal));
        Assert.All(PriceWords.Elastic(book, market, -2.5m).Rows, row => Assert.True(row[^1].Number > 0m));
    }

    [Fact]
    public void Moves_InWords_TellMoneyAndHours()
    {
        PriceReport report = PriceReport.Of(PriceBook.Of(Demo.Value, 2025));
        string words = report.MovesInWords("Juniper Shop", "Saturday Market", 20m).ToPlainText();

        Assert.StartsWith("Moving 20% of what went through Juniper Shop to Saturday Market would have brought $", words,
            StringComparison.Ordinal);
        Assert.Contains(" hours", words, StringComparison.Ordinal);
        decimal sum = report.Moves("Juniper Shop", "Saturday Market", 20m).Rows.Sum(row => row[7].Number ?? 0m);
        Assert.Contains($"brought {Notation.Default.InWords(sum, Look.WholeMoney)} more after fees", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Advice_OfAnyFarm_IsThereOrSaysWhyNot() => RandomFarm.Gen.Sample(
        farm =>
        {
            FarmReview review = farm.Farm.Review();
            foreach (int year in review.Trace.CropYears)
            {
                PriceBook book = PriceBook.Of(review, year);
                Assert.All(book.Prices,
                    price => Assert.True(price.Advice(price.SellingUnit).Price is { } advised
                    && (advised.IsAvailable || advised.Reason?.Length > 0)));
                foreach (Channel channel in review.Records.Channels)
                {
                    Assert.All(book.Elsewhere(channel),
                        price => Assert.True(price.Prices.FullCost.IsAvailable || price.Prices.FullCost.Reason?.Length > 0));
                    Assert.NotEmpty(PriceTables.Prices(book, channel).ToPlainText());
                }
            }
        },
        iter: 100);
}
