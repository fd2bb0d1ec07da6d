using FarmEconomics.Records;

namespace FarmEconomics.Decisions.Scenarios;

/// <summary>
/// A change of yield: what was picked, culled and left the farm in proportion, at the same price per unit. Hours and books stay as they
/// were; what picking and packing more would have cost takes a change of its own.
/// </summary>
internal static class YieldChanges
{
    internal static void Apply(RecordsCopy copy, ScenarioChange change)
    {
        FarmRecords records = copy.Original;
        Crop? crop = change.Scope == ScenarioScope.Crop ? records.Crop(change.Name!) : null;
        foreach (HarvestRow row in records.Tables.Harvests)
        {
            if (crop is null || CropOf(records, row) == crop)
            {
                copy.Scale(row, HarvestRow.QuantityColumn, change.Step.Factor);
                copy.Scale(row, HarvestRow.CulledColumn, change.Step.Factor);
            }
        }

        foreach (SaleRow row in records.Tables.Sales)
        {
            if (crop is null || records.Crop(row.Crop) == crop)
            {
                copy.Scale(row, SaleRow.QuantityColumn, change.Step.Factor);
                copy.Scale(row, SaleRow.AmountColumn, change.Step.Factor);
            }
        }
    }

    private static Crop? CropOf(FarmRecords records, HarvestRow row) =>
        !string.IsNullOrWhiteSpace(row.Crop) ? records.Crop(row.Crop)
        : records.FindPlanting(row.Planting!)?.Crop;
}
