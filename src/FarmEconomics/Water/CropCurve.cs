namespace FarmEconomics.Water;

/// <summary>
/// A crop's coefficient day by day over the growing period: level, rising in a straight line, level, and in a straight line to the end
/// (FAO-56, Eq. 66; the day of planting is day 1). Grass reference only: coefficients for the tall reference don't fit.
/// </summary>
/// <param name="Coefficients">The three coefficients.</param>
/// <param name="Stages">Lengths of the four stages.</param>
public readonly record struct CropCurve(CropCoefficients Coefficients, StageDays Stages)
{
    /// <summary>The coefficient of a day.</summary>
    /// <param name="day">The day, 1 = the day of planting.</param>
    /// <returns>Crop need over reference evapotranspiration; after the last day that of the last.</returns>
    public double On(double day)
    {
        (double ini, double mid, double end) = Coefficients;
        double after = day - Stages.Initial;
        double late = after - (Stages.Development + Stages.Mid);
        return Stages.On(day) switch
        {
            GrowthStage.Initial => ini,
            GrowthStage.Development => ini + (after / Stages.Development * (mid - ini)),
            GrowthStage.Mid => mid,
            _ => late < Stages.Late ? mid + (late / Stages.Late * (end - mid)) : end,
        };
    }

    /// <summary>How far roots have grown by a day: 0 at planting, 1 from the end of the second stage on.</summary>
    /// <param name="day">The day, 1 = the day of planting.</param>
    /// <returns>0 to 1.</returns>
    public double RootsGrown(double day) => Math.Clamp((day - 1) / Math.Max(1, Stages.Initial + Stages.Development - 1), 0, 1);
}

/// <summary>Crop need over reference evapotranspiration of grass.</summary>
/// <param name="Initial">While the soil is mostly bare.</param>
/// <param name="Mid">While the crop covers the ground.</param>
/// <param name="End">On the last day.</param>
public readonly record struct CropCoefficients(double Initial, double Mid, double End)
{
    /// <summary>
    /// A coefficient of mid-season, or of the end where it is 0.45 or more, moved for wind and dry air (FAO-56, Eq. 62 and 65).
    /// </summary>
    /// <param name="table">The coefficient of the table.</param>
    /// <param name="heightM">Height of the crop, m.</param>
    /// <param name="windAt2M">Mean wind of the stage at two meters, m/s.</param>
    /// <param name="rhMinPercent">Mean lowest relative humidity of the stage, percent.</param>
    /// <returns>The coefficient there.</returns>
    public static double ForClimate(double table, double heightM, double windAt2M, double rhMinPercent) => table < 0.45 ? table
        : table + (((0.04 * (windAt2M - 2)) - (0.004 * (rhMinPercent - 45))) * Math.Pow(heightM / 3, 0.3));
}

/// <summary>A stage of growth (FAO-56, chapter 6).</summary>
public enum GrowthStage
{
    /// <summary>From planting until about a tenth of the ground is covered.</summary>
    Initial,

    /// <summary>Until all of it is.</summary>
    Development,

    /// <summary>Until the crop begins to ripen.</summary>
    Mid,

    /// <summary>To the last day.</summary>
    Late,
}

/// <summary>Lengths of the four stages of growth, in days.</summary>
/// <param name="Initial">From planting until about a tenth of the ground is covered.</param>
/// <param name="Development">Until all of it is.</param>
/// <param name="Mid">Until the crop begins to ripen.</param>
/// <param name="Late">To the last day.</param>
public readonly record struct StageDays(double Initial, double Development, double Mid, double Late)
{
    /// <summary>All four.</summary>
    public double Total => Initial + Development + Mid + Late;

    /// <summary>The stage of a day.</summary>
    /// <param name="day">The day, 1 = the day of planting.</param>
    /// <returns>The stage; after the last day the last.</returns>
    public GrowthStage On(double day)
    {
        double after = day - Initial;
        return after <= 0 ? GrowthStage.Initial
            : after < Development ? GrowthStage.Development
            : after - (Development + Mid) <= 0 ? GrowthStage.Mid : GrowthStage.Late;
    }

    /// <summary>The same stages over another length of time, each by the same part.</summary>
    /// <param name="days">Days in all, above 0.</param>
    /// <returns>The stages.</returns>
    public StageDays Over(double days) =>
        new(Initial * days / Total, Development * days / Total, Mid * days / Total, Late * days / Total);
}
