using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Tracing;

/// <summary>
/// What one planting gave on one day: the thing sales draw on, first in first out. A view of a row of columns; the default value is of
/// none.
/// </summary>
public readonly record struct Lot
{
    private readonly LotTable table;
    private readonly int place;

    internal Lot(LotTable table, int place)
    {
        this.table = table;
        this.place = place;
    }

    /// <summary>The harvest row it came from.</summary>
    public HarvestRow Row => table.Records.Harvests[table.Row[place]];

    /// <summary>The enterprise it belongs to.</summary>
    public Enterprise Enterprise => table.Enterprises[table.Enterprise[place]];

    /// <summary>The day it was picked.</summary>
    public DateOnly Date => DateOnly.FromDayNumber(table.Day[place]);

    /// <summary>
    /// The last day it keeps: storage_days after the pick; without storage_days the last day of the crop year it was picked in.
    /// </summary>
    public DateOnly KeptUntil => DateOnly.FromDayNumber(table.KeptUntil[place]);

    /// <summary>Quantity in the crop's unit, without what was culled.</summary>
    public decimal Quantity => ExactUnits.Value(table.Quantity[place]);

    /// <summary>Quantity culled in the field.</summary>
    public decimal Culled => ExactUnits.Value(table.Culled[place]);

    /// <summary>What nothing sold or used has drawn.</summary>
    public decimal Remaining => ExactUnits.Value(table.Remaining[place]);

    /// <summary>What drew on it, in order.</summary>
    public IReadOnlyList<DispositionPart> Draws
    {
        get
        {
            PartTable parts = table.Parts!;
            return new ColumnList<DispositionPart>(table.DrawsOn(place), part => new DispositionPart(parts, part));
        }
    }

    /// <summary>Days in store of what was never sold or used: to the day it stopped keeping, or to the closing date.</summary>
    internal int DaysKept(DateOnly closing) => Math.Min(table.KeptUntil[place], closing.DayNumber) - table.Day[place];

    /// <summary>Where it came from.</summary>
    /// <returns>The enterprise, the day and the quantity.</returns>
    public override string ToString() =>
        table is null ? "" : $"{Enterprise} {Date:yyyy-MM-dd} {Notation.Default.Text($"{Quantity:0.####}")}";
}
