using FarmEconomics.Records;
using FarmEconomics.Records.Schema;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Scenarios;

/// <summary>The value of a setting as the grower would write it.</summary>
internal static class SettingWords
{
    internal static string Of(FarmSettings settings, string name) => name switch
    {
        "closing_stock" => Words.Of(settings.ClosingStock),
        "ownership_method" => Words.Of(settings.OwnershipMethod),
        "idle_capacity" => Words.Of(settings.IdleCapacity),
        "unpaid_hours" => Words.Of(settings.UnpaidHours),
        "hired_hours_can_be_cut" => settings.HiredHoursCanBeCut ? "yes" : "no",
        _ => Number(settings, name).Value is { } number ? settings.Notation.Text($"{number:0.##########}") : "none",
    };

    internal static Result Number(FarmSettings settings, string name) => name switch
    {
        "owner_wage" => Known(settings.OwnerWage, name),
        "payroll_burden_percent" => Result.Known(settings.PayrollBurdenPercent),
        "interest_percent" => Known(settings.InterestPercent, name),
        "land_value" => Known(settings.LandValue, name),
        "land_rent" => Known(settings.LandRent, name),
        "land_area" => Known(settings.LandArea, name),
        "standard_bed_width_in" or "standard_bed_width_cm" => Result.Known(settings.StandardBedWidthIn),
        "buy_in_percent" => Result.Known(settings.BuyInPercent),
        "price_change_percent" => Known(settings.PriceChangePercent, name),
        "latitude" => Known(settings.Site.Latitude, name),
        "altitude" => Result.Known(settings.Site.Altitude),
        "panel_kw" => Known(settings.Supply.PanelKw, name),
        "battery_kwh" => Known(settings.Supply.BatteryKwh, name),
        "battery_usable_percent" => Result.Known(settings.Supply.BatteryUsablePercent),
        "battery_efficiency_percent" => Result.Known(settings.Supply.BatteryEfficiencyPercent),
        "generator_kw" => Known(settings.Supply.GeneratorKw, name),
        "generator_cost_per_kwh" => Known(settings.Supply.GeneratorCostPerKwh, name),
        _ => Result.NotAvailable("the setting is a word"),
    };

    private static Result Known(decimal? value, string name) =>
        value is { } known ? Result.Known(known) : Result.NotAvailable($"no {name} among the settings");
}
