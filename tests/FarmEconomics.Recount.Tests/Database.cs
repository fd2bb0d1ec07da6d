using DuckDB.NET.Data;

namespace FarmEconomics.Recount.Tests;

/// <summary>A DuckDB database in memory. It shares nothing with the program but the files both read.</summary>
internal sealed class Database : IDisposable
{
    private readonly DuckDBConnection connection = new("DataSource=:memory:");

    // On one thread: the tables are small, and two tests run side by side.
    internal Database()
    {
        connection.Open();
        Run("SET threads = 1");
    }

    internal void Run(string sql)
    {
        using DuckDBCommand command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    /// <summary>Rows by column name; a blank is null. DECIMAL comes as decimal, DOUBLE as double.</summary>
    internal List<Dictionary<string, object?>> Rows(string sql)
    {
        using DuckDBCommand command = connection.CreateCommand();
        command.CommandText = sql;
        using DuckDBDataReader reader = command.ExecuteReader();
        List<Dictionary<string, object?>> rows = [];
        while (reader.Read())
        {
            rows.Add(Enumerable.Range(0, reader.FieldCount).ToDictionary(reader.GetName, i => reader.IsDBNull(i) ? null : reader.GetValue(i)));
        }

        return rows;
    }

    /// <summary>A text as SQL writes it.</summary>
    internal static string Quoted(string text) => "'" + text.Replace("'", "''", StringComparison.Ordinal) + "'";

    public void Dispose() => connection.Dispose();
}
