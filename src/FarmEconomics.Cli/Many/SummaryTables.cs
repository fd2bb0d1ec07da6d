using FarmEconomics.Files.Results;

namespace FarmEconomics.Cli.Many;

/// <summary>
/// The tables over all farms, each as CSV and as Parquet: <c>farms</c>, a row per farm, and <c>crops</c>, a row per farm, crop year and
/// crop.
/// </summary>
internal static class SummaryTables
{
    /// <summary>Writes them, one farm in memory at a time.</summary>
    /// <param name="folder">A folder that is the caller's to fill.</param>
    /// <param name="farms">The farms in order, each with what its results say.</param>
    internal static async Task WriteAsync(string folder, IEnumerable<(string Name, FarmRecord Record)> farms)
    {
        using CsvTable farmsCsv = new(Path.Combine(folder, "farms.csv"), null, Names(SummaryColumns.Farms));
        using CsvTable cropsCsv = new(Path.Combine(folder, "crops.csv"), null, Names(SummaryColumns.Crops));
        await using ParquetTable farmsParquet = await ParquetTable
            .CreateAsync(Path.Combine(folder, "farms.parquet"), Typed(SummaryColumns.Farms))
            .ConfigureAwait(false);
        await using ParquetTable cropsParquet = await ParquetTable
            .CreateAsync(Path.Combine(folder, "crops.parquet"), Typed(SummaryColumns.Crops))
            .ConfigureAwait(false);
        foreach ((string name, FarmRecord record) in farms)
        {
            await AddAsync(farmsCsv, farmsParquet, SummaryColumns.Farms, name, record.Farm).ConfigureAwait(false);
            foreach (object?[] crop in record.Crops)
            {
                await AddAsync(cropsCsv, cropsParquet, SummaryColumns.Crops, name, crop).ConfigureAwait(false);
            }
        }

        await farmsParquet.CompleteAsync().ConfigureAwait(false);
        await cropsParquet.CompleteAsync().ConfigureAwait(false);
    }

    private static async Task AddAsync<T>(CsvTable csv, ParquetTable parquet, ResultColumn<T>[] columns, string farm, object?[] row)
    {
        csv.Text(farm);
        for (int i = 0; i < columns.Length; i++)
        {
            ResultValue.Write(csv, columns[i].Kind, row[i]);
        }

        csv.End();
        await parquet.AddAsync([farm, .. row]).ConfigureAwait(false);
    }

    private static string[] Names<T>(ResultColumn<T>[] columns) => [SummaryColumns.Farm, .. columns.Select(column => column.Name)];

    private static IReadOnlyList<(string, ResultKind)> Typed<T>(ResultColumn<T>[] columns) =>
        [(SummaryColumns.Farm, ResultKind.Text), .. columns.Select(column => (column.Name, column.Kind))];
}
