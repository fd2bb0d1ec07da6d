using FarmEconomics.Funding;
using FarmEconomics.Planning;
using FarmEconomics.Planning.Programs;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Planning;

namespace FarmEconomics.Reports.Answers;

/// <summary>Where a plan comes from.</summary>
internal enum PlanSource
{
    /// <summary>The best mix.</summary>
    Best,

    /// <summary>The plan tables of the records.</summary>
    Records,

    /// <summary>The season's plantings again.</summary>
    LikeLastYear,
}

/// <summary>A crop's length in the season and in the plan.</summary>
/// <param name="Crop">The crop.</param>
/// <param name="Before">Bed-feet in the season.</param>
/// <param name="After">Bed-feet planned.</param>
/// <param name="Sowings">How many sowings are planned; what stands already isn't counted.</param>
/// <param name="First">The first of them comes into its bed; null: none does.</param>
/// <param name="Last">The last does.</param>
internal sealed record CropLength(string Crop, decimal Before, decimal After, int Sowings, DateOnly? First, DateOnly? Last);

/// <summary>The plan that a page shows, and the season's plantings again, which it is held against.</summary>
internal sealed class ShownPlan
{
    private ShownPlan(ReviewedFarm farm, PlanModel model)
    {
        (Farm, Model) = (farm, model);
        Opening = farm.WriteUp.NextYear.OpeningCash;
    }

    internal ReviewedFarm Farm { get; }

    internal PlanModel Model { get; }

    internal PlanSource Source { get; private init; }

    /// <summary>The best mix; null where none was looked for.</summary>
    internal BestMix? Mix { get; private init; }

    /// <summary>The best mix's lengths as they are told; null where there is none, or no plan keeps within the limits.</summary>
    internal PlanLengths? Chosen { get; private init; }

    /// <summary>The plan's rows.</summary>
    internal required PlanDraft Draft { get; init; }

    /// <summary>What it does.</summary>
    internal required PlanOutlook Outlook { get; init; }

    /// <summary>What the season's plantings again would do.</summary>
    internal required PlanOutlook Before { get; init; }

    /// <summary>Plans from most to safest; null: not asked for.</summary>
    internal SafePlans? Safe { get; private init; }

    /// <summary>True where there is a solver to look for a best mix.</summary>
    internal bool HasSolver { get; private init; }

    /// <summary>Cash at the beginning of the year, by the balance sheet; null: not known.</summary>
    internal decimal? Opening { get; }

    /// <summary>The plan's cash with a line of credit at the farm's interest, from what there is at the beginning.</summary>
    internal CreditLine Credit => PlanWords.Credit(Outlook, Farm.Settings, Opening ?? 0m);

    /// <summary>Why costs of the plan, or of the season's plantings again, aren't known; null where they are.</summary>
    internal string? CostsUnknown => Outlook.CostsUnknown ?? Before.CostsUnknown;

    /// <summary>Why their hours aren't known; null where they are.</summary>
    internal string? HoursUnknown => Outlook.HoursUnknown ?? Before.HoursUnknown;

    /// <summary>Cash the plan brings in the year beyond the season's plantings again; sales alone where costs aren't known.</summary>
    internal decimal MoreCash => Outlook.Months.Sum(Brought) - Before.Months.Sum(Brought);

    /// <summary>Own hours it takes beyond them.</summary>
    internal decimal MoreOwnHours => Own(Outlook) - Own(Before);

    /// <summary>Hired hours it takes beyond them.</summary>
    internal decimal MoreHiredHours => Outlook.Weeks.Sum(week => week.Hours) - Before.Weeks.Sum(week => week.Hours) - MoreOwnHours;

    /// <summary>What it brings beyond them by the mix's own score; null where that can't be told.</summary>
    internal decimal? Gain => Chosen is { } chosen ? Mix!.Gain(chosen) : null;

    /// <summary>Cash at the end of each month, without a line of credit.</summary>
    internal IReadOnlyList<decimal> Closing => Closings(Outlook);

    /// <summary>The same for the season's plantings again.</summary>
    internal IReadOnlyList<decimal> ClosingBefore => Closings(Before);

    /// <summary>Why no mix can be chosen and no cash told: of nothing that was grown a price is on record. Null where one is.</summary>
    internal static string? NoPrices(ReviewedFarm farm) => PlanOutlook.NoPrices(farm.Season);

    /// <summary>Finds the plan that is asked for.</summary>
    /// <param name="farm">The farm.</param>
    /// <param name="asked">What is asked.</param>
    /// <param name="solver">The solver; null: there is none.</param>
    /// <param name="cancellation">Stops it between two steps.</param>
    /// <exception cref="ArgumentException">There is no such plan.</exception>
    internal static ShownPlan Of(ReviewedFarm farm, NextYearParameters asked, ILinearSolver? solver, CancellationToken cancellation)
    {
        PlanSettings settings = new()
        {
            OwnWage = asked.OwnHour < 0m ? null : asked.OwnHour,
            OpeningCash = farm.WriteUp.NextYear.OpeningCash,
            UnpaidInvoices = farm.WriteUp.Closing?.UnpaidInvoices ?? 0m,
        };
        PlanModel model = PlanFacts.Of(farm.Review, farm.Costs, settings);
        cancellation.ThrowIfCancellationRequested();
        PlanDraft? onFile = PlanOnFile.Of(farm.Season.Records, model.CropYear);
        ILinearSolver? chooser = NoPrices(farm) is null ? solver : null;
        return asked.Plan switch
        {
            NextYearParameters.AsInRecords when onFile is null => throw new ArgumentException(
                $"There is no plan for {model.CropYear} in your records; take one over from this page, or put plan.csv with them."
            ),
            "" or NextYearParameters.AsInRecords when onFile is not null => OnFile(farm, model, onFile, solver),
            "" or NextYearParameters.BestMix when chooser is not null => Best(farm, model, (chooser, asked), cancellation),
            "" or NextYearParameters.BestMix or NextYearParameters.LikeLastYear => Again(farm, model, solver),
            _ => throw new ArgumentException(
                $"There is no plan \"{asked.Plan}\"; ask for {string.Join(", ", NextYearParameters.Plans.Select(plan => $"\"{plan}\""))}."
            ),
        };
    }

    /// <summary>Every crop's length.</summary>
    internal IReadOnlyList<CropLength> Lengths()
    {
        double[] today = [.. Today(Model)];
        Dictionary<string, decimal> widths = Farm
            .Season.Records.Tables.Beds.GroupBy(bed => bed.Bed.Trim(), StringComparer.OrdinalIgnoreCase)
            .ToDictionary(
                bed => bed.Key,
                bed => (bed.First().WidthIn ?? Farm.Settings.StandardBedWidthIn) / Farm.Settings.StandardBedWidthIn,
                StringComparer.OrdinalIgnoreCase
            );
        ILookup<string, DraftPlanting> planned = Draft.Plantings.ToLookup(one => one.Crop, StringComparer.OrdinalIgnoreCase);
        List<CropLength> lengths = [];
        foreach (
            string crop in Model.Crops.Select(crop => crop.Name).Union(planned.Select(crop => crop.Key), StringComparer.OrdinalIgnoreCase)
        )
        {
            int place = Enumerable.Range(0, Model.Crops.Count).FirstOrDefault(c => Model.Crops[c].Name == crop, -1);
            int[] own = [.. Enumerable.Range(0, Model.Sowings.Count).Where(i => Model.Sowings[i].Crop == place)];
            decimal after = Chosen is { } chosen
                ? (decimal)own.Sum(i => chosen.Feet[i])
                : planned[crop].Sum(one => one.BedFeet * widths.GetValueOrDefault(one.Bed, 1m));
            DraftPlanting[] sown = [.. planned[crop].Where(one => one.In >= Model.Start)];
            lengths.Add(new CropLength(crop, (decimal)own.Sum(i => today[i]), after, sown.Select(one => one.Planting).Distinct().Count(),
                sown.Length > 0 ? sown.Min(one => one.In) : null, sown.Length > 0 ? sown.Max(one => one.In) : null));
        }

        return lengths;
    }

    private static ShownPlan Best(
        ReviewedFarm farm,
        PlanModel model,
        (ILinearSolver Solver, NextYearParameters Asked) by,
        CancellationToken cancellation
    )
    {
        BestMix mix = BestMix.Of(model, by.Solver, BestMix.LimitsTold);

        // Before other lengths are scored: those of the season were the last.
        PlanDraft again = SoldAsWell(farm, model, mix.QuantitiesOf);
        cancellation.ThrowIfCancellationRequested();
        PlanLengths? chosen = mix.SimplerIn((double)by.Asked.Piece);
        cancellation.ThrowIfCancellationRequested();
        PlanQuantities? quantities = chosen is null ? null : mix.QuantitiesOf(chosen.Feet);
        PlanDraft draft = quantities is null ? again : DraftMaker.Of(farm.Season.Records, model, chosen!.Feet, quantities);
        return new ShownPlan(farm, model)
        {
            Source = PlanSource.Best,
            HasSolver = true,
            Mix = mix,
            Safe = by.Asked.HowSafe ? SafePlans.Of(farm, mix, by.Solver) : null,
            Chosen = quantities is null ? null : chosen,
            Draft = draft,
            Outlook = PlanOutlook.Of(farm.Season, model, draft),
            Before = PlanOutlook.Of(farm.Season, model, again),
        };
    }

    private static ShownPlan OnFile(ReviewedFarm farm, PlanModel model, PlanDraft draft, ILinearSolver? solver)
    {
        PlanDraft again = solver is null ? LikeLastYear.Of(farm.Season, model)
            : SoldAsWell(farm, model, feet => PlanQuantities.Of(model, solver, feet));
        return new ShownPlan(farm, model)
        {
            Source = PlanSource.Records,
            HasSolver = solver is not null,
            Draft = draft,
            Outlook = PlanOutlook.Of(farm.Season, model, draft),
            Before = PlanOutlook.Of(farm.Season, model, again),
        };
    }

    private static ShownPlan Again(ReviewedFarm farm, PlanModel model, ILinearSolver? solver)
    {
        PlanDraft again = LikeLastYear.Of(farm.Season, model);
        PlanOutlook outlook = PlanOutlook.Of(farm.Season, model, again);
        return new ShownPlan(farm, model)
        {
            Source = PlanSource.LikeLastYear,
            HasSolver = solver is not null,
            Draft = again,
            Outlook = outlook,
            Before = outlook,
        };
    }

    // The season's plantings again, picked and sold as well as a best mix is: what a plan adds is then its lengths alone.
    private static PlanDraft SoldAsWell(
        ReviewedFarm farm, PlanModel model, Func<double[], PlanQuantities?> quantitiesOf)
    {
        double[] today = [.. Today(model)];
        return quantitiesOf(today) is { } quantities
            ? DraftMaker.Of(farm.Season.Records, model, today, quantities)
            : LikeLastYear.Of(farm.Season, model);
    }

    private static IEnumerable<double> Today(PlanModel model) =>
        model.Sowings.Select(sowing => sowing.Bounds.Least > 0.0 ? sowing.Bounds.Least : sowing.Today);

    private decimal Brought(PlanMonth month) => CostsUnknown is null ? month.Net : month.Sales + month.Shares + month.OtherIncome;

    private static decimal Own(PlanOutlook outlook) => outlook.Weeks.Sum(week => Math.Min(week.Hours, week.Own));

    private List<decimal> Closings(PlanOutlook outlook)
    {
        List<decimal> closing = [];
        foreach (PlanMonth month in outlook.Months)
        {
            closing.Add((closing.Count == 0 ? Opening ?? 0m : closing[^1]) + month.Left);
        }

        return closing;
    }
}

/// <summary>Plans from most to safest with the seasons they were scored on.</summary>
internal sealed record SafePlans(CarefulPlans Plans, PlanSeasons Seasons)
{
    /// <summary>Finds them; null without a best mix.</summary>
    internal static SafePlans? Of(ReviewedFarm farm, BestMix mix, ILinearSolver solver)
    {
        if (mix.Best is null)
        {
            return null;
        }

        PlanSeasons seasons = PlanSeasons.Of(farm.Review, farm.Costs, mix.Model);
        return new SafePlans(CarefulPlans.Of(mix, solver, seasons), seasons);
    }
}
