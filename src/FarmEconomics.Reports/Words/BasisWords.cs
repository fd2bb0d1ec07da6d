using FarmEconomics.Records;

namespace FarmEconomics.Reports.Words;

/// <summary>What a shared cost is divided by, as somebody would say it; tables that name the basis of the records keep its name.</summary>
internal static class BasisWords
{
    /// <summary>What a basis counts.</summary>
    internal static string Of(Basis basis) => basis.Kind switch
    {
        BasisKind.BedFootDays => "length of bed and days in it",
        BasisKind.TrayDays => "trays and days",
        BasisKind.BedFeet => "length of bed",
        BasisKind.LaborHours => basis.Stage is { } stage ? $"hours of {Plots.SeasonPlots.StageName(stage).ToLowerInvariant()}" : "hours",
        BasisKind.QuantityCrates => "crates",
        BasisKind.CrateDays => "crates and days held",
        BasisKind.Water => "water",
        BasisKind.SalesValue => "sales",
        BasisKind.InputRates => "what each planting takes",
        BasisKind.Measured => "measured use",
        _ => basis.ToString(),
    };
}
