using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Short;
using FarmEconomics.Records;
using FarmEconomics.Water;
using FarmEconomics.Water.Power;

namespace FarmEconomics.Planning;

/// <summary>
/// Water and power of the year planned, as if its weather were the season's again: need from each crop's curve over the sowing's own weeks,
/// limits from the limits table, panels and loads of the season.
/// </summary>
internal sealed class PlanWaterFacts
{
    private const double PerUnit = 1000.0;

    private readonly Lazy<SowingWorth> worths;
    private readonly SeasonReview season;
    private readonly WrittenLimits limits;
    private readonly PlanModel plan;
    private readonly FarmWater farm;
    private readonly FarmSettings settings;
    private readonly DateOnly start;
    private readonly (double Efficiency, double SoilMmPerM)?[] covers;
    private readonly bool[] roofed;
    private readonly double liters;
    private readonly double areaPerFoot;

    private PlanWaterFacts(SeasonCosts costs, WrittenLimits limits, PlanModel plan)
    {
        (this.limits, this.plan) = (limits, plan);
        worths = new(() => SowingWorth.Of(costs));
        season = costs.Season;
        settings = season.Settings;
        farm = FarmWater.Of(season.Trace);
        start = settings.StartOf(season.CropYear);
        liters = PerUnit * WaterAndPower.LitersIn(settings);
        bool metric = settings.LengthUnit == LengthUnit.M;
        areaPerFoot =
            (double)settings.StandardBedWidthIn * (metric ? 0.01 : WaterMath.MmPerInch / 1000.0) * (metric ? 1.0 : WaterMath.MetersPerFoot);
        covers = [.. plan.Covers.Select(cover => BlocksUnder(cover.Name))];
        roofed =
        [
            .. plan.Covers.Select(cover =>
                season.Records.Tables.Beds.Exists(bed => !string.IsNullOrWhiteSpace(bed.Structure) && IsUnder(bed, cover.Name))
            ),
        ];
    }

    /// <summary>A plan's water; null where nothing limits it or its need isn't known.</summary>
    internal static PlanWater? Of(SeasonCosts costs, WrittenLimits limits, PlanModel plan)
    {
        PlanWaterFacts facts = new(costs, limits, plan);
        return facts.farm.WhyUnknown is null && facts.farm.Sowings.Any(sowing => sowing.Span.CropYear == facts.season.CropYear)
            ? facts.Make()
            : null;
    }

    private PlanWater? Make()
    {
        bool[] known = [.. Enumerable.Range(0, PlanModel.Weeks).Select(week => Days(week).All(day => farm.Weather.On(day).IsKnown))];
        double[] limit = [.. known.Select((one, week) => one ? WaterIn(week) : double.PositiveInfinity)];
        SowingNeed[] needs = [.. plan.Sowings.Select(sowing => NeedOf(sowing, known))];
        PlanPower? power = PowerFor(known, needs);
        return Array.Exists(limit, double.IsFinite) || power is not null
            ? new PlanWater
            {
                Limit = limit,
                Need = [.. needs.Select(need => need.Weeks)],
                Soil = [.. needs.Select(need => need.Soil)],
                LostPerUnit =
                [
                    .. plan.Crops.Select((crop, place) => LossOf(crop.Name, needs.Where((_, i) => plan.Sowings[i].Crop == place))),
                ],
                Power = power,
            }
            : null;
    }

    private IEnumerable<DateOnly> Days(int week) => Enumerable.Range(7 * week, 7).Select(start.AddDays);

    private double WaterIn(int week)
    {
        decimal?[] days = [.. Days(week).Select(day => limits.On(ScarceKind.Water, null, day.AddYears(1)))];
        return Array.TrueForAll(days, day => day is not null) ? (double)days.Sum()!.Value / PerUnit : double.PositiveInfinity;
    }

    private static bool IsUnder(BedRow bed, string cover) =>
        string.Equals(PlanFacts.CoverOf(bed), cover, StringComparison.OrdinalIgnoreCase);

    private (double, double)? BlocksUnder(string cover)
    {
        List<(WaterBlock Block, double Area)> under =
        [
            .. farm
                .Blocks.Select(block =>
                    (block, block.Beds.Where(bed => IsUnder(bed, cover)).Sum(bed => WaterBlock.BedArea(bed, bed.LengthFt, settings)))
                )
                .Where(one => one.Item2 > 0.0),
        ];
        double area = under.Sum(one => one.Area);
        return area > 0.0
            ? (under.Sum(one => one.Block.Efficiency * one.Area) / area, under.Sum(one => one.Block.SoilMmPerM * one.Area) / area)
            : null;
    }

    private SowingNeed NeedOf(PlanSowing sowing, bool[] known)
    {
        double[] weeks = new double[PlanModel.Weeks];
        if (covers[sowing.Cover] is not { } soil)
        {
            return new SowingNeed(weeks, 0.0, 0.0);
        }

        Crop crop = season.Records.Crop(plan.Crops[sowing.Crop].Name);
        CropWater water = CropWater.Of(crop);
        int days = crop.Perennial ? 7 * PlanModel.Weeks : 7 * sowing.WeeksInBed;
        int first = crop.Perennial ? 0 : 7 * sowing.Week;
        CropCurve curve = new(water.Coefficients, water.Stages.Over(days));
        double unitsPerMm = areaPerFoot / soil.Efficiency / liters;
        (double potential, int told) = (0.0, 0);
        for (int week = 0; week < PlanModel.Weeks; week++)
        {
            double mm = 0.0;
            for (int day = Math.Max(7 * week, first); known[week] && day < Math.Min(7 * (week + 1), first + days); day++)
            {
                WeatherDay weather = farm.Weather.On(start.AddDays(day));
                double need = curve.On(day - first + 1) * weather.Et0;
                (potential, told) = (potential + need, told + 1);
                mm += need - (roofed[sowing.Cover] ? 0.0 : weather.Rain);
            }

            weeks[week] = Math.Max(0.0, mm) * unitsPerMm;
        }

        SoilWater holds = water.Soil(curve, crop.Perennial ? days : days / 2.0, soil.SoilMmPerM);
        return new SowingNeed(weeks, holds.ReadilyMm * unitsPerMm, told > 0 ? potential * days / told * unitsPerMm : 0.0);
    }

    /// <summary>
    /// What a crop loses for a unit it misses: Ky x what its whole yield adds, over what it takes up, both of a bed-foot.
    /// </summary>
    private double LossOf(string name, IEnumerable<SowingNeed> needs)
    {
        Crop crop = season.Records.Crop(name);
        double potential = needs.Select(need => need.Potential).Where(one => one > 0.0).DefaultIfEmpty(0.0).Average();
        return potential > 0.0 && worths.Value.PerBedFoot(crop) is > 0.0 and double worth
            ? CropWater.Of(crop).Response * worth / potential
            : 0.0;
    }

    /// <summary>
    /// The pump's power: what the season's loads for water took, over what was put on (without a log, what this year's lengths need); there
    /// is what panels made that week, or a limit of kWh, less all other loads of their pool.
    /// </summary>
    private PlanPower? PowerFor(bool[] known, SowingNeed[] needs)
    {
        PowerSeason power = PowerSeason.Of(season.Records, season.CropYear);
        decimal? limit = limits.PoolsOf(ScarceKind.Power).Any()
            ? limits.On(ScarceKind.Power, limits.PoolsOf(ScarceKind.Power).First(), start.AddYears(1))
            : null;
        PowerLoad[] pumps = [.. power.Loads.Where(load => load.Purpose == LoadPurpose.Water)];
        double pumped = farm.Log.IsThere ? Enumerable.Range(0, 7 * PlanModel.Weeks).Sum(day => farm.Log.Liters(start.AddDays(day))) / liters
            : needs.Select((need, i) => need.Weeks.Sum() * plan.Sowings[i].Today).Sum();
        double kwh = Enumerable.Range(0, 7 * PlanModel.Weeks).Sum(day => pumps.Sum(load => load.On(start.AddDays(day))));
        if ((power.WhyUnknown is not null && limit is null) || pumped <= 0.0 || kwh <= 0.0)
        {
            return null;
        }

        double There(int week) =>
            Days(week)
                .Sum(day =>
                    Math.Min(MadeOn(power, day), (double?)limit ?? double.PositiveInfinity)
                    - power.Loads.Where(load => load.Purpose != LoadPurpose.Water).Sum(load => load.On(day))
                );
        PowerSupply supply = settings.Supply;
        return new PlanPower(kwh / pumped, [.. known.Select((one, week) => one ? Math.Max(0.0, There(week)) : double.PositiveInfinity)],
            (double)(supply.GeneratorKw ?? 0m) * 24.0 * 7.0, (double)(supply.GeneratorCostPerKwh ?? 0m));
    }

    private static double MadeOn(PowerSeason power, DateOnly day) =>
        power.WhyUnknown is not null ? double.PositiveInfinity
        : day.DayNumber - power.First.DayNumber < power.Days.Count ? power.Days[day.DayNumber - power.First.DayNumber].Made
        : 0.0;

    /// <summary>Water of a bed-foot: by week beyond rain, held by the soil, and taken up in all with water enough.</summary>
    private readonly record struct SowingNeed(double[] Weeks, double Soil, double Potential);
}
