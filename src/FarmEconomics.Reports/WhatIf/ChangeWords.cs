using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.WhatIf;

/// <summary>A change of a scenario in words: "the price of Carrots 10 % lower".</summary>
public static class ChangeWords
{
    /// <summary>One change.</summary>
    public static string Of(ScenarioChange change, FarmRecords records)
    {
        ArgumentNullException.ThrowIfNull(change);
        ArgumentNullException.ThrowIfNull(records);
        Notation notation = records.Settings.Notation;
        string at = change.Channel is null ? "" : $" at {change.Channel}";
        string by = By(change.Step, notation, "higher", "lower");
        decimal number = change.Step.Number;
        string value = notation.Prefix + notation.Number(number, decimal.Round(number, 2) == number ? Look.Rate : Look.Exact);
        return (change.Subject, change.Scope, change.Step.IsPercent) switch
        {
            (ScenarioSubject.Without, _, _) => $"no {change.Name} grown",
            (ScenarioSubject.Setting, _, true) => $"{change.Name} {by}",
            (ScenarioSubject.Setting, _, _) => $"{change.Name} {change.ValueText}",
            (ScenarioSubject.Price, ScenarioScope.Crop, true) => $"the price of {change.Name}{at} {by}",
            (ScenarioSubject.Price, ScenarioScope.Crop, _) =>
                $"{change.Name}{at} at {value} per {records.FindCrop(change.Name!)?.Unit ?? "unit"}",
            (ScenarioSubject.Price, _, _) => $"all prices{at} {by}",
            (ScenarioSubject.Wage, ScenarioScope.Hired, true) => $"the cost of hired hours {by}",
            (ScenarioSubject.Wage, ScenarioScope.Hired, _) => $"an hour of hired work at {value}",
            (ScenarioSubject.Wage, ScenarioScope.Owner, true) => $"the value of unpaid hours {by}",
            (ScenarioSubject.Wage, ScenarioScope.Owner, _) => $"an unpaid hour at {value}",
            (ScenarioSubject.Wage, _, true) => $"the hour of {change.Name} {by}",
            (ScenarioSubject.Wage, _, _) => $"an hour of {change.Name} at {value}",
            (ScenarioSubject.Hours, ScenarioScope.Crop, _) => $"{By(change.Step, notation, "more", "fewer")} hours for {change.Name}",
            (ScenarioSubject.Hours, ScenarioScope.Stage, _) => $"{By(change.Step, notation, "more", "fewer")} hours of {change.Name} work",
            (ScenarioSubject.Hours, _, _) => $"{By(change.Step, notation, "more", "fewer")} hours of all work",
            (ScenarioSubject.Expenses, ScenarioScope.Category, _) => $"expenses for {change.Name} {by}",
            (ScenarioSubject.Expenses, ScenarioScope.Pool, _) => $"expenses of the pool {change.Name} {by}",
            (ScenarioSubject.Expenses, _, _) => $"all running costs {by}",
            (ScenarioSubject.Yield, ScenarioScope.Crop, _) => $"the yield of {change.Name} {by}",
            (ScenarioSubject.Yield, _, _) => $"all yields {by}",
            (ScenarioSubject.Income, _, _) => $"the income of {change.Name} {by}",
            _ => $"the fee of {change.Name} at {notation.Number(change.Step.Number, Look.Exact)}%",
        };
    }

    /// <summary>All changes of a scenario, as a list in a sentence; "nothing changed" without any.</summary>
    public static string Of(FarmScenario scenario, FarmRecords records)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        return scenario.Changes.Count == 0
            ? "nothing changed"
            : Words.Phrase.List(scenario.Changes.Select(change => Of(change, records)).ToList());
    }

    private static string By(ScenarioStep step, Notation notation, string up, string down) =>
        $"{notation.Number(Math.Abs(step.Number), Look.Exact)}% {(step.Number < 0m ? down : up)}";
}
