using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

/// <summary>A record as the grower wrote it, with its place in the files.</summary>
public interface IRecordRow
{
    /// <summary>The table it stands in.</summary>
    RecordTable Home { get; }

    /// <summary>Its place in the table, from 0.</summary>
    int Index { get; }

    /// <summary>The file and line the record came from.</summary>
    SourceLine Source => Home.Source(Index);
}

/// <summary>A row of one table: the table is declared where its row is.</summary>
/// <typeparam name="T">The row itself.</typeparam>
public interface IRecordRow<T> : IRecordRow
    where T : struct, IRecordRow<T>
{
    /// <summary>What the table holds.</summary>
    static abstract TableSchema Schema { get; }

    /// <summary>A row of a table.</summary>
    /// <param name="table">The table.</param>
    /// <param name="index">The row, from 0.</param>
    /// <returns>The row.</returns>
    static abstract T At(RecordTable table, int index);
}

/// <summary>What every row tells.</summary>
public static class RecordRows
{
    extension<T>(T row)
        where T : struct, IRecordRow<T>
    {
        /// <summary>The file and line the record came from.</summary>
        public SourceLine Source => row.Home.Source(row.Index);
    }
}
