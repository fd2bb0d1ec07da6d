namespace FarmEconomics.ProvingGround.Plans;

/// <summary>
/// A farm as a linear program sees it: known truth, or what records tell. Weeks 0 to 51; money in $. Every scenario is a season that may
/// come, all equally likely; with one scenario it is the expected season.
/// </summary>
internal sealed class PlanModel
{
    internal required List<Sowing> Sowings { get; init; }

    internal required List<CropModel> Crops { get; init; }

    /// <summary>Bed-feet by cover.</summary>
    internal required double[] BedFeet { get; init; }

    /// <summary>Own hours of a week left for crops, by week; never below 0.</summary>
    internal required double[] OwnHours { get; init; }

    /// <summary>Hours that can be hired, by week.</summary>
    internal required double[] HiredHours { get; init; }

    /// <summary>$ an own and a hired hour.</summary>
    internal required (double Own, double Hired) HourCost { get; init; }

    /// <summary>List value the boxes of a week must hold, by week, $.</summary>
    internal required double[] BoxTarget { get; init; }

    /// <summary>$ that a dollar of list value costs to buy in.</summary>
    internal required double BuyIn { get; init; }

    internal int Scenarios => Sowings.Count == 0 ? 1 : Sowings[0].Yield.Length;
}

/// <summary>A sowing whose length is chosen, a bed-foot of it (or, where only sizes are chosen, a crop's whole plan of today).</summary>
/// <param name="Crop">Index of its crop.</param>
/// <param name="Cover">0: field, 1: tunnel.</param>
/// <param name="Feet">Bed-feet in use by week, for one unit of it.</param>
/// <param name="Hours">Growing hours by week, for one unit of it.</param>
/// <param name="Yield">Units ripe by scenario and week, for one unit of it.</param>
internal sealed record Sowing(int Crop, int Cover, double[] Feet, double[] Hours, double[][] Yield)
{
    /// <summary>$ of seed and supplies for one unit of it.</summary>
    internal required double Cost { get; init; }

    /// <summary>The week it is sown; -1: a whole plan.</summary>
    internal required int Week { get; init; }
}

/// <summary>A crop as the program sees it.</summary>
/// <param name="Handling">Hours to pick and pack, and $ packaging, a unit.</param>
/// <param name="Keeps">Weeks it can be sold in, that of picking counted.</param>
/// <param name="Steps">Quantities and what a unit of each brings net of fees, by scenario and week.</param>
/// <param name="Box">Most units in the boxes of a week, and list value a unit, $.</param>
internal sealed record CropModel(
    (double Hours, double Packaging) Handling, int Keeps, List<SaleStep>[][] Steps, (double Most, double Value) Box);

/// <summary>A step of demand in a week.</summary>
/// <param name="Units">Units.</param>
/// <param name="Net">$ a unit, after fees.</param>
internal readonly record struct SaleStep(double Units, double Net);
