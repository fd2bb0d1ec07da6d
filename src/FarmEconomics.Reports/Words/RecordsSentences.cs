using FarmEconomics.Budgets;
using FarmEconomics.Files;
using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.RecordsCheck;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Words;

/// <summary>The records in sentences: whether they carry the answer, and what weakens it.</summary>
public static class RecordsSentences
{
    /// <summary>The answer first.</summary>
    public static Prose Answer(FarmFolder farm, SeasonReview? season)
    {
        int errors = farm.ErrorCount;
        int warnings = farm.Problems.Count - errors;
        int rows = farm.Reading.Files.Sum(file => file.RowsInFile);
        string read = farm.Notation.Text($"{rows:#,0} rows were read from {farm.Notation.Count(farm.Reading.Files.Count, "file")}, with **{farm.Notation.Count(errors, "error")}** and **{farm.Notation.Count(warnings, "warning")}**.");
        if (season is null)
        {
            return new Prose($"**Not yet.** {read} Fix the errors below first; no figure can be made before.");
        }

        List<string> weak = Weaknesses(season);
        string verdict = weak.Count == 0 ? $"**Yes**, for {season.CropYear}." : $"**Yes, with {season.Notation.Count(weak.Count, "reservation")}** for {season.CropYear}.";
        return new Prose($"{verdict} {read} {(farm.Skipped.Count > 0 ? $"**{season.Notation.Count(farm.Skipped.Count, "row")} in error were left out** (listed below). " : "")}"
            + (weak.Count == 0 ? $"{(warnings > 0 ? "Beside the warnings nothing" : "Nothing")} found weakens the figures." : $"What weakens the figures: {Phrase.List(weak)}."));
    }

    /// <summary>Reads the hours off: how much is logged by crop.</summary>
    public static Prose Hours(SeasonReview season)
    {
        if (season.Known.Hours is { } why)
        {
            return new Prose($"Hours by crop are not available ({why}): nothing can be said per labor hour.");
        }

        decimal logged = season.Crops.Sum(crop => RecordGaps.Logged(season, crop));
        IReadOnlyList<string> without = RecordGaps.CropsWithoutLoggedHours(season);
        return new Prose($"Of {season.Notation.Number(season.Farm.LaborHours.Value, Look.Hours)} hours that reached crops, {season.Notation.Number(logged, Look.Hours)} ({Phrase.Percent(season.Farm.LaborHours.Value > 0m ? logged / season.Farm.LaborHours.Value : 0m)}) "
            + $"were logged to a crop or planting; {season.Notation.Number(season.Farm.Sums.EstimatedHours, Look.Hours)} rest on time standards and the rest came through pools. "
            + (without.Count == 0 ? "Every crop has hours of its own." : $"No hour is logged to {Phrase.List(without.Select(Phrase.Bold).ToList())}."));
    }

    /// <summary>Reads the gaps off.</summary>
    public static Prose Gaps(SeasonReview season)
    {
        List<string> crops = RecordGaps.Unmatched(season).Select(part => part.Disposition.Crop.Name).Distinct().ToList();
        decimal money = RecordGaps.Unmatched(season).Sum(part => part.Amount.Amount);
        return new Prose(crops.Count == 0
            ? "Everything that left the farm had been picked before, by the records."
            : $"More left than was picked of {Phrase.List(crops.ConvertAll(Phrase.Bold))}: {season.Notation.InWords(money, Look.Money)} of sales have no harvest behind them. They stay with the crop, spread over its plantings by quantity picked, so rates per crop hold and rates per planting are weaker.");
    }

    private static List<string> Weaknesses(SeasonReview season)
    {
        List<string> weak = [];
        Add(season.Known.Costs, "costs are not available");
        Add(season.Known.Hours, "hours are not available");
        Add(season.Known.Hours is null ? season.Known.LaborCost : null, "the cost of labor is not available");
        Add(season.Known.OwnerLabor, "unpaid hours carry no value");
        Add(season.Known.Ownership, "ownership cost is not available");
        if (season.Farm.EstimatedShare.Value > 0.1m)
        {
            weak.Add($"{Phrase.Percent(season.Farm.EstimatedShare.Value.Value)} of the hours are estimated");
        }

        int incomplete = season.Crops.Count(crop => crop.Known.Value is not null);
        if (incomplete > 0)
        {
            weak.Add($"{season.Notation.Count(incomplete, "crop has", "crops have")} produce without a price");
        }

        int unmatched = RecordGaps.Unmatched(season).Select(part => part.Disposition.Crop).Distinct().Count();
        if (unmatched > 0)
        {
            weak.Add($"{season.Notation.Count(unmatched, "crop was", "crops were")} sold beyond what was picked");
        }

        int without = RecordGaps.CropsWithoutLoggedHours(season).Count;
        if (without > 0)
        {
            weak.Add($"{season.Notation.Count(without, "crop has", "crops have")} no hours logged");
        }

        decimal unassigned = season.OutsideTotal(Costing.Outside.NotAssigned);
        if (unassigned != 0m)
        {
            weak.Add($"{season.Notation.InWords(unassigned, Look.Money)} of cost found no crop");
        }

        return weak;

        void Add(string? reason, string words)
        {
            if (reason is not null)
            {
                weak.Add($"{words} ({reason})");
            }
        }
    }
}
