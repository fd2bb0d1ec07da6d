using System.Collections;

namespace FarmEconomics.Records.Storage;

/// <summary>The values of one row by column, for rows a program makes; columns left out are blank.</summary>
public sealed class RowValues : IEnumerable<KeyValuePair<string, object?>>
{
    private readonly List<KeyValuePair<string, object?>> values = [];

    /// <summary>Where the row stands.</summary>
    public SourceLine Source { get; set; } = new("", 0);

    /// <summary>Sets the value of a column; null is a blank.</summary>
    /// <param name="column">The column's name as documented.</param>
    public object? this[string column]
    {
        set => values.Add(new(column, value));
    }

    /// <summary>A row that stands in no table of the records.</summary>
    /// <typeparam name="T">The type of row.</typeparam>
    /// <returns>The row.</returns>
    public T Row<T>()
        where T : struct, IRecordRow<T>
    {
        RecordTable table = new(T.Schema, new NamePool());
        return T.At(table, AddTo(table));
    }

    /// <inheritdoc/>
    public IEnumerator<KeyValuePair<string, object?>> GetEnumerator() => values.GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    internal int AddTo(RecordTable table)
    {
        int row = table.Add(Source);
        foreach ((string name, object? value) in values)
        {
            Column column = Array.Find(table.Schema.Stored, known => known.Schema.Name == name)
                ?? throw new ArgumentException($"{table.Schema.Name} has no column {name}.");
            column.Set(table, row, value);
        }

        return row;
    }
}
