using FarmEconomics.Budgets;
using FarmEconomics.Files;
using FarmEconomics.Pricing;
using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Pricing;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.Tests.Reports.Pricing;

public class PriceReportTests
{
    private static readonly Lazy<FarmReview> Demo = new(() => FarmFolder.Open(Path.Combine(TestFolders.Repository, "demo-data")).Review!);

    private static FarmBuilder Bare() => new FarmBuilder().Crop("kale <b>", "bunch").Bed("bed").Planting("k", "kale <b>", "bed", 10, "2025-05-01", "2025-08-01").Pick("2025-07-01", "k", 50);

    [Fact]
    public void Tables_OfTheDemoFarm_NeverSayNotAvailableWithoutAReason()
    {
        PriceBook book = PriceBook.Of(Demo.Value, 2025);
        PriceReport report = PriceReport.Of(book);
        ShareReport shares = ShareReport.Of(book, new ShareTerms());
        foreach (ReportTable table in new[] { report.Units(), report.Months(), report.NormalYield(), report.References(), report.Moves("", "", 20m), PriceTables.Prices(book), PriceTables.Channels(book), shares.Price(), shares.WeekTable(), shares.CropTable() })
        {
            Assert.NotEmpty(table.Rows);
            foreach (ReportCell cell in table.Rows.SelectMany(row => row).Where(cell => cell.Value is null))
            {
                Assert.True(cell.Reason is null || cell.Reason.Length > 5, $"{table.Title}: a missing value without a reason");
            }
        }
    }

    [Fact]
    public void CropTable_OfTheShare_TotalsTheIncomeToTheCent()
    {
        PriceBook book = PriceBook.Of(Demo.Value, 2025);
        ReportTable table = ShareReport.Of(book, new ShareTerms()).CropTable();
        decimal income = Demo.Value.Trace.ShareIncome.Where(pair => pair.Key.Window == 2025).Sum(pair => pair.Value.Amount);
        Assert.Equal(income, table.Rows.Sum(row => row[4].Number!.Value));
        Assert.Equal(income, table.TotalRow![4].Number);
    }

    [Fact]
    public void Figures_OfTheDemoFarm_SayTheirFindingAndHaveAnAlternative()
    {
        PriceBook book = PriceBook.Of(Demo.Value, 2025);
        Figure prices = PriceReport.Of(book).Figure();
        int below = book.In(PriceSentences.ChannelOf(book)).Count(price => price.AgainstFullCost.Value < 0m);
        Assert.Contains($"{below} crops of ", prices.Title, StringComparison.Ordinal);
        Figure weeks = ShareReport.Of(book, new ShareTerms { Members = 36m }).Weeks();
        Assert.Contains("weeks", weeks.Title, StringComparison.Ordinal);
        Assert.All(new[] { prices, weeks }, figure => Assert.True(figure.Alt.Length > 60 && figure.Height <= 480 && figure.Png(1).Length > 5000));
    }

    [Fact]
    public void Report_OfAFarmThatSoldNothing_SaysSoEverywhere()
    {
        PriceBook book = PriceBook.Of(Bare().Review(), 2025);
        PriceReport report = PriceReport.Of(book);
        Assert.All(new[] { report.Units(), report.Months(), report.Moves("", "", 20m) }, table => Assert.NotEmpty(table.Notes));
        Assert.Contains("no share", ShareReport.Of(book, new ShareTerms()).Answer().ToPlainText(), StringComparison.Ordinal);
        Assert.Contains("no price to speak of", report.Figure().Alt, StringComparison.Ordinal);
    }

    [Fact]
    public void Sheet_NamesFromTheRecords_AreEncoded()
    {
        FarmBuilder farm = Bare().Channel("stall & co", ChannelKind.Market).Sell("2025-07-01", "kale <b>", "stall & co", 50, 3m);
        PriceBook book = PriceBook.Of(farm.Review(), 2025);
        string html = PriceSheet.Body(book, book.Review.Records.Channels[0]);
        Assert.Contains("kale &lt;b&gt;", html, StringComparison.Ordinal);
        Assert.Contains("stall &amp; co", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<b>", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Channel_NamedWrongly_IsToldWhichThereAre() =>
        Assert.Contains("Saturday Market", Assert.Throws<ArgumentException>(() => PriceReport.Of(PriceBook.Of(Demo.Value, 2025), "Sunday Market")).Message, StringComparison.Ordinal);
}
