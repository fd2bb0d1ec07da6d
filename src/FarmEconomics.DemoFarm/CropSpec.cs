namespace FarmEconomics.DemoFarm;

/// <summary>What the farm knows of a crop: how it is counted, kept, grown, picked and priced.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Unit">The unit it is counted in.</param>
/// <param name="Group">Group of crops.</param>
/// <param name="Family">Plant family.</param>
/// <param name="StorageDays">Days it keeps after harvest.</param>
/// <param name="Store">Pool it is kept in; null: none, it goes out the day it is picked or stays in the shed.</param>
/// <param name="Water">Water need against the average crop.</param>
/// <param name="PerCrate">Units that fill a crate.</param>
/// <param name="Yield">Units per bed-foot of a planting in a fair season, culls taken off.</param>
/// <param name="Price">Market price per unit in 2025, US dollars.</param>
/// <param name="Wholesale">Wholesale price as a part of the market price.</param>
/// <param name="Portion">What one share box holds of it, in units; 0: never in a box.</param>
/// <param name="Seed">Seed and plants, US dollars per bed-foot.</param>
/// <param name="Packing">Bags, bands and boxes, US dollars per unit.</param>
/// <param name="GrowMinutes">Bed preparation, planting, weeding, trellising: minutes per bed-foot of a planting.</param>
/// <param name="HarvestMinutes">Picking: minutes per unit.</param>
/// <param name="PackMinutes">Washing and packing: minutes per unit.</param>
/// <param name="FeetPerTray">Bed-feet one nursery tray plants.</param>
/// <param name="Step">What the harvest is written down to.</param>
/// <param name="Perennial">True for a bed that stays.</param>
internal sealed record CropSpec(
    string Name,
    string Unit,
    string Group,
    string Family,
    int StorageDays,
    string? Store,
    decimal Water,
    decimal PerCrate,
    decimal Yield,
    decimal Price,
    decimal Wholesale,
    decimal Portion,
    decimal Seed,
    decimal Packing,
    decimal GrowMinutes,
    decimal HarvestMinutes,
    decimal PackMinutes,
    decimal FeetPerTray,
    decimal Step,
    bool Perennial)
{
    /// <summary>Seasons a bed that stays bears.</summary>
    public decimal? BearingYears => Name switch { "Asparagus" => 12m, "Rhubarb" => 8m, "Raspberries" => Berries.BearingYears, _ => null };

    /// <summary>
    /// What establishing a bed-foot cost up to the first picking, by the owners' notes, where that was before the records begin; US
    /// dollars.
    /// </summary>
    public decimal? EstablishmentCost => Name switch { "Asparagus" => 3.40m, "Rhubarb" => 4.10m, _ => null };

    /// <summary>Kept for weeks: sold out of the store in weekly parts instead of as it comes.</summary>
    public bool Keeps => StorageDays >= 30;
}
