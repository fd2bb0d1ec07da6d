using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>weather</c>.</summary>
    public Rows<WeatherRow> Weather => Of<WeatherRow>();
}

/// <summary>A row of <c>weather</c>: the weather of one day.</summary>
public readonly record struct WeatherRow(RecordTable Home, int Index) : IRecordRow<WeatherRow>
{
    private static readonly TableDeclaration Declared = new("weather", 341, "the weather of one day")
    {
        Without = "Without weather.csv nothing tells how dry it was, so no crop's need of water is worked out.",
        Day = "date",
        Checks = () => WaterChecks.OfWeather,
    };

    internal static readonly DayColumn DateColumn = Declared.Date(new("date", ColumnType.Date, "The day.") { Required = true });
    internal static readonly NumberColumn RainInColumn = Declared.Number(
        new("rain_in", ColumnType.Number, "Rain of the day; blank: none fell.")
        { Range = new NumberRange(0m, 2_000m), Unit = "inches", MetricName = "rain_mm", MetricUnit = "mm" });
    internal static readonly NumberColumn TminFColumn = Declared.Number(
        new("tmin_f", ColumnType.Number, "Lowest temperature.")
        { Range = new NumberRange(-120m, 150m), Unit = "degrees F", MetricName = "tmin_c", MetricUnit = "degrees C" });
    internal static readonly NumberColumn TmaxFColumn = Declared.Number(
        new("tmax_f", ColumnType.Number, "Highest temperature.")
        { Range = new NumberRange(-120m, 150m), Unit = "degrees F", MetricName = "tmax_c", MetricUnit = "degrees C" });
    internal static readonly NumberColumn Et0InColumn = Declared.Number(
        new("et0_in", ColumnType.Number, "Reference evapotranspiration of grass, where a station tells it; not that of alfalfa.")
        { Range = new NumberRange(0m, 50m), Unit = "inches", MetricName = "et0_mm", MetricUnit = "mm" });
    internal static readonly NumberColumn SolarMjColumn = Declared.Number(
        new("solar_mj", ColumnType.Number, "Solar radiation; with wind and dew point it makes the need more exact.")
        { Range = new NumberRange(0m, 60m), Unit = "MJ per m2" });
    internal static readonly NumberColumn WindMphColumn = Declared.Number(
        new("wind_mph", ColumnType.Number, "Mean wind two meters above the ground.")
        { Range = new NumberRange(0m, 150m), Unit = "mph", MetricName = "wind_ms", MetricUnit = "m/s" });
    internal static readonly NumberColumn DewpointFColumn = Declared.Number(
        new("dewpoint_f", ColumnType.Number, "Mean dew point.")
        { Range = new NumberRange(-120m, 150m), Unit = "degrees F", MetricName = "dewpoint_c", MetricUnit = "degrees C" });

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<WeatherRow>();

    /// <summary>The day.</summary>
    public DateOnly Date => DateColumn.Of(Home, Index);

    /// <summary>Rain in inches; in mm on a farm in meters; blank: none fell.</summary>
    public decimal? RainIn => RainInColumn.Maybe(Home, Index);

    /// <summary>Lowest temperature in °F; in °C on a farm in meters.</summary>
    public decimal? TminF => TminFColumn.Maybe(Home, Index);

    /// <summary>Highest temperature in °F; in °C on a farm in meters.</summary>
    public decimal? TmaxF => TmaxFColumn.Maybe(Home, Index);

    /// <summary>Reference evapotranspiration of grass, in inches; in mm on a farm in meters.</summary>
    public decimal? Et0In => Et0InColumn.Maybe(Home, Index);

    /// <summary>Solar radiation, MJ per m².</summary>
    public decimal? SolarMj => SolarMjColumn.Maybe(Home, Index);

    /// <summary>Mean wind at two meters in miles an hour; in m/s on a farm in meters.</summary>
    public decimal? WindMph => WindMphColumn.Maybe(Home, Index);

    /// <summary>Mean dew point in °F; in °C on a farm in meters.</summary>
    public decimal? DewpointF => DewpointFColumn.Maybe(Home, Index);

    /// <inheritdoc/>
    public static WeatherRow At(RecordTable table, int index) => new(table, index);
}
