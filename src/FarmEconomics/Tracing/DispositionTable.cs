using FarmEconomics.Records;
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
    private readonly decimal[] feePercents;

    internal DispositionTable(FarmRecords records)
    {
        Records = records;
        kinds = [.. records.Channels.Select(channel => channel.Kind)];
        feePercents = [.. records.Channels.Select(channel => channel.IsSold || channel.Kind == ChannelKind.Other ? channel.Row.FeePercent ?? 0m : 0m)];
        int count = records.Sales.Count;
        int[] crops = new int[count];
        int[] days = new int[count];
        RowRanges.ForEach(count, (from, to) =>
        {
            for (int i = from; i < to; i++)
            {
                SaleRow row = records.Sales[i];
                crops[i] = records.Crop(row.Crop).Index;
                days[i] = row.Date.DayNumber;
            }
        });
        Layout = new CropLayout(records.Crops.Count, crops, days);
        (Row, Day, Channel) = (new int[count], new int[count], new int[count]);
        (Quantity, Amount, ListValue) = (new long[count], new long[count], new long[count]);
        Marks = new DispositionMarks[count];
        RowRanges.ForEach(count, Fill);
    }

    internal FarmRecords Records { get; }

    internal CropLayout Layout { get; }

    /// <summary>Position of the row among the sales.</summary>
    internal int[] Row { get; }

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
    internal long Fee(int place)
    {
        decimal percent = feePercents[Channel[place]];
        return percent == 0m || Amount[place] == 0 ? 0 : ExactUnits.Cents(Units.Money.Rounded(ExactUnits.Money(Amount[place]).Amount * percent / 100m).Amount);
    }

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

    private static bool IsSold(ChannelKind kind) => kind is ChannelKind.Market or ChannelKind.Stand or ChannelKind.Wholesale or ChannelKind.Share;

    private void Fill(int from, int to)
    {
        for (int i = from; i < to; i++)
        {
            int place = Layout.PlaceOf[i];
            SaleRow row = Records.Sales[i];
            Row[place] = i;
            Day[place] = row.Date.DayNumber;
            Channel[place] = Records.Channel(row.Channel).Index;
            Quantity[place] = ExactUnits.Of(string.IsNullOrWhiteSpace(row.Unit) ? row.Quantity : Records.Crop(row.Crop).ToBase(row.Quantity, row.Unit));
            Marks[place] = string.IsNullOrWhiteSpace(row.Planting) ? DispositionMarks.None : DispositionMarks.NamesPlanting;
            if (row.Amount is { } amount)
            {
                Amount[place] = ExactUnits.Cents(amount);
                Marks[place] |= DispositionMarks.OwnValue;
            }
            else if (row.UnitPrice is { } price)
            {
                Amount[place] = ExactUnits.Cents(row.Quantity * price);
                Marks[place] |= DispositionMarks.OwnValue;
            }
        }
    }
}
