using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Avoidable;

/// <summary>Where what refills a box comes from.</summary>
public enum RefillSource
{
    /// <summary>It was thrown out, given away or never left: it costs nothing.</summary>
    NotSold,

    /// <summary>The household would have eaten it: no cash, its value in the books.</summary>
    Household,

    /// <summary>It would have sold elsewhere, at that price less fee and packaging.</summary>
    Sold,

    /// <summary>Bought from others.</summary>
    BoughtIn,
}

/// <summary>One filling of a week's boxes.</summary>
/// <param name="Share">The share channel.</param>
/// <param name="Day">The day of the boxes.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="Crop">The crop; null for what is bought in.</param>
/// <param name="From">The part of a leaving it is taken from; null for what never left and for what is bought in.</param>
/// <param name="Quantity">Quantity in the crop's unit; 0 for what is bought in.</param>
/// <param name="ListValue">Its list value in the boxes.</param>
/// <param name="Lost">What the farm loses by it, to the cent.</param>
public sealed record RefillItem(
    Channel Share,
    DateOnly Day,
    RefillSource Source,
    Crop? Crop,
    DispositionPart? From,
    decimal Quantity,
    Money ListValue,
    Money Lost
);

/// <summary>The boxes of one delivery week before and after a change.</summary>
/// <param name="Share">The share channel.</param>
/// <param name="First">The first day of the delivery week.</param>
/// <param name="Paid">The week's part of what members paid.</param>
/// <param name="Before">List value as it was.</param>
/// <param name="Missing">List value the change takes out.</param>
/// <param name="Filled">List value put in again.</param>
public sealed record BoxWeek(Channel Share, DateOnly First, Money Paid, Money Before, Money Missing, Money Filled)
{
    /// <summary>List value after the change.</summary>
    public Money After => Before - Missing + Filled;
}

/// <summary>What it takes to fill boxes up again to what members paid for.</summary>
/// <param name="Items">Fillings, in the order made.</param>
/// <param name="Weeks">Delivery weeks that the change takes something out of.</param>
/// <param name="Paid">What members paid for the shares concerned, all weeks.</param>
/// <param name="ListValue">List value of all their boxes before.</param>
public sealed record Refill(IReadOnlyList<RefillItem> Items, IReadOnlyList<BoxWeek> Weeks, Money Paid, Money ListValue)
{
    /// <summary>Nothing to refill.</summary>
    public static Refill None { get; } = new([], [], Money.Zero, Money.Zero);

    /// <summary>What the farm loses by it.</summary>
    public Money Total => Money.Sum(Items.Select(item => item.Lost));

    /// <summary>List value of the boxes in parts of what members paid, before; not available without payments.</summary>
    public Result Before => Result.Of(ListValue.Amount, Paid.Amount, "members paid nothing");

    /// <summary>The same after the change, refilled.</summary>
    public Result After =>
        Result.Of((ListValue - Money.Sum(Weeks.Select(week => week.Missing - week.Filled))).Amount, Paid.Amount, "members paid nothing");

    /// <summary>The same after the change, if nothing were refilled.</summary>
    public Result Unfilled =>
        Result.Of((ListValue - Money.Sum(Weeks.Select(week => week.Missing))).Amount, Paid.Amount, "members paid nothing");

    /// <summary>List value put in again.</summary>
    public Money Filled => Money.Sum(Weeks.Select(week => week.Filled));
}
