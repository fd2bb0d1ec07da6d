namespace FarmEconomics.Planning;

/// <summary>A planting of a plan, in one bed: a row of the plan table.</summary>
/// <param name="CropYear">The crop year it is planned for.</param>
/// <param name="Planting">Its name.</param>
/// <param name="Crop">The crop.</param>
/// <param name="Bed">The bed.</param>
/// <param name="BedFeet">Feet of bed length.</param>
/// <param name="In">The day it comes in.</param>
/// <param name="Out">The day the bed is free again.</param>
public sealed record DraftPlanting(int CropYear, string Planting, string Crop, string Bed, decimal BedFeet, DateOnly In, DateOnly Out)
{
    /// <summary>The day it is sown in the nursery; null: sown in place.</summary>
    public DateOnly? Sown { get; init; }

    /// <summary>Trays in the nursery.</summary>
    public decimal Trays { get; init; }

    /// <summary>Units it is expected to give.</summary>
    public required decimal Yield { get; init; }

    /// <summary>Hours of raising, growing, picking and packing; null: not known.</summary>
    public required decimal? Hours { get; init; }

    /// <summary>Seed, supplies and packaging, money; null: not known.</summary>
    public required decimal? Cost { get; init; }
}

/// <summary>What a crop is planned to sell through a channel in a week: a row of the table plan_sales.</summary>
/// <param name="CropYear">The crop year.</param>
/// <param name="Crop">The crop.</param>
/// <param name="Channel">The channel.</param>
/// <param name="Quantity">Units, in the crop's own unit.</param>
/// <param name="Price">Price of a unit; for a share what it is worth in the box.</param>
/// <param name="From">The first day of the week.</param>
/// <param name="Weeks">Over how many weeks.</param>
public sealed record DraftSale(int CropYear, string Crop, string Channel, decimal Quantity, decimal Price, DateOnly From, int Weeks = 1);

/// <summary>A plan as rows of records.</summary>
/// <param name="CropYear">The crop year.</param>
/// <param name="Plantings">What is grown where.</param>
/// <param name="Sales">What is sold.</param>
public sealed record PlanDraft(int CropYear, IReadOnlyList<DraftPlanting> Plantings, IReadOnlyList<DraftSale> Sales);
