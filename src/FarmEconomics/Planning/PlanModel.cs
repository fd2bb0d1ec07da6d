namespace FarmEconomics.Planning;

/// <summary>
/// A farm's next year as a linear program sees it: what may be sown, what there is of beds, hours and stores, and what the channels take.
/// Weeks count from 0, the first day of the crop year; the last one holds the days left over. Money in the farm's currency.
/// </summary>
public sealed record PlanModel
{
    /// <summary>The weeks of a year.</summary>
    public const int Weeks = 52;

    /// <summary>The crop year planned.</summary>
    public required int CropYear { get; init; }

    /// <summary>The first day of the crop year planned.</summary>
    public required DateOnly Start { get; init; }

    /// <summary>What may be sown, and what stands already.</summary>
    public required IReadOnlyList<PlanSowing> Sowings { get; init; }

    /// <summary>The crops.</summary>
    public required IReadOnlyList<PlanCrop> Crops { get; init; }

    /// <summary>Bed length by cover.</summary>
    public required IReadOnlyList<PlanCover> Covers { get; init; }

    /// <summary>Hours by week.</summary>
    public required PlanHours Hours { get; init; }

    /// <summary>List value the boxes of each week must hold.</summary>
    public required IReadOnlyList<double> BoxTarget { get; init; }

    /// <summary>What a unit of money of list value costs to buy in.</summary>
    public required double BuyIn { get; init; }

    /// <summary>Stores with a limit of crates.</summary>
    public IReadOnlyList<PlanStore> Stores { get; init; } = [];

    /// <summary>The most trays that stand in the nursery, by week; null: no limit is on record.</summary>
    public IReadOnlyList<double>? Trays { get; init; }

    /// <summary>Water and the power that pumps it; null: neither is limited.</summary>
    public PlanWater? Water { get; init; }

    /// <summary>Cash by month; null: it isn't limited.</summary>
    public PlanCash? Cash { get; init; }

    /// <summary>Beds free of a family, by family and cover; none: rotation isn't limited.</summary>
    public IReadOnlyList<PlanRotation> Rotation { get; init; } = [];

    /// <summary>What stands in beds from before and isn't among <see cref="Sowings"/>: its beds aren't free until it is out.</summary>
    public IReadOnlyList<TakenBed> Taken { get; init; } = [];

    /// <summary>
    /// What a bed-foot more or fewer of a sowing than this year must bring before it is planned, money: records of a few seasons can't tell
    /// smaller differences from luck. It steers the choice and is no cost: no plan is told less by it.
    /// </summary>
    public double ChangeCost { get; init; }

    /// <summary>What can't be limited, with the reason.</summary>
    public IReadOnlyList<string> NotChecked { get; init; } = [];

    /// <summary>
    /// The same with every length as given; then they may break the limits on beds, trays, stores, rotation, cash and wishes.
    /// </summary>
    internal PlanModel WithLengths(IReadOnlyList<double> feet) => this with
    {
        Sowings = [.. Sowings.Select((sowing, i) => sowing with { Bounds = (feet[i], feet[i]) })],
        Crops = [.. Crops.Select(crop => crop with { Wish = (0.0, double.PositiveInfinity) })],
        Covers = [.. Covers.Select(cover => cover with { Feet = [.. cover.Feet.Select(_ => double.PositiveInfinity)] })],
        Stores = [.. Stores.Select(store => store with { Crates = [.. store.Crates.Select(_ => double.PositiveInfinity)] })],
        Trays = null,
        Cash = null,
        Rotation = [],
        ChangeCost = 0.0,
    };

    /// <summary>What a change must bring, over all sowings of given lengths.</summary>
    internal double ChargeOf(IReadOnlyList<double> feet) =>
        ChangeCost * Sowings.Select((sowing, i) => sowing.Standing.Count > 0 ? 0.0 : Math.Abs(feet[i] - sowing.Today)).Sum();
}

/// <summary>A sowing whose length is chosen: a bed-foot of a crop under a cover, from one week on.</summary>
/// <param name="Crop">The crop's place.</param>
/// <param name="Cover">The cover's place.</param>
/// <param name="Week">The week it comes into the bed; below 0 where it stands already.</param>
/// <param name="WeeksInBed">Weeks it stands there.</param>
public sealed record PlanSowing(int Crop, int Cover, int Week, int WeeksInBed)
{
    /// <summary>Units picked of a bed-foot, by week of the year.</summary>
    public required IReadOnlyList<double> Yield { get; init; }

    /// <summary>Hours of raising and growing a bed-foot, by week of the year.</summary>
    public required IReadOnlyList<double> Hours { get; init; }

    /// <summary>Trays of a bed-foot standing in the nursery, by week of the year.</summary>
    public required IReadOnlyList<double> Trays { get; init; }

    /// <summary>Cost that varies with length and bed time, money a bed-foot.</summary>
    public required double Cost { get; init; }

    /// <summary>True where a season with hours on record grew its crop under its cover; false: its hours aren't 0 but not known.</summary>
    public bool HoursKnown { get; init; } = true;

    /// <summary>True where a season with costs on record grew its crop; false: its cost isn't 0 but not known.</summary>
    public bool CostKnown { get; init; } = true;

    /// <summary>Least and most bed-feet.</summary>
    public (double Least, double Most) Bounds { get; init; } = (0.0, double.PositiveInfinity);

    /// <summary>This year's bed-feet of it.</summary>
    public double Today { get; init; }

    /// <summary>
    /// What a bed-foot earns after the year ends, where it is picked then: its crop's mean contribution before <see cref="Cost"/>; null
    /// where it is picked within the year.
    /// </summary>
    public double? Later { get; init; }

    /// <summary>Units a bed-foot gives after the year ends: all, or what is picked over the turn of the year and falls then.</summary>
    public double LaterUnits { get; init; }

    /// <summary>
    /// What a bed-foot that is first picked within the year earns by standing past its end, money: its <see cref="LaterUnits"/>, less the
    /// hours it takes then.
    /// </summary>
    public double EarnsAfter { get; init; }

    /// <summary>Weeks in the nursery before; 0: sown in place.</summary>
    public int NurseryWeeks { get; init; }

    /// <summary>
    /// Hours of raising and growing a bed-foot in the year before or after the one planned: a planting's row holds them, its weeks don't.
    /// </summary>
    public double HoursBeside { get; init; }

    /// <summary>What a bed-foot of what stands already cost when it was sown, in the year before, money.</summary>
    public double CostBefore { get; init; }

    /// <summary>The week a perennial's cost of the year is paid in; null: what it costs was paid when it was sown.</summary>
    public int? PaidIn { get; init; }

    /// <summary>Trays of a bed-foot, those that stand before the year begins included.</summary>
    public double TraysAFoot { get; init; }

    /// <summary>What stands already, bed by bed.</summary>
    public IReadOnlyList<StandingBed> Standing { get; init; } = [];

    /// <summary>Of what stands: what its crop would still give after the day its row says it leaves its bed; null: nothing.</summary>
    public LostPicking? Lost { get; init; }

    /// <summary>The part of its harvest that is picked after the year, 0 to 1.</summary>
    internal double PartAfter => Later is not null ? 1.0 : LaterUnits > 0.0 ? LaterUnits / (Yield.Sum() + LaterUnits) : 0.0;

    /// <summary>True where it holds its bed in a week.</summary>
    /// <param name="week">The week.</param>
    /// <returns>True when in bed.</returns>
    public bool Holds(int week) => Week <= week && week < Week + WeeksInBed;
}

/// <summary>Picking that doesn't come about, since the bed is cleared before.</summary>
/// <param name="Leaves">The day the last of it leaves its bed.</param>
/// <param name="Units">Units a bed-foot would still give.</param>
public sealed record LostPicking(DateOnly Leaves, double Units)
{
    internal static LostPicking? Of(DateOnly leaves, double units) => units > 0.0 ? new(leaves, units) : null;
}

/// <summary>A planting that stands in a bed already.</summary>
/// <param name="Planting">Its name.</param>
/// <param name="Bed">The bed.</param>
/// <param name="BedFeet">Bed-feet at the standard width.</param>
/// <param name="In">The day it came in.</param>
public sealed record StandingBed(string Planting, string Bed, double BedFeet, DateOnly In)
{
    /// <summary>The day its row says it leaves the bed; null: it says none.</summary>
    public DateOnly? Out { get; init; }
}

/// <summary>A planting that holds its bed in the year planned and of which no harvest is planned.</summary>
/// <param name="Planting">Its name.</param>
/// <param name="Crop">Its crop.</param>
/// <param name="Bed">The bed.</param>
/// <param name="BedFeet">Bed-feet at the standard width.</param>
/// <param name="In">The day it came in.</param>
/// <param name="Out">The day the bed is free again.</param>
/// <param name="IsPicked">True where it is to be picked in the year planned; false: it is the year's before.</param>
public sealed record TakenBed(string Planting, string Crop, string Bed, double BedFeet, DateOnly In, DateOnly Out, bool IsPicked);

/// <summary>A crop.</summary>
/// <param name="Name">Its name.</param>
public sealed record PlanCrop(string Name)
{
    /// <summary>Hours to pick and pack a unit.</summary>
    public required double HandlingHours { get; init; }

    /// <summary>Cost that varies with quantity, money a unit picked.</summary>
    public required double PickedCost { get; init; }

    /// <summary>Packaging, money a unit sold or boxed.</summary>
    public required double SoldCost { get; init; }

    /// <summary>Weeks it can be sold in, that of picking counted; at least 1.</summary>
    public required int Keeps { get; init; }

    /// <summary>What the channels take, by week, the best paying first.</summary>
    public required IReadOnlyList<IReadOnlyList<PlanStep>> Steps { get; init; }

    /// <summary>Most units in the boxes of a week.</summary>
    public double BoxMost { get; init; }

    /// <summary>List value of a unit in a box, by week; empty: it goes into none.</summary>
    public IReadOnlyList<double> BoxValue { get; init; } = [];

    /// <summary>Units of a crate; 0: not known.</summary>
    public double UnitsPerCrate { get; init; }

    /// <summary>Part of it that lies in each store, in the model's order.</summary>
    public IReadOnlyList<double> InStore { get; init; } = [];

    /// <summary>Its plant family; null: not on record.</summary>
    public string? Family { get; init; }

    /// <summary>Least and most bed-feet over the year: the grower's wish.</summary>
    public (double Least, double Most) Wish { get; init; } = (0.0, double.PositiveInfinity);
}

/// <summary>A step of what a channel takes in a week.</summary>
/// <param name="Channel">The channel.</param>
/// <param name="Units">Units of the step.</param>
/// <param name="Price">Money a unit.</param>
/// <param name="Fee">The channel's fee, 0 to 1.</param>
public readonly record struct PlanStep(string Channel, double Units, double Price, double Fee)
{
    /// <summary>Money a unit after the fee.</summary>
    public double Net => Price * (1.0 - Fee);
}

/// <summary>Bed length under a cover.</summary>
/// <param name="Name">The structure; "open field" for none.</param>
/// <param name="Feet">Bed-feet there are, by week.</param>
public sealed record PlanCover(string Name, IReadOnlyList<double> Feet);

/// <summary>Hours by week.</summary>
/// <param name="Own">The most own hours.</param>
/// <param name="Hired">The most hired hours.</param>
/// <param name="Fixed">Hours that come whatever is grown: trips and general work.</param>
/// <param name="OwnCost">What an own hour is worth, money.</param>
/// <param name="HiredCost">What a hired hour costs, money.</param>
public sealed record PlanHours(
    IReadOnlyList<double> Own,
    IReadOnlyList<double> Hired,
    IReadOnlyList<double> Fixed,
    double OwnCost,
    double HiredCost
)
{
    /// <summary>
    /// False where hours may be hired and nothing on record tells what one costs: the mix then counts them like own ones, and no cash is
    /// told.
    /// </summary>
    public bool HiredCostKnown { get; init; } = true;
}

/// <summary>A store with a limit of crates.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Crates">The most crates, by week.</param>
/// <param name="PeakOverMean">The fullest day of a week over its mean, as the seasons had it; at least 1.</param>
public sealed record PlanStore(string Name, IReadOnlyList<double> Crates, double PeakOverMean);

/// <summary>A season that may come, beside the mean one.</summary>
/// <param name="Chance">Its chance, 0 to 1.</param>
/// <param name="Yield">Yield over the mean, by crop.</param>
/// <param name="Price">Price over the mean, by crop.</param>
public sealed record PlanSeason(double Chance, IReadOnlyList<double> Yield, IReadOnlyList<double> Price)
{
    /// <summary>The mean season.</summary>
    /// <param name="crops">How many crops there are.</param>
    /// <returns>The season.</returns>
    public static PlanSeason Mean(int crops) => new(1.0, [.. Enumerable.Repeat(1.0, crops)], [.. Enumerable.Repeat(1.0, crops)]);
}
