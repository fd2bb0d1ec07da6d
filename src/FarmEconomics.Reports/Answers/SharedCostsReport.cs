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

    /// <summary>Everything else, by part.</summary>
    Details,
}

/// <summary>What may be asked of it.</summary>
public sealed record SharedCostsParameters : ReportParameters
{
    /// <summary>Whose charges are listed.</summary>
    [Field("Crop", "whose charges are listed; empty = the one with the most output", Choice = "crop")]
    public string Crop { get; init; } = "";

    /// <summary>Size of the solar panels.</summary>
    [Field("Size of the solar panels", "the records hold their cost, not their size", Unit = "kW", Lowest = 0, Highest = 100000)]
    public decimal ArrayKw { get; init; } = 7.2m;

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
        List<Block> blocks =
        [
            new HeadlineBlock(SharedCostsBlock.Headline, "Where the shared costs went", SharedSentences.Answer(season), SeasonWords.SureLine(farm)),
            .. Carried.Of(SharedCostsBlock.Details, "pools", PoolTables.Pools(season)),
            Carried.Fold(SharedCostsBlock.Details, "flow", "Who used what", ("figure", FlowPicture.Of(season)), ("words", SharedSentences.Flow(season))),
            Carried.Fold(SharedCostsBlock.Details, "owning", "Running and owning, used and idle", ("figure", SharedPlots.OwnershipAgainstRunning(season)), ("words", SharedSentences.Kinds(season)), ("capacity", PoolTables.Capacity(season)), ("idle", SharedSentences.Idle(season))),
        ];
        blocks.AddRange(Uses(season, parameters));
        string crop = parameters.Crop.Length == 0 ? PriceAndYield.LargestCrop(season) : parameters.Crop;
        blocks.Add(Carried.Fold(SharedCostsBlock.Details, "crop", "One crop's part", ("charges", PoolTables.ChargesOf(season, crop))));
        cancellation.ThrowIfCancellationRequested();
        ReportTable methods = SharedTables.Methods(farm.Review, season.CropYear), bases = SharedTables.Bases(season, parameters.Choice);
        blocks.Add(Carried.Fold(SharedCostsBlock.Details, "choices", "How much hangs on the way of dividing",
            ("methods-figure", ChoicePlot.Of(methods)), ("methods-words", SharedSentences.Choice(season, methods)), ("methods", methods), ("bases-figure", ChoicePlot.Of(bases)), ("bases-words", SharedSentences.Choice(season, bases)), ("bases", bases)));
        return blocks;
    }

    /// <inheritdoc/>
    public override (string Question, Prose Answer)? InALine(ReviewedFarm farm)
    {
        ArgumentNullException.ThrowIfNull(farm);
        SeasonReview season = farm.Season;
        decimal crops = season.Pools.Sum(pool => pool.ToCrops.Amount), unused = season.Pools.Sum(pool => pool.Unused.Amount);
        string share = season.Farm.TotalCost.Amount > 0m ? $": {BlockNumber.Percent(crops / season.Farm.TotalCost.Amount, farm.Notation)} of what the crops cost" : "";
        return ("Where did shared costs go?", new Prose($"{BlockNumber.Of(crops, Look.WholeMoney, farm.Notation)} reached the crops{share}. Capacity nobody used cost {BlockNumber.Of(unused, Look.WholeMoney, farm.Notation)}."));
    }

    private static IEnumerable<Block> Uses(SeasonReview season, SharedCostsParameters parameters)
    {
        string power = parameters.Power.Length == 0 ? SharedTables.PowerPool(season) : parameters.Power;
        string heat = parameters.Heat.Length == 0 ? SharedTables.HeatPool(season) : parameters.Heat;
        string store = parameters.Store.Length == 0 ? SharedTables.Store(season) : parameters.Store;
        yield return Carried.Fold(SharedCostsBlock.Details, "power", "Power, month by month", ("figure", SharedPlots.PowerByMonth(season, parameters.ArrayKw)), ("words", SharedSentences.Power(season, parameters.ArrayKw)), ("users", SharedTables.UsersOf(season, power)));
        yield return Carried.Fold(SharedCostsBlock.Details, "heat", "Heat by house", ("figure", SharedPlots.UsersOf(season, heat)), ("words", SharedSentences.Users(season, heat)), ("users", SharedTables.UsersOf(season, heat)));
        yield return Carried.Fold(SharedCostsBlock.Details, "store", "What filled the store", ("figure", StorePlot.Of(season, store)), ("words", SharedSentences.Store(season, store)));
    }
}
