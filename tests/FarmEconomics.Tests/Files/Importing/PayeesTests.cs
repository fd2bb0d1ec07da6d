using FarmEconomics.Files.Importing;
using FarmEconomics.Files.Importing.Drafts;
using Xunit;

namespace FarmEconomics.Tests.Files.Importing;

/// <summary>One line of the mapping for each shop, however a bank writes how it was paid. Names are invented; that banks write so is common
/// practice, no source.</summary>
public class PayeesTests
{
    private const string Card = "Transaction Date,Post Date,Description,Category,Type,Amount\n";

    /// <summary>All that was paid by card was one line, and one category.</summary>
    [Theory]
    [InlineData("CHECKCARD 0601 PLAINS SEED CO", "CHECKCARD 0614 PLAINS SEED CO", "PLAINS SEED CO", "contains", "seed")]
    [InlineData("PURCHASE AUTHORIZED ON 06/01 SEED CO", "PURCHASE AUTHORIZED ON 06/14 SEED CO", "SEED CO", "contains", "seed")]
    [InlineData("POS PURCHASE CORNER HARDWARE 12", "POS PURCHASE CORNER HARDWARE 14", "CORNER HARDWARE", "contains", "supplies")]
    [InlineData("ACH DEBIT COUNTY ELECTRIC", "COUNTY ELECTRIC", "COUNTY ELECTRIC", "contains", "electricity")]
    [InlineData("FUEL STOP 123", "FUEL STOP 77", "FUEL STOP", "starts", "fuel")]
    [InlineData("CARD FEE", "CARD FEE", "CARD FEE", "", "card fees")]
    [InlineData("CHECK 1031", "CHECK 1032", "CHECK", "starts", "")]
    public void Shop_IsOneLine(string one, string other, string when, string match, string category)
    {
        string csv = ImportDraft.Of(new ImportRequest(Drafted.Source("bank.csv",
            $"Date,Description,Amount\n06/25/2025,{one},-84.20\n06/26/2025,{other},-20.00\n"))).Csv;

        string line = Assert.Single(csv.Split('\n'), line => line.Contains(",category,", StringComparison.Ordinal));
        Assert.StartsWith($"bank,expenses,category,Description,,{when},{match},{category},", line, StringComparison.Ordinal);
    }

    /// <summary>The first rule that holds counts.</summary>
    [Fact]
    public void Name_WithinAnother_ComesAfterIt()
    {
        string[] lines = [.. ImportDraft.Of(new ImportRequest(Drafted.Source("bank.csv", "Date,Description,Amount\n"
            + "06/25/2025,CHECKCARD 0601 SHELTON,-900.00\n06/26/2025,CHECKCARD 0602 SHELTON NURSERY,-20.00\n"))).Csv.Split('\n')
            .Where(line => line.Contains(",category,", StringComparison.Ordinal)).Select(line => line.Split(',')[5])];

        Assert.Equal(["SHELTON NURSERY", "SHELTON"], lines);
    }

    /// <summary>A card's "Shopping" is no category of a farm's; a grower's own list keeps its words, known or not.</summary>
    [Theory]
    [InlineData(Card + "06/25/2025,06/26/2025,Seed house,Shopping,Sale,-84.20\n", "Description")]
    [InlineData(Card + "06/25/2025,06/26/2025,Seed house,seed,Sale,-84.20\n", "Category")]
    [InlineData("Date,Store,Category,Cost\n06/25/2025,Seed house,Plants and such,84.20\n", "Category")]
    public void Categories_OfACard_AreNoneOfTheFarms(string text, string heading) => Assert.Equal(heading,
        ImportDraft.Of(new ImportRequest(Drafted.Source("card.csv", text))).Csv.Split('\n')
            .Single(line => line.Contains(",category,", StringComparison.Ordinal)).Split(',')[3]);
}
