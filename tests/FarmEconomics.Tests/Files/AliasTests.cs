using FarmEconomics.Files;
using FarmEconomics.Records.Names;
using Xunit;

namespace FarmEconomics.Tests.Files;

public class AliasTests
{
    private const string Sales = "date,crop,channel,quantity,unit,amount\n2025-05-10,Lettce,Markt,40,heds,60.00\n2025-05-11,lettce,market,2,,3.00\n2025-06-10,kale,market,30,,75.00\n";

    [Fact]
    public void Of_UnknownNames_AreProposedWithTheirLikelyMeaning()
    {
        string folder = TestFolders.MakeBad("sound");
        File.WriteAllText(Path.Combine(folder, "sales.csv"), Sales);

        IReadOnlyList<AliasProposal> proposals = AliasProposal.Of(FarmFolder.Open(folder).Problems);

        Assert.Equal(["crops Lettce=lettuce 2", "channels Markt=market 1"], proposals.Select(row => $"{row.Table} {row.Alias}={row.Name} {row.Rows}"));
    }

    [Fact]
    public void Open_WithAliases_ReadsEveryNameAsItsOwn()
    {
        string folder = TestFolders.MakeBad("sound");
        File.WriteAllText(Path.Combine(folder, "sales.csv"), Sales);
        File.WriteAllText(Path.Combine(folder, "aliases.csv"), "table,alias,name\ncrops,LETTCE,lettuce\nChannels,markt,market\nunits,heds,head\n");

        FarmFolder farm = FarmFolder.Open(folder);

        Assert.Equal(0, farm.ErrorCount);
        Assert.Equal(["lettuce", "lettuce", "kale"], farm.Reading.Tables.Sales.Select(row => row.Crop));
        Assert.Equal(("market", "head"), (farm.Reading.Tables.Sales[0].Channel, farm.Reading.Tables.Sales[0].Unit));
    }

    [Fact]
    public void Open_AliasOfAnUnknownName_IsAnError()
    {
        string folder = TestFolders.MakeBad("sound");
        File.WriteAllText(Path.Combine(folder, "aliases.csv"), "table,alias,name\ncrops,salat,lettuces\n");

        Assert.Equal("E201", Assert.Single(FarmFolder.Open(folder).Problems).Code);
    }
}
