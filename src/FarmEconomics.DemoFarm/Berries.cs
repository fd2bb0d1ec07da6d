namespace FarmEconomics.DemoFarm;

/// <summary>
/// A row of raspberries, set out while the records run: two years of canes, posts and hours before the first picking, which the records
/// hold whole. It stands beside the crop plan, so that nothing drawn for the other crops changes with it.
/// </summary>
internal static class Berries
{
    private const string Row = "Raspberry row";
    private const decimal Length = 100m;

    /// <summary>Seasons a row bears; common practice, no source.</summary>
    public const decimal BearingYears = 8m;

    public static readonly Bed Bed = new("Berry row", 100, Beds.Width, "Hedge", null);

    /// <summary>1.3 pints a bed-foot in the first bearing summer, 6.00 a pint on the board: ours, below what full rows give.</summary>
    public static readonly CropSpec Crop = new(
        "Raspberries", "pint", "berries", "rose", 2, "cold room", 1m, 12m, 1.3m, 6m, 0.7m, 0m, 0m, 0.18m, 1.2m, 3m, 0.3m, 0m, 1m, true);

    public static readonly Planting Planting = MakePlanting();

    /// <summary>Canes, posts and wire before it bears; mulch while it does.</summary>
    public static readonly IReadOnlyList<BookLine> Books =
    [
        new(new(2023, 4, 18), 276.50m, "plants", "Wren Hollow Nursery", Planting: Row, Note: "canes"),
        new(new(2023, 5, 9), 168.20m, "row cover and twine", "Ridgeway Growers Supply", Planting: Row, Note: "posts and wire"),
        new(new(2023, 5, 9), 54.00m, "compost and minerals", "Hollin Peat and Compost", Planting: Row, Note: "compost and bark"),
        new(new(2024, 4, 16), 62.40m, "compost and minerals", "Hollin Peat and Compost", Planting: Row, Note: "bark"),
        new(new(2025, 4, 15), 64.80m, "compost and minerals", "Hollin Peat and Compost", Planting: Row, Note: "bark"),
    ];

    private static readonly (DateOnly Day, string Task, decimal Hours, string Who)[] Work =
    [
        (new(2023, 4, 30), "Prepare and sow", 3m, FarmFacts.OwnerTwo),
        (new(2023, 5, 7), "Transplant", 3.5m, FarmFacts.OwnerOne),
        (new(2023, 5, 14), "Trellis and prune", 3m, FarmFacts.OwnerTwo),
        (new(2023, 6, 11), "Weed", 2m, FarmFacts.OwnerOne),
        (new(2023, 7, 16), "Weed", 2m, FarmFacts.OwnerOne),
        (new(2023, 9, 10), "Weed", 1.5m, FarmFacts.OwnerOne),
        (new(2024, 4, 21), "Trellis and prune", 3m, FarmFacts.OwnerTwo),
        (new(2024, 6, 9), "Weed", 2m, FarmFacts.OwnerOne),
        (new(2024, 7, 14), "Weed", 1.5m, FarmFacts.OwnerOne),
        (new(2024, 9, 8), "Trellis and prune", 2m, FarmFacts.OwnerTwo),
        (new(2025, 4, 20), "Trellis and prune", 3m, FarmFacts.OwnerTwo),
        (new(2025, 6, 8), "Weed", 2m, FarmFacts.OwnerOne),
        (new(2025, 9, 14), "Trellis and prune", 2.5m, FarmFacts.OwnerTwo),
    ];

    /// <summary>The first picking, Saturday mornings of July and early August 2025: pints, and those that fell apart.</summary>
    private static readonly (DateOnly Day, decimal Pints, decimal Culled)[] Picked =
    [
        (new(2025, 7, 5), 14m, 0m),
        (new(2025, 7, 12), 26m, 1m),
        (new(2025, 7, 19), 34m, 2m),
        (new(2025, 7, 26), 30m, 2m),
        (new(2025, 8, 2), 18m, 1m),
        (new(2025, 8, 9), 8m, 1m),
    ];

    public static IEnumerable<HarvestBook.Pick> Picks =>
        Picked.Select(pick => new HarvestBook.Pick(pick.Day, Planting, pick.Pints, pick.Culled, NamesPlanting: true));

    /// <summary>Sold at the market the same day; two pints each week stay on the table at home.</summary>
    public static IEnumerable<SalesBook.Sale> Sales => Picked.Where(pick => FarmFacts.MarketHeld(pick.Day)).SelectMany(pick => new[]
    {
        new SalesBook.Sale(pick.Day, Crop, FarmFacts.Market, pick.Pints - 2m, Crop.Unit, 1m, Crop.Price, null),
        new SalesBook.Sale(pick.Day, Crop, FarmFacts.Household, 2m, Crop.Unit, 1m, null, null),
    });

    /// <summary>The owners' hours, Sundays for the row itself; picking at three minutes a pint.</summary>
    public static IEnumerable<LaborBook.Entry> Log =>
        Work.Select(work => new LaborBook.Entry(
                new Chore(work.Day, work.Task, work.Hours, Hands.Owners, Planting: Row),
                work.Who,
                work.Hours
            ))
            .Concat(
                Picked
                    .Select(pick => (pick.Day, Hours: Math.Ceiling(pick.Pints * Crop.HarvestMinutes / 15m) / 4m))
                    .Select(pick => new LaborBook.Entry(
                        new Chore(pick.Day, "Harvest", pick.Hours, Hands.Owners, Planting: Row),
                        FarmFacts.OwnerTwo,
                        pick.Hours
                    ))
            );

    private static Planting MakePlanting()
    {
        var planting = new Planting
        {
            Name = Row,
            Crop = Crop,
            CropYear = 2023,
            InBed = new DateOnly(2023, 5, 7),
            Sown = null,
            FirstPick = new DateOnly(2025, 7, 5),
            LastPick = new DateOnly(2025, 8, 9),
            Feet = Length,
            Method = "canes",
            OutOfBed = FarmFacts.AsOf.AddDays(1),
            OutLeftBlank = true,
        };
        planting.Places.Add((Bed, Length));
        return planting;
    }
}
