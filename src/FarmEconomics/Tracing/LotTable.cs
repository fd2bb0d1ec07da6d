using FarmEconomics.Records;

namespace FarmEconomics.Tracing;

/// <summary>All lots in columns, crop by crop, each crop's by date, then file order.</summary>
internal sealed class LotTable
{
    private readonly Lazy<(int[] Starts, int[] Parts)> draws;

    internal LotTable(FarmRecords records, PlantingCalendar calendar)
    {
        Records = records;
        Enterprises = calendar.Enterprises;
        Picks picks = calendar.TakePicks();
        int count = picks.Count;
        int[] crops = new int[count];
        int[] days = new int[count];
        for (int i = 0; i < count; i++)
        {
            crops[i] = records.Plantings[picks.Planting[i]].Crop.Index;
            days[i] = picks.Day[i];
        }

        Layout = new CropLayout(records.Crops.Count, crops, days);

        // Crop, day and pick of each lot were only needed to lay them out: their room is used again.
        (Enterprise, Day, Row, KeptUntil) = (crops, days, Layout.RowOf, new int[count]);
        (Quantity, Culled, Remaining) = (new long[count], new long[count], new long[count]);
        RowRanges.ForEach(count, (from, to) => Fill(picks, calendar, from, to));
        draws = new(LayOutDraws);
    }

    internal FarmRecords Records { get; }

    internal IReadOnlyList<Enterprise> Enterprises { get; }

    internal CropLayout Layout { get; }

    /// <summary>Position of the harvest row among the harvests.</summary>
    internal int[] Row { get; }

    internal int[] Enterprise { get; }

    internal int[] Day { get; }

    internal int[] KeptUntil { get; }

    internal long[] Quantity { get; }

    internal long[] Culled { get; }

    internal long[] Remaining { get; }

    /// <summary>What was drawn on them, once it is.</summary>
    internal PartTable? Parts { get; set; }

    /// <summary>The parts that drew on a lot, in drawing order.</summary>
    internal ArraySegment<int> DrawsOn(int lot)
    {
        (int[] starts, int[] parts) = draws.Value;
        return new ArraySegment<int>(parts, starts[lot], starts[lot + 1] - starts[lot]);
    }

    private void Fill(Picks picks, PlantingCalendar calendar, int from, int to)
    {
        for (int lot = from; lot < to; lot++)
        {
            int i = Row[lot];
            DateOnly day = DateOnly.FromDayNumber(picks.Day[i]);
            Enterprise enterprise = calendar.EnterpriseOf(Records.Plantings[picks.Planting[i]], day);
            Row[lot] = picks.Row[i];
            Enterprise[lot] = enterprise.Index;
            Day[lot] = picks.Day[i];
            KeptUntil[lot] = LastDayKept(enterprise.Crop, day);
            Quantity[lot] = Remaining[lot] = picks.Quantity[i];
            Culled[lot] = picks.Culled[i];
        }
    }

    private int LastDayKept(Crop crop, DateOnly picked) => crop.Row.StorageDays is { } days
        ? (int)Math.Min(picked.DayNumber + decimal.Floor(days), DateOnly.MaxValue.DayNumber)
        : Records.Settings.EndOf(Records.Settings.WindowOf(picked)).DayNumber - 1;

    private (int[] Starts, int[] Parts) LayOutDraws()
    {
        int[] starts = new int[Row.Length + 1];
        ReadOnlySpan<int> sources = Parts!.Source.AsSpan(0, Parts.Count);
        foreach (int source in sources)
        {
            if (source >= 0)
            {
                starts[source + 1]++;
            }
        }

        for (int i = 0; i < Row.Length; i++)
        {
            starts[i + 1] += starts[i];
        }

        int[] next = starts[..^1];
        int[] parts = new int[starts[^1]];
        for (int part = 0; part < sources.Length; part++)
        {
            if (sources[part] >= 0)
            {
                parts[next[sources[part]]++] = part;
            }
        }

        return (starts, parts);
    }
}
