using FarmEconomics.Records;
using FarmEconomics.Tracing;

namespace FarmEconomics.Water;

/// <summary>One sowing's part in one bed, and its need of water day by day: the balance is kept for each by itself.</summary>
public sealed class SowingWater
{
    private readonly double[] need;
    private readonly double[] total;
    private readonly double[] rain;
    private readonly bool[] known;

    internal SowingWater(BedStay stay, WaterBlock block, SowingSpan span, FarmWater farm)
    {
        Stay = stay;
        Block = block;
        Span = span;
        Crop = CropWater.Of(stay.Planting.Crop);
        Covered = !string.IsNullOrWhiteSpace(stay.Bed.Row.Structure);
        AreaM2 = WaterBlock.BedArea(stay.Bed.Row, stay.Row.BedFeet, farm.Records.Settings);
        int days = Math.Max(1, span.End.DayNumber - span.From.DayNumber);
        (need, total, rain, known) = (new double[days], new double[days], new double[days], new bool[days]);
        CropCurve curve = new(Crop.Coefficients, Crop.Stages.Over(days));
        bool grown = stay.Planting.Crop.Perennial;
        for (int i = 0; i < days; i++)
        {
            DateOnly day = span.From.AddDays(i);
            WeatherDay weather = farm.WeatherOn(day);
            known[i] = weather.IsKnown;
            need[i] = curve.On(i + 1) * weather.Et0;
            total[i] = Crop.Soil(curve, grown ? days : i + 1, block.SoilMmPerM).Total;
            rain[i] = Covered ? 0 : weather.Rain;
        }

        PotentialMm = PotentialOf(need.Sum(), days, known.Count(one => one));
        Loss = new SowingLoss(Crop, curve.Stages, (need, known), PotentialMm);
    }

    /// <summary>The planting's stay in the bed.</summary>
    public BedStay Stay { get; }

    /// <summary>The planting.</summary>
    public Planting Planting => Stay.Planting;

    /// <summary>The block it stands in.</summary>
    public WaterBlock Block { get; }

    /// <summary>The days it grows.</summary>
    public SowingSpan Span { get; }

    /// <summary>How the crop uses water.</summary>
    public CropWater Crop { get; }

    /// <summary>True under a roof: no rain reaches it.</summary>
    public bool Covered { get; }

    /// <summary>Its part of the bed, m².</summary>
    public double AreaM2 { get; }

    /// <summary>
    /// What it would take up from first to last day with water enough, mm; days without weather as the mean of the others.
    /// </summary>
    public double PotentialMm { get; }

    /// <summary>What its yield loses by what it misses.</summary>
    internal SowingLoss Loss { get; }

    /// <summary>What days need in all, mm, those without weather as the mean of the others.</summary>
    /// <param name="need">What those known need.</param>
    /// <param name="days">How many days.</param>
    /// <param name="known">How many of them are known.</param>
    internal static double PotentialOf(double need, int days, int known) => known > 0 ? need * days / known : 0;

    /// <summary>True on a day it grows on and whose weather is known.</summary>
    /// <param name="day">The day.</param>
    /// <returns>Whether a balance can be kept that day.</returns>
    public bool IsKnown(DateOnly day) => Span.Holds(day) && known[day.DayNumber - Span.From.DayNumber];

    /// <summary>What it needs on a day with water enough, mm; 0 on a day it doesn't grow or that isn't known.</summary>
    /// <param name="day">The day.</param>
    /// <returns>mm.</returns>
    public double Need(DateOnly day) => Span.Holds(day) ? need[day.DayNumber - Span.From.DayNumber] : 0;

    /// <summary>Rain that reaches it on a day, mm.</summary>
    /// <param name="day">The day.</param>
    /// <returns>mm.</returns>
    public double Rain(DateOnly day) => Span.Holds(day) ? rain[day.DayNumber - Span.From.DayNumber] : 0;

    /// <summary>What the soil holds for its roots on a day; only asked while it grows.</summary>
    /// <param name="day">The day.</param>
    /// <returns>What it holds.</returns>
    public SoilWater Soil(DateOnly day) => new(total[day.DayNumber - Span.From.DayNumber], Crop.Readily);

    /// <summary>
    /// The part of its yield lost over days ahead, with so much water on each of the first of them: the days of <see cref="Next"/> one
    /// after the other, without making each, since a season asks a million times.
    /// </summary>
    internal double LostAhead(DateOnly from, int days, double depletion, (double Dose, int Count) water)
    {
        int first = from.DayNumber - Span.From.DayNumber;
        int end = Math.Min(first + days, need.Length);
        Span<double> missed = stackalloc double[SowingLoss.MostPeriods];
        for (int i = first; i < end; i++)
        {
            double put = rain[i] + (i - first < water.Count ? water.Dose : 0);
            double used = Math.Min(RootZone.Stress(depletion, total[i], Crop.Readily) * need[i], Math.Max(0, total[i] - depletion + put));
            missed[Loss.PeriodOf(i)] += need[i] - used;
            depletion = Math.Max(0, depletion + used - put);
        }

        return Loss.Of(missed);
    }

    /// <summary>A day of its balance.</summary>
    /// <param name="day">A day it grows on.</param>
    /// <param name="before">Depletion the evening before, mm.</param>
    /// <param name="water">Watering that reaches the roots, mm.</param>
    /// <returns>The day.</returns>
    public RootZoneDay Next(DateOnly day, double before, double water) => RootZone.Next(before, Soil(day), Need(day), Rain(day), water);
}

/// <summary>The days a sowing grows: for a perennial one crop year, else from the bed to the day it is free again.</summary>
/// <param name="From">The first day.</param>
/// <param name="End">The first day it is gone.</param>
/// <param name="CropYear">The crop year it belongs to.</param>
public readonly record struct SowingSpan(DateOnly From, DateOnly End, int CropYear)
{
    /// <summary>True on a day it grows.</summary>
    /// <param name="day">The day.</param>
    /// <returns>Whether it grows then.</returns>
    public bool Holds(DateOnly day) => From <= day && day < End;
}
