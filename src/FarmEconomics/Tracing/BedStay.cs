using FarmEconomics.Records;

namespace FarmEconomics.Tracing;

/// <summary>
/// One bed's part of a planting with the days it was held: what the row says, and where it says nothing, what follows from harvests.
/// </summary>
public sealed class BedStay
{
    private readonly BedPlanting part;

    internal BedStay(BedPlanting part) => this.part = part;

    /// <summary>The planting.</summary>
    public Planting Planting => part.Planting;

    /// <summary>The row it came from.</summary>
    public PlantingRow Row => part.Row;

    /// <summary>The bed.</summary>
    public Bed Bed => part.Bed;

    /// <summary>Bed-feet at the standard width.</summary>
    public decimal BedFeet => part.BedFeet;

    /// <summary>The day it came into the bed.</summary>
    public DateOnly In => part.In;

    /// <summary>The first day the bed was free again, worked out from the row, the last harvest or the closing date.</summary>
    public DateOnly Out { get; internal set; }

    /// <summary>Days held in the bed, at least 1.</summary>
    public int Days => Math.Max(1, Out.DayNumber - In.DayNumber);

    /// <summary>True while it stands in the bed: from the day it came in to the day before it left.</summary>
    /// <param name="day">The day.</param>
    /// <returns>True when in bed.</returns>
    public bool IsInBed(DateOnly day) => In <= day && day < Out;

    /// <summary>
    /// True on a day something could be picked of it: while it stands, and on the day written as its last, since a bed is picked before it
    /// is cleared.
    /// </summary>
    /// <param name="day">The day.</param>
    internal bool CanBePicked(DateOnly day) => IsInBed(day) || (day == Row.OutOfBed && In <= day);

    /// <summary>True while it stands in the nursery: sown and not yet in the bed.</summary>
    /// <param name="day">The day.</param>
    /// <returns>True when in the nursery.</returns>
    public bool IsInNursery(DateOnly day) => Row.Sown is { } sown && sown <= day && day < In;

    /// <summary>Days held in the bed inside a span.</summary>
    /// <param name="from">First day of the span.</param>
    /// <param name="to">First day after the span.</param>
    /// <returns>Days.</returns>
    internal int DaysWithin(DateOnly from, DateOnly to) =>
        Math.Max(0, Math.Min(Out.DayNumber, to.DayNumber) - Math.Max(In.DayNumber, from.DayNumber));
}
