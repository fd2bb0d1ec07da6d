namespace FarmEconomics.Recount.Tests;

/// <summary>A copy of the demo farm's records that a test changes with SQL. Each file is a table of texts; `row` is the line's place in the file.</summary>
internal sealed class RecordsCopy : IDisposable
{
    internal static string Demo { get; } = Path.Combine(AppContext.BaseDirectory, "demo-data");

    /// <summary>Writes the changed copy.</summary>
    /// <param name="seed">Stands behind `chance(row, n)`, a number of 0 to 99 that the statements may use.</param>
    /// <param name="changes">SQL statements.</param>
    internal RecordsCopy(int seed, params IEnumerable<string> changes)
    {
        Folder = Directory.CreateTempSubdirectory("farm-records-").FullName;
        using Database database = new();
        database.Run("SET threads = 1");
        database.Run($"CREATE MACRO chance(place, n) AS CAST(hash(concat_ws(' ', place, n, {seed})) % 100 AS INTEGER)");
        string[] tables = [.. Directory.GetFiles(Demo, "*.csv").Select(file => Path.GetFileNameWithoutExtension(file))];
        foreach (string table in tables)
        {
            database.Run($"CREATE TABLE \"{table}\" AS SELECT row_number() OVER () AS row, * FROM read_csv({Database.Quoted(Path.Combine(Demo, table + ".csv"))}, header = true, all_varchar = true, delim = ',', quote = '\"', escape = '\"')");
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
}
