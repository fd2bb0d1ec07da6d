using System.Text;
using CsvHelper;
using FarmEconomics.Files.Reading;
using FarmEconomics.Records;

namespace FarmEconomics.Files.Inputs;

/// <summary>Rows that stand in no file yet, each with the line of the file it was made from.</summary>
internal sealed class TextInput(string csv, int[] lines, string file, string table) : TableInput(file, table)
{
    public override InputReading Open(Func<CsvReaderOptions, CsvReaderOptions> options, FarmSettings settings) =>
        new(CsvReader.Create(Encoding.UTF8.GetBytes(csv), options(TableFile.Options(','))), lines);
}
