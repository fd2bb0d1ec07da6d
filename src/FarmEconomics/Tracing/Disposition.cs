using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Tracing;

/// <summary>
/// A row of the sales table with its quantity, money and value worked out: something sold, eaten, given away or thrown out. A view of a
/// row of columns; the
/// default value is of none.
/// </summary>
public readonly record struct Disposition
{
    private readonly PartTable parts;
    private readonly int place;

    internal Disposition(PartTable parts, int place)
    {
        this.parts = parts;
        this.place = place;
    }

    /// <summary>The row.</summary>
    public SaleRow Row => Table.Records.Sales[Table.Row[place]];

    /// <summary>The crop.</summary>
    public Crop Crop => Table.Records.Crops[Table.Layout.CropAt(place)];

    /// <summary>The channel.</summary>
    public Channel Channel => Table.Records.Channels[Table.Channel[place]];

    /// <summary>The day.</summary>
    public DateOnly Date => DateOnly.FromDayNumber(Table.Day[place]);

    /// <summary>
    /// Sold for money: through a market, stand, wholesale or share channel, and through one of kind other where the row carries money
    /// of its
    /// own. Quantity and money then both count in the average price; of any other row neither does.
    /// </summary>
    public bool IsSold => Table.IsSold(place);

    /// <summary>Quantity in the crop's unit.</summary>
    public decimal Quantity => ExactUnits.Value(Table.Quantity[place]);

    /// <summary>The crop-year window of its date.</summary>
    public int Window => Table.Records.Settings.WindowOf(Date);

    /// <summary>Money: the sale's amount, or what a share payment's split gave it, or 0.</summary>
    public Money Amount => ExactUnits.Money(Table.Amount[place]);

    /// <summary>The channel's fee.</summary>
    public Money Fee => ExactUnits.Money(Table.Fee(place));

    /// <summary>What it is worth at list price: household use and the weights of share income; otherwise 0.</summary>
    public Money ListValue => ExactUnits.Money(Table.ListValue[place]);

    /// <summary>True when it should carry a value but no list price was found.</summary>
    public bool ValueIncomplete => Table.Marks[place].HasFlag(DispositionMarks.ValueIncomplete);

    /// <summary>What it drew on, in drawing order; an unmatched part stands last, one share per planting it was spread over.</summary>
    public IReadOnlyList<DispositionPart> Parts
    {
        get
        {
            PartTable table = parts;
            return
            [
                .. Enumerable
                    .Range(table.First[place], table.First[place + 1] - table.First[place])
                    .Select(part => new DispositionPart(table, part)),
            ];
        }
    }

    private DispositionTable Table => parts.Dispositions;

    /// <summary>What it is.</summary>
    /// <returns>The crop, the channel, the day and the quantity.</returns>
    public override string ToString() =>
        parts is null ? "" : $"{Crop} {Channel} {Date:yyyy-MM-dd} {Notation.Default.Text($"{Quantity:0.####}")}";
}

/// <summary>A part of a disposition that landed on one enterprise. A view of a row of columns; the default value is of none.</summary>
public readonly record struct DispositionPart
{
    private readonly PartTable table;
    private readonly int place;

    internal DispositionPart(PartTable table, int place)
    {
        this.table = table;
        this.place = place;
    }

    /// <summary>The disposition it is a part of.</summary>
    public Disposition Disposition => new(table, table.Disposition[place]);

    /// <summary>The lot drawn on, or null for an unmatched part.</summary>
    public Lot? Lot => table.Source[place] is >= 0 and int lot ? new Lot(table.Lots, lot) : null;

    /// <summary>Where it landed; null: not assigned.</summary>
    public Enterprise? Enterprise => table.EnterpriseOf(place) is >= 0 and int enterprise ? table.Lots.Enterprises[enterprise] : null;

    /// <summary>Quantity in the crop's unit.</summary>
    public decimal Quantity => ExactUnits.Value(table.Quantity[place]);

    /// <summary>Its part of the money.</summary>
    public Money Amount => ExactUnits.Money(table.Amount(place));

    /// <summary>Its part of the fee.</summary>
    public Money Fee => ExactUnits.Money(table.Fee(place));

    /// <summary>Its part of the list value.</summary>
    public Money ListValue => ExactUnits.Money(table.ListValue(place));

    /// <summary>Days from harvest to the day it was sold or used, 0 when it was noted before its harvest; null when unmatched.</summary>
    public int? DaysHeld => table.Source[place] >= 0 ? table.DaysHeld(place) : null;

    /// <summary>The crop year it landed in; the window of its date when it isn't assigned.</summary>
    internal int CropYear => Enterprise?.CropYear ?? Disposition.Window;

    /// <summary>What it is.</summary>
    /// <returns>The disposition, the enterprise and the quantity.</returns>
    public override string ToString() =>
        table is null ? "" : $"{Disposition}: {Notation.Default.Text($"{Quantity:0.####}")} of {Enterprise}";
}
