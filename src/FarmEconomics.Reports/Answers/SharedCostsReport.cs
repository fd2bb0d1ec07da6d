using FarmEconomics.Budgets;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Plots;
using FarmEconomics.Reports.Season;
using FarmEconomics.Reports.Shared;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Answers;

/// <summary>The blocks of the page on shared costs.</summary>
public enum SharedCostsBlock
{
    /// <summary>The finding.</summary>
    Headline,

    /// <summary>What was divided, owning, not used, the crops' part.</summary>
    Figures,

    /// <summary>Every shared cost.</summary>
    Costs,

    /// <summary>Who used power and heat.</summary>
    Users,

    /// <summary>Who used power.</summary>
    Power,

    /// <summary>Who used heat.</summary>
    Heat,

    /// <summary>What to do about it.</summary>
    ToDo,

    /// <summary>The folds, by part.</summary>
    Details,
}

/// <summary>What may be asked of it.</summary>
public sealed record SharedCostsParameters : ReportParameters
{
    /// <summary>Whose charges are listed.</summary>
    [Field("Crop", "whose charges are listed; empty = the one that brought in most", Choice = "crop")]
    public string Crop { get; init; } = "";


    /// <summary>The power pool.</summary>
    [Field("Power", "the shared cost that the electrical loads draw on; empty = found by the loads", Choice = "pool")]
    public string Power { get; init; } = "";

    /// <summary>The heat pool.</summary>
    [Field("Heat", "the shared cost that gives heat, by measured use; empty = the largest measured one but power", Choice = "pool")]
    public string Heat { get; init; } = "";

    /// <summary>The store.</summary>
    [Field("Store", "a shared cost divided by crate-days; empty = the one that held most", Choice = "store")]
    public string Store { get; init; } = "";

    /// <summary>The pool to divide otherwise.</summary>
    [Field("Divide otherwise", "this shared cost is divided in other ways for comparison", Choice = "pool")]
    public string Choice { get; init; } = "general overhead";
}

/// <summary>Where power, heat, cold and the other shared costs went, and what stood idle.</summary>
public sealed class SharedCostsReport : Report<SharedCostsParameters>
{
    /// <inheritdoc/>
    public override ReportId Id => ReportId.SharedCosts;

    /// <inheritdoc/>
    public override string? Tab => "Shared costs";

    /// <inheritdoc/>
    public override bool StandsAlone => true;

    /// <inheritdoc/>
    public override IReadOnlyList<Block> Make(ReviewedFarm farm, SharedCostsParameters parameters, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(farm);
        ArgumentNullException.ThrowIfNull(parameters);
        SeasonReview season = farm.Season;
        SharedCostParts parts = new(farm);
        if (!parts.Any)
        {
            return [parts.Headline];
        }

        string power = parameters.Power.Length == 0 ? SharedTables.PowerPool(season) : parameters.Power;
        string heat = parameters.Heat.Length == 0 ? SharedTables.HeatPool(season) : parameters.Heat;
        (ReportTable methods, ReportTable bases) = OtherWays(farm, parameters.Choice, cancellation);
        return
        [
            parts.Headline,
            parts.Figures,
            parts.Costs(),
            .. parts.Users(power, heat),
            parts.ToDo(methods),
            Owning(season),
            Fold("flow", "Who used what", ("figure", FlowPicture.Of(season)), ("words", SharedSentences.Flow(season))),
            .. Uses(season, parameters, power, heat),
            CropFold(farm, parameters.Crop),
            Ways(season, methods, bases),
            Fold("method", "How shared cost is divided", ("words", new Prose(Method))),
        ];
    }

    private const string Method = "Costs no single crop causes are divided among the crops by use: bed time, crates, hours, "
        + "or what was measured. Things that serve each other, as a boiler's pump and the panels' shed do, are worked out exactly. "
        + "No crop pays for capacity you didn't use, unless the setting idle_capacity says so. "
        + "Owning is depreciation and interest on money tied up.";

    private static FoldBlock Fold(string part, string heading, params IEnumerable<(string Part, object Shown)> shown) =>
        Carried.Fold(SharedCostsBlock.Details, part, heading, shown);

    private static FoldBlock Owning(SeasonReview season) => Fold(
        "owning",
        "Owning, running and where it went, in full",
        ("figure", new Picture(onPhone => SharedPlots.OwnershipAgainstRunning(season, onPhone))),
        ("words", SharedSentences.Kinds(season)),
        ("capacity", PoolTables.Capacity(season)),
        ("idle", SharedSentences.Idle(season)),
        ("pools", PoolTables.Pools(season)));

    /// <inheritdoc/>
    public override (string Question, Prose Answer)? InALine(ReviewedFarm farm)
    {
        ArgumentNullException.ThrowIfNull(farm);
        SeasonReview season = farm.Season;
        SharedCostParts parts = new(farm);
        if (!parts.Any)
        {
            return ("Where did shared costs go?", new Prose("None are on record."));
        }

        decimal crops = season.Pools.Sum(pool => pool.ToCrops.Amount),
            unused = season.Pools.Sum(pool => pool.Unused.Amount);
        string share =
            season.Farm.TotalCost.Amount > 0m && season.Known.NoFullNetReturn is null
                ? $": {BlockNumber.Percent(crops / season.Farm.TotalCost.Amount, farm.Notation)} of what the crops cost"
                : "";
        string idle = unused > 0m && season.Known.Ownership is null
            ? $" Capacity nobody used cost {BlockNumber.Of(unused, Look.WholeMoney, farm.Notation)}." : "";
        string reached = $"{BlockNumber.Of(crops, Look.WholeMoney, farm.Notation)} reached the crops{share}{parts.LeftOut}.";
        return ("Where did shared costs go?", new Prose(reached + idle));
    }

    /// <summary>
    /// The season worked out again, three times by method and up to three times by basis: most of the page's time, so side by side.
    /// </summary>
    private static (ReportTable Methods, ReportTable Bases) OtherWays(ReviewedFarm farm, string choice, CancellationToken cancellation)
    {
        Task<ReportTable> methods = Task.Run(() => farm.SharingMethods, cancellation);
        ReportTable bases = SharedTables.Bases(farm.Season, choice);
        cancellation.ThrowIfCancellationRequested();
        return (methods.GetAwaiter().GetResult(), bases);
    }

    private static IEnumerable<Block> Uses(SeasonReview season, SharedCostsParameters parameters, string power, string heat)
    {
        // What a farm doesn't have makes no fold with nothing in it.
        string store = parameters.Store.Length == 0 ? SharedTables.Store(season) : parameters.Store;
        if (power.Length > 0 || season.Records.Tables.Loads.Count > 0)
        {
            yield return Fold(
                "power",
                "Power, month by month",
                ("figure", new Picture(onPhone => SharedPlots.PowerByMonth(season, onPhone))),
                ("words", SharedSentences.Power(season)),
                ("users", SharedTables.UsersOf(season, power))
            );
        }

        if (heat.Length > 0)
        {
            yield return Fold(
                "heat",
                "Heat, by who used it",
                ("words", SharedSentences.Users(season, heat)),
                ("users", SharedTables.UsersOf(season, heat))
            );
        }

        if (store.Length > 0)
        {
            yield return Fold(
                "store",
                "What filled the store",
                ("figure", new Picture(onPhone => StorePlot.Of(season, store, onPhone))),
                ("words", SharedSentences.Store(season, store))
            );
        }
    }

    // What the fold shows when no crop is named: the one that brought in most.
    private static string LargestCrop(SeasonReview season) =>
        season.Crops.OrderByDescending(crop => crop.Output.Amount).FirstOrDefault()?.Name
        ?? throw new InvalidOperationException($"No crop has a planting in {season.CropYear}.");

    private static FoldBlock CropFold(ReviewedFarm farm, string crop)
    {
        string name = crop.Length == 0 ? LargestCrop(farm.Season) : crop;
        return Carried.Fold(
            SharedCostsBlock.Details,
            "crop",
            $"One crop's part: {name}",
            ("charges", PoolTables.ChargesOf(farm.Season, name))
        ) with
        {
            ScreenOnly = true,
        };
    }

    private static FoldBlock Ways(SeasonReview season, ReportTable methods, ReportTable bases) =>
        Carried.Fold(
            SharedCostsBlock.Details,
            "ways",
            "The same, divided another way",
            ("methods-words", SharedSentences.Choice(season, methods)),
            ("methods-figure", new Picture(onPhone => ChoicePlot.Of(methods, onPhone))),
            ("methods", methods),
            ("bases-words", SharedSentences.Choice(season, bases)),
            ("bases-figure", new Picture(onPhone => ChoicePlot.Of(bases, onPhone))),
            ("bases", bases)
        ) with
        {
            ScreenOnly = true,
        };
}
