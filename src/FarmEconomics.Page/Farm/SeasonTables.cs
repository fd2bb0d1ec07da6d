using System.Text;
using FarmEconomics.Budgets;
using FarmEconomics.Files;
using FarmEconomics.Files.Results;
using FarmEconomics.Files.Workbooks;
using FarmEconomics.Records;

namespace FarmEconomics.Page.Farm;

/// <summary>A season's result tables to take along, as files and as one workbook.</summary>
internal sealed class SeasonTables
{
    private SeasonTables(SeasonReview season, Dictionary<string, byte[]> files, byte[] workbook)
    {
        Year = season.CropYear;
        Notation = season.Notation;
        Files = files;
        Workbook = workbook;
    }

    internal int Year { get; }

    internal Notation Notation { get; }

    /// <summary>The files by name.</summary>
    internal IReadOnlyDictionary<string, byte[]> Files { get; }

    internal byte[] Workbook { get; }

    /// <summary>How many rows a file has below its headings.</summary>
    internal int Rows(string name) => Math.Max(0, Encoding.UTF8.GetString(Files[name]).Count(c => c == '\n') - 1);

    internal static SeasonTables Of(FarmFolder folder, SeasonReview season)
    {
        DirectoryInfo temporary = Directory.CreateTempSubdirectory("farm-tables-");
        try
        {
            Workbook book = new();
            ResultTables.Write(season, folder.ProblemsWith(season), temporary.FullName, book);
            Dictionary<string, byte[]> files = temporary.EnumerateFiles()
                .ToDictionary(file => file.Name, file => File.ReadAllBytes(file.FullName), StringComparer.Ordinal);
            return new SeasonTables(season, files, WorkbookWriter.ToBytes(book));
        }
        finally
        {
            temporary.Delete(recursive: true);
        }
    }
}
