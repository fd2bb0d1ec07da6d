using FarmEconomics.DemoFarm;
using FarmEconomics.Files;
using FarmEconomics.Files.Results;
using FarmEconomics.Records.Names;
using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.Tests.DemoFarm;

public sealed class MessyFarmTests
{
    private static readonly string Clean = Path.Combine(TestFolders.Repository, "demo-data");

    [Fact]
    public void MessyData_GeneratedAgain_IsTheCommittedFolder()
    {
        foreach (var (name, content) in MessyFarm.Generate())
        {
            Assert.True(content == File.ReadAllText(Path.Combine(Clean, "messy", name)) || "\uFEFF" + File.ReadAllText(Path.Combine(Clean, "messy", name)) == content,
                $"messy/{name} differs from what the generator writes");
        }
    }

    [Fact]
    public void MessyFarm_WithTheProposedFixes_ReachesTheReviewOfTheCleanOne()
    {
        string folder = TestFolders.Make([.. MessyFarm.Generate().Select(table => (table.Key, table.Value))]);
        FarmFolder first = FarmFolder.Open(folder);
        Assert.Null(first.Review);

        // What the check proposes: aliases, and the doubled rows it names.
        IReadOnlyList<AliasProposal> proposals = AliasProposal.Of(first.Problems, first.Reading.Tables);
        Assert.Equal(
            ["channels Juniper Shoppe=Juniper Shop", "channels Saturday Mkt=Saturday Market", "crops Head lettce=Head lettuce", "crops Salad Mixx=Salad mix",
                "tasks Wash & pack=Wash and pack", "workers Marren=Maren"],
            proposals.Select(row => $"{row.Table} {row.Alias}={row.Name}").Order(StringComparer.Ordinal));
        File.WriteAllText(Path.Combine(folder, "aliases.csv"), AliasFile.Text(proposals));
        HashSet<int> doubled = [.. FarmFolder.Open(folder).Problems.Where(problem => problem.Code == "W202" && problem.Source.File == "sales.csv").Select(problem => problem.Source.Line)];
        Assert.NotEmpty(doubled);
        string sales = Path.Combine(folder, "sales.csv");
        File.WriteAllLines(sales, [.. File.ReadAllLines(sales).Where((_, i) => !doubled.Contains(i + 1))]);

        // The messy farm has no plan; with the clean one's the two must tell the same of it too.
        foreach (string plan in new[] { "plan.csv", "plan_sales.csv" })
        {
            File.Copy(Path.Combine(Clean, plan), Path.Combine(folder, plan));
        }

        FarmFolder mended = FarmFolder.Open(folder);

        Assert.Equal(0, mended.ErrorCount);
        Assert.Equal(2, mended.Problems.Count(problem => problem.Code == "W104"));
        FarmFolder clean = FarmFolder.Open(Clean);
        foreach (int year in clean.Review!.CropYears)
        {
            Assert.Equal(Tables(clean, year), Tables(mended, year));
        }
    }

    private static Dictionary<string, string> Tables(FarmFolder farm, int year)
    {
        string folder = TestFolders.Make();
        ResultTables.Write(farm.Review!.Season(year), [], folder);
        return Directory.EnumerateFiles(folder).ToDictionary(path => Path.GetFileName(path)!, File.ReadAllText);
    }
}
