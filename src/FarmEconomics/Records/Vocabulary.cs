namespace FarmEconomics.Records;

/// <summary>What kind of channel goods leave through.</summary>
public enum ChannelKind
{
    /// <summary>A market stall.</summary>
    Market,

    /// <summary>A stand on or near the farm.</summary>
    Stand,

    /// <summary>Shops, kitchens and other buyers.</summary>
    Wholesale,

    /// <summary>Shares paid for the season.</summary>
    Share,

    /// <summary>The household's own table.</summary>
    Household,

    /// <summary>Given away.</summary>
    Donation,

    /// <summary>Thrown out after harvest.</summary>
    Waste,

    /// <summary>Anything else; other farm income.</summary>
    Other,
}

/// <summary>Who works: decides how an hour becomes money.</summary>
public enum WorkerKind
{
    /// <summary>Paid; costs what the books say.</summary>
    Hired,

    /// <summary>Unpaid owner or family; imputed at the owner wage.</summary>
    Owner,

    /// <summary>Hours count, no money.</summary>
    Volunteer,
}

/// <summary>Stage of work.</summary>
public enum Stage
{
    /// <summary>Sowing and raising seedlings.</summary>
    Nursery,

    /// <summary>Bed preparation, planting, weeding, watering.</summary>
    Grow,

    /// <summary>Picking.</summary>
    Harvest,

    /// <summary>Washing and packing.</summary>
    Pack,

    /// <summary>Selling and delivering.</summary>
    Sell,

    /// <summary>Everything for the farm as a whole.</summary>
    Overhead,
}

/// <summary>Class of an expense.</summary>
public enum ExpenseClass
{
    /// <summary>Running cost of the season.</summary>
    Operating,

    /// <summary>Wages and what goes with them.</summary>
    Labor,

    /// <summary>Interest on loans for assets: never enters an enterprise budget.</summary>
    Interest,

    /// <summary>Purchase of something that lasts: enters through its ownership cost.</summary>
    Capital,

    /// <summary>Loan principal.</summary>
    Principal,

    /// <summary>Income tax and the like.</summary>
    Tax,

    /// <summary>Drawings of the household.</summary>
    Personal,
}

/// <summary>Cost line of an enterprise budget.</summary>
public enum StatementLine
{
    /// <summary>Seed, plants, fertility, crop supplies.</summary>
    Materials,

    /// <summary>Packaging, fees, market cost.</summary>
    Selling,

    /// <summary>Hired and imputed owner labor.</summary>
    Labor,

    /// <summary>Power, heat, cold, buildings, water.</summary>
    Infrastructure,

    /// <summary>What the farm costs as a whole.</summary>
    Overhead,
}

/// <summary>What a cost varies with.</summary>
public enum VariesWith
{
    /// <summary>Bed-feet planted.</summary>
    Area,

    /// <summary>Quantity picked.</summary>
    Quantity,

    /// <summary>Sales value.</summary>
    Sales,

    /// <summary>Nothing: fixed.</summary>
    Nothing,
}

/// <summary>What a rate or a time standard is counted for.</summary>
public enum RatePer
{
    /// <summary>A foot of bed planted.</summary>
    BedFoot,

    /// <summary>A unit of the crop picked.</summary>
    Unit,

    /// <summary>A nursery tray.</summary>
    Tray,

    /// <summary>A planting.</summary>
    Planting,
}
