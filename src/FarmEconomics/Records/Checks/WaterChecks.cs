namespace FarmEconomics.Records.Checks;

/// <summary>Checks of weather, watering, blocks and power made.</summary>
internal static class WaterChecks
{
    public static IEnumerable<RecordCheck> OfWeather =>
    [
        NamesOnce.Of<WeatherRow>("date", row => $"{row.Date:yyyy-MM-dd}"),
        new RowChecks<WeatherRow>(
            ("date is in a year of the records", (context, row) => context.InYears(row, "date", row.Date)),
            ("temperatures are in order", Temperatures)),
        new TableCheck("figures are in the farm's units", WeatherUnits.Check),
    ];

    public static IEnumerable<RecordCheck> OfWatering =>
    [
        new RowChecks<WateringRow>(
            ("date is in a year of the records", (context, row) => context.InYears(row, "date", row.Date)),
            ("names what was watered", SomethingWatered)),
    ];

    public static IEnumerable<RecordCheck> OfBlocks => [new TableCheck("blocks hold beds", BedsLieThere)];

    public static IEnumerable<RecordCheck> OfPowerMade =>
    [
        NamesOnce.Of<PowerMadeRow>("date", row => $"{row.Date:yyyy-MM-dd} of {row.Pool.Trim()}"),
        new RowChecks<PowerMadeRow>(("date is in a year of the records", (context, row) => context.InYears(row, "date", row.Date))),
    ];

    private static void Temperatures(CheckContext context, WeatherRow row)
    {
        if (row.TminF > row.TmaxF)
        {
            string lowest = context.Notation.Text($"{row.TminF}");
            context.Report(ProblemCodes.TemperatureOrder, row, WeatherRow.TminFColumn.Schema.Name,
                context.Notation.Text($"The lowest temperature {row.TminF} is above the highest, {row.TmaxF}."), lowest);
        }
    }

    private static void SomethingWatered(CheckContext context, WateringRow row)
    {
        if (string.IsNullOrWhiteSpace(row.Block) && string.IsNullOrWhiteSpace(row.Bed))
        {
            context.Report(ProblemCodes.NoneOf, row, "block", "The row names neither a block nor a bed.");
        }
    }

    private static void BedsLieThere(CheckContext context)
    {
        if (context.HasRowsInError("beds") || !context.BedNames.Checkable)
        {
            return;
        }

        HashSet<string> blocks = new(StringComparer.OrdinalIgnoreCase);
        foreach (BedRow bed in context.Tables.Beds)
        {
            if (!string.IsNullOrWhiteSpace(bed.Block))
            {
                blocks.Add(bed.Block.Trim());
            }
        }

        foreach (BlockRow row in context.Tables.Blocks)
        {
            if (!blocks.Contains(row.Block.Trim()))
            {
                context.Report(ProblemCodes.UnknownBlock, row, "block", $"No bed in beds.csv lies in a block \"{row.Block}\".", row.Block,
                    context.Search.Find(row.Block, blocks));
            }
        }
    }
}
