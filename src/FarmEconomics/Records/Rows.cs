namespace FarmEconomics.Records;

/// <summary>A record as the grower wrote it, with its place in the files.</summary>
public interface IRecordRow
{
    /// <summary>The file and line the record came from.</summary>
    SourceLine Source { get; set; }
}

/// <summary>Base of all rows: the place in the files.</summary>
public abstract class RecordRow : IRecordRow
{
    /// <inheritdoc/>
    public SourceLine Source { get; set; }

    /// <summary>The same row once more, with its place in the files, to be changed in memory while this one stays as written.</summary>
    internal RecordRow Copy() => (RecordRow)MemberwiseClone();
}

/// <summary>A row of <c>crops</c>: a crop and the unit it is counted in.</summary>
public sealed class CropRow : RecordRow
{
    /// <summary>The crop's name.</summary>
    public string Crop { get; set; } = "";

    /// <summary>The unit the crop is counted in (lb, bunch, head, pint).</summary>
    public string Unit { get; set; } = "";

    /// <summary>A group of crops (greens, roots, ...), free text.</summary>
    public string? Group { get; set; }

    /// <summary>The plant family, free text.</summary>
    public string? Family { get; set; }

    /// <summary>Days the crop keeps after harvest; blank: no limit.</summary>
    public decimal? StorageDays { get; set; }

    /// <summary>The pool or pools (separated by <c>;</c>) the crop is kept in.</summary>
    public string? Store { get; set; }

    /// <summary>Relative need of water per bed-foot-day (1 = average).</summary>
    public decimal? WaterNeed { get; set; }

    /// <summary>How many of the crop's units fill one crate.</summary>
    public decimal? UnitsPerCrate { get; set; }

    /// <summary>True when a planting stays over several crop years.</summary>
    public bool? Perennial { get; set; }
}

/// <summary>A row of <c>units</c>: another unit of a crop.</summary>
public sealed class UnitRow : RecordRow
{
    /// <summary>The crop.</summary>
    public string Crop { get; set; } = "";

    /// <summary>The other unit (bag, case).</summary>
    public string Unit { get; set; } = "";

    /// <summary>How many of the crop's own units one of it holds; above 0.</summary>
    public decimal BaseUnits { get; set; }
}

/// <summary>A row of <c>beds</c>: a permanent bed or a shelf of trays.</summary>
public sealed class BedRow : RecordRow
{
    /// <summary>The bed's name.</summary>
    public string Bed { get; set; } = "";

    /// <summary>Length in feet.</summary>
    public decimal LengthFt { get; set; }

    /// <summary>Width of the bed top in inches; blank: the farm's standard width.</summary>
    public decimal? WidthIn { get; set; }

    /// <summary>The block of beds it lies in.</summary>
    public string? Block { get; set; }

    /// <summary>The structure it lies in (a tunnel, a house); blank: open field.</summary>
    public string? Structure { get; set; }

    /// <summary>First day the bed exists; blank: always.</summary>
    public DateOnly? From { get; set; }

    /// <summary>Last day the bed exists; blank: still there.</summary>
    public DateOnly? To { get; set; }
}

/// <summary>A row of <c>plantings</c>: one sowing or transplanting in one bed.</summary>
public sealed class PlantingRow : RecordRow
{
    /// <summary>The planting's name; the same planting may repeat with other beds.</summary>
    public string Planting { get; set; } = "";

    /// <summary>The crop.</summary>
    public string Crop { get; set; } = "";

    /// <summary>The bed.</summary>
    public string Bed { get; set; } = "";

    /// <summary>Feet of bed length planted.</summary>
    public decimal BedFeet { get; set; }

    /// <summary>The day it was sown or set in the bed.</summary>
    public DateOnly InBed { get; set; }

    /// <summary>The day the bed was free again; blank: the day after the last harvest.</summary>
    public DateOnly? OutOfBed { get; set; }

    /// <summary>The day it was sown in the nursery; blank: sown in place.</summary>
    public DateOnly? Sown { get; set; }

    /// <summary>Trays in the nursery.</summary>
    public decimal? Trays { get; set; }

    /// <summary>Sown in place, transplanted, ... free text.</summary>
    public string? Method { get; set; }

    /// <summary>The variety, free text.</summary>
    public string? Variety { get; set; }

    /// <summary>The crop year, when it isn't that of the first harvest.</summary>
    public int? CropYear { get; set; }
}

/// <summary>A row of <c>harvests</c>: what was picked on a day.</summary>
public sealed class HarvestRow : RecordRow
{
    /// <summary>The day of the harvest.</summary>
    public DateOnly Date { get; set; }

    /// <summary>The crop; may be blank when the planting is named.</summary>
    public string? Crop { get; set; }

    /// <summary>The planting; may be blank when the crop is named.</summary>
    public string? Planting { get; set; }

    /// <summary>What was picked, without what was culled.</summary>
    public decimal Quantity { get; set; }

    /// <summary>The unit; blank: the crop's own.</summary>
    public string? Unit { get; set; }

    /// <summary>Further quantity thrown out in the field, in the same unit.</summary>
    public decimal? Culled { get; set; }
}

/// <summary>A row of <c>sales</c>: what left the farm through any channel, the household's and the compost heap's included.</summary>
public sealed class SaleRow : RecordRow
{
    /// <summary>The day it left.</summary>
    public DateOnly Date { get; set; }

    /// <summary>The crop.</summary>
    public string Crop { get; set; } = "";

    /// <summary>The channel it left through.</summary>
    public string Channel { get; set; } = "";

    /// <summary>The quantity.</summary>
    public decimal Quantity { get; set; }

    /// <summary>The unit; blank: the crop's own.</summary>
    public string? Unit { get; set; }

    /// <summary>Price per unit of this row.</summary>
    public decimal? UnitPrice { get; set; }

    /// <summary>Money for the row; counts before <see cref="UnitPrice"/>.</summary>
    public decimal? Amount { get; set; }

    /// <summary>The planting it came from, when known.</summary>
    public string? Planting { get; set; }
}

/// <summary>A row of <c>channels</c>.</summary>
public sealed class ChannelRow : RecordRow
{
    /// <summary>The channel's name.</summary>
    public string Channel { get; set; } = "";

    /// <summary>What kind of channel it is.</summary>
    public ChannelKind Kind { get; set; }

    /// <summary>The channel's fee in percent of the sale (6.5 = 6.5 %).</summary>
    public decimal? FeePercent { get; set; }

    /// <summary>Price elasticity of demand by size: 2 means 2% more sold for a price 1% lower; blank: 2.</summary>
    public decimal? Elasticity { get; set; }

    /// <summary>The channel whose prices value goods that carry none.</summary>
    public string? ValuesFrom { get; set; }
}

/// <summary>A row of <c>prices</c>: a list price.</summary>
public sealed class PriceRow : RecordRow
{
    /// <summary>The crop.</summary>
    public string Crop { get; set; } = "";

    /// <summary>Price per unit.</summary>
    public decimal Price { get; set; }

    /// <summary>The unit; blank: the crop's own.</summary>
    public string? Unit { get; set; }

    /// <summary>The channel; blank: all channels.</summary>
    public string? Channel { get; set; }

    /// <summary>First day the price holds; blank: always.</summary>
    public DateOnly? From { get; set; }

    /// <summary>True for somebody else's price (a published market report): kept apart.</summary>
    public bool? Reference { get; set; }
}

/// <summary>A row of <c>income</c>: money not tied to a crop.</summary>
public sealed class IncomeRow : RecordRow
{
    /// <summary>The day.</summary>
    public DateOnly Date { get; set; }

    /// <summary>The channel: a share channel for share payments, one of kind other for other farm income.</summary>
    public string Channel { get; set; } = "";

    /// <summary>Money received.</summary>
    public decimal Amount { get; set; }

    /// <summary>The crop year the money is for; blank: that of the date.</summary>
    public int? CropYear { get; set; }

    /// <summary>Free text.</summary>
    public string? Note { get; set; }
}

/// <summary>A row of <c>labor</c>: hours worked.</summary>
public sealed class LaborRow : RecordRow
{
    /// <summary>The day.</summary>
    public DateOnly Date { get; set; }

    /// <summary>Who worked.</summary>
    public string Worker { get; set; } = "";

    /// <summary>Hours.</summary>
    public decimal Hours { get; set; }

    /// <summary>What was done.</summary>
    public string Task { get; set; } = "";

    /// <summary>The crop worked on, if one.</summary>
    public string? Crop { get; set; }

    /// <summary>The planting worked on, if one.</summary>
    public string? Planting { get; set; }

    /// <summary>The channel worked for, if one.</summary>
    public string? Channel { get; set; }

    /// <summary>The pool worked for, if one.</summary>
    public string? Pool { get; set; }
}

/// <summary>A row of <c>workers</c>.</summary>
public sealed class WorkerRow : RecordRow
{
    /// <summary>The worker's name.</summary>
    public string Worker { get; set; } = "";

    /// <summary>Hired, owner or volunteer.</summary>
    public WorkerKind Kind { get; set; }

    /// <summary>Wage per hour; for an owner, the value of an hour.</summary>
    public decimal? Wage { get; set; }

    /// <summary>First day the wage holds; blank: always.</summary>
    public DateOnly? From { get; set; }
}

/// <summary>A row of <c>tasks</c>.</summary>
public sealed class TaskRow : RecordRow
{
    /// <summary>The task's name.</summary>
    public string Task { get; set; } = "";

    /// <summary>The stage of work it belongs to.</summary>
    public Stage Stage { get; set; }

    /// <summary>Where hours go that name no crop; blank: the stage's work pool.</summary>
    public string? Pool { get; set; }
}

/// <summary>A row of <c>labor_standards</c>: a time standard for work not logged by crop.</summary>
public sealed class LaborStandardRow : RecordRow
{
    /// <summary>The crop.</summary>
    public string Crop { get; set; } = "";

    /// <summary>The stage of work.</summary>
    public Stage Stage { get; set; }

    /// <summary>Minutes of work per <see cref="Per"/>.</summary>
    public decimal Minutes { get; set; }

    /// <summary>What the minutes are counted for.</summary>
    public RatePer Per { get; set; }
}

/// <summary>A row of <c>input_rates</c>: a weight for sharing out a purchase pool.</summary>
public sealed class InputRateRow : RecordRow
{
    /// <summary>The pool (seed, packaging).</summary>
    public string Pool { get; set; } = "";

    /// <summary>The crop.</summary>
    public string Crop { get; set; } = "";

    /// <summary>The weight per <see cref="Per"/>.</summary>
    public decimal Rate { get; set; }

    /// <summary>What the rate is counted for.</summary>
    public RatePer Per { get; set; }
}

/// <summary>A row of <c>expenses</c>: one line of the farm's books.</summary>
public sealed class ExpenseRow : RecordRow
{
    /// <summary>The day.</summary>
    public DateOnly Date { get; set; }

    /// <summary>Money paid; negative for a refund.</summary>
    public decimal Amount { get; set; }

    /// <summary>The category.</summary>
    public string Category { get; set; } = "";

    /// <summary>Who was paid.</summary>
    public string? Payee { get; set; }

    /// <summary>The crop it was for, if one.</summary>
    public string? Crop { get; set; }

    /// <summary>The planting it was for, if one.</summary>
    public string? Planting { get; set; }

    /// <summary>The channel it was for, if one.</summary>
    public string? Channel { get; set; }

    /// <summary>The pool it was for, if one.</summary>
    public string? Pool { get; set; }

    /// <summary>The farm's part in percent; the rest is the household's; blank: 100.</summary>
    public decimal? FarmPercent { get; set; }

    /// <summary>The crop year it was for; blank: that of the date.</summary>
    public int? CropYear { get; set; }

    /// <summary>Free text.</summary>
    public string? Note { get; set; }
}

/// <summary>A row of <c>categories</c>.</summary>
public sealed class CategoryRow : RecordRow
{
    /// <summary>The category's name.</summary>
    public string Category { get; set; } = "";

    /// <summary>What kind of expense it is.</summary>
    public ExpenseClass Class { get; set; }

    /// <summary>Where a row naming a crop stands; blank: materials.</summary>
    public StatementLine? StatementLine { get; set; }

    /// <summary>The Schedule F line, a label for a tax preparer.</summary>
    public string? TaxLine { get; set; }

    /// <summary>Where a row naming nothing goes.</summary>
    public string? Pool { get; set; }

    /// <summary>What the cost varies with.</summary>
    public CostDriver? VariesWith { get; set; }
}

/// <summary>A row of <c>pools</c>: a shared cost and how it is shared out.</summary>
public sealed class PoolRow : RecordRow
{
    /// <summary>The pool's name.</summary>
    public string Pool { get; set; } = "";

    /// <summary>The basis, as written (<c>bed-foot-days</c>, <c>labor-hours:harvest</c>, ...).</summary>
    public string Basis { get; set; } = "";

    /// <summary>The line its money stands on in an enterprise budget.</summary>
    public StatementLine StatementLine { get; set; }

    /// <summary>The structure it serves; blank: the whole farm.</summary>
    public string? Structure { get; set; }

    /// <summary>What it can give in a crop year, in its basis unit.</summary>
    public decimal? Capacity { get; set; }

    /// <summary>What its running cost varies with; blank: nothing.</summary>
    public CostDriver? VariesWith { get; set; }
}

/// <summary>A row of <c>use</c>: measured use of a pool.</summary>
public sealed class UseRow : RecordRow
{
    /// <summary>The pool used.</summary>
    public string Pool { get; set; } = "";

    /// <summary>Who used it: another pool, a crop, a planting or <c>household</c>.</summary>
    public string User { get; set; } = "";

    /// <summary>How much, in the pool's basis unit.</summary>
    public decimal Quantity { get; set; }

    /// <summary>The crop year; blank: every crop year.</summary>
    public int? CropYear { get; set; }
}

/// <summary>A row of <c>loads</c>: an electrical load.</summary>
public sealed class LoadRow : RecordRow
{
    /// <summary>The load's name.</summary>
    public string Load { get; set; } = "";

    /// <summary>The power pool it draws on.</summary>
    public string Pool { get; set; } = "";

    /// <summary>Who it works for: another pool, a crop, a planting or <c>household</c>.</summary>
    public string User { get; set; } = "";

    /// <summary>Watts while it runs.</summary>
    public decimal Watts { get; set; }

    /// <summary>Hours a day it runs.</summary>
    public decimal HoursPerDay { get; set; }

    /// <summary>First day, as a date.</summary>
    public DateOnly From { get; set; }

    /// <summary>Last day, included.</summary>
    public DateOnly To { get; set; }
}

/// <summary>A row of <c>assets</c>: something that lasts.</summary>
public sealed class AssetRow : RecordRow
{
    /// <summary>The asset's name.</summary>
    public string Asset { get; set; } = "";

    /// <summary>The pool it belongs to.</summary>
    public string Pool { get; set; } = "";

    /// <summary>The day it was put into service.</summary>
    public DateOnly InService { get; set; }

    /// <summary>What it cost.</summary>
    public decimal Cost { get; set; }

    /// <summary>Years it lasts.</summary>
    public decimal LifeYears { get; set; }

    /// <summary>What it fetches at the end; blank: 0.</summary>
    public decimal? Salvage { get; set; }

    /// <summary>The farm's part in percent; blank: 100.</summary>
    public decimal? FarmPercent { get; set; }

    /// <summary>The part of the cost a grant paid; blank: 0.</summary>
    public decimal? Grant { get; set; }

    /// <summary>Yearly repairs in percent of cost, where the books don't carry them.</summary>
    public decimal? RepairsPercent { get; set; }

    /// <summary>Yearly insurance and property tax in percent of cost, where the books don't carry them.</summary>
    public decimal? InsuranceTaxPercent { get; set; }

    /// <summary>The day it was retired; blank: in service.</summary>
    public DateOnly? Retired { get; set; }
}

/// <summary>A row of <c>loans</c>: a loan the farm pays back.</summary>
public sealed class LoanRow : RecordRow
{
    /// <summary>The loan's name.</summary>
    public string Loan { get; set; } = "";

    /// <summary>What was borrowed; above 0.</summary>
    public decimal Principal { get; set; }

    /// <summary>Interest a year in percent (5.25 = 5.25 %), 0 to 100.</summary>
    public decimal AnnualPercent { get; set; }

    /// <summary>Years it runs; with <see cref="PaymentsPerYear"/> a whole number of payments.</summary>
    public decimal Years { get; set; }

    /// <summary>Payments a year, a whole number from 1 to 365.</summary>
    public decimal PaymentsPerYear { get; set; }

    /// <summary>The day of the first payment, one period after the money was paid out.</summary>
    public DateOnly FirstPayment { get; set; }

    /// <summary>How it is paid back.</summary>
    public Repayment Repayment { get; set; }

    /// <summary>The asset it paid for; blank: none, or several.</summary>
    public string? Asset { get; set; }
}

/// <summary>A row of <c>balances</c>: a line of a balance sheet on a day.</summary>
public sealed class BalanceRow : RecordRow
{
    /// <summary>The day of the balance sheet.</summary>
    public DateOnly Date { get; set; }

    /// <summary>What is owned or owed.</summary>
    public string Item { get; set; } = "";

    /// <summary>Asset or liability, and how soon it turns into money or falls due.</summary>
    public BalanceClass Class { get; set; }

    /// <summary>Its amount; a liability is entered above 0.</summary>
    public decimal Amount { get; set; }
}

/// <summary>A row of <c>funding</c>: a line of a grant or loan request.</summary>
public sealed class FundingRow : RecordRow
{
    /// <summary>The project.</summary>
    public string Project { get; set; } = "";

    /// <summary>What is to be paid.</summary>
    public string Item { get; set; } = "";

    /// <summary>The object class of the standard federal budget form.</summary>
    public ObjectClass ObjectClass { get; set; }

    /// <summary>What it costs; at least 0.</summary>
    public decimal Amount { get; set; }

    /// <summary>The part asked of the funder, 0 to 100; blank: 100.</summary>
    public decimal? FunderPercent { get; set; }

    /// <summary>Free text.</summary>
    public string? Note { get; set; }
}

/// <summary>A row of <c>limits</c>: what the farm cannot exceed.</summary>
public sealed class LimitRow : RecordRow
{
    /// <summary>What is limited: labor, water, cold room, ...</summary>
    public string Limit { get; set; } = "";

    /// <summary>How much there is.</summary>
    public decimal Amount { get; set; }

    /// <summary>What the amount is counted in: hours a week, crates, ...</summary>
    public string? Unit { get; set; }

    /// <summary>First day it holds; blank: always.</summary>
    public DateOnly? From { get; set; }

    /// <summary>Last day it holds, included; blank: always.</summary>
    public DateOnly? To { get; set; }
}

/// <summary>A row of <c>totals</c>: a control total the records must meet.</summary>
public sealed class TotalRow : RecordRow
{
    /// <summary>The table it controls.</summary>
    public string Table { get; set; } = "";

    /// <summary>The measure: amount, quantity, kWh, hours, hours:STAGE.</summary>
    public string Measure { get; set; } = "";

    /// <summary>The amount to be met.</summary>
    public decimal Amount { get; set; }

    /// <summary>First day; blank: from the first record.</summary>
    public DateOnly? From { get; set; }

    /// <summary>Last day, included; blank: to the last record.</summary>
    public DateOnly? To { get; set; }

    /// <summary>How far off it may be; blank: 0.</summary>
    public decimal? Tolerance { get; set; }
}

/// <summary>A row of <c>farm</c>: one setting.</summary>
public sealed class SettingRow : RecordRow
{
    /// <summary>The setting's name.</summary>
    public string Setting { get; set; } = "";

    /// <summary>Its value as written.</summary>
    public string Value { get; set; } = "";
}
