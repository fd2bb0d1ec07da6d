namespace FarmEconomics.Records.Checks;

/// <summary>Checks of harvests, sales, channels, prices and income.</summary>
internal static class ProduceChecks
{
    private const decimal CentsApart = 0.01m;

    // Plantings come before harvests: a harvest isn't measured by dates that are in doubt.
    public static IEnumerable<RecordCheck> OfHarvests =>
        [
            new RowChecks<HarvestRow>(
                (
                    "date is in a year of the records",
                    (context, row) => context.Years.Holds(row.Date),
                    (context, row) => context.InYears(row, "date", row.Date)
                ),
                (
                    "crop and planting agree",
                    (context, row) => CropAgrees(context, row.CropName, row.PlantingName),
                    (context, row) => CropDisagrees(context, row, row.Crop, row.Planting)
                ),
                ("not before the bed was planted", IsPlanted, NotBeforePlanting),
                (
                    "unit has a conversion",
                    (context, row) => context.HasUnit(CropOf(context, row), row.UnitName),
                    (context, row) => context.Unit(row, CropOf(context, row), row.Unit)
                )
            ),
        ];

    public static IEnumerable<RecordCheck> OfSales =>
        [
            new RowChecks<SaleRow>(
                (
                    "date is in a year of the records",
                    (context, row) => context.Years.Holds(row.Date),
                    (context, row) => context.InYears(row, "date", row.Date)
                ),
                (
                    "crop and planting agree",
                    (context, row) => CropAgrees(context, row.CropName, row.PlantingName),
                    (context, row) => CropDisagrees(context, row, row.Crop, row.Planting)
                ),
                (
                    "unit has a conversion",
                    (context, row) => context.HasUnit(context.Crop(row.CropName), row.UnitName),
                    (context, row) => context.Unit(row, context.Crop(row.Crop), row.Unit)
                ),
                ("quantity makes sense", (_, row) => row.IsOfGoods, QuantityOfSale),
                ("amount and price agree", (_, row) => !row.IsPricedTwice, AmountAgrees)
            ),
        ];

    public static IEnumerable<RecordCheck> OfPrices =>
    [
        NamesOnce.Of<PriceRow>("crop", PriceKey),
        new RowChecks<PriceRow>(("unit has a conversion", (context, row) => context.Unit(row, context.Crop(row.Crop), row.Unit))),
    ];

    public static IEnumerable<RecordCheck> OfIncome =>
    [
        new RowChecks<IncomeRow>(
            ("date is in a year of the records", (context, row) =>
            {
                context.InYears(row, "date", row.Date);
                context.InYears(row, "crop_year", row.CropYear);
            }),
            ("channel takes income", ChannelTakesIncome)),
    ];

    private static string PriceKey(PriceRow row) =>
        (row.Reference == true ? "the reference price of " : "the price of ") + row.Crop.Trim()
        + (row.Unit is { } unit ? $" per {unit.Trim()}" : "")
        + (row.Channel is { } channel ? $" through {channel.Trim()}" : "")
        + (row.From is { } from ? $" from {from:yyyy-MM-dd}" : "");

    private static CropFacts? CropOf(CheckContext context, HarvestRow row) =>
        row.CropName != 0 ? context.Crop(row.CropName)
        : context.Planting(row.PlantingName) is { } planting ? context.Crop(planting.First.CropName)
        : null;

    private static bool CropAgrees(CheckContext context, int crop, int plantingName) =>
        crop == 0 || context.Planting(plantingName) is not { } planting || context.Crop(planting.First.CropName) == context.Crop(crop);

    private static void CropDisagrees(CheckContext context, IRecordRow row, string? crop, string? plantingName)
    {
        if (crop is not null && context.CropNames.Contains(crop) && context.Planting(plantingName) is { } planting
            && !planting.First.Crop.Trim().Equals(crop.Trim(), StringComparison.OrdinalIgnoreCase))
        {
            context.Report(
                ProblemCodes.CropDisagrees,
                row,
                "planting",
                $"The planting {plantingName} is {planting.First.Crop}, not {crop}.",
                plantingName
            );
        }
    }

    private static bool IsPlanted(CheckContext context, HarvestRow row) =>
        (row.PlantingName == 0 ? context.Crop(row.CropName)?.FirstInBed : context.Planting(row.PlantingName)?.FirstInBed) <= row.Date;

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
                context.Report(
                    ProblemCodes.HarvestTooEarly,
                    row,
                    "date",
                    $"{row.Planting} was picked on {row.Date:yyyy-MM-dd} but is in the bed from {planting.FirstInBed:yyyy-MM-dd} on.",
                    $"{row.Date:yyyy-MM-dd}"
                );
            }
        }
        else if (
            context.PlantingNames.Checkable
            && !context.HasRowsInError("plantings")
            && context.Crop(row.Crop) is { DatesInDoubt: false } crop
            && !(crop.FirstInBed <= row.Date)
        )
        {
            context.Report(ProblemCodes.HarvestTooEarly, row, "date",
                crop.FirstInBed is { } first
                    ? $"{row.Crop} was picked on {row.Date:yyyy-MM-dd}, but no planting of it is in a bed before {first:yyyy-MM-dd}."
                    : $"{row.Crop} was picked on {row.Date:yyyy-MM-dd}, but no planting of it is on record.",
                $"{row.Date:yyyy-MM-dd}");
        }
    }

    // Goods that come back are no sale of less than nothing: the money is given back as a credit, and what became of the goods is told
    // where they went.
    private static void QuantityOfSale(CheckContext context, SaleRow row)
    {
        if (row.Amount < 0m && row.Quantity != 0m)
        {
            context.Report(
                ProblemCodes.NotPositive,
                row,
                "amount",
                context.Notation.Text($"amount {row.Amount} is below 0: money given back is a row with quantity 0."),
                context.Notation.Text($"{row.Amount}")
            );
        }
        else if (row.Quantity <= 0m && !(row.Amount < 0m))
        {
            context.Report(
                ProblemCodes.NotPositive,
                row,
                "quantity",
                context.Notation.Text($"quantity must be above 0, not {row.Quantity}; it is 0 where amount is below 0 only."),
                context.Notation.Text($"{row.Quantity}")
            );
        }
    }

    private static void AmountAgrees(CheckContext context, SaleRow row)
    {
        if (row is { Amount: { } amount and >= 0m, UnitPrice: { } price } && Math.Abs((price * row.Quantity) - amount) > CentsApart)
        {
            context.Report(
                ProblemCodes.AmountDisagrees,
                row,
                "amount",
                context.Notation.Text(
                    $"{row.Quantity} x {price} is {price * row.Quantity:0.00##}, amount says {amount:0.00}; amount counts."
                ),
                context.Notation.Text($"{amount}")
            );
        }
    }

    private static void ChannelTakesIncome(CheckContext context, IncomeRow row)
    {
        if (context.Channel(row.Channel) is { Kind: not (ChannelKind.Share or ChannelKind.Other) } channel)
        {
            context.Report(
                ProblemCodes.IncomeChannel,
                row,
                "channel",
                $"{channel.Channel} is a channel of kind {Schema.Words.Of(channel.Kind)}.",
                row.Channel
            );
        }
    }
}
