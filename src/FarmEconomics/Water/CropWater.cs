using FarmEconomics.Records;

namespace FarmEconomics.Water;

/// <summary>Where a figure of a crop's water comes from.</summary>
public enum WaterFigure
{
    /// <summary>A column of the crops table.</summary>
    Given,

    /// <summary>A published table, for that crop.</summary>
    Published,

    /// <summary>A published table, for a crop of the same family: FAO-56 allows that for Ky (p. 177).</summary>
    Similar,

    /// <summary>No table lists the crop: small vegetables stand in, and Ky 1, as FAO-56 allows (p. 177).</summary>
    NotListed,
}

/// <summary>How a crop uses water, with its sources.</summary>
/// <param name="Coefficients">Kc of the three levels.</param>
/// <param name="Stages">Stage lengths; only their parts of the whole count, over the sowing's own dates.</param>
/// <param name="RootDepthM">Depth of the roots once grown, m.</param>
/// <param name="Readily">Part of the available water taken up without stress, 0 to 1.</param>
/// <param name="Response">Ky of the whole season.</param>
public sealed record CropWater(CropCoefficients Coefficients, StageDays Stages, double RootDepthM, double Readily, double Response)
{
    /// <summary>Depth roots reach on the day of planting, m (FAO-56, chapter 8: 0.15 to 0.20).</summary>
    public const double FirstRootDepthM = 0.20;

    /// <summary>The crop of the published table it was taken for; null: none lists it.</summary>
    public string? ListedAs { get; init; }

    /// <summary>Where Kc comes from.</summary>
    public WaterFigure CoefficientsFrom { get; init; }

    /// <summary>Where Ky comes from.</summary>
    public WaterFigure ResponseFrom { get; init; }

    /// <summary>Ky of the stages that have one of their own: only where the crops table says so, none is published here.</summary>
    public StageResponse ByStage { get; init; }

    /// <summary>True where how it answers to drought is taken from no table and from no column: for some of its days at least.</summary>
    public bool IsResponseAssumed => ResponseFrom == WaterFigure.NotListed && !ByStage.IsWhole;

    /// <summary>How a crop of the records uses water: its own columns, else the published table.</summary>
    /// <param name="crop">The crop.</param>
    /// <returns>Its figures.</returns>
    public static CropWater Of(Crop crop)
    {
        ArgumentNullException.ThrowIfNull(crop);
        CropWater listed = CropWaterTable.Find(crop.Name);
        CropRow row = crop.Row;
        CropCoefficients table = listed.Coefficients;
        bool given = row.KcIni is not null || row.KcMid is not null || row.KcEnd is not null;
        return listed with
        {
            Coefficients = new CropCoefficients(
                (double?)row.KcIni ?? table.Initial, (double?)row.KcMid ?? table.Mid, (double?)row.KcEnd ?? table.End),
            CoefficientsFrom = given ? WaterFigure.Given : listed.CoefficientsFrom,
            Response = (double?)row.Ky ?? listed.Response,
            ResponseFrom = row.Ky is null ? listed.ResponseFrom : WaterFigure.Given,
            ByStage = new StageResponse((double?)row.KyIni, (double?)row.KyDev, (double?)row.KyMid, (double?)row.KyLate),
        };
    }

    /// <summary>What the soil holds for the crop's roots on a day.</summary>
    /// <param name="curve">The crop's curve over its dates.</param>
    /// <param name="day">The day, 1 = the day of planting.</param>
    /// <param name="soilMmPerM">Available water of the soil, mm per m of depth.</param>
    /// <returns>What it holds.</returns>
    public SoilWater Soil(CropCurve curve, double day, double soilMmPerM)
    {
        double first = Math.Min(FirstRootDepthM, RootDepthM);
        double depth = first + ((RootDepthM - first) * curve.RootsGrown(day));
        return new SoilWater(depth * soilMmPerM, Readily);
    }
}
