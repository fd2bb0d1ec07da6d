using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records.Names;

/// <summary>Names plantings that nobody named: by crop, year and number, in the order in which they came into their beds.</summary>
public static class PlantingNames
{
    /// <summary>Fills in blank names.</summary>
    /// <param name="tables">The tables as read; they are changed in place, and must not be sealed yet.</param>
    public static void Fill(RecordTables tables)
    {
        ArgumentNullException.ThrowIfNull(tables);
        RecordTable table = tables.Plantings.Table;
        TextCells names = PlantingRow.PlantingColumn.Cells(table);
        int[] blank = [.. Enumerable.Range(0, table.Count).Where(row => names[row] == 0)];
        if (blank.Length == 0)
        {
            return;
        }

        HashSet<string> taken = new(Enumerable.Range(0, table.Count).Where(row => names[row] != 0)
            .Select(row => PlantingRow.PlantingColumn.Of(table, row).Trim()), StringComparer.OrdinalIgnoreCase);
        foreach (var sowings in blank
            .GroupBy(row => (Crop: PlantingRow.CropColumn.Of(table, row).Trim().ToLowerInvariant(),
            PlantingRow.InBedColumn.Of(table, row).Year)))
        {
            int number = 0;
            foreach (int row in sowings.OrderBy(row => PlantingRow.InBedColumn.Of(table, row)).ThenBy(row => row))
            {
                string name;
                do
                {
                    name = $"{PlantingRow.CropColumn.Of(table, row).Trim()} {sowings.Key.Year}, sowing {++number}";
                }
                while (!taken.Add(name));

                names[row] = table.Names.Of(name);
            }
        }
    }
}
