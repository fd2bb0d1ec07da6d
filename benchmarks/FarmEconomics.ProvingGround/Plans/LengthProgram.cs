using FarmEconomics.ProvingGround.World;
using Google.OrTools.LinearSolver;

namespace FarmEconomics.ProvingGround.Plans;

/// <summary>
/// Finds the lengths that earn most: lengths first, then in each scenario what is picked, kept, boxed, sold, hired. Solved by GLOP
/// (Google OR-Tools). Maximize the mean over scenarios of sales net of fees and packaging - bought-in produce - hours at their cost, less
/// seed and supplies. A two-stage linear program with simple recourse; source: Birge and Louveaux, Introduction to Stochastic
/// Programming, ch. 1 (its farmer's problem).
/// </summary>
internal sealed class LengthProgram : IDisposable
{
    private readonly PlanModel model;
    private readonly Solver solver;
    private readonly Variable[] lengths;
    private readonly Objective objective;
    private readonly double part;

    private LengthProgram(PlanModel model)
    {
        this.model = model;
        solver = Solver.CreateSolver("GLOP")
            ?? throw new InvalidOperationException("GLOP, the linear solver of Google.OrTools, is missing.");
        objective = solver.Objective();
        objective.SetMaximization();
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
        using LengthProgram program = new(model);
        Solver.ResultStatus status = program.solver.Solve();
        return status == Solver.ResultStatus.OPTIMAL
            ? [.. program.lengths.Select(length => Math.Max(0.0, length.SolutionValue()))]
            : throw new InvalidOperationException($"The linear program of lengths ended with {status}.");
    }

    public void Dispose() => solver.Dispose();

    private Variable Add(double most, double worth)
    {
        Variable variable = solver.MakeNumVar(0.0, most, "");
        objective.SetCoefficient(variable, worth);
        return variable;
    }

    private void LimitBeds()
    {
        for (int cover = 0; cover < Farm.Covers; cover++)
        {
            for (int week = 0; week < Farm.Weeks; week++)
            {
                Constraint beds = solver.MakeConstraint(double.NegativeInfinity, model.BedFeet[cover], "");
                for (int i = 0; i < lengths.Length; i++)
                {
                    if (model.Sowings[i].Cover == cover && model.Sowings[i].Feet[week] > 0.0)
                    {
                        beds.SetCoefficient(lengths[i], model.Sowings[i].Feet[week]);
                    }
                }
            }
        }
    }

    private void AddScenario(int scenario)
    {
        Constraint[] hours = new Constraint[Farm.Weeks];
        Constraint[] boxes = new Constraint[Farm.Weeks];
        for (int week = 0; week < Farm.Weeks; week++)
        {
            hours[week] = solver.MakeConstraint(double.NegativeInfinity, 0.0, "");
            hours[week].SetCoefficient(Add(model.OwnHours[week], -model.HourCost.Own * part), -1.0);
            hours[week].SetCoefficient(Add(model.HiredHours[week], -model.HourCost.Hired * part), -1.0);

            // Growing is not put off when hours are short; such an hour is worked beyond the limit, dear enough that no plan counts on it.
            hours[week].SetCoefficient(Add(double.PositiveInfinity, -3.0 * model.HourCost.Hired * part), -1.0);
            boxes[week] = solver.MakeConstraint(model.BoxTarget[week], double.PositiveInfinity, "");
            boxes[week].SetCoefficient(Add(double.PositiveInfinity, -model.BuyIn * part), 1.0);
            for (int i = 0; i < lengths.Length; i++)
            {
                if (model.Sowings[i].Hours[week] > 0.0)
                {
                    hours[week].SetCoefficient(lengths[i], model.Sowings[i].Hours[week]);
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
    private void AddCrop(int c, int scenario, Constraint[] hours, Constraint[] boxes)
    {
        CropModel crop = model.Crops[c];
        List<int> sowings = [.. Enumerable.Range(0, lengths.Length).Where(i => model.Sowings[i].Crop == c)];
        Variable?[] picked = new Variable?[Farm.Weeks];
        Variable? before = null;
        for (int week = 0; week < Farm.Weeks; week++)
        {
            picked[week] = AddPicking(sowings, (scenario, week), crop, hours[week]);
            Variable?[] fresh = picked[Math.Max(0, week - crop.Keeps + 1)..(week + 1)];
            if (before is null && picked[week] is null)
            {
                continue;
            }

            Constraint balance = solver.MakeConstraint(0.0, double.PositiveInfinity, "");
            Set(balance, before, 1.0);
            Set(balance, picked[week], 1.0);
            foreach (SaleStep step in crop.Steps[scenario][week])
            {
                balance.SetCoefficient(Add(step.Units, (step.Net - crop.Handling.Packaging) * part), -1.0);
            }

            if (model.BoxTarget[week] > 0.0 && crop.Box.Most > 0.0)
            {
                Variable box = Add(crop.Box.Most, -crop.Handling.Packaging * part);
                balance.SetCoefficient(box, -1.0);
                boxes[week].SetCoefficient(box, crop.Box.Value);
            }

            before = AddStock(crop, balance, fresh);
        }
    }

    private Variable? AddPicking(List<int> sowings, (int Scenario, int Week) when, CropModel crop, Constraint hours)
    {
        List<int> ripe = [.. sowings.Where(i => model.Sowings[i].Yield[when.Scenario][when.Week] > 0.0)];
        if (ripe.Count == 0)
        {
            return null;
        }

        Variable picked = Add(double.PositiveInfinity, 0.0);
        hours.SetCoefficient(picked, crop.Handling.Hours);
        Constraint most = solver.MakeConstraint(0.0, double.PositiveInfinity, "");
        most.SetCoefficient(picked, -1.0);
        foreach (int i in ripe)
        {
            most.SetCoefficient(lengths[i], model.Sowings[i].Yield[when.Scenario][when.Week]);
        }

        return picked;
    }

    private Variable? AddStock(CropModel crop, Constraint balance, Variable?[] fresh)
    {
        Variable?[] keeping = crop.Keeps > 1 ? fresh[(fresh.Length == crop.Keeps ? 1 : 0)..] : [];
        if (Array.TrueForAll(keeping, variable => variable is null))
        {
            return null;
        }

        Variable stock = Add(double.PositiveInfinity, 0.0);
        balance.SetCoefficient(stock, -1.0);
        Constraint age = solver.MakeConstraint(0.0, double.PositiveInfinity, "");
        age.SetCoefficient(stock, -1.0);
        foreach (Variable? variable in keeping)
        {
            Set(age, variable, 1.0);
        }

        return stock;
    }

    private static void Set(Constraint constraint, Variable? variable, double coefficient)
    {
        if (variable is not null)
        {
            constraint.SetCoefficient(variable, coefficient);
        }
    }
}
