using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Units;

namespace FarmEconomics.Tracing;

/// <summary>
/// Quantities of rows in their crop's unit, in units of 10^-8. What a unit holds is looked up once for each crop and name.
/// </summary>
/// <param name="records">The records.</param>
/// <param name="table">The table whose names the units are.</param>
internal sealed class UnitNames(FarmRecords records, RecordTable table)
{
    // What one of a unit holds of the crop's own; 1 is the crop's own unit.
    private readonly Dictionary<(int Crop, int Name), decimal> holds = [];
    private (int Crop, int Name) last = (-1, 0);
    private decimal lastHolds;
    private bool isOwn;

    internal long Quantity(int crop, int unit, NumberCells quantities, int row)
    {
        if (last != (crop, unit))
        {
            last = (crop, unit);
            lastHolds = Holds(crop, unit);
            isOwn = lastHolds == 1m;
        }

        return isOwn && quantities.TryUnits(row, out long units) ? units : ExactUnits.Of((quantities[row] ?? 0m) * lastHolds);
    }

    private decimal Holds(int crop, int unit)
    {
        if (!holds.TryGetValue((crop, unit), out decimal one))
        {
            holds[(crop, unit)] = one = records.Crops[crop].UnitsIn(table.Names[unit]);
        }

        return one;
    }
}
