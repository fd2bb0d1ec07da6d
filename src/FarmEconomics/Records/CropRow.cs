using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>crops</c>.</summary>
    public Rows<CropRow> Crops => Of<CropRow>();
}

/// <summary>A row of <c>crops</c>: a crop and the unit it is counted in.</summary>
public readonly record struct CropRow(RecordTable Home, int Index) : IRecordRow<CropRow>
{
    private static readonly TableDeclaration Declared = new("crops", 110, "a crop and the unit it is counted in")
    {
        Required = true,
        UnknownName = ProblemCodes.UnknownCrop,
        NamesOnce = true,
        Checks = () => [NamesAlike.Of(Schema)],
    };

    internal static readonly TextColumn CropColumn = Declared.Text(new("crop", ColumnType.Name, "The crop's name.") { Required = true });
    internal static readonly TextColumn UnitColumn = Declared.Text(
        new("unit", ColumnType.Name, "The unit it is counted in: lb, bunch, head, pint.") { Required = true, Names = ["units"] });
    internal static readonly TextColumn GroupColumn = Declared.Text(
        new("group", ColumnType.Text, "A group the crop is shown under, such as greens or roots."));
    internal static readonly TextColumn FamilyColumn = Declared.Text(new("family", ColumnType.Text, "The plant family."));
    internal static readonly NumberColumn StorageDaysColumn = Declared.Number(
        new("storage_days", ColumnType.Number, "Days it keeps after harvest; blank: to the end of the crop year.")
        { Range = new NumberRange(0m, 36_500m), Unit = "days" });
    internal static readonly TextColumn StoreColumn = Declared.Text(
        new("store", ColumnType.Name, "The pool it is kept in, or several separated by `;`.")
        { RefersTo = "pools", MaxLength = 1000, Several = true, Later = true });
    internal static readonly NumberColumn WaterNeedColumn = Declared.Number(
        new("water_need", ColumnType.Number, "Need of water per bed-foot-day; 1 is average, and so is blank.")
        { Range = new NumberRange(0.001m, 1_000m) { OrZero = true }, Unit = "ratio", Later = true });
    internal static readonly NumberColumn UnitsPerCrateColumn = Declared.Number(
        new("units_per_crate", ColumnType.Number, "How many of its units fill one crate; blank: estimated from what it sold for.")
        { Range = new NumberRange(0.001m, 100_000m), Unit = "units", Later = true });
    internal static readonly YesNoColumn PerennialColumn = Declared.YesNo(
        new("perennial", ColumnType.YesNo, "Yes when a planting stays over several crop years."));
    internal static readonly NumberColumn BearingYearsColumn = Declared.Number(
        new(
            "bearing_years",
            ColumnType.Number,
            "Perennials: seasons a stand bears before it is cleared; its establishment is spread over them."
        )
        {
            Range = new NumberRange(1m, 100m),
            Unit = "years",
            Later = true,
        }
    );
    internal static readonly NumberColumn EstablishmentCostColumn = Declared.Number(
        new("establishment_cost", ColumnType.Price,
            "Perennials: what establishing a bed-foot cost up to the first bearing season, where the records begin later; "
                + "blank: from the records.")
        { Range = NumberRanges.PriceFromZero, Unit = ColumnUnits.Currency, Later = true });

    internal static readonly NumberColumn KcIniColumn = Declared.Number(
        Water("kc_ini", "Need of water over that of grass while the soil is bare")
    );
    internal static readonly NumberColumn KcMidColumn = Declared.Number(Water("kc_mid", "The same while the crop covers the ground"));
    internal static readonly NumberColumn KcEndColumn = Declared.Number(Water("kc_end", "The same on the last day"));
    internal static readonly NumberColumn KyColumn = Declared.Number(
        Water("ky", "Part of the yield lost for each part of its need it didn't get, over a season"));
    internal static readonly NumberColumn KyIniColumn = Declared.Number(
        Stage("ky_ini", "Part of the yield lost for each part of its need it didn't get while the soil is bare, of that stage alone")
    );
    internal static readonly NumberColumn KyDevColumn = Declared.Number(
        Stage("ky_dev", "The same while the crop grows to cover the ground")
    );
    internal static readonly NumberColumn KyMidColumn = Declared.Number(Stage("ky_mid", "The same while the crop covers the ground"));
    internal static readonly NumberColumn KyLateColumn = Declared.Number(Stage("ky_late", "The same from when it begins to ripen"));

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<CropRow>();

    /// <summary>The crop's name.</summary>
    public string Crop => CropColumn.Of(Home, Index);

    /// <summary>The unit the crop is counted in (lb, bunch, head, pint).</summary>
    public string Unit => UnitColumn.Of(Home, Index);

    /// <summary>A group of crops (greens, roots, ...), free text.</summary>
    public string? Group => GroupColumn.Maybe(Home, Index);

    /// <summary>The plant family, free text.</summary>
    public string? Family => FamilyColumn.Maybe(Home, Index);

    /// <summary>Days the crop keeps after harvest; blank: no limit.</summary>
    public decimal? StorageDays => StorageDaysColumn.Maybe(Home, Index);

    /// <summary>The pool or pools (separated by <c>;</c>) the crop is kept in.</summary>
    public string? Store => StoreColumn.Maybe(Home, Index);

    /// <summary>Relative need of water per bed-foot-day (1 = average).</summary>
    public decimal? WaterNeed => WaterNeedColumn.Maybe(Home, Index);

    /// <summary>How many of the crop's units fill one crate.</summary>
    public decimal? UnitsPerCrate => UnitsPerCrateColumn.Maybe(Home, Index);

    /// <summary>True when a planting stays over several crop years.</summary>
    public bool? Perennial => PerennialColumn.Maybe(Home, Index);

    /// <summary>Seasons a stand of a perennial bears; blank: not known.</summary>
    public decimal? BearingYears => BearingYearsColumn.Maybe(Home, Index);

    /// <summary>What establishing a bed-foot of a perennial cost; blank: from the records.</summary>
    public decimal? EstablishmentCost => EstablishmentCostColumn.Maybe(Home, Index);

    /// <summary>Crop coefficient of the first stage; blank: the published table's.</summary>
    public decimal? KcIni => KcIniColumn.Maybe(Home, Index);

    /// <summary>Crop coefficient of mid-season; blank: the published table's.</summary>
    public decimal? KcMid => KcMidColumn.Maybe(Home, Index);

    /// <summary>Crop coefficient of the last day; blank: the published table's.</summary>
    public decimal? KcEnd => KcEndColumn.Maybe(Home, Index);

    /// <summary>Yield response to water over a season; blank: the published table's.</summary>
    public decimal? Ky => KyColumn.Maybe(Home, Index);

    /// <summary>Yield response to water in the initial stage; blank: not told apart, <see cref="Ky"/> counts.</summary>
    public decimal? KyIni => KyIniColumn.Maybe(Home, Index);

    /// <summary>Yield response to water in the stage of development; blank: not told apart.</summary>
    public decimal? KyDev => KyDevColumn.Maybe(Home, Index);

    /// <summary>Yield response to water in mid-season; blank: not told apart.</summary>
    public decimal? KyMid => KyMidColumn.Maybe(Home, Index);

    /// <summary>Yield response to water in the late season; blank: not told apart.</summary>
    public decimal? KyLate => KyLateColumn.Maybe(Home, Index);

    private static ColumnSchema Water(string name, string about) => Ratio(name, $"{about}; blank: as published for the crop.");

    private static ColumnSchema Stage(string name, string about) => Ratio(name, $"{about}; blank: `ky` counts.");

    private static ColumnSchema Ratio(string name, string about) =>
        new(name, ColumnType.Number, about) { Range = new NumberRange(0.01m, 3m) { OrZero = true }, Unit = "ratio", Later = true };

    /// <inheritdoc/>
    public static CropRow At(RecordTable table, int index) => new(table, index);
}
