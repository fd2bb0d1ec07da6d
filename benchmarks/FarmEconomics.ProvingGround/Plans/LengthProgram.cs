using FarmEconomics.Planning.Programs;
using FarmEconomics.ProvingGround.World;
using FarmEconomics.Solver;

namespace FarmEconomics.ProvingGround.Plans;

/// <summary>
/// Finds the lengths that earn most: lengths first, then in each scenario what is picked, kept, boxed, sold, hired. Solved
/// by the program's own solver. Maximize the mean over scenarios of sales net of fees and packaging - bought-in produce - hours at their cost, less
/// seed and supplies. A two-stage linear program with simple recourse; source: Birge and Louveaux, Introduction to Stochastic
/// Programming, ch. 1 (its farmer's problem).
/// </summary>
internal sealed class LengthProgram
{
    private readonly PlanModel model;
    private readonly LinearModel program = new();
    private readonly int[] lengths;
    private readonly double part;

    private LengthProgram(PlanModel model)
    {
        this.model = model;
        part = 1.0 / model.Scenarios;
        lengths = [.. model.Sowings.Select((sowing, i) => Add(double.PositiveInfinity, -sowing.Cost))];
        LimitBeds();
        for (int scenario = 0; scenario < model.Scenarios; scenario++)
        {
            AddScenario(scenario);
        }
    }

    /// <summary>Solves a model.</summary>
    /// <returns>Units of each sowing, in the model's order.</returns>
    internal static double[] Solve(PlanModel model)
    {
        LengthProgram lengths = new(model);
        LinearSolution solution = LinearSolvers.Find()!.Solve(lengths.program);
        return solution.IsOptimal
            ? [.. lengths.lengths.Select(length => Math.Max(0.0, solution.Values[length]))]
            : throw new InvalidOperationException($"The linear program of lengths ended with {solution.Status}.");
    }

    private int Add(double most, double worth) => program.AddQuantity("", worth, most);

    private void LimitBeds()
    {
        for (int cover = 0; cover < Farm.Covers; cover++)
        {
            for (int week = 0; week < Farm.Weeks; week++)
            {
                int beds = program.AddLimit("", double.NegativeInfinity, model.BedFeet[cover]);
                for (int i = 0; i < lengths.Length; i++)
                {
                    if (model.Sowings[i].Cover == cover && model.Sowings[i].Feet[week] > 0.0)
                    {
                        program.Set(beds, lengths[i], model.Sowings[i].Feet[week]);
                    }
                }
            }
        }
    }

    private void AddScenario(int scenario)
    {
        int[] hours = new int[Farm.Weeks];
        int[] boxes = new int[Farm.Weeks];
        for (int week = 0; week < Farm.Weeks; week++)
        {
            hours[week] = program.AddLimit("", double.NegativeInfinity, 0.0);
            program.Set(hours[week], Add(model.OwnHours[week], -model.HourCost.Own * part), -1.0);
            program.Set(hours[week], Add(model.HiredHours[week], -model.HourCost.Hired * part), -1.0);

            // Growing is not put off when hours are short; such an hour is worked beyond the limit, dear enough that no plan counts on it.
            program.Set(hours[week], Add(double.PositiveInfinity, -3.0 * model.HourCost.Hired * part), -1.0);
            boxes[week] = program.AddLimit("", model.BoxTarget[week], double.PositiveInfinity);
            program.Set(boxes[week], Add(double.PositiveInfinity, -model.BuyIn * part), 1.0);
            for (int i = 0; i < lengths.Length; i++)
            {
                if (model.Sowings[i].Hours[week] > 0.0)
                {
                    program.Set(hours[week], lengths[i], model.Sowings[i].Hours[week]);
                }
            }
        }

        for (int c = 0; c < model.Crops.Count; c++)
        {
            AddCrop(c, scenario, hours, boxes);
        }
    }

    /// <summary>
    /// Picked no more than is ripe; stock of last week + picked = sold + boxed + stock (the rest stays unpicked); stock no more than what
    /// was picked in the weeks it keeps.
    /// </summary>
    private void AddCrop(int c, int scenario, int[] hours, int[] boxes)
    {
        CropModel crop = model.Crops[c];
        List<int> sowings = [.. Enumerable.Range(0, lengths.Length).Where(i => model.Sowings[i].Crop == c)];
        int?[] picked = new int?[Farm.Weeks];
        int? before = null;
        for (int week = 0; week < Farm.Weeks; week++)
        {
            picked[week] = AddPicking(sowings, (scenario, week), crop, hours[week]);
            int?[] fresh = picked[Math.Max(0, week - crop.Keeps + 1)..(week + 1)];
            if (before is null && picked[week] is null)
            {
                continue;
            }

            int balance = program.AddLimit("", 0.0, double.PositiveInfinity);
            Set(balance, before, 1.0);
            Set(balance, picked[week], 1.0);
            foreach (SaleStep step in crop.Steps[scenario][week])
            {
                program.Set(balance, Add(step.Units, (step.Net - crop.Handling.Packaging) * part), -1.0);
            }

            if (model.BoxTarget[week] > 0.0 && crop.Box.Most > 0.0)
            {
                int box = Add(crop.Box.Most, -crop.Handling.Packaging * part);
                program.Set(balance, box, -1.0);
                program.Set(boxes[week], box, crop.Box.Value);
            }

            before = AddStock(crop, balance, fresh);
        }
    }

    private int? AddPicking(List<int> sowings, (int Scenario, int Week) when, CropModel crop, int hours)
    {
        List<int> ripe = [.. sowings.Where(i => model.Sowings[i].Yield[when.Scenario][when.Week] > 0.0)];
        if (ripe.Count == 0)
        {
            return null;
        }

        int picked = Add(double.PositiveInfinity, 0.0);
        program.Set(hours, picked, crop.Handling.Hours);
        int most = program.AddLimit("", 0.0, double.PositiveInfinity);
        program.Set(most, picked, -1.0);
        foreach (int i in ripe)
        {
            program.Set(most, lengths[i], model.Sowings[i].Yield[when.Scenario][when.Week]);
        }

        return picked;
    }

    private int? AddStock(CropModel crop, int balance, int?[] fresh)
    {
        int?[] keeping = crop.Keeps > 1 ? fresh[(fresh.Length == crop.Keeps ? 1 : 0)..] : [];
        if (Array.TrueForAll(keeping, variable => variable is null))
        {
            return null;
        }

        int stock = Add(double.PositiveInfinity, 0.0);
        program.Set(balance, stock, -1.0);
        int age = program.AddLimit("", 0.0, double.PositiveInfinity);
        program.Set(age, stock, -1.0);
        foreach (int? variable in keeping)
        {
            Set(age, variable, 1.0);
        }

        return stock;
    }

    private void Set(int limit, int? variable, double coefficient)
    {
        if (variable is { } known)
        {
            program.Set(limit, known, coefficient);
        }
    }
}
