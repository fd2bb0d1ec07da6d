using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;
using FarmEconomics.Water;

namespace FarmEconomics.Tests.Water;

/// <summary>A small dry farm: blocks of one bed each, weather of a hot month, crops of different worth.</summary>
internal static class DryFarm
{
    internal static readonly DateOnly Morning = new(2025, 7, 10);

    private static readonly string[] CropNames = ["Tomatoes", "Lettuce", "Potatoes", "Basil", "Carrots"];

    /// <summary>The farm with so many blocks.</summary>
    /// <param name="blocks">How many.</param>
    /// <param name="setGallons">Whole sets of the blocks, null: in part; repeated.</param>
    /// <param name="et0">Inches a day.</param>
    internal static FarmBuilder With(int blocks, decimal?[]? setGallons = null, decimal et0 = 0.25m)
    {
        FarmBuilder farm = new(new FarmSettings { UnpaidHours = UnpaidHours.None });
        farm.Channel("Market", ChannelKind.Market).Spend("2025-05-02", 10m, "seed");
        foreach (string crop in CropNames)
        {
            farm.Crop(crop);
        }

        for (int i = 0; i < blocks; i++)
        {
            string crop = CropNames[i % CropNames.Length];
            farm.Tables.Add<BedRow>(new RowValues
            {
                ["bed"] = $"Bed {i}",
                ["length_ft"] = 100m,
                ["block"] = $"Block {i}",
                Source = new SourceLine("beds.csv", i + 2)
            });
            farm.Planting($"{crop} {i}", crop, $"Bed {i}", 60 + (i % 3 * 20), "2025-05-20", "2025-09-01")
                .Pick("2025-08-01", $"{crop} {i}", 40 + (10 * i))
                .Sell("2025-08-01", crop, "Market", 40 + (10 * i), 2m + i, planting: $"{crop} {i}");
            farm.Tables.Add<BlockRow>(new RowValues
            {
                ["block"] = $"Block {i}",
                ["soil_water_in_ft"] = 0.8m + (0.3m * (i % 4)),
                ["sprinkler_gph"] = 60m,
                ["set_gallons"] = setGallons?[i % setGallons.Length],
                Source = new SourceLine("blocks.csv", i + 2),
            });
        }

        for (DateOnly day = new(2025, 5, 1); day < new DateOnly(2025, 10, 1); day = day.AddDays(1))
        {
            farm.Tables.Add<WeatherRow>(new RowValues
            {
                ["date"] = day,
                ["et0_in"] = et0,
                ["rain_in"] = day.DayNumber % 9 == 0 && day < new DateOnly(2025, 7, 1) ? 0.9m : 0m,
                Source = new SourceLine("weather.csv", 2 + day.DayOfYear),
            });
        }

        return farm;
    }

    /// <summary>A worth that differs by block, all of it to come.</summary>
    internal static double? Worth(SowingWater sowing, DateOnly day) =>
        day < new DateOnly(2025, 8, 1) ? 120 + (70 * (sowing.Block.Index * 7 % 5)) : 0;

    internal static FarmWater Farm(FarmBuilder builder) => FarmWater.Of(builder.Review().Trace);
}
