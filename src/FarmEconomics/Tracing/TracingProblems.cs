using FarmEconomics.Records;

namespace FarmEconomics.Tracing;

/// <summary>The problems tracing finds, each with its code and words; the catalog in docs/errors.md lists them all.</summary>
internal static class TracingProblems
{
    internal static Problem HarvestWithoutPlanting(HarvestRow row, Crop crop) => new(
        Severity.Error, "E401", row.Source, "crop",
        $"{crop.Name} was picked on {row.Date:yyyy-MM-dd}, but no planting of it was in a bed on or before that day.",
        "Enter the planting, or correct the harvest's crop or date.") { Offending = row.Crop };

    internal static Problem HarvestAfterBed(HarvestRow row, Crop crop, Planting planting) => new(
        Severity.Warning, "W401", row.Source, "crop",
        $"{crop.Name} was picked on {row.Date:yyyy-MM-dd}, when no planting of it stood in a bed; counted to {planting.Name}, which left its bed last before.",
        "Name the planting in the harvest, or correct its out_of_bed.") { Offending = row.Crop };

    internal static Problem SoldMoreThanPicked(Leaving leaving, decimal unmatched) => new(
        Severity.Warning, "W402", leaving.Row.Source, "quantity",
        $"{unmatched:0.####} {leaving.Crop.Unit} of {leaving.Crop.Name} left on {leaving.Row.Date:yyyy-MM-dd} beyond what was picked by then; kept with the crop, spread over its plantings of {leaving.Window}.",
        "Enter the missing harvest, or correct quantity, unit or date.") { Money = leaving.Row.Amount };

    internal static Problem HeldTooLong(LeavingPart part) => new(
        Severity.Warning, "W403", part.Leaving.Row.Source, "date",
        $"{part.Quantity:0.####} {part.Leaving.Crop.Unit} of {part.Leaving.Crop.Name} left on {part.Leaving.Row.Date:yyyy-MM-dd}, {part.DaysHeld} days after harvest ({part.Lot!.Row.Source}); it keeps {part.Leaving.Crop.Row.StorageDays:0.##} days.",
        "Correct the dates, enter the missing harvest, or correct the crop's storage_days.");

    internal static Problem NoStorageDays(Crop crop) => new(
        Severity.Warning, "W404", crop.Row.Source, "storage_days",
        $"{crop.Name} has no storage_days: what was never sold counts as stock on hand however old it is.",
        "Enter how many days the crop keeps.");

    internal static Problem NoListValue(Leaving leaving) => new(
        Severity.Warning, "W405", leaving.Row.Source, "crop",
        $"No price for {leaving.Crop.Name} on {leaving.Row.Date:yyyy-MM-dd} through {leaving.Channel.Name}: valued at 0, the crop's output is incomplete.",
        "Enter a price in the prices table, or in the row.");

    internal static Problem PricedAtList(Leaving leaving) => new(
        Severity.Warning, "W406", leaving.Row.Source, "unit_price",
        $"The sale of {leaving.Crop.Name} on {leaving.Row.Date:yyyy-MM-dd} through {leaving.Channel.Name} carries no price: valued at the list price, {leaving.Amount}.",
        "Enter unit_price or amount.");

    internal static Problem ShareIncomeWithoutShares(Channel channel, int year, decimal amount) => new(
        Severity.Warning, "W407", channel.Row.Source, "channel",
        $"{amount:0.00} of share income of {channel.Name} in {year} met no produce of any value that left through it: counted as other income.",
        "Enter what the shares received, or name the crop_year the payment is for.") { Money = amount };

    internal static Problem NoHiredWage(LaborRow row) => new(
        Severity.Warning, "W408", row.Source, "worker",
        $"No wage for {row.Worker} on {row.Date:yyyy-MM-dd} and no wages in the books of that year: the hours count, their cost is not available.",
        "Enter the wage in the workers table, or the wages paid in expenses.");

    internal static Problem LaterCropYear(SourceLine source, string column, Crop crop, int window, int landed) => new(
        Severity.Warning, "W409", source, column,
        $"{crop.Name} has no planting in crop year {window}: counted to {landed}, the next that has one.",
        "Name the crop_year, or enter the missing planting.");

    internal static Problem NoCropYear(SourceLine source, string column, Crop crop, int window, decimal? money) => new(
        Severity.Warning, "W410", source, column,
        $"{crop.Name} has no planting in crop year {window} or later: not assigned to any crop.",
        "Enter the missing planting, or correct the crop or date.") { Money = money };

    internal static Problem ClosingStockWithoutPrice(Crop crop, int year) => new(
        Severity.Warning, "W411", crop.Row.Source, "crop",
        $"Stock on hand of {crop.Name} of {year} has no price: valued at 0, the crop's output is incomplete.",
        "Enter a price in the prices table.");

    internal static Problem UnassignedLeaving(Leaving leaving) => new(
        Severity.Warning, "W412", leaving.Row.Source, "crop",
        $"{leaving.Crop.Name} left on {leaving.Row.Date:yyyy-MM-dd} but has no planting in crop year {leaving.Window}: its money is not assigned to any crop.",
        "Enter the missing planting and harvest.") { Money = leaving.Amount.Amount };
}
