namespace FarmEconomics.DemoFarm;

/// <summary>A line of the farm's books.</summary>
internal sealed record BookLine(
    DateOnly Date,
    decimal Amount,
    string Category,
    string? Payee = null,
    string? Crop = null,
    string? Planting = null,
    string? Channel = null,
    string? Pool = null,
    decimal? FarmPercent = null,
    int? CropYear = null,
    string? Note = null);
