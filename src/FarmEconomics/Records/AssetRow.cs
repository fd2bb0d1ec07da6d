using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>assets</c>.</summary>
    public Rows<AssetRow> Assets => Of<AssetRow>();
}

/// <summary>A row of <c>assets</c>: something that lasts.</summary>
public readonly record struct AssetRow(RecordTable Home, int Index) : IRecordRow<AssetRow>
{
    private static readonly TableDeclaration Declared = new("assets", 330, "something that lasts")
    {
        UnknownName = ProblemCodes.UnknownAsset,
        NamesOnce = true,
        Money = "cost",
        Without = "Without assets.csv nothing is charged for equipment and buildings.",
        Day = "in_service",
        Checks = () => SharedCostChecks.OfAssets,
    };

    internal static readonly TextColumn AssetColumn = Declared.Text(new("asset", ColumnType.Name, "The asset's name.") { Required = true });
    internal static readonly TextColumn PoolColumn = Declared.MustRef("pool", "pools", "The pool it belongs to.");
    internal static readonly DayColumn InServiceColumn = Declared.Date(
        new("in_service", ColumnType.Date, "The day it was put into service.") { Required = true });
    internal static readonly NumberColumn CostColumn = Declared.Number(
        new("cost", ColumnType.Money, "What it cost.")
        { Required = true, Range = NumberRanges.AmountFromZero, Unit = ColumnUnits.Currency });
    internal static readonly NumberColumn LifeYearsColumn = Declared.Number(
        new("life_years", ColumnType.Number, "Years it lasts.") { Required = true, Range = new NumberRange(0.1m, 1_000m), Unit = "years" });
    internal static readonly NumberColumn SalvageColumn = Declared.Number(
        new("salvage", ColumnType.Money, "What it fetches at the end; blank: 0.")
        { Range = NumberRanges.AmountFromZero, Unit = ColumnUnits.Currency });
    internal static readonly NumberColumn FarmPercentColumn = Declared.Number(
        new("farm_percent", ColumnType.Percent, "The farm's part; blank: 100.") { Range = NumberRanges.Part, Unit = "%" });
    internal static readonly NumberColumn GrantColumn = Declared.Number(
        new("grant", ColumnType.Money,
            "The part of the cost a grant paid; blank: 0. Its money is no income (W208): what came to you stands in "
            + "expenses as a refund, below 0, in the category the asset was bought under.")
        { Range = NumberRanges.AmountFromZero, Unit = ColumnUnits.Currency });
    internal static readonly NumberColumn RepairsPercentColumn = Declared.Number(
        new("repairs_percent", ColumnType.Percent, "Yearly repairs in percent of cost, where the books don't carry them.")
        { Range = NumberRanges.Part, Unit = "% a year" });
    internal static readonly NumberColumn InsuranceTaxPercentColumn = Declared.Number(
        new("insurance_tax_percent", ColumnType.Percent,
            "Yearly insurance and property tax in percent of cost, where the books don't carry them.")
        { Range = NumberRanges.Part, Unit = "% a year" });
    internal static readonly DayColumn RetiredColumn = Declared.Date(
        new("retired", ColumnType.Date, "The day it was retired; blank: in service."));
    internal static readonly NumberColumn ReplacementValueColumn = Declared.Number(
        new("replacement_value", ColumnType.Money, "What a new one would cost today; blank: not known. Asked only by what a lender sees.")
        { Range = NumberRanges.AmountFromZero, Unit = ColumnUnits.Currency });
    internal static readonly NumberColumn SoldForColumn = Declared.Number(
        new("sold_for", ColumnType.Money,
            "What it was sold for on the day in `retired`: money received, not to be entered in income again (W207); blank: not known. "
            + "Traded in: what was allowed for it; what it was traded for then stands in expenses at its whole price.")
        {
            Range = NumberRanges.AmountFromZero,
            Unit = ColumnUnits.Currency,
        }
    );
    internal static readonly ChoiceColumn<TaxKind> TaxKindColumn = Declared.Choice<TaxKind>(
        new("tax_kind", ColumnType.Choice, "What it is for tax; suggests a depreciation class for a tax preparer to confirm.")
    );
    internal static readonly TextColumn TaskColumn = Declared.Ref(
        "task",
        "tasks",
        "The task it is for; its minutes before and after it came are compared."
    );

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<AssetRow>();

    /// <summary>The asset's name.</summary>
    public string Asset => AssetColumn.Of(Home, Index);

    /// <summary>The pool it belongs to.</summary>
    public string Pool => PoolColumn.Of(Home, Index);

    /// <summary>The day it was put into service.</summary>
    public DateOnly InService => InServiceColumn.Of(Home, Index);

    /// <summary>What it cost.</summary>
    public decimal Cost => CostColumn.Of(Home, Index);

    /// <summary>Years it lasts.</summary>
    public decimal LifeYears => LifeYearsColumn.Of(Home, Index);

    /// <summary>What it fetches at the end; blank: 0.</summary>
    public decimal? Salvage => SalvageColumn.Maybe(Home, Index);

    /// <summary>The farm's part in percent; blank: 100.</summary>
    public decimal? FarmPercent => FarmPercentColumn.Maybe(Home, Index);

    /// <summary>The part of the cost a grant paid; blank: 0.</summary>
    public decimal? Grant => GrantColumn.Maybe(Home, Index);

    /// <summary>Yearly repairs in percent of cost, where the books don't carry them.</summary>
    public decimal? RepairsPercent => RepairsPercentColumn.Maybe(Home, Index);

    /// <summary>Yearly insurance and property tax in percent of cost, where the books don't carry them.</summary>
    public decimal? InsuranceTaxPercent => InsuranceTaxPercentColumn.Maybe(Home, Index);

    /// <summary>The day it was retired; blank: in service.</summary>
    public DateOnly? Retired => RetiredColumn.Maybe(Home, Index);

    /// <summary>What a new one would cost today; blank: not known.</summary>
    public decimal? ReplacementValue => ReplacementValueColumn.Maybe(Home, Index);

    /// <summary>What it was sold for on the day it was retired, money received; blank: not known.</summary>
    public decimal? SoldFor => SoldForColumn.Maybe(Home, Index);

    /// <summary>What it is for tax; blank: not said.</summary>
    public TaxKind? TaxKind => TaxKindColumn.Maybe(Home, Index);

    /// <summary>The task it is for; blank: none.</summary>
    public string? Task => TaskColumn.Maybe(Home, Index);

    /// <inheritdoc/>
    public static AssetRow At(RecordTable table, int index) => new(table, index);
}
