namespace FarmEconomics.DemoFarm;

/// <summary>The holes a real grower's records have, put in on purpose. Each is told in demo-data/README.md and none is an error.</summary>
internal static class PlannedGaps
{
    /// <summary>The crop nobody wrote a list price for.</summary>
    public const string CropWithoutPrice = "Kohlrabi";

    /// <summary>The crop of which a little more was sold than picked: a harvest note went missing.</summary>
    public const string CropOversold = "Peppers";

    /// <summary>The day of it: nothing of the crop is picked after it that year.</summary>
    public static readonly DateOnly DayOversold = new(2024, 9, 28);

    public const decimal Oversold = 6m;

    /// <summary>The greens lot the schools came for days late.</summary>
    public const string CropHeldTooLong = "Arugula";

    /// <summary>From this Friday the lot is kept back.</summary>
    public static readonly DateOnly DayKeptBack = new(2024, 10, 4);

    /// <summary>And this Tuesday it is fetched, with nothing younger on hand.</summary>
    public static readonly DateOnly DayFetchedLate = new(2024, 10, 8);

    /// <summary>
    /// Crops of which the grower sometimes writes down the crop and not the planting; their beds always have a day they were cleared.
    /// </summary>
    public static bool PickedByCrop(CropSpec crop) =>
        crop.Name is "Zucchini" or "Snap beans" or "Carrots" or "Head lettuce" or "Salad turnips";

    /// <summary>Small money spent in 2025 that no row tells of: the cash counted at its end is that much lower.</summary>
    public const decimal CashWithoutReceipt = 41.29m;

    /// <summary>Hours of bed work in 2025 that nobody logged; the control total of the grow stage stands that much higher.</summary>
    public const decimal UnloggedGrowHours = 18m;

    /// <summary>One bed overfull for a week, and one tray count nobody wrote down.</summary>
    public static void InPlantings(List<Planting> plantings)
    {
        plantings.First(p => p.Name == "Head lettuce 2025-07").Trays = null;
        var late = (
            from first in plantings
            where
                first.InBed.Year == 2025
                && first.Places.Count == 1
                && first.Places[0].Bed.Structure == null
                && first.InBed.Month is >= 5 and <= 7
            from second in plantings
            where second.Places.Count == 1 && second.Places[0].Bed == first.Places[0].Bed && second.InBed >= first.OutOfBed
                && second.InBed.DayNumber - first.OutOfBed.DayNumber <= 4 && second.Sown == null
                && first.Feet + second.Feet > 100m
            select (first, second)).First();
        late.second.InBed = late.first.OutOfBed.AddDays(-7);
        late.first.OutLeftBlank = false;
    }
}
