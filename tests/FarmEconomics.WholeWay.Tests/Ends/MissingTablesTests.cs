using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Chances;
using FarmEconomics.Files;
using FarmEconomics.Funding;
using FarmEconomics.Pricing;
using FarmEconomics.Records.Schema;
using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.WholeWay.Tests.Ends;

/// <summary>Where a table isn't there its names can't be checked: rows that give them must be understood all the same.</summary>
public class MissingTablesTests
{
    [Theory]
    [InlineData("expenses.csv", "date,amount,category,channel\n2025-03-01,20.00,market fees,Fairground\n")]
    [InlineData("labor.csv", "date,worker,hours,task,channel\n2025-05-10,Ada,3,market,Fairground\n")]
    [InlineData("prices.csv", "crop,price,channel\nkale,2.5,Fairground\n")]
    [InlineData("income.csv", "date,channel,amount\n2025-03-01,Fairground,20.00\n")]
    public void Open_ChannelNamedByOneRowAndNoChannelsTable_IsTakenOn(string file, string text)
    {
        string folder = TestFolders.MakeBad("sound");
        File.Delete(Path.Combine(folder, "channels.csv"));
        File.WriteAllText(Path.Combine(folder, file), text);

        FarmReview review = FarmFolder.Open(folder).Review!;

        Assert.Contains(review.Records.Channels, channel => channel is { Name: "Fairground", Implied: true });
        Assert.All(review.Season(2025).Reconciliation, check => Assert.True(check.Holds));
    }

    public static TheoryData<string> Optional => [.. RecordSchema.Tables.Where(table => !table.Required && File.Exists(Demo(table.Name))).Select(table => table.Name), "all"];

    [Theory]
    [MemberData(nameof(Optional))]
    public void Review_DemoFarmWithoutATable_AnswersOrSaysWhy(string without)
    {
        string folder = TestFolders.Make();
        foreach (TableSchema table in RecordSchema.Tables.Where(table => File.Exists(Demo(table.Name)) && table.Name != without && (without != "all" || table.Required)))
        {
            File.Copy(Demo(table.Name), Path.Combine(folder, $"{table.Name}.csv"));
        }

        FarmFolder farm = FarmFolder.Open(folder, skipBadRows: true);
        if (farm.Review is not { } review)
        {
            Assert.NotEmpty(farm.Problems);
            return;
        }

        // As the commands do: records without any year have nothing to review.
        if (review.CropYears.Count == 0)
        {
            Assert.NotEmpty(farm.Skipped);
            return;
        }

        SeasonReview season = review.Season(review.LatestCropYear);
        Verdicts.Of(review, SeasonCosts.Of(season), null, new SimulationSettings { Draws = 100 });
        PriceBook book = PriceBook.Of(review, review.LatestCropYear);
        Assert.NotNull(ChannelComparison.Of(book));
        Assert.NotNull(FundingWriteUp.Of(review, review.LatestCropYear, null, FundingAssumptions.Parse("", "")));
        Assert.All(season.Reconciliation, check => Assert.True(check.Holds));
    }

    private static string Demo(string table) => Path.Combine(TestFolders.Repository, "demo-data", $"{table}.csv");
}
