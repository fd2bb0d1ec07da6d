namespace FarmEconomics.DemoFarm;

/// <summary>A planting as it went: where it stood, from when to when, and when it was picked.</summary>
internal sealed class Planting
{
    public required string Name { get; init; }

    public required CropSpec Crop { get; init; }

    public required int CropYear { get; init; }

    public required DateOnly InBed { get; set; }

    public required DateOnly? Sown { get; init; }

    public required DateOnly FirstPick { get; init; }

    public required DateOnly LastPick { get; init; }

    public required decimal Feet { get; init; }

    public decimal? Trays { get; set; }

    public string Method { get; init; } = "";

    /// <summary>The day the bed is free; blank in the records where the grower left it blank.</summary>
    public DateOnly OutOfBed { get; set; }

    public bool OutLeftBlank { get; set; }

    /// <summary>Set where the crop year can't be read off the first harvest.</summary>
    public bool NamesCropYear { get; set; }

    /// <summary>The beds it stands in, with the feet in each.</summary>
    public List<(Bed Bed, decimal Feet)> Places { get; } = [];
}
