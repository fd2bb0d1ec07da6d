namespace FarmEconomics.Recount.Tests;

/// <summary>A copy of a records folder that a test changes with SQL. Each file is a table of texts; `row` is the line's place in the file.</summary>
internal sealed class RecordsCopy : IDisposable
{
    internal static string Demo { get; } = Path.Combine(AppContext.BaseDirectory, "demo-data");

    /// <summary>Writes a changed copy of the demo farm.</summary>
    /// <param name="seed">Stands behind `chance(row, n)`, a number of 0 to 99 that the statements may use.</param>
    /// <param name="changes">SQL statements.</param>
    internal RecordsCopy(int seed, params IEnumerable<string> changes)
        : this(Demo, seed, changes)
    {
    }

    /// <summary>Writes a changed copy of any farm.</summary>
    /// <param name="source">Its records; tables and columns that it hasn't are there without rows, or blank, under the demo farm's headings.</param>
    /// <param name="seed">As above.</param>
    /// <param name="changes">As above.</param>
    internal RecordsCopy(string source, int seed, IEnumerable<string> changes)
    {
        Folder = Directory.CreateTempSubdirectory("farm-records-").FullName;
        using Database database = new();
        database.Run($"CREATE MACRO chance(place, n) AS CAST(hash(concat_ws(' ', place, n, {seed})) % 100 AS INTEGER)");
        string[] tables = [.. Directory.GetFiles(Demo, "*.csv").Select(file => Path.GetFileNameWithoutExtension(file))];
        foreach (string table in tables)
        {
            database.Run($"CREATE TABLE \"{table}\" AS {Read(Path.Combine(Demo, table + ".csv"))} LIMIT 0");
            if (File.Exists(Path.Combine(source, table + ".csv")))
            {
                database.Run($"INSERT INTO \"{table}\" BY NAME {Read(Path.Combine(source, table + ".csv"))}");
            }
        }

        foreach (string change in changes)
        {
            database.Run(change);
        }

        foreach (string table in tables)
        {
            database.Run($"COPY (SELECT * EXCLUDE row FROM \"{table}\" ORDER BY row) TO {Database.Quoted(Path.Combine(Folder, table + ".csv"))} (HEADER, DELIMITER ',')");
        }
    }

    internal string Folder { get; }

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    private static string Read(string file) =>
        $"SELECT row_number() OVER () AS row, * FROM read_csv({Database.Quoted(file)}, header = true, all_varchar = true, delim = ',', quote = '\"', escape = '\"')";
}
