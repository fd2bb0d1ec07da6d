namespace FarmEconomics.Records;

/// <summary>
/// The tables of a records folder as read: typed rows in file order, not yet checked against each other.
/// A table that isn't there is an empty list and not in <see cref="Present"/>.
/// </summary>
public sealed record RecordTables
{
    /// <summary>Names of the tables that were found (<c>crops</c>, <c>sales</c>, ...), lower case.</summary>
    public HashSet<string> Present { get; init; } = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>
    /// Tables that are there but could not be read as a whole (a required column is missing): names that refer to them can't be
    /// checked and aren't reported as unknown. Subset of <see cref="Present"/>.
    /// </summary>
    public HashSet<string> Unreadable { get; init; } = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>
    /// Names that stand in rows left out because of an error, by table: such a name is known, so that one bad row is reported once
    /// and not again in every row that refers to it. Emptied when rows in error are skipped.
    /// </summary>
    public Dictionary<string, HashSet<string>> NamesInError { get; init; } = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Rows of <c>farm</c>.</summary>
    public List<SettingRow> Farm { get; init; } = [];

    /// <summary>Rows of <c>crops</c>.</summary>
    public List<CropRow> Crops { get; init; } = [];

    /// <summary>Rows of <c>units</c>.</summary>
    public List<UnitRow> Units { get; init; } = [];

    /// <summary>Rows of <c>beds</c>.</summary>
    public List<BedRow> Beds { get; init; } = [];

    /// <summary>Rows of <c>plantings</c>.</summary>
    public List<PlantingRow> Plantings { get; init; } = [];

    /// <summary>Rows of <c>harvests</c>.</summary>
    public List<HarvestRow> Harvests { get; init; } = [];

    /// <summary>Rows of <c>sales</c>.</summary>
    public List<SaleRow> Sales { get; init; } = [];

    /// <summary>Rows of <c>channels</c>.</summary>
    public List<ChannelRow> Channels { get; init; } = [];

    /// <summary>Rows of <c>prices</c>.</summary>
    public List<PriceRow> Prices { get; init; } = [];

    /// <summary>Rows of <c>income</c>.</summary>
    public List<IncomeRow> Income { get; init; } = [];

    /// <summary>Rows of <c>labor</c>.</summary>
    public List<LaborRow> Labor { get; init; } = [];

    /// <summary>Rows of <c>workers</c>.</summary>
    public List<WorkerRow> Workers { get; init; } = [];

    /// <summary>Rows of <c>tasks</c>.</summary>
    public List<TaskRow> Tasks { get; init; } = [];

    /// <summary>Rows of <c>labor_standards</c>.</summary>
    public List<LaborStandardRow> LaborStandards { get; init; } = [];

    /// <summary>Rows of <c>input_rates</c>.</summary>
    public List<InputRateRow> InputRates { get; init; } = [];

    /// <summary>Rows of <c>expenses</c>.</summary>
    public List<ExpenseRow> Expenses { get; init; } = [];

    /// <summary>Rows of <c>categories</c>.</summary>
    public List<CategoryRow> Categories { get; init; } = [];

    /// <summary>Rows of <c>pools</c>.</summary>
    public List<PoolRow> Pools { get; init; } = [];

    /// <summary>Rows of <c>use</c>.</summary>
    public List<UseRow> Use { get; init; } = [];

    /// <summary>Rows of <c>loads</c>.</summary>
    public List<LoadRow> Loads { get; init; } = [];

    /// <summary>Rows of <c>assets</c>.</summary>
    public List<AssetRow> Assets { get; init; } = [];

    /// <summary>Rows of <c>loans</c>.</summary>
    public List<LoanRow> Loans { get; init; } = [];

    /// <summary>Rows of <c>balances</c>.</summary>
    public List<BalanceRow> Balances { get; init; } = [];

    /// <summary>Rows of <c>funding</c>.</summary>
    public List<FundingRow> Funding { get; init; } = [];

    /// <summary>Rows of <c>limits</c>.</summary>
    public List<LimitRow> Limits { get; init; } = [];

    /// <summary>Rows of <c>totals</c>.</summary>
    public List<TotalRow> Totals { get; init; } = [];

    /// <summary>Rows of <c>aliases</c>.</summary>
    public List<AliasRow> Aliases { get; init; } = [];

    /// <summary>Rows of <c>imports</c>.</summary>
    public List<ImportRow> Imports { get; init; } = [];
}
