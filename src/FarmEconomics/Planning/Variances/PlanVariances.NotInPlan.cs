using FarmEconomics.Records;

namespace FarmEconomics.Planning.Variances;

/// <content>What a plan's rows don't say.</content>
public sealed partial class PlanVariances
{
    private const int Named = 3;

    /// <summary>
    /// What the plan doesn't say and counts as it came, so that no part of a difference is of it; empty where it says all.
    /// </summary>
    public IReadOnlyList<string> AsCame =>
    [
        .. Told("hours", lacks.Hours, Season.Known.Hours),
        .. Told("seed and supplies", lacks.Cost, Season.Known.Costs),
    ];

    private IEnumerable<string> Told(string what, IReadOnlyCollection<string> crops, string? notOnRecord)
    {
        if (crops.Count > 0)
        {
            string named = crops.Count > Named ? Season.Notation.Text($"{crops.Count} crops") : string.Join(", ", crops);
            yield return $"{what} of {named}{(notOnRecord is null ? "" : " (not on record either, so none are counted)")}";
        }
    }

    /// <summary>Crops of which a row of the plan says no hours, or no cost.</summary>
    private sealed record NotInPlan(IReadOnlyCollection<string> Hours, IReadOnlyCollection<string> Cost)
    {
        internal static NotInPlan Of(PlanDraft plan)
        {
            string[] Crops(Func<DraftPlanting, bool> lacks) =>
            [
                .. plan.Plantings.Where(one => one.CropYear == plan.CropYear && lacks(one)).Select(one => one.Crop)
                    .Distinct(StringComparer.OrdinalIgnoreCase),
            ];
            return new(Crops(one => one.Hours is null), Crops(one => one.Cost is null));
        }

        /// <summary>
        /// The plan with what it doesn't say as it came: hours by what was to be picked, or by length where nothing was; seed and supplies
        /// by length. Of a crop that wasn't grown nothing tells it.
        /// </summary>
        internal Dictionary<string, CropFactors> AsTheyCame(
            Dictionary<string, CropFactors> planned, Dictionary<string, CropFactors> actual) =>
            planned.ToDictionary(
                crop => crop.Key,
                crop => actual.TryGetValue(crop.Key, out CropFactors? came) ? AsItCame(crop.Key, crop.Value, came) : crop.Value,
                StringComparer.OrdinalIgnoreCase
            );

        private CropFactors AsItCame(string crop, CropFactors planned, CropFactors came)
        {
            decimal length = came.BedFeet > 0m ? planned.BedFeet / came.BedFeet : 0m;
            decimal picked = planned.Picked > 0m && came.Picked > 0m ? planned.Picked / came.Picked : length;
            return planned with
            {
                Hours = Hours.Contains(crop, StringComparer.OrdinalIgnoreCase) ? came.Hours * picked : planned.Hours,
                Inputs = Cost.Contains(crop, StringComparer.OrdinalIgnoreCase) ? came.Inputs * length : planned.Inputs,
            };
        }
    }
}
