using FarmEconomics.Records;

namespace FarmEconomics.Water;

/// <summary>A block of beds that is watered together, in metric units.</summary>
public sealed class WaterBlock
{
    /// <summary>
    /// The part of the water that reaches the roots where blocks.csv leaves it blank: published sprinklers range from 60 to 85%.
    /// </summary>
    public const double UsualEfficiency = 0.75;

    internal WaterBlock(BlockRow row, int index, IReadOnlyList<BedRow> beds, FarmSettings settings)
    {
        Row = row;
        Index = index;
        Name = row.Block.Trim();
        Beds = beds;
        bool metric = settings.LengthUnit == LengthUnit.M;
        double liters = metric ? 1 : WaterMath.LitersPerGallon;
        SoilMmPerM = (double)row.SoilWaterInFt * (metric ? 1 : WaterMath.MmPerInch / WaterMath.MetersPerFoot);
        Efficiency = row.EfficiencyPercent is { } percent ? (double)percent / 100 : UsualEfficiency;
        SprinklerLiters = (double?)row.SprinklerGph * liters;
        SetLiters = (double?)row.SetGallons * liters;
        AreaM2 = beds.Sum(bed => BedArea(bed, bed.LengthFt, settings));
    }

    /// <summary>The row it came from.</summary>
    public BlockRow Row { get; }

    /// <summary>Its place in the table.</summary>
    public int Index { get; }

    /// <summary>Its name.</summary>
    public string Name { get; }

    /// <summary>The beds that lie in it.</summary>
    public IReadOnlyList<BedRow> Beds { get; }

    /// <summary>Area of its beds, paths left out, m².</summary>
    public double AreaM2 { get; }

    /// <summary>Available water of the soil, mm per m of depth.</summary>
    public double SoilMmPerM { get; }

    /// <summary>The part of the water put on that reaches the roots, above 0 to 1.</summary>
    public double Efficiency { get; }

    /// <summary>Liters an hour of one sprinkler; null: not known.</summary>
    public double? SprinklerLiters { get; }

    /// <summary>Liters of one whole set; null: the block may be watered in part.</summary>
    public double? SetLiters { get; }

    /// <summary>Liters to put on the whole block for a mm at the roots.</summary>
    public double LitersPerMm => AreaM2 / Efficiency;

    internal static double BedArea(BedRow bed, decimal length, FarmSettings settings)
    {
        bool metric = settings.LengthUnit == LengthUnit.M;
        double width = (double)(bed.WidthIn ?? settings.StandardBedWidthIn) * (metric ? 0.01 : WaterMath.MmPerInch / 1000);
        return (double)length * (metric ? 1 : WaterMath.MetersPerFoot) * width;
    }

    /// <summary>The block's name.</summary>
    public override string ToString() => Name;
}
