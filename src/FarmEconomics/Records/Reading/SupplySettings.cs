using FarmEconomics.Records.Schema;

namespace FarmEconomics.Records.Reading;

/// <summary>Settings of where the farm lies and of its own supply of electricity.</summary>
internal static class SupplySettings
{
    private const int Months = 12;

    private static readonly ColumnSchema LatitudeColumn = Column(-66m, 66m);
    private static readonly ColumnSchema AltitudeColumn = Column(-1_500m, 20_000m);
    private static readonly ColumnSchema EtColumn = Column(0m, 20m);
    private static readonly ColumnSchema YieldColumn = Column(0m, 24m);
    private static readonly ColumnSchema SizeColumn = Column(0m, 100_000m);
    private static readonly ColumnSchema PartColumn = Column(1m, 100m);
    private static readonly ColumnSchema CostColumn = Column(0m, 1_000_000m);

    internal static IReadOnlyList<SettingSpec> All { get; } =
    [
        new("latitude", "degrees from -66 to 66, south below 0", "none: the need of water is not worked out from temperatures",
            "How far north the farm lies, for the sun of each day.",
            (s, v) => Number(s, v, LatitudeColumn) is { } number ? s with { Site = s.Site with { Latitude = number } } : null),
        new("altitude", "a number from -1,500 to 20,000", "0",
            "How many feet above the sea the farm lies; asked only where wind and sun are recorded too.",
            (s, v) => Number(s, v, AltitudeColumn) is { } number ? s with { Site = s.Site with { Altitude = number } } : null),
        new("climate", "twelve numbers from 0 to 20 separated by `;`", "none: days without weather have no need of water",
            "Reference evapotranspiration, January to December, in inches of water a day, for days weather.csv doesn't tell.",
            (s, v) => Twelve(s, v, EtColumn) is { } months ? s with { Site = s.Site with { Climate = months } } : null),
        new("panel_kw", "a number of kW from 0 to 100,000", "none: what panels make is known from power_made.csv only",
            "Rated power of the solar panels.",
            (s, v) => Number(s, v, SizeColumn) is { } number ? s with { Supply = s.Supply with { PanelKw = number } } : null),
        new("panel_yield", "twelve numbers from 0 to 24 separated by `;`", "none: what panels make is known from power_made.csv only",
            "What one kW of panels makes a day, in kWh, January to December, for days power_made.csv doesn't tell.",
            (s, v) => Twelve(s, v, YieldColumn) is { } months ? s with { Supply = s.Supply with { PanelYield = months } } : null),
        new("battery_kwh", "a number of kWh from 0 to 100,000", "none: no balance of the battery", "What the battery holds when full.",
            (s, v) => Number(s, v, SizeColumn) is { } number ? s with { Supply = s.Supply with { BatteryKwh = number } } : null),
        new("battery_usable_percent", "a percentage of 1 to 100", "50", "The part of the battery that may be drawn.",
            (s, v) => Number(s, v, PartColumn) is { } number ? s with { Supply = s.Supply with { BatteryUsablePercent = number } } : null),
        new("battery_efficiency_percent", "a percentage of 1 to 100", "80", "What comes out of the battery of what goes in.",
            (s, v) => Number(s, v, PartColumn) is { } number ? s with { Supply = s.Supply with { BatteryEfficiencyPercent = number } }
                : null),
        new("generator_kw", "a number of kW from 0 to 100,000", "none: there is no generator", "Power of a generator.",
            (s, v) => Number(s, v, SizeColumn) is { } number ? s with { Supply = s.Supply with { GeneratorKw = number } } : null),
        new("generator_cost_per_kwh", "a number from 0 to 1,000,000", "none: a kWh that is missing has no price",
            "Fuel and wear of one kWh the generator makes; what a kWh more is worth where one is missing.",
            (s, v) => Number(s, v, CostColumn) is { } number ? s with { Supply = s.Supply with { GeneratorCostPerKwh = number } } : null),
    ];

    private static ColumnSchema Column(decimal low, decimal high) =>
        new("number", ColumnType.Number, "") { Range = new NumberRange(low, high) };

    private static decimal? Number(FarmSettings settings, string text, ColumnSchema column) =>
        FarmSettingsReader.Number(settings, text, column);

    private static MonthFigures? Twelve(FarmSettings settings, string text, ColumnSchema column)
    {
        decimal?[] months = [.. text.Split(';', StringSplitOptions.TrimEntries).Select(month => Number(settings, month, column))];
        return months.Length == Months && months.All(month => month is not null)
            ? new MonthFigures([.. months.Select(month => month!.Value)]) : null;
    }
}
