using FarmEconomics.Decisions.Short;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;
using FarmEconomics.Water;
using FarmEconomics.Water.Power;

namespace FarmEconomics.Reports.Supply;

/// <summary>A season's water and power in tables.</summary>
public static class SupplyTables
{
    /// <summary>The one line a farm sees that wrote nothing of either.</summary>
    public const string WhatItWouldTell =
        "With weather.csv (rain and temperatures), blocks.csv (what the soil holds) and watering.csv (what you put on) "
        + "this tells which blocks to water first and what a dry spell cost; with battery and panels in farm.csv, when power was short.";

    /// <summary>Need, limit and what was put on, week by week.</summary>
    /// <param name="supply">The season.</param>
    /// <returns>A table; without rows where the water isn't known.</returns>
    public static ReportTable Weeks(WaterAndPower supply)
    {
        ArgumentNullException.ThrowIfNull(supply);
        Notation notation = supply.Season.Notation;
        string volume = notation.Label("gallons");
        ReportTable table = new ReportTable($"Water by week, {supply.Season.CropYear}", notation).InOrder().Column("Week of", Look.Date)
            .Column("Needed", Look.Count, volume).Column("Limit", Look.Count, volume).Column("Put on", Look.Count, volume)
                .Column("Days short", Look.Count)
            .Column("Lost at the limit", Look.WholeMoney).Column("Lost as watered", Look.WholeMoney);
        foreach (WaterWeek week in supply.Water?.Weeks ?? [])
        {
            table.Row(week.Monday, Units(week.Needed), Maybe(week.Limit, Units, "no limit is written"),
                Maybe(week.Put, Units, "no watering is written"),
                week.DaysShort, Maybe(week.LostAtLimit, Money, supply.WhyNoWorth ?? "no limit is written"),
                    Maybe(week.LostAsWatered, Money, supply.WhyNoWorth ?? "no watering is written"));
        }

        if (supply.Water is { DaysWithoutWeather: > 0 and int days })
        {
            table.Note(notation.Text($"What the beds needed on {notation.Count(days, "day")} without weather isn't in it."));
        }

        return table;

        decimal Units(double liters) => (decimal)(liters / supply.LitersPerUnit);
    }

    /// <summary>Each block's water over the season as watered, at the roots of what stood there.</summary>
    /// <param name="supply">The season.</param>
    /// <returns>A table; without rows where no watering is written.</returns>
    public static ReportTable Blocks(WaterAndPower supply)
    {
        ArgumentNullException.ThrowIfNull(supply);
        Notation notation = supply.Season.Notation;
        string volume = notation.Label("1,000 gallons");
        ReportTable table = new ReportTable($"Water by block, {supply.Season.CropYear}", notation).InOrder().Column("Block")
            .Column("Rain", Look.Quantity, volume).Column("Watering", Look.Quantity, volume).Column("Used", Look.Quantity, volume)
            .Column("Drained", Look.Quantity, volume).Column("Missed", Look.Quantity, volume).Column("Lost as watered", Look.WholeMoney)
            .Note("Rain and watering in are used, drained or kept in the soil. At the roots: what didn't reach them isn't in it. "
                + "Weeks without a note and days without weather are left out.");
        foreach (IGrouping<WaterBlock, BlockDay> block in (supply.Water?.BlockDays() ?? []).GroupBy(day => day.Block))
        {
            decimal Sum(Func<BlockDay, double> of) => (decimal)(block.Sum(of) / supply.LitersPerUnit / 1000);
            table.Row(
                block.Key.Name,
                Sum(day => day.Rain),
                Sum(day => day.Watering),
                Sum(day => day.Used),
                Sum(day => day.Drained),
                Sum(day => day.Missed),
                (decimal)block.Sum(day => day.MoneyLost)
            );
        }

        return table;
    }

    /// <summary>The crops beside the water they take.</summary>
    /// <param name="supply">The season.</param>
    /// <returns>A table.</returns>
    public static ReportTable Crops(WaterAndPower supply)
    {
        ArgumentNullException.ThrowIfNull(supply);
        Notation notation = supply.Season.Notation;
        ReportTable table = new ReportTable($"What each crop earned by the water it took, {supply.Season.CropYear}", notation).Opens()
            .Column("Crop")
            .Column("Added to the farm", Look.WholeMoney).Column("Watering it took", Look.Quantity, notation.Label("1,000 gallons"))
            .Column("Added", Look.Rate, per: notation.Label("1,000 gallons")).Column("Lost at the limit", Look.WholeMoney)
            .Column("Lost as watered", Look.WholeMoney);
        foreach (CropWaterMargin crop in supply.Crops)
        {
            table.Row(crop.Use.Crop.Name, crop.Contribution, crop.Needed, crop.PerThousand,
                Maybe(crop.Use.LostAtLimit, Money, crop.Contribution.Reason ?? "no limit is written"),
                Maybe(crop.Use.LostAsWatered, Money, crop.Contribution.Reason ?? "no watering is written"));
        }

        string[] nothing = [.. supply.Crops.Where(crop => crop.Use.Worth == YieldWorth.PaysNothing).Select(crop => crop.Use.Crop.Name)];
        if (nothing.Length > 0)
        {
            table.Note($"More yield of {Phrase.List(nothing)} would have added nothing, so drought took no money there: "
                + "picking and selling it takes all that it brings.");
        }

        // Common practice, no source: what stands for years is watered after its picking as well.
        string[] perennials = [.. supply.Crops.Where(crop => crop.Use.Crop.Perennial).Select(crop => crop.Use.Crop.Name)];
        if (perennials.Length > 0)
        {
            table.Note($"No water is counted as needed after the last picking of {Phrase.List(perennials)}, though next year's crop "
                + "grows then: water by eye.");
        }

        if (supply.Crops.Count > 0 && supply.Season.Known.OwnerLabor is { } why)
        {
            table.Note($"Your own hours count for nothing in these amounts: {why}.");
        }

        return table;
    }

    /// <summary>What more of each limit would have saved over the season.</summary>
    /// <param name="supply">The season.</param>
    /// <returns>A table; without rows where no limit is written.</returns>
    public static ReportTable Worth(WaterAndPower supply)
    {
        ArgumentNullException.ThrowIfNull(supply);
        Notation notation = supply.Season.Notation;
        ReportTable table = new ReportTable($"What more would have saved, {supply.Season.CropYear}", notation).InOrder().Column("With")
            .Column("Would have saved", Look.WholeMoney).Column("As much less would cost", Look.WholeMoney);
        foreach (WaterWorth worth in supply.WorthOfMore)
        {
            table.Row(StepWords(worth, notation), worth.Saved, worth.LostByLess);
        }

        return table;
    }

    internal static string StepWords(WaterWorth worth, Notation notation) => worth.Step switch
    {
        WaterStep.Water => notation.Text($"{worth.Amount:0} gallons more a day"),
        WaterStep.Sprinklers => notation.Text($"another set of {worth.Amount:0.#} sprinklers, the same water"),
        WaterStep.Hour => "an hour more of watering a day, the same water",
        _ => "an hour more of pumping a day, and the water it gives",
    };

    /// <summary>Power month by month.</summary>
    /// <param name="supply">The season.</param>
    /// <returns>A table; without rows where the power isn't known.</returns>
    public static ReportTable Months(WaterAndPower supply)
    {
        ArgumentNullException.ThrowIfNull(supply);
        ReportTable table = new ReportTable($"Power by month, {supply.Season.CropYear}", supply.Season.Notation).InOrder().Column("Month")
            .Column("Wanted", Look.Count, "kWh").Column("Made", Look.Count, "kWh").Column("Days short", Look.Count)
            .Column("Generator", Look.Quantity, "kWh").Column("Missing", Look.Quantity, "kWh")
            .Column("Saved by 1 kWh more battery", Look.Quantity, "kWh").Column("Saved by 1 kW more panels", Look.Quantity, "kWh");
        foreach (PowerMonth month in supply.Power.Months)
        {
            table.Row(month.Month.ToString("MMM yyyy"), (decimal)month.Load, (decimal)month.Made, month.DaysShort, (decimal)month.Generated,
                (decimal)month.Short,
                Rounded(month.SavedByBattery), Maybe(month.SavedByPanels, Rounded, "what a kW of panels makes isn't known"));
        }

        return table;
    }

    /// <summary>The loads in the order in which they give way.</summary>
    /// <param name="supply">The season.</param>
    /// <returns>A table.</returns>
    public static ReportTable Loads(WaterAndPower supply)
    {
        ArgumentNullException.ThrowIfNull(supply);
        ReportTable table = new ReportTable($"Which load gives way first, {supply.Season.CropYear}", supply.Season.Notation).InOrder()
            .Column("Load")
            .Column("Protects").Column("Wanted", Look.Count, "kWh").Column("Went without", Look.Quantity, "kWh")
                .Column("On days", Look.Count);
        foreach (ShedLoad load in supply.Power.Shed)
        {
            table.Row(load.Load.Row.Load, Protects(load.Load.Purpose), (decimal)load.Wanted, (decimal)load.Shed, load.Days);
        }

        return table;
    }

    private static string Protects(LoadPurpose purpose) => purpose switch
    {
        LoadPurpose.Store => "produce in store",
        LoadPurpose.Water => "water for the beds",
        LoadPurpose.Growing => "plants and houses",
        LoadPurpose.Work => "work that can wait",
        _ => "house and office",
    };

    private static decimal Money(double money) => (decimal)money;

    private static decimal Rounded(double kwh) => decimal.Round((decimal)kwh, 4);

    private static ReportCell Maybe(double? value, Func<double, decimal> unit, string why) =>
        value is { } known ? unit(known) : ReportCell.Missing(why);
}
