namespace FarmEconomics.Records.Checks;

/// <summary>What the checks need to know of a crop.</summary>
internal sealed class CropFacts(CropRow row)
{
    public CropRow Row { get; } = row;

    /// <summary>Its own unit and those with a conversion.</summary>
    public HashSet<string> Units { get; } = new(StringComparer.OrdinalIgnoreCase) { row.Unit.Trim() };

    /// <summary>The same, by the number that stands for all spellings of a name.</summary>
    public List<int> UnitNames { get; } = [];

    /// <summary>The first day any planting of it was in a bed; null: never.</summary>
    public DateOnly? FirstInBed { get; set; }

    /// <summary>True when a date of one of its plantings is in error, so that nothing is concluded from them.</summary>
    public bool DatesInDoubt { get; set; }
}

/// <summary>What the checks need to know of a planting: all its rows together.</summary>
internal sealed class PlantingFacts(PlantingRow first)
{
    public PlantingRow First { get; } = first;

    public DateOnly FirstInBed { get; set; } = first.InBed;

    public int? CropYear { get; set; } = first.CropYear;

    public DateOnly? LastHarvest { get; set; }

    /// <summary>True when one of its dates is in error, so that nothing is concluded from them.</summary>
    public bool DatesInDoubt { get; set; }
}
