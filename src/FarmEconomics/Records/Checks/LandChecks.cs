namespace FarmEconomics.Records.Checks;

/// <summary>Checks of crops, units, beds and plantings.</summary>
internal static class LandChecks
{
    public static IEnumerable<RecordCheck> OfUnits =>
    [
        NamesOnce.Of<UnitRow>("unit", row => $"{row.Unit.Trim()} of {row.Crop.Trim()}"),
        new RowChecks<UnitRow>(("unit is another than the crop's own", UnitIsAnother)),
    ];

    public static IEnumerable<RecordCheck> OfBeds =>
        [
            new RowChecks<BedRow>(
                ("dates make sense", (context, row) =>
                    context.InOrder(ProblemCodes.EndBeforeStart, row, "to", row.To, "from", row.From, sameDayFits: true)
                )
            ),
        ];

    public static IEnumerable<RecordCheck> OfPlantings =>
    [
        new TableCheck("plantings stand in beds that are there", BedsAreThere),
        new RowChecks<PlantingRow>(
            ("dates make sense", PlantingDates),
            ("rows of a planting agree", RowsAgree)),
        BedSpace.Check,
    ];

    private static void UnitIsAnother(CheckContext context, UnitRow row)
    {
        if (
            context.Crop(row.Crop) is { } crop
            && crop.Row.Unit.Trim().Equals(row.Unit.Trim(), StringComparison.OrdinalIgnoreCase)
            && row.BaseUnits != 1m
        )
        {
            context.Report(
                ProblemCodes.NameTwice,
                row,
                "unit",
                context.Notation.Text($"{row.Unit} is {row.Crop}'s own unit and can't hold {row.BaseUnits} of itself."),
                row.Unit
            );
        }
    }

    private static void PlantingDates(CheckContext context, PlantingRow row)
    {
        CropFacts? crop = context.Crop(row.Crop);

        // A perennial may stand since long before the first season on record.
        bool fine =
            crop?.Row.Perennial == true
            || (
                context.InYears(row, "in_bed", row.InBed)
                & context.InYears(row, "sown", row.Sown)
                & context.InYears(row, "out_of_bed", row.OutOfBed)
            );
        context.InYears(row, "crop_year", row.CropYear);
        fine = fine && context.InOrder(ProblemCodes.OutBeforeIn, row, "out_of_bed", row.OutOfBed, "in_bed", row.InBed, sameDayFits: false);
        if (fine && row.Sown > row.InBed)
        {
            context.Report(
                ProblemCodes.SownAfterInBed,
                row,
                "sown",
                $"sown {row.Sown:yyyy-MM-dd} is after in_bed {row.InBed:yyyy-MM-dd}.",
                $"{row.Sown:yyyy-MM-dd}"
            );
            fine = false;
        }

        if (!fine)
        {
            if (context.Planting(row.Planting) is { } planting)
            {
                planting.DatesInDoubt = true;
            }

            if (crop is not null)
            {
                crop.DatesInDoubt = true;
            }
        }
    }

    private static void RowsAgree(CheckContext context, PlantingRow row)
    {
        if (context.Planting(row.Planting) is not { } planting || planting.First == row)
        {
            return;
        }

        if (!planting.First.Crop.Trim().Equals(row.Crop.Trim(), StringComparison.OrdinalIgnoreCase))
        {
            context.Report(
                ProblemCodes.PlantingConflict,
                row,
                "crop",
                $"The planting {row.Planting} is {planting.First.Crop} in {planting.First.Source.SeenFrom(row.Source)}, {row.Crop} here.",
                row.Crop
            );
        }
        else if (row.CropYear is { } year && planting.CropYear != year)
        {
            context.Report(
                ProblemCodes.PlantingConflict,
                row,
                "crop_year",
                $"The planting {row.Planting} is of crop year {planting.CropYear} in another row, {year} here.",
                $"{year}"
            );
        }
    }

    private static void BedsAreThere(CheckContext context)
    {
        var beds = new Dictionary<string, BedRow>(StringComparer.OrdinalIgnoreCase);
        foreach (BedRow bed in context.Tables.Beds)
        {
            beds.TryAdd(bed.Bed.Trim(), bed);
        }

        foreach (PlantingRow row in context.Tables.Plantings)
        {
            if (beds.TryGetValue(row.Bed.Trim(), out BedRow bed) && !(bed.To < bed.From) && OutsideOf(bed, row) is { } outside)
            {
                context.Report(
                    ProblemCodes.BedNotThere,
                    row,
                    outside.Column,
                    $"{row.Planting} is in bed {bed.Bed} {outside.When}.",
                    $"{outside.Day:yyyy-MM-dd}"
                );
            }
        }
    }

    // The bed's last day is included; the day out of bed is the first free one.
    private static (string Column, DateOnly Day, string When)? OutsideOf(BedRow bed, PlantingRow row) =>
        row.InBed < bed.From ? ("in_bed", row.InBed, $"on {row.InBed:yyyy-MM-dd}, before the bed's from {bed.From:yyyy-MM-dd}")
        : row.InBed > bed.To ? ("in_bed", row.InBed, $"on {row.InBed:yyyy-MM-dd}, after the bed's to {bed.To:yyyy-MM-dd}")
        : row.OutOfBed is { } freed && freed.AddDays(-1) > bed.To
            ? ("out_of_bed", freed, $"until {freed:yyyy-MM-dd}, after the bed's to {bed.To:yyyy-MM-dd}")
        : null;
}
