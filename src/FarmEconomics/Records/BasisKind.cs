namespace FarmEconomics.Records;

/// <summary>A way a pool can be shared out: its names and the weights it gives the plantings of a crop year.</summary>
/// <remarks>
/// One type declares it; a line in the list below makes it known. Reading, messages, the data package, pages and the split follow.
/// </remarks>
public abstract class BasisKind
{
    private protected BasisKind(string name, string unit, string counts)
    {
        Name = name;
        Unit = unit;
        Counts = counts;
    }

    /// <summary>Bed-feet x days in bed.</summary>
    public static BasisKind BedFootDays { get; } = new BedFootDaysBasis();

    /// <summary>Trays x days from sowing to bed.</summary>
    public static BasisKind TrayDays { get; } = new TrayDaysBasis();

    /// <summary>Bed-feet planted.</summary>
    public static BasisKind BedFeet { get; } = new BedFeetBasis();

    /// <summary>Direct hours, all stages or one.</summary>
    public static BasisKind LaborHours { get; } = new LaborHoursBasis();

    /// <summary>Days on which something was picked.</summary>
    public static BasisKind HarvestDays { get; } = new HarvestDaysBasis();

    /// <summary>Crates picked.</summary>
    public static BasisKind QuantityCrates { get; } = new QuantityCratesBasis();

    /// <summary>Crates x days held in the store.</summary>
    public static BasisKind CrateDays { get; } = new CrateDaysBasis();

    /// <summary>Bed-foot-days x water need.</summary>
    public static BasisKind Water { get; } = new WaterBasis();

    /// <summary>Sales value.</summary>
    public static BasisKind SalesValue { get; } = new SalesValueBasis();

    /// <summary>Quantities x the rate table's weight.</summary>
    public static BasisKind InputRates { get; } = new InputRatesBasis();

    /// <summary>The use and loads tables only.</summary>
    public static BasisKind Measured { get; } = new MeasuredBasis();

    /// <summary>All kinds, in documented order.</summary>
    public static IReadOnlyList<BasisKind> All { get; } =
        [BedFootDays, TrayDays, BedFeet, LaborHours, HarvestDays, QuantityCrates, CrateDays, Water, SalesValue, InputRates, Measured];

    /// <summary>The names a pools table may use, in documented order.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. All.Select(kind => kind.Name)];

    /// <summary>The name a pools table gives it.</summary>
    public string Name { get; }

    /// <summary>The unit its weights are in.</summary>
    public string Unit { get; }

    /// <summary>What it counts, as somebody would say it.</summary>
    public string Counts { get; }

    /// <summary>Whether <c>:STAGE</c> may follow its name.</summary>
    public virtual bool TakesStage => false;

    /// <inheritdoc/>
    public override string ToString() => Name;

    /// <summary>Gives each planting of the crop year its weight.</summary>
    internal abstract void Weigh(IBasisWeights weights, Basis basis);
}
