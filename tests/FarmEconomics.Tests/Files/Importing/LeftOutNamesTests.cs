using System.Text;
using FarmEconomics.Files.Importing;
using FarmEconomics.Files.Importing.Sessions;
using Xunit;

namespace FarmEconomics.Tests.Files.Importing;

/// <summary>
/// What a register sells beside crops: its rows are left out when the grower says so, told, and left out of the next file, too.
/// </summary>
public class LeftOutNamesTests
{
    private const string Head = "Date,Item,Qty,Net Sales\n";
    private const string Register = Head + "6/27/2025,Kale,2,$6.00\n6/27/2025,Tote,1,$15.00\n6/28/2025,tote,2,$30.00\n";

    [Fact]
    public void Name_LeftOut_IsToldAndRememberedWithTheMapping()
    {
        string folder = Farm();
        ImportPlan plan = Plan("register.csv", Register, folder, "crops,Tote,(left out)\n");

        Assert.Equal(["2025-06-27 Kale market 2 6.00"], Drafted.Rows(plan));
        Assert.Equal([3, 4], plan.LeftOut);
        Assert.Equal((0, 0), (plan.RowsHeldBack, plan.UnknownNames.Count));
        Assert.Contains("Left out, as you said: Tote (2 rows, amount 45.00).", plan.Remarks);
        Assert.Null(plan.NamesFileName);
        plan.Apply();

        // The next file has its rows left out without a word from the grower.
        ImportPlan next = Plan("july.csv", Head + "7/27/2025,Kale,1,$3.00\n7/27/2025,Tote,1,$15.00\n", folder);
        Assert.Equal(["2025-07-27 Kale market 1 3.00"], Drafted.Rows(next));
        Assert.Equal([3], next.LeftOut);
        Assert.Null(next.MappingFileName);
    }

    [Fact]
    public void Name_LeftOutOfAFileWithARememberedMapping_IsAddedToIt()
    {
        string folder = Farm();
        Plan("register.csv", Head + "6/27/2025,Kale,2,$6.00\n", folder).Apply();
        ImportPlan july = Plan("july.csv", Head + "7/27/2025,Kale,1,$3.00\n7/27/2025,Gift card,1,$25.00\n", folder,
            "crops,Gift card,(left out)\n");
        Assert.Equal([3], july.LeftOut);
        july.Apply();
        ImportPlan august = Plan("august.csv", Head + "8/27/2025,Kale,4,$12.00\n8/27/2025,Gift card,1,$25.00\n", folder);

        Assert.Equal(["2025-08-27 Kale market 4 12.00"], Drafted.Rows(august));
        Assert.Equal([3], august.LeftOut);
    }

    [Fact]
    public void Heading_LeftOutOfAWideTable_LeavesItsColumnOut()
    {
        const string Sheet = "Date,Kale,Beans,Helpers\n2025-06-27,2,3,4\n2025-06-28,,5,4\n";
        ImportPlan plan = Plan("picked.csv", Sheet, Farm(), "crops,Helpers,(left out)\n");

        Assert.Equal(["2025-06-27 Kale 2", "2025-06-27 Beans 3", "2025-06-28 Beans 5"], Drafted.Rows(plan));
        Assert.Equal(2, plan.LeftOut.Count);
        Assert.Contains("Left out, as you said: Helpers (2 rows).", plan.Remarks);
    }

    /// <summary>A rule for a ditto mark would leave out every row that has one.</summary>
    [Fact]
    public void Name_BehindADittoMark_IsLeftOutWithoutARuleForTheMark()
    {
        string folder = Farm();
        Plan("register.csv", Head + "6/27/2025,Tote,1,$15.00\n6/28/2025,'',1,$15.00\n6/28/2025,Kale,1,$3.00\n", folder,
            "crops,Tote,(left out)\n").Apply();
        ImportPlan next = Plan("july.csv", Head + "7/27/2025,Kale,1,$3.00\n7/28/2025,'',2,$6.00\n", folder);

        Assert.Equal(["2025-07-27 Kale market 1 3.00", "2025-07-28 Kale market 2 6.00"], Drafted.Rows(next));
    }

    [Fact]
    public void Session_NameLeftOut_IsAddedWithoutIts()
    {
        string folder = Farm();
        using var session = ImportSession.Begin(folder, "register.csv", new MemoryStream(Encoding.UTF8.GetBytes(Register)));
        Assert.Empty(session.Give([new GivenName("crops", "Tote", GivenName.LeftOut)]));
        ImportLook look = session.Look();

        Assert.Equal(GivenName.LeftOut, Assert.Single(look.Names).Name);
        Assert.True(session.Add(look.Version).Added);
        Assert.Equal((0, 2), (session.Look().Plan!.Rows.Count, session.Look().Plan!.LeftOut.Count));
        string sales = string.Concat(Directory.GetFiles(folder, "sales*").Select(File.ReadAllText));
        Assert.DoesNotContain("Tote", sales, StringComparison.Ordinal);
    }

    private static string Farm() => TestFolders.Make(("crops.csv", "crop,unit\nKale,lb\nBeans,lb\n"),
        ("channels.csv", "channel,kind\nmarket,market\n"));

    private static ImportPlan Plan(string name, string text, string folder, string? names = null)
    {
        var request = new ImportRequest(Drafted.Source(name, text)) { Folder = folder };
        string place = TestFolders.Make(("names.csv", "table,alias,name\n" + names));
        string? said = names is null ? null : Path.Combine(place, "names.csv");
        string map = Path.Combine(place, "map.csv");
        if (!RecordsImport.Remembers(request))
        {
            File.WriteAllText(map, Drafted.Of(request));
            request = request with { Map = map };
        }

        return RecordsImport.Plan(request with { Names = said });
    }
}
