using FarmEconomics.Budgets;
using FarmEconomics.Files;
using FarmEconomics.Reports.Words;
using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.Tests.Reports.Words;

/// <summary>A garden that sold nothing: a crop of which nothing was picked has no price for that, and leads nothing with 0.</summary>
public class UnpricedSeasonTests
{
    [Fact]
    public void Answer_WithoutAnyPrice_SaysThatNoneHasOne()
    {
        string folder = TestFolders.Make(
            ("crops.csv", "crop,unit\nKale,bunch\nMelon,each\n"),
            ("beds.csv", "bed,length_ft\nA,100\n"),
            ("plantings.csv", "planting,crop,bed,bed_feet,in_bed,out_of_bed\n"
                + "K1,Kale,A,50,2025-05-01,2025-09-01\nM1,Melon,A,50,2025-05-01,2025-09-01\n"),
            ("harvests.csv", "date,crop,quantity\n2025-06-10,Kale,12\n"),
            ("sales.csv", "date,crop,channel,quantity,amount\n"),
            ("expenses.csv", "date,amount,category,crop\n2025-04-01,3.00,seed,Melon\n"));
        FarmReview review = FarmFolder.Open(folder).Review!;

        string answer = SeasonSentences.Answer(review.Season(2025)).Markdown;

        Assert.Contains(
            "In **2025** the farm grew **2 crops, none of them with a price**. What they brought in is not available.",
            answer,
            StringComparison.Ordinal);
        Assert.DoesNotContain("led.", answer, StringComparison.Ordinal);
    }
}
