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
        _ => Number(settings, name).Value is { } number ? settings.Notation.Text($"{number:0.####}") : "none",
    };

    internal static Result Number(FarmSettings settings, string name) => name switch
    {
        "owner_wage" => Known(settings.OwnerWage, "no owner_wage among the settings"),
        "payroll_burden_percent" => Result.Known(settings.PayrollBurdenPercent),
        "interest_percent" => Known(settings.InterestPercent, "no interest_percent among the settings"),
        "standard_bed_width_in" or "standard_bed_width_cm" => Result.Known(settings.StandardBedWidthIn),
        _ => Result.NotAvailable("the setting is a word"),
    };

    private static Result Known(decimal? value, string why) => value is { } known ? Result.Known(known) : Result.NotAvailable(why);
}
