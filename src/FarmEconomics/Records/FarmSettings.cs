namespace FarmEconomics.Records;

/// <summary>
/// The unit the farm measures its beds in. Nothing is converted: lengths stay as written, and rates per length are in that unit.
/// </summary>
public enum LengthUnit
{
    /// <summary>Feet; bed widths in inches.</summary>
    Ft,

    /// <summary>Meters; bed widths in centimeters.</summary>
    M,
}

/// <summary>How the yearly cost of equipment and buildings is worked out; two published definitions, never a silent choice.</summary>
public enum OwnershipMethod
{
    /// <summary>Capital recovery: one level yearly amount that returns the outlay with interest.</summary>
    CapitalRecovery,

    /// <summary>Straight-line depreciation plus interest on the mean of cost and salvage.</summary>
    DepreciationAndInterest,
}

/// <summary>What happens to the ownership cost of capacity nobody used.</summary>
public enum IdleCapacity
{
    /// <summary>Reported on a line of its own, charged to no crop.</summary>
    Separate,

    /// <summary>Spread over the users.</summary>
    Spread,
}

/// <summary>Whether produce on hand at the closing date counts as output.</summary>
public enum ClosingStock
{
    /// <summary>Valued at the average realized price less selling cost.</summary>
    Count,

    /// <summary>Left out.</summary>
    Ignore,
}

/// <summary>How pools that serve each other are resolved.</summary>
public enum SharingMethod
{
    /// <summary>Simultaneous equations: circles are resolved exactly.</summary>
    Reciprocal,

    /// <summary>Pools are closed one after the other in the order of the pools table; no return flows.</summary>
    StepDown,

    /// <summary>Service from pool to pool is ignored.</summary>
    Direct,
}

/// <summary>Whether anybody works unpaid.</summary>
public enum UnpaidHours
{
    /// <summary>As the labor table says; a season without it has unknown hours.</summary>
    AsLogged,

    /// <summary>Nobody does: a season without wages and without logged hours took no labor at all.</summary>
    None,
}

/// <summary>The settings of <c>farm</c>: the assumptions of every result, passed in and printed out.</summary>
public sealed record FarmSettings
{
    /// <summary>What a farm is called whose name isn't on file.</summary>
    internal const string Unnamed = "The farm";

    /// <summary>The farm's name.</summary>
    public string FarmName { get; init; } = Unnamed;

    /// <summary>ISO 4217 currency code.</summary>
    public string Currency { get; init; } = "USD";

    /// <summary>Month the crop year starts in (1 to 12).</summary>
    public int CropYearStartMonth { get; init; } = 1;

    /// <summary>Day of the month the crop year starts on.</summary>
    public int CropYearStartDay { get; init; } = 1;

    /// <summary>Value of one unpaid hour, per hour; null: labor and net return are not available where hours are unpaid.</summary>
    public decimal? OwnerWage { get; init; }

    /// <summary>Whether anybody works unpaid: tells no hours from unknown ones.</summary>
    public UnpaidHours UnpaidHours { get; init; }

    /// <summary>Employer's cost on top of wages, in percent; used only where the books carry neither wages nor such cost.</summary>
    public decimal PayrollBurdenPercent { get; init; }

    /// <summary>
    /// Cost of capital in percent a year; null: infrastructure and net return are not available where assets have a yearly cost.
    /// </summary>
    public decimal? InterestPercent { get; init; }

    /// <summary>What the farm's own land is worth, in currency; null: no charge for it unless <see cref="LandRent"/> says one.</summary>
    public decimal? LandValue { get; init; }

    /// <summary>What the farm's own land would cost to rent, in currency a year; null: by <see cref="LandValue"/>.</summary>
    public decimal? LandRent { get; init; }

    /// <summary>
    /// Acres of own land, hectares where lengths are in meters, above 0: <see cref="LandValue"/> and <see cref="LandRent"/> are for one of
    /// them; null: they are for all of it.
    /// </summary>
    public decimal? LandArea { get; init; }

    /// <summary>Bed width that one bed-foot stands for, in inches; in centimeters when lengths are in meters.</summary>
    public decimal StandardBedWidthIn { get; init; } = 30m;

    /// <summary>The unit of all lengths of the farm: what is called a bed-foot is a bed-meter when it is meters.</summary>
    public LengthUnit LengthUnit { get; init; } = LengthUnit.Ft;

    /// <summary>Whether closing stock counts.</summary>
    public ClosingStock ClosingStock { get; init; } = ClosingStock.Count;

    /// <summary>How ownership cost is worked out.</summary>
    public OwnershipMethod OwnershipMethod { get; init; } = OwnershipMethod.CapitalRecovery;

    /// <summary>What happens to idle capacity.</summary>
    public IdleCapacity IdleCapacity { get; init; } = IdleCapacity.Separate;

    /// <summary>Whether hours of hired people that a change frees need not be paid; asked by decisions only.</summary>
    public bool HiredHoursCanBeCut { get; init; } = true;

    /// <summary>What produce bought in for boxes costs, in percent of list price; asked by decisions only.</summary>
    public decimal BuyInPercent { get; init; } = 100m;

    /// <summary>
    /// How much prices and costs rise in a year, in percent, for bringing past seasons to the level of the reviewed one; null: sales by the
    /// farm's own list prices, other costs in the money of their year. Asked by decisions only.
    /// </summary>
    public decimal? PriceChangePercent { get; init; }

    /// <summary>
    /// How pools that serve each other are resolved. Not a setting of the table: reciprocal unless a comparison asks for another.
    /// </summary>
    public SharingMethod SharingMethod { get; init; } = SharingMethod.Reciprocal;

    /// <summary>
    /// How far tracing goes in matching sales, harvests and plantings. Not a setting of the table; printed among the assumptions.
    /// </summary>
    public TracingLimits Limits { get; init; } = new();

    /// <summary>Where the farm lies, for its need of water.</summary>
    public FarmSite Site { get; init; } = new();

    /// <summary>The farm's own supply of electricity.</summary>
    public PowerSupply Supply { get; init; } = new();

    /// <summary>Closing date of the review; null: the last date in the records.</summary>
    public DateOnly? AsOf { get; init; }

    /// <summary>The format of dates in the grower's files besides ISO 8601 (<c>d/M/yyyy</c>); null: ISO 8601 only.</summary>
    public string? DateFormat { get; init; }

    /// <summary>The decimal mark of numbers in the grower's files, <c>.</c> or <c>,</c>.</summary>
    public char DecimalMark { get; init; } = '.';

    /// <summary>How the farm writes what a person reads.</summary>
    public Notation Notation => new(Currency, DecimalMark, LengthUnit);

    /// <summary>The crop year a date falls in: window N holds the dates from N-MM-DD on.</summary>
    /// <param name="date">The date.</param>
    /// <returns>The year the window is named after.</returns>
    public int WindowOf(DateOnly date) =>
        (date.Month, date.Day).CompareTo((CropYearStartMonth, CropYearStartDay)) >= 0 ? date.Year : date.Year - 1;

    /// <summary>First day of a crop year.</summary>
    /// <param name="cropYear">The crop year.</param>
    /// <returns>Its first day.</returns>
    public DateOnly StartOf(int cropYear) => new(cropYear, CropYearStartMonth, CropYearStartDay);

    /// <summary>First day after a crop year.</summary>
    /// <param name="cropYear">The crop year.</param>
    /// <returns>The first day of the next one.</returns>
    public DateOnly EndOf(int cropYear) => StartOf(cropYear + 1);

    /// <summary>True when a crop year is over: its last day is no later than the closing date.</summary>
    /// <param name="cropYear">The crop year.</param>
    /// <param name="closing">The closing date of the records: <see cref="FarmRecords.AsOf"/>.</param>
    /// <returns>Whether nothing of it is still to come.</returns>
    public bool IsOver(int cropYear, DateOnly closing) => EndOf(cropYear).AddDays(-1) <= closing;
}
