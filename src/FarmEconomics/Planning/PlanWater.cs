using FarmEconomics.Planning.Programs;

namespace FarmEconomics.Planning;

/// <summary>
/// A year's water and the power that pumps it, week by week, for a plan. Water counts in thousands of the farm's unit of volume (1,000
/// gallons, or 1,000 liters), power in kWh.
/// </summary>
public sealed record PlanWater
{
    /// <summary>Water there is in each week; infinite where no limit is written or the need of the week isn't known.</summary>
    public required IReadOnlyList<double> Limit { get; init; }

    /// <summary>What a bed-foot of each sowing, in the model's order, takes in each week beyond rain.</summary>
    public required IReadOnlyList<IReadOnlyList<double>> Need { get; init; }

    /// <summary>What the soil under a bed-foot of each sowing holds that it takes up without stress.</summary>
    public required IReadOnlyList<double> Soil { get; init; }

    /// <summary>Money lost by each crop, in the model's order, for a unit it misses.</summary>
    public required IReadOnlyList<double> LostPerUnit { get; init; }

    /// <summary>Power for pumping, null: it isn't known, and not limited.</summary>
    public PlanPower? Power { get; init; }
}

/// <summary>Power for pumping.</summary>
/// <param name="PerUnit">kWh to pump a unit of water.</param>
/// <param name="There">kWh there are for it in each week: what panels make, or a limit gives, less all other loads.</param>
/// <param name="Generator">Most kWh a generator makes in a week; 0: there is none.</param>
/// <param name="GeneratorCost">What a kWh of it costs, money.</param>
public sealed record PlanPower(double PerUnit, IReadOnlyList<double> There, double Generator, double GeneratorCost);

/// <summary>
/// Water and power in a plan's program: each week what is put on keeps within the limit and the power there is; the soil under what stands
/// carries water from week to week; what is missed costs each crop what its yield loses (Ky, section 19), so that a dry week never makes a
/// plan impossible, only dearer.
/// </summary>
internal sealed class PlanWaterLimits
{
    private readonly PlanModel plan;
    private readonly PlanWater water;
    private readonly PlanProgram program;
    private readonly ILookup<int, int> byCrop;
    private readonly ILookup<int, int> byCover;

    private PlanWaterLimits(PlanModel plan, PlanWater water, PlanProgram program)
    {
        (this.plan, this.water, this.program) = (plan, water, program);
        byCrop = Enumerable.Range(0, plan.Sowings.Count).ToLookup(i => plan.Sowings[i].Crop);
        byCover = Enumerable.Range(0, plan.Sowings.Count).ToLookup(i => plan.Sowings[i].Cover);
    }

    internal static void Add(PlanModel plan, PlanProgram program)
    {
        if (plan.Water is { } water)
        {
            new PlanWaterLimits(plan, water, program).Add();
        }
    }

    private void Add()
    {
        int? before = null;
        for (int week = 0; week < PlanModel.Weeks; week++)
        {
            before = MayBeShort(week) ? AddWeek(week, before) : null;
        }
    }

    // Weeks in which even full beds of the thirstiest crop find enough need no rows.
    private bool MayBeShort(int week)
    {
        double most = 0.0;
        for (int cover = 0; cover < plan.Covers.Count; cover++)
        {
            double thirstiest = byCover[cover].Select(i => water.Need[i][week]).DefaultIfEmpty(0.0).Max();
            most += thirstiest > 0.0 ? thirstiest * plan.Covers[cover].Feet[week] : 0.0;
        }

        return most > water.Limit[week] || (water.Power is { } power && most * power.PerUnit > power.There[week]);
    }

    private int AddWeek(int week, int? before)
    {
        LinearModel model = program.Model;
        int put = model.AddQuantity("water", 0.0);
        int soil = model.AddQuantity("water in the soil", 0.0);
        int balance = program.Limit(new(PlanLimitKind.Balance, 0, week), 0.0, double.PositiveInfinity);
        model.Set(balance, put, 1.0);
        model.Set(balance, soil, -1.0);
        if (before is { } kept)
        {
            model.Set(balance, kept, 1.0);
        }

        int held = program.Limit(new(PlanLimitKind.Balance, 0, week), 0.0, double.PositiveInfinity);
        model.Set(held, soil, -1.0);
        for (int i = 0; i < plan.Sowings.Count; i++)
        {
            double full = plan.Sowings[i].Holds(week) ? water.Soil[i] : 0.0;
            model.Set(held, program.Lengths[i], full);

            // The first week that may be short finds the soil full.
            model.Set(balance, program.Lengths[i], (before is null ? full : 0.0) - water.Need[i][week]);
        }

        AddMissed(week, balance);
        if (double.IsFinite(water.Limit[week]))
        {
            model.Set(program.Limit(new(PlanLimitKind.Water, 0, week), double.NegativeInfinity, water.Limit[week]), put, 1.0);
        }

        if (water.Power is { } power && double.IsFinite(power.There[week]))
        {
            int kwh = program.Limit(new(PlanLimitKind.Power, 0, week), double.NegativeInfinity, power.There[week]);
            model.Set(kwh, put, power.PerUnit);
            model.Set(kwh, model.AddQuantity("generator", -power.GeneratorCost, power.Generator), -1.0);
        }

        return soil;
    }

    private void AddMissed(int week, int balance)
    {
        for (int crop = 0; crop < plan.Crops.Count; crop++)
        {
            int[] thirsty = [.. byCrop[crop].Where(i => water.Need[i][week] > 0.0)];
            if (thirsty.Length > 0)
            {
                int missed = program.Model.AddQuantity("water missed", -water.LostPerUnit[crop]);
                program.Model.Set(balance, missed, 1.0);
                int most = program.Limit(new(PlanLimitKind.Balance, crop, week), 0.0, double.PositiveInfinity);
                program.Model.Set(most, missed, -1.0);
                Array.ForEach(thirsty, i => program.Model.Set(most, program.Lengths[i], water.Need[i][week]));
            }
        }
    }
}
