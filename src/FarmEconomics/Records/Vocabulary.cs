namespace FarmEconomics.Records;

/// <summary>What kind of channel goods leave through.</summary>
public enum ChannelKind
{
    /// <summary>A market stand for a day.</summary>
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

    /// <summary>Wages.</summary>
    Labor,

    /// <summary>What an employer pays on top of wages: payroll taxes, workers' compensation, benefits. Labor cost, but no wages.</summary>
    LaborBurden,

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

/// <summary>
/// What makes a cost come and go. A channel's percentage fee follows the sale itself and is told apart
/// (<see cref="Costing.Charge.IsFee"/>). Files also take the words of before: area for length, sales for units, nothing for fixed.
/// </summary>
public enum CostDriver
{
    /// <summary>Bed-feet planted.</summary>
    Length,

    /// <summary>Quantity picked and handled.</summary>
    Quantity,

    /// <summary>Units sold, such as packaging.</summary>
    Units,

    /// <summary>None: the cost stays whatever is grown.</summary>
    Fixed,

    /// <summary>Bed-feet times the time they are held.</summary>
    BedTime,

    /// <summary>
    /// Trips of a channel (market days, delivery rounds, box days): they go whole when nothing is sold through it, and not before.
    /// </summary>
    Trips,
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

/// <summary>How a loan is paid back.</summary>
public enum Repayment
{
    /// <summary>The same payment every time, interest and principal together.</summary>
    LevelPayment,

    /// <summary>The same principal every time, and the interest on what is owed.</summary>
    LevelPrincipal,

    /// <summary>Interest only, and the whole principal with the last payment.</summary>
    InterestOnly,
}

/// <summary>Where a line of a balance sheet stands.</summary>
public enum BalanceClass
{
    /// <summary>Cash, and what turns into cash or is used up within a year.</summary>
    CurrentAsset,

    /// <summary>What lasts more than a year and isn't land or buildings: machines, tools, breeding stock.</summary>
    IntermediateAsset,

    /// <summary>Land, buildings and improvements.</summary>
    LongTermAsset,

    /// <summary>Due within a year.</summary>
    CurrentLiability,

    /// <summary>Due after one year and within ten.</summary>
    IntermediateLiability,

    /// <summary>Due after ten years, or secured by land.</summary>
    LongTermLiability,
}

/// <summary>What a line of a balance sheet is, as far as statements tell lines apart.</summary>
public enum BalanceItem
{
    /// <summary>Money: cash, checking, savings.</summary>
    Cash,

    /// <summary>Produce and other current assets, such as what members still owe: their change is a return.</summary>
    Inventory,

    /// <summary>Customers' unpaid bills for what stands in sales already: sold, and not yet money.</summary>
    Invoices,

    /// <summary>Inputs not used yet: their change is a cost.</summary>
    Supplies,

    /// <summary>Longer-term assets that the assets table holds.</summary>
    InAssets,

    /// <summary>Longer-term assets that it doesn't hold, such as land.</summary>
    BesideAssets,

    /// <summary>Bills and other current liabilities: their change is a cost.</summary>
    Bills,

    /// <summary>Customers' money for later produce: its change is a return.</summary>
    PaidAhead,

    /// <summary>Borrowed money.</summary>
    Debt,
}

/// <summary>What an asset is for tax: suggests its depreciation class, for a preparer to confirm.</summary>
public enum TaxKind
{
    /// <summary>Farm machinery and equipment, new.</summary>
    NewMachinery,

    /// <summary>Farm machinery and equipment, used.</summary>
    UsedMachinery,

    /// <summary>Trucks and trailers.</summary>
    Vehicle,

    /// <summary>Computers.</summary>
    Computer,

    /// <summary>Office furniture.</summary>
    Furniture,

    /// <summary>Solar panels and what belongs to them.</summary>
    Solar,

    /// <summary>Fences used in agriculture.</summary>
    Fence,

    /// <summary>Greenhouses, tunnels and other structures for growing alone.</summary>
    Greenhouse,

    /// <summary>Fruit-bearing trees and vines.</summary>
    TreesAndVines,

    /// <summary>Drainage, roads, wells and other improvements of land.</summary>
    LandImprovement,

    /// <summary>Sheds, shops, storage.</summary>
    Building,

    /// <summary>Land: no depreciation.</summary>
    Land,
}

/// <summary>Who gives the part of a project the funder doesn't: SF-424A (OMB 4040-0006), Section C, columns (b) to (d).</summary>
public enum MatchSource
{
    /// <summary>Column (b), the farm.</summary>
    Applicant,

    /// <summary>Column (c), the state.</summary>
    State,

    /// <summary>Column (d), anybody else.</summary>
    Other,
}

/// <summary>
/// Object classes of a federal grant budget: SF-424A (OMB 4040-0006), Section B, lines 6a to 6h. Indirect charges (6j) are worked out, not
/// entered.
/// </summary>
public enum ObjectClass
{
    /// <summary>6a Personnel.</summary>
    Personnel,

    /// <summary>6b Fringe Benefits.</summary>
    FringeBenefits,

    /// <summary>6c Travel.</summary>
    Travel,

    /// <summary>6d Equipment.</summary>
    Equipment,

    /// <summary>6e Supplies.</summary>
    Supplies,

    /// <summary>6f Contractual.</summary>
    Contractual,

    /// <summary>6g Construction.</summary>
    Construction,

    /// <summary>6h Other.</summary>
    Other,
}
