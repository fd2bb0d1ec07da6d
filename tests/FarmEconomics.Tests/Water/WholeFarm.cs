using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;
using FarmEconomics.Water;

namespace FarmEconomics.Tests.Water;

/// <summary>
/// A farm in meters whose figures are whole numbers: beds 1 m wide, all water put on reaches the roots, so that on a bed of 10 m a mm takes
/// 10 liters. Chives stay for years, so that their roots are grown (0.30 m) from the first day; leaves are sown anew. Coefficients and Ky
/// of both are 1.
/// </summary>
internal static class WholeFarm
{
    /// <summary>A soil that holds 3 mm for grown roots, so that a crop that needs 8 a day takes up all there is each day.</summary>
    internal const decimal Thin = 10m;

    /// <summary>One that holds 30 mm, 9 of them without stress.</summary>
    internal const decimal Deep = 100m;

    /// <summary>A farm without blocks and weather.</summary>
    internal static FarmBuilder Built()
    {
        FarmSettings settings = new() { LengthUnit = LengthUnit.M, StandardBedWidthIn = 100m, UnpaidHours = UnpaidHours.None };
        FarmBuilder farm = new FarmBuilder(settings)
            .AsOf("2025-12-31")
            .Crop("Chives", perennial: true)
            .Crop("Leaves");
        foreach (NumberColumn column in (NumberColumn[])[CropRow.KcIniColumn, CropRow.KcMidColumn, CropRow.KcEndColumn, CropRow.KyColumn])
        {
            farm.Set(farm.Tables.Crops[0], column, 1m).Set(farm.Tables.Crops[1], column, 1m);
        }

        return farm;
    }

    /// <summary>A block without beds.</summary>
    internal static FarmBuilder Block(this FarmBuilder farm, string block, decimal soil = Thin) => farm.Add<BlockRow>(new RowValues
    {
        ["block"] = block,
        ["soil_water_in_ft"] = soil,
        ["efficiency_percent"] = 100m,
    });

    /// <summary>A bed of a block, with what stands in it.</summary>
    internal static FarmBuilder Grows(this FarmBuilder farm, string block, string inBed, string? outOfBed, decimal length = 10m,
        string crop = "Chives", string? structure = null, int? cropYear = null)
    {
        string bed = $"{block}, bed {farm.Tables.Beds.Count}";
        return farm.Add<BedRow>(new RowValues { ["bed"] = bed, ["length_ft"] = length, ["block"] = block, ["structure"] = structure })
            .Planting(bed, crop, bed, length, inBed, outOfBed, cropYear: cropYear);
    }

    /// <summary>Days that need so many mm each; null: of which only the rain is known, none.</summary>
    internal static FarmBuilder Weather(this FarmBuilder farm, string from, string last, decimal? et0)
    {
        for (DateOnly day = FarmBuilder.Day(from); day <= FarmBuilder.Day(last); day = day.AddDays(1))
        {
            farm.Add<WeatherRow>(new RowValues { ["date"] = day, ["et0_in"] = et0, ["rain_in"] = 0m });
        }

        return farm;
    }

    /// <summary>Liters put on a block; null: an hour of a sprinkler of which nobody knows what it gives.</summary>
    internal static FarmBuilder Watered(this FarmBuilder farm, string day, string block, decimal? liters) => farm.Add<WateringRow>(new()
    {
        ["date"] = FarmBuilder.Day(day),
        ["block"] = block,
        ["gallons"] = liters,
        ["sprinkler_hours"] = liters is null ? 1m : null,
    });

    internal static FarmWater Water(this FarmBuilder farm) => FarmWater.Of(farm.Review().Trace);

    /// <summary>Four days, July 10 to 13, of thin soil that need 8 mm each, 32 in all; the weather table holds these days only.</summary>
    internal static FarmBuilder FourDays(params string[] blocks)
    {
        FarmBuilder farm = Built().Weather("2025-07-10", "2025-07-13", 8m);
        Array.ForEach(blocks, block => farm.Block(block).Grows(block, "2025-07-10", "2025-07-14"));
        return farm;
    }
}
