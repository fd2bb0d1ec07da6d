using System.Text;
using CsvHelper;
using FarmEconomics.Files;
using FarmEconomics.Files.Reading;
using FarmEconomics.Records;
using FarmEconomics.Records.Schema;
using Xunit;

namespace FarmEconomics.Tests.Files;

/// <summary>
/// The demo farm's files with bytes changed at random: never a crash, never a row lost in silence. 500 mutants; FARMECONOMICS_MUTANTS
/// sets another number (20000 for a night). The seed of a mutant is its number, so that a failing one can be looked at again.
/// </summary>
public class MutantTests
{
    private const int RowsKept = 40;
    private static readonly byte[][] Nasty = [[0], [0xFF], [0xC3], "\""u8.ToArray(), "\n"u8.ToArray(), "\r"u8.ToArray(), ","u8.ToArray(), ";"u8.ToArray(), "\t"u8.ToArray(), "\"\n\""u8.ToArray(), "-"u8.ToArray(), "99999999999999"u8.ToArray(), "total"u8.ToArray(), "=1+1"u8.ToArray(), [0xEF, 0xBB, 0xBF]];

    [Fact]
    public void Open_MutantsOfTheDemoFarm_AlwaysAnswersAndCountsEveryRow()
    {
        int mutants = int.TryParse(Environment.GetEnvironmentVariable("FARMECONOMICS_MUTANTS"), out int given) ? given : 500;
        string[] tables = [.. RecordSchema.Tables.Select(table => Path.Combine(TestFolders.Repository, "demo-data", $"{table.Name}.csv")).Where(File.Exists)];
        byte[][] heads = [.. tables.Select(path => Encoding.UTF8.GetBytes(string.Concat(File.ReadLines(path).Take(RowsKept).Select(line => line + "\n"))))];
        string folder = TestFolders.Make();
        for (int i = 0; i < tables.Length; i++)
        {
            File.WriteAllBytes(Path.Combine(folder, Path.GetFileName(tables[i])), heads[i]);
        }

        for (int seed = 0; seed < mutants; seed++)
        {
            var random = new Random(seed);
            int at = random.Next(tables.Length);
            string file = Path.Combine(folder, Path.GetFileName(tables[at]));
            File.WriteAllBytes(file, Mutate(heads[at], random));
            try
            {
                AssertSound(folder, Path.GetFileName(file));
            }
            catch (Exception fault)
            {
                throw new InvalidOperationException($"Mutant {seed} of {Path.GetFileName(file)}: {fault.Message}", fault);
            }

            File.WriteAllBytes(file, heads[at]);
        }
    }

    private static void AssertSound(string folder, string file)
    {
        RecordsReading reading = RecordsFolder.Read(folder);
        FileCount count = reading.Files.Single(known => known.File == file);
        Assert.Equal(count.RowsInFile, count.RowsRead + count.RowsInError + count.RowsPassedOver);
        Problem[] ofFile = [.. reading.Problems.Where(problem => problem.Source.File == file)];
        if (!ofFile.Any(problem => problem.Source.Line == 0 || problem.Code is "E103" or "E107"))
        {
            Assert.Equal(CountRecords(Path.Combine(folder, file)), count.RowsInFile);
            Assert.Equal(count.RowsInError, ofFile.Where(problem => problem.Severity == Severity.Error && !problem.Code.StartsWith("E10", StringComparison.Ordinal) || problem.Code is "E104" or "E105" or "E106").Select(problem => problem.Source.Line).Distinct().Count());
        }

        // The whole way, as a grower would go on: nothing may throw, and what is skipped is told.
        FarmFolder farm = FarmFolder.Open(folder, skipBadRows: true);
        Assert.All(farm.Problems, problem => Assert.NotEmpty(ProblemText.Format(problem, folder)));
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

    private static byte[] Mutate(byte[] file, Random random)
    {
        List<byte> bytes = [.. file];
        for (int changes = random.Next(1, 6); changes > 0; changes--)
        {
            int at = random.Next(bytes.Count);
            int length = Math.Min(random.Next(1, 40), bytes.Count - at);
            switch (random.Next(6))
            {
                case 0:
                    bytes[at] = (byte)random.Next(256);
                    break;
                case 1:
                    bytes.InsertRange(at, Nasty[random.Next(Nasty.Length)]);
                    break;
                case 2:
                    bytes.RemoveRange(at, Math.Min(length, bytes.Count - 1));
                    break;
                case 3:
                    bytes.InsertRange(at, bytes.GetRange(at, length));
                    break;
                case 4:
                    bytes.RemoveRange(Math.Max(1, at), bytes.Count - Math.Max(1, at));
                    break;
                default:
                    bytes.InsertRange(random.Next(bytes.Count), bytes.GetRange(at, length));
                    break;
            }
        }

        return [.. bytes];
    }
}
