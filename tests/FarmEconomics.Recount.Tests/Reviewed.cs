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

    /// <summary>One table of one crop year; every field is text, a blank is null.</summary>
    internal List<Dictionary<string, object?>> Table(int year, string name) => Tables(year, [name])[name];

    /// <summary>Some tables of one crop year by name.</summary>
    internal Dictionary<string, List<Dictionary<string, object?>>> Tables(int year, IEnumerable<string> names)
    {
        string folder = Directory.CreateTempSubdirectory("farm-recount-").FullName;
        try
        {
            using Database reader = new();
            ResultTables.Write(farm.Review!.Season(year), [], folder);
            return names.ToDictionary(
                name => name,
                name => reader.Rows($"FROM read_csv({Database.Quoted(Path.Combine(folder, name + ".csv"))}, "
                    + "header = true, all_varchar = true, delim = ',', quote = '\"', escape = '\"')"));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
