namespace FarmEconomics.Records.Checks;

/// <summary>Checks of harvests, sales, channels, prices and income.</summary>
internal static class ProduceChecks
{
    private const decimal CentsApart = 0.01m;

    public static IEnumerable<RecordCheck> All { get; } =
    [
        new RowChecks<HarvestRow>("harvests", tables => tables.Harvests,
            ("date is in a year of the records", (context, row) => context.InYears(row, "date", row.Date)),
            ("names are known", (context, row) =>
            {
                context.CropNames.Check(context, row, "crop", row.Crop);
                context.PlantingNames.Check(context, row, "planting", row.Planting);
            }),
            ("crop and planting agree", (context, row) => CropAgrees(context, row, row.Crop, row.Planting)),
            ("not before the bed was planted", NotBeforePlanting),
            ("unit has a conversion", (context, row) => context.Unit(row, CropOf(context, row), row.Unit)),
            ("numbers make sense", (context, row) =>
            {
                context.AtLeastZero(row, "quantity", row.Quantity);
                context.AtLeastZero(row, "culled", row.Culled);
            })),
        new RowChecks<SaleRow>("sales", tables => tables.Sales,
            ("date is in a year of the records", (context, row) => context.InYears(row, "date", row.Date)),
            ("names are known", (context, row) =>
            {
                context.CropNames.Check(context, row, "crop", row.Crop);
                context.ChannelNames.Check(context, row, "channel", row.Channel);
                context.PlantingNames.Check(context, row, "planting", row.Planting);
            }),
            ("crop and planting agree", (context, row) => CropAgrees(context, row, row.Crop, row.Planting)),
            ("unit has a conversion", (context, row) => context.Unit(row, context.Crop(row.Crop), row.Unit)),
            ("numbers make sense", (context, row) =>
            {
                context.AboveZero(row, "quantity", row.Quantity);
                context.AtLeastZero(row, "unit_price", row.UnitPrice);
                context.AtLeastZero(row, "amount", row.Amount);
            }),
            ("amount and price agree", AmountAgrees)),
        new RowChecks<ChannelRow>("channels", tables => tables.Channels,
            ("fee is a percentage", (context, row) => context.Percent(row, "fee_percent", row.FeePercent)),
            ("values_from is known", (context, row) => context.ChannelNames.Check(context, row, "values_from", row.ValuesFrom))),
        new RowChecks<PriceRow>("prices", tables => tables.Prices,
            ("names are known", (context, row) =>
            {
                context.CropNames.Check(context, row, "crop", row.Crop);
                context.ChannelNames.Check(context, row, "channel", row.Channel);
            }),
            ("unit has a conversion", (context, row) => context.Unit(row, context.Crop(row.Crop), row.Unit)),
            ("numbers make sense", (context, row) => context.AtLeastZero(row, "price", row.Price)),
            ("date is in the calendar", (context, row) => context.InCalendar(row, "from", row.From))),
        new RowChecks<IncomeRow>("income", tables => tables.Income,
            ("date is in a year of the records", (context, row) =>
            {
                context.InYears(row, "date", row.Date);
                context.InYears(row, "crop_year", row.CropYear);
            }),
            ("channel is known", (context, row) => context.ChannelNames.Check(context, row, "channel", row.Channel)),
            ("channel takes income", ChannelTakesIncome)),
    ];

    private static CropFacts? CropOf(CheckContext context, HarvestRow row) => context.Crop(row.Crop ?? context.Planting(row.Planting)?.First.Crop);

    private static void CropAgrees(CheckContext context, IRecordRow row, string? crop, string? plantingName)
    {
        if (crop is not null && context.CropNames.Contains(crop) && context.Planting(plantingName) is { } planting
            && !planting.First.Crop.Trim().Equals(crop.Trim(), StringComparison.OrdinalIgnoreCase))
        {
            context.Report(ProblemCodes.CropDisagrees, row, "planting", $"The planting {plantingName} is {planting.First.Crop}, not {crop}.", plantingName);
        }
    }

    private static void NotBeforePlanting(CheckContext context, HarvestRow row)
    {
        if (!context.Years.Holds(row.Date.Year))
        {
            return;
        }

        if (row.Planting is not null)
        {
            if (context.Planting(row.Planting) is { DatesInDoubt: false } planting && row.Date < planting.FirstInBed)
            {
                context.Report(ProblemCodes.HarvestTooEarly, row, "date", $"{row.Planting} was picked on {row.Date:yyyy-MM-dd} but is in the bed from {planting.FirstInBed:yyyy-MM-dd} on.", $"{row.Date:yyyy-MM-dd}");
            }
        }
        else if (context.PlantingNames.Checkable && !context.HasRowsInError("plantings") && context.Crop(row.Crop) is { DatesInDoubt: false } crop && !(crop.FirstInBed <= row.Date))
        {
            context.Report(ProblemCodes.HarvestTooEarly, row, "date",
                crop.FirstInBed is { } first
                    ? $"{row.Crop} was picked on {row.Date:yyyy-MM-dd}, but no planting of it is in a bed before {first:yyyy-MM-dd}."
                    : $"{row.Crop} was picked on {row.Date:yyyy-MM-dd}, but no planting of it is on record.",
                $"{row.Date:yyyy-MM-dd}");
        }
    }

    private static void AmountAgrees(CheckContext context, SaleRow row)
    {
        if (row is { Amount: { } amount, UnitPrice: { } price } && Math.Abs((price * row.Quantity) - amount) > CentsApart)
        {
            context.Report(ProblemCodes.AmountDisagrees, row, "amount", context.Notation.Text($"{row.Quantity} x {price} is {price * row.Quantity:0.00##}, amount says {amount:0.00}; amount counts."), context.Notation.Text($"{amount}"));
        }
    }

    private static void ChannelTakesIncome(CheckContext context, IncomeRow row)
    {
        if (context.Channel(row.Channel) is { Kind: not (ChannelKind.Share or ChannelKind.Other) } channel)
        {
            context.Report(ProblemCodes.IncomeChannel, row, "channel", $"{channel.Channel} is a channel of kind {Schema.Words.Of(channel.Kind)}.", row.Channel);
        }
    }
}
