using FarmEconomics.Budgets;
using FarmEconomics.Files;
using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Reports.Answers;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Plots;

namespace FarmEconomics.Page.Farm;

/// <summary>A farm's records as they stood when they were read, with what the pages offer to choose from.</summary>
internal sealed class OpenedFarm
{
    private readonly Lock gate = new();
    private readonly Dictionary<int, ReviewedFarm> reviewed = [];
    private readonly Dictionary<int, SeasonTables> tables = [];
    private readonly FarmFolder folder;
    private readonly Dictionary<string, IReadOnlyList<string>> choices;

    internal OpenedFarm(FarmFolder folder)
    {
        this.folder = folder;
        Settings = folder.Review?.Records.Settings ?? folder.Reading.FarmSettings;
        Years = folder.Review?.CropYears ?? [];
        LatestYear = folder.Review is { CropYears.Count: > 0 } review ? review.LatestCropYear : 0;
        FarmRecords? records = folder.Review?.Records;
        choices = records is null
            ? []
            : new Dictionary<string, IReadOnlyList<string>>
            {
                ["crop"] = Sorted(records.Crops.Select(crop => crop.Name)),
                ["store"] = Sorted(records.Pools.Where(pool => pool.Basis.Kind == BasisKind.CrateDays).Select(pool => pool.Name)),
                ["channel with prices"] = [.. records.Channels.Where(channel => channel.IsPriced).Select(channel => channel.Name)],
                ["selling channel"] =
                [
                    .. records
                        .Channels.Where(channel => channel.Kind is ChannelKind.Market or ChannelKind.Stand or ChannelKind.Wholesale)
                        .Select(channel => channel.Name),
                ],
                ["channel"] = [.. records.Channels.Select(channel => channel.Name)],
                ["pool"] = Sorted(records.Pools.Select(pool => pool.Name)),
                ["place"] = LatestYear == 0 ? [] : BedMap.Places(folder.Review!.Season(LatestYear)),
                ["plan"] =
                [
                    .. NextYearParameters.Plans.Where(plan =>
                        plan != NextYearParameters.AsInRecords || PlanOnFile.Years(records).Contains(LatestYear + 1)
                    ),
                ],
                ["project"] = [.. folder.Reading.Tables.Funding.Select(row => row.Project).Distinct()],
            };
    }

    /// <summary>What was in the files.</summary>
    internal string Fingerprint { get; init; } = "";

    internal FarmSettings Settings { get; }

    internal IReadOnlyList<int> Years { get; }

    /// <summary>The season just ended; 0 when there is none.</summary>
    internal int LatestYear { get; }

    /// <summary>The names to choose from; null when the records don't tell.</summary>
    internal IReadOnlyList<string>? Choices(string ofWhat) => choices.TryGetValue(ofWhat, out IReadOnlyList<string>? names) ? names : null;

    /// <summary>Works with the folder; one at a time, since a review is not made for several threads.</summary>
    internal T With<T>(Func<FarmFolder, T> work)
    {
        lock (gate)
        {
            return work(folder);
        }
    }

    /// <summary>The reports worked out so far.</summary>
    internal AnsweredReports Answered { get; } = new();

    /// <summary>
    /// What a season's reports are worked out from; 0: the latest. What one of them worked out the next one finds; several may ask at a
    /// time.
    /// </summary>
    /// <exception cref="ArgumentException">There is no such year.</exception>
    internal ReviewedFarm Reviewed(int year)
    {
        int wanted = year == 0 ? LatestYear : year;
        lock (gate)
        {
            if (!reviewed.TryGetValue(wanted, out ReviewedFarm? farm))
            {
                reviewed[wanted] = farm = ReviewedFarm.Of(folder, wanted);
            }

            return farm;
        }
    }

    /// <summary>A season's tables to take along; 0: the latest. Made once: who looks at their list then fetches some of them.</summary>
    /// <returns>The tables, or null when errors stop the review or there is no such year.</returns>
    internal SeasonTables? Tables(int year) =>
        WithSeason(year, (farm, season) => tables.TryGetValue(season.CropYear, out SeasonTables? made)
            ? made : tables[season.CropYear] = SeasonTables.Of(farm, season));

    /// <summary>Works with a season; 0: the latest.</summary>
    /// <returns>The work's result, or null when errors stop the review or there is no such year.</returns>
    internal T? WithSeason<T>(int year, Func<FarmFolder, SeasonReview, T> work)
        where T : class =>
        With(farm =>
            farm.Review is { } review && (year == 0 ? LatestYear : year) is var wanted && review.CropYears.Contains(wanted)
                ? work(farm, review.Season(wanted))
                : null
        );

    private static List<string> Sorted(IEnumerable<string> names) => [.. names.Distinct().Order(StringComparer.OrdinalIgnoreCase)];
}
