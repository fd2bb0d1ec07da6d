using FarmEconomics.Decisions.Short;
using FarmEconomics.Files.Workbooks;
using FarmEconomics.Records;
using FarmEconomics.Water;
using FarmEconomics.Water.Power;

namespace FarmEconomics.Files.Results;

/// <summary>
/// Writes a season's water and power: by week, by crop, by month and by load. Without the records for it, headings alone.
/// </summary>
internal static class SupplyResults
{
    internal const string Weeks = "water_weeks.csv";
    internal const string Crops = "water_crops.csv";
    internal const string Days = "water_days.csv";
    internal const string Worth = "water_worth.csv";
    internal const string Months = "power_months.csv";
    internal const string Loads = "power_loads.csv";

    internal static void Write(WaterAndPower supply, string folder, Workbook? book)
    {
        WriteWeeks(supply, Path.Combine(folder, Weeks), book);
        WriteCrops(supply, Path.Combine(folder, Crops), book);
        WriteDays(supply, Path.Combine(folder, Days), book);
        WriteWorth(supply, Path.Combine(folder, Worth), book);
        WriteMonths(supply, Path.Combine(folder, Months), book);
        WriteLoads(supply, Path.Combine(folder, Loads), book);
    }

    private static void WriteWeeks(WaterAndPower supply, string path, Workbook? book)
    {
        using CsvTable table = Table(supply, path, book,
            "crop_year", "week", "gallons_needed", "gallons_limit", "gallons_put_on", "days_short", "lost_at_limit", "lost_as_watered");
        foreach (WaterWeek week in supply.Water?.Weeks ?? [])
        {
            table.Whole(supply.Season.CropYear).Text($"{week.Monday:yyyy-MM-dd}").Number(Units(supply, week.Needed))
                .Number(Units(supply, week.Limit))
                .Number(Units(supply, week.Put)).Number(week.Limit is null ? null : week.DaysShort)
                .Money((decimal?)week.LostAtLimit).Money((decimal?)week.LostAsWatered);
            table.End();
        }
    }

    private static void WriteCrops(WaterAndPower supply, string path, Workbook? book)
    {
        using CsvTable table = Table(supply, path, book,
            "crop_year", "crop", "contribution", "gallons_needed", "contribution_per_1000_gallons", "lost_at_limit", "lost_as_watered",
                "ky", "ky_from");
        foreach (CropWaterMargin crop in supply.Crops)
        {
            CropWater water = CropWater.Of(crop.Use.Crop);
            table.Whole(supply.Season.CropYear).Text(crop.Use.Crop.Name).Money(crop.Contribution.Value)
                .Number(Units(supply, crop.Use.Needed))
                .Money(crop.PerThousand.Value).Money((decimal?)crop.Use.LostAtLimit).Money((decimal?)crop.Use.LostAsWatered)
                .Number((decimal)water.Response).Text(water.ByStage.IsSet ? "given by stage" : Word(water.ResponseFrom));
            table.End();
        }
    }

    private static void WriteDays(WaterAndPower supply, string path, Workbook? book)
    {
        using CsvTable table = Table(supply, path, book,
            "crop_year", "block", "date", "sowings", "not_told", "gallons_rain", "gallons_watering", "gallons_used", "gallons_stored",
            "gallons_drained", "gallons_missed", "stress", "yield_lost", "lost_as_watered");

        foreach (BlockDay day in supply.Water?.BlockDays() ?? [])
        {
            bool told = day.Sowings > 0;
            decimal? Told(double liters) => told ? Units(supply, liters) : null;
            table
                .Whole(supply.Season.CropYear)
                .Text(day.Block.Name)
                .Text($"{day.Day:yyyy-MM-dd}")
                .Whole(day.Sowings)
                .Whole(day.NotTold)
                .Number(Told(day.Rain))
                .Number(Told(day.Watering))
                .Number(Told(day.Used))
                .Number(Told(day.Stored))
                .Number(Told(day.Drained))
                .Number(Told(day.Missed))
                .Number((decimal?)day.Stress)
                .Number((decimal?)day.YieldLost)
                .Money(told ? (decimal)day.MoneyLost : null);
            table.End();
        }
    }

    private static void WriteWorth(WaterAndPower supply, string path, Workbook? book)
    {
        using CsvTable table = Table(supply, path, book, "crop_year", "more_of", "amount", "counted_in", "saved", "lost_by_less");
        foreach (WaterWorth worth in supply.WorthOfMore)
        {
            (string what, string unit) = worth.Step switch
            {
                WaterStep.Water => ("water", supply.Season.Notation.Label("gallons a day")),
                WaterStep.Sprinklers => ("sprinklers", "sprinklers at once"),
                WaterStep.Hour => ("hours", "hours a day"),
                _ => ("hours and water", "hours a day"),
            };
            table
                .Whole(supply.Season.CropYear)
                .Text(what)
                .Number(worth.Amount)
                .Text(unit)
                .Money(worth.Saved.Value)
                .Money(worth.LostByLess.Value);
            table.End();
        }
    }

    private static void WriteMonths(WaterAndPower supply, string path, Workbook? book)
    {
        using CsvTable table = Table(supply, path, book, "crop_year", "month", "kwh_wanted", "kwh_made", "kwh_spilled", "days_short",
            "kwh_generated",
            "kwh_short", "kwh_saved_by_1_kwh_more_battery", "kwh_lost_by_1_kwh_less_battery", "kwh_saved_by_1_kw_more_panels",
                "kwh_lost_by_1_kw_less_panels");
        foreach (PowerMonth month in supply.Power.Months)
        {
            table.Whole(supply.Season.CropYear).Text($"{month.Month:yyyy-MM}").Number((decimal)month.Load).Number((decimal)month.Made)
                .Number((decimal)month.Spilled).Number(month.DaysShort).Number((decimal)month.Generated).Number((decimal)month.Short)
                .Number((decimal)month.SavedByBattery).Number((decimal)month.CostOfLessBattery).Number((decimal?)month.SavedByPanels)
                .Number((decimal?)month.CostOfLessPanels);
            table.End();
        }
    }

    private static void WriteLoads(WaterAndPower supply, string path, Workbook? book)
    {
        using CsvTable table = Table(supply, path, book, "crop_year", "load", "gives_way", "protects", "kwh_wanted", "kwh_went_without",
            "days");
        foreach (ShedLoad load in supply.Power.WhyUnknown is null ? supply.Power.Shed : [])
        {
            table.Whole(supply.Season.CropYear).Text(load.Load.Row.Load).Number(load.Load.Order).Text(Word(load.Load.Purpose))
                .Number((decimal)load.Wanted).Number((decimal)load.Shed).Number(load.Days);
            table.End();
        }
    }

    private static CsvTable Table(WaterAndPower supply, string path, Workbook? book, params string[] headings) =>
        new(path, book, [.. headings.Select(supply.Season.Notation.Label)]);

    private static decimal? Units(WaterAndPower supply, double? liters) => liters is { } known ? (decimal)(known / supply.LitersPerUnit)
        : null;

    private static string Word(WaterFigure from) => from switch
    {
        WaterFigure.Given => "given",
        WaterFigure.Published => "published",
        WaterFigure.Similar => "similar crop",
        _ => "not listed",
    };

    private static string Word(LoadPurpose purpose) => purpose.ToString().ToLowerInvariant();
}
