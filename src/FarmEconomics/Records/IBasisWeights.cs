namespace FarmEconomics.Records;

/// <summary>What a basis may ask of the plantings of a crop year for one pool, and where it writes their weights.</summary>
/// <remarks>A planting is named by its place, from 0. Implemented where the year is worked out (<c>Costing</c>).</remarks>
internal interface IBasisWeights
{
    /// <summary>Bed-feet in the beds the pool serves.</summary>
    decimal BedFeet(int planting);

    /// <summary>Bed-feet x days in the beds the pool serves.</summary>
    decimal BedFootDays(int planting);

    /// <summary>Trays x days from sowing to bed.</summary>
    decimal TrayDays(int planting);

    /// <summary>What was picked, in the crop's unit.</summary>
    decimal Harvested(int planting);

    /// <summary>Days on which something of it was picked.</summary>
    decimal HarvestDays(int planting);

    /// <summary>Units of the crop x days held in the pool's store.</summary>
    decimal UnitDays(int planting);

    /// <summary>The crop's water need; 1 with a warning where its row says none.</summary>
    decimal WaterNeed(int planting);

    /// <summary>Sets the weight of every planting; what is below 0 counts as 0.</summary>
    void Each(Func<int, decimal> weight);

    /// <summary>
    /// Sets quantities as crates; by sales value where crops with over half of it don't say how many of their units fill one.
    /// </summary>
    void EachInCrates(Func<int, decimal> quantity);

    /// <summary>Adds the direct hours of the year's charges, of all stages or one.</summary>
    void AddHours(Stage? stage);

    /// <summary>Sets what was sold; for a channel's pool what was sold there, else its list value, else its crates.</summary>
    void EachBySales();

    /// <summary>Adds the rates that the table of rates gives the pool.</summary>
    void AddRates();
}
