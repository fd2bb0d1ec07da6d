using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;
using FarmEconomics.Units;

namespace FarmEconomics.Reports.WhatIf;

/// <summary>The tables of a scenario: what is changed, the farm and the crops before and after, several scenarios side by side.</summary>
public static class WhatIfTables
{
    /// <summary>Every change by itself: what is counted, before and after, rows touched, money moved, and what it alone would do.</summary>
    public static ReportTable Changes(ScenarioOutcome outcome)
    {
        SeasonReview season = outcome.Before;
        Notation notation = season.Notation;
        ReportTable table = new ReportTable($"What is changed in {season.CropYear}, each change by itself", notation).Of<ChangeEffect>()
            .Column("Change", effect => effect.Change.Text)
            .Column("In words", effect => ChangeWords.Of(effect.Change, season.Records))
            .Column("Counted", effect => Counted(effect))
            .Column("As it was", effect => Value(effect, before: true, notation))
            .Column("Would be", effect => Value(effect, before: false, notation))
            .Column("Rows touched", effect => Rows(effect, season.CropYear, notation))
            .Column("Money moved in them", Look.Money, effect => effect.MoneyMoved)
            .Column($"Change of what is {LineWords.Net(season.Farm.Known)}", Look.Money, effect => effect.FarmNet.Difference)
            .Rows(outcome.Effects);

        if (outcome.Effects.Count > 1)
        {
            table.Total("all together", "", "", "", "", "", "", outcome.FarmNet.Difference);
        }

        foreach (ChangeEffect effect in outcome.Effects)
        {
            foreach (string note in effect.Notes)
            {
                table.Note(outcome.Effects.Count > 1 ? $"{effect.Change.Text}: {note}" : note);
            }
        }

        return table.Note("A change holds for all years in the records, so that goods carried over a year's end keep matching; "
            + "the figures here are of this season. Amounts are rounded to the cent, half a cent away from zero, once per row.");
    }

    /// <summary>The whole-farm statement, line by line.</summary>
    public static ReportTable Farm(ScenarioOutcome outcome)
    {
        SeasonReview season = outcome.Before;
        ReportTable table = new ReportTable(
            $"{season.Farm.Name} in {season.CropYear}, as it was and with {outcome.Scenario.Name}",
            season.Notation
        )
            .InOrder()
            .Column("Line")
            .Column("As it was", Look.Money)
            .Column("Would be", Look.Money)
            .Column("Difference", Look.Money);
        foreach ((FarmStatementLine named, FarmDifference line) in FarmStatement.Of(season).Zip(outcome.Farm))
        {
            table.Row(Phrase.Sentence(LineWords.Of(named)), line.Amount.Before, line.Amount.After, line.Amount.Difference);
        }

        return table;
    }

    /// <summary>Every crop, those whose net return moves most first.</summary>
    public static ReportTable Crops(ScenarioOutcome outcome)
    {
        SeasonReview season = outcome.Before;
        LengthUnit unit = season.Settings.LengthUnit;
        string net = Phrase.Sentence(LineWords.Net(season.Farm.Known));
        ReportTable table = new ReportTable(
            $"The crops of {season.CropYear}, as they were and with {outcome.Scenario.Name}, those that move most first",
            season.Notation
        )
            .Column("Crop")
            .Column("Brought in", Look.WholeMoney)
            .Column("would be", Look.WholeMoney)
            .Column(net, Look.WholeMoney)
            .Column("would be", Look.WholeMoney)
            .Column("Difference", Look.Money)
            .Column(net, Look.Rate, per: unit.Label("bed-foot"))
            .Column("would be", Look.Rate, per: unit.Label("bed-foot"))
            .Column(net, Look.Rate, per: unit.Label("bed-foot-week"))
            .Column("would be", Look.Rate, per: unit.Label("bed-foot-week"))
            .Column(net, Look.Rate, per: "labor hour")
            .Column("would be", Look.Rate, per: "labor hour");
        foreach (CropDifference crop in Ordered(outcome))
        {
            table.Row([crop.Name, .. Cells(crop)]);
        }

        return table.Total(["All crops", .. Cells(outcome.AllCrops)]);
    }

    /// <summary>The season as it was and every scenario, a row each.</summary>
    public static ReportTable Scenarios(ScenarioComparison comparison)
    {
        SeasonReview season = comparison.Season;
        ReportTable table = new ReportTable($"{season.Farm.Name} in {season.CropYear}: scenarios side by side", season.Notation)
            .Column("Scenario")
            .Column("Changes")
            .Column("Brought in", Look.WholeMoney)
            .Column("Materials and selling", Look.WholeMoney)
            .Column("Labor", Look.WholeMoney)
            .Column("Infrastructure", Look.WholeMoney)
            .Column("Overhead", Look.WholeMoney)
            .Column($"{Phrase.Sentence(LineWords.Net(season.Farm.Known))} for the farm", Look.WholeMoney)
            .Column("Difference", Look.Money)
            .Column("Crop that moves most");
        if (comparison.Outcomes.Count > 0)
        {
            table.Row(["as it was", "", .. Lines(season), comparison.Outcomes[0].FarmNet.Before, 0m, ""]);
        }

        foreach (ScenarioOutcome outcome in comparison.Outcomes)
        {
            CropDifference? most = Ordered(outcome).FirstOrDefault(crop => Moved(crop).Value is not (null or 0m));
            string mover = most is null ? "none" : $"{most.Name} {Signed(Moved(most).Value!.Value, season.Notation)}";
            table.Row([
                outcome.Scenario.Name,
                ChangeWords.Of(outcome.Scenario, season.Records),
                .. Lines(outcome.After),
                outcome.FarmNet.After,
                outcome.FarmNet.Difference,
                mover,
            ]);
        }

        return table.Note("Each scenario is set against the season as it was, not on top of the one before.");
    }

    /// <summary>Net return of every crop in every scenario.</summary>
    public static ReportTable ScenariosByCrop(ScenarioComparison comparison)
    {
        SeasonReview season = comparison.Season;
        ReportTable table = new ReportTable(
            $"{Phrase.Sentence(LineWords.Net(season.Farm.Known))} from each crop in {season.CropYear}, scenario by scenario",
            season.Notation
        )
            .Column("Crop")
            .Column("as it was", Look.WholeMoney);
        foreach (ScenarioOutcome outcome in comparison.Outcomes)
        {
            table.Column(outcome.Scenario.Name, Look.WholeMoney);
        }

        foreach (EnterpriseBudget crop in season.Crops)
        {
            List<CropDifference?> there = comparison
                .Outcomes.Select(outcome => outcome.Crops.FirstOrDefault(other => other.Name == crop.Name))
                .ToList();
            table.Row([
                crop.Name,
                ReportCell.Known(crop.NetReturn, crop.Known.NoNetReturn),
                .. there.Select(other => other is null ? ReportCell.Missing("no planting of it in the scenario") : other.NetReturn.After),
            ]);
        }

        return table;
    }

    /// <summary>The crops by how far they move; by output where net return isn't available.</summary>
    internal static IEnumerable<CropDifference> Ordered(ScenarioOutcome outcome) =>
        outcome.Crops.OrderByDescending(crop => Math.Abs(Moved(crop).Value ?? 0m));

    /// <summary>How far a crop moves: its net return, or its output where that isn't available.</summary>
    internal static Result Moved(CropDifference crop) =>
        crop.NetReturn.Difference.IsAvailable ? crop.NetReturn.Difference : crop.Output.Difference;

    internal static string Signed(decimal value, Notation notation, Look look = Look.WholeMoney) =>
        (value > 0m ? "+" : "") + notation.InWords(value, look);

    private static IEnumerable<ReportCell> Cells(CropDifference crop) =>
        [
            crop.Output.Before,
            crop.Output.After,
            crop.NetReturn.Before,
            crop.NetReturn.After,
            crop.NetReturn.Difference,
            crop.NetReturnPerBedFoot.Before,
            crop.NetReturnPerBedFoot.After,
            crop.NetReturnPerBedFootWeek.Before,
            crop.NetReturnPerBedFootWeek.After,
            crop.NetReturnPerLaborHour.Before,
            crop.NetReturnPerLaborHour.After,
        ];

    private static IEnumerable<ReportCell> Lines(SeasonReview season)
    {
        EnterpriseBudget farm = season.Farm;
        Availability known = season.Known;
        return
        [
            farm.Output,
            ReportCell.Known(farm.Sums.Materials + farm.Sums.Selling, known.Costs),
            ReportCell.Known(farm.LaborCost, known.LaborCost),
            ReportCell.Known(farm.Sums.Infrastructure, known.Costs),
            ReportCell.Known(farm.Sums.Overhead, known.Overhead),
        ];
    }

    private static string Counted(ChangeEffect effect) =>
        effect.Measure switch
        {
            EffectMeasure.Setting => "the setting",
            EffectMeasure.PricePerUnit => $"average price per {effect.Unit}",
            EffectMeasure.MoneyPerHour => "cost of an hour",
            EffectMeasure.Hours => "hours",
            EffectMeasure.Quantity => $"picked, in {effect.Unit}",
            EffectMeasure.Percent => "fee in percent",
            _ => effect.Change.Subject is ScenarioSubject.Price or ScenarioSubject.Yield
                ? "money of sales and household use"
                : "money in the rows",
        };

    private static ReportCell Value(ChangeEffect effect, bool before, Notation notation)
    {
        Result value = before ? effect.Value.Before : effect.Value.After;
        if (effect.Measure == EffectMeasure.Setting)
        {
            return before ? effect.SettingBefore
                : effect.Change.Step.IsPercent && value.Value is { } wage ? notation.Number(wage, Look.Exact)
                : effect.Change.ValueText;
        }

        Look look = effect.Measure switch
        {
            EffectMeasure.PricePerUnit or EffectMeasure.MoneyPerHour => Look.Rate,
            EffectMeasure.Hours => Look.Hours,
            EffectMeasure.Quantity => Look.Quantity,
            EffectMeasure.Percent => Look.Exact,
            _ => Look.Money,
        };
        return value.Value is { } known ? notation.InWords(known, look) : ReportCell.Missing(value.Reason ?? "not available");
    }

    private static string Rows(ChangeEffect effect, int year, Notation notation) => effect.Rows.Count == 0 ? "none: a setting"
        : string.Join(", ", effect.Rows.Select(rows => notation.Text($"{rows.OfSeason:#,0} of {rows.Table}.csv"))) + $" in {year}";
}
