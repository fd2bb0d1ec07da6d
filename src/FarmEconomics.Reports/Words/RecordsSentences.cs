using FarmEconomics.Budgets;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.RecordsCheck;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Words;

/// <summary>The records in sentences: whether they carry the answer, and what weakens it.</summary>
public static class RecordsSentences
{
    /// <summary>Reads the hours off: how much is logged by crop.</summary>
    public static Prose Hours(SeasonReview season)
    {
        if (season.Known.Hours is { } why)
        {
            return new Prose($"Hours by crop aren't known ({why}), so nothing can be said per hour.");
        }

        decimal logged = season.Crops.Sum(crop => RecordGaps.Logged(season, crop));
        IReadOnlyList<string> without = RecordGaps.CropsWithoutLoggedHours(season);
        return new Prose(
            $"Of {season.Notation.Number(season.Farm.LaborHours.Value, Look.Hours)} hours that reached crops, {season.Notation.Number(logged, Look.Hours)} ({Phrase.Percent(season.Farm.LaborHours.Value > 0m ? logged / season.Farm.LaborHours.Value : 0m)}) "
                + $"were logged to a crop or planting; {season.Notation.Number(season.Farm.Sums.EstimatedHours, Look.Hours)} rest on time standards and the rest was divided among the crops. "
                + (
                    without.Count == 0
                        ? "Every crop has hours of its own."
                        : $"No hour is logged to {Phrase.List(without.Select(Phrase.Bold).ToList())}."
                )
        );
    }

    /// <summary>Reads the gaps off.</summary>
    public static Prose Gaps(SeasonReview season)
    {
        List<string> crops = RecordGaps.Unmatched(season).Select(part => part.Disposition.Crop.Name).Distinct().ToList();
        decimal money = RecordGaps.Unmatched(season).Sum(part => part.Amount.Amount);
        return new Prose(crops.Count == 0
            ? "Each sale is matched to the oldest harvest that still keeps. Every one found a harvest."
            : $"Each sale is matched to the oldest harvest that still keeps. You sold more than you had picked of {Phrase.List(crops.ConvertAll(Phrase.Bold))}: {season.Notation.InWords(money, Look.Money)} of sales have no harvest. A harvest is missing, or a unit is wrong. The money stays with the crop, spread over its plantings.");
    }

    /// <summary>What weakens the figures, each in a few words.</summary>
    internal static List<string> Weaknesses(SeasonReview season)
    {
        List<string> weak = [];
        Add(season.Known.Costs, "costs aren't known");
        Add(season.Known.Hours, "hours aren't known");
        Add(season.Known.Hours is null ? season.Known.LaborCost : null, "the cost of labor isn't known");
        Add(season.Known.OwnerLabor, "your own hours have no value");
        Add(season.Known.Ownership, "what owning costs isn't known");
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

        decimal unassigned = season.UnallocatedTotal(Costing.Unallocated.NotAssigned);
        if (unassigned != 0m)
        {
            weak.Add($"{season.Notation.InWords(unassigned, Look.Money)} of cost found no user{season.Known.OwnershipLeftOut}");
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
