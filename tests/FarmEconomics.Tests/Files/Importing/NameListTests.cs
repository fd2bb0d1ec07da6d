using FarmEconomics.Files;
using FarmEconomics.Files.Importing;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Names;
using Xunit;

namespace FarmEconomics.Tests.Files.Importing;

/// <summary>One list with every unknown name of all tables, blank where none is near, confirmed at once.</summary>
public class NameListTests
{
    [Fact]
    public void All_NamesOverAllTables_StandOnceWithTheirRows_AndAreConfirmedAtOnce()
    {
        string folder = TestFolders.MakeBad("sound");
        File.WriteAllText(Path.Combine(folder, "sales.csv"), "date,crop,channel,quantity,amount,unit\n2025-05-10,letuce,market,40,60.00,\n2025-05-11,letuce,markt,4,6.00,\n2025-06-10,Zebra fruit,market,30,75.00,\n2025-06-10,kale,market,1,2.50,crate\n");

        FarmFolder farm = FarmFolder.Open(folder);
        IReadOnlyList<AliasProposal> names = AliasProposal.All(farm.Problems, farm.Reading.Tables);

        Assert.Equal(
            "table,alias,name,rows,first\ncrops,letuce,lettuce,2,sales.csv:2\nchannels,markt,market,1,sales.csv:3\ncrops,Zebra fruit,,1,sales.csv:4\nunits,crate,,1,sales.csv:5\n",
            NameList.Text(names.OrderByDescending(name => name.Rows).ThenBy(name => name.First.Line))
        );
        Assert.Equal(
            ["channels markt", "crops letuce"],
            AliasProposal.Of(farm.Problems, farm.Reading.Tables).Select(name => $"{name.Table} {name.Alias}").Order(StringComparer.Ordinal)
        );

        string list = Path.Combine(
            TestFolders.Make(("names.csv", NameList.Text(names).Replace("Zebra fruit,,", "Zebra fruit,kale,", StringComparison.Ordinal))),
            "names.csv"
        );
        IReadOnlyList<GivenName> given = NameList.Read(list);
        Assert.Empty(NameList.Faults(given, farm.Reading));
        Assert.Equal("aliases.names.csv", NameList.Confirm(folder, given));

        FarmFolder after = FarmFolder.Open(folder);
        Assert.Equal(["units crate"], AliasProposal.All(after.Problems, after.Reading.Tables).Select(name => $"{name.Table} {name.Alias}"));
        Assert.All(given, name => Assert.True(NameList.IsKnown(name, after.Reading)));
    }

    [Fact]
    public void Faults_NameThatIsNotThere_SaysANearOne()
    {
        RecordsReading records = RecordsFolder.Read(TestFolders.MakeBad("sound"));

        Assert.Equal(
            ["crops has no \"kal\"; did you mean kale?", "there is no table fruits that names stand in"],
            NameList
                .Faults([new("crops", "x", "kal"), new("fruits", "y", "kale"), new("crops", "z", "")], records)
                .Select(fault => fault.Why)
        );
    }

    [Fact]
    public void KnownNames_HoldShippedOnesAndUnitsOfAnyCrop()
    {
        RecordsReading records = RecordsFolder.Read(TestFolders.MakeBad("sound"));
        var known = new KnownNames(records.Tables, records.FarmSettings);

        Assert.Equal(["bunch", "head"], known.Of("units"));
        Assert.Contains("seed", known.Of("categories"));
        Assert.Equal(["tunnel"], known.Of("structures"));
        Assert.Empty(known.Of("nothing"));
    }
}
