using CsvHelper;
using FarmEconomics.Files;
using FarmEconomics.Files.Reading;
using FarmEconomics.Records;
using Xunit;

namespace FarmEconomics.WholeWay.Tests.Fuzz;

/// <summary>No row of a damaged file is lost in silence: it is read, in error or passed over, and each is counted once.</summary>
internal static class RowCounts
{
    internal static void AssertSound(string folder, string file)
    {
        RecordsReading reading = RecordsFolder.Read(folder);
        FileCount count = reading.Files.Single(known => known.File == file);
        Assert.Equal(count.RowsInFile, count.RowsRead + count.RowsInError + count.RowsPassedOver);
        Problem[] ofFile = [.. reading.Problems.Where(problem => problem.Source.File == file)];
        if (!ofFile.Any(problem => problem.Source.Line == 0 || problem.Code is "E103" or "E107"))
        {
            Assert.Equal(CountRecords(Path.Combine(folder, file)), count.RowsInFile);
            Assert.Equal(count.RowsInError, ofFile.Where(problem => problem.Severity == Severity.Error
                && !problem.Code.StartsWith("E10", StringComparison.Ordinal) || problem.Code is "E104" or "E105" or "E106")
                .Select(problem => problem.Source.Line).Distinct().Count());
        }

        // As a grower would go on: what is skipped is told.
        FarmFolder farm = FarmFolder.Open(folder, skipBadRows: true);
        Assert.All(farm.Problems, problem => Assert.NotEmpty(ProblemText.Format(problem, farm.Notation, folder)));
        Assert.True(count.RowsInError == 0 || farm.Skipped.Count > 0 || farm.Review is null);
    }

    // The records of the file as any reader of RFC 4180 counts them, without the schema and the rules of this program.
    private static int CountRecords(string path)
    {
        using CsvReader reader = CsvReader.FromFile(path, TableFile.Options(path) with { HasHeader = false, MaxRecordSize = null });
        int records = -1;
        while (reader.Read())
        {
            records += Enumerable.Range(0, reader.FieldCount).All(reader.IsEmpty) ? 0 : 1;
        }

        return records;
    }
}
