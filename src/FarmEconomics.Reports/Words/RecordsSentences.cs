using FarmEconomics.Budgets;
using FarmEconomics.Records;
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
            $"Of {season.Notation.Number(season.Farm.LaborHours.Value, Look.Hours)} hours that reached crops, "
                + $"{season.Notation.Number(logged, Look.Hours)} "
                + $"({Phrase.Percent(season.Farm.LaborHours.Value > 0m ? logged / season.Farm.LaborHours.Value : 0m)}) "
                + $"were logged to a crop or planting; {season.Notation.Number(season.Farm.Sums.EstimatedHours, Look.Hours)} rest on time "
                + $"standards and the rest was divided among the crops. "
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
            : $"Each sale is matched to the oldest harvest that still keeps. "
                + $"You sold more than you had picked of {Phrase.List(crops.ConvertAll(Phrase.Bold))}: "
                + $"{season.Notation.InWords(money, Look.Money)} of sales have no harvest. A harvest is missing, or a unit is wrong. "
                + $"The money stays with the crop, spread over its plantings.");
    }

    /// <summary>What weakens the figures, each in a few words.</summary>
    internal static List<string> Weaknesses(SeasonReview season)
    {
        Availability known = season.Known;
        Notation notation = season.Notation;
        decimal estimated = season.Farm.EstimatedShare.Value ?? 0m;
        decimal unassigned = season.UnallocatedTotal(Costing.Unallocated.NotAssigned);
        int incomplete = season.Crops.Count(crop => crop.Known.Value is not null);
        int unmatched = RecordGaps.Unmatched(season).Select(part => part.Disposition.Crop).Distinct().Count();
        int without = RecordGaps.CropsWithoutLoggedHours(season).Count;
        string?[] weak =
        [
            For(known.Costs, "costs aren't known"),
            For(known.Hours, "hours aren't known"),
            For(known.Hours is null ? known.LaborCost : null, "the cost of labor isn't known"),
            For(known.Hours is null ? known.OwnerLabor : null, "your own hours have no value"),
            For(known.Ownership, "what owning costs isn't known"),
            estimated > 0.1m ? $"{Phrase.Percent(estimated)} of the hours are estimated" : null,
            incomplete > 0 ? $"{notation.Count(incomplete, "crop has", "crops have")} produce without a price" : null,
            unmatched > 0 ? $"{notation.Count(unmatched, "crop was", "crops were")} sold beyond what was picked" : null,
            without > 0 ? $"{notation.Count(without, "crop has", "crops have")} no hours logged" : null,
            unassigned != 0m ? $"{notation.InWords(unassigned, Look.Money)} of cost found no user{known.OwnershipLeftOut}" : null,
        ];
        return [.. weak.OfType<string>()];

        static string? For(string? reason, string words) => reason is null ? null : $"{words} ({reason})";
    }
}
