using CsvHelper;
using FarmEconomics.Files.Reading;
using FarmEconomics.Records;

namespace FarmEconomics.Files.Inputs;

/// <summary>A file of the records as it would be: its bytes, not yet written.</summary>
internal sealed class BytesInput(byte[] bytes, string file, string table) : TableInput(file, table)
{
    public override InputReading Open(Func<CsvReaderOptions, CsvReaderOptions> options, FarmSettings settings) =>
        new(CsvReader.Create(bytes, options(TableFile.Options(TableFile.SeparatorOf(bytes)))));
}
