using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Units;

namespace FarmEconomics.Tracing;

/// <summary>The problems tracing finds, each with its code and words; the catalog in docs/errors.md lists them all.</summary>
internal static class TracingProblems
{
    internal static Problem HarvestWithoutPlanting(HarvestRow row, Crop crop) => ProblemCatalog.Make(
        ProblemCodes.HarvestTooEarly, row.Source, "crop",
        $"{crop.Name} was picked on {row.Date:yyyy-MM-dd}, but no planting of it was in a bed on or before that day.") with
    { Offending = row.Crop };

    internal static Problem HarvestBeforePlanting(HarvestRow row) => ProblemCatalog.Make(
        ProblemCodes.HarvestTooEarly, row.Source, "planting",
        $"{row.Planting!.Trim()} was picked on {row.Date:yyyy-MM-dd}, but it goes into its bed after the closing date.") with
    { Offending = row.Planting };

    internal static Problem HarvestAfterBed(HarvestRow row, Crop crop, Planting planting) => ProblemCatalog.Make(
        ProblemCodes.HarvestAfterBed, row.Source, "crop",
        $"{crop.Name} was picked on {row.Date:yyyy-MM-dd}, when none of it was in the ground; counted to {planting.Name}, "
            + "which left its bed last before.") with
    { Offending = row.Crop };

    internal static Problem HarvestSoonAfterBed(HarvestRow row, Crop crop, IReadOnlyList<BedStay> standing, int least, BedStay? left)
    {
        BedStay oldest = standing.MinBy(bed => bed.In)!;
        string counted = left is null
            ? $"counted to {string.Join(", ", standing.Select(bed => bed.Planting.Name).Distinct())} all the same, "
                + "because no other planting left its bed earlier that crop year"
            : $"counted to {left.Planting.Name}, which left its bed last before, on {left.Out:yyyy-MM-dd}";
        return ProblemCatalog.Make(
            ProblemCodes.HarvestSoonAfterBed, row.Source, "crop",
            $"{crop.Name} was picked on {row.Date:yyyy-MM-dd}, but {oldest.Planting.Name} came into its bed only on {oldest.In:yyyy-MM-dd} "
                + $"and {crop.Name} takes at least {least} days; {counted}.") with
        { Offending = row.Crop };
    }

    internal static Problem HarvestBeforeBed(HarvestRow row, Crop crop, BedStay next) => ProblemCatalog.Make(
        ProblemCodes.HarvestBeforeBed, row.Source, "crop",
        $"{crop.Name} was picked on {row.Date:yyyy-MM-dd}, long after the last planting of it left its bed; "
            + $"counted to {next.Planting.Name}, the next of that crop year, which came into its bed on {next.In:yyyy-MM-dd}.") with
    { Offending = row.Crop };

    internal static Problem HarvestLongAfterBed(HarvestRow row, Crop crop, BedStay last, int longest) => ProblemCatalog.Make(
        ProblemCodes.HarvestLongAfterBed, row.Source, "crop",
        $"{crop.Name} was picked on {row.Date:yyyy-MM-dd}, but the last planting of it, {last.Planting.Name}, "
            + $"left its bed on {last.Out:yyyy-MM-dd}, more than {longest} days before, "
            + "and none came into a bed later that crop year.") with
    { Offending = row.Crop };

    internal static Problem NoEnd(Planting planting, DateOnly end, int longest) => ProblemCatalog.Make(
        ProblemCodes.PlantingWithoutEnd, planting.BedList[0].Row.Source, "out_of_bed",
        $"{planting.Name} has no out_of_bed and nothing was picked of it: taken as out of its bed on {end:yyyy-MM-dd}, "
            + $"{longest} days after it came in.");

    internal static Problem LooksLikeNextYears(Planting planting, int year, int picked) => ProblemCatalog.Make(
        ProblemCodes.LooksLikeNextYears, planting.BedList[0].Row.Source, "crop_year",
        $"{planting.Name} came into its bed on {planting.BedList.Min(bed => bed.In):yyyy-MM-dd} and nothing is picked of it yet: "
            + $"it counts in {year}, but looks like {picked}'s.");

    internal static Problem NotedBeforeHarvest(DispositionPart part, Notation notation) => ProblemCatalog.Make(
        ProblemCodes.NotedBeforeHarvest, part.Disposition.Row.Source, "date",
        notation.Text($"{part.Quantity:0.####} {part.Disposition.Crop.Unit} of {part.Disposition.Crop.Name} left on "
            + $"{part.Disposition.Row.Date:yyyy-MM-dd}, before the harvest that covers it ({part.Lot!.Value.Row.Source}, "
            + $"{part.Lot.Value.Date:yyyy-MM-dd})."));

    internal static Problem SoldMoreThanPicked(Disposition disposition, decimal unmatched, bool grown, Notation notation) =>
        ProblemCatalog.Make(
            ProblemCodes.SoldMoreThanPicked, disposition.Row.Source, "quantity",
            notation.Text($"On {disposition.Row.Date:yyyy-MM-dd} {unmatched:0.####} {disposition.Crop.Unit} more of "
                + $"{disposition.Crop.Name} was sold or used than had been picked and still kept. ")
            + (grown
                ? $"It stays with the crop, spread over its plantings of {disposition.Window}."
                : $"There is no planting of {disposition.Window} it could be counted to.")) with
        { Money = disposition.Row.Amount };

    internal static Problem HeldTooLong(DispositionPart part, Notation notation) => ProblemCatalog.Make(
        ProblemCodes.HeldTooLong, part.Disposition.Row.Source, "date",
        notation.Text($"{part.Quantity:0.####} {part.Disposition.Crop.Unit} of {part.Disposition.Crop.Name} left on "
            + $"{part.Disposition.Row.Date:yyyy-MM-dd}, {part.DaysHeld} days after harvest ({part.Lot!.Value.Row.Source}); "
            + $"it keeps until {part.Lot.Value.KeptUntil:yyyy-MM-dd}."));

    internal static Problem NoStorageDays(Crop crop) => ProblemCatalog.Make(
        ProblemCodes.NoStorageDays, crop.Row.Source, "storage_days",
        $"{crop.Name} has no storage_days: taken to keep to the end of the crop year it was picked in.");

    internal static Problem NoListValue(Disposition disposition) => ProblemCatalog.Make(
        ProblemCodes.NoListValue, disposition.Row.Source, "crop",
        $"No price for {disposition.Crop.Name} on {disposition.Row.Date:yyyy-MM-dd} through {disposition.Channel.Name}: "
            + "counted as 0 until there is one, so what it brought in is incomplete.");

    internal static Problem PricedAtList(Disposition disposition, Notation notation, Money value) => ProblemCatalog.Make(
        ProblemCodes.PricedAtList, disposition.Row.Source, "unit_price",
        notation.Text($"The sale of {disposition.Crop.Name} on {disposition.Row.Date:yyyy-MM-dd} through {disposition.Channel.Name} "
            + $"carries no price: counted at {value}, its list value."));

    internal static Problem ShareIncomeWithoutShares(Channel channel, int year, decimal amount, Notation notation) => ProblemCatalog.Make(
        ProblemCodes.ShareIncomeWithoutShares, channel.Row.Source, "channel",
        notation.Text($"Members paid {notation.Prefix}{amount:#,0.00} to {channel.Name} for {year}, but no {year} box is recorded yet. "
            + $"Until then it counts as other income.")) with
    { Money = amount };

    internal static Problem NoHiredWage(LaborRow row) => ProblemCatalog.Make(
        ProblemCodes.NoHiredWage, row.Source, "worker",
        $"No wage for {row.Worker} on {row.Date:yyyy-MM-dd} and no wages in the books of that year: the hours count, "
            + "their cost is not available.");

    internal static Problem LaterCropYear(SourceLine source, string column, Crop crop, int window, int landed) => ProblemCatalog.Make(
        ProblemCodes.LaterCropYear, source, column,
        $"{crop.Name} has no planting in crop year {window}: counted to {landed}, the next that has one.");

    internal static Problem NoCropYear(SourceLine source, string column, Crop crop, int window, decimal? money) => ProblemCatalog.Make(
        ProblemCodes.NoCropYear, source, column,
        $"{crop.Name} has no planting in crop year {window} or later: not assigned to any crop.") with
    { Money = money };

    internal static Problem ClosingStockWithoutPrice(Crop crop, int year) => ProblemCatalog.Make(
        ProblemCodes.StockWithoutPrice, crop.Row.Source, "crop",
        $"Stock on hand of {crop.Name} of {year} has no price: valued at 0, the crop's output is incomplete.");

    internal static Problem UnassignedDisposition(Disposition disposition) => ProblemCatalog.Make(
        ProblemCodes.UnassignedLeaving, disposition.Row.Source, "crop",
        $"{disposition.Crop.Name} has no planting in crop year {disposition.Window}, "
            + $"but was sold or used on {disposition.Row.Date:yyyy-MM-dd}: its money is not assigned to any crop.") with
    { Money = disposition.Amount.Amount };

    internal static Problem PlantingAfterClose(SourceLine source, string planting, decimal? money) => ProblemCatalog.Make(
        ProblemCodes.PlantingAfterClose, source, "planting",
        $"{planting.Trim()} goes into its bed after the closing date: not assigned to any crop in this review.") with
    { Offending = planting, Money = money };
}
