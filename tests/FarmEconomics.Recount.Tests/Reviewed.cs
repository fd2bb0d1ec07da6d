using FarmEconomics.Budgets;
using FarmEconomics.Files;
using FarmEconomics.Files.Results;

namespace FarmEconomics.Recount.Tests;

/// <summary>The program's own result tables of a records folder, read back from the files it writes.</summary>
internal sealed class Reviewed
{
    private readonly FarmFolder farm;

    internal Reviewed(string folder)
    {
        farm = FarmFolder.Open(folder);
        Assert.True(farm.ErrorCount == 0, string.Join(Environment.NewLine, farm.Problems.Where(problem => problem.Code[0] == 'E').Take(10).Select(problem => $"{problem.Source} {problem.Message}")));
    }

    internal FarmReview Review => farm.Review!;

    internal IReadOnlyList<int> Years => [.. farm.Review!.CropYears];

    /// <summary>Tables of one crop year by name; every field is text, a blank is null.</summary>
    internal Dictionary<string, List<Dictionary<string, object?>>> Tables(int year)
    {
        string folder = Directory.CreateTempSubdirectory("farm-recount-").FullName;
        try
        {
            using Database reader = new();
            ResultTables.Write(farm.Review!.Season(year), [], folder);
            return Directory.GetFiles(folder, "*.csv").ToDictionary(
                file => Path.GetFileNameWithoutExtension(file),
                file => reader.Rows($"FROM read_csv({Database.Quoted(file)}, header = true, all_varchar = true, delim = ',', quote = '\"', escape = '\"')"));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
