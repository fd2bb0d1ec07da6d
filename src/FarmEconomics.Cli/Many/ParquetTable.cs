using FarmEconomics.Files.Results;
using Parquet;
using Parquet.Schema;

namespace FarmEconomics.Cli.Many;

/// <summary>
/// A table as a Parquet file with typed columns, null for "not available": text, 32-bit whole numbers, money as decimal(18,2), quantities
/// and rates as decimal(18,4). Rows are written in groups, so that memory doesn't grow with the number of farms.
/// </summary>
internal sealed class ParquetTable : IAsyncDisposable
{
    private const int RowsInGroup = 50_000;
    private readonly Stream file;
    private readonly ParquetWriter writer;
    private readonly ResultKind[] kinds;
    private readonly DataField[] fields;
    private readonly List<object?[]> rows = [];
    private bool written;

    private ParquetTable(Stream file, ParquetWriter writer, ResultKind[] kinds, DataField[] fields)
    {
        this.file = file;
        this.writer = writer;
        this.kinds = kinds;
        this.fields = fields;
    }

    internal static async Task<ParquetTable> CreateAsync(string path, IReadOnlyList<(string Name, ResultKind Kind)> columns)
    {
        DataField[] fields = [.. columns.Select(column => Field(column.Name, column.Kind))];
        FileStream file = File.Create(path);
        try
        {
            ParquetWriter writer = await ParquetWriter.CreateAsync(new ParquetSchema(fields), file).ConfigureAwait(false);
            return new ParquetTable(file, writer, [.. columns.Select(column => column.Kind)], fields);
        }
        catch
        {
            await file.DisposeAsync().ConfigureAwait(false);
            throw;
        }
    }

    internal async Task AddAsync(object?[] row)
    {
        rows.Add(row);
        if (rows.Count >= RowsInGroup)
        {
            await FlushAsync().ConfigureAwait(false);
        }
    }

    /// <summary>Writes what is left and the end of the file.</summary>
    internal async Task CompleteAsync()
    {
        if (rows.Count > 0 || !written)
        {
            await FlushAsync().ConfigureAwait(false);
        }
    }

    public async ValueTask DisposeAsync()
    {
        await writer.DisposeAsync().ConfigureAwait(false);
        await file.DisposeAsync().ConfigureAwait(false);
    }

    private static DataField Field(string name, ResultKind kind) => kind switch
    {
        ResultKind.Whole => new DataField(name, typeof(int), isNullable: true),
        ResultKind.Money => new DecimalDataField(name, 18, 2, isNullable: true),
        ResultKind.Number => new DecimalDataField(name, 18, 4, isNullable: true),
        _ => new DataField(name, typeof(string), isNullable: true),
    };

    private async Task FlushAsync()
    {
        using ParquetRowGroupWriter group = writer.CreateRowGroup();
        for (int i = 0; i < fields.Length; i++)
        {
            int column = i;
            switch (kinds[i])
            {
                case ResultKind.Text:
                    await group.WriteAsync(fields[i], rows.ConvertAll(row => (string?)row[column])!).ConfigureAwait(false);
                    break;
                case ResultKind.Whole:
                    await group.WriteAsync<int>(fields[i], rows.Select(row => (int?)row[column]).ToArray()).ConfigureAwait(false);
                    break;
                default:
                    await group.WriteAsync<decimal>(fields[i], rows.Select(row => (decimal?)row[column]).ToArray()).ConfigureAwait(false);
                    break;
            }
        }

        group.CompleteValidate();
        rows.Clear();
        written = true;
    }
}
