using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Losses;
using FarmEconomics.Decisions.Short;
using FarmEconomics.Files;
using FarmEconomics.Funding;
using FarmEconomics.Planning.Variances;
using FarmEconomics.Pricing;
using FarmEconomics.Records;
using FarmEconomics.Reports.Funding;
using FarmEconomics.Reports.Shared;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Frame;

/// <summary>
/// What a report is worked out from: the records as they stood, one season of them, and what several reports need of it, worked out once by
/// whoever asks first. Several threads may ask; who asks while another works it out waits for it.
/// </summary>
public sealed class ReviewedFarm
{
    /// <summary>A grower goes back and forth between a few plans; each holds its program.</summary>
    private const int MostKept = 4;

    private readonly SeasonReview? season;
    private readonly Lazy<SeasonCosts> costs;
    private readonly Lazy<Verdicts> verdicts;
    private readonly Lazy<WhatWasShort> shorts;
    private readonly Lazy<FundingWriteUp> writeUp;
    private readonly Lazy<PriceBook> prices;
    private readonly Lazy<Sowings> sowings;
    private readonly Lazy<PickedTree> picked;
    private readonly Lazy<PlanVariances?> planned;
    private readonly Lazy<ReportTable> sharingMethods;
    private readonly Lock keeping = new();
    private readonly List<(object Asked, object Answer)> kept = [];

    private ReviewedFarm(FarmFolder folder, SeasonReview? season)
    {
        Folder = folder;
        this.season = season;
        Slugs = new CropSlugs((folder.Review?.Records.Crops ?? []).Select(crop => crop.Name));
        costs = new(() => SeasonCosts.Of(Season));
        verdicts = new(() => Verdicts.Of(Review, Costs));
        shorts = new(() => WhatWasShort.Of(Costs));
        writeUp = new(() => WriteUpReport.Make(Review, Season.CropYear));
        prices = new(() => PriceBook.Of(Review, Season.CropYear, new PriceTerms()));
        sowings = new(() => FarmEconomics.Decisions.Losses.Sowings.Of(Season));
        picked = new(() => PickedTree.Of(Costs));
        planned = new(() => PlanVariances.Of(Costs));
        sharingMethods = new(() => SharedTables.Methods(Review, Season.CropYear));
    }

    /// <summary>The records.</summary>
    public FarmFolder Folder { get; }

    /// <summary>True when a season can be reviewed; false when errors stop every figure.</summary>
    public bool IsReviewed => season is not null;

    /// <summary>All years traced.</summary>
    /// <exception cref="RecordsException">Errors stop every figure.</exception>
    public FarmReview Review =>
        Folder.Review ?? throw new RecordsException([.. Folder.Problems.Where(problem => problem.Severity == Severity.Error)]);

    /// <summary>The season.</summary>
    /// <exception cref="RecordsException">Errors stop every figure.</exception>
    public SeasonReview Season =>
        season ?? throw new RecordsException([.. Folder.Problems.Where(problem => problem.Severity == Severity.Error)]);

    /// <summary>The farm's settings, those being tried among them.</summary>
    public FarmSettings Settings => Folder.Review?.Records.Settings ?? Folder.Reading.FarmSettings;

    /// <summary>How the farm writes.</summary>
    public Notation Notation => Settings.Notation;

    /// <summary>The names of crops in addresses.</summary>
    public CropSlugs Slugs { get; }

    /// <summary>The season's costs by what they vary with.</summary>
    public SeasonCosts Costs => costs.Value;

    /// <summary>Verdicts on all crops at the assumptions the program ships with.</summary>
    public Verdicts Verdicts => verdicts.Value;

    /// <summary>What was short.</summary>
    public WhatWasShort Shorts => shorts.Value;

    /// <summary>The statements a lender sees, at the assumptions the program ships with.</summary>
    public FundingWriteUp WriteUp => writeUp.Value;

    /// <summary>The prices, at the terms the program ships with.</summary>
    public PriceBook Prices => prices.Value;

    /// <summary>Every sowing beside its crop.</summary>
    public Sowings Sowings => sowings.Value;

    /// <summary>Where the harvest went.</summary>
    public PickedTree Picked => picked.Value;

    /// <summary>The season beside the plan on file for it; null where none is.</summary>
    public PlanVariances? Planned => planned.Value;

    /// <summary>
    /// Begins, on another core, what the season's page asks for beside the verdicts: whoever asks for it waits for what is still being
    /// worked out, and meets there what went wrong.
    /// </summary>
    internal void BeginAside() => Task.Run(() => (Shorts, WriteUp, Prices));

    /// <summary>
    /// What one report took long to work out: its last answers are kept, for whoever asks the same again. Who asks meanwhile waits, so that
    /// nothing is worked out twice; what was stopped is not kept.
    /// </summary>
    /// <typeparam name="T">What it is.</typeparam>
    /// <param name="asked">What was asked, compared by value.</param>
    /// <param name="make">Works it out.</param>
    internal T Kept<T>(object asked, Func<T> make)
        where T : class
    {
        lock (keeping)
        {
            if (kept.Find(one => one.Answer is T && one.Asked.Equals(asked)).Answer is T there)
            {
                return there;
            }

            T made = make();
            kept.Insert(0, (asked, made));
            if (kept.Count > MostKept)
            {
                kept.RemoveAt(MostKept);
            }

            return made;
        }
    }

    /// <summary>What is left over of each crop by the ways of working out costs that serve each other.</summary>
    public ReportTable SharingMethods => sharingMethods.Value;

    /// <summary>A season of a folder; 0: the season just ended. Where errors stop the review, a farm that is not reviewed.</summary>
    /// <param name="folder">The records.</param>
    /// <param name="year">The crop year.</param>
    /// <exception cref="ArgumentException">The records tell nothing of that year.</exception>
    public static ReviewedFarm Of(FarmFolder folder, int year = 0)
    {
        ArgumentNullException.ThrowIfNull(folder);
        if (folder.Review is not { CropYears.Count: > 0 } review)
        {
            return new ReviewedFarm(folder, null);
        }

        int wanted = year == 0 ? review.LatestCropYear : year;
        return review.CropYears.Contains(wanted)
            ? new ReviewedFarm(folder, review.Season(wanted))
            : throw new ArgumentException(
                $"There are no records for crop year {wanted}; there are for {string.Join(", ", review.CropYears)}.",
                nameof(year)
            );
    }
}
