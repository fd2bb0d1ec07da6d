namespace FarmEconomics.Records;

/// <summary>A crop with its units resolved.</summary>
public sealed class Crop
{
    // Quantities are split in units of 10^-8; a column may hold a number of 10 decimals, and so may the conversion of its unit.
    private const int QuantityDecimals = 8;

    internal Crop(int index, CropRow row)
    {
        Index = index;
        Row = row;
        Name = row.Crop.Trim();
        Group = string.IsNullOrWhiteSpace(row.Group) ? "(no group)" : row.Group.Trim();
        Units[row.Unit.Trim()] = 1m;
    }

    /// <summary>Position in the crops table.</summary>
    public int Index { get; }

    /// <summary>The row it came from.</summary>
    public CropRow Row { get; }

    /// <summary>The crop's name.</summary>
    public string Name { get; }

    /// <summary>The unit it is counted in.</summary>
    public string Unit => Row.Unit.Trim();

    /// <summary>The group it belongs to; "(no group)" if none.</summary>
    public string Group { get; }

    /// <summary>True when plantings stay over several crop years.</summary>
    public bool Perennial => Row.Perennial == true;

    /// <summary>Names of the pools it is kept in.</summary>
    public IReadOnlyList<string> Stores { get; internal set; } = [];

    /// <summary>How many of the crop's own units each known unit holds.</summary>
    internal Dictionary<string, decimal> Units { get; } = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>A quantity in the crop's own unit, to 8 decimals.</summary>
    /// <param name="quantity">The quantity as written.</param>
    /// <param name="unit">Its unit; blank: the crop's own.</param>
    /// <returns>The quantity in the crop's own unit.</returns>
    /// <exception cref="KeyNotFoundException">The unit has no conversion; the records check reports it first.</exception>
    public decimal ToBase(decimal quantity, string? unit) =>
        decimal.Round(quantity * UnitsIn(unit), QuantityDecimals, MidpointRounding.AwayFromZero);

    /// <summary>How many of the crop's own units another one holds.</summary>
    internal decimal UnitsIn(string? unit) => string.IsNullOrWhiteSpace(unit) ? 1m : Units[unit.Trim()];

    /// <summary>The crop's name.</summary>
    public override string ToString() => Name;
}

/// <summary>A permanent bed or a shelf of trays.</summary>
public sealed class Bed
{
    internal Bed(BedRow row, decimal standardWidthIn)
    {
        Row = row;
        Name = row.Bed.Trim();
        Structure = string.IsNullOrWhiteSpace(row.Structure) ? "open field" : row.Structure.Trim();
        WidthFactor = row.WidthIn is { } width ? width / standardWidthIn : 1m;
    }

    /// <summary>The row it came from.</summary>
    public BedRow Row { get; }

    /// <summary>The bed's name.</summary>
    public string Name { get; }

    /// <summary>The structure it lies in; "open field" if none.</summary>
    public string Structure { get; }

    /// <summary>Bed-feet per foot of length: its width over the standard width.</summary>
    public decimal WidthFactor { get; }

    /// <summary>The bed's name.</summary>
    public override string ToString() => Name;
}

/// <summary>A channel goods leave through.</summary>
public sealed class Channel
{
    internal Channel(int index, ChannelRow row, bool implied)
    {
        Index = index;
        Row = row;
        Name = row.Channel.Trim();
        Implied = implied;
    }

    /// <summary>Position in the channels table.</summary>
    public int Index { get; }

    /// <summary>The row it came from.</summary>
    public ChannelRow Row { get; }

    /// <summary>The channel's name.</summary>
    public string Name { get; }

    /// <summary>True when there is no channels table and the kind was taken from the name.</summary>
    public bool Implied { get; }

    /// <summary>The kind of channel.</summary>
    public ChannelKind Kind => Row.Kind;

    /// <summary>Sold for money: market, stand, wholesale or share.</summary>
    public bool IsSold => Kind is ChannelKind.Market or ChannelKind.Stand or ChannelKind.Wholesale or ChannelKind.Share;

    /// <summary>Sold for a price of its own: market, stand or wholesale.</summary>
    public bool IsPriced => Kind is ChannelKind.Market or ChannelKind.Stand or ChannelKind.Wholesale;

    /// <summary>The channel's name.</summary>
    public override string ToString() => Name;
}

/// <summary>A shared cost and how it is shared out.</summary>
public sealed class Pool
{
    internal Pool(int index, PoolRow row)
    {
        Index = index;
        Row = row;
        Name = row.Pool.Trim();
        Basis = Basis.Parse(row.Basis);
    }

    /// <summary>Position among the farm's pools: the built-in ones first, then the table's, then one per channel.</summary>
    public int Index { get; }

    /// <summary>The row it came from.</summary>
    public PoolRow Row { get; }

    /// <summary>The pool's name.</summary>
    public string Name { get; }

    /// <summary>How it is shared out.</summary>
    public Basis Basis { get; }

    /// <summary>The basis used when the first has no weights at all; only built-in pools have one.</summary>
    public Basis? Fallback { get; internal init; }

    /// <summary>The channel whose pool it is, or null.</summary>
    public Channel? Channel { get; internal init; }

    /// <summary>The line its money stands on.</summary>
    public StatementLine Line => Row.StatementLine;

    /// <summary>True for a pool whose labor stays on the overhead line and outside labor hours.</summary>
    public bool IsOverhead => Line == StatementLine.Overhead;

    /// <summary>What its running cost varies with; fixed if not said.</summary>
    public CostDriver VariesWith => Row.VariesWith ?? CostDriver.Fixed;

    /// <summary>The pool's name.</summary>
    public override string ToString() => Name;
}

/// <summary>One bed's part of a planting.</summary>
public sealed class BedPlanting
{
    internal BedPlanting(Planting planting, PlantingRow row, Bed bed)
    {
        Planting = planting;
        Row = row;
        Bed = bed;
        BedFeet = row.BedFeet * bed.WidthFactor;
    }

    /// <summary>The planting.</summary>
    public Planting Planting { get; }

    /// <summary>The row it came from.</summary>
    public PlantingRow Row { get; }

    /// <summary>The bed.</summary>
    public Bed Bed { get; }

    /// <summary>Bed-feet at the standard width.</summary>
    public decimal BedFeet { get; }

    /// <summary>The day it came into the bed.</summary>
    public DateOnly In => Row.InBed;
}

/// <summary>A planting: all rows of one name.</summary>
public sealed class Planting
{
    internal Planting(int index, string name, Crop crop)
    {
        Index = index;
        Name = name;
        Crop = crop;
    }

    /// <summary>Position by first row in the file.</summary>
    public int Index { get; }

    /// <summary>The planting's name.</summary>
    public string Name { get; }

    /// <summary>The crop.</summary>
    public Crop Crop { get; }

    /// <summary>Its beds, in file order.</summary>
    public IReadOnlyList<BedPlanting> Beds => BedList;

    internal List<BedPlanting> BedList { get; } = [];

    /// <summary>The planting's name.</summary>
    public override string ToString() => Name;
}
