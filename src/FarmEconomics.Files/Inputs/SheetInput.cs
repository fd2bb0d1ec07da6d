using CsvHelper;
using FarmEconomics.Files.Reading;
using FarmEconomics.Files.Workbooks.Reading;
using FarmEconomics.Records;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Inputs;

/// <summary>
/// A sheet of a workbook. Its rows are turned into CSV in memory and read like any other file, so that a folder and a workbook
/// with the same content can't give different results.
/// </summary>
internal sealed class SheetInput(string path, string sheetId, string file, TableSchema schema) : TableInput(file, schema.Name)
{
    public override InputReading Open(Func<CsvReaderOptions, CsvReaderOptions> options, FarmSettings settings)
    {
        ConvertedSheet sheet = WorkbookReader.Convert(path, sheetId, File, schema, settings);
        CsvReaderOptions plain = TableFile.Options(',') with { Encoding = null };
        return new InputReading(CsvReader.Create(sheet.Csv, options(plain)), sheet.RowOfLine)
        {
            Faults = sheet.Faults,
            Remarks = sheet.Remarks,
            RowsPassedOver = sheet.RowsPassedOver,
        };
    }
}
