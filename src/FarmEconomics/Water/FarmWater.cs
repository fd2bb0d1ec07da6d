using FarmEconomics.Records;
using FarmEconomics.Tracing;

namespace FarmEconomics.Water;

/// <summary>A farm's blocks, weather and watering, and every sowing that stands in a block.</summary>
public sealed class FarmWater
{
    private FarmWater(FarmTrace trace, Func<BedStay, DateOnly> end, bool ahead)
    {
        Records = trace.Records;
        Ahead = ahead;
        Weather = FarmWeather.Of(Records);
        Blocks = [.. BlocksOf(Records)];
        Log = new WaterLog(Records, Blocks);
        Sowings = Weather.WhyUnknown is null ? SowingsOf(trace, end) : [];
    }

    /// <summary>The records.</summary>
    public FarmRecords Records { get; }

    /// <summary>True where days after the weather table are looked at too, as still to come.</summary>
    public bool Ahead { get; }

    /// <summary>The weather.</summary>
    public FarmWeather Weather { get; }

    /// <summary>The blocks, in the order of their table.</summary>
    public IReadOnlyList<WaterBlock> Blocks { get; }

    /// <summary>What was put on.</summary>
    public WaterLog Log { get; }

    /// <summary>The sowings that stand in blocks, bed row by bed row; none where the weather isn't known.</summary>
    public IReadOnlyList<SowingWater> Sowings { get; }

    /// <summary>Why there is no balance of water; null where there is one.</summary>
    public string? WhyUnknown => Weather.WhyUnknown ?? (Blocks.Count == 0 ? "there is no blocks table" : null);

    /// <summary>Follows a farm's water.</summary>
    /// <param name="trace">The farm.</param>
    /// <param name="end">The first day a stay's bed is free again; null: as traced.</param>
    /// <param name="ahead">True to look at days after the weather table too, as still to come.</param>
    /// <returns>The farm's water.</returns>
    public static FarmWater Of(FarmTrace trace, Func<BedStay, DateOnly>? end = null, bool ahead = false)
    {
        ArgumentNullException.ThrowIfNull(trace);
        return new FarmWater(trace, end ?? (stay => stay.Out), ahead);
    }

    private static IEnumerable<WaterBlock> BlocksOf(FarmRecords records)
    {
        ILookup<string, BedRow> beds = records.Tables.Beds.ToLookup(bed => (bed.Block ?? "").Trim(), StringComparer.OrdinalIgnoreCase);
        int index = 0;
        foreach (BlockRow row in records.Tables.Blocks)
        {
            yield return new WaterBlock(row, index++, [.. beds[row.Block.Trim()]], records.Settings);
        }
    }

    private List<SowingWater> SowingsOf(FarmTrace trace, Func<BedStay, DateOnly> end)
    {
        Dictionary<string, WaterBlock> byName = Blocks.ToDictionary(block => block.Name, StringComparer.OrdinalIgnoreCase);
        List<SowingWater> sowings = [];
        foreach (Enterprise enterprise in trace.Enterprises)
        {
            foreach (BedStay stay in enterprise.Stays)
            {
                if (byName.GetValueOrDefault((stay.Bed.Row.Block ?? "").Trim()) is { } block
                    && SpanOf(enterprise, stay, end(stay)) is { } span)
                {
                    sowings.Add(new SowingWater(stay, block, span, this));
                }
            }
        }

        return sowings;
    }

    // Before the weather begins nothing can be followed; a sowing that stood then begins with it, its soil full.
    private SowingSpan? SpanOf(Enterprise enterprise, BedStay stay, DateOnly end)
    {
        FarmSettings settings = Records.Settings;
        (DateOnly from, DateOnly to) = enterprise.Crop.Perennial
            ? (Later(stay.In, settings.StartOf(enterprise.CropYear)), Earlier(end, settings.EndOf(enterprise.CropYear)))
            : (stay.In, end);
        return to > from && to > Weather.First ? new SowingSpan(from, to, enterprise.CropYear) : null;
    }

    /// <summary>The weather of a day, as far as it is looked at.</summary>
    internal WeatherDay WeatherOn(DateOnly day) => Ahead && day > Weather.Last ? Weather.Ahead(day) : Weather.On(day);

    private static DateOnly Later(DateOnly one, DateOnly other) => one > other ? one : other;

    private static DateOnly Earlier(DateOnly one, DateOnly other) => one < other ? one : other;
}
