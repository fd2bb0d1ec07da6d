using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Units;

namespace FarmEconomics.Tracing;

/// <summary>What is to be remembered of a row of the sales table beside its numbers.</summary>
[Flags]
internal enum DispositionMarks : byte
{
    /// <summary>Nothing.</summary>
    None = 0,

    /// <summary>The row says itself what it is worth: an amount or a price per unit.</summary>
    OwnValue = 1,

    /// <summary>The row names a planting.</summary>
    NamesPlanting = 2,

    /// <summary>It should carry a value, but no list price was found.</summary>
    ValueIncomplete = 4,
}

/// <summary>All rows of the sales table in columns, crop by crop, each crop's by date, then file order.</summary>
internal sealed class DispositionTable
{
    private readonly ChannelKind[] kinds;
    private readonly ChannelFee[] fees;

    internal DispositionTable(FarmRecords records)
    {
        Records = records;
        kinds = [.. records.Channels.Select(channel => channel.Kind)];

        // Household use, gifts and waste carry none, since their amount is 0.
        fees = [.. records.Channels.Select(channel => new ChannelFee(channel.Row.FeePercent ?? 0m))];
        int count = records.Sales.Count;
        int[] crops = new int[count];
        int[] days = new int[count];
        (TextCells names, DayCells dates) = (SaleRow.CropColumn.Cells(records.Sales.Table), SaleRow.DateColumn.Cells(records.Sales.Table));
        RowRanges.ForEach(count, (from, to) =>
        {
            for (int i = from; i < to; i++)
            {
                int row = records.Sales.IndexOf(i);
                crops[i] = records.CropAt(names[row]);
                days[i] = dates.DayNumber(row);
            }
        });
        Layout = new CropLayout(records.Crops.Count, crops, days);

        // Crop and day of each row were only needed to lay them out: their room is used again.
        (Channel, Day) = (crops, days);
        (Quantity, Amount, ListValue) = (new long[count], new long[count], new long[count]);
        Marks = new DispositionMarks[count];
        RowRanges.ForEach(count, Fill);
    }

    internal FarmRecords Records { get; }

    internal CropLayout Layout { get; }

    /// <summary>Position of the row among the sales.</summary>
    internal int[] Row => Layout.RowOf;

    internal int[] Day { get; }

    internal int[] Channel { get; }

    internal long[] Quantity { get; }

    /// <summary>Cents; at first what the row says itself.</summary>
    internal long[] Amount { get; }

    /// <summary>Cents.</summary>
    internal long[] ListValue { get; }

    internal DispositionMarks[] Marks { get; }

    internal int Count => Row.Length;

    internal ChannelKind Kind(int place) => kinds[Channel[place]];

    internal bool HasOwnValue(int place) => (Marks[place] & DispositionMarks.OwnValue) != 0;

    internal bool IsSold(int place) => Kind(place) is var kind && (IsSold(kind) || (kind == ChannelKind.Other && HasOwnValue(place)));

    /// <summary>Cents.</summary>
    internal long Fee(int place) => fees[Channel[place]].Of(Amount[place]);

    /// <summary>The places of what was sold or used from a day to before another, by date, then file order.</summary>
    internal ArraySegment<int> PlacesOfDays(int from, int to)
    {
        int first = FirstFrom(from);
        return new ArraySegment<int>(Layout.ByDate, first, FirstFrom(to) - first);
    }

    private int FirstFrom(int day)
    {
        (int low, int high) = (0, Count);
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = Day[Layout.ByDate[middle]] < day ? (middle + 1, high) : (low, middle);
        }

        return low;
    }

    private static bool IsSold(ChannelKind kind) =>
        kind is ChannelKind.Market or ChannelKind.Stand or ChannelKind.Wholesale or ChannelKind.Share;

    private void Fill(int from, int to)
    {
        RecordTable sales = Records.Sales.Table;
        (DayCells days, TextCells channels, TextCells plantings) = (
            SaleRow.DateColumn.Cells(sales),
            SaleRow.ChannelColumn.Cells(sales),
            SaleRow.PlantingColumn.Cells(sales)
        );
        (NumberCells quantities, TextCells units) = (SaleRow.QuantityColumn.Cells(sales), SaleRow.UnitColumn.Cells(sales));
        (NumberCells amounts, NumberCells prices) = (SaleRow.AmountColumn.Cells(sales), SaleRow.UnitPriceColumn.Cells(sales));
        UnitNames own = new(Records, sales);
        int crop = Layout.CropAt(from);
        for (int place = from; place < to; place++)
        {
            while (place >= Layout.Starts[crop + 1])
            {
                crop++;
            }

            int row = Records.Sales.IndexOf(Row[place]);
            Day[place] = days.DayNumber(row);
            Channel[place] = Records.ChannelAt(channels[row]);
            Quantity[place] = own.Quantity(crop, units[row], quantities, row);
            long? value = !amounts.IsBlank(row) ? CentsOf(amounts, row)
                : prices[row] is { } price ? ExactUnits.Cents(quantities[row]!.Value * price)
                : null;
            Amount[place] = value ?? 0;
            Marks[place] = (plantings[row] == 0 ? DispositionMarks.None : DispositionMarks.NamesPlanting)
                | (value is null ? DispositionMarks.None : DispositionMarks.OwnValue);
        }
    }

    private static long CentsOf(NumberCells amounts, int row) =>
        amounts.TryUnits(row, out long amount) ? ExactUnits.UnitsToCents(amount) : ExactUnits.Cents(amounts[row]!.Value);
}
