using FarmEconomics.Files;
using FarmEconomics.Records.Names;
using Xunit;

namespace FarmEconomics.Tests.Files;

public class AliasTests
{
    private static IReadOnlyList<AliasProposal> Proposals(string folder)
    {
        FarmFolder farm = FarmFolder.Open(folder);
        return AliasProposal.Of(farm.Problems, farm.Reading.Tables);
    }

    private const string Sales = "date,crop,channel,quantity,unit,amount\n2025-05-10,Lettce,Markt,40,heds,60.00\n2025-05-11,lettce,market,2,,3.00\n2025-06-10,kale,market,30,,75.00\n";

    [Fact]
    public void Of_UnknownNames_AreProposedWithTheirLikelyMeaning()
    {
        string folder = TestFolders.MakeBad("sound");
        File.WriteAllText(Path.Combine(folder, "sales.csv"), Sales);

        IReadOnlyList<AliasProposal> proposals = Proposals(folder);

        Assert.Equal(["crops Lettce=lettuce 2", "channels Markt=market 1"], proposals.Select(row => $"{row.Table} {row.Alias}={row.Name} {row.Rows}"));
    }

    [Fact]
    public void Of_UnknownUsersAndStructures_AreProposedAndUnderstoodAsAliases()
    {
        string folder = TestFolders.MakeBad("sound");
        string bed = File.ReadAllLines(Path.Combine(folder, "beds.csv"))[1].Split(',')[0];
        File.WriteAllText(Path.Combine(folder, "beds.csv"), $"bed,length_ft,structure\n{string.Join("\n", File.ReadAllLines(Path.Combine(folder, "beds.csv")).Skip(1).Select(line => line.Split(',')[0] + ",100,Long Tunnel"))}\n");
        File.WriteAllText(Path.Combine(folder, "pools.csv"), "pool,basis,statement_line,structure\nwood boiler,measured,infrastructure,\nsolar power,measured,infrastructure,\nlong tunnel,bed-foot-days,infrastructure,Long Tunel\n");
        File.WriteAllText(Path.Combine(folder, "use.csv"), "pool,user,quantity,crop_year\nsolar power,wood boyler,3,2025\nwood boiler,Lettuces,1,2025\nwood boiler,housholds,1,2025\n");
        Assert.NotEmpty(bed);

        IReadOnlyList<AliasProposal> proposals = Proposals(folder);
        File.WriteAllText(Path.Combine(folder, "aliases.csv"), AliasFile.Text(proposals));

        Assert.Equal(["crops Lettuces=lettuce", "pools wood boyler=wood boiler", "structures Long Tunel=Long Tunnel"], proposals.Select(row => $"{row.Table} {row.Alias}={row.Name}").Order(StringComparer.Ordinal));
        Assert.Equal(["E211 housholds"], FarmFolder.Open(folder).Problems.Where(problem => problem.Code is "E210" or "E211" or "E220" or "E221").Select(problem => $"{problem.Code} {problem.Offending}"));
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
